"""Equations solved together, beside numpy and values worked out by hand.

Letters a, b, c, d are 2, 3, 5 and 0.4; angles are in degrees.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from probgen.quantities.expression import Expression, Name, Value, evaluate, names_in
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain
from probgen.statics.elimination import Solved, _with_tangent, eliminated

LETTERS = ("a", "b", "c", "d", "x", "y", "z")
SCOPE = {letter: Name(letter, letter) for letter in LETTERS}
VALUES = {"a": 2.0, "b": 3.0, "c": 5.0, "d": 0.4}


def read(text: str) -> Expression:
    return parse(text, SCOPE)


def number(expression: Expression, values: Mapping[str, Value]) -> float:
    return float(np.asarray(evaluate(expression, values)))


TOGETHER = [
    (("a*x + b*y - c", "x - y - d"), ("x", "y")),
    (("a*x - b*y", "b*x + a*y - c"), ("x", "y")),
    (("x*sin(30 deg) - y*sin(40 deg)", "x*cos(30 deg) + y*cos(40 deg) - c"), ("x", "y")),
    (("a*x + y - b", "x + b*z - c", "y + z - d"), ("x", "y", "z")),
    (("a*x + y + z - b", "x + b*y - z - c", "x + y + c*z - d"), ("x", "y", "z")),
]


@pytest.mark.parametrize(("equations", "unknowns"), TOGETHER)
def test_linear_equations_together_are_as_numpy_solves_them(
    equations: tuple[str, ...], unknowns: tuple[str, ...]
) -> None:
    trees = tuple(map(read, equations))
    zero = {**VALUES, **dict.fromkeys(unknowns, 0.0)}
    rest = np.array([number(tree, zero) for tree in trees])
    slopes = np.array(
        [[number(tree, {**zero, name: 1.0}) for name in unknowns] for tree in trees]
    ) - rest[:, None]  # fmt: skip
    expected = dict(zip(unknowns, np.linalg.solve(slopes, -rest), strict=True))
    solved = eliminated(trees, unknowns)
    assert solved is not None
    known: dict[str, Value] = dict(VALUES)
    for each in solved:
        assert names_in(each.value) <= known.keys()
        known[each.unknown] = number(each.value, known)
    assert {name: known[name] for name in unknowns} == pytest.approx(expected, rel=1e-12)
    assert sorted(each.place for each in solved) == list(range(len(unknowns)))


@pytest.mark.parametrize("unknowns", [("x", "y"), ("y", "x")])
@pytest.mark.parametrize("equations", [("a - x", "x*y - b"), ("x*y - b", "a - x")])
def test_an_equation_of_one_unknown_comes_first_and_is_not_put_into_the_others(
    equations: tuple[str, str], unknowns: tuple[str, str]
) -> None:
    solved = eliminated(tuple(map(read, equations)), unknowns)
    assert solved is not None
    assert [(each.unknown, plain(each.value)) for each in solved] == [("x", "a"), ("y", "b/x")]
    assert [equations[each.place] for each in solved] == ["a - x", "x*y - b"]


def test_what_is_left_of_the_last_equation_holds_one_unknown() -> None:
    """f = mu N, f = W sin x, N = W cos x leave tan x = mu, with a for mu and b for W."""
    solved = eliminated(
        (read("y - a*z"), read("y - b*sin(x)"), read("z - b*cos(x)")), ("x", "y", "z")
    )
    assert solved is not None
    assert solved[0].unknown == "x"
    assert names_in(solved[0].balance) == {"a", "x"}
    assert number(solved[0].value, VALUES) == pytest.approx(math.degrees(math.atan(2.0)))


@pytest.mark.parametrize(
    "equations",
    [
        ("a*x + b*y - c", "a*x + b*y - d"),  # they contradict each other
        ("a*x + b*y - c", "a*x + b*y - c"),  # the same twice
    ],
)
def test_equations_that_settle_nothing_lead_nowhere(equations: tuple[str, str]) -> None:
    assert eliminated(tuple(map(read, equations)), ("x", "y")) is None


def test_a_slope_that_cancels_is_none() -> None:
    """a x - a x + b y - c settles y alone, though x is written in it; x follows from the other."""
    found = eliminated((read("a*x - a*x + b*y - c"), read("x + y - d")), ("x", "y"))
    assert found is not None
    values = dict(VALUES)
    for each in found:
        values[each.unknown] = number(each.value, values)
    assert values["y"] == pytest.approx(VALUES["c"] / VALUES["b"])
    assert values["x"] == pytest.approx(VALUES["d"] - VALUES["c"] / VALUES["b"])


SIZES = st.floats(-20.0, 20.0).filter(lambda size: abs(size) > 1e-3)


@given(st.lists(SIZES, min_size=6, max_size=6))
def test_any_two_linear_equations(sizes: list[float]) -> None:
    """With coefficients of any sign, the values satisfy both equations."""
    names = ("a", "b", "c", "d", "p", "q")
    scope = {**SCOPE, "p": Name("p", "p"), "q": Name("q", "q")}
    values = dict(zip(names, sizes, strict=True))
    if abs(values["a"] * values["p"] - values["b"] * values["d"]) < 1e-2:
        return
    pair = (parse("a*x + b*y - c", scope), parse("d*x + p*y - q", scope))
    solved = eliminated(pair, ("x", "y"))
    assert solved is not None
    known: dict[str, Value] = dict(values)
    for each in solved:
        known[each.unknown] = number(each.value, known)
    size = max(abs(value) for value in (*sizes, *map(float, known.values())))
    for equation in pair:
        assert abs(number(equation, known)) <= 1e-9 * size**2


# -- what is put in, taken out, divided --------------------------------------------------------


def solved(equations: tuple[str, ...], unknowns: tuple[str, ...], *kept: str) -> tuple[Solved, ...]:
    """Tensions y and z are not negative; x is an angle."""
    ranges = {"x": (0.0, 90.0), "y": (0.0, math.inf), "z": (0.0, math.inf)}
    found = eliminated(tuple(map(read, equations)), unknowns, ranges, frozenset(kept))
    assert found is not None
    return found


def test_what_needs_no_division_is_taken_out_first_from_the_shorter_equation() -> None:
    """A ladder about to slip: x is the wall's push, y the floor's; x = a y, not y = x/a."""
    solved = eliminated((read("a*y - x"), read("y + b*x - c")), ("x", "y"), kept=frozenset("xy"))
    assert solved is not None
    assert {each.unknown: plain(each.value) for each in solved} == {"y": "c/(1 + a b)", "x": "a y"}


def test_what_is_asked_is_taken_out_last() -> None:
    """Two cords at a knot: y is asked, so z is taken out, whichever is named first."""
    knot = ("y*sin(30 deg) - z*sin(40 deg)", "y*cos(30 deg) + z*cos(40 deg) - c")
    for unknowns in (("y", "z"), ("z", "y")):
        assert [each.unknown for each in solved(knot, unknowns, "y")] == ["y", "z"]
        assert [each.unknown for each in solved(knot, unknowns, "z")] == ["z", "y"]


def test_a_rope_by_its_two_parts() -> None:
    """y cos x = b, y sin x = c: divided for the angle, by Pythagoras for the size."""
    first, second = solved(("b - y*cos(x)", "c - y*sin(x)"), ("x", "y"), "x", "y")
    assert (first.unknown, first.divided) == ("x", (0, 1))
    assert plain(first.value) == "arctan(c/b)"
    assert (second.unknown, plain(second.value)) == ("y", "√(b² + c²)")
    assert second.place == 0


@pytest.mark.parametrize(("most", "written"), [(90.0, "arcsin(b sin x/c)"), (180.0, "arccos(")])
def test_two_angles_of_a_knot_by_squares(most: float, written: str) -> None:
    """b and c, with a between them, at the angles x and y to it: a closed triangle."""
    equations = (read("b*cos(x) + c*cos(y) - a"), read("c*sin(y) - b*sin(x)"))
    found = eliminated(equations, ("x", "y"), {"x": (0.0, 180.0), "y": (0.0, most)})
    assert found is not None
    first, second = found
    assert {first.unknown, first.squared, second.squared} == {"x", (0, 1), None}
    assert plain(second.value).startswith(written)
    assert {first.place, second.place} == {0, 1}
    sides = {"a": 7.0, "b": 5.0, "c": 4.0}
    x = number(first.value, sides)
    y = number(second.value, {**sides, "x": x})
    assert math.cos(math.radians(x)) == pytest.approx((49 + 25 - 16) / (2 * 7 * 5))  # cosine rule
    assert math.sin(math.radians(y)) == pytest.approx(5 / 4 * math.sin(math.radians(x)))
    assert x + y < 180.0


def test_a_size_that_may_be_negative_is_not_taken_by_pythagoras() -> None:
    found = eliminated((read("b - y*cos(x)"), read("c - y*sin(x)")), ("x", "y"))
    assert found is not None
    assert plain(found[1].value) == "b/(cos x)"


def test_friction_on_the_verge_is_put_in_and_the_weight_divided_out() -> None:
    """z = b cos x, y = b sin x, y = a z: tan x = a, whatever b is."""
    found = solved(("y - a*z", "z - b*cos(x)", "y - b*sin(x)"), ("x", "y", "z"), "x", "y")
    assert [each.unknown for each in found] == ["x", "z", "y"]
    assert (found[0].divided, found[0].put_in) == ((1, 2), ("y",))
    assert [plain(each.value) for each in found] == ["arctan a", "b cos x", "b sin x"]
    assert [each.place for each in found] == [0, 1, 2]  # y by its own balance, without z


def test_an_unknown_in_every_term_drops_out() -> None:
    """y = a z in y cos x - z sin x: z stands in both terms."""
    found = solved(
        ("y - a*z", "y*cos(x) - z*sin(x)", "z*cos(x) + y*sin(x) - b"), ("x", "y", "z"), "x", "y"
    )
    assert (found[0].unknown, found[0].put_in, found[0].dropped) == ("x", ("y",), ("z",))
    assert number(found[0].value, VALUES) == pytest.approx(math.degrees(math.atan(2.0)))


def test_different_sizes_beside_sine_and_cosine_are_not_divided() -> None:
    """a cos x = y and b sin x = y: tan x = a/b all the same."""
    found = solved(("y - a*cos(x)", "y - b*sin(x)"), ("x", "y"), "x")
    assert found[0].divided is None
    values = {**VALUES, "x": number(found[0].value, VALUES)}
    assert math.tan(math.radians(values["x"])) == pytest.approx(2.0 / 3.0)


def test_what_two_equal_cords_share_is_left_out_before_one_is_put_in() -> None:
    """A lamp c on cords x and y at one angle: x = y, and 2 y sin 30° = c."""
    found = solved(
        ("y*cos(30 deg) - x*cos(30 deg)", "x*sin(30 deg) + y*sin(30 deg) - c"), ("x", "y")
    )
    assert [(each.unknown, plain(each.value)) for each in found] == [
        ("y", "c/(2 sin 30°)"),
        ("x", "y"),
    ]


# A factor times one size over another: written with a tangent where that makes a product of it.
TANGENTS = [
    ("a", "sin(t)", "cos(t)", "a tan θ"),
    ("a", "b*sin(t)", "cos(t)", "a b tan θ"),
    ("a", "-sin(t)", "cos(t)", "−a tan θ"),
    ("a", "sin(t)*sin(s)", "cos(t)*cos(s)", "a tan θ tan φ"),
    ("sin(t)", "a", "cos(t)", "a tan θ"),
    ("a", "cos(t)", "cos(t)", None),
    ("a", "sin(s)", "cos(t)", None),
    ("a", "cos(t)", "sin(t)", None),
    ("a", "sin(t)", "2*cos(t)", None),
    ("a", "sin(t) + b", "cos(t)", None),
    ("a", "sin(t)", "cos(t) + b", None),
]


@pytest.mark.parametrize(("factor", "top", "bottom", "written"), TANGENTS)
def test_a_sine_over_its_cosine_is_a_tangent(
    factor: str, top: str, bottom: str, written: str | None
) -> None:
    symbols = {"a": "a", "b": "b", "t": "theta", "s": "phi"}
    scope = {id: Name(id, symbol) for id, symbol in symbols.items()}
    found = _with_tangent(*(parse(text, scope) for text in (factor, top, bottom)))
    assert (found and plain(found)) == written
