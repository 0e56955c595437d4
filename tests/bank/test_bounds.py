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
    "sin(theta)",
    "cos(theta)",
    "sin(3*theta)",
    "cos(2*theta + 90)",
    "tan(theta) + tan(theta - 90)",
    "a*tan(theta)",
    "b - sqrt(a + 2)",
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
        ("a^1", 1),
        ("sin(theta)", 1),
        ("sin(theta)*tan(theta - 90)", -1),
        ("sin(3*theta)", 0),
        ("tan(2*theta)", 0),
        ("a^-1", 0),
        ("sqrt(c)", 0),
        ("sqrt(a)", 1),
    ],
)
def test_a_sign_is_told_only_where_it_is_sure(text: str, sign: int) -> None:
    assert sign_of(parse(text, SCOPE), KNOWN) == sign
    assert sign_of(Lump(parse(text, SCOPE)), KNOWN) == sign


# Bounds by hand, of a in [1, 2], b in [3, 5], c in [-1, 4].
NARROW = [
    ("a + b - c", (0.0, 8.0)),
    ("a*b*c", (-10.0, 40.0)),
    ("b/a", (1.5, 5.0)),
    ("c/b", (-1 / 3, 4 / 3)),
    ("-c*2", (-8.0, 2.0)),
    ("c^2", (-4.0, 16.0)),  # as c times c
    ("sin(free)", (-1.0, 1.0)),
    ("2*sin(theta + 10)", (1.0, 2 * math.sin(math.radians(80)))),
    ("sin(2*theta)", (math.sin(math.radians(40)), 1.0)),
    ("cos(theta - 10)*b", (1.5, 5 * math.cos(math.radians(10)))),
    ("tan(theta - 25)", (-math.tan(math.radians(5)), 1.0)),
    ("tan(theta + 20)", (-math.inf, math.inf)),
    ("12 cm + a", (1.12, 2.12)),
    ("1/c", (-math.inf, math.inf)),
    ("1/(c + 1)", (-math.inf, math.inf)),
    ("1/(-b)", (-1 / 3, -1 / 5)),
    ("a^0", (-math.inf, math.inf)),
    ("a*free", (-math.inf, math.inf)),
    ("0*free", (0.0, 0.0)),
]


@pytest.mark.parametrize(("text", "expected"), NARROW)
def test_bounds_are_no_wider_than_they_must_be(text: str, expected: tuple[float, float]) -> None:
    assert bounds(parse(text, SCOPE), KNOWN) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    ("interval", "sign"),
    [((0.0, 0.0), 1), ((0.0, 1.0), 1), ((-1.0, 0.0), -1), ((-1.0, 1.0), 0), ((1.0, 2.0), 1)],
)
def test_zero_counts_as_not_negative(interval: tuple[float, float], sign: int) -> None:
    assert sign_of(SCOPE["a"], {"a": interval}) == sign


# Signs by hand, of the same: what all terms share is taken out before.
SHARED = [
    ("b - a*b/3", 1),  # b (1 - a/3)
    ("a/b - a*2", -1),
    ("(a - a*a/b)*b - a*a/2", 1),  # a ((1 - a/b) b - a/2), of 3 - 2 - 1 at least
    ("a*c/b - a", 0),  # c/b may be 4/3
    ("c*b - c", 0),
    ("b - a*b/3 - 1", 0),
    ("a*free - a", 0),
]


@pytest.mark.parametrize(("text", "sign"), SHARED)
def test_what_all_terms_share_leaves_the_sign_of_the_rest(text: str, sign: int) -> None:
    assert sign_of(parse(text, SCOPE), KNOWN) == sign


def test_nothing_known_is_unbounded() -> None:
    assert bounds(SCOPE["free"], {}) == (-math.inf, math.inf)
