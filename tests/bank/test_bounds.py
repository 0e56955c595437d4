import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from probgen.bank.bounds import bounds, sign_of
from probgen.quantities.expression import Lump, Name, evaluate
from probgen.quantities.parser import parse

KNOWN = {"a": (1.0, 2.0), "b": (3.0, 5.0), "c": (-1.0, 4.0), "theta": (20.0, 70.0)}
SCOPE = {id: Name(id, id) for id in (*KNOWN, "free")}
EXPRESSIONS = [
    "a + b - c",
    "a*b*c",
    "b/a",
    "c/b",
    "a - b/2",
    "-c*2",
    "c^2",
    "a*sin(theta) - b*cos(theta)",
    "12 cm + a",
]


@pytest.mark.parametrize("text", EXPRESSIONS)
@given(st.tuples(*(st.floats(0, 1) for _ in KNOWN)))
def test_every_value_lies_between_the_bounds(text: str, shares: tuple[float, ...]) -> None:
    tree = parse(text, SCOPE)
    values = {
        id: low + share * (high - low)
        for (id, (low, high)), share in zip(KNOWN.items(), shares, strict=True)
    }
    low, high = bounds(tree, KNOWN)
    assert low - 1e-9 <= evaluate(tree, values) <= high + 1e-9


@pytest.mark.parametrize(
    ("text", "sign"),
    [
        ("b - a", 1),
        ("a - b", -1),
        ("b - a - c", 0),
        ("a", 1),
        ("-a/b", -1),
        ("a/c", 0),
        ("a + free", 0),
        ("0*free", 1),
        ("2 m", 1),
        ("sin(theta)", 0),
        ("a^-1", 0),
        ("sqrt(c)", 0),
    ],
)
def test_a_sign_is_told_only_where_it_is_sure(text: str, sign: int) -> None:
    assert sign_of(parse(text, SCOPE), KNOWN) == sign
    assert sign_of(Lump(parse(text, SCOPE)), KNOWN) == sign


def test_nothing_known_is_unbounded() -> None:
    assert bounds(SCOPE["free"], {}) == (-math.inf, math.inf)
