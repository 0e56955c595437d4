"""Where half of a length stands, and where a slip puts the whole of it."""

from __future__ import annotations

import pytest

from probgen.mistakes.arms import _doubled
from probgen.quantities.expression import Name
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain

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
