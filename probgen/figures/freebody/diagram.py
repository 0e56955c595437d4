"""The free-body diagram of the key: one body alone, with every force on it as it is assumed.

Arrows point the way the text and the equations take forces positive, whatever sign comes out.
Their lengths are to one scale in all diagrams of a problem, so that action and reaction are of one
length; where forces are too different for that, the diagrams say so.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import Final

from probgen.bank.depiction import Look
from probgen.bank.labels import Labels
from probgen.figures.freebody.arrows import Arrows
from probgen.figures.freebody.caption import captioned
from probgen.figures.freebody.corner import draw_axes, frame_of
from probgen.figures.freebody.couple import draw_couples
from probgen.figures.freebody.lengths import (
    Lengths,
    draw_arms,
    draw_reaches,
    lengths_of,
    name_arms,
)
from probgen.figures.freebody.lettering import Lettering
from probgen.figures.freebody.notes import draw_note, in_line
from probgen.figures.freebody.outline import HALF, draw_body
from probgen.figures.freebody.shown import Sense, Shown, Sized, in_proportion
from probgen.figures.freebody.solids import Solid, forces_on, pins_within, solids_of
from probgen.figures.measured.alt_text import diagram_shown
from probgen.figures.measured.distributed import rows
from probgen.figures.measured.opening import Opening, openings_shown
from probgen.figures.measured.survey import survey
from probgen.figures.measured.vector import ArrowScale, Vector, components
from probgen.figures.paper.angle import draw_angle
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scale import POINTLIKE, fits, fitted
from probgen.figures.paper.scene import (
    FINE,
    MEDIUM,
    REFERENCE,
    Box,
    Path,
    Scene,
    Spot,
    apart,
    bearing,
    circle,
    heading,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import mechanical
from probgen.quantities.expression import Value
from probgen.quantities.unit import LENGTH
from probgen.statics.equation import Axis, Equation
from probgen.statics.system import System
from probgen.working.fact import Tell
from probgen.working.figure import PairsNoted, ScaleNoted

WIDTH: Final = 241.0
HEIGHT: Final = 170.0
UPRIGHT: Final = 213.0
"""The most room a free-body diagram takes, pt: 85 mm x 60 mm, 75 mm where it stands upright."""

_SHARES: Final = (1.0, 0.8, 0.64, 0.5)
_SMALL: Final = 0.42  # of its room, that a body takes at least if shorter arrows leave it more
_LABELS: Final = 18 + 19j  # what labels usually take beyond the arrows, pt
_UPRIGHT: Final = 1.5  # how much higher than broad a body is that may take more height
_STANDING: Final = 0.75  # the same of several taken as one, which have more arms below them
_ROW: Final = 13.0  # height of a distributed load's arrows, pt
_POINT: Final = Tag(What.POINT)


@dataclass(frozen=True, slots=True)
class Subject:
    """A body to be drawn alone.

    pivot: the point torques are taken about, "" for none.
    looks: what it, or each body taken as one in it, is drawn as in its situation, of which solids
    and rounds keep their outline; a bar where nothing is said.
    balance: the torque balance about the pivot, whose lengths and lever arms are drawn.
    axes: those its force balances go along; x and y where there are none.
    """

    body: str
    pivot: str = ""
    looks: Mapping[str, Look] = field(default_factory=dict)
    balance: Equation | None = None
    axes: tuple[Axis, ...] = ()


def free_bodies(
    system: System,
    labels: Labels,
    values: Mapping[str, Value],
    subjects: Sequence[Subject],
    *,
    tell: Tell,
    positive: Sense = "counter-clockwise",
    drawn: Mapping[str, float] | None = None,
    wedges: Collection[str] = (),
) -> tuple[Scene, ...]:
    """The free-body diagrams of some bodies, with all their arrows to one scale.

    values: coherent values of every quantity, the solved ones included, for the lengths of the
    arrows.
    tell: says what it shows and what is printed in it.  positive: the rotation counted positive.
    drawn: sizes (coherent units) the situation is drawn with; the diagrams take the lengths among
    them and then say that they are not to scale, while their angles stay true.
    wedges: the bodies drawn as wedges, which keep their outline, as do the blocks on them.
    Raises KeyError when a value is missing.
    """
    lengths = {
        id: size for id, size in (drawn or {}).items() if system.variables[id].dimension == LENGTH
    }
    measured = survey(system, labels, {**values, **lengths})
    shown = []
    for each in subjects:
        body, balance = system.body(each.body), each.balance
        solids = solids_of(measured, body, each.looks, wedges)
        shown.append(
            Shown(
                measured,
                body,
                solids,
                forces_on(measured, body, solids),
                lengths_of(measured, balance, body.id) if balance else Lengths(),
                frame_of(measured, each.axes),
                each.pivot,
                tell,
                positive,
                parted=balance is not None and balance.method.torque == "components",
                distorted=bool(lengths),
            )
        )
    scenes = in_line(_best(shown), [_room(each) for each in shown])
    return captioned(scenes, [each.body for each in shown], labels, tell)


def free_body(
    system: System,
    labels: Labels,
    values: Mapping[str, Value],
    body_id: str,
    pivot: str,
    *,
    tell: Tell,
    positive: Sense = "counter-clockwise",
    drawn: Mapping[str, float] | None = None,
    look: Look = Look.BEAM,
    wedges: Collection[str] = (),
    balance: Equation | None = None,
    axes: tuple[Axis, ...] = (),
) -> Scene:
    """The free-body diagram of one body, with arrows to a scale of its own."""
    subjects = (Subject(body_id, pivot, {body_id: look}, balance, axes),)
    told = system, labels, values, subjects
    (scene,) = free_bodies(*told, tell=tell, positive=positive, drawn=drawn, wedges=wedges)
    return scene


def _best(shown: Sequence[Shown]) -> tuple[Scene, ...]:
    """The diagrams with the longest arrows with which most fit and have a place for every arrow and
    every label: equally short in all.  One that does not has others only if these are better.
    """
    rooms = [_room(each) for each in shown]
    tries: list[tuple[Scene, ...]] = []
    for share in _SHARES:  # shorter arrows only where the usual ones leave too little room
        tries.append(tuple(map(_drawn, shown, in_proportion(shown, share))))
        if not any(map(_is_bad, shown, tries[-1])):
            return tries[-1]
    together = min(tries, key=lambda scenes: sum(map(_is_bad, shown, scenes)))
    each_alone = zip(together, *tries, strict=True)
    return tuple(
        min(scenes, key=lambda scene: (not fits(scene, room), scene.strained))
        for scenes, room in zip(each_alone, rooms, strict=True)
    )


def _is_bad(shown: Shown, scene: Scene) -> bool:
    """Whether a diagram is too large, lacks a good place for something, or has hardly any room for
    the body among its arrows.
    """
    core, room = _core(shown), _room(shown)
    drawn = scene.scale * max(core.real / room.real, core.imag / room.imag)
    small = drawn < _SMALL and not shown.faced and max(core.real, core.imag) > POINTLIKE
    return not fits(scene, room) or scene.strained > 0 or small


def _drawn(shown: Shown, sized: Sized) -> Scene:
    """A diagram at the scale that fills its room."""
    begin = partial(_Diagram, shown, sized)
    if not shown.faced:
        return fitted(begin, _core(shown), _room(shown), _LABELS)
    drawing = begin(1.0)  # which is laid out in pt
    drawing.strokes()
    return drawing.labelled()


def _room(shown: Shown) -> complex:
    core = _core(shown)
    least = _STANDING if len(shown.solids) > 1 else _UPRIGHT
    return complex(WIDTH, UPRIGHT if core.imag > least * core.real else HEIGHT)


def _core(shown: Shown) -> complex:
    """Width and height (m) of what grows with the scale; a thin body counts as a little wide."""
    measured = shown.measured
    at = [measured.places[measured.system.force(force.id).point] for force in shown.forces]
    places = [*measured.outline(shown.body), *at]
    width = max(p.real for p in places) - min(p.real for p in places)
    height = max(p.imag for p in places) - min(p.imag for p in places)
    return complex(max(width, 0.25 * height, POINTLIKE), max(height, 0.25 * width, POINTLIKE))


class _Diagram:
    """One attempt at a free-body diagram, at one scale (pt for each metre)."""

    def __init__(self, shown: Shown, sized: Sized, scale: float) -> None:
        self.measured = measured = shown.measured
        self.system = measured.system
        self.body = shown.body
        self.solids = shown.solids
        self.pivot = shown.pivot
        self.tell = shown.tell
        self.positive = shown.positive
        self.distorted = shown.distorted
        self.lengths = shown.lengths
        self.frame = shown.frame
        self.parted = shown.parted
        self.scale = scale
        self.field = Field()
        self.lettering = Lettering(self.field)
        self.forces = shown.forces
        self.marks = shown.marks
        self.single, self.joints, self.radius = sized.single, sized.joints, sized.radius
        self.arrows = self._arrows(sized.lengths)

    def _arrows(self, lengths: ArrowScale) -> Arrows:
        """The arrows of all forces, none of them drawn yet."""
        outlines = [each.outline(self.measured, self.scale) for each in self.solids]
        points = [self._spot(vector.at) for vector in self.forces]
        radius = self.radius if len(self.body.outline) < 2 else 0.0
        return Arrows(self.field, outlines, points, self.scale, lengths, self.marks, radius)

    def strokes(self) -> Box:
        """The body and all arrows."""
        for solid in self.solids:
            self._draw(solid)
        for id, place in pins_within(self.measured, self.body):
            self.field.add(mechanical.pin(self._spot(place), Tag(What.SUPPORT, id)))
        self._loads()
        forces = [(vector, self._parts(vector)) for vector in self._in_order()]
        self.arrows.add([*forces, *self.joints.items()])
        draw_couples(self.field, self.measured, self.body, self.scale)
        draw_arms(self.field, self.measured, self.lengths.arms, self.scale)
        return self.field.box

    def _draw(self, solid: Solid) -> None:
        """A body with what reaches from it to the forces that act off it."""
        own = {force.id for force in self.system.forces if force.body == solid.body.id}
        points = [self._spot(vector.at) for vector in self.forces if vector.id in own]
        shown = self.measured, solid.body, solid.look
        draw_body(self.field, *shown, self.scale, self.radius, solid.shape, solid.at, points)

    def _parts(self, vector: Vector) -> tuple[Vector, ...]:
        """The components of a slanting force, where the balance goes by them."""
        if not self.parted or not vector.slants:
            return ()
        legs = components(vector, self.system.force(vector.id))
        return legs if self.arrows.lengths.shows_legs(vector, legs) else ()

    def labelled(self) -> Scene:
        """Marks, angles, labels and axes added."""
        self._mark_points()
        self._angles()
        spots = [self._spot(vector.at) for vector in self.forces]
        self.lettering.name_arrows(self.arrows.placed, spots, self.arrows.ring)
        self._letters()
        name_arms(self.field, self.lengths.arms, self.scale)
        half = HALF if all(each.slender(self.measured) for each in self.solids) else 0.0
        draw_reaches(self.field, self.lengths.reaches, self.scale, half)
        sense = 1 if self.positive == "counter-clockwise" else -1  # of a particle nothing is said
        sense = 0 if self.body.particle else sense
        clear_of = [each.kept_clear(self.measured, self.scale) for each in self.solids]
        draw_axes(self.field, sense, clear_of, WIDTH, self.frame)
        self._notes()
        shown = (*self.single, *self.joints)
        points = {self.measured.places[f.point]: f.point for f in self.system.forces}
        letters = [points.get(vector.at, "") for vector in shown]
        words = self.tell(diagram_shown(self.body, shown, letters))
        shapes = tuple(self.field.shapes)
        strained = self.lettering.strained + self.arrows.hemmed
        return Scene(shapes, self.field.box, self.scale, words, strained)

    def _spot(self, place: complex) -> Spot:
        return place * self.scale

    def _in_order(self) -> list[Vector]:
        """Weights first, then the larger; last those that have to go beside one drawn before."""
        first: list[Vector] = []
        beside: list[Vector] = []
        for vector in sorted(
            self.single, key=lambda each: (abs(each.direction - 270.0) > 0.01, -each.size)
        ):
            alike = any(
                other.at == vector.at and apart(other.direction, vector.direction) < 12.0
                for other in first
            )
            (beside if alike else first).append(vector)
        return first + beside

    def _loads(self) -> None:
        """Distributed loads as dashed outlines: the one arrow there is is their resultant's."""
        own = [element for element in self.system.elements if element.body == self.body.id]
        for row in rows(self.measured, own, self.scale, HALF, _ROW):
            edge = (row.feet[0], *row.edge[:: len(row.edge) // 8 or 1], row.feet[1])
            self.field.add(Path((edge,), REFERENCE, Tag(What.DISTRIBUTED, row.element.id)))

    # Marks and labels

    def _mark_points(self) -> None:
        tag = Tag(What.PIVOT, self.pivot)
        middles = [each.at + each.shape.clear for each in self.solids if each.shape]
        marked = [v for v in self.forces if not middles or v.at in middles]
        for place in dict.fromkeys(vector.at for vector in marked):
            self.field.add(circle(self._spot(place), 1.2, FINE, _POINT, filled=True))
        if self.pivot:
            self.field.add(circle(self._spot(self.measured.places[self.pivot]), 3.6, MEDIUM, tag))

    def _angles(self) -> None:
        """The named angles of single forces, and that of a wedge, with their symbols."""
        shapes = [each.shape for each in self.solids]
        corner = shapes[0].corner if len(shapes) == 1 and shapes[0] else None
        if corner:
            name = self.system.variables[corner.id].as_name
            ways = corner.reference, corner.way
            draw_angle(self.field, corner.at, *ways, name, corner.id, reference_drawn=False)
        shown = openings_shown(self.measured, self._opens_here)
        for opening in sorted(shown, key=lambda each: not each.reflex):  # nearest to their vertex
            ways = opening.reference, opening.reference + 180.0
            drawn, also = (self.measured.runs_along(opening.at, w, self.body) for w in ways)
            longer = self.measured.is_longer_behind(opening.at, opening.direction, self.body)
            name = self.system.variables[opening.id].as_name
            draw_angle(
                self.field,
                self._spot(opening.at),
                opening.reference,
                opening.direction,
                name,
                opening.id,
                reference_drawn=drawn,
                reflex=opening.reflex,
                both_sides=drawn == also and longer and not opening.force,
            )

    def _opens_here(self, opening: Opening) -> bool:
        return self._is_force_angle(opening) or self._is_slope(opening)

    def _is_force_angle(self, opening: Opening) -> bool:
        """Whether an angle opens to an arrow that begins or ends at its vertex, or at its ring."""
        vertex, reach = self._spot(opening.at), self.arrows.ring + 0.5
        ends = [(each.arrow.tail, each.arrow.head) for each in self.arrows.placed]
        return any(
            abs(near - vertex) < reach
            and apart(bearing(far - near), opening.direction) < 0.5
            and abs(((vertex - near) / heading(opening.direction)).imag) < 0.5
            for near, far in (*ends, *(pair[::-1] for pair in ends))
        )

    def _is_slope(self, opening: Opening) -> bool:
        """Whether an angle opens to the body itself, at one of its points."""
        ends = [self.measured.places[name] for name in self.body.outline]
        return opening.at in ends and self.measured.runs_along(
            opening.at, opening.direction, self.body
        )

    def _letters(self) -> None:
        """The letters of the points where forces act and of the body's ends, about which the key
        may take torques; small.
        """
        if len(self.body.outline) < 2:
            return  # everything acts at the one point there is
        named = [force.point for force in self.system.forces if force.body == self.body.id]
        wanted = dict.fromkeys((*((self.pivot,) if self.pivot else ()), *named, *self.body.outline))
        letters = {point: self._spot(self.measured.places[point]) for point in wanted}
        pivot = letters.get(self.pivot)
        clear = {spot: 3.6 if spot == pivot else HALF for spot in letters.values()}
        self.lettering.name_points(letters, clear)

    def _notes(self) -> None:
        """What is to scale and what is not, and what the strokes across some arrows mean."""
        turned = any(vector.sign < 0 for vector in self.single)
        scale = ScaleNoted(not self.distorted, self.arrows.lengths.linear, turned)
        draw_note(self.field, self.tell(scale), Tag(What.NOTE, "scale"))
        if any(vector.id in self.marks for vector in self.forces):
            draw_note(self.field, self.tell(PairsNoted()), Tag(What.NOTE, "pairs"))
