"""The flat parts and the wires that a body is made of: what bounds them, in metres."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import heading
from probgen.statics.shape import Outline, Shape
from probgen.statics.system import Body, Kind

_STEPS: Final = 48  # along half a circle

Run = tuple[complex, ...]


@dataclass(frozen=True, slots=True)
class Flat:
    """Parts and holes by their outlines, wires by their lines; the centres of round holes."""

    parts: tuple[Run, ...] = ()
    holes: tuple[Run, ...] = ()
    wires: tuple[Run, ...] = ()
    centres: Run = ()

    def scaled(self, scale: float) -> Flat:
        """The same, a metre so many pt."""
        parts, holes, wires = (
            tuple(tuple(place * scale for place in run) for run in runs)
            for runs in (self.parts, self.holes, self.wires)
        )
        return Flat(parts, holes, wires, tuple(place * scale for place in self.centres))


def flat_of(measured: Survey, body: Body) -> Flat | None:
    """What a body is made of; None of one whose weights have no shapes."""
    shapes = [(e.kind, e.shape) for e in measured.system.elements if e.body == body.id and e.shape]
    if not shapes:
        return None
    wires = tuple(_run(measured, shape) for _, shape in shapes if shape.outline.is_wire)
    flat = [(kind, _run(measured, shape)) for kind, shape in shapes if not shape.outline.is_wire]
    parts = tuple(run for kind, run in flat if kind is not Kind.HOLE)
    holes = tuple(run for kind, run in flat if kind is Kind.HOLE)
    round_holes = (s for kind, s in shapes if kind is Kind.HOLE and s.outline is Outline.CIRCLE)
    centres = tuple(measured.places[shape.points[0]] for shape in round_holes)
    return Flat(parts, holes, wires, centres)


def _run(measured: Survey, shape: Shape) -> Run:
    places = tuple(measured.places[name] for name in shape.points)
    match shape.outline:
        case Outline.TRIANGLE | Outline.WIRE:
            return places
        case Outline.RECTANGLE:
            one, other = places
            return one, complex(other.real, one.imag), other, complex(one.real, other.imag)
    radius, whole = measured.number(shape.radius), shape.outline is Outline.CIRCLE
    first = measured.number(shape.facing) - 90.0
    count = 2 * _STEPS if whole else _STEPS + 1  # a circle ends where it begins
    return tuple(places[0] + radius * heading(first + 180.0 / _STEPS * n) for n in range(count))
