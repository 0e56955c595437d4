"""The whole working of a problem as a good teacher would hand it out: passage by passage."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import replace
from typing import Final

from probgen.quantities.expression import names_in
from probgen.statics.definition import names_behind
from probgen.statics.equation import X, Y
from probgen.statics.internal_forces import InternalForces
from probgen.statics.link import is_link
from probgen.statics.plan import Branch, Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.state import steps_of_state, utmost_finds
from probgen.statics.step import Step
from probgen.statics.system import Body, Definition, Find, Form
from probgen.statics.taken_as_one import made_of
from probgen.wording.block import Display
from probgen.wording.check import check_passages, last_look
from probgen.wording.components import counted_forces, split_told, splits, weights_turned
from probgen.wording.couples_asked import couples_asked
from probgen.wording.equations import rows_of, working
from probgen.wording.facts.balance import (
    AxesAndTurning,
    AxesHeading,
    AxesTaken,
    ConditionsHold,
    ForceHeading,
    ForcesZero,
    QuantityHeading,
    TorqueHeading,
    TorquesZero,
)
from probgen.wording.forces import forces_passage, parts_passage
from probgen.wording.go_on import go_on, go_on_in
from probgen.wording.hypotenuse import hypotenuse_part
from probgen.wording.largest_moment import largest_passage
from probgen.wording.level_part import level_part
from probgen.wording.limit import (
    comparison_passage,
    holding_passage,
    is_met_by,
    others_kept,
    said_of_result,
    supposing_passage,
    with_known,
)
from probgen.wording.load import integrated, load_passages, loads_asked
from probgen.wording.once import said_once
from probgen.wording.passage import Part, Passage, one_paragraph, sentences
from probgen.wording.resultant import resultant_passages
from probgen.wording.steady import how_still
from probgen.wording.tilted_axis import axis_part, tilted_axes
from probgen.wording.together import reasons, together_passage
from probgen.wording.torque import turning_passage
from probgen.wording.truss import idle_passage, links_told, taken_in_tension
from probgen.wording.unused import Unused, UnusedBalance
from probgen.working.bodies_used import as_told, bodies_used, ids_of, is_piece, told_late
from probgen.working.case import Case
from probgen.working.digits import Digits
from probgen.working.fact import Fact
from probgen.working.verdict import at_limit, reached_first

_MOST_TELLINGS: Final = 60  # until its lines agree on digits: most take one, some seven


def tell(
    digits: Digits, unused: Unused, inside: Sequence[InternalForces] = ()
) -> tuple[Passage, ...]:
    """The worked steps: axes, forces, turning, balances, magnitude and direction, check.

    unused: what `unused_balances` gives for the plan.
    inside: what acts in bodies whose largest bending moment is asked, which tells where it is.
    Raises ArithmeticError when a printed working would not give its result, or no force acts.
    """
    if digits.case.is_idle:
        raise ArithmeticError("no force is left in a balance")
    for telling in range(_MOST_TELLINGS):
        if 2 * telling == _MOST_TELLINGS:
            digits.guards.write_none()
        digits.guards.begin_key()
        passages = said_once(_told(digits, unused, inside))
        if not digits.guards.raised:  # else a line shows fewer digits than a later one
            return passages
    raise ArithmeticError(f"the digits of its lines still differ after {_MOST_TELLINGS} tellings")


def _told(digits: Digits, unused: Unused, inside: Sequence[InternalForces]) -> tuple[Passage, ...]:
    """The passages with as many digits as are known to be needed by now."""
    case = digits.case
    if case.plan.branches:
        return _told_to_limits(digits, unused)
    bodies, late = bodies_used(case.plan), told_late(case.plan)
    first = [body for body in bodies if body not in late]
    first = [body for body in first if not is_link(case.system, body)]
    return (
        *((_axes(digits),) if bodies else ()),
        *links_told(digits, bodies),
        *loads_asked(digits, bodies),
        *_forces_on(digits, first),
        *_asked_definitions(digits, needed=True),
        *_steps(digits, inside, late),
        *_parts_told(digits, bodies),
        *_asked_definitions(digits, needed=False),
        *resultant_passages(digits),
        *(holding_passage(digits, find) for find in case.system.finds if find.form is Form.HOLDS),
        *last_look(digits, unused[0], alone=len(case.system.bodies) == 1),
    )


def _forces_on(
    digits: Digits, bodies: Sequence[Body], before: Sequence[Body] = ()
) -> Iterator[Passage]:
    """The forces on bodies, after the resultants of what is spread on each by a formula."""
    told, plan = list(before), as_told(digits.case.plan)
    own = replace(digits, case=replace(digits.case, plan=plan))
    for body in bodies:
        yield from load_passages(own, body, told)
        yield forces_passage(own, body, told)
        told.append(body)


def _told_to_limits(digits: Digits, unused: Unused) -> tuple[Passage, ...]:
    """The axes, and what leads to the utmost value of each state, one state after another.

    Each ends with a look back at it.
    """
    reached = [(branch, at_limit(digits, branch)) for branch in digits.case.plan.branches]
    owns = [own for _, own in reached]
    turning = [own for own in owns if _takes_torques(own.case.plan)] or owns
    passages = [_axes(turning[0])]
    for find in utmost_finds(digits.case.system):
        passages += _told_to(digits, find, [each for each in reached if each[0].utmost == find])
        place = digits.case.plan.branches.index(reached_first(digits.case, find))
        passages += _looked_back(digits.case, reached, place, unused[place])
    return (*passages, *_told_beside(*reached[0]))


def _looked_back(
    case: Case,
    reached: Sequence[tuple[Branch, Digits]],
    place: int,
    unused: Mapping[str, tuple[UnusedBalance, ...]],
) -> tuple[Passage, ...]:
    """The look back at the bodies of a state, as it is at the limit reached first.

    What was found on the way to another limit and is so at this one is known as well.
    """
    branch, own = reached[place]
    steps, _ = steps_of_state(own.case.plan.system, own.case.plan.steps, branch.utmost)
    bodies, anyway = _bodies(steps), case.plan.found_anyway(branch)
    balances = {id: each for id, each in unused.items() if id in bodies}
    found = {id: value for _, each in reached for id, value in each.case.values.items()}
    values = {id: found[id] for id in sorted(anyway)} | dict(own.case.values)
    known = replace(own, case=replace(own.case, values=values))
    looked = check_passages(known, balances, alone=len(case.system.bodies) == 1)
    return looked or others_kept(known, branch, case.plan.branches_to(branch.utmost))


def _told_to(
    digits: Digits, find: Find, reached: Sequence[tuple[Branch, Digits]]
) -> Iterator[Passage]:
    """The forces once, the working up to each limit, then the limits beside each other; and what
    else is asked at the one that is reached first.
    """
    owns = [own for _, own in reached]
    steps, beside = zip(
        *(steps_of_state(own.case.plan.system, own.case.plan.steps, find) for own in owns),
        strict=True,
    )
    yield from _forces_of(owns, _bodies(beside[0]) - _bodies(steps[0]))
    found = frozenset[str]()
    for (branch, own), these in zip(reached, steps, strict=True):
        compared = [step for step in these if step not in branch.afterwards]
        at_once = is_met_by(branch.limit, compared[0])
        met = tuple(working(own, compared.pop(0))) if at_once else ()
        yield supposing_passage(digits.case.system, branch.limit, met, first=len(reached) > 1)
        known = found & digits.case.plan.found_anyway(branch)
        yield from with_known(_steps(own, late=_pieces(own.case.plan), steps=compared), known)
        found |= {step.unknown for step in these}
    if len(reached) > 1:
        yield comparison_passage(digits, find, owns)
    first = reached_first(digits.case, find)
    (own,) = (own for branch, own in reached if branch is first)
    yield from _steps(own, late=_pieces(own.case.plan), steps=first.afterwards)


def _told_beside(branch: Branch, own: Digits) -> Iterator[Passage]:
    """What is asked of states that go to no limit, once, after those that do."""
    plan = own.case.plan
    _, beside = steps_of_state(plan.system, plan.steps, branch.utmost)
    used = _bodies(beside)
    yield from _forces_on(own, [body for body in bodies_used(plan) if ids_of([body]) <= used])
    yield from _steps(own, late=_pieces(plan), steps=beside)


def _pieces(plan: Plan) -> list[Body]:
    return [body for body in bodies_used(plan) if is_piece(plan.system, body)]


def _bodies(steps: Sequence[Step]) -> set[str]:
    return {body for step in steps for each in step.equations for body in each.bodies}


def _takes_torques(plan: Plan) -> bool:
    return any(step.equation.kind == "torque" for step in plan.steps)


def _forces_of(branches: Sequence[Digits], aside: Set[str]) -> Iterator[Passage]:
    """The forces on each body that some branch uses, once; aside: bodies told elsewhere."""
    told: list[Body] = []
    for own in branches:
        for body in bodies_used(own.case.plan):
            if body not in told and not ids_of([body]) & aside:
                yield from _forces_on(own, [body], told)
                told.append(body)


def _parts_told(digits: Digits, bodies: Sequence[Body]) -> Iterator[Passage]:
    """The weights that what is asked is made of, on bodies whose forces are not told."""
    held = (names_in(definition.expression) for definition in _defined(digits))
    wanted = frozenset[str]().union(*held)
    for body in digits.case.system.bodies:
        if body.id not in ids_of(bodies):
            yield from parts_passage(digits, body, wanted)


def _asked_definitions(digits: Digits, *, needed: bool) -> Iterator[Passage]:
    """Quantities asked that the data alone settle; of several with one reason, it is given once.

    needed: those that the steps work with, which come before them; else the others.
    """
    reasons, given, used = digits.case.labels.reasons, set[object](), _used(digits.case.plan)
    for definition in _defined(digits):
        if (definition.variable in used) is not needed:
            continue
        variable = digits.case.system.variables[definition.variable]
        rows = rows_of(digits, variable.as_name, definition.expression, definition.variable)
        because = reasons.get(definition.variable)
        fresh = because is not None and because not in given
        said = (sentences(ConditionsHold((definition.variable,))),) if fresh else ()
        given.add(because)
        yield Passage(QuantityHeading(variable.id), (*said, Display(tuple(rows))))


def _used(plan: Plan) -> frozenset[str]:
    """All that the steps work with, and what that is worked out from."""
    used = frozenset[str]().union(*(names_in(step.expression) for step in plan.steps))
    return names_behind(used, plan.definitions)


def _defined(digits: Digits) -> list[Definition]:
    """What is asked and settled by data alone, but for loads that are integrated."""
    asked = [find.quantity for find in digits.case.system.finds]
    asked += [id for quantity in tuple(asked) for id in Quantity(quantity).components]
    told, definitions = integrated(digits.case.system), digits.case.plan.definitions
    return [each for each in definitions if each.variable in asked and each.variable not in told]


def _axes(digits: Digits) -> Passage:
    plan, convention = digits.case.plan, digits.convention
    tilted = tilted_axes(digits)
    taken: Fact = AxesTaken(tilted)
    if _takes_torques(plan):
        clockwise = convention.positive == "clockwise"
        against = tuple(couples_asked(plan.system)) if clockwise else ()
        taken = AxesAndTurning(convention.positive, convention.turning, tilted, against)
    return Passage(AxesHeading(), (sentences(taken, *taken_in_tension(plan.system)),))


def _steps(
    digits: Digits,
    inside: Sequence[InternalForces] = (),
    late: Sequence[Body] = (),
    steps: Sequence[Step] | None = None,
) -> Iterator[Passage]:
    """Torque balances with their reasons; force balances that follow one another together.

    late: the bodies told where a step first needs them; steps: those to be told, if not all.
    """
    waiting: list[Step] = []
    steps = list(digits.case.plan.steps if steps is None else steps)
    told = [body for body in bodies_used(digits.case.plan) if body not in late]
    while steps:
        step = steps.pop(0)
        bodies = {each.bodies for each in step.equations}
        fresh = [] if step.idle else [b for b in late if made_of(b) in bodies and b not in told]
        if fresh:
            yield from _force_passage(digits, waiting)
            waiting = []
            yield from (each for body in fresh for each in _largest(digits, inside, body))
            yield from _forces_on(digits, fresh, told)
            told += fresh
        if step.idle:
            yield from _force_passage(digits, waiting)
            waiting = []
            yield idle_passage(digits, step)
            continue
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
            turned = [each for each in step.equations if each.kind == "torque"] == [step.equation]
            if turned:
                yield turning_passage(digits, step)
            across = () if turned else tuple(hypotenuse_part(digits, [step]))
            yield together_passage(digits, step, needed, across)
        else:
            yield from _single(digits, step)
    yield from _force_passage(digits, waiting)


def _largest(digits: Digits, inside: Sequence[InternalForces], part: Body) -> Iterator[Passage]:
    """Why the section that leaves a part lies where the bending moment is largest."""
    bared = {couple.id for couple in digits.case.system.couples if couple.body == part.id}
    for asked in digits.case.system.largest:
        found = next((each for each in inside if each.body == asked.body), None)
        if found is not None and asked.moment in bared:
            yield largest_passage(digits, asked, found)


def _single(digits: Digits, step: Step) -> Iterator[Passage]:
    if step.equation.kind == "torque":
        yield (turning := turning_passage(digits, step))
        yield _torque_passage(digits, step, turning)
    else:
        yield _condition_passage(digits, step)


def _torque_passage(digits: Digits, step: Step, before: Passage) -> Passage:
    turning, equation = digits.convention.turning, step.equation
    zero = TorquesZero(equation.bodies, equation.about, turning, how_still(digits, equation.bodies))
    opening = sentences(zero, *go_on(digits, [step], before.said))
    return Passage(TorqueHeading(turning), (opening, *_worked(digits, step)))


def _force_passage(digits: Digits, steps: list[Step]) -> Iterator[Passage]:
    if not steps:
        return
    system, equation = digits.case.system, steps[0].equation
    earlier = digits.case.plan.steps[: digits.case.plan.steps.index(steps[0])]
    equations = [equation for step in steps for equation in step.equations]
    split = tuple(splits(digits, steps[0], equations, split_told(system, earlier)))
    early = tuple(go_on_in(digits, steps, split))
    opening = one_paragraph(
        sentences(_forces_zero(digits, steps, earlier), *early),
        *split,
        sentences(
            *weights_turned(system, equations, earlier),
            *level_part(system, equations),
            *counted_forces(system, equations),
            *go_on(digits, steps, early),
        ),
    )
    parts: list[Part] = [*opening, *hypotenuse_part(digits, steps)]
    for step in steps:
        parts += [*axis_part(digits, step), *_worked(digits, step)]
    yield Passage(ForceHeading(() if len(system.bodies) == 1 else equation.bodies), tuple(parts))


def _forces_zero(digits: Digits, steps: Sequence[Step], earlier: Sequence[Step]) -> Fact:
    system, bodies = digits.case.system, steps[0].equation.bodies
    earlier = [step for step in earlier if not step.idle]
    level = all(step.equation.axis in (X, Y) for step in steps)
    axes = tuple(dict.fromkeys(step.equation.about for step in steps)) if level else ()
    before = any(bodies == each.bodies for step in earlier for each in step.equations)
    particle = any(system.body(body).particle for body in bodies)
    return ForcesZero(bodies, axes, before, particle, how_still(digits, bodies))


def _worked(digits: Digits, step: Step) -> Iterator[Part]:
    """The lines of a step, and what is said of its result."""
    yield from working(digits, step)
    yield from said_of_result(digits, step)


def _condition_passage(digits: Digits, step: Step) -> Passage:
    heading = QuantityHeading(step.unknown)
    told = tuple(level_part(digits.case.system, step.equations))
    going_on = (sentences(*told, *go_on(digits, [step])),) if told else ()
    return Passage(heading, (*reasons(digits, step), *going_on, *_worked(digits, step)))
