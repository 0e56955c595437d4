"""How an equation with something put in became the one below it, by values alone."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import Expression, Name, Quotient
from probgen.quantities.multiplier import Multiplied, multiplied
from probgen.quantities.parser import parse

X_COS = "x*cos(t)*(cos(t) + m*sin(t))/(sin(t) - m*cos(t)) + x*sin(t) - w"


def read(text: str) -> Expression:
    return parse(text, {letter: Name(letter, letter) for letter in "xwstm"})


@pytest.mark.parametrize(
    ("before", "after", "factor", "angle"),
    [
        ("x*cos(t) - w", "x*cos(t) - w", "1", None),
        ("x*cos(t) - w", "w - x*cos(t)", "1", None),
        ("x*cos(s)*cos(t)/sin(t) - w", "x*cos(s)*cos(t) - w*sin(t)", "sin(t)", None),
        ("x*cos(t)*sin(s)/cos(s) - w", "x*cos(t)*tan(s) - w", "1", None),
        ("x*sin(t)*sin(t) + x*cos(t)*cos(t) - w", "x - w", "1", "t"),
        (X_COS, "x - w*(sin(t) - m*cos(t))", "sin(t) - m*cos(t)", "t"),
    ],
)
def test_what_was_done_to_an_equation(
    before: str, after: str, factor: str, angle: str | None
) -> None:
    tried = (read("sin(t)"), read("sin(t) - m*cos(t)"))
    done = Multiplied(read(factor), read(angle) if angle else None)
    assert multiplied(read(before), read(after), tried) == done


def test_what_none_of_the_factors_gives_is_not_told() -> None:
    fraction = read("x/cos(t) - w")
    assert isinstance(read("x/cos(t)"), Quotient)
    assert multiplied(fraction, read("x - w*cos(t)"), (read("sin(t)"),)) is None
