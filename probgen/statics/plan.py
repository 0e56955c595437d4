"""The plan: which balance, about which pivot, for which unknown, in which order.

Found once for a template: `derivation` finds the cheapest way to what is asked, so no step is shown
that is not needed.  Where a largest or smallest value is asked, there is a plan to each limit.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Call, Expression, Value, evaluate, names_in, negative
from probgen.quantities.printing import plain
from probgen.statics.definition import all_behind, settle
from probgen.statics.derivation import derived_steps
from probgen.statics.determinacy import said_already, unsettled
from probgen.statics.line import Line, worked
from probgen.statics.link import along_links
from probgen.statics.loaded_cable import loaded_cable
from probgen.statics.method import Method
from probgen.statics.off_body_pivot import all_lettered, with_meeting_points
from probgen.statics.quantity_id import Quantity
from probgen.statics.refusal import Refusal
from probgen.statics.state import state_of, steps_of_state, utmost_finds, way_sought
from probgen.statics.step import Step
from probgen.statics.system import (
    Condition,
    Definition,
    Find,
    Form,
    Kind,
    Limit,
    Role,
    System,
)
from probgen.statics.truss import taken_apart, trimmed, with_joints


@dataclass(frozen=True, slots=True)
class Outcome:
    """What is put together at the end: a magnitude (N) or a direction (deg from +x)."""

    of: Quantity
    expression: Expression

    @property
    def id(self) -> str:
        return str(self.of)


@dataclass(frozen=True)
class Plan:
    """The way through a problem; evaluating its steps in order is the solution.

    branches: where the largest or smallest value before a limit is asked, the plan to each limit,
    state by state; definitions, steps and outcomes are then theirs, and empty here.
    left_open: unknowns that nobody asks for and that equilibrium alone does not settle.
    """

    system: System
    method: Method
    definitions: tuple[Definition, ...]
    steps: tuple[Step, ...]
    outcomes: tuple[Outcome, ...]
    branches: tuple[Branch, ...] = ()
    left_open: frozenset[str] = frozenset()

    @cached_property
    def lines(self) -> tuple[Line, ...]:
        """What is worked out, in order: definitions, steps, what is put together at the end."""
        first = [Line(each.variable, each.expression) for each in self.definitions]
        steps = [Line(step.unknown, step.expression) for step in self.steps]
        last = [Line(outcome.id, outcome.expression) for outcome in self.outcomes]
        return (*first, *steps, *last)

    @property
    def ways(self) -> tuple[Plan, ...]:
        """The plans that have steps: those to every limit, or this one where none is asked of."""
        return tuple(branch.plan for branch in self.branches) or (self,)

    @cached_property
    def steps_told(self) -> tuple[Step, ...]:
        """The steps to every limit, each once, where it is to find which is reached first."""
        return tuple(dict.fromkeys(step for each in self.ways for step in each.steps))

    @cached_property
    def worked_with(self) -> frozenset[str]:
        """The ids of all that an equation of the working holds, or a line of it gives."""
        ways = self.ways
        held = (names_in(e.expression) for way in ways for s in way.steps for e in s.equations)
        return frozenset(line.id for way in ways for line in way.lines).union(*held)

    def branches_to(self, utmost: Find) -> tuple[Branch, ...]:
        """The plans to the limits of the state whose utmost value a find asks."""
        return tuple(branch for branch in self.branches if branch.utmost == utmost)

    def steps_before(self, branch: Branch) -> tuple[Step, ...]:
        """All that is worked out where its limit is reached first: the way to each limit of its
        state, and what else is asked at this one.
        """
        others = (each for each in self.branches_to(branch.utmost) if each is not branch)
        return (*(step for each in others for step in each.compared), *branch.plan.steps)

    def found_anyway(self, branch: Branch) -> frozenset[str]:
        """What the ways to the other limits of a state find that is so whichever is reached."""
        anyway = set[str]()
        for other in self.branches_to(branch.utmost):
            sought = {step.unknown for step in other.plan.steps} - anyway
            for step in other.compared if other is not branch else ():
                conditions = {each.about for each in step.equations if each.kind == "condition"}
                if other.limit.id not in conditions and not names_in(step.expression) & sought:
                    anyway.add(step.unknown)
                    sought.discard(step.unknown)
        return frozenset(anyway)

    @property
    def pivots(self) -> tuple[str, ...]:
        """The points the plan takes torques about."""
        return tuple(s.equation.about for s in self.steps if s.equation.kind == "torque")


@dataclass(frozen=True, slots=True)
class Branch:
    """One limit reached: the plan of the system in which it is.

    utmost: the find whose largest or smallest value may be the one at this limit.
    beyond: the plan to both sides of the limit with the sought quantity known, to tell on which
    side of its value the limit is passed.
    afterwards: where there are other limits, the plan's last steps: they lead to what else is asked
    of the state, which is as they say only if this limit is reached first.
    """

    utmost: Find
    limit: Limit
    plan: Plan
    beyond: Plan
    afterwards: tuple[Step, ...] = ()

    @property
    def compared(self) -> tuple[Step, ...]:
        """The steps before those: to the value that is set beside those at the other limits."""
        return self.plan.steps[: len(self.plan.steps) - len(self.afterwards)]

    def is_passed(self, size: Value, values: Mapping[str, Value]) -> NDArray[np.bool_]:
        """Whether the limit is broken where the quantity goes on a little beyond a size.

        values: givens, derived quantities and g; size: coherent units, as they are.
        """
        step = way_sought(self.utmost) * _STEP * np.maximum(np.abs(size), 1e-6)
        further = np.asarray(size) + step
        state = worked(self.beyond.lines, {**values, self.utmost.quantity: further})
        left, right = (np.asarray(evaluate(s, state)) for s in (self.limit.left, self.limit.right))
        return left > right if self.limit.relation == "<=" else left < right


_STEP: Final = 1e-4
"""How far beyond a limit's value, relative, it is looked whether the limit is passed."""

Probe = Mapping[str, NDArray[np.float64]]


def find_plan(system: System, probe: Probe, method: Method | None = None) -> Plan:
    """The shortest derivation of everything the system asks.

    probe: coherent values of all givens, derived quantities and g for a handful of draws.
    Raises Refusal when the situation is unstable or indeterminate, a condition repeats what follows
    from all else, or no order of steps is found.
    """
    method = method or Method()
    system = along_links(system)
    if utmost := utmost_finds(system):
        states = [(find, state_of(system, find)) for find in utmost]
        to_limits = [[*_to_each_limit(state, find, probe, method)] for find, state in states]
        branches = tuple(branch for each in to_limits for branch in _parted(_met(each, probe)))
        return Plan(system, method, (), (), (), branches)
    settled, open_definitions = settle(system)
    known = worked((Line(each.variable, each.expression) for each in settled), probe)
    wanted = wanted_unknowns(system)
    left_open: frozenset[str] = frozenset()
    if not set(wanted) <= known.keys():
        left_open = unsettled(with_joints(system), known, wanted)
        _require_news(system, known, probe, method)
    if system.members:
        system = taken_apart(system, _looked_for(system, wanted), method.trusses)
    if cable := loaded_cable(system, known):
        system = cable.told(system)
        open_definitions = (*open_definitions, cable.definition)
    found = derived_steps(system, open_definitions, known, wanted, method, cable)
    together = found is None or any(_of_extent(system, step) for step in found if step.partners)
    if together or _section_on_the_way(system, found or (), wanted):
        off_body = with_meeting_points(system)
        better = derived_steps(off_body, open_definitions, known, wanted, method)
        if better is not None and not any(step.partners for step in better):
            apart = _pruned_points(system, off_body, better)
            if together or (len(better) < len(found or ()) and all_lettered(apart)):
                system, found = apart, better
    if found is None:
        raise Refusal(_no_way(wanted))
    outcomes = tuple(_outcomes(system))
    return Plan(trimmed(system, found), method, settled, found, outcomes, left_open=left_open)


def _require_news(system: System, known: Mapping[str, Value], probe: Probe, method: Method) -> None:
    """Raises Refusal for conditions that follow from all else, where it can be found without them.

    A plan would take them in the place of balances, and so show nothing of statics.
    """
    repeated = said_already(with_joints(system), known) if system.conditions else ()
    if not repeated:
        return
    rest = tuple(each for each in system.conditions if each not in repeated)
    try:
        find_plan(replace(system, conditions=rest), probe, method)
    except Refusal:
        return  # they show a way that is not found otherwise
    told = " and ".join(f"{plain(each.left)} = {plain(each.right)}" for each in repeated)
    raise Refusal(
        f"{told} {'follow' if len(repeated) > 1 else 'follows'} from the balances, which the "
        f"working is to show: leave the condition{'s' if len(repeated) > 1 else ''} out"
    )


def _of_extent(system: System, step: Step) -> bool:
    """Whether a step is not of particles alone, which have no torques to take elsewhere."""
    bodies = [system.body(body) for each in step.equations for body in each.bodies]
    return not bodies or any(not body.particle for body in bodies)


def _section_on_the_way(system: System, steps: Sequence[Step], wanted: Sequence[str]) -> bool:
    """Whether a balance of a part that a section leaves finds a member nobody asked for."""
    members = {force.id for force in system.forces if force.kind is Kind.MEMBER}
    return any(step.unknown in members - set(wanted) and _of_extent(system, step) for step in steps)


def _looked_for(system: System, wanted: tuple[str, ...]) -> frozenset[str]:
    """The quantities wanted, and those that definitions and conditions are written with."""
    written = [each.expression for each in system.definitions]
    written += [side for each in system.conditions for side in (each.left, each.right)]
    return frozenset(wanted).union(*map(names_in, written))


def _pruned_points(system: System, off_body: System, steps: tuple[Step, ...]) -> System:
    """The system with those points off the body that the steps take torques about."""
    used = {step.equation.about for step in steps if step.equation.kind == "torque"}
    points = {
        name: point
        for name, point in off_body.points.items()
        if name in system.points or name in used
    }
    return replace(system, points=points)


def _to_each_limit(system: System, extreme: Find, probe: Probe, method: Method) -> Iterator[Branch]:
    """The ways to every limit of the state that an utmost value is asked of."""
    if not system.limits:
        raise Refusal(
            f"{extreme.quantity} has no {extreme.form} value: nothing limits it; add a [[limit]]"
        )
    if system.members:  # each limit would take the truss apart in its own way
        raise Refusal(
            f"the {extreme.form} {extreme.quantity} that a truss bears is not worked out; say in a "
            "[[condition]] that a member's force has its limit, and ask for the quantity itself"
        )
    finds = tuple(
        replace(find, form=Form.VALUE) if find is extreme else find for find in system.finds
    )
    for limit in (side for each in system.limits for side in _sides(each)):
        reached = Condition(limit.id, limit.left, limit.right)
        at_limit = replace(system, conditions=(*system.conditions, reached), finds=finds, limits=())
        beyond = _beyond(system, extreme, limit, probe, method)
        _require_effect(beyond, extreme.quantity, limit, probe)
        yield Branch(extreme, limit, find_plan(at_limit, probe, method), beyond)


def _met(branches: Sequence[Branch], probe: Probe) -> Sequence[Branch]:
    """Those whose limits are passed on going on; a limit from the other side bounds nothing."""
    counted = []
    for branch in branches:
        size = worked(branch.plan.lines, probe)[branch.utmost.quantity]
        if np.any(np.isfinite(size) & branch.is_passed(size, probe)):
            counted.append(branch)
    return counted or branches


def _parted(branches: Sequence[Branch]) -> Iterator[Branch]:
    """Those to several limits with the steps last that their comparison does without."""
    for branch in branches:
        plan = branch.plan
        found = {line.id: names_in(line.expression) for line in plan.lines}
        found |= {s.unknown: found[s.unknown] | _together_with(s) for s in plan.steps}
        needed = all_behind([branch.utmost.quantity], found)
        own, _ = steps_of_state(plan.system, plan.steps, branch.utmost)
        last = tuple(s for s in own if s.unknown not in needed and len(branches) > 1)
        steps = (*(s for s in plan.steps if s not in last), *last)
        yield replace(branch, plan=replace(plan, steps=steps), afterwards=last)


def _together_with(step: Step) -> frozenset[str]:
    return frozenset(partner.unknown for partner in step.partners)


def _sides(limit: Limit) -> tuple[Limit, ...]:
    """|a| <= b as the two limits a <= b and -a <= b; any other limit as it is."""
    match limit.left:
        case Call("abs", (inner,)) if limit.relation == "<=":
            return replace(limit, left=inner), replace(limit, left=negative(inner))
        case _:
            return (limit,)


def _require_effect(beyond: Plan, quantity: str, limit: Limit, probe: Probe) -> None:
    """Raises Refusal when the sought quantity does not change how near the limit is."""
    near = []
    draws = len(next(iter(probe.values())))
    for size in (0.83, 1.31):
        known = worked(beyond.lines, {**probe, quantity: np.full(draws, size)})
        near.append(np.asarray(evaluate(limit.left, known)) - evaluate(limit.right, known))
    if np.allclose(near[0], near[1], rtol=1e-9, atol=1e-9):
        raise Refusal(
            f"{quantity} has no effect on {plain(limit.left)}, "
            f"so {plain(limit.left)} = {plain(limit.right)} is never reached"
        )


def _beyond(system: System, extreme: Find, limit: Limit, probe: Probe, method: Method) -> Plan:
    """The plan to both sides of a limit with the sought quantity given: is it passed or not?"""
    names = sorted(names_in(limit.left) | names_in(limit.right))
    variables = dict(system.variables)
    variables[extreme.quantity] = replace(variables[extreme.quantity], role=Role.GIVEN)
    given = replace(
        system,
        variables=variables,
        limits=(),
        finds=tuple(Find(name, Form.VALUE) for name in names if name != extreme.quantity),
    )
    draws = len(next(iter(probe.values())))
    return find_plan(given, {**probe, extreme.quantity: np.full(draws, 0.83)}, method)


def _no_way(wanted: tuple[str, ...]) -> str:
    return (
        f"no order of balances leads to {', '.join(wanted)}: every equation holds more quantities "
        "than can be found from it; ask for fewer, or give one of them"
    )


def wanted_unknowns(system: System) -> tuple[str, ...]:
    """The quantities the finds need, each once, in the order asked."""
    wanted: list[str] = []
    for find in system.finds:
        wanted += _limit_names(system, find) if find.form is Form.HOLDS else _parts_of(find)
    return tuple(dict.fromkeys(wanted))


def limits_asked(system: System, find: Find) -> tuple[Limit, ...]:
    """The limits a "holds" find is about: the one it names, or all."""
    return tuple(limit for limit in system.limits if find.quantity in ("", limit.id))


def _limit_names(system: System, find: Find) -> list[str]:
    return [
        name
        for limit in limits_asked(system, find)
        for side in (limit.left, limit.right)
        for name in sorted(names_in(side))
    ]


def _parts_of(find: Find) -> list[str]:
    if find.form is Form.VALUE:
        return [find.quantity]
    return [*Quantity(find.quantity).components]


def _outcomes(system: System) -> Iterator[Outcome]:
    for find in system.finds:
        if find.form is Form.MAGNITUDE_AND_DIRECTION:
            x, y = (system.variables[part].as_name for part in _parts_of(find))
            magnitude, direction = find.numbers
            yield Outcome(magnitude, Call("hypot", (x, y)))
            yield Outcome(direction, Call("atan2", (y, x)))
