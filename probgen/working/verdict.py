"""Limits judged: which is reached first, and whether each is kept."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.dimension import dimension_of
from probgen.quantities.expression import Expression, Number, evaluate
from probgen.quantities.unit import PLAIN, Dimension
from probgen.statics.plan import Branch
from probgen.statics.rerun import first_limit_id
from probgen.statics.solution import solve
from probgen.statics.system import Find, Limit
from probgen.working.case import Case, case_of
from probgen.working.digits import Digits
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class Verdict(Fact):
    """Whether a limit is kept.

    margin: how far its sides are apart, never negative; most: whether its left side must stay
    below its right one, and not above.
    """

    kept: bool
    margin: Number
    most: bool


def at_limit(digits: Digits, branch: Branch) -> Digits:
    """The same data with the limit of a branch reached."""
    case = digits.case
    data = {name: case.values[name] for name in case.numbers}
    solved = {name: float(value) for name, value in solve(branch.plan, data).items()}
    reached = case_of(branch.plan, case.labels, case.numbers, solved)
    shared = digits.utmost, digits.guards, digits.multiples
    compared = len(case.plan.branches_to(branch.utmost)) > 1
    return Digits(reached, digits.convention, *shared, compared=compared)


def governing(case: Case, utmost: Find) -> Limit:
    """The limit that is reached first, of those of a find."""
    return reached_first(case, utmost).limit


def reached_first(case: Case, utmost: Find) -> Branch:
    """The way to the limit that is reached first, of those of a find."""
    return case.plan.branches_to(utmost)[int(case.values[first_limit_id(utmost)])]


def verdict_on(digits: Digits, limit: Limit) -> Verdict:
    """Whether a limit is kept, and by what margin."""
    return Verdict(holds(digits.case, limit), margin(digits, limit), limit.relation == "<=")


def holds(case: Case, limit: Limit) -> bool:
    """Whether the left side is on its side of the right."""
    left, right = (float(evaluate(side, case.values)) for side in (limit.left, limit.right))
    return left <= right if limit.relation == "<=" else left >= right


def margin(digits: Digits, limit: Limit) -> Number:
    """How far the left side is from the right, never negative."""
    case = digits.case
    left, right = (float(evaluate(side, case.values)) for side in (limit.left, limit.right))
    dimension = side_dimension(case, limit.left)
    unit = digits.units.unit_of(dimension)
    size = digits.rounded(abs(left - right), unit)
    return Number(size.value, None if dimension == PLAIN else size.unit)


def side_dimension(case: Case, side: Expression) -> Dimension:
    """The dimension of a side of a limit."""
    dimensions = {v.id: v.dimension for v in case.system.variables.values()}
    return dimension_of(side, dimensions)
