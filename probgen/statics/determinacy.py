"""Whether equilibrium alone settles a situation: determinate, indeterminate, or unstable.

The equations are linearised at a trial state.  More unknowns than independent equations means
that the supports share the load in a way statics cannot tell.  A motion that no support resists
and that a load drives (a combination of equations no unknown enters) means the body is unstable.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Value, evaluate, names_in
from probgen.quantities.printing import plain
from probgen.statics.cross_check import (
    assembled_at,
    is_linear,
    jacobian,
    solve_all,
    with_definitions,
)
from probgen.statics.numeric_equations import coordinates
from probgen.statics.refusal import Refusal
from probgen.statics.system import Condition, Force, Kind, System

Array = NDArray[np.float64]
_EQUATION_NAMES = {"x": "sum of F_x", "y": "sum of F_y", "turn": "sum of torques"}
_SLOPE = 1e-8


def unsettled(system: System, values: Mapping[str, Value], wanted: Sequence[str]) -> frozenset[str]:
    """The unknowns that the equations leave open at the first draw given; often none.

    Raises Refusal where one of those that are wanted is among them, or nothing holds a body.
    """
    unknowns = system.unknowns
    if not unknowns:
        raise Refusal("nothing is unknown: name a support, a cable or an unknown quantity to find")
    first = {name: np.asarray(value).reshape(-1)[:1] for name, value in values.items()}
    trial = _balanced(system, first, _typical(system, first))
    here = assembled_at(system, first, trial)
    slopes = jacobian(system, first, trial)[0]
    size = np.where(here.scale[0] > 0.0, here.scale[0], 1.0)
    scaled = slopes / size[:, None] * np.maximum(np.abs(trial[0]), 1e-3)
    if not np.all(np.isfinite(scaled)):
        raise Refusal("a length or a force has no value: look for a division by zero or a root")
    _, singular, right = np.linalg.svd(scaled)
    rank = int(np.sum(singular > _SLOPE * max(float(singular[0]), 1.0)))
    turns = [kind == "turn" for _, kind in here.labels]
    motion = _unresisted(scaled, here.residual[0] / size, rank, turns)
    if motion is not None:
        tried = first | {name: trial[:, place] for place, name in enumerate(unknowns)}
        if not any(_follows(system, tried, each) for each in system.conditions):
            raise Refusal(_unheld(system, tried, motion, here.labels))
    free = right[rank:]
    loose = [name for place, name in enumerate(unknowns) if _moves(free[:, place])]
    if set(loose) & set(wanted):
        raise Refusal(_indeterminate(system, loose, len(free), here.labels))
    return frozenset(loose)


def _balanced(system: System, values: Mapping[str, Array], trial: Array) -> Array:
    """The state at which all balances hold, where there are more of them than unknowns and a place
    is sought: only there does one follow from others, as of two halves that are alike.

    The trial state where there are no more, or none such is found.
    """
    labels = assembled_at(system, values, trial).labels
    if len(labels) <= len(system.unknowns) or is_linear(system):
        return trial
    with np.errstate(all="ignore"):
        found = solve_all(system, values, trial)
        holds = np.all(assembled_at(system, values, found).relative < _SLOPE)
    return found if holds else trial


def said_already(system: System, values: Mapping[str, Value]) -> tuple[Condition, ...]:
    """The conditions that hold wherever the balances and the other conditions do; often none.

    Of several that say the same, all but one are among them.
    """
    first = {name: np.asarray(value).reshape(-1)[:1] for name, value in values.items()}
    trial = _typical(system, first)
    starts = [
        first | {name: part * trial[:, place] for place, name in enumerate(system.unknowns)}
        for part in (1.0, 1.37)
    ]
    found: list[Condition] = []
    for condition in system.conditions:
        left = replace(system, conditions=tuple(c for c in system.conditions if c not in found))
        if all(_follows(left, start, condition) for start in starts):
            found.append(condition)
    return tuple(found)


def _typical(system: System, values: Mapping[str, Array]) -> Array:
    """A trial state, shape (1, unknowns): forces and couples as large as the loads, no more."""
    zero = assembled_at(system, values, np.zeros((1, len(system.unknowns))))
    load = max(float(np.max(zero.scale, initial=0.0)), 1.0)
    acting = {force.id for force in system.forces} | {couple.id for couple in system.couples}
    return np.array([[
        (load if name in acting else 0.7) * (0.83 + 0.17 * place)
        for place, name in enumerate(system.unknowns)
    ]])  # fmt: skip


def _equation_list(labels: tuple[tuple[str, str], ...]) -> str:
    return "; ".join(
        f"{_EQUATION_NAMES[kind]} on {owner}" if kind in _EQUATION_NAMES else f"condition {owner}"
        for owner, kind in labels
    )


def _moves(along: Array) -> bool:
    """Whether an unknown changes along a direction in which no equation does."""
    return float(np.max(np.abs(along), initial=0.0)) > 1e-6


def _indeterminate(
    system: System, loose: Sequence[str], free: int, labels: tuple[tuple[str, str], ...]
) -> str:
    """loose: the unknowns left open; free: how many of them would settle all."""
    independent = len(system.unknowns) - free
    among = "" if independent == len(labels) else f"among the {len(labels)} "
    return (
        f"statically indeterminate: {len(system.unknowns)} unknowns "
        f"({', '.join(system.unknowns)}) but only {independent} independent "
        f"equations {among}({_equation_list(labels)}); {', '.join(loose)} cannot be told apart: "
        f"give {free} of them, or take away {free} support reaction{'s' if free > 1 else ''}"
    )


def _unresisted(scaled: Array, residual: Array, rank: int, turns: Sequence[bool]) -> Array | None:
    """A combination of equations that no unknown enters and that the loads do not fulfil.

    turns: which equations are balances of torques; one without any is taken if there is one, as
    a body that is free to move is free to turn about far points as well.
    """
    left, _, _ = np.linalg.svd(scaled)
    free = left[:, rank:].T
    _, sizes, mixed = np.linalg.svd(free[:, np.asarray(turns)].T)
    straight = mixed[int(np.sum(sizes > _SLOPE)) :] @ free
    for motion in (*straight, *free):
        if abs(float(motion @ residual)) > 1e-7:
            return np.asarray(motion, dtype=np.float64)
    return None


def _unheld(
    system: System,
    values: Mapping[str, Array],
    motion: Array,
    labels: tuple[tuple[str, str], ...],
) -> str:
    """What nothing holds, or which condition contradicts the balances, and the mend."""
    sizes = {label: abs(float(part)) for label, part in zip(labels, motion, strict=True)}
    for condition in system.conditions:
        if sizes[condition.id, "condition"] > 1e-6:
            told = f"{plain(condition.left)} = {plain(condition.right)}"
            return (
                f"the condition {told} contradicts the balances: leave it out, or let one of the "
                "known quantities be found"
            )
    turning = [label for label in sizes if label[1] == "turn" and sizes[label] > 1e-6]
    owner, kind = max(turning or sizes, key=lambda label: sizes[label])
    through = _through_one_point(system, values, owner) if kind == "turn" else ""
    held = f"unstable: nothing holds the {owner} against {_MOTIONS[kind]}"
    return f"{held}{through}{_let_one_be_found(system)}"


def _follows(system: System, values: Mapping[str, Array], condition: Condition) -> bool:
    """Whether a condition holds wherever all other equations do, though not at a trial state.

    values: of every variable, of unknowns at the trial state.
    """
    others = tuple(each for each in system.conditions if each is not condition)
    trial = np.stack([values[name] for name in system.unknowns], axis=1)
    with np.errstate(all="ignore"):
        solved = solve_all(replace(system, conditions=others), values, trial)
        return bool(np.all(assembled_at(system, values, solved).relative < _SLOPE))


_MOTIONS = {
    "x": "moving sideways; add a support that can push or pull horizontally",
    "y": "moving up or down; add a support that can push or pull vertically",
    "turn": "turning; add a support with a lever arm about the others",
}


def _through_one_point(system: System, values: Mapping[str, Array], body: str) -> str:
    """Names the unknown forces whose lines pass through the point another one acts at.

    values: of every variable, of unknowns at a trial state.
    """
    unknown = [
        force
        for force in system.forces
        if force.body == body and names_in(force.magnitude) & set(system.unknowns)
    ]
    known = with_definitions(system, dict(values))
    places = coordinates(system, known)
    for held in dict.fromkeys(force.point for force in unknown):
        passing = [
            force
            for force in unknown
            if force.point != held and abs(_arm(places, known, held, force)) < 1e-9
        ]
        if passing:
            names = ", ".join(plain(force.magnitude) for force in passing)
            others = ", ".join(plain(f.magnitude) for f in unknown if f.point == held)
            return (
                f"; the line of action of {names} passes through {held}, where {others} "
                "acts, so it cannot: change its direction or where it acts"
            )
    return ""


def _arm(
    places: Mapping[str, tuple[Array, Array]],
    values: Mapping[str, Value],
    pivot: str,
    force: Force,
) -> float:
    """Lever arm of a force about a point, metres, at the first draw."""
    angle = np.radians(evaluate(force.direction, values))
    x, y = (
        np.asarray(end) - np.asarray(start)
        for end, start in zip(places[force.point], places[pivot], strict=True)
    )
    return float(np.asarray(x * np.sin(angle) - y * np.cos(angle)).flat[0])


def _let_one_be_found(system: System) -> str:
    """The other mend: a force that is given may have to be found instead."""
    given = [
        plain(force.magnitude)
        for force in system.forces
        if force.kind not in (Kind.WEIGHT, Kind.DISTRIBUTED)
        and not names_in(force.magnitude) & set(system.unknowns)
    ]
    return f"; or let {' or '.join(dict.fromkeys(given))} be found" if given else ""
