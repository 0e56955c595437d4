"""What a course's rules of order and pivot add to the price of an equation.

The search takes the cheapest way, and a step costs ten: what is added here stays below that for a
whole working of a few steps, so that a rule chooses among ways of one length and makes none longer.
"""

from __future__ import annotations

from typing import Final

from probgen.statics.equation import Equation
from probgen.statics.system import Kind, System

_SUPPORTS: Final = (Kind.HINGE, Kind.ROUGH, Kind.FIXED, Kind.ROLLER, Kind.CONTACT)
_OTHER_KIND: Final = 1.5
_OTHER_PIVOT: Final = 1.5
_STAYING: Final = 0.75  # for an unknown force that a pivot leaves in
_EARLY: Final = 0.3  # a step later


def surcharge(system: System, equation: Equation, removed: int) -> float:
    """What an equation costs beside its step; 0 where the course has no rules.

    removed: how much its pivot keeps out, as `Field.removed` has it.
    """
    return _of_kind(equation) + _of_pivot(system, equation, removed)


def lateness(equation: Equation) -> float:
    """What an equation costs for each step before it: torques come early, or what the course says."""
    first = "force" if equation.method.order == "forces first" else "torque"
    return _EARLY if equation.kind == first else 0.0


def _of_kind(equation: Equation) -> float:
    other = {"forces first": "torque", "torques first": "force"}.get(equation.method.order, "")
    return _OTHER_KIND if equation.kind == other else 0.0


def _of_pivot(system: System, equation: Equation, removed: int) -> float:
    if equation.kind != "torque":
        return 0.0
    match equation.method.pivot:
        case "support":
            return 0.0 if equation.about in _supports(system, equation) else _OTHER_PIVOT
        case "most unknowns":
            return _STAYING * max(0, 4 - removed)
        case _:
            return 0.0


def _supports(system: System, equation: Equation) -> set[str]:
    """Where the bodies of an equation are held."""
    elements = system.elements
    return {e.at for e in elements if e.kind in _SUPPORTS and e.body in equation.bodies}
