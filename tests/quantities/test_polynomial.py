"""Polynomials in one letter, against sympy's."""

from __future__ import annotations

from random import Random

import pytest
import sympy

from probgen.quantities.expression import Expression, Name, evaluate
from probgen.quantities.parser import parse
from probgen.quantities.polynomial import HIGHEST, polynomial
from probgen.quantities.printing import plain

NAMES = {id: Name(id, id) for id in ("w_0", "w_1", "L", "d", "x")}
X = NAMES["x"]
VALUES = {"w_0": 120.0, "w_1": 45.0, "L": 3.2, "d": 0.7, "x": 1.1}


def read(text: str) -> Expression:
    return parse(text, NAMES)


# A load, its antiderivative, and the integrals of it and of x times it from 0 to a length.
CASES = [
    ("w_0*(x/L)^2", "L", "w_0 x³/(3 L²)", "w_0 L/3", "w_0 L²/4", "3 L/4"),
    ("w_0*(1 - (x/L)^2)", "L", "w_0 x − w_0 x³/(3 L²)", "2 w_0 L/3", "w_0 L²/4", "3 L/8"),
    ("w_0*x/L*(1 - x/L)*4", "L", "2 w_0 x²/L − 4 w_0 x³/(3 L²)", "2 w_0 L/3", "w_0 L²/3", "L/2"),
    ("w_0*(x/(L - d))^2", "L - d", "w_0 x³/(3 (L − d)²)", "w_0 (L − d)/3", "w_0 (L − d)²/4",
     "3 (L − d)/4"),
    ("w_0*(x/L)^2", "d", "w_0 x³/(3 L²)", "w_0 d³/(3 L²)", "w_0 d⁴/(4 L²)", "3 d/4"),
    ("0.5*w_0*(x/L)^3", "L", "w_0 x⁴/(8 L³)", "w_0 L/8", "w_0 L²/10", "4 L/5"),
    ("w_0*(x/(2 m))^2", "2 m", "w_0 x³/(3 (2 m)²)", "w_0 (2 m)/3", "w_0 (2 m)²/4", "1.5 m"),
    ("w_0*sqrt(d/L)*x/L", "L", "w_0 √(d/L) x²/(2 L)", "w_0 √(d/L) L/2", "w_0 √(d/L) L²/3",
     "2 L/3"),
]  # fmt: skip


@pytest.mark.parametrize(("load", "length", "risen", "force", "turning", "place"), CASES)
def test_integrals_with_fractions_cancelled(
    load: str, length: str, risen: str, force: str, turning: str, place: str
) -> None:
    found = polynomial(read(load), X)
    assert found is not None
    assert plain(found.antiderivative().expression) == risen
    zero, end = read("0"), read(length)
    area = found.antiderivative().between(zero, end)
    torque = found.times_letter().antiderivative().between(zero, end)
    assert (plain(area.expression), plain(torque.expression)) == (force, turning)
    reach = torque.over(area)
    assert reach is not None
    assert plain(reach.expression) == place


FACTORED = [
    ("w_1 + (w_0 - w_1)*(x/L)^2", "(2 w_1 + w_0) L/3"),
    ("w_1*(1 - (x/L)^2) - w_0*(x/L)^2", "(2 w_1 − w_0) L/3"),
    ("w_0 + w_1*x/d", "w_0 L + w_1 L²/(2 d)"),  # no common bottom
    ("w_0 + 0.31*w_1*x/L", "w_0 L + 31 w_1 L/200"),  # its whole numbers would be long
    ("w_0 - 62*w_1*x/L", "w_0 L − 31 w_1 L"),
    ("w_0*(x/L)^2", "w_0 L/3"),
    ("w_0 - w_0*x/L - w_0*(1 - x/L)", "0"),
]


@pytest.mark.parametrize(("load", "written"), FACTORED)
def test_what_all_terms_share_is_written_once(load: str, written: str) -> None:
    found = polynomial(read(load), X)
    assert found is not None
    assert plain(found.antiderivative().between(read("0"), read("L")).factored) == written


def test_over_more_than_one_term_there_is_no_quotient_but_over_a_name() -> None:
    found = polynomial(read("w_0 + w_1*x/L"), X)
    assert found is not None
    assert found.over(found) is None
    assert plain(found.over_name(Name("W", "W")).expression) == "w_0/W + w_1 x/(L W)"


def test_the_factors_of_its_powers() -> None:
    found = polynomial(read("w_1 - w_0*x^2/L^2 + w_1*x^2/L^2"), X)
    assert found is not None
    assert [plain(each) for each in found.coefficients] == ["w_1", "0", "−w_0/L² + w_1/L²"]
    assert found.degree == 2


NONE = [
    "w_0*sqrt(x/L)",
    "w_0*sin(90*x/L)",
    "w_0*L/x",
    "w_0*x^-1",
    "w_0*L/(L + x)",
    "abs(x)*w_0",
    f"x^{HIGHEST}*x",
]


@pytest.mark.parametrize("text", NONE)
def test_what_is_no_polynomial(text: str) -> None:
    assert polynomial(read(text), X) is None


def _random_load(random: Random) -> str:
    """A sum of products of sums, so that much of it cancels."""
    factors = ("x/L", "(1 - x/L)", "(L - x)/d", "(x + d)/L", "0.5", "(2*x - d)/(3*L)")
    terms = (
        "*".join((random.choice(("w_0", "w_1")), *random.choices(factors, k=random.randint(1, 4))))
        for _ in range(random.randint(1, 3))
    )
    return random.choice(("", "-")) + random.choice((" + ", " - ")).join(terms)


@pytest.mark.parametrize("seed", range(40))
def test_integrals_are_those_of_sympy(seed: int) -> None:
    random = Random(seed)
    text = _random_load(random)
    found = polynomial(read(text), X)
    assert found is not None
    low, high = read(random.choice(("0", "d", "L/4"))), read("L")
    theirs = sympy.sympify(text)
    ends = [sympy.Rational(repr(float(evaluate(end, VALUES)))) for end in (low, high)]
    known = {name: sympy.Rational(repr(value)) for name, value in VALUES.items() if name != "x"}
    x = sympy.Symbol("x")
    for ours, more in ((found, 1), (found.times_letter(), x)):
        wanted = sympy.integrate((theirs * more).subs(known), (x, *ends))
        area = ours.antiderivative().between(low, high)
        size = max(1.0, abs(float(wanted)))
        for form in (area.expression, area.factored):
            assert evaluate(form, VALUES) == pytest.approx(float(wanted), abs=1e-9 * size)
    assert evaluate(found.expression, VALUES) == pytest.approx(float(theirs.subs(VALUES)))


@pytest.mark.parametrize(
    ("written", "short"),
    [
        ("w_0*L*x^2/2 - w_0*w_1*x - L*w_0*d/4", "−L d − 4 x w_1 + 2 L x²"),
        ("d*x^2/L - w_0", "−L w_0 + d x²"),
        ("x^2 - d", "−d + x²"),
        ("x^2/(2*(L - d)) - w_0", "−2 (L − d) w_0 + x²"),
    ],
)
def test_without_what_all_terms_share(written: str, short: str) -> None:
    found = polynomial(read(written), X)
    assert found is not None
    assert plain(found.without_content.expression) == short


def test_its_letters_are_what_stands_beside_its_own() -> None:
    found = polynomial(read("d*x^2/L - w_0"), X)
    assert found is not None
    assert found.letters == {NAMES["d"], NAMES["L"], NAMES["w_0"]}
