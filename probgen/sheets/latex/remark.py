"""What of a typed text will not be seen on a page as it was typed, told to whoever typed it."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from typing import Final

from probgen.sheets.latex.cluster import left_out
from probgen.sheets.latex.escape import unprintable

_LONGEST: Final = 60
"""Characters of a text that tell which it is."""
_TOLD: Final = 5
"""Characters without shape that are named; of more the count."""


def remarks_on_text(text: str, where: str = "") -> Iterator[str]:
    """A remark for boxes, and one for what is left out; none for a text that is printed whole.

    where: what the text is, itself if left out.
    """
    place = where or (text if len(text) <= _LONGEST else f"{text[:_LONGEST]}...")
    if lost := unprintable(text):
        yield f"{place}: boxes are printed for {lost}, which the fonts do not have"
    if gone := left_out(text):
        named = ", ".join(map(_named, gone[:_TOLD]))
        more = f" and {len(gone) - _TOLD} others" if len(gone) > _TOLD else ""
        yield f"{place}: left out, as it has no shape: {named}{more}"


def _named(character: str) -> str:
    code = f"U+{ord(character):04X}"
    name = unicodedata.name(character, "").lower()
    return f"{name} ({code})" if name else code
