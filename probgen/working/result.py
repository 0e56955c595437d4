"""Results: what was asked, in full precision and as it is to be printed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from probgen.bank.labels import Labels
from probgen.quantities.expression import Number
from probgen.quantities.unit import DEGREE
from probgen.statics.plan import Plan, limits_asked
from probgen.statics.quantity_id import Quantity
from probgen.statics.rerun import first_limit_id
from probgen.statics.system import Find, Form, System
from probgen.working.digits import Digits
from probgen.working.direction import Direction, direction_of
from probgen.working.fact import Fact
from probgen.working.verdict import Verdict, governing, holds, verdict_on


class ResultKind(StrEnum):
    """What a result is."""

    QUANTITY = "quantity"
    MAGNITUDE = "magnitude"
    DIRECTION = "direction"
    LIMIT = "limit"  # the one reached first
    VERDICT = "verdict"  # whether a limit is kept


@dataclass(frozen=True, slots=True)
class LimitNamed(Fact):
    """A limit by what happens beyond it."""

    limit: str


@dataclass(frozen=True, slots=True)
class Target:
    """What one result is of, known before any number is.

    id: the unknown's id, or "R.magnitude", "R.direction", "R.x", "R.y" of a two-component force.
    find: what asks for it.
    owner: the quantity, element or limit it is of; symbol: the printed letter of the quantity, of a
    direction that of its force, "" for a limit or a verdict.
    asked: False for components told beside an answer.
    """

    id: str
    kind: ResultKind
    find: Find
    owner: str
    symbol: str
    asked: bool

    @property
    def is_number(self) -> bool:
        """Whether it is a number, and not a limit's name or a yes or no."""
        return self.kind not in (ResultKind.LIMIT, ResultKind.VERDICT)


@dataclass(frozen=True, slots=True)
class Result(Target):
    """One asked quantity.

    value: full precision in `unit` (a unit's name, "" for a plain number); of a limit its place
    among the limits, of a verdict 1 or 0.
    shown: what is printed.
    angle_from_x: of a direction, degrees counter-clockwise from +x.
    """

    value: float
    unit: str
    shown: Number | Direction | LimitNamed | Verdict
    angle_from_x: float | None = None


def targets(plan: Plan, labels: Labels) -> tuple[Target, ...]:
    """Everything asked, in the order asked; components stand beside a magnitude and direction,
    unless they are asked for themselves.

    Nobody is asked which limit is reached first where there is one.
    """
    return tuple(
        target
        for target in _all_targets(plan.system, labels)
        if target.kind is not ResultKind.LIMIT or len(plan.branches_to(target.find)) > 1
    )


def target_of(system: System, labels: Labels, id: str) -> Target | None:
    """What an answer's id is of; None for what is no answer."""
    return next((target for target in _all_targets(system, labels) if target.id == id), None)


def results(digits: Digits, sought: Iterable[Target]) -> tuple[Result, ...]:
    """The results of some targets, in their order."""
    return tuple(_result(digits, target) for target in sought)


def _all_targets(system: System, labels: Labels) -> Iterator[Target]:
    found = [each for find in system.finds for each in _targets(system, labels, find)]
    asked = {target.id for target in found if target.asked}
    yield from (target for target in found if target.asked or target.id not in asked)


def _targets(system: System, labels: Labels, find: Find) -> Iterator[Target]:
    owner, of = find.quantity, Quantity(find.quantity)
    match find.form:
        case Form.VALUE:
            yield _quantity(labels, find, owner)
        case Form.LARGEST | Form.SMALLEST:
            yield _quantity(labels, find, owner)
            yield Target(of.limit, ResultKind.LIMIT, find, owner, "", True)
        case Form.HOLDS:
            for limit in limits_asked(system, find):
                yield Target(limit.id, ResultKind.VERDICT, find, limit.id, "", True)
        case Form.COMPONENTS:
            yield from _components(labels, find, asked=True)
        case Form.MAGNITUDE_AND_DIRECTION:
            symbol = labels.elements[owner].symbol
            yield Target(of.magnitude, ResultKind.MAGNITUDE, find, owner, symbol, True)
            yield Target(of.direction, ResultKind.DIRECTION, find, owner, symbol, True)
            yield from _components(labels, find, asked=False)


def _quantity(labels: Labels, find: Find, id: str, asked: bool = True) -> Target:
    return Target(id, ResultKind.QUANTITY, find, id, labels.quantities[id].symbol, asked)


def _components(labels: Labels, find: Find, asked: bool) -> Iterator[Target]:
    for id in Quantity(find.quantity).components:
        yield _quantity(labels, find, id, asked)


def _result(digits: Digits, target: Target) -> Result:
    case = digits.case
    of = (target.id, target.kind, target.find, target.owner, target.symbol, target.asked)
    match target.kind:
        case ResultKind.QUANTITY:
            unit = digits.unit_of(target.id)
            name = "" if unit.name == "1" else unit.name
            return Result(*of, case.values[target.id] / unit.factor, name, digits.final(target.id))
        case ResultKind.MAGNITUDE:
            size = case.values[target.id]
            unit = digits.unit_of(Quantity(target.owner).x)
            return Result(*of, size / unit.factor, unit.name, digits.rounded(size, unit))
        case ResultKind.DIRECTION:
            way = direction_of(case.values[target.id], digits.convention)
            return Result(*of, way.angle, DEGREE.name, way, way.from_x)
        case ResultKind.LIMIT:
            place, limit = case.values[first_limit_id(target.find)], governing(case, target.find)
            return Result(*of, place, "", LimitNamed(limit.id))
        case ResultKind.VERDICT:
            limit = next(limit for limit in case.system.limits if limit.id == target.id)
            kept = 1.0 if holds(case, limit) else 0.0
            return Result(*of, kept, "", verdict_on(digits, limit))
