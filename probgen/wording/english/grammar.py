"""English grammar: lists, numerals, capitals, nouns with their articles."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from probgen.wording.block import Text
from probgen.wording.english.names import the_body
from probgen.wording.facts.balance import Still
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, Part, filled, letter, listed

_NUMERALS: Final = (
    *("no", "one", "two", "three", "four", "five", "six"),
    *("seven", "eight", "nine", "ten", "eleven", "twelve"),
)


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


def the_taken(ids: Sequence[str], nouns: Nouns) -> str:
    """As `the_bodies`, shorter for all bodies of a system, which were taken as one before."""
    if not _are_all(ids, nouns):
        return the_bodies(ids, nouns)
    return the_whole(ids, nouns) or f"the {numeral(len(ids))} together"


def the_whole(ids: Sequence[str], nouns: Nouns) -> str:
    """What all bodies of a system are called together, "" where they are some or have no name."""
    whole = nouns.labels.together
    return f"the whole {whole}" if whole and _are_all(ids, nouns) else ""


def _are_all(ids: Sequence[str], nouns: Nouns) -> bool:
    return len(ids) > 1 and set(ids) == {body.id for body in nouns.system.bodies}


STILL: Final = {
    Still.AT_REST: "at rest",
    Still.STEADY: "at rest or in steady motion",
    Still.SUPPOSED: "taken to stay at rest",
}
"""How bodies in equilibrium are."""


_SINGULAR: Final = ("ss", "us", "is", "as", "lens")
"""How nouns of one thing end that end with an s: a truss, an apparatus, a chassis."""


def is_plural(noun: str) -> bool:
    """Whether a noun is of several things, as "the pulleys", "your hands" and "drum and band" are.

    A "mass of arms and toolbox" is one.
    """
    head = noun.partition(" of ")[0].partition(" with ")[0]
    return " and " in head or (noun.endswith("s") and not noun.endswith(_SINGULAR))


def agreeing(nouns: Sequence[str], one: str, several: str) -> str:
    """The verb after a noun or several: "is" after "the shelf", "are" after "the pulleys"."""
    return several if len(nouns) > 1 or is_plural(nouns[0]) else one


def bodies_are(ids: Sequence[str], nouns: Nouns) -> str:
    """ "is" or "are", after `the_taken`."""
    if nouns.labels.together and _are_all(ids, nouns):
        return "is"
    return agreeing([the_body(id, nouns) for id in ids], "is", "are")


def at(point: str, *, middle: bool = False) -> Inlines:
    """ " at B", " at its middle G"; nothing where there is no point."""
    pattern = " at its middle {P}" if middle else " at {P}"
    return filled(pattern, P=letter(point)) if point else ()
