"""Names and ids of a class that an eye takes for one another, though they are not the same text."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator
from typing import Final

# Cyrillic and Greek letters with the shape of a Latin one, as Unicode's confusables.txt has them.
_SHAPES: Final = str.maketrans(
    "авеіјкмнорстухѕһӏАВЕІЈКМНОРСТУХЅҺӀ" + "ικνορυχΑΒΕΖΗΙΚΜΝΟΡΤΥΧ",
    "abeijkmhopctyxshlABEIJKMHOPCTYXSHl" + "iknopuxABEZHIKMNOPTYX",
)
_HIDDEN: Final = frozenset({"Cf", "Cc", "Co", "Cn", "Cs"})
"""Categories of characters that do not show."""


def alike(texts: Iterable[str], what: str) -> Iterator[str]:
    """A remark for each group of different texts that look the same; what: "ids"."""
    groups: dict[str, dict[str, None]] = {}
    for text in texts:
        groups.setdefault(looks(text), {})[text] = None
    for group in groups.values():
        if len(group) > 1:
            shown = ", ".join(f'"{text}"' for text in list(group)[:3])
            shown += ", ..." if len(group) > 3 else ""
            yield f"the {what} {shown} look alike: see whether they are of one student"


def looks(text: str) -> str:
    """How a text looks to a quick eye: without case, marks that do not show, and scripts."""
    plain = unicodedata.normalize("NFKC", text)
    seen = "".join(_digit(each) for each in plain if unicodedata.category(each) not in _HIDDEN)
    folded = unicodedata.normalize("NFKC", seen.translate(_SHAPES).casefold())
    return " ".join(folded.translate(_SHAPES).split())


def _digit(letter: str) -> str:
    """A digit of any script as one of ours."""
    value = unicodedata.decimal(letter, None)
    return letter if value is None else str(value)
