"""Facts of a torque balance: its pivot, and what turns the body about it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from probgen.quantities.expression import Expression, Name
from probgen.quantities.formula import Formula
from probgen.working.convention import Rotation, Turning
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class TurningHeading(Fact):
    """bodies: the body, or those taken as one."""

    bodies: tuple[str, ...]
    pivot: str


class Hold(StrEnum):
    """What there is at a pivot."""

    HINGE = "hinge"
    BUILT_IN = "built-in"
    TOUCHING = "touching"
    PUSHED = "pushed"


@dataclass(frozen=True, slots=True)
class PivotBare(Fact):
    """Torques are taken about a point; there is nothing to say of it."""

    pivot: str
    turning: Turning


@dataclass(frozen=True, slots=True)
class PivotHeld(Fact):
    """Torques are taken about a point where an element holds or touches a body."""

    pivot: str
    turning: Turning
    hold: Hold
    element: str
    body: str


@dataclass(frozen=True, slots=True)
class PivotMeeting(Fact):
    """Torques are taken about a point where lines of action meet."""

    pivot: str
    turning: Turning
    lines: tuple[Expression, ...]


@dataclass(frozen=True, slots=True)
class PassesThrough(Fact):
    """A force that alone could turn the body, whose line so has to pass through the pivot."""

    force: Expression
    bodies: tuple[str, ...]
    pivot: str


@dataclass(frozen=True, slots=True)
class TurnsNothing(Fact):
    """Forces with no lever arm.

    through: the pivot, where only their lines of action pass through it; "" where they act there.
    unknowns: those of them that are still to be found, which leave the equation.
    again: whether the reason was given before.
    """

    forces: tuple[Expression, ...]
    through: str
    unknowns: tuple[Expression, ...]
    again: bool = False


@dataclass(frozen=True, slots=True)
class SlantingLengths(Fact):
    """What follows are the lengths of lines over two legs; count: how many."""

    count: int


@dataclass(frozen=True, slots=True)
class CoupleAnywhere(Fact):
    """Couples turn a body alike about every point; moments: their letters."""

    moments: tuple[Expression, ...]
    turning: Turning


@dataclass(frozen=True, slots=True)
class Placed:
    """One of several forces with the same letter, by the point it acts at."""

    force: Expression
    point: str


@dataclass(frozen=True, slots=True)
class TurnsBody(Fact):
    """Forces that turn the body one way; positive: whether that way is the positive one.

    drawn: whether one of them does so only as it is drawn, since it comes out negative.
    """

    forces: tuple[Expression | Placed, ...]
    bodies: tuple[str, ...]
    rotation: Rotation
    positive: bool
    drawn: bool = False


@dataclass(frozen=True, slots=True)
class SquareToArm(Fact):
    """Forces at right angles to their arms; sine: what that makes of the sine, as a formula.

    arms: from which point to which they run.
    """

    forces: tuple[Expression | Placed, ...]
    arms: tuple[tuple[str, str], ...]
    sine: Formula


@dataclass(frozen=True, slots=True)
class AngleToArm(Fact):
    """The angle between forces and their arms; sine: equal to what, empty where that is plain.

    angle: empty where lengths give its sine and it is not worked with itself.
    arms: from which point to which they run.
    """

    forces: tuple[Expression | Placed, ...]
    arms: tuple[tuple[str, str], ...]
    angle: Formula
    sine: Formula


class Side(StrEnum):
    """On which side of the pivot a line of action passes."""

    RIGHT = "right"
    LEFT = "left"
    ABOVE = "above"
    BELOW = "below"
    OBLIQUE = "oblique"


@dataclass(frozen=True, slots=True)
class LineBeside(Fact):
    """Forces whose line of action passes beside the pivot, applied anywhere along it.

    arm: the distance, as letter and value; the value is left out where it is not known yet.
    plain: there is nothing that does not matter for it, as it acts straight beside the pivot, or
    that was told with a line before it.
    """

    forces: tuple[Expression | Placed, ...]
    pivot: str
    arm: Formula
    side: Side
    plain: bool = False


@dataclass(frozen=True, slots=True)
class ArmOfLegs(Fact):
    """A force reached from the pivot by several legs, each with a torque of its own.

    against: the legs by which it turns the body back; back: which way that is.
    """

    force: Expression | Placed
    lengths: tuple[Expression, ...]
    turning: Turning
    against: tuple[Expression, ...] = ()
    back: Rotation = "clockwise"


@dataclass(frozen=True, slots=True)
class LeverArm(Fact):
    """arm: in symbols, and worked out where it can be.

    sought: what in it is not known yet, where that was not told of an arm before.
    line, angle: from the pivot to where the force acts, and the angle between that and the force,
    where a lever arm is the part of it square to the force, or, with no angle, all of it; sine:
    what the sine of that angle is alike to; else empty.
    """

    force: Expression | Placed
    arm: Formula
    sought: tuple[Name, ...] = ()
    line: tuple[str, ...] = ()
    angle: Formula = ()
    sine: Formula = ()


@dataclass(frozen=True, slots=True)
class LegsAcross(Fact):
    """The one lever arm of a force reached from the pivot by several legs.

    toward, back: what legs count square to the force, toward its line of action and away from it;
    arm: all of them, in symbols and worked out.
    """

    force: Expression | Placed
    lengths: tuple[Expression, ...]
    toward: tuple[Expression, ...]
    back: tuple[Expression, ...]
    arm: Formula


@dataclass(frozen=True, slots=True)
class CoordinatesFrom(Fact):
    """Coordinates are seen from the pivot; which way torques are positive, whose form they have.

    letters: what the coordinates are called.
    """

    letters: tuple[Name, Name]
    pivot: str
    turning: Turning
    counter_clockwise: bool


@dataclass(frozen=True, slots=True)
class ByTheorems(Fact):
    """What sines and cosines add up to where two terms of a torque become one, each once."""

    sums: tuple[tuple[Expression, Expression], ...]


@dataclass(frozen=True, slots=True)
class ByCoordinates(Fact):
    """A force's coordinates from the pivot, its components, and its torque x F_y - y F_x.

    letters: what its components are called, said beside what they are; coordinates: what those are
    called.  counter_clockwise: whether that rotation is positive; else the torque is y F_x - x F_y.
    shorter: the torque as the balance has it, where the next line does not come to it; else None.
    square: from the pivot to where the force acts, where that slants at right angles to the force.
    """

    force: Expression
    letters: tuple[Name, Name]
    at: tuple[Expression, Expression]
    parts: tuple[Expression, Expression]
    torque: Expression
    counter_clockwise: bool
    coordinates: tuple[Name, Name]
    shorter: Expression | None = None
    square: tuple[str, ...] = ()
