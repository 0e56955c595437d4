"""The whole working of a problem as a good teacher would hand it out: section by section."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.quantities.expression import ZERO, evaluate, names_in
from probgen.quantities.printing import symbol_plain
from probgen.quantities.rounding import exact
from probgen.statics.balances import ALONG
from probgen.statics.derivation import Step
from probgen.statics.equation import X, Y
from probgen.statics.plan import Plan
from probgen.statics.system import Body, Form, Limit, Variable
from probgen.wording.block import Block, Display, Row, Section
from probgen.wording.check import check_section
from probgen.wording.direction import toward
from probgen.wording.equations import balance_row, rows_of, working
from probgen.wording.forces import forces_section
from probgen.wording.limit import branch_case, comparison_section, holding_section
from probgen.wording.recent import kept_by_plan
from probgen.wording.resultant import resultant_sections
from probgen.wording.sentence import letter, listed, paragraph, say
from probgen.wording.torque import equation_noun, together, turning_section
from probgen.working.case import Case
from probgen.working.convention import Convention
from probgen.working.digits import Digits


def tell(case: Case, convention: Convention) -> tuple[Section, ...]:
    """The worked steps: axes, forces, turning, balances, magnitude and direction, check.

    Raises ArithmeticError when some printed working would not give its printed result.
    """
    digits = Digits(case, convention)
    if case.plan.branches:
        return _told_to_limits(digits)
    bodies = _bodies_told(case)
    return (
        *((_axes_of(digits),) if bodies else ()),
        *(forces_section(digits, body) for body in bodies),
        *_steps(digits),
        *_asked_definitions(digits),
        *resultant_sections(digits),
        *(holding_section(digits, find) for find in case.system.finds if find.form is Form.HOLDS),
        *_checks(digits, bodies),
    )


def _checks(digits: Digits, bodies: tuple[Body, ...]) -> Iterator[Section]:
    """A look back at each body whose balances were used."""
    for body in bodies if digits.case.plan.steps else ():
        section = check_section(digits, body)
        if section is not None:
            yield section


def _told_to_limits(digits: Digits) -> tuple[Section, ...]:
    """The forces once, the working up to each limit, then the limits beside each other."""
    owns = [
        Digits(branch_case(digits.case, branch), digits.convention)
        for branch in digits.case.plan.branches
    ]
    turning = [own for own in owns if _takes_torques(own)] or owns
    sections = [_axes_of(turning[0]), *_forces_of(owns)]
    for branch, own in zip(digits.case.plan.branches, owns, strict=True):
        sections.append(_supposing(branch.limit))
        sections += _steps(own)
    return (*sections, comparison_section(digits))


def _takes_torques(digits: Digits) -> bool:
    return any(step.equation.kind == "torque" for step in digits.case.plan.steps)


def _forces_of(branches: list[Digits]) -> Iterator[Section]:
    """The forces on each body that some branch uses, once."""
    told: set[str] = set()
    for own in branches:
        for body in _bodies_told(own.case):
            if body.id not in told:
                told.add(body.id)
                yield forces_section(own, body)


def _supposing(limit: Limit) -> Section:
    """The opening of a branch: its limit is just reached."""
    said = say(
        "Suppose that {limit}: then {left} has just reached {right}.",
        limit=limit.name,
        left=limit.left,
        right=limit.right,
    )
    return Section(_heading(limit.name), (paragraph(said),))


def _bodies_told(case: Case) -> tuple[Body, ...]:
    """The bodies whose forces the working uses, in the template's order."""
    used = {id for step in case.plan.steps for equation in step.equations for id in equation.bodies}
    if any(find.form is Form.MAGNITUDE_AND_DIRECTION for find in case.system.finds):
        used |= _bodies_of_resultants(case)
    return tuple(body for body in case.system.bodies if body.id in used)


def _bodies_of_resultants(case: Case) -> set[str]:
    """Bodies on which a resultant of known forces is asked, with no balance at all."""
    return {
        case.system.element(find.quantity).body
        for find in case.system.finds
        if find.form is Form.MAGNITUDE_AND_DIRECTION
        and any(d.variable == f"{find.quantity}.x" for d in case.plan.definitions)
    }


def _asked_definitions(digits: Digits) -> Iterator[Section]:
    """Quantities asked that the data alone settle."""
    asked = [find.quantity for find in digits.case.system.finds]
    asked += [f"{quantity}.{axis}" for quantity in tuple(asked) for axis in "xy"]
    for definition in digits.case.plan.definitions:
        if definition.variable in asked:
            variable = digits.case.system.variables[definition.variable]
            rows = rows_of(digits, variable.as_name, definition.expression, definition.variable)
            yield Section(_title_of(variable), (Display(tuple(rows)),))


def _axes_of(digits: Digits) -> Section:
    convention = digits.convention
    return _axes(digits.case.plan, convention.positive, convention.turning)


@kept_by_plan
def _axes(plan: Plan, positive: str, turning: str) -> Section:
    ways = (plan, *(branch.plan for branch in plan.branches))
    if not any(step.equation.kind == "torque" for each in ways for step in each.steps):
        plain = say("{x} to the right, {y} up.", x=letter("x"), y=letter("y"))
        return Section("Axes and signs", (paragraph(plain),))
    sentence = say(
        "{x} to the right, {y} up; {positive} {word}s are positive.",
        x=letter("x"),
        y=letter("y"),
        positive=positive,
        word=turning,
    )
    return Section("Axes and signs", (paragraph(sentence),))


def _steps(digits: Digits) -> Iterator[Section]:
    """Torque balances with their reasons; force balances that follow one another together."""
    waiting: list[Step] = []
    steps = list(digits.case.plan.steps)
    while steps:
        step = steps.pop(0)
        if step.equation.kind == "force" and not step.partners:
            if waiting and waiting[-1].equation.bodies != step.equation.bodies:
                yield from _force_section(digits, waiting)
                waiting = []
            waiting.append(step)
            continue
        yield from _force_section(digits, waiting)
        waiting = []
        if step.partners:
            needed = [later for later in steps if later in step.partners]
            steps = [later for later in steps if later not in needed]
            yield _together_section(digits, step, needed)
        else:
            yield from _single(digits, step)
    yield from _force_section(digits, waiting)


def _single(digits: Digits, step: Step) -> Iterator[Section]:
    if step.equation.kind == "torque":
        yield turning_section(digits, step)
        yield _torque_section(digits, step)
    else:
        yield _condition_section(digits, step)


def _together_section(digits: Digits, step: Step, needed: list[Step]) -> Section:
    """Equations that hold the same unknowns: all of them, how they go together, the results.

    needed: the steps among the partners whose quantities are wanted.
    """
    group = (step, *step.partners)
    names = [digits.case.system.variables[each.unknown].as_name for each in group]
    count = {2: "two", 3: "three", 4: "four"}[len(group)]
    reason = say(
        "No equation holds only one unknown. These {count} hold {names} and no other:",
        count=count,
        names=listed(names),
    )
    taken_out = [
        Row((name,), "=", (each.expression,)) for name, each in zip(names, group, strict=True)
    ][:0:-1]
    blocks: list[Block] = [
        paragraph(reason),
        Display(tuple(balance_row(digits, equation) for equation in step.equations[::-1])),
        *_reasons(step),
        paragraph(say("We take {others} out,", others=listed(names[:0:-1]))),
        Display(tuple(taken_out)),
        paragraph(say("and put this into the rest, which leaves {last} alone:", last=names[0])),
        *_reduced(step),
        *_worked(digits, step),
    ]
    if needed:
        blocks.append(paragraph(say("With it:")))
    for each in needed:
        blocks += _worked(digits, each)
    return Section(f"{count.capitalize()} equations together", tuple(blocks))


def _reasons(step: Step) -> Iterator[Block]:
    """Why the conditions among the equations hold."""
    told = dict.fromkeys(equation.reason for equation in step.equations if equation.reason)
    if told:
        yield paragraph(*(say(_heading(reason).rstrip(".") + ".") for reason in told))


def _reduced(step: Step) -> Iterator[Block]:
    """What is left of the last equation once the others are put in."""
    if step.reduced is not None:
        yield Display((Row((step.reduced,), "=", (ZERO,)),))


def _worked(digits: Digits, step: Step) -> Iterator[Block]:
    """The value of a step without its equation."""
    name = digits.case.system.variables[step.unknown].as_name
    yield Display(tuple(rows_of(digits, name, step.expression, step.unknown)))
    yield from _sign_note(digits, step)


def _torque_section(digits: Digits, step: Step) -> Section:
    word = digits.convention.turning.capitalize()
    return Section(f"{word} balance", (working(digits, step), *_sign_note(digits, step)))


def _force_section(digits: Digits, steps: list[Step]) -> Iterator[Section]:
    if not steps:
        return
    blocks: list[Block] = []
    equation = steps[0].equation
    group = tuple(together(digits.case.system, equation))
    if group:
        blocks.append(paragraph(*group))
    carrying = [step for step in steps if _carries(digits, step)][:1]
    for step in steps:
        if step in carrying:
            blocks.append(paragraph(say("With the unrounded values found above:")))
        blocks += [*_axis_note(digits, step), working(digits, step), *_sign_note(digits, step)]
    several = len(digits.case.system.bodies) > 1
    ending = f" on {equation_noun(digits.case.system, equation)}" if several else ""
    yield Section(f"Force balance{ending}", tuple(blocks))


def _axis_note(digits: Digits, step: Step) -> Iterator[Block]:
    """Which way a tilted axis runs."""
    axis = step.equation.axis
    if axis is None or axis in (X, Y):
        return
    degrees = float(evaluate(axis.direction, digits.case.values))
    kind = "along the surface" if axis.label.startswith(ALONG) else "square to the surface"
    yield paragraph(
        say(
            "Along the axis {axis}, {kind} ({way} is positive), one unknown drops out:",
            axis=letter(axis.label),
            kind=kind,
            way=toward(degrees),
        )
    )


def _carries(digits: Digits, step: Step) -> bool:
    """Whether the step uses a value found before that its printed result rounds."""
    held = names_in(step.expression)
    return any(
        float(evaluate(digits.final(earlier.unknown), {}))
        != float(exact(digits.case.values[earlier.unknown]))
        for earlier in digits.case.plan.steps
        if earlier.unknown in held
    )


def _condition_section(digits: Digits, step: Step) -> Section:
    blocks: list[Block] = []
    if step.equation.reason:
        blocks.append(paragraph(say(_heading(step.equation.reason).rstrip(".") + ".")))
    blocks += [working(digits, step), *_sign_note(digits, step)]
    return Section(_title_of(digits.case.system.variables[step.unknown]), tuple(blocks))


def _title_of(variable: Variable) -> str:
    """What a section that works out one quantity is headed."""
    if variable.id.endswith((".x", ".y")):
        return f"Component {symbol_plain(variable.symbol)}"
    return _heading(variable.name)


def _heading(words: str) -> str:
    return words if words[1:2] == "-" else words[:1].upper() + words[1:]


def _sign_note(digits: Digits, step: Step) -> Iterator[Block]:
    """What a negative result means: the force acts the other way."""
    value = digits.case.values[step.unknown]
    forces = [f for f in digits.case.system.forces if f.id == step.unknown]
    if value < 0.0 and any(c.id == step.unknown for c in digits.case.system.couples):
        name = digits.case.system.variables[step.unknown].as_name
        yield paragraph(say("{M} is negative: the couple acts clockwise.", M=name))
    if value >= 0.0 or not forces:
        return
    force = forces[0]
    degrees = float(evaluate(force.direction, digits.case.values)) + 180.0
    yield paragraph(
        say(
            "{F} is negative: this part of the force acts {way}, against the way first taken."
            if force.part in ("x", "y")
            else "{F} is negative: it acts {way}, against the way first taken.",
            F=force.magnitude,
            way=toward(degrees),
        )
    )
