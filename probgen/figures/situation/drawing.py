"""The situation on the student's sheet: bodies, what holds them, loads, and the data drawn in.

Reactions and pulls that are to be found are shown by their supports, cables and muscles only,
never by arrows.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property, partial
from itertools import chain
from typing import Final

from probgen.bank.depiction import Depictions
from probgen.figures.measured.alt_text import situation_words
from probgen.figures.measured.proportion import note_distorted
from probgen.figures.measured.survey import (
    Opening,
    Span,
    Survey,
    is_told,
    openings,
    spans,
    survey,
    untold_in,
    ways_out,
)
from probgen.figures.paper.angle import draw_angle
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.dimension_line import draw_length
from probgen.figures.paper.placement import around
from probgen.figures.paper.scale import POINTLIKE, fitted
from probgen.figures.paper.scene import (
    LIGHT,
    MEDIUM,
    Arrow,
    Box,
    Scene,
    Segment,
    Spot,
    apart,
    bearing,
    heading,
    line,
)
from probgen.figures.paper.segment import meets
from probgen.figures.parts import mechanical
from probgen.figures.parts.axes import turning
from probgen.figures.parts.ground import Surface
from probgen.figures.situation.block import stacked
from probgen.figures.situation.body import outline_of
from probgen.figures.situation.carried import Burdens, Note
from probgen.figures.situation.contact import (
    draw_posts,
    draw_surfaces,
    floors_under,
    stands_for,
)
from probgen.figures.situation.line import Line, lines_of
from probgen.figures.situation.pulley import hoists_of
from probgen.figures.situation.shape import encloses
from probgen.figures.situation.stage import stage_at
from probgen.figures.situation.support import draw_supports
from probgen.quantities.expression import Name, Number, Value
from probgen.statics.system import Element, Kind, System

WIDTH: Final = 213.0
HEIGHT: Final = 170.0
"""The most room a situation takes, pt (75 mm x 60 mm)."""

_LABELS: Final = 28 + 31j  # what labels and dimension lines usually take beyond the strokes, pt
_TURN: Final = 11.0  # radius of a couple's arrow, pt
_PUSH: Final = 30.0  # length of a given force's arrow, pt
_NEAR: Final = 8.0  # how far from its thing a label is first tried, pt
_STRIP: Final = 20.0  # how far beside a body labels leave room for extension lines, pt
_REFERENCE: Final = 30.0  # the least an angle's reference line reaches, pt


def situation(
    system: System,
    values: Mapping[str, Value],
    depicts: Depictions,
    givens: Mapping[str, Number],
    *,
    named: Collection[str] = (),
    drawn: Mapping[str, float] | None = None,
) -> Scene:
    """The situation drawn to scale.

    values: coherent values of the givens, derived quantities and g.  An unknown length or angle
    is drawn to scale when it is among them, and at a size that tells nothing when it is not.
    depicts: what bodies and elements are drawn as.  givens: the printed number of each quantity.
    named: points the statement names, which are lettered with those of supports and lines.
    drawn: sizes (coherent units) some lengths or angles are drawn at instead of their own; the
    figure then says that it is not to scale.
    Raises KeyError when a value the geometry needs is missing.
    """
    measured = survey(system, {**values, **drawn} if drawn else values)
    measured = stacked(measured, {h.second.body: h.first.body for h in hoists_of(measured)})
    lettered, seen = frozenset(named), (spans(measured), openings(measured))
    shown = _Shown(measured, depicts, givens, lettered, bool(drawn), *seen)
    return fitted(partial(_Situation, shown), _core(shown), complex(WIDTH, HEIGHT), _LABELS)


def _core(shown: _Shown) -> complex:
    """Width and height (m) of what grows with the scale; a thin figure counts as a little wide."""
    measured = shown.measured
    places = [place for body in measured.system.bodies for place in measured.outline(body)]
    for element in measured.system.elements:
        places += [measured.places[name] for name in (element.at, element.toward) if name]
    if any(len(body.outline) > 1 for body in measured.system.bodies):
        places += [end for span in shown.spans for end in (span.start, span.end)]
    width = max(p.real for p in places) - min(p.real for p in places)
    height = max(p.imag for p in places) - min(p.imag for p in places)
    least = 0.3 * max(width, height, POINTLIKE)
    return complex(max(width, least), max(height, least))


@dataclass(frozen=True, slots=True)
class _Shown:
    """What a situation shows, at whatever scale; named: the points to be lettered.

    distorted: it is not to scale.
    """

    measured: Survey
    depicts: Depictions
    givens: Mapping[str, Number]
    named: frozenset[str]
    distorted: bool
    spans: tuple[Span, ...]
    openings: tuple[Opening, ...]


class _Situation:
    """One attempt at a situation, at one scale (pt for each metre)."""

    def __init__(self, shown: _Shown, scale: float, *, lengths_first: bool = False) -> None:
        self.shown = shown
        self.measured = shown.measured
        self.system = shown.measured.system
        self.scale = scale
        self.lengths_first = lengths_first
        self.field = Field()
        self.stage = stage_at(scale, shown.measured, shown.depicts, shown.givens)
        self.surfaces: tuple[Surface, ...] = ()
        self.inclines: frozenset[str] = frozenset()  # angles told at the foot of a slope
        self.lines: tuple[Line, ...] = ()
        self.notes: list[Note] = []

    def strokes(self) -> Box:
        """Bodies, what holds them, and what loads them."""
        held = draw_supports(self.stage, self.field)
        walls = list(held.surfaces)
        self.lines = tuple(lines_of(self.stage, walls))
        for each in self.lines:
            self.field.add(*each.shapes)
        self.surfaces, self.inclines = (*walls, *floors_under(self.stage)), held.inclines
        extended = any(len(body.outline) > 1 for body in self.system.bodies)
        draw_surfaces(self.field, self.surfaces, corners=extended)
        for body in self.system.bodies:
            self.field.add(*outline_of(self.stage, body, held.ends))
        self._loads()
        draw_posts(self.field, [each.ends[1] for each in self.lines if each.ends and each.posted])
        return self.field.box

    def _loads(self) -> None:
        """What loads the bodies, and the labels still to be set for it."""
        burdens = Burdens(self.stage, self.field, self.surfaces)
        for element in self.system.elements:
            match element.kind:
                case Kind.WEIGHT:
                    self._note(burdens.weight(element))
                case Kind.FORCE if not self.stage.is_inner(element):
                    self._note(self._force(element))
                case "couple":
                    self._couple(element)
                case "cut":
                    self._section(element)
        for body in self.system.bodies:
            self.notes += burdens.spreads(body)
            burdens.shelves(body)

    def _note(self, note: Note | None) -> None:
        if note:
            self.notes.append(note)

    def labelled(self) -> Scene:
        """All labels, angles and lengths added; where these find no place, before the labels."""
        self._pulls()
        self._angles()
        placed = self.lengths_first and self._lengths()
        self._notes()
        if not self.lengths_first:
            placed = self._lengths()
            if not placed:
                again = _Situation(self.shown, self.scale, lengths_first=True)
                again.strokes()
                return again.labelled()
        self._letters()
        if self.shown.distorted:
            note_distorted(self.field)
        shapes, words = tuple(self.field.shapes), situation_words(self.system)
        return Scene(shapes, self.field.box, self.scale, words, 0 if placed else 1)

    def _spot(self, point: str) -> Spot:
        return self.stage.spot(point)

    def _force(self, element: Element) -> Note | None:
        """A force of known direction, drawn pushing at its point or pulling away from it."""
        if stands_for(self.stage, element):
            return None
        direction = self.measured.direction_of(element)
        force = self.system.force(element.forces[0])
        if direction is None or not isinstance(force.magnitude, Name | Number):
            return None
        spot, step = self.stage.rest(element), heading(direction) * _PUSH
        inside = self.measured.runs_along(self.measured.places[element.at], direction) or (
            encloses(self.stage.corners(self.system.body(element.body)), spot + 0.05 * step)
        )
        tail, head = (spot - step, spot) if inside else (spot, spot + step)
        tag = f"force:{element.id}"
        self.field.add(Arrow(tail, head, MEDIUM, tag))
        text = self.stage.text(force.magnitude)
        free, near = (tail, tail + 0.3 * step) if inside else (head, head - 0.3 * step)
        away = direction + 180.0 if inside else direction
        beside = ((near, direction - 90.0), (near, direction + 90.0))
        # Beyond an arrow that points up or down an extension line may run on.
        anchors = beside if abs(step.real) < 1.0 else ((free, away), *beside)
        return Note(text, anchors, f"label:{element.id}")

    def _pulls(self) -> None:
        """The sizes of the lines that pull or push with a given force, each once."""
        told: set[str] = set()
        for each in self.lines:
            if not each.ends:
                continue
            start, end = each.ends
            magnitude = self.system.force(self.system.element(each.element).forces[0]).magnitude
            if not isinstance(magnitude, Name) or magnitude.id in told:
                continue
            if magnitude.id in self.shown.givens:
                told.add(magnitude.id)
                near, way = start + (end - start) * 0.7, bearing(end - start)
                anchors = ((near, way - 90.0), (near, way + 90.0), (end, way))
                text = self.stage.text(magnitude)
                self.notes.append(Note(text, anchors, f"label:{magnitude.id}"))

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
            self.notes.append(Note(self.stage.text(couple.moment), anchors, f"label:{couple.id}"))

    def _section(self, element: Element) -> None:
        ways = self.stage.ways(element)
        if ways:
            spot, along = self._spot(element.at), ways[0] / abs(ways[0])
            half = self.stage.halves[element.body]
            self.field.add(*mechanical.section(spot, along, half, f"section:{element.id}"))

    # Data

    def _angles(self) -> None:
        for opening in self.shown.openings:  # no label may lie where a reference line will
            start = self._paper(opening.at)
            end = start + heading(opening.reference) * _REFERENCE
            self.field.watch(line(start, end, LIGHT, f"reference:{opening.id}"))
        for opening in reversed(self.shown.openings):  # those of cables need their place most
            if opening.id in self.inclines or not is_told(self.measured, opening.id):
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
                self.stage.text(variable.as_name),
                opening.id,
                reference_drawn=drawn,
            )

    def _paper(self, place: complex) -> Spot:
        """A place (m) on paper, moved with the particle that is there."""
        points = self.measured.places.items()
        moved = self.stage.shifts
        at = next((name for name, p in points if name in moved and abs(p - place) < 1e-9), "")
        return place * self.scale + moved.get(at, 0j)

    def _on_ground(self, spot: Spot, direction: float) -> bool:
        """Whether a surface through a spot runs on in a direction."""
        for surface in self.surfaces:
            if abs(surface.height(spot)) < 2.5:
                return apart(direction % 180.0, bearing(surface.tangent) % 180.0) < 1.0
        return False

    def _lengths(self) -> bool:
        """The named lengths, the shortest nearest; whether each found a place of its own."""
        measures = sorted(self.shown.spans, key=lambda span: abs(span.end - span.start))
        placed = True
        for span in measures:
            text = self.stage.text(self.system.variables[span.id].as_name)
            start, end = span.start * self.scale, span.end * self.scale
            placed &= draw_length(self.field, start, end, text, span.id, self._half(span))
        return placed

    def _half(self, span: Span) -> float:
        """Half the thickness of what a length is measured along, pt."""
        bodies = [b for b in self.system.bodies if ways_out(self.measured.outline(b), span.end)]
        return max((self.stage.halves[body.id] for body in bodies), default=0.0)

    @cached_property
    def _strips(self) -> list[Segment]:
        """Where extension lines are likely to run, which labels leave free if they can."""
        strips = []
        for span in self.shown.spans:
            normal = (span.end - span.start) / abs(span.end - span.start) * 1j
            reach = self._half(span) + _STRIP
            for end in (span.start * self.scale, span.end * self.scale):
                for side in (normal, -normal):
                    far = end + side * reach
                    strips.append((end.real, end.imag, far.real, far.imag))
        return strips

    def _off_strips(self, boxes: Iterable[Box]) -> Iterator[Box]:
        strips = [] if self.lengths_first else self._strips
        return (box for box in boxes if not any(meets(strip, box) for strip in strips))

    def _notes(self) -> None:
        for note in self.notes:
            near = self._off_strips(around(note.text, note.anchors, farthest=_NEAR))
            boxes = chain(near, around(note.text, note.anchors))
            self.field.place(note.text, boxes, note.tag)

    def _letters(self) -> None:
        """The letters of the points a problem speaks of: supports, cables, ends."""
        for point in self._lettered():
            half = self._half_at(point)
            spot, name = self._spot(point), Name(point, point)
            above = tuple((spot, direction) for direction in (135.0, 45.0, 90.0))
            below = tuple((spot, direction) for direction in (225.0, 315.0, 270.0))
            near = around(name, above, half, farthest=_NEAR)
            boxes = chain(near, around(name, (*above, *below), half))
            self.field.place(name, boxes, f"letter:{point}")

    def _half_at(self, point: str) -> float:
        """Half the thickness (pt) of the slender bodies at a point."""
        at = self.measured.places[point]
        halves = [
            self.stage.halves[body.id]
            for body in self.system.bodies
            if ways_out(self.measured.outline(body), at) and not self.stage.corners(body)
        ]
        return max(halves, default=0.0)

    def _lettered(self) -> list[str]:
        """Where supports and lines act on bodies with extent, and what the statement names."""
        shown = {body.id for body in self.system.bodies if len(body.outline) > 1}
        wanted = set(self.shown.named)
        for element in self.system.elements:
            if element.body in shown and element.kind not in (Kind.WEIGHT, Kind.DISTRIBUTED):
                wanted |= {element.at, element.toward}
        return [
            point
            for point in self.system.points
            if point in wanted and not untold_in(self.measured, point)
        ]
