"""The free-body diagram of the key: one body alone, with every force on it as it was solved.

Arrows have their true directions; their lengths grow with the force but less than in proportion,
so that forces of very different size can be read beside each other.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import chain, combinations
from typing import Final, Literal

from probgen.bank.depiction import Look
from probgen.figures.freebody.arrows import Arrows, distance
from probgen.figures.measured.alt_text import diagram_words
from probgen.figures.measured.distributed import rows
from probgen.figures.measured.proportion import note_distorted
from probgen.figures.measured.survey import Opening, Survey, openings, survey
from probgen.figures.measured.vector import Vector, pair_marks, resultant, vectors
from probgen.figures.paper.angle import draw_angle
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around
from probgen.figures.paper.scale import POINTLIKE, fits, fitted
from probgen.figures.paper.scene import (
    FINE,
    LIGHT,
    MEDIUM,
    Box,
    Scene,
    Spot,
    apart,
    bearing,
    circle,
    polygon,
)
from probgen.figures.parts import axes, mechanical
from probgen.figures.situation.shape import ROUND, arms_of, corners_of, encloses
from probgen.quantities.expression import Name, Value
from probgen.quantities.unit import LENGTH
from probgen.statics.system import Body, System

WIDTH: Final = 213.0
HEIGHT: Final = 170.0
"""The most room a free-body diagram takes, pt (75 mm x 60 mm)."""

_HALF: Final = 2.2  # half the thickness of the outlined body, pt
_SHARES: Final = (1.0, 0.8, 0.64)
_SMALL: Final = 7.5  # size of the letters of points, pt
_LABELS: Final = 18 + 19j  # what labels usually take beyond the arrows, pt
_PARTICLE: Final = 3.0  # radius of a particle's ring, pt
_LARGE_PARTICLE: Final = 8.0
_NEAR: Final = 12.0  # how far from its point a letter is first tried, pt
_TOGETHER: Final = 5.0  # points so near each other share the place their letters have, pt
_BESIDE: Final = 30.0  # how far from its arrow a symbol is first tried, pt
_ROW: Final = 13.0  # height of a distributed load's arrows, pt

Sense = Literal["counter-clockwise", "clockwise"]


def free_body(
    system: System,
    values: Mapping[str, Value],
    body_id: str,
    pivot: str,
    positive: Sense = "counter-clockwise",
    drawn: Mapping[str, float] | None = None,
    look: Look = Look.BEAM,
) -> Scene:
    """The free-body diagram of one body.

    values: coherent values of every quantity, the solved ones included; forces whose value comes
    out negative are drawn the opposite way, those that vanish are left out.  pivot: the point
    torques are taken about, "" for none.  positive: the rotation counted positive.
    drawn: sizes (coherent units) the situation is drawn with; the diagram takes the lengths among
    them and then says that it is not to scale, while its angles stay true.
    look: what the body is drawn as in its situation, of which solids and rounds keep their outline.
    Raises KeyError when a value is missing.
    """
    lengths = {
        id: size for id, size in (drawn or {}).items() if system.variables[id].dimension == LENGTH
    }
    measured = survey(system, {**values, **lengths})
    body = system.body(body_id)
    forces = vectors(measured, body)
    core = _core([*measured.outline(body), *(vector.at for vector in forces)])
    room = complex(WIDTH, HEIGHT)

    def rank(scene: Scene) -> tuple[bool, int]:
        return not fits(scene, room), scene.strained

    best: Scene | None = None
    for share in _SHARES:  # shorter arrows only where the usual ones leave too little room
        shown = _Shown(measured, body, look, forces, pivot, positive, share, bool(lengths))
        scene = fitted(partial(_Diagram, shown), core, room, _LABELS)
        if best is None or rank(scene) < rank(best):
            best = scene
        if rank(best) == (False, 0):
            break
    assert best is not None  # there are shares
    return best


def _core(places: Sequence[complex]) -> complex:
    """Width and height (m) of what grows with the scale; a thin body counts as a little wide."""
    width = max(p.real for p in places) - min(p.real for p in places)
    height = max(p.imag for p in places) - min(p.imag for p in places)
    return complex(max(width, 0.25 * height, POINTLIKE), max(height, 0.25 * width, POINTLIKE))


@dataclass(frozen=True, slots=True)
class _Shown:
    """What a diagram shows.

    share: the length of its arrows, of their usual one; distorted: it is not to scale.
    """

    measured: Survey
    body: Body
    look: Look
    forces: tuple[Vector, ...]
    pivot: str
    positive: Sense
    share: float
    distorted: bool


class _Diagram:
    """One attempt at a free-body diagram, at one scale (pt for each metre)."""

    def __init__(self, shown: _Shown, scale: float) -> None:
        self.measured = measured = shown.measured
        self.system = measured.system
        self.body = body = shown.body
        self.look = shown.look
        self.pivot = shown.pivot
        self.positive = shown.positive
        self.distorted = shown.distorted
        self.scale = scale
        self.strained = 0  # labels without a place near what they name
        self.field = Field()
        forces = shown.forces
        hinged = {v.element for v in forces if v.part in ("x", "y")}
        self.legs = {id: [v for v in forces if v.element == id] for id in sorted(hinged)}
        self.wholes = {id: resultant(self.system.element(id), v) for id, v in self.legs.items()}
        self.single = [v for v in forces if v.element not in hinged]
        self.forces = forces
        largest = max((v.size for v in (*self.single, *self.wholes.values())), default=1.0)
        self.corners = [self._spot(c) for c in corners_of(measured, body, shown.look)]
        axis = [self._spot(place) for place in measured.outline(body)]
        outline = [*self.corners, self.corners[0]] if self.corners else axis
        points = [self._spot(vector.at) for vector in forces]
        marks = pair_marks(self.system)
        self.arrows = Arrows(self.field, outline, points, scale, largest, marks, shown.share)

    def strokes(self) -> Box:
        """The body and all arrows."""
        self._outline()
        self._loads()
        for vector in self._in_order():
            self.arrows.add(vector)
        for id, whole in self.wholes.items():
            self.arrows.add_with_legs(whole, self.legs[id])
        self._couples()
        return self.field.box

    def labelled(self) -> Scene:
        """Marks, angles, labels and axes added."""
        self._mark_points()
        self._angles()
        self._label()
        self._axes()
        if self.distorted:
            note_distorted(self.field)
        shown = (*self.single, *self.wholes.values())
        points = {self.measured.places[f.point]: f.point for f in self.system.forces}
        letters = [points.get(vector.at, "") for vector in shown]
        words = diagram_words(self.body, shown, letters)
        shapes = tuple(self.field.shapes)
        return Scene(shapes, self.field.box, self.scale, words, self.strained)

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

    def _outline(self) -> None:
        spots = [self._spot(place) for place in self.measured.outline(self.body)]
        tag = f"body:{self.body.id}"
        if len(spots) < 2:
            self.field.add(circle(spots[0], self._particle_radius(), LIGHT, tag))
            return
        if self.corners:
            self.field.add(polygon(self.corners, LIGHT, tag))
            return
        if self.look in ROUND:
            self._round(tag)
            return
        left, right = mechanical.rails(spots, _HALF)
        self.field.add(polygon((*left, *reversed(right)), LIGHT, tag))

    def _particle_radius(self) -> float:
        """Large enough for all arrows that go side by side to begin in it, pt."""
        ways = [vector.direction for vector in (*self.single, *self.wholes.values())]
        alike = any(apart(one, other) < 12.0 for one, other in combinations(ways, 2))
        return _LARGE_PARTICLE if alike else _PARTICLE

    def _round(self, tag: str) -> None:
        """A drum by its rims, and the crank that turns it."""
        axle, radii, bars = arms_of(self.measured, self.body, self.look)
        centre = self._spot(self.measured.places[axle])
        for radius in radii:
            self.field.add(circle(centre, radius * self.scale, LIGHT, tag))
        for name in bars:
            end = self._spot(self.measured.places[name])
            left, right = mechanical.rails((centre, end), _HALF)
            self.field.add(polygon((*left, *reversed(right)), LIGHT, tag))

    def _loads(self) -> None:
        """Distributed loads as light rows of arrows, beside their resultants."""
        own = [element for element in self.system.elements if element.body == self.body.id]
        for row in rows(self.measured, own, self.scale, _HALF, _ROW):
            tag = f"distributed:{row.element.id}"
            self.field.add(*mechanical.spread(*row.feet, row.direction, row.heights, tag))

    def _couples(self) -> None:
        for couple in self.system.couples:
            solved = self.measured.has(couple.moment)
            moment = self.measured.number(couple.moment) if solved else 1.0
            if couple.body != self.body.id or not moment:
                continue
            spot = self._spot(self.measured.places[couple.point])
            sense = 1 if moment > 0 else -1
            self.field.add(*axes.turning(spot, 11.0, sense, MEDIUM, f"couple:{couple.id}"))
            symbol = couple.moment.symbol if isinstance(couple.moment, Name) else couple.id
            anchors = [(spot + 12j, 90.0), (spot - 12j, 270.0)]
            name = Name(couple.id, symbol)
            self.field.place(name, around(name, anchors), f"label:{couple.id}")

    # Marks and labels

    def _mark_points(self) -> None:
        tag = f"pivot:{self.pivot}"
        for place in dict.fromkeys(vector.at for vector in self.forces):
            self.field.add(circle(self._spot(place), 1.2, FINE, "point", filled=True))
        if self.pivot:
            self.field.add(circle(self._spot(self.measured.places[self.pivot]), 3.6, MEDIUM, tag))

    def _angles(self) -> None:
        """The named angles of single forces, with their symbols."""
        for opening in openings(self.measured):
            if not self._is_force_angle(opening):
                continue
            drawn = self.measured.runs_along(opening.at, opening.reference, self.body)
            name = self.system.variables[opening.id].as_name
            draw_angle(
                self.field,
                self._spot(opening.at),
                opening.reference,
                opening.direction,
                name,
                opening.id,
                reference_drawn=drawn,
            )

    def _is_force_angle(self, opening: Opening) -> bool:
        """Whether an angle opens to an arrow that begins at its vertex."""
        return any(
            abs(each.arrow.tail - self._spot(opening.at)) < 0.5
            and apart(bearing(each.arrow.head - each.arrow.tail), opening.direction) < 0.5
            for each in self.arrows.placed
        )

    def _label(self) -> None:
        spots = [self._spot(vector.at) for vector in self.forces]
        placed = self.arrows.placed
        shortest_first = sorted(placed, key=lambda each: abs(each.arrow.head - each.arrow.tail))
        for each in shortest_first:  # a short arrow leaves its label the least choice
            arrow, vector, leg = each.arrow, each.vector, each.component
            name = Name(vector.symbol, vector.symbol)
            along = bearing(arrow.head - arrow.tail)
            near = arrow.tail + (arrow.head - arrow.tail) * (0.5 if leg else 0.7)
            # An arrow that ends at its point is labelled beside it, not beyond the body.
            ends = any(abs(arrow.head - spot) < 1.0 for spot in spots)
            tip = (arrow.tail, along + 180.0) if ends else (arrow.head, along)
            beside = [(near, along - 90.0), (near, along + 90.0)]
            # A component's head may be that of the whole: it is labelled at its side.
            anchors: list[tuple[Spot, float]] = [*beside, tip] if leg else [tip, *beside]
            others = [(o.arrow.tail, o.arrow.head) for o in placed if o is not each]
            own = self._nearest(around(name, anchors, farthest=_BESIDE), (arrow.tail, arrow.head),
                                others)  # fmt: skip
            boxes = chain(own, self._strained(around(name, anchors)))
            self.field.place(name, boxes, f"label:{vector.id}")
        self._letters()

    def _nearest(
        self, boxes: Iterable[Box], own: tuple[Spot, Spot], others: Sequence[tuple[Spot, Spot]]
    ) -> Iterator[Box]:
        """The free boxes that lie nearer to a straight piece than to all others."""
        for box in boxes:
            if self.field.is_free(box):
                centre = box.centre
                away = distance(centre, *own)
                if all(distance(centre, *other) > away + 1.0 for other in others):
                    yield box

    def _strained(self, boxes: Iterator[Box]) -> Iterator[Box]:
        """The boxes for a label that has no place near what it names, which is counted."""
        self.strained += 1
        yield from boxes

    def _letters(self) -> None:
        """The letters of the points where forces act, which the key names; small."""
        if len(self.body.outline) < 2:
            return  # everything acts at the one point there is
        named = [force.point for force in self.system.forces if force.body == self.body.id]
        wanted = dict.fromkeys((self.pivot, *named) if self.pivot else named)
        letters: dict[complex, str] = {}
        for point in wanted:
            letters.setdefault(self._spot(self.measured.places[point]), point)
        for spot, point in letters.items():
            name = Name(point, point)
            nearest = 3.6 if point == self.pivot else _HALF
            anchors = [(spot, d) for d in (225.0, 135.0, 315.0, 45.0, 90.0, 270.0)]
            others = [(other, other) for other in letters if abs(other - spot) > _TOGETHER]
            near = around(name, anchors, nearest, _SMALL, farthest=_NEAR)
            own = self._nearest(near, (spot, spot), others)
            boxes = chain(own, self._strained(around(name, anchors, nearest, _SMALL)))
            self.field.place(name, boxes, f"letter:{point}", _SMALL)

    def _axes(self) -> None:
        """Axes and the positive rotation, near a corner with room, else beside the drawing."""
        sense = 1 if self.positive == "counter-clockwise" else -1
        if self.body.particle:
            sense = 0  # nothing is said of turning
        width, height = axes.WIDTH, axes.HEIGHT
        box = self.field.box
        beside = complex(box.right + 6.0, box.bottom)
        under = complex(box.left, box.bottom - height - 4.0)
        origin = beside if box.width + width + 6.0 <= WIDTH else under
        for spot in _corners_first(box, width, height):
            inside = encloses(self.corners, spot + complex(width, height) / 2)
            if not inside and self.field.is_free(_box(spot, width, height), 3.0):
                origin = spot
                break
        start = origin + 3 + 3j
        self.field.add(*axes.axes(start, sense))
        ends = (("x", start + axes.LENGTH, 0.0), ("y", start + 1j * axes.LENGTH, 90.0))
        for symbol, spot, direction in ends:
            name = Name(symbol, symbol)
            self.field.place(name, around(name, ((spot, direction),)), f"axis:{symbol}")


def _corners_first(box: Box, width: float, height: float) -> list[Spot]:
    """Where the lower left corner of something may lie within a box, nearest a corner first."""
    wide, high = box.width - width, box.height - height
    if wide <= 0 or high <= 0:
        return []
    columns, rows = 6, 5
    spots = [
        complex(box.right - width - wide * i / columns, box.top - height - high * j / rows)
        for i in range(columns + 1)
        for j in range(rows + 1)
    ]
    middle = complex(width, height) / 2
    corners = (box.right + 1j * box.top, box.left + 1j * box.top,
               box.right + 1j * box.bottom, box.left + 1j * box.bottom)  # fmt: skip
    return sorted(spots, key=lambda spot: min([abs(spot + middle - each) for each in corners]))


def _box(corner: Spot, width: float, height: float) -> Box:
    return Box(corner.real, corner.imag, corner.real + width, corner.imag + height)
