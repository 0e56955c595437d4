"""The situation on the student's sheet: bodies, what holds them, loads, and the data drawn in.

Reactions and pulls that are to be found are shown by their supports, cables and muscles only,
never by arrows.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from itertools import chain
from typing import Final

from probgen.figures import parts
from probgen.figures.axes import turning
from probgen.figures.dimension import draw_angle, draw_length
from probgen.figures.fitting import fitted
from probgen.figures.load import Seat, draw_load
from probgen.figures.metrics import extent
from probgen.figures.particle import stacked
from probgen.figures.placement import Field, around, centred, set_in
from probgen.figures.scene import (
    MEDIUM,
    Arrow,
    Scene,
    Shape,
    Spot,
    apart,
    bearing,
    bounds,
    composed,
    heading,
)
from probgen.figures.spread import face_of, spread_of
from probgen.figures.support import Supports, outline_of, own_weight
from probgen.figures.survey import Survey, mass_name, openings, spans, survey, ways_out
from probgen.figures.telling import situation_words
from probgen.quantities.expression import Name, Number, Value
from probgen.statics.system import Element, Kind, System

WIDTH: Final = 213.0
HEIGHT: Final = 160.0
"""The most room a situation takes, pt (75 mm x 56 mm)."""

_DISTORTED: Final = "not to scale"
_ROW: Final = 17.0  # height of a distributed load's arrows, pt
_TURN: Final = 11.0  # radius of a couple's arrow, pt
_PUSH: Final = 30.0  # length of a given force's arrow, pt


def situation(
    system: System,
    values: Mapping[str, Value],
    depicts: Mapping[str, str],
    givens: Mapping[str, Number],
    *,
    named: Collection[str] = (),
    drawn: Mapping[str, float] | None = None,
) -> Scene:
    """The situation drawn to scale.

    values: coherent values of the givens, derived quantities and g.  An unknown length or angle
    is drawn to scale when it is among them, and at a size that tells nothing when it is not.
    depicts: what a body or element is, by its id.  givens: the printed number of each quantity.
    named: points the statement names, which are lettered with those of supports and lines.
    drawn: sizes (coherent units) some lengths or angles are drawn at instead of their own; the
    figure then says that it is not to scale.
    Raises KeyError when a value the geometry needs is missing.
    """
    measured = stacked(survey(system, {**values, **drawn} if drawn else values))
    letters = frozenset(named)
    return fitted(
        lambda scale: _Drawing(measured, depicts, givens, scale, letters, bool(drawn)).draw(),
        _core(measured),
        complex(WIDTH, HEIGHT),
        spare=50.0,
    )


def _core(measured: Survey) -> complex:
    """Width and height (m) of what grows with the scale; a thin figure counts as a little wide."""
    places = [place for body in measured.system.bodies for place in measured.outline(body)]
    for element in measured.system.elements:
        places += [measured.places[name] for name in (element.at, element.toward) if name]
    width = max(p.real for p in places) - min(p.real for p in places)
    height = max(p.imag for p in places) - min(p.imag for p in places)
    least = 0.3 * max(width, height, 1e-6)
    return complex(max(width, least), max(height, least))


@dataclass(frozen=True, slots=True)
class _Note:
    """A label still to be set: what it says, where it may lie, and its tag."""

    text: Name | Number
    anchors: tuple[tuple[Spot, float], ...]
    tag: str


class _Drawing:
    """One attempt at a situation, at one scale (pt for each metre)."""

    def __init__(
        self,
        measured: Survey,
        depicts: Mapping[str, str],
        givens: Mapping[str, Number],
        scale: float,
        named: frozenset[str],
        distorted: bool,
    ) -> None:
        self.measured = measured
        self.system = measured.system
        self.depicts = depicts
        self.givens = givens
        self.scale = scale
        self.field = Field()
        self.supports = Supports(measured, depicts, givens, scale, self.field)
        self.named = named
        self.distorted = distorted
        self.notes: list[_Note] = []
        self.hung: dict[str, float] = {}  # how far down what hangs from a body reaches, pt

    def draw(self) -> Scene:
        self.supports.draw()
        for body in self.system.bodies:
            self.field.add(*outline_of(self.supports, body))
        for element in self.system.elements:
            if element.kind == Kind.WEIGHT:
                self._weight(element)
            elif element.kind == Kind.FORCE and not self.supports.inner(element):
                self._force(element)
            elif element.kind == Kind.DISTRIBUTED:
                self._spread(element)
            elif element.kind == "couple":
                self._couple(element)
            elif element.kind == "cut":
                self._section(element)
        self._angles()
        for note in self.notes:
            self.field.place(note.text, around(note.text, note.anchors), note.tag)
        self._lengths()
        self._letters()
        if self.distorted:
            box = bounds(self.field.shapes)
            corners = ((complex(box.right - 20.0, box.bottom), 270.0),)
            self.field.place(_DISTORTED, around(_DISTORTED, corners), "note:scale")
        return composed(self.field.shapes, self.scale, situation_words(self.system))

    def _spot(self, point: str) -> Spot:
        return self.supports.spot(point)

    def _text(self, name: Name) -> Name | Number:
        """What a quantity is labelled with: its number when it is data, else its symbol."""
        return self.givens.get(name.id, name)

    # Loads and given forces

    def _weight(self, element: Element) -> None:
        body = self.system.body(element.body)
        mass = mass_name(self.system, element)
        text = self._text(mass) if mass else Name(element.id, element.symbol)
        tag = f"label:{mass.id if mass else element.id}"
        block = self.supports.blocks.get(body.id)
        if block:
            spot = self._spot(element.at)
            if block.shape == "person":
                box = bounds(block.drawn(spot, ""))
                right, left = complex(box.right, spot.imag), complex(box.left, spot.imag)
                self.notes.append(_Note(text, ((right, 0.0), (left, 180.0)), tag))
            elif not any(box.overlaps(centred(text, spot)) for box in self.field.boxes):
                self.field.add(set_in(text, centred(text, spot), tag))
            else:
                self.notes.append(_Note(text, self._either_side(element), tag))
            return
        if element.id not in self.depicts and not body.particle and own_weight(element, body):
            self.field.add(*parts.centre_mark(self._spot(element.at), f"centre:{body.id}"))
            self.notes.append(_Note(text, self._either_side(element), tag))
            return
        depiction, seat = self._depiction(element), self._seat(element)
        if len(body.outline) == 1:
            if any(e.kind == Kind.HINGE and e.body == body.id for e in self.system.elements):
                self.notes.append(_Note(text, ((seat.spot, 90.0), (seat.spot, 0.0)), tag))
                return
            # No surface carries it, so it hangs from its lines, below what hangs there already.
            depiction += " hung"
            below = self.hung.get(body.id, seat.spot.imag)
            seat = replace(seat, spot=complex(seat.spot.real, below))
        shapes, face = draw_load(
            depiction, seat, extent(text), f"load:{element.id}"
        )
        self.field.add(*shapes)
        self.hung[body.id] = bounds(shapes).bottom
        if face:
            self.field.add(set_in(text, centred(text, face.centre), tag))
        else:
            self.notes.append(_Note(text, self._about(shapes, self._spot(element.at)), tag))

    def _depiction(self, element: Element) -> str:
        return self.depicts.get(element.id) or element.name

    def _seat(self, element: Element) -> Seat:
        spot = self._spot(element.at)
        body = self.system.body(element.body)
        ways = self.supports.ways(element)
        along = ways[0] / abs(ways[0]) if ways else 1 + 0j
        if along.real < 0 or (along.real == 0 and along.imag < 0):
            along = -along
        outline = [self._spot(name) for name in body.outline]
        middle = sum(outline, 0j) / len(outline)
        facing = 1 if middle.real >= spot.real else -1
        half = 2.0 if "forearm" in self.depicts.get(body.id, "") else self.supports.half(body.id)
        floors = [s for s in self.supports.surfaces if s.normal == 90.0 and s.height(spot) > 0]
        clear = min((floor.height(spot) for floor in floors), default=math.inf)
        return Seat(spot, along, half, self.scale, facing, clear)

    def _either_side(self, element: Element) -> tuple[tuple[Spot, float], ...]:
        spot, half = self._spot(element.at), self.supports.half(element.body)
        ways = self.supports.ways(element)
        along = bearing(ways[0]) if ways else 0.0
        sides = sorted((along + 90.0, along - 90.0), key=lambda d: heading(d).imag)
        return tuple((spot + heading(side) * half, side) for side in sides)

    def _about(self, shapes: tuple[Shape, ...], spot: Spot) -> tuple[tuple[Spot, float], ...]:
        """The sides of a load a label may lie on; not the one it meets its body with."""
        box = bounds(shapes)
        middle = box.centre
        hangs = box.top < spot.imag + 3.0
        end = (box.bottom, 270.0) if hangs else (box.top, 90.0)
        return (
            (complex(box.right, middle.imag), 0.0),
            (complex(box.left, middle.imag), 180.0),
            (complex(middle.real, end[0]), end[1]),
        )

    def _force(self, element: Element) -> None:
        """A force of known direction, drawn pushing at its point or pulling away from it."""
        direction = self.measured.direction_of(element)
        force = self.system.force(element.forces[0])
        if direction is None or not isinstance(force.magnitude, Name | Number):
            return
        spot, step = self.supports.rest(element), heading(direction) * _PUSH
        inside = self.measured.runs_along(self.measured.places[element.at], direction)
        tail, head = (spot - step, spot) if inside else (spot, spot + step)
        tag = f"force:{element.id}"
        self.field.add(Arrow(tail, head, MEDIUM, tag))
        text = self._text(force.magnitude) if isinstance(force.magnitude, Name) else force.magnitude
        free = tail if inside else head
        away = direction + 180.0 if inside else direction
        anchors = ((free, away), (free, direction + 90.0), (free, direction - 90.0))
        self.notes.append(_Note(text, anchors, f"label:{element.id}"))

    def _spread(self, element: Element) -> None:
        """A distributed load as a row of arrows, with its load per length at its ends."""
        load, direction = spread_of(self.measured, element), self.measured.direction_of(element)
        if load is None or direction is None:
            return
        step = heading(direction)
        side = face_of(load, step, self.supports.half(element.body))
        start, end = load.start * self.scale + side, load.end * self.scale + side
        heights = (_ROW * load.shares[0], _ROW * load.shares[1])
        tag = f"distributed:{element.id}"
        self.field.add(*parts.spread(start, end, direction, heights, tag))
        tops = (start - step * heights[0], end - step * heights[1])
        if len(load.names) == 2 and min(load.shares) > 0:
            places = [((tops[0], direction + 180.0),), ((tops[1], direction + 180.0),)]
        else:
            middle = (tops[0] + tops[1]) / 2
            largest = tops[0] if heights[0] > heights[1] else tops[1]
            spot = middle if heights[0] == heights[1] else largest
            places = [((spot, direction + 180.0),)]
        for name, anchors in zip(load.names, places, strict=False):
            self.notes.append(_Note(self._text(name), anchors, f"label:{name.id}"))

    def _couple(self, element: Element) -> None:
        """A couple whose sense is known, as a curved arrow about its point."""
        for couple in self.system.couples:
            known = couple.element == element.id and self.measured.has(couple.moment)
            if not known or couple.pair or not isinstance(couple.moment, Name):
                continue
            spot = self._spot(element.at)
            sense = 1 if self.measured.number(couple.moment) > 0 else -1
            self.field.add(*turning(spot, _TURN, sense, MEDIUM, f"couple:{couple.id}"))
            anchors = ((spot + 1j * _TURN, 90.0), (spot - 1j * _TURN, 270.0))
            self.notes.append(_Note(self._text(couple.moment), anchors, f"label:{couple.id}"))

    def _section(self, element: Element) -> None:
        ways = self.supports.ways(element)
        if ways:
            spot, along = self._spot(element.at), ways[0] / abs(ways[0])
            half = self.supports.half(element.body)
            self.field.add(*parts.section(spot, along, half, f"section:{element.id}"))

    # Data

    def _angles(self) -> None:
        for opening in reversed(openings(self.measured)):  # those of cables need their place most
            if opening.id in self.supports.inclines:
                continue
            variable = self.system.variables[opening.id]
            at = self._paper(opening.at)
            drawn = self.measured.runs_along(opening.at, opening.reference) or self._on_ground(
                at, opening.reference
            )
            draw_angle(
                self.field,
                at,
                opening.reference,
                opening.direction,
                self._text(variable.as_name),
                opening.id,
                reference_drawn=drawn,
            )

    def _paper(self, place: complex) -> Spot:
        """A place (m) on paper, moved with the particle that is there."""
        points = self.measured.places.items()
        moved = self.supports.shifts
        at = next((name for name, p in points if name in moved and abs(p - place) < 1e-9), "")
        return place * self.scale + moved.get(at, 0j)

    def _on_ground(self, spot: Spot, direction: float) -> bool:
        """Whether a surface through a spot runs on in a direction."""
        for surface in self.supports.surfaces:
            if abs(surface.height(spot)) < 2.5:
                return apart(direction % 180.0, bearing(surface.tangent) % 180.0) < 1.0
        return False

    def _lengths(self) -> None:
        measures = sorted(spans(self.measured), key=lambda span: abs(span.end - span.start))
        for span in measures:
            variable = self.system.variables[span.id]
            bodies = [b for b in self.system.bodies if ways_out(self.measured.outline(b), span.end)]
            half = max((self.supports.half(body.id) for body in bodies), default=0.0)
            draw_length(
                self.field,
                span.start * self.scale,
                span.end * self.scale,
                self._text(variable.as_name),
                span.id,
                half,
            )

    def _letters(self) -> None:
        """The letters of the points a problem speaks of: supports, cables, ends."""
        for point in self._lettered():
            half = max(self.supports.half(body.id) for body in self.system.bodies)
            spot, name = self._spot(point), Name(point, point)
            anchors = tuple((spot, direction) for direction in (135.0, 45.0, 90.0))
            below = tuple((spot, direction) for direction in (225.0, 315.0, 270.0))
            near = around(name, anchors, half, farthest=5.0)
            tried = chain(near, around(name, (*anchors, *below), half))
            self.field.place(name, tried, f"letter:{point}")

    def _lettered(self) -> list[str]:
        """Where supports and lines act on bodies with extent, and what the statement names."""
        shown = {body.id for body in self.system.bodies if len(body.outline) > 1}
        wanted = set(self.named)
        for element in self.system.elements:
            if element.body in shown and element.kind not in (Kind.WEIGHT, Kind.DISTRIBUTED):
                wanted |= {element.at, element.toward}
        return [point for point in self.system.points if point in wanted]
