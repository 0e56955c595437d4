from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from probgen.bank.length import links_to_middle, part_of
from probgen.quantities.expression import Name, Product, evaluate, number
from probgen.quantities.parser import parse
from probgen.quantities.unit import UNITS
from probgen.statics.system import Link, Point

L = Name("L", "L")
SCOPE = {"L": L}


@pytest.mark.parametrize(
    ("text", "part", "expected"),
    [
        ("L", "1/2", "L/2"),
        ("L/4", "1/2", "L/8"),
        ("0.75*L", "1/3", "0.25*L"),
        ("2*L", "1/2", "L"),
        ("0.5*L", "1/3", "L/6"),
        ("L", "2/3", "2*L/3"),
        ("1.2 m", "1/2", "0.6 m"),
        ("1 m", "1/3", "1 m/3"),
        ("L - 1 m", "1/2", "(L - 1 m)/2"),
    ],
)
def test_the_numbers_of_a_part_are_taken_together(text: str, part: str, expected: str) -> None:
    assert part_of(parse(text, SCOPE), Fraction(part)) == parse(expected, SCOPE)


LENGTHS = st.sampled_from(["L", "L/3", "0.35*L", "3*L/4", "L + 1 m", "0.7 m", "2 cm"])


@given(LENGTHS, st.fractions(Fraction(1, 9), 1, max_denominator=9))
def test_a_part_has_its_share_of_the_value(text: str, part: Fraction) -> None:
    length = parse(text, SCOPE)
    found = evaluate(part_of(length, part), {"L": 2.3})
    assert found == pytest.approx(evaluate(length, {"L": 2.3}) * float(part))


def test_a_product_keeps_its_other_factors() -> None:
    length = Product((number("0.5"), number(3, UNITS["m"]), L))
    assert evaluate(part_of(length, Fraction(1, 2)), {"L": 2.0}) == pytest.approx(1.5)


def test_the_middle_is_half_of_the_way_on() -> None:
    start = Point("A", (Link(number(2, UNITS["m"]), number(90)),))
    end = Point("B", (*start.links, Link(L, number(0))))
    assert links_to_middle(start, end) == (*start.links, Link(parse("L/2", SCOPE), number(0)))
