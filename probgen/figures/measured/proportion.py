"""Proportions a figure is drawn with that are not its true ones: said, and looked over."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum, auto
from itertools import chain, combinations, pairwise
from typing import Final

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around
from probgen.figures.paper.scene import Box
from probgen.figures.paper.tag import Tag, What
from probgen.figures.paper.type_metrics import extent
from probgen.statics.system import Body
from probgen.working.fact import Tell
from probgen.working.figure import ScaleNoted

_SMALL: Final = 8.2  # size of the note, pt
_CLEAR: Final = 3.5  # what is free about the note beyond what is about any label, pt
_NEAR: Final = 1e-6  # of the size of a body: no distance


def note_distorted(field: Field, tell: Tell) -> None:
    """Say that a drawing's proportions are not true: beside all that is drawn, or below it."""
    note = tell(ScaleNoted(lengths=False))
    box, room = field.box, extent(note, _SMALL)
    width, height = room.width, room.height + room.depth
    inside = (
        Box(left, bottom, left + width, bottom + height)
        for bottom in (box.bottom, (box.bottom + box.top - height) / 2)
        for part in (1.0, 0.0, 0.75, 0.5, 0.25)
        for left in (box.left + part * (box.width - width),)
        if box.width > width and box.height > height
    )
    roomy = (
        each for each in inside if field.is_free(each.grown(_CLEAR)) and not field.on_opaque(each)
    )
    below = around(note, ((complex(box.right - width / 2, box.bottom), 270.0),), size=_SMALL)
    field.place(note, chain(roomy, below), Tag(What.NOTE, "scale"), _SMALL)


class Amiss(Enum):
    """What is elsewhere in a drawn figure than in truth."""

    OFF_BODY = auto()
    CHANGED_PLACES = auto()
    TOGETHER = auto()


@dataclass(frozen=True, slots=True)
class Disturbance:
    """Points that are amiss; body: that they are off, or change places along, by its id."""

    amiss: Amiss
    points: tuple[str, ...]
    body: str = ""


def disturbances(true: Survey, drawn: Survey) -> Iterator[Disturbance]:
    """Points off their body, points in another order along it, points that fall together."""
    for body in true.system.bodies:
        yield from _out_of_order(body, true, drawn)
    before, after = _together(true), _together(drawn)
    for one, other in after:
        if (one, other) not in before:
            yield Disturbance(Amiss.TOGETHER, (one, other))


def _together(measured: Survey) -> list[tuple[str, str]]:
    """The pairs of points that lie at one place."""
    gaps = {
        (one, other): abs(measured.places[one] - measured.places[other])
        for one, other in combinations(measured.places, 2)
    }
    near = _NEAR * max(gaps.values(), default=0.0)
    return [pair for pair, gap in gaps.items() if gap <= near]


def _out_of_order(body: Body, true: Survey, drawn: Survey) -> Iterator[Disturbance]:
    """What has moved along a body's axis, or off it."""
    stations: dict[str, tuple[float, float]] = {}
    for name in _points_on(body, true):
        station = _station(drawn.outline(body), drawn.places[name])
        if station is None:
            yield Disturbance(Amiss.OFF_BODY, (name,), body.id)
        else:
            own = _station(true.outline(body), true.places[name])
            stations[name] = (own or 0.0, station)
    for (one, (a, new_a)), (other, (b, new_b)) in combinations(stations.items(), 2):
        if (a - b) * (new_a - new_b) < 0:
            yield Disturbance(Amiss.CHANGED_PLACES, (one, other), body.id)


def _points_on(body: Body, true: Survey) -> list[str]:
    """The points on a body's axis that something acts at or that it runs through."""
    acting = [force.point for force in true.system.forces if force.body == body.id]
    named = dict.fromkeys((*body.outline, *acting))
    return [n for n in named if _station(true.outline(body), true.places[n]) is not None]


def _station(axis: tuple[complex, ...], at: complex) -> float | None:
    """How far along an axis a place lies, metres; None beside it."""
    passed, length = 0.0, sum(abs(b - a) for a, b in pairwise(axis))
    for a, b in pairwise(axis):
        part = abs(b - a)
        if part > 0.0:
            along = (at - a) / (b - a) * part
            near = _NEAR * length
            if abs(along.imag) <= near and -near <= along.real <= part + near:
                return passed + min(max(along.real, 0.0), part)
        passed += part
    return 0.0 if not passed and axis[0] == at else None
