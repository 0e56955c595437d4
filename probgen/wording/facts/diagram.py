"""Facts about what acts inside a body, as it is drawn along it."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.expression import Name, Number
from probgen.quantities.unit import Unit
from probgen.statics.internal_forces import Inside
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class DiagramHeading(Fact):
    """drawn: which of the three."""

    drawn: tuple[Inside, ...]


@dataclass(frozen=True, slots=True)
class DiagramRead(Fact):
    """How each of the three changes along a body, and which way it is drawn.

    spread: whether a load is spread along it; even: and every such load is an even one downward.
    """

    body: str
    drawn: tuple[Inside, ...]
    spread: bool
    even: bool


@dataclass(frozen=True, slots=True)
class LargestInside(Fact):
    """The largest of a kind, up or down, and where.

    at: the point it is at, "" where there is none; distance: from the point `start` otherwise.
    level: whether it is where the shear force passes through zero.
    """

    of: Inside
    value: Number
    at: str
    distance: Number
    start: str
    level: bool


@dataclass(frozen=True, slots=True)
class InsideShown(Fact):
    """A diagram for those who cannot see it: the values of each, in the order of x."""

    body: str
    values: tuple[tuple[Inside, tuple[Number, ...]], ...]


@dataclass(frozen=True, slots=True)
class ExpressionsTaken(Fact):
    """How V and M at a section are written: of which distance, by which part.

    x: the distance from the point `start`; beyond: they are those of the part beyond the section.
    length, force, moment: the units of the numbers.
    """

    x: Name
    start: str
    beyond: bool
    length: Unit
    force: Unit
    moment: Unit


@dataclass(frozen=True, slots=True)
class ValuesFollow(Fact):
    """Values that the working had no need of before."""

    values: tuple[tuple[Name, Number], ...]


@dataclass(frozen=True, slots=True)
class LargestHeading(Fact):
    """Where a bending moment is largest."""


@dataclass(frozen=True, slots=True)
class ShearTurnsMoment(Fact):
    """That M is largest where V changes its sign, at a couple or at an end that is held."""

    body: str


@dataclass(frozen=True, slots=True)
class ShearBeside(Fact):
    """What follows are the shear forces beside points, each just before it or just beyond it."""

    at: tuple[tuple[str, bool], ...]


@dataclass(frozen=True, slots=True)
class ShearChanges(Fact):
    """Where the shear force changes its sign, so that the moment is largest.

    between: two points, or none where it does so at a point; at: the section; place: its distance
    from the point `origin`, a letter.  falls: from above zero to below it.
    """

    between: tuple[str, ...]
    at: str
    place: Name
    origin: str
    falls: bool


@dataclass(frozen=True, slots=True)
class ShearKeepsSign(Fact):
    """The shear force has one sign along a body whose far end bears no moment.

    at: the end where the moment is largest; free: the other.
    """

    body: str
    at: str
    free: str
    positive: bool


@dataclass(frozen=True, slots=True)
class LargestHeld(Fact):
    """The moment is largest at a point where V keeps its sign: a couple acts there, or an end."""

    at: str
    couple: bool


@dataclass(frozen=True, slots=True)
class SmallerMoments(Fact):
    """Other places where the moment might have been largest, and what it is there.

    start: the point distances count from; places: the point each is at, "" where there is none,
    the distance, and the value.
    """

    start: str
    places: tuple[tuple[str, Number, Number], ...]


@dataclass(frozen=True, slots=True)
class AxesPrepared(Fact):
    """Axes below a body, for those who cannot see them; drawn: what they are for."""

    body: str
    drawn: tuple[Inside, ...]


@dataclass(frozen=True, slots=True)
class DiagramAsked(Fact):
    """That a student is to draw what acts inside a body, in the axes below it."""

    body: str
    drawn: tuple[Inside, ...]
