"""The whole working of a problem as a good teacher would hand it out: section by section."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.quantities.expression import evaluate, names_in
from probgen.statics.plan import Step
from probgen.wording.block import Block, Section
from probgen.wording.case import Case
from probgen.wording.check import check_section
from probgen.wording.convention import Convention
from probgen.wording.digits import Digits
from probgen.wording.direction import toward
from probgen.wording.forces import forces_section
from probgen.wording.resultant import resultant_sections
from probgen.wording.sentence import letter, paragraph, say
from probgen.wording.turning import turning_section
from probgen.wording.working import working


def tell(case: Case, convention: Convention) -> tuple[Section, ...]:
    """The worked steps: axes, forces, turning, balances, magnitude and direction, check.

    Raises ArithmeticError when some printed working would not give its printed result.
    """
    digits = Digits(case, convention)
    bodies = case.system.bodies
    return (
        _axes(digits),
        *(forces_section(digits, body) for body in bodies),
        *_steps(digits),
        *resultant_sections(digits),
        *(section for body in bodies if (section := check_section(digits, body))),
    )


def _axes(digits: Digits) -> Section:
    convention = digits.convention
    sentence = say(
        "{x} to the right, {y} up; {positive} {word}s are positive.",
        x=letter("x"),
        y=letter("y"),
        positive=convention.positive,
        word=convention.turning,
    )
    return Section("Axes and signs", (paragraph(sentence),))


def _steps(digits: Digits) -> Iterator[Section]:
    """Torque balances with their reasons; force balances that follow one another together."""
    waiting: list[Step] = []
    for step in digits.case.plan.steps:
        if step.equation.kind == "force":
            waiting.append(step)
            continue
        yield from _force_section(digits, waiting)
        waiting = []
        if step.equation.kind == "torque":
            yield turning_section(digits, step)
            yield _torque_section(digits, step)
        else:
            yield _condition_section(digits, step)
    yield from _force_section(digits, waiting)


def _torque_section(digits: Digits, step: Step) -> Section:
    word = digits.convention.turning.capitalize()
    return Section(f"{word} balance", (working(digits, step), *_sign_note(digits, step)))


def _force_section(digits: Digits, steps: list[Step]) -> Iterator[Section]:
    if not steps:
        return
    blocks: list[Block] = []
    for step in steps:
        if not blocks and _carries(digits, step):
            blocks.append(paragraph(say("With the unrounded values found above:")))
        blocks += [working(digits, step), *_sign_note(digits, step)]
    yield Section("Force balance", tuple(blocks))


def _carries(digits: Digits, step: Step) -> bool:
    """Whether the step uses a value an earlier step found."""
    earlier = {s.unknown for s in digits.case.plan.steps}
    return bool(names_in(step.expression) & earlier)


def _condition_section(digits: Digits, step: Step) -> Section:
    blocks: list[Block] = []
    if step.equation.reason:
        reason = step.equation.reason
        blocks.append(paragraph(say(reason[:1].upper() + reason[1:].rstrip(".") + ".")))
    blocks += [working(digits, step), *_sign_note(digits, step)]
    name = digits.case.system.variables[step.unknown].name
    return Section(name[:1].upper() + name[1:], tuple(blocks))


def _sign_note(digits: Digits, step: Step) -> Iterator[Block]:
    """What a negative result means: the force acts the other way."""
    value = digits.case.values[step.unknown]
    forces = [f for f in digits.case.system.forces if f.id == step.unknown]
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
