"""What a course's rules of order and pivot add to the price of an equation.

The search takes the cheapest way, and a step costs ten.  What is added here is little beside that,
so that a rule chooses among ways of one length and makes none of a few steps longer.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from probgen.quantities.expression import names_in
from probgen.statics.equation import Equation
from probgen.statics.system import Kind, System

_SUPPORTS: Final = (Kind.HINGE, Kind.ROUGH, Kind.FIXED, Kind.ROLLER, Kind.CONTACT)
_OTHER_KIND: Final = 1.5
_OTHER_PIVOT: Final = 1.5
_SECTION: Final = 0.5
_WANTED_TOO: Final = 0.15  # less than a step, and more than a term or a place
_JOINT: Final = 60.0  # more than any number of steps by sections
_ALONG_CUT: Final = -0.2  # more than a tilted axis costs beside x and y
_WITH_PARTICLE: Final = 2.0  # more than a rule of order or pivot
_EARLY: Final = 0.3  # a step later
_FORCES_EARLY: Final = 0.1  # so that even a late one costs less than torques in its place


def surcharge(system: System, equation: Equation, wanted: Collection[str] = ()) -> float:
    """What an equation costs beside its step; 0 where the course has no rules.

    Of a truss the balance of a joint is plainer than that of a part, where either will do; of a
    tilted body that is cut, sums along and square to it; of a pin its own sums of forces.
    wanted: the quantities looked for.
    """
    usual = _of_kind(equation) + _of_pivot(system, equation) + _of_pin(system, equation)
    return usual + _of_piece(system, equation, wanted) + _of_cut(equation)


def _of_piece(system: System, equation: Equation, wanted: Collection[str]) -> float:
    """Of a truss: a section costs a little, and less where it is through more of the members that
    are looked for; a joint much where sections are to be laid; but that a member carries nothing is
    seen at a joint.
    """
    bodies = [system.body(body) for body in equation.bodies]
    if any(body.joints for body in bodies):
        pulls = (f for f in system.forces if f.body in equation.bodies and f.kind is Kind.MEMBER)
        cut = sum(bool(names_in(pull.magnitude) & set(wanted)) for pull in pulls)
        return _SECTION - _WANTED_TOO * max(cut - 1, 0)
    held = any(
        force.kind is Kind.MEMBER and force.body in equation.bodies for force in system.forces
    )
    shunned = held and system.by == "sections" and len(equation.terms) > 1
    return _JOINT if shunned else 0.0


def _of_pin(system: System, equation: Equation) -> float:
    """A particle, such as a pin, is taken together with bodies that turn where it saves a step."""
    torques = equation.kind == "torque"
    held = torques and any(system.body(body).particle for body in equation.bodies)
    return _WITH_PARTICLE if held else 0.0


def _of_cut(equation: Equation) -> float:
    return _ALONG_CUT if equation.axis is not None and equation.axis.body else 0.0


def lateness(equation: Equation) -> float:
    """What an equation costs for each step before it, so that its kind comes early."""
    if equation.method.order == "forces first":
        return _FORCES_EARLY if equation.kind == "force" else 0.0
    return _EARLY if equation.kind == "torque" else 0.0


def _of_kind(equation: Equation) -> float:
    others = {"forces first": "torque", "torques throughout": "force"}
    return _OTHER_KIND if equation.kind == others.get(equation.method.order) else 0.0


def _of_pivot(system: System, equation: Equation) -> float:
    if equation.kind != "torque" or equation.method.pivot == "simplest":
        return 0.0
    return 0.0 if equation.about in _supports(system, equation) else _OTHER_PIVOT


def _supports(system: System, equation: Equation) -> set[str]:
    """Where the bodies of an equation are held."""
    elements = system.elements
    return {e.at for e in elements if e.kind in _SUPPORTS and e.body in equation.bodies}
