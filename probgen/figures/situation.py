"""The situation on the student's sheet: bodies, what holds them, loads, and the data drawn in.

Reactions and pulls that are to be found are shown by their supports, cables and muscles only,
never by arrows.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from itertools import chain
from typing import Final

from probgen.figures import parts
from probgen.figures.axes import turning
from probgen.figures.body import encloses, outline_of
from probgen.figures.burden import Burdens, Note
from probgen.figures.contact import draw_posts, stands_for
from probgen.figures.dimension import draw_angle, draw_length
from probgen.figures.fitting import POINTLIKE, fitted
from probgen.figures.hoist import hoists_of
from probgen.figures.particle import stacked
from probgen.figures.placement import Field, around
from probgen.figures.scene import (
    LIGHT,
    MEDIUM,
    Arrow,
    Scene,
    Spot,
    apart,
    bearing,
    bounds,
    composed,
    heading,
    line,
)
from probgen.figures.support import Supports
from probgen.figures.survey import (
    Survey,
    is_told,
    openings,
    spans,
    survey,
    untold_in,
    ways_out,
)
from probgen.figures.telling import situation_words
from probgen.quantities.expression import Name, Number, Value
from probgen.statics.system import Element, Kind, System

WIDTH: Final = 213.0
HEIGHT: Final = 160.0
"""The most room a situation takes, pt (75 mm x 56 mm)."""

_DISTORTED: Final = "not to scale"
_TURN: Final = 11.0  # radius of a couple's arrow, pt
_PUSH: Final = 30.0  # length of a given force's arrow, pt
_REFERENCE: Final = 30.0  # the least an angle's reference line reaches, pt


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
        spare=55.0,
    )


def _core(measured: Survey) -> complex:
    """Width and height (m) of what grows with the scale; a thin figure counts as a little wide."""
    places = [place for body in measured.system.bodies for place in measured.outline(body)]
    for element in measured.system.elements:
        places += [measured.places[name] for name in (element.at, element.toward) if name]
    if any(len(body.outline) > 1 for body in measured.system.bodies):
        places += [end for span in spans(measured) for end in (span.start, span.end)]
    width = max(p.real for p in places) - min(p.real for p in places)
    height = max(p.imag for p in places) - min(p.imag for p in places)
    least = 0.3 * max(width, height, POINTLIKE)
    return complex(max(width, least), max(height, least))


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
        self.notes: list[Note] = []
        self.burdens = Burdens(self.supports, self.notes)

    def draw(self) -> Scene:
        self.supports.draw()
        for body in self.system.bodies:
            self.field.add(*outline_of(self.supports, body))
        for element in self.system.elements:
            if element.kind == Kind.WEIGHT:
                self.burdens.weight(element)
            elif element.kind == Kind.FORCE and not self.supports.inner(element):
                self._force(element)
            elif element.kind == "couple":
                self._couple(element)
            elif element.kind == "cut":
                self._section(element)
        for body in self.system.bodies:
            self.burdens.spreads(body)
            self.burdens.shelves(body)
        draw_posts(self.supports)
        self._pulls()
        self._angles()
        for note in self.notes:
            self.field.place(note.text, around(note.text, note.anchors), note.tag)
        self._letters()
        self._lengths()
        if self.distorted:
            box = bounds(self.field.shapes)
            corners = ((complex(box.right - 20.0, box.bottom), 270.0),)
            self.field.place(_DISTORTED, around(_DISTORTED, corners), "note:scale")
        return composed(self.field.shapes, self.scale, situation_words(self.system))

    def _spot(self, point: str) -> Spot:
        return self.supports.spot(point)

    def _force(self, element: Element) -> None:
        """A force of known direction, drawn pushing at its point or pulling away from it."""
        if stands_for(self.supports, element):
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
        text = self.burdens.text(force.magnitude)
        free = tail if inside else head
        away = direction + 180.0 if inside else direction
        anchors = ((free, away), (free, direction + 90.0), (free, direction - 90.0))
        self.notes.append(Note(text, anchors, f"label:{element.id}"))

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
                text = self.burdens.text(magnitude)
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
            self.notes.append(Note(self.burdens.text(couple.moment), anchors, f"label:{couple.id}"))

    def _section(self, element: Element) -> None:
        ways = self.supports.ways(element)
        if ways:
            spot, along = self._spot(element.at), ways[0] / abs(ways[0])
            half = self.supports.half(element.body)
            self.field.add(*parts.section(spot, along, half, f"section:{element.id}"))

    # Data

    def _angles(self) -> None:
        for opening in openings(self.measured):  # no label may lie where a reference line will
            start = self._paper(opening.at)
            end = start + heading(opening.reference) * _REFERENCE
            self.field.watch(line(start, end, LIGHT, f"reference:{opening.id}"))
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
                self.burdens.text(variable.as_name),
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
                self.burdens.text(variable.as_name),
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
