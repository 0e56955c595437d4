"""What single students need of a paper: large print, and what the assistant must know besides."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

LONGEST: Final = 120
"""Characters of a need; it stands in a column of a list."""

_MARKS: Final = {
    **dict.fromkeys(("yes", "y", "x", "true", "1", "large", "✓", "✔", "required", "needed"), True),
    **dict.fromkeys(
        ("", "no", "n", "false", "0", "normal", "none", "-", "–", "—", "n/a", "standard", "nil"),
        False,
    ),
}
"""What marks those who need something, and those who do not."""
_SIZE: Final = re.compile(r"(\d+)\s*(pt|point|points)?\.?", re.IGNORECASE)
_LARGE: Final = re.compile(
    r"large[\s-]*(print|type|font)|enlarged|\b(1[6-9]|[2-9]\d)[\s-]*(pt|point)", re.IGNORECASE
)
_ONLY_LARGE: Final = re.compile(
    r"(^|[;,])\s*(in )?(large[\s-]*(print|type|font)|enlarged)\.?\s*(?=[;,]|$)", re.IGNORECASE
)
"""A need that says nothing more than that: the lists tell of large print by themselves."""
_SMALLEST: Final = 14
"""Points of type that are more than usual."""


@dataclass(frozen=True, slots=True)
class Needs:
    """large: large print; told: everything else, for the assistant's lists."""

    large: bool = False
    told: str = ""


def is_mark(text: str) -> bool:
    """Whether a text in the column for large print can be understood."""
    size = _SIZE.fullmatch(text)
    return text.casefold() in _MARKS or size is not None or _LARGE.search(text) is not None


def read_needs(large: str, time: str, other: str) -> Needs:
    """The needs in the columns for large print, for extra time, and for anything."""
    size = _SIZE.fullmatch(large)
    marked = _MARKS.get(large.casefold())
    wants = int(size[1]) >= _SMALLEST if size and marked is None else bool(marked)
    wants = wants or bool(_LARGE.search(f"{large} {other}"))
    other = "" if _MARKS.get(other.casefold()) is False else other
    told = [_time(time), _ONLY_LARGE.sub("", other).strip(" ;,")]
    return Needs(wants, "; ".join(filter(None, told))[:LONGEST])


def _time(text: str) -> str:
    """The extra time: "25%" as it is written, 0.25 of a workbook as percent, a bare yes as such."""
    marked = _MARKS.get(text.casefold())
    if marked is False:
        return ""
    if marked:
        return "extra time"
    if re.fullmatch(r"0\.\d+", text):
        return f"extra time {float(text):.0%}"
    return text if "time" in text.casefold() else f"extra time {text}"
