"""Running text: words with formulas in them, put together."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import zip_longest
from typing import TypeGuard

from probgen.quantities.expression import Expression, Name
from probgen.quantities.formula import Formula
from probgen.quantities.printing import plain
from probgen.quantities.symbol import MARKED, MARKED_ONE, unmarked
from probgen.wording.block import Inline, Math, Paragraph, Text

Inlines = tuple[Inline, ...]
Part = str | Expression | Formula | Inlines
"""What may stand in a sentence: words, an expression, a formula, or inlines made before."""

_INLINES = frozenset({Text, Math})
_PLACE = re.compile(r"\{(\w+)\}")


def filled(pattern: str, **parts: Part) -> Inlines:
    """A sentence whose {places} are filled with words or formulas."""
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


def listed(parts: Sequence[Part], last: str, between: str = ", ") -> Inlines:
    """Parts one after the other; last: what stands before the last of them (" and ")."""
    inlines: list[Inline] = []
    for place, part in enumerate(parts):
        if place:
            inlines += _words(last if place == len(parts) - 1 else between)
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


def letter(point: str) -> Name:
    """A point's name as it is printed in formulas and figures."""
    return Name(point, point)


def lettered(inlines: Iterable[Inline]) -> Inlines:
    """Running text in which the letters marked in words are formulas: "at" and an italic A."""
    made: list[Inline] = []
    for inline in inlines:
        if isinstance(inline, Math) or not MARKED.search(inline.text):
            made.append(inline)
            continue
        for words, name in _cut(inline.text):
            made += _words(words)
            if name:
                made.append(Math(tuple(letter(each) for each in _apart(name))))
    return tuple(made)


def _apart(letters: str) -> Iterator[str]:
    """Letters of points in a row as one, but for those that have a subscript: "DB", "G_1" "B"."""
    return map(unmarked, (MARKED_ONE.findall(letters) if "_" in letters else [letters]))


def _cut(text: str) -> Iterator[tuple[str, str]]:
    """Words and the letters behind them, "" behind the last."""
    start = 0
    for found in MARKED.finditer(text):
        yield text[start : found.start()], found[0]
        start = found.end()
    yield text[start:], ""


def plain_text(inlines: Iterable[Inline]) -> str:
    """The words as plain Unicode text, for a terminal or a test."""
    shown = [
        plain(inline.formula) if isinstance(inline, Math) else inline.text for inline in inlines
    ]
    text = unmarked("".join(shown))
    return re.sub(r"[ \n]+", " ", text).strip()
