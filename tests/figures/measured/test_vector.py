"""Solved forces as they are drawn: size, way, length of the arrow, marks of a pair."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.bank.bank import default_bank
from probgen.figures.measured.survey import survey
from probgen.figures.measured.vector import (
    LEAST_LEG,
    ArrowScale,
    Vector,
    components,
    pair_marks,
    resultant,
    vectors,
)
from probgen.problem.problem import draw_class, prepare, work
from probgen.quantities.printing import plain
from probgen.statics.system import Kind
from probgen.working.convention import Convention
from tests.figures.sketches import BEAM, HINGED, STACK, TACKLE, read, surveyed

TEXT = HINGED.replace("WAY", "120")


def found(**solved: float) -> dict[str, Vector]:
    template, values, _ = read(TEXT)
    names = {"R_x": "R.x", "R_y": "R.y"}
    known = {**values, "W": 117.6, **{names.get(id, id): value for id, value in solved.items()}}
    acting = vectors(surveyed(template, known), template.system.bodies[0])
    return {each.id: each for each in acting}


def test_a_negative_value_is_drawn_as_assumed_and_known_to_be_so() -> None:
    there, back = found(T=50.0, R_x=10.0, R_y=20.0), found(T=50.0, R_x=-10.0, R_y=20.0)
    assert there["R.x"].direction == back["R.x"].direction == 0.0
    assert there["R.x"].size == back["R.x"].size == 10.0
    assert (there["R.x"].sign, back["R.x"].sign) == (1, -1)
    assert there["T"].direction == pytest.approx(120.0)
    assert there["T"].at == 3 + 0j


def test_a_force_that_vanishes_is_drawn_as_the_text_names_it() -> None:
    assert found(T=50.0, R_x=0.0, R_y=20.0)["R.x"].sign == 0


def test_a_force_without_a_value_is_middling() -> None:
    vector = found(T=50.0, R_y=20.0)["R.x"]
    assert vector.size == pytest.approx(0.3 * 117.6)
    assert vector.sign == 0


def test_the_whole_of_a_hinge_s_force_by_pythagoras() -> None:
    template, _, _ = read(TEXT)
    solved = found(T=50.0, R_x=30.0, R_y=40.0)
    whole = resultant(template.labels.whole("R"), [solved["R.x"], solved["R.y"]])
    assert whole.size == pytest.approx(50.0)
    assert whole.direction == pytest.approx(53.1301, abs=1e-4)  # atan(4/3)
    assert whole.symbol == "R"


@pytest.mark.parametrize(
    ("direction", "x", "y"),
    [(30.0, 0.0, 90.0), (150.0, 180.0, 90.0), (210.0, 180.0, 270.0), (330.0, 0.0, 270.0)],
)
def test_components_of_a_slanting_force_point_along_its_axes(
    direction: float, x: float, y: float
) -> None:
    """100 N at 30 degrees to the level: 86.603 N and 50 N."""
    template, _, _ = read(HINGED.replace("WAY", f"{direction:.0f}"))
    force = template.system.force("T")
    whole = Vector("T", "T", 3 + 0j, 100.0, direction, "T")
    across, upward = components(whole, force)
    assert (across.id, upward.id) == ("T.x", "T.y")
    assert (across.size, upward.size) == pytest.approx((86.6025, 50.0), abs=1e-3)
    assert (across.direction, upward.direction) == (x, y)
    assert across.at == upward.at == whole.at
    assert plain(across.label) == "T cos 30°"
    assert plain(upward.label) == "T sin 30°"  # without the sign, which the arrow shows


@pytest.mark.parametrize(
    ("direction", "slants"),
    [(0.0, False), (90.0, False), (180.4, False), (269.6, False), (0.6, True), (45.0, True),
     (89.4, True), (359.6, False)],
)  # fmt: skip
def test_what_points_along_neither_axis_slants(direction: float, slants: bool) -> None:
    assert Vector("F", "F", 0j, 1.0, direction, "F").slants is slants


def test_a_force_is_called_by_its_letter_or_by_what_it_is_computed_from() -> None:
    assert plain(Vector("F", "F_1", 0j, 1.0, 0.0, "F").label) == "F_1"
    named = found(T=50.0, R_x=1.0, R_y=1.0)
    assert {id: vector.symbol for id, vector in named.items()} == {
        "R.x": "R_x", "R.y": "R_y", "T": "T", "W": "W",
    }  # fmt: skip


def test_each_pair_has_a_number_of_its_own_and_components_count_together() -> None:
    pairs = read(
        STACK
        + """
[[hinge]]
body = "books"
other = "box"
symbol = "Q"
"""
    )[0].system
    marks = pair_marks(pairs)
    numbers = {force.id: marks[force.id] for force in pairs.forces if force.pair}
    assert numbers["Q.x"] == numbers["Q.y"] != numbers["N_1"]
    assert sorted(set(numbers.values())) == [1, 2]
    assert all(marks[force.pair] == marks[force.id] for force in pairs.forces if force.pair)


def test_the_pulls_of_a_strap_at_its_two_ends_are_no_action_and_reaction() -> None:
    system = default_bank().read("stepladder-tie").system
    assert {force.element[0] for force in system.forces if force.pair} == {"R", "T"}
    assert {system.force(id).element[0] for id in pair_marks(system)} == {"R"}


def test_only_the_pulls_of_bars_have_to_leave_their_points() -> None:
    template = default_bank().read("stand-roof-cantilever")
    problem = prepare(template, Convention())
    [own] = work(problem, draw_class(problem, "bars", ["0"]).draws)
    system = own.case.system
    measured = survey(system, template.labels, own.complete)
    found = [vector for body in system.bodies for vector in vectors(measured, body)]
    bars = {vector.id for vector in found if vector.leaves}
    assert bars == {force.id for force in system.forces if force.kind is Kind.MEMBER}
    assert 0 < len(bars) < len(found)


def sized(*sizes: float, direction: float = 0.0) -> list[Vector]:
    return [Vector("F", "F", 0j, size, direction, "F") for size in sizes]


def drawn(lengths: ArrowScale, *sizes: float) -> list[float]:
    """How long the arrows of forces of these sizes are."""
    return [lengths.length(vector) for vector in sized(*sizes)]


def test_lengths_are_in_proportion_where_the_least_can_be_seen() -> None:
    lengths = ArrowScale.of(sized(30.0, 60.0, 100.0))
    assert lengths.linear
    small, large = drawn(lengths, 30.0, 100.0)
    assert small == pytest.approx(0.3 * large)


def test_the_least_arrow_to_scale_is_fourteen_points_long_beside_58() -> None:
    assert ArrowScale.of(sized(14.1, 58.0)).linear
    assert not ArrowScale.of(sized(13.9, 58.0)).linear
    assert drawn(ArrowScale.of(sized(58.0)), 58.0) == [pytest.approx(58.0)]
    lost = [*sized(58.0), replace(sized(30.0)[0], sign=0)]  # one that nobody knows
    assert not ArrowScale.of(lost).linear
    assert ArrowScale.of([]).largest == 1.0
    uneven = ArrowScale(100.0, False)
    assert drawn(uneven, 0.0, 100.0) == [18.0, 58.0]


def test_else_they_rise_with_the_square_root() -> None:
    lengths = ArrowScale.of(sized(5.0, 100.0))
    assert not lengths.linear
    none, quarter, whole = drawn(lengths, 0.0, 25.0, 100.0)
    assert none < quarter < whole
    assert quarter - none == pytest.approx((whole - none) / 2)


@pytest.mark.parametrize(
    ("size", "direction", "linear"),
    [
        (100.0, 30.0, True),  # its smaller component is 29 pt
        (40.0, 30.0, False),  # 12 pt to scale
        (100.0, 12.0, False),
        (5.0, 160.0, False),
    ],
)
def test_a_force_is_as_long_as_its_components_need_to_be_seen(
    size: float, direction: float, linear: bool
) -> None:
    (whole,) = sized(size, direction=direction)
    for share in (1.0, 0.8):
        lengths = ArrowScale.of([whole, *sized(100.0)], [whole], share)
        least = share * lengths.length(whole) * whole.least_share
        assert least >= LEAST_LEG - 1e-9
        assert lengths.linear is linear
    assert ArrowScale.of([whole, *sized(100.0)]).linear or size < 14.0


def test_no_arrow_is_drawn_out_for_a_component_next_to_nothing() -> None:
    (whole,) = sized(50.0, direction=4.0)
    lengths = ArrowScale.of([whole, *sized(100.0)], [whole])
    assert lengths.length(whole) < 58.0


def test_action_and_reaction_have_one_mark() -> None:
    system = read(STACK)[0].system
    marks = pair_marks(system)
    assert list(marks.values()) == [1, 1]
    (one, other) = marks
    assert system.force(one).pair == other
    assert pair_marks(read(BEAM)[0].system) == {}


def test_several_strands_of_a_rope_are_labelled_by_their_whole_pull() -> None:
    template, values, _ = read(TACKLE)
    measured = surveyed(template, {**values, "T": 50.0, "W_e": 100.0, "F": 150.0})
    drawn = {body.id: vectors(measured, body) for body in template.system.bodies}
    labels = {body: [plain(each.label) for each in own] for body, own in drawn.items()}
    assert labels == {"lower": ["2 T", "W_e"], "upper": ["3 T", "F"]}
