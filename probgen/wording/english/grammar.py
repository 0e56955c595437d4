"""English grammar: lists, numerals, capitals, nouns with their articles, ways."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from probgen.quantities.printing import plain
from probgen.wording.block import Text
from probgen.wording.english.names import the_body
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, Part, filled, letter, listed
from probgen.working.direction import Direction, Way

_NUMERALS: Final = (
    *("no", "one", "two", "three", "four", "five", "six"),
    *("seven", "eight", "nine", "ten", "eleven", "twelve"),
)
_STRAIGHT: Final = ("to the right", "straight up", "to the left", "straight down")


def series(parts: Sequence[Part]) -> Inlines:
    """ "a", "a and b", "a, b and c"."""
    return listed(parts, " and ")


def numeral(number: int) -> str:
    """Digits from thirteen on."""
    return _NUMERALS[number] if number < len(_NUMERALS) else str(number)


def counted(number: int, noun: str) -> str:
    """ "two forces"."""
    return f"{numeral(number)} {noun}" if number == 1 else f"{numeral(number)} {noun}s"


def capitalized(inlines: Inlines) -> Inlines:
    """The first word with a capital, when the run begins with words."""
    first = inlines[0]
    if isinstance(first, Text):
        return (Text(first.text[:1].upper() + first.text[1:]), *inlines[1:])
    return inlines


def heading(words: str) -> str:
    """With a capital, but not what begins with a letter of its own such as "x-component"."""
    return words if words[1:2] == "-" else words[:1].upper() + words[1:]


def the_bodies(ids: Iterable[str], nouns: Nouns) -> str:
    """A body, or several taken as one: "the ladder", "the crane and the crate"."""
    told = [the_body(id, nouns) for id in ids]
    return told[0] if len(told) == 1 else ", ".join(told[:-1]) + " and " + told[-1]


def at(point: str) -> Inlines:
    """ " at B"; nothing where there is no point."""
    return filled(" at {P}", P=letter(point)) if point else ()


def toward(way: Way) -> str:
    """ "straight down", "up and to the left"."""
    if way.quarter is not None:
        return _STRAIGHT[way.quarter]
    return f"{'up' if way.up else 'down'} and {_side(way)}"


def _side(way: Way) -> str:
    return "to the right" if way.right else "to the left"


def direction(direction: Direction) -> str:
    """ "12.3° above the horizontal, to the right"."""
    way, shown = direction.way, plain(direction.shown)
    if direction.reference == "axis":
        return f"{shown} counter-clockwise from +x"
    if way.quarter is not None:
        return _STRAIGHT[way.quarter]
    if direction.reference == "vertical":
        return f"{shown} from the {'upward' if way.up else 'downward'} vertical, {_side(way)}"
    return f"{shown} {'above' if way.up else 'below'} the horizontal, {_side(way)}"


def direction_in_short(direction: Direction) -> str:
    """ "12.3° above, right"; "12.3° from up, right"; "12.3° from +x"."""
    way, shown = direction.way, plain(direction.shown)
    if direction.reference == "axis":
        return f"{shown} from +x"
    if way.quarter is not None:
        return _STRAIGHT[way.quarter]
    side = "right" if way.right else "left"
    if direction.reference == "vertical":
        return f"{shown} from {'up' if way.up else 'down'}, {side}"
    return f"{shown} {'above' if way.up else 'below'}, {side}"
