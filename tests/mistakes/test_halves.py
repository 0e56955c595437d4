"""Where half of a length stands, and where a slip puts the whole of it."""

from __future__ import annotations

import pytest

from probgen.mistakes.halves import _doubled
from probgen.mistakes.variant import wrong_values
from probgen.quantities.expression import Name
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain
from tests.mistakes.supplied import problem, works

SCOPE = {letter: Name(letter, letter) for letter in ("b", "h", "t")}

# An expression, and the same of somebody who takes b for b/2.
DOUBLED = [
    ("b/2", "b"),
    ("h + b/2", "h + b"),
    ("0.5*b", "b"),
    ("b/(2*h)", "b/h"),
    ("b/(2*h*t)", "b/(h t)"),
    ("atan(b/(2*h))", "arctan(b/h)"),
    # No half of it stands here.
    ("b/3", "b/3"),
    ("b/(3*h)", "b/(3 h)"),
    ("0.6*b", "0.6 b"),
    ("h/2", "h/2"),
    ("b", "b"),
]


@pytest.mark.parametrize(("text", "whole"), DOUBLED)
def test_the_whole_length_stands_where_half_of_it_belongs(text: str, whole: str) -> None:
    assert plain(_doubled(parse(text, SCOPE), (SCOPE["b"],))) == whole


def test_the_halves_of_one_arm_are_forgotten_together() -> None:
    """A cabinet's weight half its length and half its height away: 2 F_2 with both taken whole."""
    cabinet = problem("box-carried-upstairs")
    made = [m for own in cabinet.missteps for m in own if m.slip == "half_forgotten"]
    assert [(m.way, m.parts["b"]) for m in made] == [
        ("arm-both", (Name("length", "L"), Name("height", "h")))
    ]
    for own in works("box-carried-upstairs"):
        data = {id: own.case.values[id] for id in own.case.numbers}
        found = float(wrong_values(made[0], data)["F_2"])
        assert found == pytest.approx(2.0 * own.case.values["F_2"])


def test_halves_in_arms_of_their_own_are_forgotten_one_at_a_time() -> None:
    """A floor's weight at L/2, a tub's half of its length c beyond its edge."""
    made = [m for own in problem("joist-bathtub").missteps for m in own]
    halved = [m.parts["b"] for m in made if m.slip == "half_forgotten" and m.way == "arm"]
    assert len(halved) == 2
    assert all(isinstance(each, tuple) and len(each) == 1 for each in halved)
