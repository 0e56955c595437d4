"""What a figure shows, as facts that a language says for readers who cannot see it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.figures.measured.vector import Vector
from probgen.quantities.expression import Name
from probgen.statics.system import Body, Element, Kind, System
from probgen.statics.taken_as_one import made_of
from probgen.working.direction import Way, way_of
from probgen.working.figure import Acting, BodyShown, DiagramShown, ForceShown, SituationShown

_HELD: Final = (
    Kind.HINGE, Kind.FIXED, Kind.ROLLER, Kind.CONTACT, Kind.ROUGH, Kind.CABLE, Kind.MUSCLE,
    Kind.ROPE, Kind.SPRING, Kind.STRUT, Kind.CUT,
)  # fmt: skip
_ALIGNED: Final = 0.5  # degrees from an axis within which a force is said to be along it


def situation_shown(system: System) -> SituationShown:
    """Each body, what holds it, and what loads it."""
    return SituationShown(tuple(_body_shown(system, body) for body in system.bodies))


def _body_shown(system: System, body: Body) -> BodyShown:
    elements = [each for each in system.elements if each.body == body.id]
    holds = tuple(_acting(each, body) for each in elements if each.kind in _HELD)
    loads = tuple(_acting(each, body) for each in elements if each.kind not in _HELD)
    return BodyShown(body.id, holds, loads)


def _acting(element: Element, body: Body) -> Acting:
    return Acting(element.id, element.kind, element.at if _has_extent(body) else "")


def diagram_shown(body: Body, forces: Sequence[Vector], points: Sequence[str]) -> DiagramShown:
    """Every force, where it acts, and which way; points: the letter of each force's point."""
    shown = (
        ForceShown(
            Name(force.symbol, force.symbol),
            point if _has_extent(body) else "",
            roughly(force.direction),
        )
        for force, point in zip(forces, points, strict=True)
    )
    return DiagramShown(made_of(body), tuple(shown))


def roughly(direction: float) -> Way:
    """Which way: along an axis where it is within half a degree of one, else in which quarter."""
    nearest = 90.0 * round(direction / 90.0)
    return way_of(nearest if abs(direction - nearest) < _ALIGNED else direction)


def _has_extent(body: Body) -> bool:
    return len(body.outline) > 1
