from decimal import Decimal
from fractions import Fraction

import pytest

from probgen.draws.exact_value import exact_value, in_unit
from probgen.quantities.expression import Name
from probgen.quantities.parser import parse
from probgen.quantities.unit import UNITS

SCOPE = {id: Name(id, id) for id in ("L", "k")}
VALUES = {"L": Fraction("0.35"), "k": Fraction(3)}


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("L/2", "0.175"),  # a half that binary floats lose
        ("3*L - 5 cm", "1"),
        ("-L^2", "-0.1225"),
        ("k^-1", "1/3"),
        ("max(L, 0.4 m)", "0.4"),
        ("min(L, 0.4 m) + abs(-L)", "0.7"),
        ("sin(30)*k", "1.5"),
        ("hypot(k, 4)", "5"),
        ("1 ft", "0.3048"),
        ("1 in", "0.0254"),
    ],
)
def test_values_are_exact(text: str, value: str) -> None:
    assert exact_value(parse(text, SCOPE), VALUES) == Fraction(value)


@pytest.mark.parametrize("text", ["1/(L - 35 cm)", "0^-1", "sqrt(-k)", "asin(k)"])
@pytest.mark.filterwarnings("ignore:invalid value:RuntimeWarning")
def test_what_has_no_value_is_told(text: str) -> None:
    with pytest.raises(ArithmeticError):
        exact_value(parse(text, SCOPE), VALUES)


@pytest.mark.parametrize(
    ("value", "unit", "step", "printed"),
    [
        ("0.175", "m", "0.01", "0.18"),
        ("0.165", "m", "0.01", "0.17"),
        ("-0.175", "m", "0.01", "-0.18"),
        ("0.175", "cm", "0.1", "17.5"),
        ("0.18", "m", "0.010", "0.180"),
        ("1.23", "m", "0.25", "1.25"),
        ("0.001", "m", "0.01", "0.00"),
        ("1/3", "m", None, "0.3333"),
        ("0.5", "m", None, "0.5"),
        ("12345", "m", None, "1.235E+4"),
    ],
)
def test_rounding_is_half_up_to_the_step(
    value: str, unit: str, step: str | None, printed: str
) -> None:
    rounded = in_unit(Fraction(value), UNITS[unit], None if step is None else Decimal(step))
    assert str(rounded) == printed
