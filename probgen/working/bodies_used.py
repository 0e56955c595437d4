"""The bodies whose forces a working needs, and the steps it tells."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from probgen.statics.plan import Plan
from probgen.statics.step import Step
from probgen.statics.system import Body, Form, Kind, System
from probgen.statics.taken_as_one import Whole, made_of, whole_of, with_wholes


def bodies_used(plan: Plan) -> tuple[Body, ...]:
    """The bodies whose forces the working needs, several taken as one among them as one more: of
    its balances, and of resultants asked.

    They are in the order of the problem; those that are told late, in that of the balances.
    That a member is idle is seen without a diagram.
    """
    drawn = [step for step in plan.steps_told if not step.idle]
    first: dict[tuple[str, ...], int] = {}
    for place, step in enumerate(drawn):
        for equation in step.equations:
            if equation.bodies:
                first.setdefault(equation.bodies, place)
    own = [body for body in plan.system.bodies if not isinstance(body, Whole)]
    wholes = [whole_of(plan.system, each) for each in first if len(each) > 1]
    asked = _asked_of(plan, wholes)
    used = [body for body in own if made_of(body) in first or body.id in asked]
    if not _any_late(plan, (*wholes, *used)):
        return tuple(used)
    # Those of one step: first what is taken as one, as less acts on it.
    late = len(drawn)
    return tuple(sorted((*wholes, *used), key=lambda body: first.get(made_of(body), late)))


def _asked_of(plan: Plan, wholes: Iterable[Body]) -> set[str]:
    """The bodies of resultants that are asked, but for what acts from outside on some wholes."""
    system, named = plan.system, ids_of(wholes)
    whole = {f.quantity for f in system.finds if f.form is Form.MAGNITUDE_AND_DIRECTION}
    inner = {force.element for force in system.forces if force.pair}
    pieces = {body.id for body in system.bodies if is_piece(system, body)}
    own = {e.id for e in system.elements if e.body not in pieces}
    found = {e.body for e in system.elements if e.kind is Kind.RESULTANT}
    for element in system.elements:
        shown = element.body in named and element.id not in inner
        shown = shown or (element.body in pieces and element.id in own)  # on all of it
        if element.id in whole and not shown:
            found.add(element.body)
    return found


def ids_of(bodies: Iterable[Body]) -> frozenset[str]:
    """Of bodies, and of those that are taken as one in a whole."""
    return frozenset(id for body in bodies for id in made_of(body))


def as_told(plan: Plan) -> Plan:
    """The plan with its wholes among the bodies, all in the order they are told; with none of them
    as it is.
    """
    used = bodies_used(plan)
    fresh = any(isinstance(body, Whole) and body not in plan.system.bodies for body in used)
    return replace(plan, system=with_wholes(plan.system, used)) if fresh else plan


def told_late(plan: Plan) -> list[Body]:
    """The bodies told where a step first needs them: all that steps need where there are pieces of
    a truss or of a body that is cut, or some are taken as one.
    """
    used = bodies_used(plan)
    if not _any_late(plan, used):
        return []
    steps = plan.steps_told
    needed = {each.bodies for step in steps for each in step.equations}
    return [body for body in used if made_of(body) in needed]


def _any_late(plan: Plan, used: Iterable[Body]) -> bool:
    return any(isinstance(body, Whole) or is_piece(plan.system, body) for body in used)


def is_piece(system: System, body: Body) -> bool:
    """Whether a body is a joint of a truss, or a part of one or of a body that is cut."""
    members = (force for force in system.forces if force.kind is Kind.MEMBER)
    return bool(body.part_of) or any(force.body == body.id for force in members)


def steps_compared(plan: Plan) -> list[Step]:
    """The steps told whichever limit is reached first: all, where there is but one or none."""
    ways = [branch.compared for branch in plan.branches] or [plan.steps]
    return list(dict.fromkeys(step for each in ways for step in each))
