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
    """asked: whether the problem asks for it, so that the key has the range that is right."""

    quantity: Name
    judged: Judged
    asked: bool = False


@dataclass(frozen=True, slots=True)
class FoundFromBalance(Fact):
    """axis: the label of the axis forces are summed along; bodies: none where there is only one.

    solved: whether the balance is solved for it; one that nothing else is in says that it is zero.
    """

    quantity: Name
    axis: str
    judged: Judged
    bodies: tuple[str, ...] = ()
    solved: bool = True


@dataclass(frozen=True, slots=True)
class IdleNamed(Fact):
    """A member of a truss that carries nothing, which is seen at a joint; body: the joint's."""

    quantity: Name
    body: str


@dataclass(frozen=True, slots=True)
class FoundFromCondition(Fact):
    """solved: whether the condition is solved for it, as it does not stand alone on one side."""

    quantity: Name
    condition: Formula
    judged: Judged
    solved: bool = True


@dataclass(frozen=True, slots=True)
class FirstLimitNamed(Fact):
    """Which of several limits is reached first."""


@dataclass(frozen=True, slots=True)
class FoundAtFirstLimit(Fact):
    """What is asked where a limit is reached, whichever that is."""

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
        case FoundFromBalance(quantity, axis, judged, bodies, _):
            method = Criterion("balance", BalanceWritten(axis, bodies))
        case FoundFromCondition(quantity, condition, judged, _):
            method = Criterion("condition", ConditionWritten(condition))
        case _:
            return None
    found = QuantityFound(quantity, judged, criterion.asked)
    return method, replace(criterion, kind="result", what=found)


def of_asked(criterion: Criterion, asked: bool) -> Criterion:
    """The same of a quantity that the problem asks for, or of one that it does not."""
    what = criterion.what
    own = replace(what, asked=asked) if isinstance(what, QuantityFound) else what
    return replace(criterion, what=own, asked=asked)


def solved(criterion: Criterion) -> bool:
    """Whether more is to be done for its number, or for a zero to be seen, than to write it."""
    match criterion.what:
        case FoundFromBalance() | FoundFromCondition() as found:
            return found.solved
        case what:
            return isinstance(what, IdleNamed)
