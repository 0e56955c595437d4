"""What a student states for one answer: every reading of the cells that it was typed into."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from probgen.marking import typed_direction, typed_number
from probgen.marking.form import Place
from probgen.marking.typed_number import TypedNumber
from probgen.marking.typed_unit import units_of
from probgen.quantities.rounding import last_place
from probgen.quantities.unit import ANGLE, DEGREE, ONE, Dimension, Unit

_AXIS: Final = "axis"


@dataclass(frozen=True, slots=True)
class Blank:
    """The place on a paper that an answer is written into.

    unit: printed beside it, which holds where nobody typed another; None for none.
    reference: what a direction's angle is measured from, "" for what is no direction.
    choices: what a choice may be called, by its place among them; empty for a number.
    """

    unit: Unit | None = None
    reference: str = ""
    choices: tuple[tuple[str, ...], ...] = ()

    @property
    def dimension(self) -> Dimension:
        return (self.unit or ONE).dimension


@dataclass(frozen=True, slots=True)
class Reading:
    """One meaning of what was typed.

    value: coherent units, a direction in degrees counter-clockwise from +x, a choice by its place;
    not finite where a unit of another kind stands behind the number.
    bare: the number taken in the unit printed on the paper, coherent units.
    half: half a unit of the last figure typed, coherent units; coarse: the same where zeros at the
    end of a whole number only fill their places, of two figures at least.
    unit: the one typed, None for none; figures: significant ones, at least and at most.
    """

    value: float
    bare: float
    half: float
    unit: Unit | None = None
    figures: tuple[int, int] = (0, 0)
    coarse: float = 0.0


@dataclass(frozen=True, slots=True)
class Stated:
    """What was typed, as one text, and all that it may mean."""

    text: str
    readings: tuple[Reading, ...] = ()

    @property
    def empty(self) -> bool:
        return not self.text

    @property
    def only(self) -> Reading | None:
        """The reading that counts; None where there is none, or there are several."""
        return self.readings[0] if len(self.readings) == 1 else None


_ORDER: Final = tuple(Place)
_TELLING: Final = (Place.NUMBER, Place.CHOICE, Place.SIDE)


def stated(blank: Blank, cells: Mapping[Place, str]) -> Stated:
    """The readings of an answer's cells; a row without any has left it empty."""
    text = " ".join(filter(None, [cells[place].strip() for place in _ORDER if place in cells]))
    if not text or not any(cells.get(place) for place in _TELLING):
        return Stated("")
    if blank.choices:
        return Stated(text, tuple(_choices(blank, text)))
    if blank.reference:
        return Stated(text, tuple(_directions(blank, text)))
    return Stated(text, _numbers(blank, cells))


def _choices(blank: Blank, text: str) -> Iterator[Reading]:
    plain = " ".join(text.casefold().split())
    for place, names in enumerate(blank.choices):
        if plain in (name.casefold() for name in names):
            yield Reading(place, place, 0.0)


def _directions(blank: Blank, text: str) -> Iterator[Reading]:
    numbers = typed_number.readings(text)
    if blank.reference == _AXIS and numbers:
        for number in numbers:
            if number.unit is None or number.unit.dimension == ANGLE:
                angle = float(number.value) * (number.unit or DEGREE).factor % 360.0
                yield Reading(angle, angle, _half(number, number.unit or DEGREE))
        return
    for typed in typed_direction.readings(text):
        angle = float(typed.angle_from_x)
        yield Reading(angle, angle, max(_FINEST, _last(typed.angle_from_x)))


def _numbers(blank: Blank, cells: Mapping[Place, str]) -> tuple[Reading, ...]:
    """Readings with a unit of the right kind where there are any; the same amount counts once."""
    printed = blank.unit or ONE
    found = [_reading(number, printed) for number in _typed(cells)]
    fitting = [each for each in found if math.isfinite(each.value)] or found
    return tuple({(each.value, each.bare): each for each in fitting}.values())  # nan is one object


def _typed(cells: Mapping[Place, str]) -> tuple[TypedNumber, ...]:
    """The number, with the unit of its own cell; one typed twice has to be the same."""
    number, unit = cells.get(Place.NUMBER, ""), cells.get(Place.UNIT, "")
    if unit and number.replace(".", "").isdecimal():  # as most are
        return typed_number.readings(f"{number} {unit}")
    alone = typed_number.readings(number)
    if not unit:
        return alone
    beside = {each for each, _ in units_of(unit)}
    if not alone or alone[0].unit:
        return tuple(each for each in alone if each.unit in beside)
    return typed_number.readings(f"{number} {unit}")


def _reading(number: TypedNumber, printed: Unit) -> Reading:
    unit = number.unit or printed
    bare = float(number.value) * printed.factor
    value = float(number.value) * unit.factor if unit.dimension == printed.dimension else math.nan
    half = _half(number, unit)
    coarse = half * 10.0 ** (number.figures[1] - max(2, number.figures[0]))
    return Reading(value, bare, half, number.unit, number.figures, max(half, coarse))


_FINEST: Final = 0.1
"""Degrees: an angle comes of two numbers, which were rounded before it was."""


def _last(angle: Decimal) -> float:
    """Half a unit of the last figure of an angle, degrees."""
    exponent = angle.as_tuple().exponent
    return 0.5 * 10.0**exponent if isinstance(exponent, int) else 0.5


def _half(number: TypedNumber, unit: Unit) -> float:
    """Half a unit of the last figure typed: of "4.9e2" that is 5."""
    return 0.5 * float(last_place(number.value)) * unit.factor
