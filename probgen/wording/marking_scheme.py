"""The marking scheme of a problem, and the intervals that earn full marks.

Weights follow common practice, no source: setting a balance up is worth more than putting numbers
into it.  They depend on the template alone, so every student of a template is marked alike.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from typing import Final

from probgen.quantities.expression import Number
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.rounding import exact, last_place
from probgen.quantities.unit import ANGLE, DEGREE, FORCE, TORQUE
from probgen.statics.derivation import Step
from probgen.statics.plan import Plan
from probgen.statics.system import Body, Form, System, Variable
from probgen.wording.answer import Answer, answers
from probgen.wording.block import Inline, Paragraph, Section, Text
from probgen.wording.direction import worded
from probgen.wording.recent import kept_by_plan
from probgen.wording.sentence import (
    Inlines,
    Part,
    capitalized,
    counted,
    itemized,
    letter,
    listed,
    paragraph,
    say,
)
from probgen.working.case import Case
from probgen.working.convention import Convention
from probgen.working.digits import Digits

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

ANGLE_FLOOR: Final = 1.0
"""Degrees either way that always earn full marks for an angle: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Mark:
    """What some of a problem's points are given for.

    kinds: of the steps, as in `WEIGHTS`; one, or several where there are fewer points than steps.
    quantities: the ids of the results it is given for, none for a diagram or an equation.
    """

    kinds: tuple[str, ...]
    points: int
    words: Inlines
    quantities: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Interval:
    """The values of one answer that earn full marks, both ends included.

    low, high: as printed, rounded outward in the unit of the answer; of a direction, degrees
    counter-clockwise from +x (low may be negative, high above 360).
    """

    answer: str
    symbol: str
    low: Number
    high: Number
    words: Inlines


# The scheme.


@dataclass(frozen=True, slots=True)
class _Part:
    kind: str
    words: Inlines
    quantity: str = ""


def scheme(case: Case, convention: Convention, points: int) -> tuple[Mark, ...]:
    """Whole points for every step, adding up to `points`.

    With fewer points than steps, neighbouring steps are marked as one.  Raises ValueError when
    there is no point to give.
    """
    if points < 1:
        raise ValueError(f"{points} points: expected 1 or more")
    return _scheme(case.plan, convention.turning, points)


@kept_by_plan
def _scheme(plan: Plan, turning: str, points: int) -> tuple[Mark, ...]:
    groups: list[tuple[_Part, ...]] = [(part,) for part in _parts(plan, turning)]
    while True:
        shares = shared(points, [_weight(group) for group in groups])
        if all(shares):
            return tuple(_mark(group, share) for group, share in zip(groups, shares, strict=True))
        groups = _merged(groups)


def shared(points: int, weights: Sequence[int]) -> list[int]:
    """Whole points in proportion to the weights, by largest remainders; ties go to the first."""
    whole = sum(weights)
    shares = [points * weight // whole for weight in weights]
    rest = sorted(range(len(weights)), key=lambda i: -(points * weights[i] % whole))
    for place in rest[: points - sum(shares)]:
        shares[place] += 1
    return shares


def _weight(group: tuple[_Part, ...]) -> int:
    return sum(WEIGHTS[part.kind] for part in group)


def _merged(groups: list[tuple[_Part, ...]]) -> list[tuple[_Part, ...]]:
    """The two neighbours of least weight made one."""
    pairs = range(len(groups) - 1)
    at = min(pairs, key=lambda i: _weight(groups[i]) + _weight(groups[i + 1]))
    return [*groups[:at], groups[at] + groups[at + 1], *groups[at + 2 :]]


def _mark(group: tuple[_Part, ...], points: int) -> Mark:
    return Mark(
        tuple(part.kind for part in group),
        points,
        listed([part.words for part in group]),
        tuple(part.quantity for part in group if part.quantity),
    )


def _parts(plan: Plan, turning: str) -> Iterator[_Part]:
    for body in _bodies(plan):
        whose = "" if len(plan.system.bodies) == 1 else f" of the {body.name}"
        count = counted(_forces_on(plan.system, body.id), "force")
        yield _Part("diagram", say(f"free-body diagram{whose} with {count}"))
    for step in _steps(plan):
        yield from _of_step(plan, step, turning)
    for variable in _from_data(plan):
        yield from _of_data(variable)
    if len(plan.branches) > 1:
        yield _Part("limit", say("which limit is reached first"))
    for find in plan.system.finds:
        if find.form is Form.HOLDS:
            yield _Part("limit", say("what is asked for compared with what is possible"))
        if find.form is Form.MAGNITUDE_AND_DIRECTION:
            force = letter(plan.system.element(find.quantity).symbol)
            for kind, pattern in _OF_FORCE.items():
                yield _Part(kind, say(pattern, R=force), f"{find.quantity}.{kind}")


def _bodies(plan: Plan) -> list[Body]:
    """The bodies whose forces the working needs: of its balances, and of resultants asked."""
    used = {body for step in _steps(plan) for each in step.equations for body in each.bodies}
    used |= {
        plan.system.element(find.quantity).body
        for find in plan.system.finds
        if find.form is Form.MAGNITUDE_AND_DIRECTION
    }
    return [body for body in plan.system.bodies if body.id in used]


def _from_data(plan: Plan) -> list[Variable]:
    """The quantities asked that follow from the data with no balance, such as a centre of mass."""
    asked: set[str] = set()
    for find in plan.system.finds:
        asked |= {find.quantity, f"{find.quantity}.x", f"{find.quantity}.y"}
    settled = [d.variable for d in plan.definitions if d.variable in asked]
    return [plan.system.variables[id] for id in settled]


def _steps(plan: Plan) -> list[Step]:
    """The steps to every limit, each once, where the plan is to find which is reached first."""
    steps = list(plan.steps)
    for branch in plan.branches:
        steps += [step for step in branch.plan.steps if step not in steps]
    return steps


_OF_FORCE: Final = {
    "magnitude": "magnitude of {R} (unit)",
    "direction": "direction of {R} in words",
}


def _forces_on(system: System, body: str) -> int:
    """How many forces the diagram shows: one for a hinge, whose components are two."""
    return sum(1 for force in system.forces if force.body == body and force.part != "y")


def _of_step(plan: Plan, step: Step, turning: str) -> Iterator[_Part]:
    variable = plan.system.variables[step.unknown]
    name, equation, ending = variable.as_name, step.equation, _ending(variable)
    if equation.kind == "torque":
        pattern = f"{turning} equation about {{P}} with signs and lever arms"
        yield _Part("torque", say(pattern, P=letter(equation.about)))
        yield _Part("substitution", say("numbers put in for {q}", q=name))
        yield _Part("result", say(f"{{q}} found{ending}", q=name), step.unknown)
        return
    source = "{q} from the balance along {a}" if equation.kind == "force" else "{q} from {c}"
    words = say(source + ending, q=name, a=_axis(equation.about), c=_condition(step))
    yield _Part(equation.kind, words, step.unknown)


def _of_data(variable: Variable) -> Iterator[_Part]:
    name = variable.as_name
    yield _Part("formula", say("{q} written out in symbols", q=name))
    yield _Part("substitution", say("numbers put in for {q}", q=name))
    yield _Part("result", say("{q} found" + _ending(variable), q=name), variable.id)


def _ending(variable: Variable) -> str:
    """What beside its size makes a result right."""
    signed = variable.dimension in (FORCE, TORQUE) and not variable.nonnegative
    return " (sign and unit)" if signed else " (unit)" if variable.unit.plain else ""


def _axis(label: str) -> Part:
    """An axis as it is printed: x, y, or the sign of a tilted one."""
    return letter(label)


def _condition(step: Step) -> Formula:
    if step.equation.kind != "condition":
        return ()
    left, right = (term.magnitude for term in step.equation.terms)
    return (left, Relation("="), right)


# The intervals.


def half_width(case: Case, convention: Convention, id: str) -> float:
    """How far (coherent units) an answer may be off and still earn full marks.

    The course's tolerance, relative to the answer.  For angles at least `ANGLE_FLOOR`, and that
    alone for directions; for forces at least half a unit of the last figure of the largest force
    found, because a small difference of large forces cannot be known better than they are.
    """
    if id.endswith(".direction"):
        return ANGLE_FLOOR
    relative = convention.tolerance * abs(case.values[id])
    owner = id.removesuffix(".magnitude")
    dimension = FORCE if owner != id else case.system.variables[id].dimension
    if dimension == ANGLE:
        return max(relative, ANGLE_FLOOR)
    return max(relative, _force_floor(case, convention)) if dimension == FORCE else relative


def _force_floor(case: Case, convention: Convention) -> float:
    digits = Digits(case, convention)
    found = [id for id in case.system.unknowns if id in case.values]
    forces = [id for id in found if case.system.variables[id].dimension == FORCE]
    if not forces:
        return 0.0
    largest = digits.final(max(forces, key=lambda id: abs(case.values[id])))
    factor = largest.unit.factor if largest.unit else 1.0
    return float(last_place(largest.value)) / 2 * factor if largest.value else 0.0


def intervals(case: Case, convention: Convention) -> tuple[Interval, ...]:
    """For each asked answer that is a number the interval that earns full marks, as asked."""
    return tuple(
        _direction_interval(case, convention, answer)
        if answer.angle_from_x is not None
        else _interval(case, convention, answer)
        for answer in answers(case, convention)
        if answer.asked and _is_number(case.system, answer)
    )


def _is_number(system: System, answer: Answer) -> bool:
    """Whether an answer is a number, and not a limit's name or a yes or no."""
    owner = answer.id.replace(".magnitude", ".x").replace(".direction", ".x")
    return owner in system.variables


def _interval(case: Case, convention: Convention, answer: Answer) -> Interval:
    digits = Digits(case, convention)
    owner = answer.id.replace(".magnitude", ".x")
    unit = digits.unit_of(owner)
    half = half_width(case, convention, answer.id) / unit.factor
    place = last_place(digits.rounded(answer.value * unit.factor, unit).value)
    low, high = _outward(answer.value, half, place)
    ends = Number(low, unit), Number(high, unit)
    words = say("{q} {low} to {high}", q=letter(answer.symbol), low=ends[0], high=ends[1])
    return Interval(answer.id, answer.symbol, *ends, words)


def _outward(value: float, half: float, place: Decimal) -> tuple[Decimal, Decimal]:
    """Both ends to the place of the printed answer, away from it."""
    low = exact(value - half).quantize(place, rounding=ROUND_FLOOR)
    high = exact(value + half).quantize(place, rounding=ROUND_CEILING)
    return low, high


def _direction_interval(case: Case, convention: Convention, answer: Answer) -> Interval:
    assert answer.angle_from_x is not None
    half = half_width(case, convention, answer.id)
    place = last_place(Digits(case, convention).rounded(answer.value, DEGREE).value)
    start, end = _outward(answer.angle_from_x, half, place)
    ways = [worded(answer.angle_from_x + turn, convention).words for turn in (-half, half)]
    sides = {way.partition(" ")[2] for way in ways if way[0].isdigit()}
    owner = letter(case.system.element(answer.id.removesuffix(".direction")).symbol)
    # ends on different sides of an axis, or on one, have no words in common
    if len(sides) == 1 and answer.printed.partition(" ")[2] in sides:
        low, high = _outward(answer.value, half, place)
        words = say(
            "{R} at {low} to {high} {side}",
            R=owner,
            low=Number(low, DEGREE),
            high=Number(high, DEGREE),
            side=sides.pop(),
        )
    else:
        close = Number(exact(half), DEGREE)
        words = say("{R} {way}, within {close}", R=owner, way=answer.printed, close=close)
    return Interval(answer.id, answer.symbol, Number(start, DEGREE), Number(end, DEGREE), words)


# As blocks of the key.


def scheme_section(marks: Sequence[Mark], told: Sequence[Interval]) -> Section:
    """The marks one by one, and the intervals."""
    items = [say("{what}: {n}", what=capitalized(m.words), n=str(m.points)) for m in marks]
    points = sum(mark.points for mark in marks)
    return Section(f"Marks ({points})", (itemized(items), intervals_paragraph(told)))


def intervals_paragraph(told: Sequence[Interval]) -> Paragraph:
    """ "Full marks for T 187 N to 194 N; R 143 N to 149 N." """
    parts: list[Inline] = []
    for interval in told:
        parts += [Text("; "), *interval.words] if parts else interval.words
    return paragraph(say("Full marks for {each}.", each=tuple(parts)))
