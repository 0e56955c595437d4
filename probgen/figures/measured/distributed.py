"""Distributed loads: the line each lies on, how it grows along it, and what it stands on.

Lengths on paper are pt, places on bodies metres.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import Spot, dot, heading
from probgen.figures.parts.distributed import size_between
from probgen.quantities.expression import Expression, Name, Number, names_in
from probgen.quantities.unit import PRESSURE, STIFFNESS
from probgen.statics import system as statics
from probgen.statics.definition import names_behind
from probgen.statics.numeric_equations import size_at
from probgen.statics.system import Element, Kind, Role

ROW: Final = 17.0
"""Height of the arrows of a situation's largest load, pt."""

_STEPS: Final = 32  # along a load by a formula
_TALLER: Final = 1.6  # a load by a formula, so that its shape is seen
_LEAST: Final = 0.45  # the lowest row beside a higher one, of that one's height


@dataclass(frozen=True, slots=True)
class Spread:
    """A load from one place to another: its sizes (N/m), and its data.

    sizes: at equal steps from start to end; those of the ends alone where it runs evenly.
    names: the loads per length it is given by, that of the start first; plain numbers as they are.
    """

    start: complex
    end: complex
    sizes: tuple[float, ...]
    names: tuple[Name | Number, ...]

    @property
    def profile(self) -> tuple[float, ...]:
        """The sizes, of the largest."""
        largest = max(map(abs, self.sizes)) or 1.0
        return tuple(abs(size) / largest for size in self.sizes)

    @property
    def shares(self) -> tuple[float, float]:
        """The sizes at both ends, of the largest."""
        return self.profile[0], self.profile[-1]


@dataclass(frozen=True, slots=True)
class Row:
    """A load as it is drawn: the line its arrows end on, and their lengths (pt).

    heights: at equal steps from start to end, those of the ends alone where it runs evenly.
    """

    element: Element
    spread: Spread
    direction: float
    feet: tuple[Spot, Spot]
    heights: tuple[float, ...]

    @property
    def edge(self) -> tuple[Spot, ...]:
        """Where the arrows begin, from its start to its end."""
        step, way = heading(self.direction), self.feet[1] - self.feet[0]
        last = len(self.heights) - 1
        return tuple(
            self.feet[0] + way * place / last - step * height
            for place, height in enumerate(self.heights)
        )

    @property
    def tops(self) -> tuple[Spot, Spot]:
        """Where the arrows at both ends begin."""
        return self.edge[0], self.edge[-1]

    @property
    def highest(self) -> Spot:
        """Where the longest arrow begins."""
        return self.edge[self.heights.index(max(self.heights))]


def spread_of(measured: Survey, element: Element) -> Spread | None:
    """The line a distributed load lies on and its sizes; None when the system does not say."""
    if element.spread is None:
        return None
    load = element.spread
    start = measured.places[load.start]
    way = measured.number(load.line.length) * heading(measured.number(load.line.direction))
    ends = (load.first, load.last)
    known = [measured.number(size) if measured.has(size) else 1.0 for size in ends]
    held = ends if load.intensity is None else (load.intensity.load,)
    names = dict.fromkeys(text for size in held for text in _data_in(measured, size))
    sizes = _sizes(measured, load) or (known[0], known[1])
    return Spread(start, start + way, sizes, tuple(names))


def _sizes(measured: Survey, load: statics.Spread) -> tuple[float, ...]:
    """The sizes of a load by a formula; none of another."""
    curve = load.intensity
    if curve is None or not all(map(measured.has, (curve.low, curve.high))):
        return ()
    parts = (place / _STEPS for place in range(_STEPS + 1))
    found = (size_at(load, measured.values, part) for part in parts)
    return tuple(float(np.asarray(size).flat[0]) for size in found)


def rows(
    measured: Survey, elements: Sequence[Element], scale: float, half: float, highest: float
) -> list[Row]:
    """The rows of a body's loads; one over the line of another stands on top of it.

    scale: pt for each metre; half: half the body's thickness; highest: of the largest load (pt).
    """
    found: list[Row] = []
    loads = [
        (each, load, direction)
        for each in elements
        if each.kind == Kind.DISTRIBUTED
        and (load := spread_of(measured, each)) is not None
        and (direction := measured.direction_of(each)) is not None
    ]
    largest = max((max(map(abs, load.sizes)) for _, load, _ in loads), default=0.0)
    # Even loads first, and long before short: what stands on them has an even floor.
    loads.sort(key=lambda each: (_uneven(each[1]), -_length(each[1])))
    for element, load, direction in loads:
        side = face_of(load, heading(direction), half)
        feet = [load.start * scale + side, load.end * scale + side]
        share = max(max(map(abs, load.sizes)) / largest, _LEAST) if largest else 1.0
        taller = _TALLER if len(load.profile) > 2 else 1.0
        heights = tuple(highest * taller * share * each for each in load.profile)
        for under in found:
            if abs(under.direction - direction) < 1.0:
                feet = [_on(under, *pair) for pair in zip(feet, feet[::-1], strict=True)]
        found.append(Row(element, load, direction, (feet[0], feet[1]), heights))
    return found


def covers(other: Row, row: Row) -> bool:
    """Whether one row stands on another."""
    feet, way = other.feet, row.tops[1] - row.tops[0]
    on = [((foot - row.tops[0]) / way) * abs(way) for foot in feet]
    return other is not row and any(
        abs(place.imag) < 0.5 and -0.5 < place.real < abs(way) + 0.5 for place in on
    )


def _uneven(load: Spread) -> float:
    return max(load.profile) - min(load.profile)


def _length(load: Spread) -> float:
    return abs(load.end - load.start)


def _on(under: Row, foot: Spot, other: Spot) -> Spot:
    """A foot lifted to the top of a row that lies under it."""
    way = under.feet[1] - under.feet[0]
    inward = foot + (other - foot) * 1e-3  # loads that only meet at their ends share nothing
    share = ((inward - under.feet[0]) / way).real
    if not 0.0 < share < 1.0 or abs(((foot - under.feet[0]) / way).imag) * abs(way) > 30.0:
        return foot
    return foot - heading(under.direction) * size_between(under.heights, share)


def _data_in(measured: Survey, size: Expression) -> list[Name | Number]:
    """The loads per length, or the pressure, that a size is computed from."""
    if isinstance(size, Number):
        return [size] if size.value else []
    held = names_behind(names_in(size), measured.system.definitions)
    return [
        variable.as_name
        for variable in measured.system.variables.values()
        if variable.id in held
        and variable.dimension in (STIFFNESS, PRESSURE)
        and variable.role in (Role.GIVEN, Role.DERIVED, Role.UNKNOWN)
    ]


def face_of(spread: Spread, direction: complex, half: float) -> complex:
    """The step (pt) from a body's axis to the side a load lies on."""
    way = (spread.end - spread.start) / abs(spread.end - spread.start)
    side = way * 1j
    return -side * half if dot(side, direction) > 0 else side * half
