"""What is said of marked answers, in words."""

from __future__ import annotations

from probgen.marking.told import facts_of
from tests.marking.test_judged import cords, hung, judge, weight


def told(id: str, **typed: str) -> str:
    problem, _ = hung()
    return " ".join(problem.tell(fact) for fact in facts_of(problem, judge(**typed)[id]))


def test_the_slip_and_the_step_are_named() -> None:
    mass = float(hung()[1].draw.values["m"].value)
    said = told("T", T=f"{mass / 2:.4f}")
    assert said.startswith("This number comes out with: masses used as weights, without g.")


def test_a_wrong_number_without_a_name_is_sent_to_its_step() -> None:
    first, _ = cords()
    said = told(first, **{first: f"{0.37 * weight():.2g}"})
    assert said.startswith("Compare with the key from here on: torque equation about")
    assert said.endswith("It has two significant figures; 3 are asked for.")


def test_what_follows_is_said_to_follow_and_right_is_left_alone() -> None:
    first, second = cords()
    wrong = 0.37 * weight()
    typed = {first: f"{wrong:.4g}", second: f"{weight() - float(f'{wrong:.4g}'):.4g}"}
    assert told(second, **typed) == "It follows from your own earlier answers."
    assert told(first, **{first: f"{weight() / 2:.4g}"}) == ""
    assert told(first, **{first: "1,234"}) == "It can be read in 2 ways."
