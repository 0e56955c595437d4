"""Facts of the end of a working: limits, magnitude and direction, the last look."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum, auto

from probgen.quantities.expression import Expression, Name, Number
from probgen.quantities.formula import Formula
from probgen.working.convention import Turning
from probgen.working.direction import Direction, Way
from probgen.working.fact import Fact
from probgen.working.verdict import Verdict

# Limits.


@dataclass(frozen=True, slots=True)
class SupposedHeading(Fact):
    limit: str


@dataclass(frozen=True, slots=True)
class LimitSupposed(Fact):
    """A limit just reached: both of its sides are equal.

    first: whether it is supposed to be reached before others.
    push, place, at: the normal force whose point of application has come to another point, where
    that is the limit; else None.
    shown: whether what the left side is then follows as an equation.
    """

    limit: str
    left: Expression
    right: Expression
    first: bool
    push: Expression | None = None
    place: str = ""
    at: str = ""
    shown: bool = False


@dataclass(frozen=True, slots=True)
class FarthestHeading(Fact):
    """The utmost value of a quantity, which one limit alone gives; largest: or its smallest."""

    quantity: str
    largest: bool


@dataclass(frozen=True, slots=True)
class FirstHeading(Fact):
    pass


@dataclass(frozen=True, slots=True)
class HoldsHeading(Fact):
    pass


@dataclass(frozen=True, slots=True)
class LimitReached(Fact):
    """The value at which a limit is reached; only: whether there is no other limit."""

    limit: str
    value: Formula
    only: bool


@dataclass(frozen=True, slots=True)
class LimitElsewhere(Fact):
    """A limit that is passed on going back: it bounds a quantity from the other side.

    largest: whether the largest possible value was asked.
    """

    limit: str
    letter: Expression
    value: Formula
    largest: bool


@dataclass(frozen=True, slots=True)
class LimitDecides(Fact):
    """Which limit comes first; largest: whether the largest possible value was asked."""

    limit: str
    value: Formula
    largest: bool


@dataclass(frozen=True, slots=True)
class RestAtLimit(Fact):
    """What else is asked is worked out where a limit is just reached."""

    limit: str


@dataclass(frozen=True, slots=True)
class RoundedWithin(Fact):
    """The utmost value was rounded to the side where the limit holds; largest: down, else up.

    limit: the one that would be passed at the value rounded as usual.
    """

    largest: bool
    usual: Number
    limit: str


@dataclass(frozen=True, slots=True)
class LimitJudged(Fact):
    """left, right: the sides of the limit; needed, allowed: their numbers."""

    limit: str
    left: Expression
    needed: Number
    right: Expression
    allowed: Number
    verdict: Verdict


# Magnitude and direction.


@dataclass(frozen=True, slots=True)
class ResultantHeading(Fact):
    force: Name


@dataclass(frozen=True, slots=True)
class OneComponent(Fact):
    """A force one of whose components is zero; level: whether it is horizontal."""

    force: Name
    zero: Name
    other: Name
    level: bool


@dataclass(frozen=True, slots=True)
class QuadrantTold(Fact):
    """Which way a force points by the signs of its components.

    steep: the angle just found, between the force and the axis that directions are told from;
    angle: its letter.
    turned: counter-clockwise from +x, in numbers, where the course asks for that; else empty.
    """

    force: Name
    x: Name
    y: Name
    direction: Direction
    angle: Name
    steep: Number
    turned: Formula


@dataclass(frozen=True, slots=True)
class ResultantIs(Fact):
    force: Name
    size: Number
    direction: Direction


@dataclass(frozen=True, slots=True)
class ForceActs(Fact):
    """What an element does to a body."""

    element: str
    body: str
    size: Number
    direction: Direction


# The last look.


@dataclass(frozen=True, slots=True)
class CheckHeading(Fact):
    pass


@dataclass(frozen=True, slots=True)
class BodyCheckHeading(Fact):
    body: str


@dataclass(frozen=True, slots=True)
class UnusedAxis(Fact):
    """Forces along an axis that the working did not use."""

    axis: str


@dataclass(frozen=True, slots=True)
class UnusedPivot(Fact):
    """Torques about a point that the working did not use."""

    pivot: str
    turning: Turning


@dataclass(frozen=True, slots=True)
class RestFound(Fact):
    """Forces nobody asked for, from sums of forces that the working did not use; axes: along."""

    axes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class GivenBesides(Fact):
    """Forces nobody asked for, from equations that were solved together."""

    forces: tuple[Name, ...]


@dataclass(frozen=True, slots=True)
class UnusedWhole(Fact):
    """Forces along an axis on bodies taken as one, which the working did not use."""

    bodies: tuple[str, ...]
    axis: str


@dataclass(frozen=True, slots=True)
class UnusedLine(Fact):
    """Forces along the line of one of them, which the working did not use; way: its positive."""

    axis: str
    force: Expression
    way: Way


@dataclass(frozen=True, slots=True)
class PutBackForces(Fact):
    """Results put back into the sum of forces along an axis that gave them."""

    axis: str


@dataclass(frozen=True, slots=True)
class PutBackTorques(Fact):
    """Results put back into the sum of torques about a point that gave them."""

    pivot: str
    turning: Turning


@dataclass(frozen=True, slots=True)
class OtherLimitKept(Fact):
    """Where one limit is just reached another one is not: both of its sides, and their numbers.

    most: whether the left side must stay below the right one, and not above.
    """

    left: Expression
    needed: Number
    right: Expression
    allowed: Number
    most: bool


@dataclass(frozen=True, slots=True)
class RoundingLeft(Fact):
    """The terms of a balance, worked out with printed values and each rounded, do not add up to
    zero to their last digit.
    """


class ArmAmong(StrEnum):
    """A lever arm beside those of weights; equal to that of the only one."""

    SHORTER = auto()
    LONGER = auto()
    EQUAL = auto()


@dataclass(frozen=True, slots=True)
class PullCompared(Fact):
    """A pull that alone holds the weights, beside their sum.

    share: pull / sum of weights; several: of weights.
    arm: the pull's lever arm beside those of all of them.
    """

    pull: Expression
    share: Number
    total: Number
    several: bool
    arm: ArmAmong

    @property
    def alike(self) -> bool:
        """Whether nobody would tell the two apart by feeling."""
        return abs(self.share.value - 1) < Decimal("0.06")
