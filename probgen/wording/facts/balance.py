"""Facts of the steps of a working: axes, balances, conditions, signs."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto

from probgen.quantities.expression import Expression, Name, Number
from probgen.quantities.formula import Formula
from probgen.working.convention import Rotation, Turning
from probgen.working.direction import Way
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class AxesHeading(Fact):
    pass


@dataclass(frozen=True, slots=True)
class Tilt:
    """An axis along a surface or a body, or square to it, and its positive way.

    body: that body, "" for a surface; element: what has the surface where several touch, else "".
    way: None where each of several bodies has its own.
    """

    axis: str
    along: bool
    way: Way | None
    body: str = ""
    element: str = ""


@dataclass(frozen=True, slots=True)
class AxesTaken(Fact):
    """x to the right and y up, and others where forces are summed along them."""

    tilted: tuple[Tilt, ...] = ()


@dataclass(frozen=True, slots=True)
class AxesAndTurning(Fact):
    """The same, and which rotation is positive; against: asked couples that count positive the
    other way.
    """

    positive: Rotation
    turning: Turning
    tilted: tuple[Tilt, ...] = ()
    against: tuple[Expression, ...] = ()


@dataclass(frozen=True, slots=True)
class TorqueHeading(Fact):
    turning: Turning


@dataclass(frozen=True, slots=True)
class ForceHeading(Fact):
    """bodies: whose balance it is, none where there is one body only."""

    bodies: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TogetherHeading(Fact):
    equations: int


@dataclass(frozen=True, slots=True)
class QuantityHeading(Fact):
    quantity: str


@dataclass(frozen=True, slots=True)
class NoneAlone(Fact):
    """Equations that hold some unknowns, and no other, but none of them a single one."""

    equations: int
    unknowns: tuple[Name, ...]


@dataclass(frozen=True, slots=True)
class BalancesSay(Fact):
    """Balances with what is known on one side follow."""


@dataclass(frozen=True, slots=True)
class Divided(Fact):
    """One equation divided by the other, which leaves out what stands before sine and cosine."""

    dropped: Expression


@dataclass(frozen=True, slots=True)
class SquaredAndAdded(Fact):
    """A size from its two parts, by Pythagoras."""

    size: Name


@dataclass(frozen=True, slots=True)
class AngleSquaredOut(Fact):
    """Two equations squared and added, which leaves out an angle."""

    dropped: Name


@dataclass(frozen=True, slots=True)
class WithTheResult(Fact):
    """What follows uses the result just found."""


class Still(Enum):
    """How bodies in equilibrium are."""

    AT_REST = auto()
    STEADY = auto()  # one slides, or what slides on it may
    SUPPOSED = auto()  # at rest, which is to be found out


@dataclass(frozen=True, slots=True)
class TorquesZero(Fact):
    """Why the torques on bodies add up to zero."""

    bodies: tuple[str, ...]
    pivot: str
    turning: Turning
    still: Still = Still.AT_REST


@dataclass(frozen=True, slots=True)
class ForcesZero(Fact):
    """Why forces along some axes add up to zero; no axes stand for any axis.

    too: whether a balance of the same bodies was said before; particle: it may move steadily.
    """

    bodies: tuple[str, ...]
    axes: tuple[str, ...]
    too: bool
    particle: bool
    still: Still = Still.AT_REST


@dataclass(frozen=True, slots=True)
class PullsSeveral(Fact):
    """A force that acts so many times in one balance, each time the same way and as large."""

    element: str
    force: Expression
    count: int
    axis: str


@dataclass(frozen=True, slots=True)
class WeightTurned(Fact):
    """A weight on a slope; angle: of the slope; square, along: its parts, without signs.

    body: the straight body that slopes, "" for a surface; element: as in `Tilt`; again: whether it
    was told of another weight there, or on a slope as steep.
    """

    weight: Expression
    angle: Expression
    square: Expression
    along: Expression
    body: str = ""
    element: str = ""
    again: bool = False


@dataclass(frozen=True, slots=True)
class GoOnWith(Fact):
    """Earlier results as they are used from here on, and as they were rounded."""

    carried: tuple[Number, ...]
    rounded: tuple[Number, ...]


@dataclass(frozen=True, slots=True)
class ForceSplit(Fact):
    """A force at an angle, and its parts along axes.

    angle: from the horizontal, or from the vertical where upright; parts: axis and signed part.
    place: which it is of `count` forces of one letter that are told here, from 1.
    """

    force: Expression
    angle: Formula
    way: Way
    upright: bool
    parts: tuple[tuple[str, Formula], ...]
    place: int = 1
    count: int = 1


@dataclass(frozen=True, slots=True)
class ConditionsHold(Fact):
    """The author's reasons of some conditions."""

    conditions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Leaning(Fact):
    """A force at an angle to a member or a surface, or to the line square to it; element: the
    member's, or as in `Tilt`."""

    force: Expression
    angle: Expression
    element: str
    square: bool


@dataclass(frozen=True, slots=True)
class AxisTilted(Fact):
    """along: whether the axis runs along the surface, and not square to it; way: its positive.

    missing: unknown forces that it leaves out.
    body: the body it is along or square to; element: the member it is square to, or as in `Tilt`.
    """

    axis: str
    along: bool
    way: Way
    missing: tuple[Expression, ...]
    element: str = ""
    body: str = ""


@dataclass(frozen=True, slots=True)
class ForceNegative(Fact):
    """A force that acts against the way first taken; component: whether it is part of one.

    expected: whether that was reasoned beforehand.
    body: what is told of, where that is one of two bodies that act on each other; else "".
    axial: whether it is what a section lays bare along a body, which is drawn as tension.
    """

    force: Expression
    component: bool
    way: Way
    expected: bool
    body: str = ""
    axial: bool = False


@dataclass(frozen=True, slots=True)
class CoupleNegative(Fact):
    """A couple that acts the other way than it was taken; rotation: the way it acts.

    body: what is told of, where that is the second of two bodies that act on each other; else "".
    """

    couple: Name
    rotation: Rotation
    body: str = ""


@dataclass(frozen=True, slots=True)
class PlaceNegative(Fact):
    """A distance found on the other side than it was taken; way: from its origin, as found."""

    distance: Name
    way: Way


@dataclass(frozen=True, slots=True)
class MembersPull(Fact):
    """Members are taken in tension, so that a negative force is one of compression."""


@dataclass(frozen=True, slots=True)
class MemberSense(Fact):
    """What the sign of a member's force says of it."""

    force: Name
    member: str
    pulls: bool


@dataclass(frozen=True, slots=True)
class MemberState(Fact):
    """The same beside an answer."""

    pulls: bool


@dataclass(frozen=True, slots=True)
class MemberIdle(Fact):
    """Why a member carries nothing: at a joint it alone has a component along some axis.

    across: the elements of the other members there, which have none, two of them in line; loaded:
    whether anything acts there but members.
    """

    force: Name
    member: str
    joint: str
    across: tuple[str, ...]
    loaded: bool
