"""What is printed of a number is asked of the number."""

from decimal import Decimal

import pytest

from probgen.quantities.notation.notation import digits, has_point, is_negative, scaled

# number, its digits, its power of ten, whether a point and whether a minus sign are printed
NUMBERS = [
    ("0.810", "0.810", 0, True, False),
    ("12.10", "12.10", 0, True, False),
    ("0.4103", "0.4103", 0, True, False),
    ("10", "10", 0, False, False),
    ("-4.9", "4.9", 0, True, True),
    ("21192", "21_192", 0, False, False),
    ("1234567.5", "1_234_567.5", 0, True, False),
    ("2.12E+4", "2.12", 4, True, False),
    ("2E+4", "2", 4, False, False),
    ("0.000123", "1.23", -4, True, False),
    ("0.0001", "1", -4, False, False),
    ("1.2E+3", "1.2", 3, True, False),
    ("9E+1", "9", 1, False, False),
    ("0.001", "0.001", 0, True, False),
    ("-0", "0", 0, False, False),
    ("9999", "9999", 0, False, False),  # in groups from five digits on
    ("10000", "10_000", 0, False, False),
    ("9.99E+3", "9.99", 3, True, False),  # 9990 would hide that its 0 is unknown
    ("1E+4", "1", 4, False, False),
    ("1.00E+4", "1.00", 4, True, False),
    ("0.00099", "9.9", -4, True, False),
    ("-1.2E+5", "1.2", 5, True, True),
]


@pytest.mark.parametrize(("text", "shown", "power", "point", "minus"), NUMBERS)
def test_numbers(text: str, shown: str, power: int, point: bool, minus: bool) -> None:
    value = Decimal(text)
    assert digits(value, "_") == shown
    assert scaled(value) == power
    assert has_point(value) is point
    assert has_point(value) is ("." in digits(value, "_"))
    assert is_negative(value) is minus
