"""Whether equilibrium alone settles a situation: determinate, indeterminate, or unstable.

The equations are linearised at a trial state.  More unknowns than independent equations means
that the supports share the load in a way statics cannot tell.  A motion that no support resists
and that a load drives (a combination of equations no unknown enters) means the body is unstable.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from probgen.quantities.expression import Value
from probgen.statics.refusal import Refusal
from probgen.statics.second import assembled_at, jacobian
from probgen.statics.system import System

Array = NDArray[np.float64]
_EQUATION_NAMES = {"x": "sum of F_x", "y": "sum of F_y", "turn": "sum of torques"}
_SLOPE = 1e-8


def require_determinate(system: System, values: Mapping[str, Value]) -> None:
    """Raises Refusal unless the equations settle every unknown at the first draw given."""
    unknowns = system.unknowns
    if not unknowns:
        raise Refusal("nothing is unknown: name a support, a cable or an unknown quantity to find")
    first = {name: np.asarray(value).reshape(-1)[:1] for name, value in values.items()}
    trial = _typical(system, first)
    here = assembled_at(system, first, trial)
    slopes = jacobian(system, first, trial)[0]
    size = np.where(here.scale[0] > 0.0, here.scale[0], 1.0)
    scaled = slopes / size[:, None] * np.maximum(np.abs(trial[0]), 1e-3)
    _, singular, right = np.linalg.svd(scaled)
    rank = int(np.sum(singular > _SLOPE * max(float(singular[0]), 1.0)))
    _require_held(system, scaled, here.residual[0] / size, rank, here.labels)
    if rank < len(unknowns):
        _refuse_indeterminate(system, right[rank:], here.labels)


def _typical(system: System, values: Mapping[str, Array]) -> Array:
    """A trial state, shape (1, unknowns): forces as large as the loads, nothing special."""
    zero = assembled_at(system, values, np.zeros((1, len(system.unknowns))))
    load = max(float(np.max(zero.scale, initial=0.0)), 1.0)
    forces = {name for force in system.forces for name in [force.id]}
    return np.array([[
        (load if name in forces else 0.7) * (0.83 + 0.17 * place)
        for place, name in enumerate(system.unknowns)
    ]])  # fmt: skip


def _equation_list(labels: tuple[tuple[str, str], ...]) -> str:
    return "; ".join(
        f"{_EQUATION_NAMES[kind]} on {owner}" if kind in _EQUATION_NAMES else f"condition {owner}"
        for owner, kind in labels
    )


def _refuse_indeterminate(system: System, free: Array, labels: tuple[tuple[str, str], ...]) -> None:
    """free: directions in the space of unknowns along which nothing changes, one a row."""
    loose = [
        name
        for place, name in enumerate(system.unknowns)
        if float(np.max(np.abs(free[:, place]))) > 1e-6
    ]
    raise Refusal(
        f"statically indeterminate: {len(system.unknowns)} unknowns "
        f"({', '.join(system.unknowns)}) but only {len(system.unknowns) - len(free)} independent "
        f"equations ({_equation_list(labels)}); {', '.join(loose)} cannot be told apart: give "
        f"{len(free)} of them, or take away {len(free)} support reaction"
        f"{'s' if len(free) > 1 else ''}"
    )


def _require_held(
    system: System,
    scaled: Array,
    residual: Array,
    rank: int,
    labels: tuple[tuple[str, str], ...],
) -> None:
    left, _, _ = np.linalg.svd(scaled)
    for motion in left[:, rank:].T:
        drive = float(motion @ residual)
        if abs(drive) > 1e-7:
            raise Refusal(f"unstable: {_motion(motion, labels)}")


def _motion(motion: Array, labels: tuple[tuple[str, str], ...]) -> str:
    """The motion nothing resists, in words."""
    strongest = max(range(len(labels)), key=lambda place: abs(float(motion[place])))
    owner, kind = labels[strongest]
    words = {
        "x": f"nothing holds {owner} against moving sideways; add a support that can push or "
        "pull horizontally",
        "y": f"nothing holds {owner} against moving up or down; add a support that can push or "
        "pull vertically",
        "turn": f"nothing holds {owner} against turning; add a support with a lever arm about "
        "the others",
        "condition": f"the condition on {owner} contradicts the balances",
    }
    return words[kind]
