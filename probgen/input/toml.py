"""TOML read within bounds: what is wrong is told with its line and a mend that fits it.

Decimals keep the digits they were typed with.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any, Final

from probgen.input.fault import Fault, InputError
from probgen.input.file import read_text
from probgen.input.merge import require_merged
from probgen.input.text import unfit, unfit_line
from probgen.input.toml_mend import last_open, mend_of

LONGEST_TEXT: Final = 100_000
"""Characters of a TOML file; the longest supplied template has a tenth of that."""
DEEPEST: Final = 12
"""Tables and lists in each other; files that are meant for the program need five."""
LONGEST_NUMBER: Final = 40
"""Characters of a number.  A float tells 17 digits apart, a Decimal works with 28."""
LARGEST_EXPONENT: Final = 40
"""Of ten, in either direction; what is read is judged more closely where its use is known."""
_LONGEST_KEY: Final = 24
"""Parts of a dotted key; the library takes memory by the square of their number."""

_PART: Final = r"""(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')"""
_DOTTED: Final = re.compile(rf"(?<![\w-]){_PART}(?:[ \t]*+\.[ \t]*+{_PART}){{{_LONGEST_KEY}}}")
_DIGITS: Final = re.compile(r"[\d_]{1000}")  # Python refuses to read 4,300 and more
_TABLE: Final = re.compile(r"\((?:'[^']*',? ?)+\)")  # ('method', 'x'), as the library has it
_PLACE: Final = re.compile(r"\s*\(at (?:line (\d+), column \d+|end of document)\)$")


def read_toml(path: Path, kind: str, longest: int = LONGEST_TEXT) -> dict[str, Any]:
    """The content of a TOML file; `kind` is what it should be, for messages.

    longest: characters it may have.
    Raises InputError when it cannot be read, is no TOML, or exceeds a bound.
    """
    return parse_toml(read_text(path, kind, 4 * longest), str(path), longest)


def parse_toml(text: str, where: str, longest: int = LONGEST_TEXT) -> dict[str, Any]:
    """As `read_toml`, from text; `where` names the file in messages."""
    _require_short(text, where, longest)
    require_merged(text, where)
    try:
        content = tomllib.loads(text, parse_float=_number)
    except tomllib.TOMLDecodeError as error:
        raise InputError([_complaint(error, text, where)]) from None
    except RecursionError:
        raise InputError([_too_deep(where, "")]) from None
    faults = list(_unfit(content, where))
    if not faults and (line := unfit_line(text)):  # in a remark, which a record has to hold too
        faults = [_no_text(where, f"line {line}", _unfit_text(text))]
    if faults:
        raise InputError(faults)
    return content


def _require_short(text: str, where: str, longest: int) -> None:
    if len(text) > longest:
        found, most = f"{len(text)} characters", f"at most {longest} characters"
        raise InputError([Fault(where, "", found, most, "see whether it is the right file")])
    if long := _DIGITS.search(text):
        expected, place = f"at most {LONGEST_NUMBER} digits", _line(text, long.start())
        raise InputError([Fault(where, place, "a number of 1000 digits or more", expected)])
    if long := _DOTTED.search(text):
        expected, place = f"a key of at most {_LONGEST_KEY} parts", _line(text, long.start())
        raise InputError([Fault(where, place, "a key of more parts", expected)])


def _line(text: str, place: int) -> str:
    return f"line {text.count(chr(10), 0, place) + 1}"


class _Strange:
    """A number as it is typed that no field can take."""

    def __init__(self, typed: str) -> None:
        self.typed = typed


def _number(typed: str) -> Decimal | _Strange:
    """A decimal with its digits, as long as it is one of a size that can be worked with."""
    exponent = typed.lower().partition("e")[2].replace("_", "")
    if len(typed) > LONGEST_NUMBER or len(exponent.lstrip("+-0")) > 3:
        return _Strange(typed)
    number = Decimal(typed)
    if not number.is_finite() or abs(number.adjusted()) > LARGEST_EXPONENT:
        return _Strange(typed)
    return number


def _unfit(content: dict[str, Any], where: str) -> Iterator[Fault]:
    """A fault for each value that nobody can use, found without recursion."""
    waiting: list[tuple[str, Any, int]] = [("", content, 0)]
    while waiting:
        path, value, depth = waiting.pop()
        if isinstance(value, dict | list) and depth > DEEPEST:
            yield _too_deep(where, path)
        elif isinstance(value, dict):
            dot = "." if path else ""
            inner = [(f"{path}{dot}{key}", each, depth + 1) for key, each in value.items()]
            waiting += inner[::-1]
            yield from (_no_text(where, path, what) for key in value if (what := _unfit_text(key)))
        elif isinstance(value, list):
            waiting += [(f"{path}[{i}]", each, depth + 1) for i, each in enumerate(value)][::-1]
        elif isinstance(value, _Strange):
            expected = f"a number of ordinary size, in at most {LONGEST_NUMBER} characters"
            yield Fault(where, path, _cut(value.typed), expected)
        elif isinstance(value, int) and abs(value) >= 10**LARGEST_EXPONENT:
            expected = "a whole number of ordinary size"
            yield Fault(where, path, f"about 2 to the power {value.bit_length()}", expected)
        elif isinstance(value, str) and (what := _unfit_text(value)):
            yield _no_text(where, path, what)


def _too_deep(where: str, path: str) -> Fault:
    found, expected = "tables or lists nested too deeply", f"at most {DEEPEST} in each other"
    return Fault(where, path, found, expected)


def _unfit_text(text: str) -> str:
    return unfit(text, LONGEST_TEXT)


def _no_text(where: str, path: str, found: str) -> Fault:
    return Fault(where, path, found, "text", "take it out")


def _complaint(error: tomllib.TOMLDecodeError, text: str, where: str) -> Fault:
    """What the library says of a line, with the line, in the words of somebody who typed it."""
    message = str(error)
    place = _PLACE.search(message)
    reason = _PLACE.sub("", message)
    reason = _TABLE.sub(lambda found: re.sub("[(),' ]+", ".", found[0]).strip("."), reason)
    reason = reason[:1].lower() + reason[1:]
    lines = text.split("\n")
    number = int(place[1]) if place and place[1] else last_open(lines)
    while number > 1 and not lines[number - 1].strip():  # what is not closed is seen only later
        number -= 1
    line = lines[number - 1].strip()
    mend = mend_of(lines, number, reason)
    return Fault(where, f"line {number}", _cut(line), f"a TOML file: {reason}", mend)


def _cut(text: str) -> str:
    return text if len(text) <= 80 else f"{text[:77]}..."
