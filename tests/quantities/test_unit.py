"""Units: exact factors (NIST SP 811 (2008), appendix B.8) and the names authors type."""

from fractions import Fraction
from pathlib import Path

import pytest

from probgen.quantities.unit import (
    ANGLE,
    FORCE,
    LENGTH,
    MASS,
    SI,
    TORQUE,
    UNITS,
    US_CUSTOMARY,
    Dimension,
    Unit,
    multiple_of,
    unit_named,
)
from tests.quantities.unit_list import unit_list

EXACT = [
    ("psi", "4.4482216152605/0.00064516"),
    ("kip", "4448.2216152605"),
    ("ton", "907.18474"),
    ("t", "1000"),
    ("lb/ft^3", "0.45359237/0.028316846592"),
    ("g/cm^3", "1000"),
    ("ft", "0.3048"),
    ("in", "0.0254"),
    ("lb", "0.45359237"),
    ("lbf", "4.4482216152605"),
    ("lbf*ft", "1.3558179483314004"),
    ("slug", "4.4482216152605/0.3048"),
]
"""NIST SP 811 (2008), B.8; the last two are products and quotients of the exact ones."""


@pytest.mark.parametrize(("name", "size"), EXACT)
def test_conversion_factors_are_the_published_ones(name: str, size: str) -> None:
    top, _, bottom = size.partition("/")
    assert UNITS[name].size == Fraction(top) / Fraction(bottom or 1)
    assert UNITS[name].factor == float(UNITS[name].size)


@pytest.mark.parametrize(
    ("typed", "name"), [("N·m", "N*m"), (" cm ", "cm"), ("°", "deg"), ("degrees", "deg")]
)
def test_other_spellings_name_the_same_unit(typed: str, name: str) -> None:
    assert unit_named(typed) is UNITS[name]


def test_an_unknown_unit_is_named_with_those_there_are() -> None:
    with pytest.raises(ValueError, match=r"no unit 'furlong'; expected one of .*kg"):
        unit_named("furlong")


def test_dimensions_multiply_and_divide() -> None:
    assert FORCE.times(LENGTH) == TORQUE
    assert TORQUE.over(FORCE) == LENGTH
    assert LENGTH.power(2) == Dimension(2)


@pytest.mark.parametrize("system", [SI, US_CUSTOMARY])
@pytest.mark.parametrize("dimension", [LENGTH, FORCE, TORQUE, ANGLE, MASS])
def test_each_system_prints_each_dimension_in_a_unit_of_it(
    system: object, dimension: Dimension
) -> None:
    assert system.unit_of(dimension).dimension == dimension  # type: ignore[attr-defined]


def test_what_a_quantity_is_called() -> None:
    assert FORCE.noun == "force"
    assert Dimension(3, 1, 0, 2).noun == "quantity of another kind"


def test_the_guide_lists_every_unit() -> None:
    guide = Path(__file__).parents[2] / "templates" / "README.md"
    assert unit_list() in guide.read_text(encoding="utf-8")


def test_a_working_in_feet_and_inches_is_in_inches() -> None:
    feet, inches = UNITS["ft"], UNITS["in"]
    assert US_CUSTOMARY.suited_to([feet, UNITS["lbf"]]).unit_of(TORQUE).name == "lbf*ft"
    assert US_CUSTOMARY.suited_to([feet, inches]).unit_of(TORQUE).name == "lbf*in"
    assert SI.suited_to([inches]) is SI


MULTIPLES = [
    ("N", "kN"), ("kN", "MN"), ("N*m", "kN*m"), ("cm", "m"), ("lbf", "kip"), ("psi", "ksi"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "larger"), MULTIPLES)
def test_a_unit_and_the_next_larger_one(name: str, larger: str) -> None:
    assert multiple_of(unit_named(name)) == unit_named(larger)


@pytest.mark.parametrize("name", ["kg", "deg", "1", "in", "ft"])
def test_some_have_none(name: str) -> None:
    assert multiple_of(unit_named(name)) is None


@pytest.mark.parametrize("unit", UNITS.values(), ids=lambda unit: unit.name)
def test_a_multiple_only_moves_the_point(unit: Unit) -> None:
    larger = multiple_of(unit)
    if larger is not None:
        assert larger.dimension == unit.dimension
        assert larger.size / unit.size in {10, 100, 1000, 10**6}
