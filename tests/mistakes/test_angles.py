"""Slips with angles, on small situations worked by hand.

The boom: 98.0 N at its end, tilted by 30°, held there by a cable 20° above the horizontal:
T sin(20° + 30°) = 98.0 N cos 30°, T = 110.8 N.  Who takes the 20° from the boom, or the boom's 30°
away from it, finds 98.0 N cos 30°/sin 80° = 86.18 N or 98.0 N cos 30°/sin 20° = 248.1 N.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from probgen.mistakes.variant import Misstep, wrong_values
from probgen.quantities.expression import Name
from probgen.working.convention import Convention
from tests.situations import FIND_T, HEAD, HINGED, SHELF, STAYED, worked

BOOM = (
    HEAD
    + """
[given]
L = { name = "length", choices = [2.00], unit = "m" }
m = { name = "mass", choices = [10.0], unit = "kg" }
theta = { name = "tilt", choices = [30], unit = "deg" }
phi = { name = "cable angle", choices = [20], unit = "deg" }
[points]
A = [0, 0]
B = { from = "A", distance = "L", direction = "theta" }
[body.boom]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[cable]]
at = "B"
direction = "180 - phi"
symbol = "T"
[[weight]]
at = "B"
mass = "m"
symbol = "W"
[[find]]
quantity = "T"
"""
)


EXTRA = '[[weight]]\nat = "B"\nmass = "m"\nsymbol = "W_2"\n'


def made(
    text: str, slip: str, convention: Convention | None = None
) -> tuple[list[Misstep], dict[str, float]]:
    """The ways of a slip in a situation, and the values it starts from."""
    problem, own = worked(text, convention)
    data = {id: own.case.values[id] for id in own.case.numbers}
    every = [each for missteps in problem.missteps for each in missteps]
    return [each for each in every if each.slip == slip], data


def test_the_boom_is_worked_right() -> None:
    _, own = worked(BOOM)
    assert own.case.values["T"] == pytest.approx(110.79, abs=0.01)


def test_an_angle_of_contact_is_measured_from_no_line() -> None:
    (path,) = Path(__file__).parents[2].glob("templates/friction/band-brake-hoist.toml")
    problem, _ = worked(path.read_text(encoding="utf-8"))
    assert problem.template.givens[-2].unit.name == "deg"
    slips = {each.slip for missteps in problem.missteps for each in missteps}
    assert "mass_as_weight" in slips
    assert "wrong_reference_line" not in slips


def test_an_angle_taken_from_a_tilted_body() -> None:
    missteps, data = made(BOOM, "wrong_reference_line")
    tilted = [each for each in missteps if each.way == "tilt"]
    found = sorted(float(wrong_values(each, data)["T"]) for each in tilted)
    assert found == pytest.approx([86.18, 248.14], abs=0.01)


def test_a_level_shelf_has_no_tilt_to_confuse() -> None:
    missteps, _ = made(SHELF + HINGED + STAYED + FIND_T, "wrong_reference_line")
    assert {each.way for each in missteps} == {"vertical"}


@pytest.mark.parametrize(
    ("text", "ways"),
    [
        (SHELF + HINGED + STAYED + FIND_T, {"torque", "one"}),  # T alone is oblique
        (BOOM, {"torque", "one", "all"}),  # T and W are
    ],
)
def test_all_forces_are_mistaken_only_where_there_are_several(text: str, ways: set[str]) -> None:
    assert {each.way for each in made(text, "sin_cos_swap")[0]} == ways


@pytest.mark.parametrize("direction", ['"180 - phi"', "160", "-200"])
def test_who_writes_components_exchanges_those_of_the_force(direction: str) -> None:
    """T_x = -T sin 20 deg and T_y = T cos 20 deg at the boom's end: T cos(20 deg - 30 deg)."""
    boom = BOOM.replace('"180 - phi"', direction)
    components = Convention(torque="components", axes="level")
    missteps, data = made(boom, "sin_cos_swap", components)
    (pull,) = (each for each in missteps if each.way == "torque" and "T" in str(each.parts))
    assert float(wrong_values(pull, data)["T"]) == pytest.approx(86.18, abs=0.01)
    assert not made(boom, "no_angle", components)[0]


def test_a_weight_on_a_tilted_boom_is_exchanged_with_where_it_acts() -> None:
    """x = L sin 30 deg in place of L cos 30 deg: T sin 50 deg = 98.0 N sin 30 deg."""
    missteps, data = made(BOOM, "sin_cos_swap", Convention(torque="components", axes="level"))
    (load,) = (each for each in missteps if each.way == "torque" and "W" in str(each.parts))
    assert float(wrong_values(load, data)["T"]) == pytest.approx(63.97, abs=0.01)


def test_throughout_is_every_sine_and_cosine_that_is_written() -> None:
    """With components T turns the boom with T L (cos 30 sin 20 + sin 30 cos 20): exchanged, the
    same; the load with 98.0 N L sin 30.  So T sin 50 deg = 98.0 N sin 30 deg, and not 49.8 N, to
    which the components of T alone and the place of the load alone lead.
    """
    missteps, data = made(BOOM, "sin_cos_swap", Convention(torque="components", axes="level"))
    (every,) = (each for each in missteps if each.way == "all")
    assert float(wrong_values(every, data)["T"]) == pytest.approx(63.97, abs=0.01)


def test_where_not_all_can_be_exchanged_nothing_is_throughout() -> None:
    """The cable's direction as the boom's and another: sine and cosine of a sum of two angles."""
    boom = BOOM.replace('"180 - phi"', '"180 + theta - phi"')
    missteps, _ = made(boom, "sin_cos_swap", Convention(torque="components", axes="level"))
    assert missteps
    assert "all" not in {each.way for each in missteps}


def test_one_distance_is_named_by_its_ends() -> None:
    boom = BOOM.replace('"180 - phi"', '"180 + theta - phi"')
    (alone,) = made(boom, "distance_not_perpendicular")[0]
    assert alone.way == "one"
    assert [alone.parts[end] for end in "AP"] == [Name("A", "A"), Name("B", "B")]
    (several,) = made(boom + EXTRA, "distance_not_perpendicular")[0]
    assert several.way == ""
