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

from probgen.figures import parts, solid
from probgen.figures.axes import turning
from probgen.figures.body import encloses, limb_of, outline_of, own_weight
from probgen.figures.dimension import draw_angle, draw_length
from probgen.figures.fitting import POINTLIKE, fitted
from probgen.figures.hoist import hoists_of
from probgen.figures.load import ROPE, Seat, draw_load, hangs
from probgen.figures.metrics import Extent, extent
from probgen.figures.particle import Block, stacked
from probgen.figures.placement import Field, around, centred, set_in
from probgen.figures.scene import (
    LIGHT,
    MEDIUM,
    Arrow,
    Box,
    Scene,
    Shape,
    Spot,
    apart,
    bearing,
    bounds,
    composed,
    heading,
    line,
)
from probgen.figures.spread import Row, covers, rows
from probgen.figures.support import Supports
from probgen.figures.survey import (
    Survey,
    is_told,
    mass_name,
    openings,
    spans,
    survey,
    untold_in,
    ways_out,
)
from probgen.figures.telling import situation_words
from probgen.quantities.expression import Name, Number, Value
from probgen.statics.system import Body, Element, Kind, System

WIDTH: Final = 213.0
HEIGHT: Final = 160.0
"""The most room a situation takes, pt (75 mm x 56 mm)."""

_DISTORTED: Final = "not to scale"
_ROW: Final = 17.0  # height of a distributed load's arrows, pt
_TURN: Final = 11.0  # radius of a couple's arrow, pt
_PUSH: Final = 30.0  # length of a given force's arrow, pt
_LONGEST_ROPE: Final = 96.0  # the furthest a load is let down, pt


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
    measured = survey(system, {**values, **drawn} if drawn else values)
    measured = stacked(measured, {h.second.body: h.first.body for h in hoists_of(measured)})
    letters = frozenset(named)
    return fitted(
        lambda scale: _Drawing(measured, depicts, givens, scale, letters, bool(drawn)).draw(),
        _core(measured),
        complex(WIDTH, HEIGHT),
        spare=40.0,
    )


def _core(measured: Survey) -> complex:
    """Width and height (m) of what grows with the scale; a thin figure counts as a little wide."""
    places = [place for body in measured.system.bodies for place in measured.outline(body)]
    for element in measured.system.elements:
        places += [measured.places[name] for name in (element.at, element.toward) if name]
    width = max(p.real for p in places) - min(p.real for p in places)
    height = max(p.imag for p in places) - min(p.imag for p in places)
    least = 0.3 * max(width, height, POINTLIKE)
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
        self.loads: dict[str, list[Box]] = {}  # what stands on or hangs from a body
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
            elif element.kind == "couple":
                self._couple(element)
            elif element.kind == "cut":
                self._section(element)
        for body in self.system.bodies:
            self._spreads(body)
            self._shelves(body)
        self.supports.draw_posts()
        self._pulls()
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

    def _text(self, name: Name | Number) -> Name | Number:
        """What a quantity is labelled with: its number when it is data, else its symbol."""
        return self.givens.get(name.id, name) if isinstance(name, Name) else name

    # Loads and given forces

    def _weight(self, element: Element) -> None:
        body = self.system.body(element.body)
        mass = mass_name(self.system, element)
        text = self._text(mass) if mass else Name(element.id, element.symbol)
        tag = f"label:{mass.id if mass else element.id}"
        block = self.supports.blocks.get(body.id)
        first = next(e for e in self.system.elements if e.kind == Kind.WEIGHT and e.body == body.id)
        if block and block.level and element is not first:
            self._on_block(element, block, text, tag)
            return
        if block:
            spot = self._spot(element.at)
            if block.shape in ("person", "puller"):
                box = bounds(block.drawn(spot, ""))
                right, left = complex(box.right, spot.imag), complex(box.left, spot.imag)
                self.notes.append(_Note(text, ((right, 0.0), (left, 180.0)), tag))
            elif not any(b.overlaps(centred(text, spot + block.face)) for b in self.field.boxes):
                self.field.add(set_in(text, centred(text, spot + block.face), tag))
            else:
                self.notes.append(_Note(text, self._either_side(element), tag))
            return
        corners = self.supports.corners(body)
        own = own_weight(element, body) or bool(limb_of(self.depicts.get(body.id, "")))
        if element.id not in self.depicts and not body.particle and own:
            self.field.add(*parts.centre_mark(self._spot(element.at), f"centre:{body.id}"))
            self.notes.append(_Note(text, self._either_side(element), tag))
            return
        if corners and element.id not in self.depicts:
            self._in_solid(element, corners, text, tag)
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
        shapes, face = self._clear_load(depiction, seat, extent(text), f"load:{element.id}")
        self.field.add(*shapes)
        self.loads.setdefault(body.id, []).append(bounds(shapes))
        self.hung[body.id] = bounds(shapes).bottom
        if face:
            self.field.add(set_in(text, centred(text, face.centre), tag))
        else:
            self.notes.append(_Note(text, self._about(shapes, self._spot(element.at)), tag))

    def _clear_load(
        self, depiction: str, seat: Seat, room: Extent, tag: str
    ) -> tuple[tuple[Shape, ...], Box | None]:
        """A load; what hangs is let down until it is clear of all that is drawn."""
        first = draw_load(depiction, seat, room, tag)
        if not hangs(depiction, seat):
            return first
        rope = seat.rope
        while rope < _LONGEST_ROPE:
            shapes, face = draw_load(depiction, replace(seat, rope=rope), room, tag)
            box = bounds(shapes)
            load = replace(box, top=min(box.top, seat.spot.imag - rope)).grown(1.5)
            if load.bottom < load.top and not self.field.touched(load):
                return shapes, face
            rope += 6.0
        return first

    def _on_block(self, element: Element, block: Block, text: Name | Number, tag: str) -> None:
        """What else weighs on a block stands on it, at its end when somebody else does."""
        top = self._spot(element.at) + 1j * block.half.imag
        width = max(extent(text).width + 9.0, 13.0)
        taken = any(box.overlaps(_over(top, width)) for box in self.field.boxes) or (
            self.field.touched(_over(top, width))
        )
        if taken:
            top -= block.half.real - width / 2 - 2.0
        seat = Seat(top, 1 + 0j, 0.0, self.scale, 1)
        told = f"{self._depiction(element)} standing"
        shapes, face = draw_load(told, seat, extent(text), f"load:{element.id}")
        self.field.add(*shapes)
        if face:
            self.field.add(set_in(text, centred(text, face.centre), tag))
        else:
            self.notes.append(_Note(text, self._about(shapes, top), tag))

    def _in_solid(
        self, element: Element, corners: list[Spot], text: Name | Number, tag: str
    ) -> None:
        """What is kept in a box, or on top of it, as a block about its centre of mass."""
        spot, room = self._spot(element.at), extent(text)
        width, height = room.width + 8.0, room.height + room.depth + 7.0
        low, high = min(c.imag for c in corners), max(c.imag for c in corners)
        foot = spot.imag - height / 2
        foot = high if spot.imag > high else min(max(foot, low), high - height)
        inner = 0.8 * (max(c.real for c in corners) - min(c.real for c in corners))
        if width > inner:  # the number does not go in
            shapes = parts.block(complex(spot.real, foot), inner, height, f"load:{element.id}")
            self.field.add(*shapes)
            self.field.watch(line(foot * 1j + spot.real - inner / 2,
                                  (foot + height) * 1j + spot.real + inner / 2, LIGHT))
            at = 1j * (foot + height / 2)
            right, left = max(c.real for c in corners), min(c.real for c in corners)
            sides = ((right + at, 0.0), (left + at, 180.0))
            self.notes.append(_Note(text, sides, tag))
            return
        shapes = parts.block(complex(spot.real, foot), width, height, f"load:{element.id}")
        self.field.add(*shapes)
        centre = complex(spot.real, foot + height / 2)
        self.field.add(set_in(text, centred(text, centre), tag))

    def _shelves(self, body: Body) -> None:
        """The shelves of a bookcase, where they meet nothing it holds."""
        shown = self.depicts.get(body.id, "").lower()
        if not any(word in shown for word in ("bookcase", "shelves")) or len(body.outline) != 2:
            return
        foot, top = (self._spot(name) for name in body.outline)
        for a, b in solid.shelf_lines(foot, top, self.supports.half(body.id)):
            if not self.field.crossings(a, b, trim=2.0) and not self.field.hits_label(a, b):
                self.field.add(line(a, b, LIGHT, f"shelf:{body.id}"))

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
        half = self.supports.half(body.id)
        floors = [s for s in self.supports.surfaces if s.normal == 90.0 and s.height(spot) > 0]
        clear = min((floor.height(spot) for floor in floors), default=math.inf)
        limb = limb_of(self.depicts.get(body.id, ""))
        beyond = -ways[0] / abs(ways[0]) if len(ways) == 1 else 0j
        rope = 9.0 if limb else ROPE
        return Seat(
            spot, along, half, self.scale, facing, clear, rope, beyond, limb == "trunk"
        )

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
        if self.supports.stands_for(element):
            return
        direction = self.measured.direction_of(element)
        force = self.system.force(element.forces[0])
        if direction is None or not isinstance(force.magnitude, Name | Number):
            return
        spot, step = self.supports.rest(element), heading(direction) * _PUSH
        inside = self.measured.runs_along(self.measured.places[element.at], direction) or (
            encloses(self.supports.corners(self.system.body(element.body)), spot + 0.05 * step)
        )
        tail, head = (spot - step, spot) if inside else (spot, spot + step)
        tag = f"force:{element.id}"
        self.field.add(Arrow(tail, head, MEDIUM, tag))
        text = self._text(force.magnitude) if isinstance(force.magnitude, Name) else force.magnitude
        free = tail if inside else head
        away = direction + 180.0 if inside else direction
        anchors = ((free, away), (free, direction + 90.0), (free, direction - 90.0))
        self.notes.append(_Note(text, anchors, f"label:{element.id}"))

    def _pulls(self) -> None:
        """The sizes of the lines that pull or push with a given force, each once."""
        told: set[str] = set()
        for id, (start, end) in self.supports.lines.items():
            magnitude = self.system.force(self.system.element(id).forces[0]).magnitude
            if not isinstance(magnitude, Name) or magnitude.id in told:
                continue
            if magnitude.id in self.givens:
                told.add(magnitude.id)
                near, way = start + (end - start) * 0.7, bearing(end - start)
                anchors = ((near, way - 90.0), (near, way + 90.0), (end, way))
                self.notes.append(_Note(self._text(magnitude), anchors, f"label:{magnitude.id}"))

    def _spreads(self, body: Body) -> None:
        """The distributed loads on a body, each with its load per length at its ends."""
        own = [element for element in self.system.elements if element.body == body.id]
        drawn = rows(self.measured, own, self.scale, self.supports.half(body.id), _ROW)
        standing = self.loads.get(body.id, [])
        for row in drawn:
            tag = f"distributed:{row.element.id}"
            self.field.add(
                *parts.spread(*row.feet, row.direction, row.heights, tag, gaps=standing)
            )
        for row in drawn:
            self._row_labels(row, covered=any(covers(other, row) for other in drawn))

    def _row_labels(self, row: Row, *, covered: bool) -> None:
        away, shares = row.direction + 180.0, row.spread.shares
        first, last = row.tops
        if len(row.spread.names) == 2 and min(shares) > 0:
            places: list[tuple[tuple[Spot, float], ...]] = [((first, away),), ((last, away),)]
        elif covered:  # another load stands on this one
            ends = [(f + t) / 2 for f, t in zip(row.feet, row.tops, strict=True)]
            way = bearing(ends[1] - ends[0])
            places = [((ends[1], way), (ends[0], way + 180.0))]
        else:
            largest = first if row.heights[0] > row.heights[1] else last
            places = [(((first + last) / 2 if shares[0] == shares[1] else largest, away),)]
        for name, anchors in zip(row.spread.names, places, strict=False):
            text = self._text(name) if isinstance(name, Name) else name
            id = name.id if isinstance(name, Name) else row.element.id
            self.notes.append(_Note(text, anchors, f"label:{id}"))

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
            if opening.id in self.supports.inclines or not is_told(self.measured, opening.id):
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
        return [
            point
            for point in self.system.points
            if point in wanted and not untold_in(self.measured, point)
        ]


def _over(foot: Spot, width: float) -> Box:
    """The room a small thing takes that stands somewhere."""
    return Box(foot.real - width / 2, foot.imag + 1.0, foot.real + width / 2, foot.imag + 14.0)
