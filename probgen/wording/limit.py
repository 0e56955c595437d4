"""Limits told: how far each lets something go, which comes first, and whether all hold."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.quantities.dimension import dimension_of
from probgen.quantities.expression import Expression, Number, evaluate
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.printing import plain
from probgen.quantities.rounding import round_figures
from probgen.quantities.unit import PLAIN, Dimension
from probgen.statics.plan import Branch, extreme_find, limits_asked
from probgen.statics.solution import GOVERNING, solve
from probgen.statics.system import Find, Form, Limit
from probgen.wording.block import Block, Display, Row, Section, Text
from probgen.wording.equations import lone_number
from probgen.wording.sentence import Inlines, capitalized, itemized, paragraph, say
from probgen.working.case import Case, case_of
from probgen.working.digits import Digits


def branch_case(case: Case, branch: Branch) -> Case:
    """The same data with the limit of the branch reached."""
    data = {name: case.values[name] for name in case.numbers}
    solved = {name: float(value) for name, value in solve(branch.plan, data).items()}
    return case_of(branch.plan, case.numbers, solved)


def governing(case: Case) -> Limit:
    """The limit that is reached first."""
    return case.plan.branches[int(case.values[GOVERNING])].limit


def comparison_section(digits: Digits) -> Section:
    """The values at every limit beside each other, and the one that decides."""
    case = digits.case
    find = extreme_find(case.system)
    assert find is not None
    letter = case.system.variables[find.quantity].as_name
    items = []
    for branch in case.plan.branches:
        own = Digits(branch_case(case, branch), digits.convention)
        reached = (letter, Relation("="), own.final(find.quantity))
        items.append(say("{limit} at {value}", limit=branch.limit.name, value=reached))
    if len(case.plan.branches) == 1:
        return Section("How far it may go", (paragraph(capitalized((*items[0], Text(".")))),))
    smaller = "smaller" if find.form is Form.LARGEST else "larger"
    verdict = say(
        "The {smaller} value decides: {limit} first, so the {form} value is {value}.",
        smaller=smaller,
        limit=governing(case).name,
        form=find.form,
        value=(letter, Relation("="), digits.final(find.quantity)),
    )
    return Section("Which comes first?", (itemized(items), paragraph(verdict)))


def holding_section(digits: Digits, find: Find) -> Section:
    """Each limit compared with what it allows."""
    blocks: list[Block] = []
    for limit in limits_asked(digits.case.system, find):
        blocks.append(Display(tuple(_rows(digits, limit))))
        blocks.append(paragraph(verdict(digits, limit)))
    return Section("Does it hold?", tuple(blocks))


def _rows(digits: Digits, limit: Limit) -> Iterator[Row]:
    for side in (limit.left, limit.right):
        value = float(evaluate(side, digits.case.values))
        dimension = _dimension(digits, side)
        line = digits.line(side, value, dimension)
        shown = () if lone_number(line.printed) else (line.printed, Relation("="))
        right: Formula = (*shown, line.result)
        yield Row((side,), "=", right)


def _dimension(digits: Digits, side: Expression) -> Dimension:
    dimensions = {v.id: v.dimension for v in digits.case.system.variables.values()}
    return dimension_of(side, dimensions)


def holds(case: Case, limit: Limit) -> bool:
    """Whether the left side is on its side of the right."""
    left, right = (float(evaluate(side, case.values)) for side in (limit.left, limit.right))
    return left <= right if limit.relation == "<=" else left >= right


def margin(digits: Digits, limit: Limit) -> Number:
    """How far the left side is from the right, never negative."""
    case = digits.case
    left, right = (float(evaluate(side, case.values)) for side in (limit.left, limit.right))
    dimension = _dimension(digits, limit.left)
    unit = digits.convention.units.unit_of(dimension)
    size = round_figures(
        abs(left - right) / unit.factor, digits.convention.figures, digits.convention.rounding
    )
    return Number(size, None if dimension == PLAIN else unit)


def verdict(digits: Digits, limit: Limit) -> Inlines:
    """The limit is kept, or not, and by how much."""
    kept = holds(digits.case, limit)
    wanted = "≤" if limit.relation == "<=" else "≥"
    broken = ">" if limit.relation == "<=" else "<"
    return say(
        "{comparison}: {words}.",
        comparison=(limit.left, Relation(wanted if kept else broken), limit.right),
        words=verdict_words(digits, limit),
    )


def verdict_words(digits: Digits, limit: Limit) -> str:
    """The verdict as an answer: "yes, with 32.0 N to spare"."""
    size = plain(margin(digits, limit))
    if holds(digits.case, limit):
        return f"yes, with {size} to spare"
    return f"no, {size} too much" if limit.relation == "<=" else f"no, {size} too little"
