"""Something of a working that points are given for."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum, auto

from probgen.quantities.expression import Expression, Name
from probgen.quantities.formula import Formula
from probgen.statics.method import TorqueForm
from probgen.working.convention import Turning
from probgen.working.fact import Fact


class Judged(StrEnum):
    """What beside its size makes a result right."""

    SIGN_AND_UNIT = auto()
    UNIT = auto()
    NOTHING = auto()


@dataclass(frozen=True, slots=True)
class DiagramDrawn(Fact):
    """A free-body diagram; alone: whether there is no other body.

    bodies: the body, or those taken as one; forces, couples: how many of each it shows.
    """

    bodies: tuple[str, ...]
    alone: bool
    forces: int
    couples: int = 0


@dataclass(frozen=True, slots=True)
class TorqueEquation(Fact):
    """bodies: whose balance it is; none where there is only one; form: how torques are written;
    "arm" instead of "angle" where no force acts at a slant.
    """

    pivot: str
    turning: Turning
    form: TorqueForm
    bodies: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class BalanceWritten(Fact):
    """A balance of forces solved together with others; axis: its label; bodies: as above."""

    axis: str
    bodies: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ConditionWritten(Fact):
    """A condition that is solved together with balances."""

    condition: Formula


@dataclass(frozen=True, slots=True)
class TakenOutOfEquations(Fact):
    """Equations brought down to one; quantities: what is taken out of them."""

    quantities: tuple[Name, ...]


@dataclass(frozen=True, slots=True)
class WrittenOut(Fact):
    """A quantity that the data settle, in symbols."""

    quantity: Name


@dataclass(frozen=True, slots=True)
class ResultantIntegrated(Fact):
    """The resultant of a load by a formula, and the distance it acts at."""

    resultant: Name
    centroid: Name


@dataclass(frozen=True, slots=True)
class InsideDrawn(Fact):
    """What acts inside a body, drawn along it."""

    body: str


@dataclass(frozen=True, slots=True)
class NumbersPutIn(Fact):
    quantity: Name


@dataclass(frozen=True, slots=True)
class QuantityFound(Fact):
    quantity: Name
    judged: Judged


@dataclass(frozen=True, slots=True)
class FoundFromBalance(Fact):
    """axis: the label of the axis forces are summed along; bodies: none where there is only one."""

    quantity: Name
    axis: str
    judged: Judged
    bodies: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class IdleNamed(Fact):
    """A member of a truss that carries nothing, which is seen at a joint; body: the joint's."""

    quantity: Name
    body: str


@dataclass(frozen=True, slots=True)
class FoundFromCondition(Fact):
    quantity: Name
    condition: Formula
    judged: Judged


@dataclass(frozen=True, slots=True)
class FirstLimitNamed(Fact):
    """Which of several limits is reached first."""


@dataclass(frozen=True, slots=True)
class FoundAtFirstLimit(Fact):
    """What is asked beside the utmost value, whichever limit is reached first."""

    quantity: Name
    judged: Judged


@dataclass(frozen=True, slots=True)
class LimitsCompared(Fact):
    """What is asked for beside what is possible: both sides of each limit."""

    sides: tuple[tuple[Expression, Expression], ...]


@dataclass(frozen=True, slots=True)
class MarginFound(Fact):
    """How far the sides of a limit are apart."""

    left: Expression
    right: Expression
    judged: Judged


@dataclass(frozen=True, slots=True)
class MagnitudeFound(Fact):
    element: str


@dataclass(frozen=True, slots=True)
class DirectionFound(Fact):
    """worded: with its side, and not as an angle from the x-axis alone."""

    element: str
    worded: bool


@dataclass(frozen=True, slots=True)
class ResultantPlaced(Fact):
    """The size of a load's resultant, and where it acts."""

    resultant: Name


@dataclass(frozen=True, slots=True)
class OtherRoutes(Fact):
    """Another right way earns as much; follows: and so does what is right but for an earlier wrong
    result, where something is worked out from another.
    """

    follows: bool


@dataclass(frozen=True, slots=True)
class Criterion:
    """Something points are given for.

    kind: as in `scheme.WEIGHTS`; quantity: the id of the result, "" for a diagram or an equation;
    asked: whether the problem asks for it.
    """

    kind: str
    what: Fact
    quantity: str = ""
    asked: bool = False


def halves(criterion: Criterion) -> tuple[Criterion, Criterion] | None:
    """What is set up, and what comes out of it."""
    match criterion.what:
        case FoundFromBalance(quantity, axis, judged, bodies):
            method = Criterion("balance", BalanceWritten(axis, bodies))
        case FoundFromCondition(quantity, condition, judged):
            method = Criterion("condition", ConditionWritten(condition))
        case _:
            return None
    found = QuantityFound(quantity, judged)
    return method, replace(criterion, kind="result", what=found)
