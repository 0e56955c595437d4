"""Numbers as people type them: every reading a text allows, and none that it does not.

A text with one reading means that; what may be read in two ways ("1,234 N") is for a person to
decide, and so is what cannot be read.  The sheets print points for decimals, so a single point is
one; a comma may be either.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from itertools import product
from typing import Final

from probgen.marking.typed_unit import units_of
from probgen.quantities.unit import Unit

LONGEST: Final = 200
"""Characters of an answer that is looked at: a longer one is no number."""

_SUPERSCRIPTS: Final = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻", "0123456789+-")
_MINUS: Final = dict.fromkeys(map(ord, "−–—‒﹣－‐‑"), "-")
_TICKS: Final = dict.fromkeys(map(ord, "’ʼ´`"), "'")
_TIMES: Final = dict.fromkeys(map(ord, "×⋅·∙✕"), "*")
_BEFORE: Final = re.compile(r"^[^\d=≈~<>]{0,20}[=≈~]\s*")
"""What a student puts before a number: "T = ", "≈ "."""
_NUMBER: Final = re.compile(
    r"""(?P<sign>[+-]?)\s*
    (?P<digits>[\d](?:[\d.,']|\ (?=\d{3}(?!\d)))*|[.,]\d+)
    (?:[eE](?P<exponent>[+-]?\d{1,3})(?![\d.,])
      |\s*[*xX]\s*10\s*(?:\^|\*\*)\s*\(?\s*(?P<power>[+-]?\s*\d{1,3})\s*\)?)?
    \s*(?P<unit>[^\d].*)?""",
    re.VERBOSE,
)
_USUAL: Final = re.compile(
    r"(?P<sign>-?)(?P<digits>[0-9]+(?:\.[0-9]*)?)(?: (?P<unit>[A-WYZa-wyz][A-Za-z]*))?"
)
"""What most type, which is told sooner."""
_ORDINARY: Final = re.compile(r"[0-9]+(\.[0-9]*)?")
"""Digits that say one thing only: a single point is for decimals."""
_GROUPS: Final = ("", " ", "'", ",", ".")
_POINTS: Final = ("", ".", ",")


@dataclass(frozen=True, slots=True)
class TypedNumber:
    """One reading of what somebody typed.

    value: digits as typed, their sign and power of ten; unit: None where none was typed.
    figures: significant figures shown, at least and at most: zeros at the end of a whole number
    may only fill their places.
    """

    value: Decimal
    unit: Unit | None
    figures: tuple[int, int]


def readings(text: str) -> tuple[TypedNumber, ...]:
    """Every number, with its unit, that a text may mean; none where it is no number."""
    if len(text) > LONGEST:
        return ()
    match = _USUAL.fullmatch(text) or _NUMBER.fullmatch(_BEFORE.sub("", _plain(text)))
    if match is None:
        return ()
    power = _power(match) if match.re is _NUMBER else 0
    sign = -1 if match["sign"] == "-" else 1
    found = []
    for digits, (unit, scale) in product(_decimals(match["digits"]), units_of(match["unit"] or "")):
        value = digits.scaleb(power).copy_sign(sign) * scale
        found.append(TypedNumber(value, unit, _figures(digits)))
    return tuple(dict.fromkeys(found))


def _power(match: re.Match[str]) -> int:
    return int((match["exponent"] or match["power"] or "0").replace(" ", ""))


def _plain(text: str) -> str:
    """The text in plain signs: minus, spaces, times, powers as ^, full-width letters."""
    raised = re.sub(
        r"(?<=10)([⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻]+)", lambda m: "^" + m[1].translate(_SUPERSCRIPTS), text
    )
    plain = raised.translate(_MINUS | _TICKS | _TIMES)
    return unicodedata.normalize("NFKC", plain.replace("²", "^2").replace("³", "^3")).strip()


def _decimals(digits: str) -> Iterator[Decimal]:
    """Every number that digits with points, commas, ticks and spaces in them may be."""
    if _ORDINARY.fullmatch(digits):
        yield Decimal(digits)
        return
    for group, point in product(_GROUPS, _POINTS):
        if group and group == point:
            continue
        whole, _, fraction = digits.partition(point) if point else (digits, "", "")
        if (point and point not in digits) or not _is_whole(whole, group, bool(fraction)):
            continue
        if fraction and not fraction.isdecimal():
            continue
        joined = whole.replace(group, "") if group else whole
        yield Decimal(f"{joined}{fraction}").scaleb(-len(fraction))


def _is_whole(whole: str, group: str, decimals: bool) -> bool:
    """Whether a number's whole part may be written so, in groups of three or in none."""
    if not group:
        return whole.isdecimal() or (not whole and decimals)
    groups = whole.split(group)
    threes = all(len(each) == 3 and each.isdecimal() for each in groups[1:])
    first = groups[0]
    usual = first.isdecimal() and len(first) <= 3 and not first.startswith("0")
    # One group behind a point would be a decimal on every sheet; two, or decimals behind, are not.
    marked = group != "." or decimals or len(groups) > 2
    return threes and usual and marked


def _figures(number: Decimal) -> tuple[int, int]:
    _, digits, exponent = number.as_tuple()
    least = most = len(digits)
    if isinstance(exponent, int) and exponent < 0:
        return most, most
    while least > 1 and not digits[least - 1]:
        least -= 1
    return least, most
