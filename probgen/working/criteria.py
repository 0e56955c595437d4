"""What each point of a problem is given for.

Weights follow common practice, no source: setting a balance up is worth more than putting numbers
into it.  They depend on the plan alone, so every student of a template is marked alike.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum, auto
from typing import Final

from probgen.quantities.expression import Name
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.unit import FORCE, TORQUE
from probgen.statics.derivation import Step
from probgen.statics.plan import Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Body, Form, System, Variable
from probgen.working.convention import Turning
from probgen.working.fact import Fact

WEIGHTS: Final = {
    "diagram": 2,
    "torque": 3,
    "substitution": 1,
    "result": 1,
    "formula": 2,
    "force": 1,
    "condition": 1,
    "limit": 1,
    "magnitude": 1,
    "direction": 1,
}
"""What each kind of step is worth beside the others: common practice, no source."""


class Judged(StrEnum):
    """What beside its size makes a result right."""

    SIGN_AND_UNIT = auto()
    UNIT = auto()
    NOTHING = auto()


@dataclass(frozen=True, slots=True)
class DiagramDrawn(Fact):
    """A free-body diagram; alone: whether there is no other body; forces: how many it shows."""

    body: str
    alone: bool
    forces: int


@dataclass(frozen=True, slots=True)
class TorqueEquation(Fact):
    pivot: str
    turning: Turning


@dataclass(frozen=True, slots=True)
class WrittenOut(Fact):
    """A quantity that the data settle, in symbols."""

    quantity: Name


@dataclass(frozen=True, slots=True)
class NumbersPutIn(Fact):
    quantity: Name


@dataclass(frozen=True, slots=True)
class QuantityFound(Fact):
    quantity: Name
    judged: Judged


@dataclass(frozen=True, slots=True)
class FoundFromBalance(Fact):
    """axis: the label of the axis forces are summed along."""

    quantity: Name
    axis: str
    judged: Judged


@dataclass(frozen=True, slots=True)
class FoundFromCondition(Fact):
    quantity: Name
    condition: Formula
    judged: Judged


@dataclass(frozen=True, slots=True)
class FirstLimitNamed(Fact):
    """Which of several limits is reached first."""


@dataclass(frozen=True, slots=True)
class LimitsCompared(Fact):
    """What is asked for beside what is possible."""


@dataclass(frozen=True, slots=True)
class MagnitudeFound(Fact):
    element: str


@dataclass(frozen=True, slots=True)
class DirectionFound(Fact):
    element: str


@dataclass(frozen=True, slots=True)
class Criterion:
    """Something points are given for.

    kind: as in `WEIGHTS`; quantity: the id of the result, "" for a diagram or an equation.
    """

    kind: str
    what: Fact
    quantity: str = ""


@dataclass(frozen=True, slots=True)
class Mark(Fact):
    """Points, and what they are given for: one criterion, or several where points are few."""

    criteria: tuple[Criterion, ...]
    points: int

    @property
    def kinds(self) -> tuple[str, ...]:
        return tuple(criterion.kind for criterion in self.criteria)

    @property
    def quantities(self) -> tuple[str, ...]:
        """The ids of the results it is given for."""
        return tuple(c.quantity for c in self.criteria if c.quantity)


def scheme(plan: Plan, turning: Turning, points: int) -> tuple[Mark, ...]:
    """Whole points for every step, adding up to `points`.

    With fewer points than steps, neighbouring steps are marked as one.  Raises ValueError when
    there is no point to give.
    """
    if points < 1:
        raise ValueError(f"{points} points: expected 1 or more")
    groups: list[tuple[Criterion, ...]] = [(each,) for each in criteria(plan, turning)]
    while True:
        shares = shared(points, [_weight(group) for group in groups])
        if all(shares):
            return tuple(Mark(group, share) for group, share in zip(groups, shares, strict=True))
        groups = _merged(groups)


def shared(points: int, weights: Sequence[int]) -> list[int]:
    """Whole points in proportion to the weights, by largest remainders; ties go to the first."""
    whole = sum(weights)
    shares = [points * weight // whole for weight in weights]
    rest = sorted(range(len(weights)), key=lambda i: -(points * weights[i] % whole))
    for place in rest[: points - sum(shares)]:
        shares[place] += 1
    return shares


def _weight(group: tuple[Criterion, ...]) -> int:
    return sum(WEIGHTS[criterion.kind] for criterion in group)


def _merged(groups: list[tuple[Criterion, ...]]) -> list[tuple[Criterion, ...]]:
    """The two neighbours of least weight made one."""
    pairs = range(len(groups) - 1)
    at = min(pairs, key=lambda i: _weight(groups[i]) + _weight(groups[i + 1]))
    return [*groups[:at], groups[at] + groups[at + 1], *groups[at + 2 :]]


def criteria(plan: Plan, turning: Turning) -> Iterator[Criterion]:
    """All there is to mark in a working of the plan, in its order."""
    system = plan.system
    alone = len(system.bodies) == 1
    for body in bodies_used(plan):
        drawn = DiagramDrawn(body.id, alone, _forces_on(system, body.id))
        yield Criterion("diagram", drawn)
    for step in _steps(plan):
        yield from _of_step(system.variables[step.unknown], step, turning)
    for variable in _from_data(plan):
        name, found = variable.as_name, QuantityFound(variable.as_name, _judged(variable))
        yield Criterion("formula", WrittenOut(name))
        yield Criterion("substitution", NumbersPutIn(name))
        yield Criterion("result", found, variable.id)
    if len(plan.branches) > 1:
        yield Criterion("limit", FirstLimitNamed())
    for find in system.finds:
        if find.form is Form.HOLDS:
            yield Criterion("limit", LimitsCompared())
        if find.form is Form.MAGNITUDE_AND_DIRECTION:
            owner, of = find.quantity, Quantity(find.quantity)
            yield Criterion("magnitude", MagnitudeFound(owner), of.magnitude)
            yield Criterion("direction", DirectionFound(owner), of.direction)


def bodies_used(plan: Plan) -> tuple[Body, ...]:
    """The bodies whose forces the working needs: of its balances, and of resultants asked."""
    used = {body for step in _steps(plan) for each in step.equations for body in each.bodies}
    used |= {
        plan.system.element(find.quantity).body
        for find in plan.system.finds
        if find.form is Form.MAGNITUDE_AND_DIRECTION
    }
    return tuple(body for body in plan.system.bodies if body.id in used)


def _from_data(plan: Plan) -> list[Variable]:
    """The quantities asked that follow from the data with no balance, such as a centre of mass."""
    asked: set[str] = set()
    for find in plan.system.finds:
        asked |= {find.quantity, *Quantity(find.quantity).components}
    settled = [d.variable for d in plan.definitions if d.variable in asked]
    return [plan.system.variables[id] for id in settled]


def _steps(plan: Plan) -> list[Step]:
    """The steps to every limit, each once, where the plan is to find which is reached first."""
    steps = list(plan.steps)
    for branch in plan.branches:
        steps += [step for step in branch.plan.steps if step not in steps]
    return steps


def _forces_on(system: System, body: str) -> int:
    """How many forces the diagram shows: one for a hinge, whose components are two."""
    return sum(1 for force in system.forces if force.body == body and force.part != "y")


def _of_step(variable: Variable, step: Step, turning: Turning) -> Iterator[Criterion]:
    name, equation, judged = variable.as_name, step.equation, _judged(variable)
    match equation.kind:
        case "torque":
            yield Criterion("torque", TorqueEquation(equation.about, turning))
            yield Criterion("substitution", NumbersPutIn(name))
            yield Criterion("result", QuantityFound(name, judged), step.unknown)
        case "force":
            found = FoundFromBalance(name, equation.about, judged)
            yield Criterion("force", found, step.unknown)
        case _:
            left, right = (term.magnitude for term in equation.terms)
            condition: Formula = (left, Relation("="), right)
            yield Criterion("condition", FoundFromCondition(name, condition, judged), step.unknown)


def _judged(variable: Variable) -> Judged:
    if variable.dimension in (FORCE, TORQUE) and not variable.nonnegative:
        return Judged.SIGN_AND_UNIT
    return Judged.UNIT if variable.unit.plain else Judged.NOTHING
