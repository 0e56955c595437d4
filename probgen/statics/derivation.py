"""From a system to the steps that lead to what is wanted.

Every balance of every body or group and every condition is a possible step; `search` finds the
cheapest way.  What an equation depends on is tested on a handful of draws, not read off its
symbols, so that a force whose line passes through the pivot counts as absent however its arm is
written.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from probgen.quantities.expression import ZERO, Expression, Value, evaluate, names_in
from probgen.statics.balances import candidates
from probgen.statics.body_by_body import body_by_body
from probgen.statics.cross_check import assembled_at, solve_all, with_definitions
from probgen.statics.elimination import Solved, eliminated
from probgen.statics.equation import Equation, oriented, pruned, read_positively
from probgen.statics.equation_sets import cheap_moves
from probgen.statics.loaded_cable import LoadedCable
from probgen.statics.method import Method
from probgen.statics.preference import surcharge
from probgen.statics.refusal import Refusal
from probgen.statics.search import Field, Move, dependence, shortest, trial_values
from probgen.statics.solve_for import Range, all_roots, tidied
from probgen.statics.span import may_be, span_at, span_of
from probgen.statics.step import Step
from probgen.statics.system import Definition, Role, System
from probgen.statics.truss import finds_idle

_CLOSE = 1e-9  # of an equation's largest term: the rest that counts as none


def derived_steps(
    system: System,
    open_definitions: tuple[Definition, ...],
    known: Mapping[str, Value],
    wanted: tuple[str, ...],
    method: Method,
    cable: LoadedCable | None = None,
) -> tuple[Step, ...] | None:
    """The steps of the cheapest way, None when there is none.

    cable: one whose horizontal part is among the definitions.
    """
    unknowns = (*system.unknowns, *(d.variable for d in open_definitions))
    written = _possible(system, open_definitions, method, cable)
    equations = tuple(oriented(equation, known) for equation in written)
    holds = dependence(equations, unknowns, known)
    equations = tuple(
        pruned(equation, _absent(unknowns, held))
        for equation, held in zip(equations, holds, strict=True)
    )
    kept_out = [_removed(system, e, h, unknowns) for e, h in zip(equations, holds, strict=True)]
    weights = [_relief(system, e, out) for e, out in zip(equations, kept_out, strict=True)]
    trial, ranges = trial_values(unknowns, known), _ranges(system, unknowns)
    rules = [surcharge(system, equation, wanted) for equation in equations]
    balanced = _balanced(system, known, trial)
    field = Field(equations, unknowns, holds, weights, trial, ranges, rules, balanced)
    path = _path(system, field, wanted)
    if path is None:
        return None
    reached = dict(known)
    steps: list[Step] = []
    left_out: dict[str, frozenset[str]] = {}
    for move in path:
        idle = _Idle.of(system, steps)
        for step in _steps(field, move, kept_out[move.equations[0]], reached, wanted, idle):
            chosen = _physical(step, system, field.ranges[step.unknown], reached)
            chosen = replace(chosen, expression=read_positively(chosen.expression, reached))
            chosen = replace(chosen, idle=finds_idle(system, chosen))
            if not reached.keys() >= names_in(chosen.expression) - {step.unknown}:
                return None  # at odd values an unknown seemed to drop out, and has not
            with np.errstate(all="ignore"):
                reached[step.unknown] = np.asarray(evaluate(chosen.expression, reached))
            if len(move.equations) == 1:  # the place it finds now tells the arms' sense too
                chosen = replace(chosen, equation=oriented(chosen.equation, reached))
            steps.append(chosen)
            held = (names_in(equations[index].expression) for index in move.equations)
            left_out[step.unknown] = idle.parts & frozenset[str]().union(*held)
            if step.partners and not np.any(np.isfinite(reached[step.unknown])):
                return None  # equations that only seemed independent
    return _in_order(system, _needed(steps, wanted, left_out), wanted)


def _possible(
    system: System,
    open_definitions: tuple[Definition, ...],
    method: Method,
    cable: LoadedCable | None,
) -> Iterator[Equation]:
    """Every balance and condition that may be used."""
    if cable is None:
        yield from candidates(system, open_definitions, method)
        return
    own = tuple(each for each in open_definitions if each.variable != cable.level.id)
    for equation in candidates(system, own, method):
        if not set(equation.bodies) & set(cable.knots):
            yield equation  # what those of the knots say, the cable's own say in short
    yield from cable.equations(system, method)


def _path(system: System, field: Field, wanted: Collection[str]) -> list[Move] | None:
    """The cheapest moves to what is wanted."""
    sought = sum(1 << at for at, name in enumerate(field.unknowns) if name in wanted)
    jointed = any(body.joints for body in system.bodies)
    return (cheap_moves if jointed else shortest)(field, sought)


def _balanced(
    system: System, known: Mapping[str, Value], trial: Mapping[str, Value]
) -> Mapping[str, Value] | None:
    """The first draw's values at which every balance holds; None where they are not found."""
    if not system.unknowns:
        return None
    first = {name: np.asarray(value, float).reshape(-1)[:1] for name, value in known.items()}
    start = np.array([[float(np.asarray(trial[name]).flat[0]) for name in system.unknowns]])
    with np.errstate(all="ignore"):
        found = solve_all(system, first, start)
        off = assembled_at(system, first, found).relative
    if not np.all(off < _CLOSE):
        return None
    complete = first | {name: found[:, at] for at, name in enumerate(system.unknowns)}
    return with_definitions(system, complete)


def _absent(unknowns: tuple[str, ...], held: int) -> frozenset[str]:
    return frozenset(name for place, name in enumerate(unknowns) if not held >> place & 1)


def _removed(
    system: System, equation: Equation, held: int, unknowns: tuple[str, ...]
) -> tuple[str, ...]:
    """Unknowns of forces on the bodies that the equation is free of."""
    inside = {name for place, name in enumerate(unknowns) if held >> place & 1}
    free: list[str] = []
    for force in system.forces:
        if force.body in equation.bodies:
            free += sorted(_unknown_in(system, force.magnitude) - inside)
    return tuple(dict.fromkeys(free))


def _relief(system: System, equation: Equation, removed: tuple[str, ...]) -> int:
    """How much a choice of pivot simplifies: unknowns that act at the pivot count double."""
    at_pivot = {
        name
        for force in system.forces
        if force.body in equation.bodies and force.point == equation.about
        for name in names_in(force.magnitude)
    }
    return sum(2 if name in at_pivot else 1 for name in removed)


def _unknown_in(system: System, expression: Expression) -> frozenset[str]:
    unknown = {v.id for v in system.variables.values() if v.role is Role.UNKNOWN}
    return names_in(expression) & frozenset(unknown)


@dataclass(frozen=True, slots=True)
class _Idle:
    """Members and parts of supports found to carry nothing: the ids of their forces, as quantities
    and on bodies.

    parts: those of supports, which are told before what does without them.
    """

    quantities: frozenset[str]
    forces: frozenset[str]
    parts: frozenset[str]

    @classmethod
    def of(cls, system: System, steps: Sequence[Step]) -> _Idle:
        balanced = [s for s in steps if s.expression == ZERO]
        found = frozenset(step.unknown for step in balanced)
        parts = found - {step.unknown for step in balanced if step.idle}
        acting = (f.id for f in system.forces if names_in(f.magnitude) & found)
        return cls(found, frozenset(acting), parts)

    def on(self, system: System, step: Step) -> frozenset[str]:
        """Those that would act on the bodies of a step: it is told without them."""
        bodies = {body for each in step.equations for body in each.bodies}
        acting = (names_in(f.magnitude) for f in system.forces if f.body in bodies)
        return self.quantities & frozenset[str]().union(*acting)

    def left_out(self, equation: Equation) -> Equation:
        if not self.quantities:
            return equation
        kept = pruned(equation, self.quantities)
        return replace(kept, silent=tuple(id for id in kept.silent if id not in self.forces))


def _steps(
    field: Field,
    move: Move,
    removed: tuple[str, ...],
    known: Mapping[str, Value],
    wanted: tuple[str, ...],
    idle: _Idle,
) -> Iterator[Step]:
    """The step of a move; a move of several equations gives as many.

    Lever arms are written the positive way round as far as values are known by then, and members
    that were found idle are left out.
    """
    equations = tuple(
        oriented(idle.left_out(field.equations[index]), known) for index in move.equations
    )
    names = tuple(field.unknowns[place] for place in move.unknowns)
    expressions = tuple(equation.expression for equation in equations)
    found = eliminated(expressions, names, field.ranges, frozenset(wanted))
    assert found is not None, "the search admits only equations that can be solved"
    steps = [_step(each, equations, removed) for each in found]
    yield replace(steps[0], partners=tuple(steps[1:]))
    yield from steps[1:]


def _step(solved: Solved, equations: Sequence[Equation], removed: tuple[str, ...]) -> Step:
    cosine, sine = solved.divided or solved.squared or (0, 0)
    pair = (equations[cosine], equations[sine])
    return Step(
        solved.unknown,
        equations[solved.place],
        tidied(solved.value),
        removed,
        reduced=solved.balance,
        put_in=solved.put_in,
        dropped=solved.dropped,
        divided=pair if solved.divided else None,
        squared=pair if solved.squared else None,
    )


def _ranges(system: System, unknowns: tuple[str, ...]) -> dict[str, Range]:
    return {name: span_of(system.variables[name]) for name in unknowns}


def _physical(step: Step, system: System, within: Range, known: Mapping[str, Value]) -> Step:
    """The step with the root that lies where the quantity may lie; the others are kept beside it.

    Of several those count with which all else lies where it may.  Raises Refusal when more than one
    is left: a draw could not say which is meant.
    """
    found = all_roots(step.reduced or step.equation.expression, step.unknown, within)
    values = tuple(tidied(value) for value in found)
    if len(values) <= 1:
        return step
    low, high = span_at(system.variables[step.unknown], known)
    with np.errstate(all="ignore"):
        worked = [np.asarray(evaluate(value, known)) for value in values]
    inside = [(each >= low - 1e-9) & (each <= high + 1e-9) for each in worked]
    if sum(bool(np.mean(each) > 0.5) for each in inside) > 1:
        unknown = step.unknown
        given = {id: value for id, value in known.items() if id not in system.unknowns}
        inside = [
            each & may_be(system, unknown, numbers, given)
            for each, numbers in zip(inside, worked, strict=True)
        ]
    fitting = [v for v, each in zip(values, inside, strict=True) if np.mean(each) > 0.5]
    if len(fitting) > 1:
        raise Refusal(
            f"{step.unknown} has more than one possible value between {within[0]:g} and "
            f"{within[1]:g}: "
            "narrow its range with from and to under [unknown]"
        )
    chosen = fitting[0] if fitting else values[0]
    return replace(step, expression=chosen, others=tuple(v for v in values if v != chosen))


def _needed(
    steps: list[Step], wanted: tuple[str, ...], left_out: Mapping[str, frozenset[str]]
) -> list[Step]:
    """The steps without those whose quantity nobody asked for and no later step uses.

    Of equations solved together the first is kept with any other: it tells how they go together.
    left_out: by the unknown of a step, what it does without because that is zero.
    """
    kept: list[Step] = []
    held = set(wanted)
    first = {other.unknown: step.unknown for step in steps for other in step.partners}
    for step in reversed(steps):
        if step.unknown in held:
            kept.append(step)
            held |= names_in(step.expression) | left_out[step.unknown]
            held.add(first.get(step.unknown, step.unknown))
    return kept[::-1]


def _in_order(system: System, steps: Sequence[Step], wanted: Sequence[str]) -> tuple[Step, ...]:
    """Body by body, each step after the members that carry nothing and that it is told without."""
    before = {step.unknown: _Idle.of(system, steps[:at]) for at, step in enumerate(steps)}
    after = {step.unknown: before[step.unknown].on(system, step) for step in steps}
    return _components_last(system, body_by_body(steps, wanted, after))


def _components_last(system: System, steps: list[Step]) -> tuple[Step, ...]:
    """Components that only their definition gives come last, beside each other."""
    used = frozenset[str]().union(*(names_in(step.expression) for step in steps))
    last = [
        step
        for step in steps
        if step.equation.kind == "condition"
        and system.variables[step.unknown].component_of
        and step.unknown not in used
    ]
    return (*(step for step in steps if step not in last), *last)
