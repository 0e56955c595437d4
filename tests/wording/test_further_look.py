"""What is looked back at where no balance of a single body is left.

By hand: of the knot x gives S cos 30 = T cos 45 and y S sin 30 + T sin 45 = 98.0 N, so
S = 98.0 N/(sin 30 + cos 30) = 71.74 N and T = 87.86 N; their parts along y are 35.87 N and 62.13 N.
Of the hanging knot T = 98.0 N/cos 30 = 113.16 N and P = T sin 30 = 56.58 N; along the cord W has
98.0 N cos 30 = 84.87 N and P 56.58 N sin 30 = 28.29 N.  Two weights of 98.0 N and 49.0 N, one below
the other, pull with 147.0 N.
"""

from __future__ import annotations

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.problem import draw_class, prepare, work
from probgen.wording.facts.ending import BodyCheckHeading, CheckHeading, OtherLimitKept
from probgen.wording.key import tell
from probgen.wording.passage import Passage
from probgen.working.convention import Convention
from tests.situations import HEAD, worked
from tests.wording.shown import lines

GIVEN = """
[given]
m = { name = "mass", choices = [10.0], unit = "kg" }
"""
KNOT = """
[body.knot]
particle = true
[[weight]]
mass = "m"
symbol = "W"
"""
TWO_CORDS = (
    HEAD
    + GIVEN
    + KNOT
    + """
[[cable]]
direction = 30
symbol = "S"
[[cable]]
direction = 135
symbol = "T"
[[find]]
quantity = "S"
[[find]]
quantity = "T"
"""
)
LEANING = (
    HEAD
    + GIVEN
    + """
a = { name = "lean", choices = [30], unit = "deg" }
"""
    + KNOT
    + """
[[cable]]
direction = "90 + a"
symbol = "T"
[unknown]
P = { name = "push", unit = "N" }
[[force]]
magnitude = "P"
direction = 0
name = "hand"
[[find]]
quantity = "P"
[[find]]
quantity = "T"
"""
)


def last_passages(text: str, convention: Convention | None = None) -> list[list[str]]:
    problem, own = worked(text, convention)
    return looked_back(tell(own.digits, problem.unused))


def looked_back(told: tuple[Passage, ...]) -> list[list[str]]:
    headings = (CheckHeading, BodyCheckHeading)
    return [lines(each) for each in told if isinstance(each.heading, headings)]


def of_bank(name: str, convention: Convention | None = None) -> list[list[str]]:
    """The last look of a supplied template's first draw."""
    return looked_back(told_of(name, convention))


def told_of(name: str, convention: Convention | None = None) -> tuple[Passage, ...]:
    problem = prepare(default_bank().read(name), convention or Convention())
    (own,) = work(problem, draw_class(problem, "look", ["ada"]).draws)
    return tell(own.digits, problem.unused)


def test_results_are_put_back_into_equations_solved_together() -> None:
    assert last_passages(TWO_CORDS) == [
        [
            "CheckHeading()",
            "PutBackForces(y)",
            "ΣF_y = S sin 30° + T sin 45° − W",
            "= 35.9 N + 62.1 N − 98.0 N",
            "= 0 N",
        ]
    ]


def test_what_the_equations_give_besides_is_told_first() -> None:
    """The normal force and friction of a deckhand, whose pull alone was asked."""
    (said,) = of_bank("ferry-bollard")
    assert said[1] == "GivenBesides(N f)"
    assert said[2].startswith("N = ")
    assert said[4].startswith("f = ")
    assert said[6] == "PutBackForces(x)"


def test_it_lets_torques_about_another_point_be_looked_at() -> None:
    (said,) = of_bank("ladder-least-angle")
    assert said[1] == "GivenBesides(f_f)"
    assert "UnusedPivot(G, torque)" in said


def test_what_was_told_of_one_body_is_not_told_of_the_next() -> None:
    left, right = of_bank("ridge-two-pallets")
    assert left[1] == "GivenBesides(T f_1)"
    assert right[1] == "GivenBesides(f_2)"


@pytest.mark.parametrize(
    ("name", "fact", "balance"),
    [
        ("spring-scales-baskets", "UnusedWhole(upper lower, y)", "ΣF_y = F_1 − W_1 − W_2"),
        ("box-pulled-from-under", "UnusedWhole(chest box, x)", "ΣF_x = −f_2 − T + P"),
    ],
)
def test_bodies_that_act_on_each_other_are_taken_as_one(name: str, fact: str, balance: str) -> None:
    ((heading, opening, first, *_),) = of_bank(name)
    assert (heading, opening, first) == ("CheckHeading()", fact, balance)


def test_bodies_apart_are_not() -> None:
    """Two sleds: nothing acts between them."""
    assert [each[0] for each in of_bank("sled-push-or-pull")] == [
        "BodyCheckHeading(pulled)",
        "BodyCheckHeading(pushed)",
    ]


def test_forces_along_the_line_of_one_that_was_found() -> None:
    assert last_passages(LEANING) == [
        [
            "CheckHeading()",
            "UnusedLine(∥, T, Way(None, True, False))",
            "ΣF_∥ = T − W cos a − P sin a",
            "= 113 N − 85 N − 28 N",
            "= 0 N",
        ]
    ]


def test_not_by_an_angle_that_is_only_a_number() -> None:
    assert last_passages(LEANING.replace('"90 + a"', "120")) == []


def test_not_in_a_course_that_keeps_to_x_and_y() -> None:
    assert last_passages(LEANING, Convention(axes="level")) == []


def test_where_a_limit_comes_first_the_other_is_looked_at() -> None:
    last = told_of("feeder-cord-strength")[-1]
    assert last.heading == CheckHeading()
    (said,) = (fact for part in last.parts for fact in part.facts)  # type: ignore[union-attr]
    assert isinstance(said, OtherLimitKept)
    assert said.most
    assert said.needed.value < said.allowed.value
