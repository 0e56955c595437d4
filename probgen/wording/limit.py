"""Limits told: how far each lets something go, which comes first, and whether all hold."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence, Set
from dataclasses import replace
from typing import Final

from probgen.quantities.expression import Expression, Name, Number, Sum, evaluate, names_in, total
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.rounding import exact, in_full, round_figures
from probgen.statics.plan import Branch, limits_asked
from probgen.statics.step import Step
from probgen.statics.system import Find, Force, ForcePart, Form, Kind, Limit, System
from probgen.wording.block import Display, Row
from probgen.wording.equations import lone_number, rounded_off
from probgen.wording.facts.ending import (
    CheckHeading,
    FarthestHeading,
    FirstHeading,
    HoldsHeading,
    LimitDecides,
    LimitElsewhere,
    LimitJudged,
    LimitReached,
    LimitSupposed,
    OtherLimitKept,
    RestAtLimit,
    RoundedWithin,
    SupposedHeading,
)
from probgen.wording.facts.torque import TurnsNothing
from probgen.wording.negative import negative_part
from probgen.wording.passage import Items, Part, Passage, Sentences, sentences
from probgen.working.digits import Digits
from probgen.working.fact import Fact
from probgen.working.line import Line, line_of
from probgen.working.multiple import same_amount
from probgen.working.verdict import margin, reached_first, side_dimension, verdict_on

_MOST_GUARD: Final = 7


def is_met_by(limit: Limit, step: Step) -> bool:
    """Whether a step is nothing but that the limit is reached, solved for its left side."""
    left = limit.left
    return isinstance(left, Name) and left.id == step.unknown and step.equation.about == limit.id


def supposing_passage(system: System, limit: Limit, met: Sequence[Part], *, first: bool) -> Passage:
    """The opening of the way to a limit: it is just reached; first: before any other.

    met: the lines of the step that is nothing but this; none where that comes later.
    """
    push, place, at = _edge_reached(system, limit)
    supposed = LimitSupposed(limit.id, limit.left, limit.right, first, push, place, at, bool(met))
    return Passage(SupposedHeading(limit.id), (sentences(supposed), *met))


def with_known(passages: Iterable[Passage], known: Set[str]) -> Iterator[Passage]:
    """The passages on the way to a limit, in which what another way found is no unknown.

    known: ids of what is so whichever limit is reached.
    """
    for passage in passages:
        parts = tuple(
            replace(part, facts=tuple(_with_known(fact, known) for fact in part.facts))
            if isinstance(part, Sentences)
            else part
            for part in passage.parts
        )
        yield replace(passage, parts=parts)


def _with_known(fact: Fact, known: Set[str]) -> Fact:
    if not isinstance(fact, TurnsNothing):
        return fact
    return replace(fact, unknowns=tuple(x for x in fact.unknowns if not names_in(x) <= known))


def _edge_reached(system: System, limit: Limit) -> tuple[Expression | None, str, str]:
    """The normal force that a limit lets act at a point at the utmost, where it acts, that point.

    None and "" where the limit is of something else, or another contact still holds the body.
    """
    for force in system.forces:
        contact = force.kind in (Kind.ROUGH, Kind.CONTACT) and force.part is not ForcePart.FRICTION
        if not contact or not _held_by(system, force):
            continue
        links = system.points[force.point].links
        if not any(link.length == limit.left for link in links):
            continue
        moved = tuple(
            replace(link, length=limit.right) if link.length == limit.left else link
            for link in links
        )
        for point in system.points.values():
            if point.links == moved:
                return force.magnitude, force.point, point.id
    return None, "", ""


def _held_by(system: System, force: Force) -> bool:
    """Whether nothing else holds the body that a contact pushes."""
    holding = (Kind.WEIGHT, Kind.FORCE, Kind.DISTRIBUTED)
    others = (each for each in system.forces if each.body == force.body)
    return all(each.kind in holding or each.element == force.element for each in others)


def comparison_passage(digits: Digits, find: Find, reached: Sequence[Digits]) -> Passage:
    """The values at every limit of a find beside each other, and the one that decides.

    reached: the digits at each limit, in the order of the plan's branches to it.
    """
    case = digits.case
    letter = case.system.variables[find.quantity].as_name
    final, largest = digits.final(find.quantity), find.form is Form.LARGEST
    ways = list(zip(case.plan.branches_to(find), reached, strict=True))
    met = [(branch.limit.id, own) for branch, own in ways if _bounds(branch, own)]
    only = len(met) == 1
    values = [final] if only else _alike([own for _, own in met], find.quantity)
    facts = tuple(
        LimitReached(limit, (letter, Relation("="), value), only)
        for (limit, _), value in zip(met, values, strict=True)
    )
    others = [(branch.limit.id, own) for branch, own in ways if not _bounds(branch, own)]
    elsewhere = tuple(
        LimitElsewhere(limit, letter, (letter, Relation("="), own.shown(find.quantity)), largest)
        for limit, own in others
    )
    rounded = rounded_within(digits, find.quantity)
    if only:
        return Passage(
            FarthestHeading(find.quantity, largest), (sentences(*elsewhere, *facts, *rounded),)
        )
    first = reached_first(case, find)
    decides = LimitDecides(first.limit.id, (letter, Relation("="), final), largest)
    rest = (RestAtLimit(first.limit.id),) if first.afterwards else ()
    return Passage(FirstHeading(), (Items(facts), sentences(*elsewhere, decides, *rounded, *rest)))


def _alike(reached: Sequence[Digits], id: str) -> list[Number]:
    """The values of a quantity at several limits as they are carried, all to as many figures."""
    shown = [own.shown(id) for own in reached]
    full = [
        exact(own.case.values[id] / (number.unit.factor if number.unit else 1.0))
        for own, number in zip(reached, shown, strict=True)
    ]
    pairs = list(zip(shown, full, strict=True))
    cut = [number for number, value in pairs if number.value != value]
    figures = max(map(_figures, cut or shown))
    return [
        replace(number, value=round_figures(value, figures))
        if _figures(number) < figures
        else number
        for number, value in pairs
    ]


def _figures(number: Number) -> int:
    return len(number.value.as_tuple().digits)


def rounded_within(digits: Digits, id: str) -> tuple[Fact, ...]:
    """That the utmost value of a quantity is rounded to one side, where it usually would not be."""
    find = digits.asked_utmost(id)
    if find is None:
        return ()
    usual, final = digits.rounded(digits.case.values[id], digits.unit_of(id)), digits.final(id)
    if same_amount(usual, final):
        return ()
    limits = digits.case.labels.limits
    met = [each.id for each in digits.case.plan.system.conditions if each.id in limits]
    limit = met[-1] if met else reached_first(digits.case, find).limit.id
    return (RoundedWithin(find.form is Form.LARGEST, usual, limit),)


def said_of_result(digits: Digits, step: Step) -> Iterator[Part]:
    """What is said of a result: that it is negative, or rounded to the side where a limit holds."""
    yield from negative_part(digits, step)
    rounded = rounded_within(digits, step.unknown)
    if rounded and digits.ends_rounded(step.unknown):
        yield sentences(*rounded, bound=True)


def others_kept(digits: Digits, reached: Branch, others: Sequence[Branch]) -> tuple[Passage, ...]:
    """A look at the limits that are not reached yet where one is, if both sides of each are known.

    digits: of all that is found there.
    """
    case = digits.case
    limits = [each.limit for each in others if each is not reached]
    sides = {name for limit in limits for side in _sides(limit) for name in names_in(side)}
    if not limits or not sides <= case.values.keys():
        return ()
    told = []
    for limit in limits:
        (left, needed), (right, allowed) = ((s, _rounded(digits, s)) for s in _sides(limit))
        told.append(OtherLimitKept(left, needed, right, allowed, limit.relation == "<="))
    return (Passage(CheckHeading(), (sentences(*told),)),)


def _sides(limit: Limit) -> tuple[Expression, Expression]:
    return limit.left, limit.right


def _rounded(digits: Digits, side: Expression) -> Number:
    dimension = side_dimension(digits.case, side)
    unit = digits.units.unit_of(dimension)
    return digits.rounded(float(evaluate(side, digits.case.values)), unit)


def _bounds(branch: Branch, own: Digits) -> bool:
    """Whether a limit that is reached is passed on going on."""
    data = {name: own.case.values[name] for name in own.case.numbers}
    return bool(branch.is_passed(own.case.values[branch.utmost.quantity], data))


def holding_passage(digits: Digits, find: Find) -> Passage:
    """Each limit compared with what it allows."""
    parts: list[Part] = []
    for limit in limits_asked(digits.case.system, find):
        lines = [_side_line(digits, side) for side in (limit.left, limit.right)]
        rows = (*map(_row, lines), _margin_row(digits, limit))
        needed, allowed = (line.result for _, line in lines)
        verdict = verdict_on(digits, limit)
        judged = LimitJudged(limit.id, limit.left, needed, limit.right, allowed, verdict)
        parts += [Display(rows), sentences(judged, bound=True)]
    return Passage(HoldsHeading(), tuple(parts))


def _side_line(digits: Digits, side: Expression) -> tuple[Expression, Line]:
    value = float(evaluate(side, digits.case.values))
    return side, line_of(digits, side, value, side_dimension(digits.case, side))


def _row(told: tuple[Expression, Line]) -> Row:
    side, line = told
    shown = () if lone_number(line.printed) else (line.printed, Relation("="))
    right: Formula = (*shown, line.result)
    return Row((side,), "=", right)


def _margin_row(digits: Digits, limit: Limit) -> Row:
    """The smaller side taken off the larger: in symbols, in the numbers above, and the margin.

    It has as few digits as give the margin, all that the difference has: `Digits.line`, which looks
    at a carried result, would print more on the left and cut it off on the right.
    Raises ArithmeticError when no number of digits gives it.
    """
    dimension = side_dimension(digits.case, limit.left)
    unit = digits.units.unit_of(dimension)
    sized = [(float(evaluate(s, digits.case.values)), s) for s in (limit.left, limit.right)]
    (more, larger), (less, smaller) = sorted(sized, key=lambda each: -each[0])
    final = margin(digits, limit)
    for guard in range(1, _MOST_GUARD):
        digits.guards.begin_line()
        numbers = [digits.carried(value, dimension, guard) for value in (more, less)]
        left = replace(numbers[0], value=in_full(numbers[0].value - numbers[1].value))
        if same_amount(digits.rounded(float(evaluate(left, {})), unit), final):
            digits.guards.end_line()
            break
    else:
        digits.guards.leave_line()
        if not digits.guards.write_none():
            raise ArithmeticError(f"no digits of the sides of {limit.id} give its margin")
    put_in = Sum(((1, numbers[0]), (-1, numbers[1])))
    right: Formula = (put_in, Relation("="), *rounded_off(left, final))
    return Row((total((1, larger), (-1, smaller)),), "=", right)
