"""Slips in trusses and frames: members turned round, what is left out of a piece."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace
from typing import Final

from probgen.mistakes.variant import (
    Misstep,
    Part,
    TermChange,
    dropped,
    flipped,
    in_equations,
    on_terms,
    rewritten,
)
from probgen.quantities.expression import names_in
from probgen.quantities.unit import UnitSystem
from probgen.statics.equation import Equation
from probgen.statics.link import is_link
from probgen.statics.plan import Plan
from probgen.statics.system import Body, Force, Kind

_SUPPORTS: Final = (Kind.HINGE, Kind.ROLLER, Kind.CONTACT, Kind.ROUGH)
_LOADS: Final = (Kind.FORCE, Kind.WEIGHT)


def _member_turned(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A member known from one joint taken to act the other way on the next, or on a part."""
    held = (*_pieces(plan), *_held_by_links(plan))
    yield from _missteps(plan, "member_turned", (Kind.MEMBER, Kind.LINK), flipped, held)


def _reaction_left_out(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A support's force left out of the balances of the joint or the part that it acts on."""
    held = _pieces(plan)
    for each in _missteps(plan, "reaction_left_out", _SUPPORTS, dropped, held):
        yield replace(each, firm=True)


def _load_left_out(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """A load on the part that a section leaves left out of its balances."""
    parts = [body for body in _pieces(plan) if body.joints]
    yield from _missteps(plan, "load_left_out", _LOADS, dropped, parts)


def _missteps(
    plan: Plan, slip: str, kinds: Collection[Kind], change: TermChange, bodies: Collection[Body]
) -> Iterator[Misstep]:
    for body in bodies:
        for force in plan.system.forces:
            if force.body != body.id or force.kind not in kinds:
                continue
            own = _holding(plan, body, force)
            changed = rewritten(plan, in_equations(own, on_terms(change, sources={force.id})))
            if changed:
                told: dict[str, Part] = {"F": force.magnitude, "body": body}
                yield Misstep(slip, changed, parts=told)


def _pieces(plan: Plan) -> list[Body]:
    """The joints of trusses, and the parts that sections leave."""
    cut = {force.body for force in plan.system.forces if force.kind is Kind.MEMBER}
    return [body for body in plan.system.bodies if body.id in cut]


def _held_by_links(plan: Plan) -> list[Body]:
    """The bodies of a frame that two-force members pull at or push."""
    system = plan.system
    pulled = {force.body for force in system.forces if force.kind is Kind.LINK}
    return [body for body in system.bodies if body.id in pulled and not is_link(system, body)]


def _holding(plan: Plan, body: Body, force: Force) -> list[Equation]:
    """The balances of a body in which a force is known by then."""
    return [
        equation
        for step in plan.steps
        if not names_in(force.magnitude) & {step.unknown, *(each.unknown for each in step.partners)}
        for equation in step.equations
        if equation.bodies == (body.id,)
    ]


RULES: Final = {
    "member_turned": _member_turned,
    "reaction_left_out": _reaction_left_out,
    "load_left_out": _load_left_out,
}
