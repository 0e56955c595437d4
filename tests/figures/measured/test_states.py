"""States that share their points stand clear of each other; what is joined stays together."""

from __future__ import annotations

import pytest

from probgen.figures.measured.states import joined_bodies, set_apart
from probgen.figures.measured.survey import Survey, spans, survey
from probgen.figures.paper.scene import Box, box_around
from probgen.problem.single import work_single
from probgen.statics.numeric_equations import coordinates
from tests.beam_states import TWO_STATES
from tests.situations import STAYED_SHELF, THREE_HINGES, TWO_BEAMS, worked


def measured(text: str) -> Survey:
    template, own = worked(text)
    known = {id: own.case.values[id] for id in (*own.draw.values, "g")}
    return survey(own.case.system, template.template.labels, known)


def box_of(apart: Survey, body: str) -> Box:
    return box_around(apart.outline(apart.system.body(body)))


def test_bodies_are_joined_by_the_forces_between_them() -> None:
    assert joined_bodies(measured(THREE_HINGES).system) == [("left", "right")]
    assert joined_bodies(measured(TWO_STATES).system) == [("first",), ("second",)]


@pytest.mark.parametrize("text", [STAYED_SHELF, TWO_BEAMS, THREE_HINGES])
def test_what_is_in_one_state_stays_where_it_is(text: str) -> None:
    before = measured(text)
    assert set_apart(before) is before


@pytest.mark.parametrize("template", ["billboard-truss-wind", "stand-roof-inside"])
def test_the_parts_a_body_is_taken_into_are_no_states(template: str) -> None:
    single = work_single(template, 1)
    case = single.worked.case
    before = survey(case.system, single.problem.template.labels, case.values)
    assert set_apart(before) is before


def test_a_second_state_is_moved_whole_and_clear_of_the_first() -> None:
    before = measured(TWO_STATES)
    apart = set_apart(before)
    first, second = (box_of(apart, body) for body in ("first", "second"))
    assert first == box_of(before, "first")
    assert (second.width, second.height) == pytest.approx((first.width, first.height))
    assert first.gap(second) >= 0.5 * first.width
    assert apart.states == (("first",), ("second",))
    assert apart.letters == {"second:A": "A", "second:B": "B"}


def test_what_acts_on_it_moves_with_it() -> None:
    before = measured(TWO_STATES)
    apart = set_apart(before)
    step = apart.places["second:A"] - before.places["A"]
    for own, other in zip(before.system.elements, apart.system.elements, strict=True):
        moved = apart.places[other.at] - before.places[own.at]
        assert moved == pytest.approx(step if own.body == "second" else 0.0)
    for force in apart.system.forces:
        assert force.point.startswith("second:") == (force.body == "second")


def test_couples_move_with_their_body() -> None:
    motors = "".join(
        f'[[couple]]\nbody = "{body}"\nat = "B"\nmoment = "4 N*m"\nsymbol = "C_{number}"\n'
        for number, body in enumerate(("first", "second"))
    )
    apart = set_apart(measured(TWO_STATES + motors))
    assert {couple.point for couple in apart.system.couples if couple.body == "first"} == {"B"}
    ends = {couple.point for couple in apart.system.couples if couple.body == "second"}
    assert ends == {"second:A", "second:B"}


STEEP = TWO_STATES.replace('B = ["L", 0]', 'B = ["L", "2*L"]')


@pytest.mark.parametrize("states", [TWO_STATES, STEEP], ids=["below", "beside"])
def test_a_moved_point_lies_where_it_is_said_to(states: str) -> None:
    single, own = worked(states)
    apart = set_apart(survey(own.case.system, single.template.labels, own.case.values))
    for name, (x, y) in coordinates(apart.system, own.case.values).items():
        assert complex(float(x), float(y)) == pytest.approx(apart.places[name])


def test_a_length_both_have_is_told_at_the_first() -> None:
    before = measured(TWO_STATES)
    assert spans(set_apart(before)) == spans(before)
