"""Where half of a length stands, and where a slip puts the whole of it."""

from __future__ import annotations

import pytest

from probgen.mistakes.arms import _doubled
from probgen.mistakes.variant import wrong_values
from probgen.quantities.expression import Name
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain
from tests.situations import STAYED_SHELF, worked

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
    assert plain(_doubled(parse(text, SCOPE), SCOPE["b"])) == whole


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
