"""What the answers of a problem are worked out from."""

from __future__ import annotations

from probgen.quantities.expression import names_in
from probgen.statics.definition import all_behind
from probgen.statics.plan import Plan, limits_asked
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Find, Form


def needed_for(plan: Plan, find: Find) -> frozenset[str]:
    """The ids of what answers a find, or of its limits and what they hold, and of all they come
    from.
    """
    sources: dict[str, frozenset[str]] = {}
    for line in (line for each in plan.ways for line in each.lines):
        sources[line.id] = sources.get(line.id, frozenset()) | names_in(line.expression)
    return all_behind(_targets(plan, find), sources)


def _targets(plan: Plan, find: Find) -> set[str]:
    """The ids of what answers a find, or of its limits and what they hold."""
    if find.form is Form.HOLDS:
        limits = limits_asked(plan.system, find)
        names = {name for each in limits for side in (each.left, each.right)
                 for name in names_in(side)}  # fmt: skip
        return names | {each.id for each in limits}
    of = Quantity(find.quantity)
    if find.form is Form.COMPONENTS:
        return {*of.components}
    if find.form is Form.MAGNITUDE_AND_DIRECTION:
        return {*of.components, *map(str, (of.magnitude, of.direction))}
    return {find.quantity}
