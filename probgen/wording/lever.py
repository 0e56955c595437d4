"""A force that alone holds all others about a joint, nearer to it than they act or farther out."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from probgen.quantities.expression import evaluate
from probgen.statics.numeric_equations import coordinates
from probgen.statics.system import Force
from probgen.wording.sense import signed_arms
from probgen.working.case import Case

_NEARER: Final = 1e-3  # of a distance, less than which nobody calls nearer


@dataclass(frozen=True, slots=True)
class Lever:
    """What one force leaves to a joint whose others it holds.

    sign: +1 where the joint's force has to act as drawn, -1 against it; held: those of the others
    that have a lever arm about the joint.
    """

    force: Force
    sign: int
    held: tuple[Force, ...]


def lever_against(
    case: Case, joint: Force, others: Sequence[Force], parts: Mapping[str, float]
) -> Lever | None:
    """The force that acts against all the rest, whose torques about the joint it holds.

    Where its line meets the joint's level nearer to the joint than any of theirs, it is larger than
    all of them, and where it does so farther out, smaller; in between nothing follows.  Nor is
    anything told where it does not act so much nearer or farther out itself.

    parts: of each force, what part of it acts along the joint's axis, signed.
    """
    for lever in others:
        rest = [other for other in others if other is not lever]
        if any(parts[other.id] * parts[lever.id] > 0 for other in rest):
            continue
        arms = _arms_about(case, joint, lever)
        held = tuple(other for other in rest if arms.get(other.id))
        if not held or not arms.keys() <= {lever.id, *(other.id for other in rest)}:
            continue  # it holds none of them, or something else as well
        theirs = [arms.get(other.id, 0.0) / abs(parts[other.id]) for other in rest]
        if any(arm * arms[lever.id] > 0.0 for arm in theirs):
            continue
        up = 1 if parts[lever.id] > 0 else -1
        apart = _apart(abs(arms[lever.id] / parts[lever.id]), theirs)
        if apart and apart == _seen_apart(case, joint, lever, held):
            return Lever(lever, apart * up, held)
    return None


def both_parts_turn(case: Case, joint: Force, lever: Force) -> bool:
    """Whether the part of a force across the joint's axis has a lever arm about the joint too."""
    places = coordinates(case.system, case.values)
    (u, v), (x, y) = places[joint.point], places[lever.point]
    axis = math.radians(float(evaluate(joint.direction, case.values)))
    along = (x - u) * math.cos(axis) + (y - v) * math.sin(axis)
    return bool(abs(along) > _NEARER * math.hypot(x - u, y - v))


def _apart(own: float, others: Sequence[float]) -> int:
    """-1 for a distance below all others, +1 for one above them, 0 in between."""
    margin = _NEARER * own
    if own + margin < min(map(abs, others)):
        return -1
    return 1 if own - margin > max(map(abs, others)) else 0


def _seen_apart(case: Case, joint: Force, lever: Force, held: Sequence[Force]) -> int:
    """How far out the point it acts at is, beside those of what it holds: as `_apart` says."""
    places = coordinates(case.system, case.values)
    x, y = places[joint.point]
    out = {id: abs(complex(u - x, v - y)) for id, (u, v) in places.items()}
    return _apart(out[lever.point], [out[each.point] for each in held])


def _arms_about(case: Case, joint: Force, lever: Force) -> Mapping[str, float]:
    """Signed lever arms (m) in the balance about the joint that gives one force; none where there
    is no such balance, or a couple in it.
    """
    for step in case.plan.steps:
        equation = step.equation
        if (equation.kind, equation.bodies, equation.about, step.unknown, step.partners) == (
            "torque", (joint.body,), joint.point, lever.id, ()
        ):  # fmt: skip
            couples = any(term.length is None for term in equation.terms)
            return {} if couples else signed_arms(equation, case.values)
    return {}
