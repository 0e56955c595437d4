"""What is broken, and what is left alone, in small sources."""

from __future__ import annotations

import ast
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

import numpy as np
import pytest
from numpy.typing import NDArray

from probgen.figures.paper.scene import dot
from tests.mutants.breaks import breaks_in
from tests.mutants.reach import ROOT
from tests.mutants.sample import sample, sites

# A source, and every line that a break makes of it.
BROKEN = [
    ("a = b < c", ["a = b > c"]),
    ("a = len(b) < c", ["a = len(b) <= c", "a = len(b) > c"]),
    ("a = b + 1", ["a = ((b) - (1))", "a = b + 2"]),
    ("a = b and not c", ["a = ((b) or (not c))", "a = b and (c)"]),
    ("a = sin(b)", ["a = (b)", "a = cos(b)"]),
    ("a = f(b, c)", ["a = f(c, b)"]),
    ("a = f(b, b)", []),
    ("a = max(b, c)", ["a = min(b, c)"]),
    ("a = tuple(b)", []),
    ("assert_never(a)", []),
    ("a = 2.5", ["a = 5.0"]),
    ("a = 72", ["a = 73"]),
    ("a = 25_000", ["a = 50000"]),
    ("if TYPE_CHECKING:\n    a = 1", []),
    ("a = 1e-9", []),
    ("a = True", ["a = False"]),
    ("a = [b for b in c if d]", ["a = [b for b in c if True]"]),
    ("a = b if c else d", ["a = b if not (c) else d"]),
    ("f(a)", ["(a)", "pass"]),
    ("a += b", ["a -= b"]),
    ("a = zip(b, c, strict=True)", []),
    ("a: int | None = b", []),
    ('A = TypeVar("A", covariant=True)', []),
    ("A = B | None", []),
    ("raise Wrong(a + 1)", []),
    ("if a:\n    b = c + 1\n    raise Wrong(b)", ["if False:\n    b = c + 1\n    raise Wrong(b)"]),
    ('a = f"{b + 1}" + "ä"', []),
    ('"ä"; a = -b', ['"ä"; a = (b)']),  # places are counted in letters, not in bytes
]


@pytest.mark.parametrize(("source", "broken"), BROKEN, ids=[source for source, _ in BROKEN])
def test_each_break_is_one_change(source: str, broken: list[str]) -> None:
    assert sorted(each.applied(source) for each in breaks_in(source)) == sorted(broken)


@pytest.mark.parametrize("ends", ["25 {} 0j", "2.5 {} 0j", "b {} 1.0", "b {} -1.0"])
def test_what_computes_the_same_is_no_break(ends: str) -> None:
    """Shown on numbers, signs of zero included."""
    for signs in ("+-", "-+") if "0j" in ends else ("*/", "/*"):
        one, other = (ends.format(sign) for sign in signs)
        for b in (0, 3, 0.0, -0.0, -2.5, 1e300, 5e-324, 2 + 3j):
            assert eval(one, {"b": b}) == eval(other, {"b": b})
            assert f"{eval(one, {'b': b})!s:.1}" == f"{eval(other, {'b': b})!s:.1}"
        assert not [b for b in breaks_in(f"a = {one}") if b.kind == "arithmetic turned"]


@pytest.mark.parametrize(
    "sum",
    ["b + 0", "b - 0.0", "b + 0j", "0 - b", "b * 1", "1.0 / b", "3 + 1j", "b * -2.0", "3 - 0"],
)
def test_what_computes_another_number_is_broken(sum: str) -> None:
    assert [b.kind for b in breaks_in(f"a = {sum}")].count("arithmetic turned") == 1


def test_sides_of_a_scalar_product_may_be_exchanged() -> None:
    for one, other in ((1 + 2j, 3 - 5j), (0.1 + 0.7j, -0.3 + 1e-9j), (0j, 1j)):
        assert dot(one, other) == dot(other, one)
    assert breaks_in("a = dot(b, c)") == []


def test_a_pattern_is_read_for_its_exponent_alone() -> None:
    for number in ("0", "-0.0", "2.5", "3.5", "-7.25", "1E+2", "12345.678"):
        for one in (0, 1, 9):
            same = [Decimal(number).quantize(Decimal(each)) for each in (one, one + 1)]
            assert str(same[0]) == str(same[1])
    assert breaks_in("a = b.quantize(Decimal(1))") == []
    assert [each.new for each in breaks_in("a = f(b).quantize(Decimal(1))")] == ["(b)"]
    assert [each.new for each in breaks_in("a = b.quantize(Decimal(f(c)))")] == ["(c)"]
    assert len(breaks_in("a = b.quantize(c, d)")) == 1


@pytest.mark.parametrize("function", [np.multiply, np.logical_and, np.logical_or])
def test_sides_of_what_arrays_are_joined_by_may_be_exchanged(
    function: Callable[[object, object], NDArray[np.float64]],
) -> None:
    one, other = np.array([0.1, -0.0, 3.0, 1e300]), np.array([0.3, 5.0, 0.0, 7.0])
    assert function(one, other).tobytes() == function(other, one).tobytes()
    assert breaks_in(f"a = np.{function.__name__}(b, c)") == []


def test_how_long_a_nap_is_stays_and_what_is_waited_for_does_not() -> None:
    assert [each.new for each in breaks_in("time.sleep(0.05)")] == ["pass"]
    assert [each.new for each in breaks_in("a = done.wait(f(b))")] == ["(b)"]


def test_what_a_dataclass_shows_of_itself_stays_and_what_it_compares_does_not() -> None:
    source = "a: int = field(compare=False, repr=False)"
    assert [each.applied(source) for each in breaks_in(source)] == [
        "a: int = field(compare=True, repr=False)"
    ]


def test_a_rule_is_left_out_or_always_applied() -> None:
    source = "def f(a: int) -> int:\n    if a in (b, c):\n        return d\n    return e\n"
    texts = {each.applied(source).split("\n")[1].strip() for each in breaks_in(source)}
    assert texts == {"if a not in (b, c):", "if False:", "if True:"}


def test_measures_of_taste_stay() -> None:
    source = "WIDTH: Final = 2 * 12.5\na = 3 < b"
    assert [each.new for each in breaks_in(source, taste=True)] == ["3 <= b", "3 > b"]
    drawn = "a = b + 0.55 * c\nd = b + c"
    assert [each.new for each in breaks_in(drawn, taste=True)] == ["((b) - (c))"]
    spots = "a = at(0.98, -0.42)\nb = at(1, c)\nd = -e\nf = at(-1, 2)"
    assert [each.new for each in breaks_in(spots, taste=True)] == [
        "at(c, 1)", "(e)", "at(2, -1)", "(1)",
    ]  # fmt: skip
    assert "at(-0.42, 0.98)" in [each.new for each in breaks_in(spots)]


def test_every_break_of_the_package_can_be_read_as_code() -> None:
    for module, change in sample(list(sites()), 300, "as code"):
        ast.parse(change.applied((ROOT / module.path).read_text(encoding="utf-8")))


def test_a_sample_is_the_same_for_the_same_seed_and_leaves_no_room_out() -> None:
    found = list(sites())
    chosen = sample(found, 150, "1")
    assert chosen == sample(found, 150, "1") != sample(found, 150, "2")
    assert len(set(chosen)) == 150
    rooms = {path.name for path in (ROOT / "probgen").iterdir() if (path / "__init__.py").exists()}
    assert {module.room for module, _ in chosen} == rooms


def test_a_change_elsewhere_leaves_a_sample_as_it_was() -> None:
    """Lines above, and some breaks fewer; what is chosen is told by what it changes."""
    found = list(sites())
    chosen = sample(found, 150, "1")
    longer = [(module, replace(change, line=change.line + 3)) for module, change in found[7:]]
    again = sample(longer, 150, "1")
    what = [{(str(m.path), c.old, c.new) for m, c in each} for each in (chosen, again)]
    assert len(what[0] & what[1]) >= 148


def test_a_sign_below_one_is_one_below_zero() -> None:
    news = [each.new for each in breaks_in("a = sign < 0\nb = size < 0")]
    assert news == ["sign > 0", "size > 0", "1"]
