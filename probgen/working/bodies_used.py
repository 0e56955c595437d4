"""The bodies whose forces a working needs, and the steps it tells."""

from __future__ import annotations

from probgen.statics.plan import Plan
from probgen.statics.step import Step
from probgen.statics.system import Body, Form, Kind, System


def bodies_used(plan: Plan) -> tuple[Body, ...]:
    """The bodies whose forces the working needs: of its balances, and of resultants asked.

    That a member is idle is seen without a diagram.
    """
    drawn = [step for step in steps_told(plan) if not step.idle]
    used = {body for step in drawn for each in step.equations for body in each.bodies}
    whole = {f.quantity for f in plan.system.finds if f.form is Form.MAGNITUDE_AND_DIRECTION}
    used |= {
        element.body
        for element in plan.system.elements
        if element.id in whole or element.kind is Kind.RESULTANT
    }
    return tuple(body for body in plan.system.bodies if body.id in used)


def is_piece(system: System, body: Body) -> bool:
    """Whether a body is a joint of a truss, or a part of one or of a body that is cut."""
    members = (force for force in system.forces if force.kind is Kind.MEMBER)
    return bool(body.part_of) or any(force.body == body.id for force in members)


def steps_told(plan: Plan) -> list[Step]:
    """The steps to every limit, each once, where the plan is to find which is reached first."""
    return list(dict.fromkeys(step for each in plan.ways for step in each.steps))
