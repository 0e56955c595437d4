"""The whole working of a problem as a good teacher would hand it out: passage by passage."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.quantities.expression import ZERO, evaluate, names_in
from probgen.quantities.rounding import exact
from probgen.statics.balances import ALONG
from probgen.statics.derivation import Step
from probgen.statics.equation import X, Y
from probgen.statics.plan import Plan
from probgen.statics.system import Form, Limit, Variable
from probgen.wording.block import Display, Row
from probgen.wording.check import Unused, check_passage
from probgen.wording.equations import balance_row, rows_of, working
from probgen.wording.facts.balance import (
    AxesAndTurning,
    AxesHeading,
    AxesTaken,
    AxisTilted,
    ComponentHeading,
    ConditionsHold,
    CoupleNegative,
    ForceHeading,
    ForceNegative,
    NoneAlone,
    PutIntoTheRest,
    QuantityHeading,
    TakenOut,
    TogetherHeading,
    TorqueHeading,
    WithTheResult,
    WithUnrounded,
)
from probgen.wording.facts.ending import LimitSupposed, SupposedHeading
from probgen.wording.forces import forces_passage
from probgen.wording.limit import comparison_passage, holding_passage
from probgen.wording.passage import Part, Passage, Sentences, sentences
from probgen.wording.resultant import resultant_passages
from probgen.wording.torque import together, turning_passage
from probgen.working.criteria import bodies_used
from probgen.working.digits import Digits
from probgen.working.direction import way_of
from probgen.working.fact import Fact
from probgen.working.verdict import at_limit


def tell(digits: Digits, unused: Unused) -> tuple[Passage, ...]:
    """The worked steps: axes, forces, turning, balances, magnitude and direction, check.

    unused: what `unused_balances` gives for the plan.
    Raises ArithmeticError when some printed working would not give its printed result.
    """
    case = digits.case
    if case.plan.branches:
        return _told_to_limits(digits)
    bodies = bodies_used(case.plan)
    return (
        *((_axes(digits),) if bodies else ()),
        *(forces_passage(digits, body) for body in bodies),
        *_steps(digits),
        *_asked_definitions(digits),
        *resultant_passages(digits),
        *(holding_passage(digits, find) for find in case.system.finds if find.form is Form.HOLDS),
        *_checks(digits, unused),
    )


def _checks(digits: Digits, unused: Unused) -> Iterator[Passage]:
    """A look back at each body whose balances were used."""
    for body, balances in unused.items():
        passage = check_passage(digits, digits.case.system.body(body), balances)
        if passage is not None:
            yield passage


def _told_to_limits(digits: Digits) -> tuple[Passage, ...]:
    """The forces once, the working up to each limit, then the limits beside each other."""
    branches = digits.case.plan.branches
    owns = [at_limit(digits, branch) for branch in branches]
    turning = [own for own in owns if _takes_torques(own.case.plan)] or owns
    passages = [_axes(turning[0]), *_forces_of(owns)]
    for branch, own in zip(branches, owns, strict=True):
        passages.append(_supposing(branch.limit))
        passages += _steps(own)
    return (*passages, comparison_passage(digits, owns))


def _takes_torques(plan: Plan) -> bool:
    return any(step.equation.kind == "torque" for step in plan.steps)


def _forces_of(branches: list[Digits]) -> Iterator[Passage]:
    """The forces on each body that some branch uses, once."""
    told: set[str] = set()
    for own in branches:
        for body in bodies_used(own.case.plan):
            if body.id not in told:
                told.add(body.id)
                yield forces_passage(own, body)


def _supposing(limit: Limit) -> Passage:
    """The opening of a branch: its limit is just reached."""
    supposed = LimitSupposed(limit.id, limit.left, limit.right)
    return Passage(SupposedHeading(limit.id), (sentences(supposed),))


def _asked_definitions(digits: Digits) -> Iterator[Passage]:
    """Quantities asked that the data alone settle."""
    asked = [find.quantity for find in digits.case.system.finds]
    asked += [f"{quantity}.{axis}" for quantity in tuple(asked) for axis in "xy"]
    for definition in digits.case.plan.definitions:
        if definition.variable in asked:
            variable = digits.case.system.variables[definition.variable]
            rows = rows_of(digits, variable.as_name, definition.expression, definition.variable)
            yield Passage(_heading_of(variable), (Display(tuple(rows)),))


def _axes(digits: Digits) -> Passage:
    taken: Fact = AxesTaken()
    if _takes_torques(digits.case.plan):
        taken = AxesAndTurning(digits.convention.positive, digits.convention.turning)
    return Passage(AxesHeading(), (sentences(taken),))


def _steps(digits: Digits) -> Iterator[Passage]:
    """Torque balances with their reasons; force balances that follow one another together."""
    waiting: list[Step] = []
    steps = list(digits.case.plan.steps)
    while steps:
        step = steps.pop(0)
        if step.equation.kind == "force" and not step.partners:
            if waiting and waiting[-1].equation.bodies != step.equation.bodies:
                yield from _force_passage(digits, waiting)
                waiting = []
            waiting.append(step)
            continue
        yield from _force_passage(digits, waiting)
        waiting = []
        if step.partners:
            needed = [later for later in steps if later in step.partners]
            steps = [later for later in steps if later not in needed]
            yield _together_passage(digits, step, needed)
        else:
            yield from _single(digits, step)
    yield from _force_passage(digits, waiting)


def _single(digits: Digits, step: Step) -> Iterator[Passage]:
    if step.equation.kind == "torque":
        yield turning_passage(digits, step)
        yield _torque_passage(digits, step)
    else:
        yield _condition_passage(digits, step)


def _together_passage(digits: Digits, step: Step, needed: list[Step]) -> Passage:
    """Equations that hold the same unknowns: all of them, how they go together, the results.

    needed: the steps among the partners whose quantities are wanted.
    """
    group = (step, *step.partners)
    names = tuple(digits.case.system.variables[each.unknown].as_name for each in group)
    taken_out = [
        Row((name,), "=", (each.expression,)) for name, each in zip(names, group, strict=True)
    ][:0:-1]
    parts: list[Part] = [
        sentences(NoneAlone(len(group), names)),
        Display(tuple(balance_row(digits, equation) for equation in step.equations[::-1])),
        *_reasons(step),
        sentences(TakenOut(names[:0:-1])),
        Display(tuple(taken_out)),
        sentences(PutIntoTheRest(names[0])),
        *_reduced(step),
        *_worked(digits, step),
    ]
    if needed:
        parts.append(sentences(WithTheResult()))
    for each in needed:
        parts += _worked(digits, each)
    return Passage(TogetherHeading(len(group)), tuple(parts))


def _reasons(step: Step) -> Iterator[Part]:
    """Why the conditions among the equations hold."""
    stated = tuple(equation.about for equation in step.equations if equation.reason)
    if stated:
        yield sentences(ConditionsHold(stated))


def _reduced(step: Step) -> Iterator[Part]:
    """What is left of the last equation once the others are put in."""
    if step.reduced is not None:
        yield Display((Row((step.reduced,), "=", (ZERO,)),))


def _worked(digits: Digits, step: Step) -> Iterator[Part]:
    """The value of a step without its equation."""
    name = digits.case.system.variables[step.unknown].as_name
    yield Display(tuple(rows_of(digits, name, step.expression, step.unknown)))
    yield from _sign(digits, step)


def _torque_passage(digits: Digits, step: Step) -> Passage:
    heading = TorqueHeading(digits.convention.turning)
    return Passage(heading, (working(digits, step), *_sign(digits, step)))


def _force_passage(digits: Digits, steps: list[Step]) -> Iterator[Passage]:
    if not steps:
        return
    parts: list[Part] = []
    equation = steps[0].equation
    group = tuple(together(digits.case.system, equation))
    if group:
        parts.append(Sentences(group))
    carrying = [step for step in steps if _carries(digits, step)][:1]
    for step in steps:
        if step in carrying:
            parts.append(sentences(WithUnrounded()))
        parts += [*_axis(digits, step), working(digits, step), *_sign(digits, step)]
    alone = len(digits.case.system.bodies) == 1
    yield Passage(ForceHeading(() if alone else equation.bodies), tuple(parts))


def _axis(digits: Digits, step: Step) -> Iterator[Part]:
    """Which way a tilted axis runs."""
    axis = step.equation.axis
    if axis is None or axis in (X, Y):
        return
    way = way_of(float(evaluate(axis.direction, digits.case.values)))
    yield sentences(AxisTilted(axis.label, axis.label.startswith(ALONG), way))


def _carries(digits: Digits, step: Step) -> bool:
    """Whether the step uses a value found before that its printed result rounds."""
    held = names_in(step.expression)
    return any(
        float(evaluate(digits.final(earlier.unknown), {}))
        != float(exact(digits.case.values[earlier.unknown]))
        for earlier in digits.case.plan.steps
        if earlier.unknown in held
    )


def _condition_passage(digits: Digits, step: Step) -> Passage:
    heading = _heading_of(digits.case.system.variables[step.unknown])
    return Passage(heading, (*_reasons(step), working(digits, step), *_sign(digits, step)))


def _heading_of(variable: Variable) -> Fact:
    """What a passage that works out one quantity is headed."""
    if variable.id.endswith((".x", ".y")):
        return ComponentHeading(variable.as_name)
    return QuantityHeading(variable.id)


def _sign(digits: Digits, step: Step) -> Iterator[Part]:
    """What a negative result means: the force acts the other way."""
    system, value = digits.case.system, digits.case.values[step.unknown]
    if value >= 0.0:
        return
    if any(couple.id == step.unknown for couple in system.couples):
        yield sentences(CoupleNegative(system.variables[step.unknown].as_name))
    for force in [force for force in system.forces if force.id == step.unknown][:1]:
        way = way_of(float(evaluate(force.direction, digits.case.values)) + 180.0)
        yield sentences(ForceNegative(force.magnitude, force.part in ("x", "y"), way))
