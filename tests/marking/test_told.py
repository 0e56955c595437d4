"""What is said of marked answers, in words."""

from __future__ import annotations

from probgen.marking.told import facts_of, likeness
from tests.marking.test_judged import cords, hung, judge, weight


def told(id: str, **typed: str) -> str:
    problem, _ = hung()
    return " ".join(problem.tell(fact) for fact in facts_of(problem, judge(**typed)[id]))


def test_the_slip_and_the_step_are_named() -> None:
    mass = float(hung()[1].draw.values["m"].value)
    said = told("T", T=f"{mass / 2:.4f}")
    assert said.startswith("This number comes out with: the mass used as a weight, without g.")


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


def test_what_is_alike_is_told_alike_and_nothing_else() -> None:
    """Of T: slips, a wrong number, one that follows, what cannot be read or be answered at all."""
    first, second = cords()
    mass, wrong = float(hung()[1].draw.values["m"].value), 0.37 * weight()
    sheets: list[dict[str, str]] = [
        {"T": text} for text in (f"{mass / 2:.4f}", f"{mass / 2:.2g}", "1,234", "110 lb", "?", "")
    ]
    sheets += [{first: f"{wrong:.{figures}g}"} for figures in (2, 3, 4)]
    sheets += [{first: f"{wrong:.4g}", second: f"{weight() - float(f'{wrong:.4g}'):.4g}"}]
    texts: dict[object, set[str]] = {}
    for typed in sheets:
        for id, own in judge(**typed).items():
            texts.setdefault(likeness(own), set()).add(told(id, **typed))
    assert all(len(said) == 1 for said in texts.values())
    assert len(texts) >= 6
