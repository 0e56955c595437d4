"""The free-body diagram of the key: one body alone, with every force on it as it was solved.

Arrows have their true directions; their lengths grow with the force but less than in proportion,
so that forces of very different size can be read beside each other.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Final, Literal

from probgen.figures import axes, parts
from probgen.figures.dimension import draw_angle
from probgen.figures.fitting import fitted
from probgen.figures.placement import Field, around, crosses
from probgen.figures.scene import (
    DASHED,
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Arrow,
    Box,
    Path,
    Pen,
    Scene,
    Spot,
    apart,
    bearing,
    bounds,
    circle,
    composed,
    dot,
    heading,
    polygon,
    segments,
)
from probgen.figures.survey import Survey, openings, survey
from probgen.figures.vector import Vector, arrow_length, resultant, vectors
from probgen.quantities.expression import Name, Value
from probgen.statics.system import Body, System

WIDTH: Final = 213.0
HEIGHT: Final = 170.0
"""The most room a free-body diagram takes, pt (75 mm x 60 mm)."""

_HALF: Final = 2.2  # half the thickness of the outlined body, pt
_SHIFT: Final = 8.0  # how far a component is set beside an arrow it would fall on, pt
_LEAST_LEG: Final = 13.0  # shortest component drawn as a side of the rectangle, pt
_DOTTED: Final = Pen(0.3, 0.9, 1.6)

Sense = Literal["counter-clockwise", "clockwise"]


def free_body(
    system: System,
    values: Mapping[str, Value],
    body_id: str,
    pivot: str,
    positive: Sense = "counter-clockwise",
) -> Scene:
    """The free-body diagram of one body.

    values: coherent values of every quantity, the solved ones included; forces whose value comes
    out negative are drawn the opposite way, those that vanish are left out.  pivot: the point
    torques are taken about, "" for none.  positive: the rotation counted positive.
    Raises KeyError when a value is missing.
    """
    measured = survey(system, values)
    body = system.body(body_id)
    places = [*measured.outline(body), *(v.at for v in vectors(measured, body))]
    width = max(p.real for p in places) - min(p.real for p in places)
    height = max(p.imag for p in places) - min(p.imag for p in places)
    core = complex(max(width, 0.25 * height, 1e-6), max(height, 0.25 * width, 1e-6))
    return fitted(
        lambda scale: _Diagram(measured, body, pivot, positive, scale).draw(),
        core,
        complex(WIDTH, HEIGHT),
        spare=60.0,
    )


class _Diagram:
    """One attempt at a free-body diagram, at one scale (pt for each metre)."""

    def __init__(
        self, measured: Survey, body: Body, pivot: str, positive: Sense, scale: float
    ) -> None:
        self.measured = measured
        self.system = measured.system
        self.body = body
        self.pivot = pivot
        self.positive = positive
        self.scale = scale
        self.field = Field()
        self.arrows: list[tuple[Arrow, str]] = []

    def draw(self) -> Scene:
        self._outline()
        forces = vectors(self.measured, self.body)
        hinged = {v.element for v in forces if v.part in ("x", "y")}
        wholes = {
            id: resultant(self.system.element(id), [v for v in forces if v.element == id])
            for id in hinged
        }
        single = [v for v in forces if v.element not in hinged]
        self.largest = max((v.size for v in (*single, *wholes.values())), default=1.0)
        for vector in sorted(single, key=self._steepness):
            self._add(vector)
        for id in sorted(wholes):
            self._add_with_legs(wholes[id], [v for v in forces if v.element == id])
        self._couples()
        self._mark_points()
        self._angles()
        self._label()
        self._axes()
        return composed(self.field.shapes, self.scale)

    def _spot(self, place: complex) -> Spot:
        return place * self.scale

    def _steepness(self, vector: Vector) -> tuple[bool, float]:
        """Weights first: the others give way to them."""
        return (abs(vector.direction - 270.0) > 0.01, -vector.size)

    def _outline(self) -> None:
        spots = [self._spot(place) for place in self.measured.outline(self.body)]
        tag = f"body:{self.body.id}"
        if len(spots) < 2:
            self.field.add(circle(spots[0], 3.0, LIGHT, tag))
            return
        left, right = parts.rails(spots, _HALF)
        self.field.add(polygon((*left, *reversed(right)), LIGHT, tag))

    # Arrows

    def _add(self, vector: Vector) -> None:
        trials = self._trials(vector)
        # Off its point only when it would lie on another arrow; mere crossings are borne.
        costs = [self._trouble(arrow) + (60.0 if i > 1 else 0.0) for i, arrow in enumerate(trials)]
        self._keep(trials[costs.index(min(costs))], vector.symbol)

    def _keep(self, arrow: Arrow, symbol: str) -> None:
        self.field.add(arrow)
        self.arrows.append((arrow, symbol))

    def _trials(self, vector: Vector) -> list[Arrow]:
        """Where a force's arrow may go, best first.

        From its point, or with its head there; further along its line; last beside it.
        """
        spot = self._spot(vector.at)
        unit = heading(vector.direction)
        step = unit * arrow_length(vector.size, self.largest)
        tails = [spot, spot - step]
        for arrow, _ in self.arrows:
            past = dot(arrow.head - spot, unit)
            if past > 0:
                tails.append(spot + unit * (past + 3.0))
        tails += [spot + unit * 1j * shift for shift in (4.5, -4.5, 8.0, -8.0)]
        return [Arrow(tail, tail + step, HEAVY, f"force:{vector.id}") for tail in tails]

    def _trouble(self, arrow: Arrow) -> float:
        """How badly an arrow sits among what is drawn."""
        return sum(_clash(arrow, other) for other, _ in self.arrows) + (
            30.0 if self._along_body(arrow) else 0.0
        )

    def _along_body(self, arrow: Arrow) -> bool:
        """Whether an arrow runs along inside the body's outline."""
        outline = [self._spot(place) for place in self.measured.outline(self.body)]
        middle = (arrow.tail + arrow.head) / 2
        return any(
            _distance(middle, a, b) < 5.0 and _distance(arrow.head, a, b) < 6.0
            for a, b in pairwise(outline)
        )

    def _add_with_legs(self, whole: Vector, legs: Sequence[Vector]) -> None:
        """A hinge's force solid, with its components dashed as sides of the rectangle about it."""
        shares = [leg.size / whole.size for leg in legs]
        length = arrow_length(whole.size, self.largest)
        inside = len(legs) == 2 and min(shares) * length >= _LEAST_LEG

        def sides(arrow: Arrow) -> list[Arrow]:
            return [
                Arrow(arrow.tail, arrow.tail + heading(leg.direction) * share * length, DASHED)
                for leg, share in zip(legs, shares, strict=True)
            ]

        def trouble(arrow: Arrow) -> float:
            drawn = [arrow, *sides(arrow)] if inside else [arrow]
            return sum(map(self._trouble, drawn))

        arrow = min(self._trials(whole), key=trouble)
        self._keep(arrow, whole.symbol)
        if inside:
            for side, leg in zip(sides(arrow), legs, strict=True):
                self._leg(side, leg)
            edges = tuple((side.head, arrow.head) for side in sides(arrow))
            self.field.add(Path(edges, _DOTTED, f"rectangle:{whole.id}"))
            return
        for leg in legs if len(legs) == 2 else ():
            self._leg(self._free_leg(arrow, leg), leg)

    def _free_leg(self, whole: Arrow, leg: Vector) -> Arrow:
        """A component that the rectangle cannot show: at the point, or beside the whole."""
        spot = self._spot(leg.at)
        step = heading(leg.direction) * arrow_length(leg.size, self.largest)
        unit = heading(leg.direction)
        tails = [spot]
        for tail in (whole.tail, spot - step):
            tails += [tail + unit * 1j * shift for shift in (_SHIFT, -_SHIFT)]
            tails.append(spot - step)
        return min((Arrow(tail, tail + step, DASHED) for tail in tails), key=self._trouble)

    def _leg(self, arrow: Arrow, leg: Vector) -> None:
        named = Arrow(arrow.tail, arrow.head, DASHED, f"component:{leg.id}", 5.0, 3.6)
        self._keep(named, leg.symbol)

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
        for place in {v.at for v in vectors(self.measured, self.body)}:
            self.field.add(circle(self._spot(place), 1.2, FINE, "point", filled=True))
        if self.pivot:
            self.field.add(circle(self._spot(self.measured.places[self.pivot]), 3.6, MEDIUM, tag))

    def _angles(self) -> None:
        """The named angles of single forces, with their symbols."""
        for opening in openings(self.measured):
            if opening.id not in self._force_angles():
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

    def _force_angles(self) -> set[str]:
        return {
            opening.id
            for opening in openings(self.measured)
            if any(
                abs(arrow.tail - self._spot(opening.at)) < 0.5
                and apart(bearing(arrow.head - arrow.tail), opening.direction) < 0.5
                for arrow, _ in self.arrows
            )
        }

    def _label(self) -> None:
        spots = [self._spot(vector.at) for vector in vectors(self.measured, self.body)]
        shortest_first = sorted(self.arrows, key=lambda pair: abs(pair[0].head - pair[0].tail))
        for arrow, symbol in shortest_first:  # a short arrow leaves its label the least choice
            name = Name(symbol, symbol)
            along = bearing(arrow.head - arrow.tail)
            near = arrow.tail + (arrow.head - arrow.tail) * 0.7
            # An arrow that ends at its point is labelled beside it, not beyond the body.
            ends = any(abs(arrow.head - spot) < 1.0 for spot in spots)
            tip = (arrow.tail, along + 180.0) if ends else (arrow.head, along)
            anchors: list[tuple[Spot, float]] = [
                tip,
                (near, along - 90.0),
                (near, along + 90.0),
            ]
            self.field.place(name, around(name, anchors), f"label:{arrow.tag.partition(':')[2]}")
        if self.pivot:
            spot = self._spot(self.measured.places[self.pivot])
            name = Name(self.pivot, self.pivot)
            anchors = [(spot, d) for d in (225.0, 135.0, 315.0, 45.0)]
            self.field.place(name, around(name, anchors, 3.6), f"letter:{self.pivot}")

    def _axes(self) -> None:
        """Axes and the positive rotation, near a corner with room, else beside the drawing."""
        width, height = axes.WIDTH, axes.HEIGHT
        box = bounds(self.field.shapes)
        columns, rows = 8, 6
        spots = [
            complex(
                box.right - width - (box.width - width) * i / columns,
                box.top - height - (box.height - height) * j / rows,
            )
            for i in range(columns + 1)
            for j in range(rows + 1)
            if box.width > width and box.height > height
        ]
        corners = (box.right + 1j * box.top, box.left + 1j * box.top,
                   box.right + 1j * box.bottom, box.left + 1j * box.bottom)  # fmt: skip
        middle = complex(width, height) / 2
        spots.sort(key=lambda spot: min(abs(spot + middle - corner) for corner in corners))
        beside = complex(box.right + 6.0, box.bottom)
        under = complex(box.left, box.bottom - height - 4.0)
        spare = beside if box.width + width + 6.0 <= WIDTH else under
        origin = next((s for s in spots if self.field.is_free(_box(s, width, height), 3.0)), spare)
        start = origin + 3 + 3j
        self.field.add(*axes.axes(start, 1 if self.positive == "counter-clockwise" else -1))
        ends = (("x", start + axes.LENGTH, 0.0), ("y", start + 1j * axes.LENGTH, 90.0))
        for symbol, spot, direction in ends:
            name = Name(symbol, symbol)
            self.field.place(name, around(name, ((spot, direction),)), f"axis:{symbol}")


def _box(corner: Spot, width: float, height: float) -> Box:
    return Box(corner.real, corner.imag, corner.real + width, corner.imag + height)


def _clash(one: Arrow, other: Arrow) -> float:
    """What two arrows' nearness costs: lying on each other most, crossing some."""
    turn = apart(bearing(one.head - one.tail), bearing(other.head - other.tail))
    ends = ((one.tail, other), (one.head, other), (other.tail, one), (other.head, one))
    near = min(_distance(spot, arrow.tail, arrow.head) for spot, arrow in ends)
    if min(turn, 180.0 - turn) < 12.0:
        opposed = turn > 90.0 and abs(one.tail - other.tail) < 1.0
        return 100.0 if near < 4.0 and not opposed else 0.0
    if min(abs(a - b) for a in (one.tail, one.head) for b in (other.tail, other.head)) < 1.0:
        return 0.0
    return 12.0 if near < 4.0 or crosses(segments(one)[0], segments(other)[0]) else 0.0


def _distance(spot: Spot, start: Spot, end: Spot) -> float:
    """From a spot to a straight piece."""
    way = end - start
    share = ((spot - start) / way).real if way else 0.0
    return abs(spot - start - way * min(max(share, 0.0), 1.0))

