"""The situation on the student's sheet: bodies, what holds them, loads, and the data drawn in.

Reactions and pulls that are to be found are shown by their supports, cables and muscles only,
never by arrows.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from itertools import chain
from typing import Final

from probgen.bank.depiction import TREES, Depictions, Source
from probgen.bank.labels import Labels
from probgen.figures.measured.alt_text import situation_shown
from probgen.figures.measured.opening import Opening, openings
from probgen.figures.measured.proportion import note_distorted
from probgen.figures.measured.states import set_apart
from probgen.figures.measured.survey import Span, is_distorted, is_told, survey, ways_out
from probgen.figures.paper.angle import arc_pieces, draw_angle
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.dimension_line import draw_length, strips
from probgen.figures.paper.enlargement import enlarged
from probgen.figures.paper.scale import LEEWAY, POINTLIKE, fits, fitted, nearly
from probgen.figures.paper.scene import (
    LIGHT,
    MEDIUM,
    Arrow,
    Box,
    Scene,
    Spot,
    Stated,
    Text,
    apart,
    bearing,
    heading,
    line,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts.ground import Surface
from probgen.figures.situation.at_work import at_work, reach_of, underfoot
from probgen.figures.situation.block import stacked
from probgen.figures.situation.body import outline_of
from probgen.figures.situation.caption import draw_captions
from probgen.figures.situation.carried import Burdens, Note, weighed
from probgen.figures.situation.choice import as_near
from probgen.figures.situation.contact import (
    draw_posts,
    draw_surfaces,
    floors_under,
    stands_for,
)
from probgen.figures.situation.couple import draw_couples
from probgen.figures.situation.drawn_line import Line
from probgen.figures.situation.layer import layered
from probgen.figures.situation.lettering import set_notes
from probgen.figures.situation.line import lines_of
from probgen.figures.situation.linked import upward
from probgen.figures.situation.north import draw_north
from probgen.figures.situation.points import draw_letters
from probgen.figures.situation.pull import told_pulls
from probgen.figures.situation.pulley import schematic
from probgen.figures.situation.scenery import bedded, draw_scenery
from probgen.figures.situation.section import section_marks
from probgen.figures.situation.settling import noted, settled
from probgen.figures.situation.shape import encloses
from probgen.figures.situation.shown import Shown, told_lengths
from probgen.figures.situation.spread import draw_spreads
from probgen.figures.situation.stage import stage_at
from probgen.figures.situation.support import draw_inclines, draw_supports
from probgen.figures.situation.water import beds_under, walls_above
from probgen.figures.situation.wedge import draw_wedge_angles
from probgen.quantities.expression import Name, Number, Value, negative
from probgen.statics.system import Element, Kind, System
from probgen.working.fact import Tell

WIDTH: Final = 241.0
HEIGHT: Final = 178.0
"""The room of a situation, pt (85 mm x 63 mm); a cramped one may be a little larger."""

TALL: Final = 227.0
"""How high one may be (80 mm) that is narrow otherwise."""

_ROOM: Final = complex(WIDTH, HEIGHT)
_HIGH: Final = complex(WIDTH, TALL)
_NARROW: Final = 170.0  # width of a situation that may be higher, pt (60 mm)
_LABELS: Final = 28 + 31j  # what labels and dimension lines usually take beyond the strokes
_SMALL: Final = 0.5  # of the room, below which lengths are rather told tersely
_LARGER: Final = 1.3  # by how much a figure told tersely has to gain
_STRIP: Final = 30.0  # how far beside a body labels leave room for extension lines, pt
_STOUT: Final = 8.0  # half the thickness from which a body hides its axis, pt
_REFERENCE: Final = 30.0  # the least an angle's reference line reaches, pt


def situation(
    system: System,
    labels: Labels,
    values: Mapping[str, Value],
    depicts: Depictions,
    givens: Mapping[str, Number],
    *,
    tell: Tell,
    named: Collection[str] = (),
    untold: Collection[str] = (),
    drawn: Mapping[str, float] | None = None,
    sections: Sequence[tuple[str, str]] = (),
) -> Scene:
    """The situation drawn to scale.

    values: coherent values of the givens, derived quantities and g.  An unknown length or angle
    is drawn to scale when it is among them, and at a size that tells nothing when it is not.
    depicts: what bodies and elements are drawn as.  givens: the printed number of each quantity.
    tell: says what it shows and what is printed in it.
    named: points the statement names, which are lettered with those of supports and lines, and
    the pulls it calls by a letter.
    untold: forces no text of the sheet tells the letter of: what has one is drawn without it.
    drawn: sizes (coherent units) some lengths or angles are drawn at instead of their own; the
    figure then says that it is not to scale, as it does where one is unknown.
    sections: the bodies that are cut, and where.
    Raises KeyError when a value the geometry needs is missing.
    """
    measured = set_apart(survey(system, labels, {**values, **(drawn or {})}))
    measured = stacked(measured, schematic(measured))
    lettered, seen = frozenset(named), (told_lengths(measured, depicts), openings(measured))
    distorted = bool(drawn) or is_distorted(measured)
    told = tell, lettered, frozenset(untold)
    shown = Shown(measured, depicts, givens, *told, distorted, *seen, sections=tuple(sections))
    scene = _fitted(shown, _ROOM)
    if scene.box.width >= _NARROW:
        return scene
    higher = _fitted(shown, _HIGH)
    return higher if fits(higher, _HIGH) else scene


def _fitted(shown: Shown, room: complex) -> Scene:
    """The drawing that fills its room; with lengths told tersely where that helps much."""
    scene, core = _scaled(shown, room), shown.core
    if max(core.real, core.imag) <= POINTLIKE:  # particles alone: their parts are of fixed size
        return enlarged(scene, room, weighed(shown.measured.system))
    filled = scene.scale * max(core.real / room.real, core.imag / room.imag)
    if core.real > POINTLIKE and (scene.strained or filled < _SMALL or not fits(scene, room)):
        other = _scaled(replace(shown, terse=True), room)
        if other.strained < scene.strained or other.scale > _LARGER * scene.scale:
            begin = partial(_Situation, shown)
            rooms = (room, room + LEEWAY) if fits(other, room) else (room + LEEWAY,)
            told = (nearly(begin, other.scale, each) for each in rooms)
            return next((each for each in told if each), other)
    return scene


def _scaled(shown: Shown, room: complex) -> Scene:
    return fitted(partial(_Situation, shown), shown.core, room, _LABELS)


class _Situation:
    """One attempt at a situation, at one scale (pt for each metre)."""

    def __init__(self, shown: Shown, scale: float) -> None:
        self.shown = shown
        self.measured = shown.measured
        self.system = shown.measured.system
        self.scale = min(scale, shown.largest_scale)
        self.lengths_first = False
        self.field = Field()
        self.stage = stage_at(self.scale, shown.measured, shown.depicts, shown.givens)
        self.surfaces: tuple[Surface, ...] = ()
        self.inclines: frozenset[str] = frozenset()  # angles told at a slope's foot or a wedge
        self.lines: tuple[Line, ...] = ()
        self.notes: list[Note] = []
        self.things: list[Box] = []  # what has a mass of its own

    def strokes(self) -> Box:
        """Bodies, what holds them, and what loads them."""
        held = draw_supports(self.stage, self.field)
        walls = [*held.surfaces, *walls_above(self.stage), *beds_under(self.stage)]
        self.lines = tuple(lines_of(self.stage, walls))
        for each in self.lines:
            self.field.add(*each.shapes)
        feet = underfoot(self.stage)
        self.surfaces, water = bedded(self.stage, (*walls, *floors_under(self.stage), *feet))
        self.inclines = held.inclines
        extended = any(len(body.outline) > 1 for body in self.system.bodies)
        corners = extended or any(block.faced for block in self.stage.blocks.values())
        for surfaces in self._by_state(self.surfaces):
            draw_surfaces(self.field, surfaces, corners=corners)
        for body in upward(self.measured):
            self.field.add(*outline_of(self.stage, body, held.ends))
        self._loads()
        tops = [each.ends[1] for each in self.lines if each.ends and each.posted]
        draw_posts(self.field, tops, trees=not TREES.isdisjoint(self.shown.depicts.lines.values()))
        draw_scenery(self.stage, self.field, water, self.lines)
        draw_inclines(self.field, held.bare)
        return self.field.box

    def _by_state(self, surfaces: Iterable[Surface]) -> Iterable[list[Surface]]:
        """The faces of each state, which make no corner with those of another."""
        found: dict[int, list[Surface]] = {}
        for surface in surfaces:
            found.setdefault(self.stage.state_at(surface.at), []).append(surface)
        return found.values()

    def _loads(self) -> None:
        """What loads the bodies, and the labels still to be set for it."""
        burdens = Burdens(self.stage, self.field, self.surfaces)
        # What hangs comes last: it is let down past all else.
        for element in sorted(self.system.elements, key=burdens.is_hung):
            match element.kind:
                case Kind.WEIGHT if element.shape is None:
                    self._note(burdens.weight(element))
                case Kind.FORCE if not self.stage.is_inner(element):
                    self._note(self._force(element))
                case Kind.COUPLE:
                    self.notes += draw_couples(self.stage, self.field, element)
        self.field.add(*section_marks(self.stage, self.shown.sections))
        for body in self.system.bodies:
            self.notes += draw_spreads(burdens, body)
            burdens.shelves(body)
        self.things = burdens.things

    def _note(self, note: Note | None) -> None:
        """Keeps a note to be set, unless it is a letter that no text tells."""
        if note and note.tag.of not in self.shown.untold:
            self.notes.append(note)

    def labelled(self) -> Scene:
        """All labels, angles and lengths added: the lengths before the labels of what is loaded
        where they find no place after them, or fewer of their extension lines are then spoilt.
        """
        told = self.shown.givens.keys() | self.shown.named
        self.notes += told_pulls(self.stage, self.lines, told)
        self.inclines = draw_wedge_angles(self.stage, self.field, self.inclines)
        self._angles()
        before = self.field
        self.field = before.trial()
        self._set_notes()
        placed = self._lengths()
        first = self.field
        scene = self._lettered(placed)
        if not (scene.strained or first.spoilt):
            return self._settled(scene, first, before)
        self.field, self.lengths_first = before.trial(), True
        placed = self._lengths()
        spared = first.walled - self.field.walled
        if scene.strained or (placed and self.field.spoilt < first.spoilt):
            self._set_notes()
            second = self.field
            other = self._lettered(placed)
            if scene.strained or as_near(other, scene, spared):
                return self._settled(other, second, before)
        return self._settled(scene, first, before)

    def _settled(self, scene: Scene, field: Field, before: Field) -> Scene:
        """The drawing with the labels of what is loaded at the best places there are beside its
        lengths; field: the paper without letters; before: and without labels and lengths.
        """
        self.field = settled(field, self.notes, self.things)
        if self.field is field:
            return scene
        if field.torn:  # by a label that may have moved
            settled_field, self.field = self.field, noted(before, self.field, self.notes)
            if not self._lengths() or self.field.spoilt > field.spoilt:
                self.field = settled_field
        other = self._lettered(placed=not scene.strained)
        return other if as_near(other, scene) else scene

    def _set_notes(self) -> None:
        """The labels of what is loaded, which leave free if they can where extension lines run."""
        spans = () if self.lengths_first else self.shown.spans
        due = [strip for span in spans for strip in strips(*self._measured(span), _STRIP)]
        set_notes(self.field, self.notes, self.things, due)

    def _lettered(self, placed: bool) -> Scene:
        """All else added, on paper of its own; placed: whether each length found a place."""
        self.field = self.field.trial()
        marked = [point for _, point in self.shown.sections]
        draw_letters(self.stage, self.field, self.shown.named, marked)
        draw_captions(self.stage, self.field)
        if self.measured.labels.plan:
            draw_north(self.field, self.shown.tell)
        if self.shown.distorted:
            note_distorted(self.field, self.shown.tell)
        words = self.shown.tell(situation_shown(self.system))
        shapes, strained = layered(self.field.shapes), 0 if placed else 1
        return Scene(shapes, self.field.box, self.scale, words, strained)

    def _force(self, element: Element) -> Note | None:
        """A force of known direction, drawn pushing at its point or pulling away from it."""
        if stands_for(self.stage, element):
            return None
        direction = self.measured.direction_of(element)
        force = self.system.force(element.forces[0])
        if direction is None or not isinstance(force.magnitude, Name | Number):
            return None
        spot, step = self.stage.rest(element), heading(direction) * self.stage.arrow(element)
        inside = self.measured.runs_along(self.measured.places[element.at], direction) or (
            encloses(self.stage.corners(self.system.body(element.body)), spot + 0.05 * step)
        )
        inside |= self.stage.leads_into_truss(element, step)
        inside |= self.stage.behind(element) or self.stage.squeezes(element, step)
        tag = Tag(What.FORCE, element.id)
        if between := reach_of(self.stage, element):
            inside, spot = True, spot - step / abs(step) * between
        tail, head = (spot - step, spot) if inside else (spot, spot + step)
        self.field.add(*at_work(self.stage, element))
        self.field.add(Arrow(tail, head, MEDIUM, tag))
        free, near = (tail, tail + 0.3 * step) if inside else (head, head - 0.3 * step)
        away = direction + 180.0 if inside else direction
        beside = ((near, direction - 90.0), (near, direction + 90.0))
        if self.stage.depicts.forces.get(element.id) is Source.BEARER:
            beside = beside[::-1]  # behind whose shoulder it comes from
        # Beyond an arrow that points up or down an extension line may run on.
        anchors = beside if abs(step.real) < 1.0 else ((free, away), *beside)
        return Note(self.stage.text(force.magnitude), anchors, Tag(What.LABEL, element.id))

    # Data

    def _angles(self) -> None:
        for opening in self.shown.openings:  # no label may lie where a reference line will
            start, reference, _ = self.stage.set_out(opening)
            end = start + heading(reference) * _REFERENCE
            self.field.watch(line(start, end, LIGHT, Tag(What.REFERENCE, opening.id)))
        # Those of cables need their place most; the largest are best set nearest to their vertex.
        largest_last = sorted(self.shown.openings, key=lambda each: each.reflex)
        for opening in reversed(largest_last):
            if opening.id in self.inclines or not is_told(self.measured, opening.id):
                continue
            variable = self.system.variables[opening.id]
            at, reference, direction = self.stage.set_out(opening)
            drawn, also = (self._is_drawn(opening, at, way) for way in (reference, reference + 180))
            longer = self.measured.is_longer_behind(opening.at, direction)
            draw_angle(
                self.field,
                at,
                reference,
                direction,
                self.stage.text(variable.as_name),
                opening.id,
                reference_drawn=drawn,
                reflex=opening.reflex,
                both_sides=drawn == also and longer and not opening.force,
                others=self._arcs_to_come(opening),
            )

    def _is_drawn(self, opening: Opening, at: Spot, way: float) -> bool:
        """Whether a body or a surface runs from an angle's vertex in a direction; the axis of a
        stout body is not to be seen.
        """
        slender = [b for b in self.system.bodies if self.stage.halves.get(b.id, 0.0) < _STOUT]
        along = any(self.measured.runs_along(opening.at, way, body) for body in slender)
        return along or self._on_ground(at, way)

    def _arcs_to_come(self, own: Opening) -> list[tuple[Spot, Spot]]:
        """About where the arcs of the angles will be that are not drawn yet."""
        drawn = {shape.tag.of for shape in self.field.shapes if shape.tag.what is What.ANGLE}
        rest = [each for each in self.shown.openings if each is not own and each.id not in drawn]
        told = [each for each in rest if is_told(self.measured, each.id)]
        return [p for each in told for p in arc_pieces(*self.stage.set_out(each), each.reflex)]

    def _on_ground(self, spot: Spot, direction: float) -> bool:
        """Whether a surface through a spot runs on in a direction."""
        for surface in self.surfaces:
            if abs(surface.height(spot)) < 2.5:
                return apart(direction % 180.0, bearing(surface.tangent) % 180.0) < 1.0
        return False

    def _lengths(self) -> bool:
        """The named lengths, the shortest nearest; whether each found a place of its own."""
        measures = sorted(self.shown.spans, key=lambda span: abs(span.end - span.start))
        placed, due = True, [strips(*self._measured(span)) for span in measures]
        for number, span in enumerate(measures, start=1):
            name = self.system.variables[span.id].as_name
            text: Text = self.stage.text(name)
            if self.shown.terse and isinstance(text, Stated):
                text = text.number
            if self.measured.values[span.id] < 0:  # a place on the other side
                text = negative(name)
            start, end, half = self._measured(span)
            rest = list(chain.from_iterable(due[number:]))
            placed &= draw_length(self.field, start, end, text, span.id, half, rest)
        return placed

    def _half(self, span: Span) -> float:
        """Half the thickness of what a length is measured along, pt."""
        bodies = [b for b in self.system.bodies if ways_out(self.measured.outline(b), span.end)]
        return max((self.stage.halves[body.id] for body in bodies), default=0.0)

    def _measured(self, span: Span) -> tuple[Spot, Spot, float]:
        """The ends of a length, and half the thickness of what it is measured along (pt)."""
        return span.start * self.scale, span.end * self.scale, self._half(span)
