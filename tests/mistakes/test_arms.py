"""Loads measured from the wrong end; parts with shapes."""

from __future__ import annotations

from math import pi

import pytest

from probgen.mistakes.variant import wrong_values
from tests.mistakes.supplied import OWN, problem, works
from tests.mistakes.test_templates import Data, Formula
from tests.situations import STAYED_SHELF, worked
from tests.wording.shown import shown


def test_a_load_is_measured_from_the_wrong_end_and_no_other_force_is() -> None:
    """A load of 78.4 N at d = 0.96 m of 1.20 m, put at 0.24 m; the cable's end stays at B.

    T 1.20 m sin 40 = 39.2 N x 0.60 m + 78.4 N x 0.24 m = 42.34 N m, so T = 54.89 N.
    """
    text = STAYED_SHELF.replace('at = "B"\nmass = "M"', 'at = "C"\nmass = "M"')
    cable = 'at = "{}"\ndirection = "180 - theta"'
    text = text.replace(cable.format("C"), cable.format("B"))
    own, one = worked(text)
    made = [m for missteps in own.missteps for m in missteps if m.slip == "wrong_end"]
    assert {str(m.parts["W"].symbol) for m in made} == {"W_t"}  # type: ignore[union-attr]
    data = {id: one.case.values[id] for id in one.case.numbers}
    found = [float(wrong_values(each, data)["T"]) for each in made]
    assert found == [pytest.approx(54.89, abs=0.01)] * len(found)


def test_nobody_takes_what_is_sought_for_a_load() -> None:
    """The cable's distance is told too, but its pull is sought; both loads' places tell nothing."""
    own, _ = worked(STAYED_SHELF)
    assert not any(m.slip == "wrong_end" for missteps in own.missteps for m in missteps)


# Couples, plates and wires; each wrong number by a formula of its own, with the draw's data.

BOARD, RAIL = "ferry-board-hole", "towel-rail-bent"


def centre(d: Data, *, hole: float = -1.0, out: float = 4 / (3 * pi), disc: float = 0.5) -> float:
    """x_G of the board from the side that its parts share.

    hole: what the hole counts with; out: of its half disc, of the radius; disc: how much of a
    disc that is.
    """
    radius = d.height / 2
    parts = [
        (d.board * d.height, -d.board / 2),
        (disc * pi * radius**2, out * radius),
        (hole * pi * d.hole**2, d.across - d.board),
    ]
    return sum(size * at for size, at in parts) / sum(size for size, _ in parts)


def bow(d: Data, out: float) -> float:
    """x_G of the rail, its bow's centroid so many radii from the bow's ends."""
    parts = [(d.upright, 0.0), (d.level, d.level / 2), (pi * d.bow, d.level + out * d.bow)]
    return sum(size * at for size, at in parts) / sum(size for size, _ in parts)


MOTOR = "motor-torque-base"


def right_foot(d: Data, couple: float) -> float:
    """N_B of the motor's plate, its couple counted so many times; minus once is right."""
    return (d.mass * d.g * d.motor_at + couple * d.couple) / d.length


SHAPED: list[tuple[str, str, str, str, Formula]] = [
    (MOTOR, "couple_turned", "", "N_B", lambda d: right_foot(d, 1.0)),
    (MOTOR, "couple_left_out", "", "N_B", lambda d: right_foot(d, 0.0)),
    (BOARD, "hole_added", "", "x_G", lambda d: centre(d, hole=1.0)),
    (BOARD, "hole_forgotten", "", "x_G", lambda d: centre(d, hole=0.0)),
    (BOARD, "centroid_halfway", "", "x_G", lambda d: centre(d, out=0.5)),
    (BOARD, "shape_not_halved", "round", "x_G", lambda d: centre(d, disc=1.0)),
    (RAIL, "centroid_halfway", "", "x_G", lambda d: bow(d, 0.5)),
    (
        RAIL,
        "unweighted_mean",
        "weights",
        "x_G",
        lambda d: (d.level / 2 + d.level + 2 / pi * d.bow) / 3,
    ),
]


@pytest.mark.parametrize(("name", "slip", "way", "answer", "formula"), SHAPED)
def test_a_slip_gives_what_its_formula_gives(
    name: str, slip: str, way: str, answer: str, formula: Formula
) -> None:
    made = [m for own in problem(name).missteps for m in own if (m.slip, m.way) == (slip, way)]
    assert made
    for own in works(name):
        data = {id: own.case.values[id] for id in own.case.numbers}
        found = [float(wrong_values(each, data)[answer]) for each in made]
        assert pytest.approx(formula(Data(data)), rel=1e-9) in found


def test_the_motor_s_right_force_is_that_of_the_same_formula() -> None:
    for own in works(MOTOR):
        right = right_foot(Data(own.case.values), -1.0)
        assert own.case.values["N_B"] == pytest.approx(right, rel=1e-9)


def test_the_right_centres_are_those_of_the_same_formulas() -> None:
    for name, right in ((BOARD, centre), (RAIL, lambda d: bow(d, 2 / pi))):
        for own in works(name):
            assert own.case.values["x_G"] == pytest.approx(right(Data(own.case.values)), rel=1e-9)


def test_a_plain_mean_is_no_slip_where_something_is_cut_out() -> None:
    made = {(each.slip, each.way) for own in problem(BOARD).missteps for each in own}
    assert ("unweighted_mean", "weights") not in made


@pytest.mark.parametrize("name", ["gable-board-ropes", RAIL])
def test_a_plain_mean_is_one_of_two_or_more_places(name: str) -> None:
    made = {(each.slip, each.way) for own in problem(name).missteps for each in own}
    assert ("unweighted_mean", "weights") in made


GROWING = [("w_0*(1 - (x/span)^2)", 1 / 3), ("w_0*(x/span)^2", 2 / 3)]


@pytest.mark.parametrize(("load", "part"), GROWING, ids=["from its largest", "from nothing"])
def test_a_triangle_is_thickest_where_the_load_is(load: str, part: float) -> None:
    source = OWN["wing-wind-tunnel"].read_text(encoding="utf-8").replace(GROWING[0][0], load)
    own, one = worked(source)
    data = {id: one.case.values[id] for id in one.case.numbers}
    made = [m for missteps in own.missteps for m in missteps if m.slip == "load_as_triangle"]
    found = [float(wrong_values(each, data)["M_A"]) for each in made]
    d = Data(one.case.values)
    lift = d.w_0 * d.span / 2
    wrong = d.engine * d.g * d.engine_at - lift * part * d.span
    assert found == [pytest.approx(wrong, rel=1e-9)] * len(found)
    assert found


def test_two_feet_of_a_stepladder_are_taken_to_bear_half_of_all_weights_each() -> None:
    """Two bodies taken as one; its own weight at the foot torques are taken about is left out."""
    (made,) = problem("stepladder-tie").missteps
    found = {misstep.slip: misstep for misstep in made}
    assert shown(found["equal_sharing"].parts["N"]) == "N_1 N_2"
    assert shown(found["equal_sharing"].parts["W"]) == "W_s + W_d"
    assert "own_weight_forgotten" in found
    assert "whole_length_for_weight" not in found
