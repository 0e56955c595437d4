"""Sentences: words with formulas in them, lists with commas and an "and"."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import zip_longest
from typing import TypeGuard

from probgen.quantities.expression import Expression, Name
from probgen.quantities.formula import Formula
from probgen.quantities.printing import plain
from probgen.statics.system import Body
from probgen.wording.block import Inline, Itemize, Math, Paragraph, Strong, Text

Inlines = tuple[Inline, ...]
Part = str | Expression | Formula | Inlines
"""What may stand in a sentence: words, an expression, a formula, or inlines made before."""

_NUMERALS = (
    *("no", "one", "two", "three", "four", "five", "six"),
    *("seven", "eight", "nine", "ten", "eleven", "twelve"),
)
_INLINES = frozenset({Text, Strong, Math})
_PLACE = re.compile(r"\{(\w+)\}")


def say(pattern: str, **parts: Part) -> Inlines:
    """Inlines of a sentence whose {places} are filled with words or formulas."""
    inlines: list[Inline] = []
    for words, place in _pieces(pattern):
        inlines += words
        if place:
            inlines += _inlines(parts[place])
    return _joined(inlines)


@lru_cache(maxsize=1024)
def _pieces(pattern: str) -> tuple[tuple[Inlines, str], ...]:
    """Words and the place after them, one after the other; the last words have no place."""
    cut = _PLACE.split(pattern)
    return tuple(
        (_words(words), place) for words, place in zip_longest(cut[::2], cut[1::2], fillvalue="")
    )


def _words(text: str) -> Inlines:
    return (Text(text),) if text else ()


def _inlines(part: Part) -> Inlines:
    if isinstance(part, str):
        return _words(part)
    if isinstance(part, tuple):
        return part if are_inlines(part) else (Math(part),)  # type: ignore[arg-type]
    return (Math((part,)),)


def are_inlines(parts: tuple[object, ...]) -> TypeGuard[Inlines]:
    """Whether these are words and formulas in words, as the pieces of a formula are not."""
    return all(type(part) in _INLINES for part in parts)


def _joined(inlines: Iterable[Inline]) -> Inlines:
    """Neighbouring words become one run."""
    runs: list[Inline] = []
    for inline in inlines:
        if runs and isinstance(inline, Text) and isinstance(runs[-1], Text):
            runs[-1] = Text(runs[-1].text + inline.text)
        else:
            runs.append(inline)
    return tuple(runs)


def listed(parts: Sequence[Part], word: str = "and") -> Inlines:
    """ "a", "a and b", "a, b and c"."""
    inlines: list[Inline] = []
    for place, part in enumerate(parts):
        if place:
            inlines += _words(f" {word} " if place == len(parts) - 1 else ", ")
        inlines += _inlines(part)
    return _joined(inlines)


def paragraph(*sentences: Inlines) -> Paragraph:
    """Sentences one after the other, a space between."""
    inlines: list[Inline] = []
    for sentence in sentences:
        if inlines:
            inlines.append(Text(" "))
        inlines += sentence
    return Paragraph(_joined(inlines))


def itemized(items: Iterable[Inlines]) -> Itemize:
    return Itemize(tuple(items))


def letter(point: str) -> Name:
    """A point's name as it is printed in formulas and figures."""
    return Name(point, point)


def plain_text(inlines: Iterable[Inline]) -> str:
    """The words as plain Unicode text, for a terminal or a test."""
    shown = [
        plain(inline.formula) if isinstance(inline, Math) else inline.text for inline in inlines
    ]
    text = "".join(shown)
    return re.sub(r"[ \n]+", " ", text).strip()


def body_noun(bodies: Iterable[Body]) -> str:
    """What a body goes by, or several taken as one: "the ladder", "the crane and the crate"."""
    nouns = [f"the {body.name}" for body in bodies]
    return nouns[0] if len(nouns) == 1 else ", ".join(nouns[:-1]) + " and " + nouns[-1]


def capitalized(inlines: Inlines) -> Inlines:
    """The first word with a capital, when the run begins with words."""
    first = inlines[0]
    if isinstance(first, Text):
        return (Text(first.text[:1].upper() + first.text[1:]), *inlines[1:])
    return inlines


def counted(number: int, noun: str) -> str:
    """ "two forces"; numerals from thirteen on."""
    count = _NUMERALS[number] if number < len(_NUMERALS) else str(number)
    return f"{count} {noun}" if number == 1 else f"{count} {noun}s"
