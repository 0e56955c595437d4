"""Bodies taken as one: what acts on them from outside."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.problem import prepare
from probgen.quantities.expression import Name
from probgen.statics.equation import Equation, X, Y, force_balance, torque_balance
from probgen.statics.method import Method
from probgen.statics.system import Body, Couple, System
from probgen.statics.taken_as_one import (
    Whole,
    acting_on,
    made_of,
    told_before,
    whole_of,
    with_wholes,
)
from probgen.working.convention import Convention

BOTH = ("left", "right")
METHOD = Method()


def system_of(name: str) -> System:
    return prepare(default_bank().read(name), Convention()).plan.system


def joined(system: System, bodies: tuple[str, ...]) -> tuple[System, Whole]:
    whole = whole_of(system, bodies)
    assert isinstance(whole, Whole)
    return with_wholes(system, [whole]), whole


def held(equation: Equation) -> list[tuple[str, int, str]]:
    return sorted((term.source, term.sign, str(term.magnitude)) for term in equation.terms)


TAKEN = [
    ("stepladder-tie", BOTH, "A"),
    ("climbing-triangle", BOTH, "B"),
    ("shed-three-hinges", BOTH, "C"),
    ("folding-table-strap", ("top", *BOTH), "E"),
    ("painter-board-seat", ("worker", "board"), ""),
    ("bench-leg-wedge", ("leg", "wedge"), ""),
]


@pytest.mark.parametrize(("name", "bodies", "pivot"), TAKEN)
def test_a_whole_has_the_balances_of_its_bodies_taken_as_one(
    name: str, bodies: tuple[str, ...], pivot: str
) -> None:
    """What a balance of several leaves out, the forces between them, does not act on the whole."""
    system = system_of(name)
    shown, whole = joined(system, bodies)
    for axis in (X, Y):
        several = force_balance(system, bodies, axis, METHOD)
        assert held(force_balance(shown, (whole.id,), axis, METHOD)) == held(several)
    if pivot:
        several = torque_balance(system, bodies, pivot, METHOD)
        assert held(torque_balance(shown, (whole.id,), pivot, METHOD)) == held(several)
    inner = {force.id for force in acting_on(system, bodies)[1]}
    outer = {force.id for force in shown.forces if force.body == whole.id}
    assert inner
    assert outer
    assert inner | outer == {force.id for force in system.forces if force.body in bodies}
    assert not inner & outer


def test_a_couple_between_two_bodies_cancels_and_another_acts_on_the_whole() -> None:
    system = system_of("stepladder-tie")
    couples = (
        Couple("M", "left", "A", Name("M", "M"), "N_1"),
        Couple("C", "left", "O", Name("C", "C"), "R", pair="C'"),
        Couple("C'", "right", "O", Name("C", "C"), "R", pair="C"),
    )
    shown, whole = joined(replace(system, couples=couples), BOTH)
    assert [couple.id for couple in shown.couples if couple.body == whole.id] == ["M"]


def test_what_exerts_forces_between_the_bodies_alone_is_nothing_to_the_whole() -> None:
    shown, whole = joined(system_of("stepladder-tie"), BOTH)
    acting = [element.id for element in shown.elements if element.body == whole.id]
    assert acting == ["N_1", "N_2", "W_s", "W_d"]


def test_particles_taken_as_one_are_a_particle_where_all_acts_at_one_point() -> None:
    shown, whole = joined(system_of("painter-board-seat"), ("worker", "board"))
    assert whole.particle
    points = {force.point for force in shown.forces if force.body == whole.id}
    assert (*points,) == whole.outline
    _, bars = joined(system_of("stepladder-tie"), BOTH)
    assert not bars.particle
    assert bars.outline == ("A", "O", "B", "O")


def test_bodies_and_the_forces_on_them_are_in_the_order_they_are_told() -> None:
    system = system_of("stepladder-tie")
    whole, right = whole_of(system, BOTH), system.body("right")
    shown = with_wholes(system, [whole, right])
    assert [body.id for body in shown.bodies] == ["left+right", "right", "left"]
    order = list(dict.fromkeys(force.body for force in shown.forces))
    assert order == ["right", "left", "left+right"]
    assert told_before(shown, right) == (whole,)
    assert told_before(system, right) == ()  # where nothing is taken as one


def test_a_balance_of_one_body_is_of_that_body() -> None:
    system = system_of("stepladder-tie")
    assert whole_of(system, ("left",)) == system.body("left")
    assert made_of(Body("left", ("A", "O"))) == ("left",)
    assert made_of(whole_of(system, BOTH)) == BOTH
