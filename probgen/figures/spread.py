"""Distributed loads: over which line one is spread, and how it grows along it.

Lengths are metres.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from probgen.figures.scene import dot
from probgen.figures.survey import Survey
from probgen.quantities.expression import Name, names_in
from probgen.quantities.unit import PRESSURE, STIFFNESS
from probgen.statics.system import Element, Role

_EXACT: Final = 1e-6


@dataclass(frozen=True, slots=True)
class Spread:
    """A load from one place to another: its shares at both ends (the larger is 1), its data.

    names: the loads per length it is given by, that of the start first.
    """

    start: complex
    end: complex
    shares: tuple[float, float]
    names: tuple[Name, ...]


def spread_of(measured: Survey, element: Element) -> Spread | None:
    """The line a distributed load lies on, read from where its resultant acts.

    The resultant of an even load is at the middle of its line, that of one that grows from nothing
    at two thirds: the end is the point for which this comes out.
    """
    points = measured.system.points
    links = points[element.at].links
    if not links:
        return None
    at = measured.places[element.at]
    start = next((measured.places[n] for n, p in points.items() if p.links == links[:-1]), 0j)
    reach = at - start
    body = measured.system.body(element.body)
    named = [element.toward] if element.toward else [n for n in points if n != element.at]
    ends = [measured.places[name] for name in named]
    ends += [place for place in measured.outline(body) if not element.toward]
    trials = []
    for end in ends:
        way = end - start
        if abs(way) < 1e-9 or abs((reach / way).imag) > _EXACT:
            continue
        share = (reach / way).real
        if 1 / 3 - _EXACT <= share <= 2 / 3 + _EXACT:
            exact = [k for k, s in enumerate((1 / 2, 2 / 3, 1 / 3)) if abs(share - s) < _EXACT]
            trials.append((exact[0] if exact else 3, abs(way), end, share))
    if not trials:
        return None
    _, _, end, share = min(trials, key=lambda trial: trial[:2])
    first, last = max(2.0 - 3.0 * share, 0.0), max(3.0 * share - 1.0, 0.0)
    largest = max(first, last)
    return Spread(start, end, (first / largest, last / largest), _loads(measured, element))


def _loads(measured: Survey, element: Element) -> tuple[Name, ...]:
    """The loads per length, or the pressure, that a resultant is computed from."""
    system = measured.system
    held = names_in(system.force(element.forces[0]).magnitude)
    for definition in system.definitions:
        if definition.variable in held:
            held |= names_in(definition.expression)
    return tuple(
        variable.as_name
        for variable in system.variables.values()
        if variable.id in held
        and variable.dimension in (STIFFNESS, PRESSURE)
        and variable.role in (Role.GIVEN, Role.DERIVED, Role.UNKNOWN)
    )


def face_of(spread: Spread, direction: complex, half: float) -> complex:
    """The step (pt) from a body's axis to the side a load lies on."""
    way = (spread.end - spread.start) / abs(spread.end - spread.start)
    side = way * 1j
    return -side * half if dot(side, direction) > 0 else side * half
