"""Numbers as people type them."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from probgen.marking.typed_number import readings

ONE = [
    ("490", "490", ""), ("490 N", "490", "N"), ("490N", "490", "N"), ("0.49 kN", "0.49", "kN"),
    ("4.9e2", "490", ""), ("4.9E+2 kN", "490", "kN"), ("4,9·10^2", "490", ""),
    ("4.9×10² N", "490", "N"), ("3 x 10^-2 m", "0.03", "m"), ("1 234,5", "1234.5", ""),
    ("1\u202f234.5 N", "1234.5", "N"), ("1'234.5", "1234.5", ""), ("1,234.5", "1234.5", ""),
    ("1.234,5", "1234.5", ""), ("1.234.567", "1234567", ""), ("1,234,567.8", "1234567.8", ""),
    ("1.234", "1.234", ""),  # as the sheet prints decimals
    ("12,3 N", "12.3", "N"), ("0,490", "0.490", ""), (".5", "0.5", ""), ("5.", "5", ""),
    ("-9.9", "-9.9", ""), ("−5 N", "-5", "N"), ("+5 N", "5", "N"), ("T = 490 N", "490", "N"),
    ("R_x ≈ -12 N", "-12", "N"), ("１２ N", "12", "N"), ("1’234.5", "1234.5", ""),
    ("1`234.5", "1234.5", ""),
    ("2 m³", "2", "m^3"), ("2·10⁻³ m²", "0.002", "m^2"), ("–5 N", "-5", "N"),
    ("1\u00a0234.5", "1234.5", ""), ("1\u2009234.5\tN", "1234.5", "N"),
    ("1" + "0" * 199, "1e199", ""), ("35 %", "0.35", "1"),
    ("12 N·m", "12", "N*m"), ("30°", "30", "deg"), ("6.2 m/s²", "6.2", "m/s^2"), ("-0", "0", ""),
]  # fmt: skip

SEVERAL = [("1,234", {"1.234", "1234"}), ("-12,345 N", {"-12.345", "-12345"})]

NONE = [
    "", "?", "490 ± 5", "480-490", "1.2.3", "1 2", "12 34", "1,23,456", "7 e 2", "x", "N", "> 5",
    "4 9 0", "1/2", "5 furlongs", "--5", "5 N 5 N", "1" * 201, "1" * 500, "nan", "inf",
    "0x10", "1e9999",
    "<script>", "1,2.3,4",
]  # fmt: skip


@pytest.mark.parametrize(("text", "value", "unit"), ONE)
def test_one_reading(text: str, value: str, unit: str) -> None:
    (found,) = readings(text)
    assert found.value == Decimal(value)
    assert (found.unit.name if found.unit else "") == unit


@pytest.mark.parametrize(("text", "values"), SEVERAL)
def test_a_comma_may_be_either(text: str, values: set[str]) -> None:
    assert {found.value for found in readings(text)} == set(map(Decimal, values))


def test_pounds_may_be_a_mass_or_a_force() -> None:
    names = {found.unit.name for found in readings("110 lb") if found.unit}
    assert names == {"lb", "lbf"}


@pytest.mark.parametrize("text", NONE)
def test_what_is_no_number_has_no_reading(text: str) -> None:
    assert readings(text) == ()


FIGURES = [("490", (2, 3)), ("491", (3, 3)), ("0.049", (2, 2)), ("4.90e2", (3, 3)),
           ("490.0", (4, 4)), ("1 000", (1, 4)), ("0", (1, 1)),
           ("0.00", (1, 1)), ("0012", (2, 2))]  # fmt: skip


@pytest.mark.parametrize(("text", "figures"), FIGURES)
def test_zeros_at_the_end_of_a_whole_number_may_only_fill_places(
    text: str, figures: tuple[int, int]
) -> None:
    (found,) = readings(text)
    assert found.figures == figures


GROUPS = st.sampled_from([("", "."), (",", "."), (" ", "."), ("'", "."), (".", ","), (" ", ",")])


@given(st.integers(0, 10**9), st.integers(0, 9999), GROUPS, st.booleans())
def test_a_number_written_in_any_custom_is_among_its_readings(
    whole: int, fraction: int, signs: tuple[str, str], minus: bool
) -> None:
    group, point = signs
    decimals = f"{fraction:04d}"
    text = f"{whole:,}".replace(",", group) + point + decimals
    found = [reading.value for reading in readings(f"{'-' if minus else ''}{text} N")]
    expected = Decimal(f"{whole}.{decimals}")
    assert (-expected if minus else expected) in found


@given(st.text(max_size=30))
def test_no_text_is_a_fault(text: str) -> None:
    assert all(found.value.is_finite() for found in readings(text))


@given(st.from_regex(r"-?[0-9]{1,30}(\.[0-9]{1,30})?( [A-Za-z]{1,3})?", fullmatch=True))
def test_what_most_type_is_read_as_all_else_is(text: str) -> None:
    """Behind an equals sign nothing is the usual."""
    assert readings(text) == readings(f"T = {text}")
