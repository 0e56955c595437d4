"""Ids of students as texts, and what spreadsheets do to them: digits rounded off, zeros lost."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping
from typing import Final

from probgen.input.text import is_seen

_ROUNDED: Final = re.compile(r"[+-]?\d+([.,]\d+)?[eE]\+\d+")
_ERROR: Final = re.compile(r"#(N/A|REF!|VALUE!|NAME\?|DIV/0!|NULL!|NUM!|#+)|#", re.IGNORECASE)
_PLACEHOLDER: Final = re.compile(
    r"[?\-–—._*x/]+|n/?a|n\.a\.|tb[acd]|none|null|nan|unknown|missing|pending", re.IGNORECASE
)
_KEPT_DIGITS: Final = 15
"""Of a number in a spreadsheet's cell."""
_LEAST_DIGITS: Final = 4
"""Shorter ids than this are counted from 1, and have their digits as they come."""

Complaint = tuple[str, str]
"""What was expected, and the mend."""


def complaint_of(id: str, number: bool = False) -> Complaint | None:
    """What is wrong with an id by itself; None where nothing is.

    number: whether a workbook has it as a number.
    """
    as_text = "in the spreadsheet, format the column as text, enter the id again, and save anew"
    if _ROUNDED.fullmatch(id):
        return "all digits of the id; the spreadsheet has rounded it", as_text
    if number and not id.isdecimal():
        return "an id without sign or fraction", as_text
    if number and len(id) > _KEPT_DIGITS:
        return f"an id as text; of a number a spreadsheet keeps {_KEPT_DIGITS} digits", as_text
    return complaint_of_text(id, "an id")


def complaint_of_text(text: str, what: str) -> Complaint | None:
    """What is wrong with a text that is to be a name or an id; None where nothing is."""
    if _ERROR.fullmatch(text):
        return f"{what}; the spreadsheet shows an error there", "mend the formula of that cell"
    if not is_seen(text):
        return (
            f"{what} that can be seen; every sign of this one is drawn as nothing",
            "type it anew",
        )
    if _PLACEHOLDER.fullmatch(text):
        return f"{what}, not a mark that it is missing", f"fill in {what}, or remove the row"
    return None


def lost_zeros(ids: Mapping[str, bool]) -> str:
    """A remark on ids that seem to have lost zeros at their beginning, "" when none do.

    ids: each with whether a workbook has it as a number.
    """
    digits = [id for id in ids if id.isdecimal()]
    lengths = Counter(map(len, digits))
    if len(lengths) < 2:
        return ""
    usual = max(lengths, key=lambda length: (lengths[length], length))
    short = [id for id in digits if len(id) < usual]
    as_numbers = any(ids[id] for id in short)
    if not short or usual < _LEAST_DIGITS or (not as_numbers and 2 * len(short) > len(digits)):
        return ""
    shown = ", ".join(short[:3]) + (", ..." if len(short) > 3 else "")
    return (
        f"{shown}: fewer digits than the {usual} of other ids; if zeros before them were lost, "
        "format the column as text in the spreadsheet, enter them again, and save anew"
    )
