"""Forces as they are drawn: how large, which way, with an arrow how long."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from probgen.bank.labels import Labels
from probgen.bank.support import component_symbol
from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import bearing, heading
from probgen.quantities.expression import Expression, Name, Product, Sum, times
from probgen.statics.geometry import angle_of, cosine, sine
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Body, Force, ForcePart, Kind, System

_LEAST: Final = 14.0  # arrow of the least force drawn to scale, pt
_SHORTEST: Final = 18.0  # arrow of a force next to nothing where arrows are not to scale, pt
_LONGEST: Final = 58.0  # arrow of the largest force, pt
_STRETCHED: Final = 1.3  # of that, how long an arrow is made at most to have its components seen
LEAST_LEG: Final = 13.0
"""The shortest component that is drawn as a side of the rectangle about a force, pt."""

_ALIGNED: Final = 0.5  # degrees
_TOUCHING: Final = (Kind.HINGE, Kind.ROLLER, Kind.CONTACT, Kind.ROUGH, Kind.FIXED)
_LINES: Final = (Kind.CABLE, Kind.MUSCLE, Kind.ROPE, Kind.SPRING)
_BARS: Final = (Kind.MEMBER, Kind.LINK)
_UNSOLVED: Final = 0.3  # what a force without a value is drawn as, of the largest


@dataclass(frozen=True, slots=True)
class Vector:
    """A force as it is to be drawn: the way it is assumed to act, whatever comes out.

    size: newtons, never negative; direction: assumed, degrees; part: as `Force.part`.
    sign: 1 where it acts that way, -1 where the opposite one, 0 where it vanishes or has no value.
    written: what it is labelled as where that is no letter, T cos theta; brief: its letter, T_x,
    where there is no room for that.
    pulls: it is the pull of a line, whose arrow leaves its point if it can; presses: it presses on
    a face, where its arrow ends; leaves: it is the pull of a bar, whose arrow never ends at its
    point, where it would be read as a push.
    """

    id: str
    symbol: str
    at: complex
    size: float
    direction: float
    element: str
    part: ForcePart = ForcePart.WHOLE
    sign: int = 1
    written: Expression | None = None
    brief: str = ""
    pulls: bool = False
    presses: bool = False
    leaves: bool = False

    @property
    def label(self) -> Expression:
        """What stands beside its arrow."""
        return self.written or Name(self.symbol, self.symbol)

    @property
    def in_short(self) -> Vector:
        """The same labelled by a letter alone."""
        return replace(self, written=Name(self.id, self.brief)) if self.brief else self

    @property
    def least_share(self) -> float:
        """The smaller of its components along x and y, of the whole."""
        unit = heading(self.direction)
        return min(abs(unit.real), abs(unit.imag))

    @property
    def slants(self) -> bool:
        """Whether it points along neither axis."""
        return abs((self.direction + 45.0) % 90.0 - 45.0) > _ALIGNED


def vectors(measured: Survey, body: Body) -> tuple[Vector, ...]:
    """The forces on a body the way they are assumed to act; components stay apart.

    A force the working never needed has no value: it is taken as a middling one.
    """
    forces = [force for force in measured.system.forces if force.body == body.id]
    sizes = {f.id: measured.number(f.magnitude) for f in forces if measured.has(f.magnitude)}
    largest = max(map(abs, sizes.values()), default=1.0)
    found = []
    for force in forces:
        value = sizes.get(force.id, 0.0)
        sign = 0 if abs(value) <= 1e-9 * largest else 1 if value > 0 else -1
        found.append(
            Vector(
                force.id,
                _symbol(measured.labels, force),
                measured.places[force.point],
                abs(value) if force.id in sizes else _UNSOLVED * largest,
                measured.number(force.direction) % 360.0,
                force.element,
                force.part,
                sign,
                _strands(force),
                pulls=_pulls(measured.system, force),
                leaves=force.kind in _BARS,
            )
        )
    return tuple(found)


def _pulls(system: System, force: Force) -> bool:
    """Whether a line pulls; a spring that is compressed pushes."""
    element = next((each for each in system.elements if each.id == force.element), None)
    return force.kind in _LINES and not (element and element.compressed)


def _strands(force: Force) -> Expression | None:
    """The pull of several strands of a rope, 4 T, as the balances have it; None for any other."""
    several = force.kind is Kind.ROPE and isinstance(force.magnitude, Product)
    return force.magnitude if several else None


def _symbol(labels: Labels, force: Force) -> str:
    if isinstance(force.magnitude, Name):
        return force.magnitude.symbol
    return labels.elements[force.element].symbol or force.id


def resultant(whole: Name, legs: Sequence[Vector]) -> Vector:
    """The whole of a hinge's force from its components; whole: its letter."""
    step = sum((leg.size * heading(leg.direction) for leg in legs), 0j)
    return Vector(whole.id, whole.symbol, legs[0].at, abs(step), bearing(step), whole.id)


def components(whole: Vector, force: Force) -> tuple[Vector, Vector]:
    """A slanting force along x and along y, labelled by what its balances hold: T cos theta."""
    step, angle = whole.size * heading(whole.direction), angle_of(force.direction)
    along_x = replace(
        whole,
        id=Quantity(whole.id).x,
        size=abs(step.real),
        direction=0.0 if step.real > 0 else 180.0,
        written=times(force.magnitude, _unsigned(cosine(angle))),
        brief=component_symbol(whole.symbol, "x"),
    )
    along_y = replace(
        whole,
        id=Quantity(whole.id).y,
        size=abs(step.imag),
        direction=90.0 if step.imag > 0 else 270.0,
        written=times(force.magnitude, _unsigned(sine(angle))),
        brief=component_symbol(whole.symbol, "y"),
    )
    return along_x, along_y


def _unsigned(expression: Expression) -> Expression:
    """An expression without the sign before it."""
    if isinstance(expression, Sum) and len(expression.terms) == 1:
        return expression.terms[0][1]
    return expression


@dataclass(frozen=True, slots=True)
class ArrowScale:
    """How long arrows are: to one linear scale, or, where the least would be too short to be seen,
    by the square root of the force, which the diagram then says.  A force whose components are to
    be seen is then made as much longer as these need, within bounds.

    largest: the largest force, N; linear: whether lengths are to scale; parted: the ids of the
    forces whose components are to be seen; share: how long all arrows are drawn, of their length
    here.
    """

    largest: float
    linear: bool
    parted: frozenset[str] = frozenset()
    share: float = 1.0

    @classmethod
    def of(
        cls, forces: Iterable[Vector], parted: Iterable[Vector] = (), share: float = 1.0
    ) -> ArrowScale:
        """The scale for the forces of one diagram; parted: those among them whose components are
        to be seen.
        """
        shown, split = tuple(forces), tuple(parted)
        largest = max((each.size for each in shown), default=0.0) or 1.0
        least = _LEAST / _LONGEST * largest
        seen = all(each.sign and each.size >= least for each in shown)
        legs = (each.size * each.least_share * share for each in split)
        seen &= all(leg * _LONGEST >= LEAST_LEG * largest for leg in legs)
        return cls(largest, seen, frozenset(each.id for each in split), share)

    def length(self, vector: Vector) -> float:
        """The length (pt) of the arrow of a force."""
        share = vector.size / self.largest
        if self.linear:
            return _LONGEST * share
        usual = _SHORTEST + (_LONGEST - _SHORTEST) * math.sqrt(share)
        needed = LEAST_LEG / vector.least_share if vector.id in self.parted else 0.0
        fits = needed <= _STRETCHED * _LONGEST
        return max(usual, needed / self.share) if fits else usual

    def drawn(self, vector: Vector) -> float:
        """The length (pt) the arrow of a force is drawn with."""
        return self.share * self.length(vector)

    def shows_legs(self, whole: Vector, legs: Sequence[Vector]) -> bool:
        """Whether the components of a force are long enough to be sides of a rectangle."""
        least = min(leg.size for leg in legs) / whole.size
        return least * self.drawn(whole) >= LEAST_LEG - 1e-9


def pair_marks(system: System) -> dict[str, int]:
    """How many strokes mark each force that two bodies exert on each other, by the force's id.

    Action and reaction have the same number; the components of one force count together.  The pulls
    of a rope at its two ends are none: each is a pair with what the body does to the rope.
    """
    marks: dict[str, int] = {}
    counts: dict[tuple[str, str], int] = {}
    for force in system.forces:
        if force.pair and force.kind in _TOUCHING and force.id not in marks:
            whole = (force.element, "" if force.part.is_component else force.id)
            number = counts.setdefault(whole, len(counts) + 1)
            marks[force.id] = marks[force.pair] = number
    return marks
