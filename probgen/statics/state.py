"""States of a thing, such as before and after a change: bodies that share nothing to be found.

Each state of which the largest or smallest value is asked goes to limits of its own.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from probgen.quantities.expression import names_in
from probgen.statics.definition import settle
from probgen.statics.quantity_id import Quantity
from probgen.statics.refusal import Refusal
from probgen.statics.step import Step
from probgen.statics.system import Condition, Find, Form, Limit, Link, System

_UTMOST = (Form.LARGEST, Form.SMALLEST)


def utmost_finds(system: System) -> tuple[Find, ...]:
    """The finds that ask how far something may go, in the order asked."""
    return tuple(find for find in system.finds if find.form in _UTMOST)


def way_sought(utmost: Find) -> float:
    """Which way a quantity is changed until a limit is met: up, 1.0, or down, -1.0."""
    return -1.0 if utmost.form is Form.SMALLEST else 1.0


def state_of(system: System, find: Find) -> System:
    """The state whose utmost value a find asks; what is of no such state stands in each.

    Raises Refusal where two such values are asked of one state.
    """
    finds = utmost_finds(system)
    if len(finds) < 2:
        return system
    groups = _groups(system)
    own = [next(group for group in groups if each.quantity in group) for each in finds]
    for at, group in enumerate(own):
        if group in own[:at]:
            raise Refusal(_of_one_state(finds[own.index(group)], finds[at]))
    group = own[finds.index(find)]
    return _part(system, frozenset[str]().union(*own) - group)


def steps_of_state(
    system: System, steps: Sequence[Step], find: Find
) -> tuple[Sequence[Step], Sequence[Step]]:
    """The steps of the state that a find is about, and those of others, both in their order."""
    groups = _groups(system)
    others = [group for group in groups if find.quantity not in group]
    aside = frozenset[str]().union(*others) if len(others) < len(groups) else frozenset[str]()
    own = [step for step in steps if step.unknown not in aside]
    return own, [step for step in steps if step not in own]


def limits_to(system: System, find: Find) -> tuple[Limit, ...]:
    """The limits that an utmost value is asked before, or that a "holds" find may be about."""
    return state_of(system, find).limits if find.form in _UTMOST else system.limits


def _of_one_state(one: Find, other: Find) -> str:
    if one.quantity == other.quantity:
        asked = f"the {one.form} and the {other.form} {one.quantity}"
    else:
        asked = f"the {one.form} {one.quantity} and the {other.form} {other.quantity}"
    return (
        f"{asked} are asked of one state: give each a body of its own, with a symbol, supports "
        "and limits of its own, or ask one of them in a problem of its own"
    )


def _groups(system: System) -> list[frozenset[str]]:
    """What is to be found, grouped by what a balance, an equation or a limit holds together."""
    _, waiting = settle(system)
    sought = [*system.unknowns, *(definition.variable for definition in waiting)]
    written = [_names_on(system, body.id) for body in system.bodies]
    written += [names_in(each.expression) | {each.variable} for each in waiting]
    written += map(_names_of, system.conditions)
    written += map(_names_of, system.limits)
    groups = [frozenset({name}) for name in sought]
    for names in written:
        met = [group for group in groups if group & names]
        groups = [group for group in groups if not group & names]
        groups += [frozenset[str]().union(*met)] if met else []
    return groups


def _names_on(system: System, body: str) -> frozenset[str]:
    """Ids of what the balances of a body are written with."""
    forces = [force for force in system.forces if force.body == body]
    written = [side for force in forces for side in (force.magnitude, force.direction)]
    written += [couple.moment for couple in system.couples if couple.body == body]
    places = [_names_in(system.points[force.point].links) for force in forces]
    return frozenset[str]().union(*map(names_in, written), *places)


def _part(system: System, others: frozenset[str]) -> System:
    """The system without what is written with any of the unknowns of other states."""

    def own(names: frozenset[str]) -> bool:
        return not names & others

    bodies = tuple(body for body in system.bodies if own(_names_on(system, body.id)))
    kept = {body.id for body in bodies}
    return replace(
        system,
        variables={id: each for id, each in system.variables.items() if id not in others},
        definitions=tuple(each for each in system.definitions if each.variable not in others),
        points={id: each for id, each in system.points.items() if own(_names_in(each.links))},
        bodies=bodies,
        forces=tuple(each for each in system.forces if each.body in kept),
        couples=tuple(each for each in system.couples if each.body in kept),
        elements=tuple(each for each in system.elements if each.body in kept),
        conditions=tuple(each for each in system.conditions if own(_names_of(each))),
        finds=tuple(find for find in system.finds if own(_names_asked(system, find))),
        limits=tuple(each for each in system.limits if own(_names_of(each))),
        diagrams=tuple(body for body in system.diagrams if body in kept),
        to_draw=tuple(body for body in system.to_draw if body in kept),
        largest=tuple(each for each in system.largest if each.body in kept),
    )


def _names_of(sides: Condition | Limit) -> frozenset[str]:
    return names_in(sides.left) | names_in(sides.right)


def _names_in(links: Iterable[Link]) -> frozenset[str]:
    written = [side for link in links for side in (link.length, link.direction)]
    return frozenset[str]().union(*map(names_in, written))


def _names_asked(system: System, find: Find) -> frozenset[str]:
    """What a find is about; of whether limits hold, all they are written with."""
    if find.form is Form.HOLDS:
        asked = [each for each in system.limits if find.quantity in ("", each.id)]
        return frozenset[str]().union(*map(_names_of, asked))
    return frozenset({find.quantity, *Quantity(find.quantity).components})
