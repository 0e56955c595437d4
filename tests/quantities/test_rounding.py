"""Rounding: figures are counted in decimal, halves go the course's way."""

from decimal import Decimal

import pytest

from probgen.quantities.rounding import exact, last_place, round_figures, round_places, shortened

FIGURES = [
    (190.576, 3, "half up", "191"),
    (9.996, 3, "half up", "10.0"),
    (0.0123456, 3, "half up", "0.0123"),
    (4195.63, 3, "half up", "4.20E+3"),
    (-4.9000000000000062, 3, "half up", "-4.90"),
    (0.0, 3, "half up", "0"),
    (2.5, 1, "half up", "3"),
    (2.5, 1, "half even", "2"),
    (0.1 + 0.2, 3, "half up", "0.300"),
    (1.005, 3, "half up", "1.01"),
    (1.0049999999999999, 3, "half up", "1.01"),
    (-2.5, 1, "half up", "-3"),
    (3.5, 1, "half even", "4"),
    (1.239, 3, "down", "1.23"),
    (1.231, 3, "up", "1.24"),
    (1.23, 3, "up", "1.23"),
    (-1.231, 3, "down", "-1.24"),
    (-1.239, 3, "up", "-1.23"),
    (9.991, 3, "up", "10.0"),
    (9.999, 3, "down", "9.99"),
    (819.998, 3, "down", "820"),  # by less than a twentieth of the last place
    (141.01, 3, "up", "141"),
    (141.06, 3, "up", "142"),
    (99.96, 3, "half up", "100"),
    (0.09996, 3, "half up", "0.100"),
]
"""1.005 is no float: what the float stands for is meant, so halves go up as on paper."""


@pytest.mark.parametrize(("value", "figures", "rule", "digits"), FIGURES)
def test_significant_figures(value: float, figures: int, rule: str, digits: str) -> None:
    assert str(round_figures(value, figures, rule)) == digits  # type: ignore[arg-type]


def test_places_take_floats_and_decimals() -> None:
    assert round_places(2.345, 2) == Decimal("2.35")
    assert round_places(Decimal("2.345"), 2, "half even") == Decimal("2.34")
    assert str(round_places(2.5, 0)) == "3"
    assert str(round_places(2.04, 1)) == "2.0"
    assert str(round_places(-0.0, 1)) in ("0.0", "-0.0")
    assert str(round_places(31.0, -1, "up")) == "4E+1"


def test_the_last_place_is_one_unit_of_the_last_digit() -> None:
    assert last_place(Decimal("4.90")) == Decimal("0.01")
    assert last_place(Decimal("4.2E+3")) == 100


def test_float_noise_is_left_out() -> None:
    assert exact(2.4999999999999996) == Decimal("2.5")
    assert exact(0.1 + 0.2) == Decimal("0.3")


def test_a_float_is_taken_to_twelve_figures_without_zeros_at_its_end() -> None:
    assert str(exact(0.12345678901234)) == "0.123456789012"
    assert str(exact(1234567890123.0)) == "1.23456789012E+12"
    assert str(exact(0.50)) == "0.5"
    assert str(exact(0.0)) == "0"
    assert str(exact(90.0)) == "90"  # no figure of it is unknown


@pytest.mark.parametrize("value", [float("inf"), float("-inf"), float("nan")])
def test_what_is_no_number_is_said(value: float) -> None:
    with pytest.raises(ArithmeticError, match="beyond all bounds"):
        exact(value)


def test_zeros_at_the_end_are_left_out_down_to_some_figures_and_the_point() -> None:
    shown = {
        "612.500": "612.5",
        "600.0": "600",
        "1200": "1200",
        "0.5000": "0.500",
        "77.102": "77.102",
    }
    assert {each: str(shortened(Decimal(each), 3)) for each in shown} == shown
