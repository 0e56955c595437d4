"""What holds beside equilibrium: [[condition]], [[share]], [[limit]] and [[require]]."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from probgen.bank.labels import Reason, Slipping
from probgen.bank.scope import check_id
from probgen.bank.situation import Situation
from probgen.bank.template import Requirement
from probgen.input.table import Table
from probgen.quantities.expression import times
from probgen.quantities.unit import FORCE, PLAIN
from probgen.statics.system import Find, Form, Limit

_ON_LIMITS: Final = (Form.LARGEST, Form.SMALLEST, Form.HOLDS)


def read_conditions(top: Table, situation: Situation) -> None:
    """Every equation the author states, and every stated ratio of two forces."""
    for row in top.tables("condition"):
        equation = situation.scope.equation(row, "that")
        reason = row.text("because", expected="why it holds, in a few words")
        if equation is not None:
            situation.add_condition(equation.left, equation.right, reason)
        row.close()
    for row in top.tables("share"):
        scope = situation.scope
        one, other = (scope.expression(row, key, FORCE) for key in ("of", "to"))
        ratio = scope.expression(row, "ratio", PLAIN)
        stated = row.text("because", "") or Reason.RATIO_STATED
        situation.add_condition(one, times(ratio, other), stated)
        row.close()


def read_limits(top: Table, situation: Situation) -> None:
    """Everything that may give way, beside contacts that may slip."""
    for place, row in enumerate(top.tables("limit")):
        id = row.text("id", f"limit_{place + 1}")
        if check_id(row, id) and any(limit.id == id for limit in situation.limits):
            row.fault("id", id, "an id that no other limit has")
        sides = situation.scope.comparison(row, "that")
        name = row.text("name", expected='what happens beyond it, such as "the cable breaks"')
        if sides is not None:
            relation = sides.relation[0] + "="  # at the limit itself it still holds
            situation.add_limit(Limit(id, sides.left, relation, sides.right), name)
        row.close()


def read_requirements(
    top: Table, situation: Situation, finds: tuple[Find, ...]
) -> tuple[Requirement, ...]:
    """What each draw must satisfy; where no find asks about limits, all of them must be kept."""
    asked = any(find.form in _ON_LIMITS for find in finds)
    kept = () if asked else situation.limits
    return (
        *situation.requirements,
        *(_keeping(each, situation.events[each.id]) for each in kept),
        *_stated(top, situation),
    )


def _keeping(limit: Limit, event: str | Slipping) -> Requirement:
    because = event if isinstance(event, str) else f"{limit.id} is kept"
    return Requirement(limit.left, limit.relation, limit.right, because)


def _stated(top: Table, situation: Situation) -> Iterator[Requirement]:
    for row in top.tables("require"):
        comparison = situation.scope.comparison(row, "that")
        because = row.text("because", expected="the reason, in a few words")
        row.close()
        if comparison is not None:
            sides = comparison.left, comparison.relation, comparison.right
            yield Requirement(*sides, because)
