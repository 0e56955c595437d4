"""Typed text as the letters a reader sees, each with its marks; what has no shape is told apart.

Of the characters without width two join or part the letters of a script, and stay with the letter
before them; two say where a line may end.  Nobody would see the others, such as those that turn the
direction of writing or choose a form that no font here has: they are not set, and `left_out` names
them.
"""

from __future__ import annotations

import re
import unicodedata
from typing import Final

from probgen.sheets.latex.script import script_of

_MAY_BREAK: Final = "\u00ad\u200b"
"""Where a line may end: with a hyphen, and without one."""
_JOINERS: Final = "\u200c\u200d"
_SELECTORS: Final = re.compile("[\u034f\u180b-\u180d\u180f\ufe00-\ufe0f\U000e0100-\U000e01ef]")
"""Of a letter's form, and one that keeps marks in their order; without shape as Cf."""
_UNJOINED: Final = ("", "latin", "greek", "cyrillic")
"""Scripts whose letters stand side by side whatever is between them."""
_SHOWN: Final = re.compile("[\u0600-\u0605\u06dd\u070f\u0890\u0891\u08e2\U000110bd\U000110cd]")
"""Signs around numbers, which have a shape though Unicode counts them to the class without (Cf)."""
_SPACE: Final = re.compile(r"[\t-\r \x85\u1680\u2000-\u2006\u2008\u200a\u2028\u2029\u205f\u3000]")
_MICRO: Final = re.compile("μ(?=[A-Za-z])")  # the prefix of a unit, whichever of the two was typed


def clusters(text: str) -> list[str]:
    """Single letters, each with the marks that belong to it, and single spaces."""
    found: list[str] = []
    shown = _MICRO.sub("µ", _parted(text)[0])
    for character in unicodedata.normalize("NFC", shown):
        if character == " " and found[-1:] == [" "]:
            continue
        if found and found[-1] != " " and _belongs(character):
            found[-1] += character
        else:
            found.append(character)
    return found


def left_out(text: str) -> str:
    """The characters that are not set, as they have no shape; each once, in order."""
    return "".join(dict.fromkeys(_parted(text)[1]))


def _belongs(character: str) -> bool:
    return unicodedata.combining(character) > 0 or character in _JOINERS


def _parted(text: str) -> tuple[str, str]:
    """What is set of a text, white space as spaces, and what is left out."""
    shown, lost = [" "], []
    for character in text:
        if _SPACE.match(character):
            shown.append(" ")
        elif _is_set(character, after=shown[-1]):
            shown.append(character)
        else:
            lost.append(character)
    return "".join(shown[1:]), "".join(lost)


def _is_set(character: str, after: str) -> bool:
    if character in _JOINERS:
        return script_of(after) not in _UNJOINED
    if _SELECTORS.match(character):
        return False
    if unicodedata.category(character) != "Cf":
        return True
    return character in _MAY_BREAK or _SHOWN.match(character) is not None
