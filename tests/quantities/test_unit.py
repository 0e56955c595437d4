"""Units: exact factors (NIST SP 811 (2008), appendix B.8) and the names authors type."""

import math
from fractions import Fraction
from pathlib import Path

import pytest

from probgen.quantities.unit import (
    ACCELERATION,
    ANGLE,
    DENSITY,
    FORCE,
    LENGTH,
    MASS,
    PLAIN,
    PRESSURE,
    SI,
    STIFFNESS,
    TORQUE,
    UNITS,
    US_CUSTOMARY,
    WEIGHT_PER_VOLUME,
    Dimension,
    Unit,
    multiple_of,
    unit_named,
)
from tests.quantities.unit_list import unit_list

FOOT, INCH, POUND, POUND_FORCE = "0.3048", "0.0254", "0.45359237", "4.4482216152605"
EXACT = [
    ("1", "1", PLAIN),
    ("deg", "1", ANGLE),
    ("m", "1", LENGTH),
    ("cm", "0.01", LENGTH),
    ("mm", "0.001", LENGTH),
    ("km", "1000", LENGTH),
    ("m^2", "1", Dimension(length=2)),
    ("cm^2", "0.0001", Dimension(length=2)),
    ("mm^2", "0.000001", Dimension(length=2)),
    ("m^3", "1", Dimension(length=3)),
    ("cm^3", "0.000001", Dimension(length=3)),
    ("kg", "1", MASS),
    ("g", "0.001", MASS),
    ("t", "1000", MASS),
    ("N", "1", FORCE),
    ("kN", "1000", FORCE),
    ("MN", "1000000", FORCE),
    ("N*m", "1", TORQUE),
    ("N*cm", "0.01", TORQUE),
    ("N*mm", "0.001", TORQUE),
    ("kN*m", "1000", TORQUE),
    ("m/s^2", "1", ACCELERATION),
    ("N/m", "1", STIFFNESS),
    ("N/cm", "100", STIFFNESS),
    ("N/mm", "1000", STIFFNESS),
    ("kN/m", "1000", STIFFNESS),
    ("Pa", "1", PRESSURE),
    ("kPa", "1000", PRESSURE),
    ("MPa", "1000000", PRESSURE),
    ("N/m^2", "1", PRESSURE),
    ("N/mm^2", "1000000", PRESSURE),
    ("kN/m^2", "1000", PRESSURE),
    ("kg/m^3", "1", DENSITY),
    ("g/cm^3", "1000", DENSITY),
    ("N/m^3", "1", WEIGHT_PER_VOLUME),
    ("kN/m^3", "1000", WEIGHT_PER_VOLUME),
    ("ft", FOOT, LENGTH),
    ("in", INCH, LENGTH),
    ("yd", "0.9144", LENGTH),
    ("ft^2", "0.09290304", Dimension(length=2)),
    ("in^2", "0.00064516", Dimension(length=2)),
    ("ft^3", "0.028316846592", Dimension(length=3)),
    ("in^3", "0.000016387064", Dimension(length=3)),
    ("lb", POUND, MASS),
    ("oz", "0.028349523125", MASS),
    ("slug", f"{POUND_FORCE}/{FOOT}", MASS),
    ("ton", "907.18474", MASS),
    ("lbf", POUND_FORCE, FORCE),
    ("kip", "4448.2216152605", FORCE),
    ("tonf", "8896.443230521", FORCE),
    ("lbf*ft", "1.3558179483314004", TORQUE),
    ("lbf*in", "0.1129848290276167", TORQUE),
    ("kip*ft", "1355.8179483314004", TORQUE),
    ("kip*in", "112.9848290276167", TORQUE),
    ("ft/s^2", FOOT, ACCELERATION),
    ("in/s^2", INCH, ACCELERATION),
    ("lbf/ft", f"{POUND_FORCE}/{FOOT}", STIFFNESS),
    ("lbf/in", f"{POUND_FORCE}/{INCH}", STIFFNESS),
    ("kip/ft", f"4448.2216152605/{FOOT}", STIFFNESS),
    ("psi", f"{POUND_FORCE}/0.00064516", PRESSURE),
    ("psf", f"{POUND_FORCE}/0.09290304", PRESSURE),
    ("ksi", "4448.2216152605/0.00064516", PRESSURE),
    ("lb/ft^3", f"{POUND}/0.028316846592", DENSITY),
    ("lbf/ft^3", f"{POUND_FORCE}/0.028316846592", WEIGHT_PER_VOLUME),
    ("lbf/in^3", f"{POUND_FORCE}/0.000016387064", WEIGHT_PER_VOLUME),
]
"""Every unit but the radian: prefixes of the SI, and NIST SP 811 (2008), B.8, or products and
quotients of what stands there."""


@pytest.mark.parametrize(("name", "size", "dimension"), EXACT)
def test_conversion_factors_are_the_published_ones(
    name: str, size: str, dimension: Dimension
) -> None:
    top, _, bottom = size.partition("/")
    assert UNITS[name].size == Fraction(top) / Fraction(bottom or 1)
    assert UNITS[name].factor == float(UNITS[name].size)
    assert UNITS[name].dimension == dimension


def test_every_unit_is_compared_with_a_published_one() -> None:
    assert {name for name, _, _ in EXACT} | {"rad", "turn"} == set(UNITS)
    assert UNITS["rad"].factor == 180 / math.pi
    assert UNITS["rad"].dimension == ANGLE
    assert (UNITS["turn"].factor, UNITS["turn"].dimension) == (360, ANGLE)


DIMENSIONS = {
    LENGTH: (1, 0, 0, 0),
    MASS: (0, 1, 0, 0),
    ANGLE: (0, 0, 0, 1),
    FORCE: (1, 1, -2, 0),  # kg m/s^2
    TORQUE: (2, 1, -2, 0),
    ACCELERATION: (1, 0, -2, 0),
    STIFFNESS: (0, 1, -2, 0),
    PRESSURE: (-1, 1, -2, 0),
    DENSITY: (-3, 1, 0, 0),
    WEIGHT_PER_VOLUME: (-2, 1, -2, 0),
}


@pytest.mark.parametrize(("dimension", "exponents"), DIMENSIONS.items())
def test_exponents_of_length_mass_time_and_angle(
    dimension: Dimension, exponents: tuple[int, ...]
) -> None:
    assert tuple(dimension) == exponents


PRINTED = [
    ("N*m", "N·m", r"\mathrm{N{\cdot}m}"),
    ("m/s^2", "m/s²", r"\mathrm{m/s^{2}}"),
    ("g/cm^3", "g/cm³", r"\mathrm{g/cm^{3}}"),
    ("1", "", ""),
    ("deg", "°", r"^{\circ}"),
]


@pytest.mark.parametrize(("name", "plain", "latex"), PRINTED)
def test_how_a_unit_is_printed(name: str, plain: str, latex: str) -> None:
    assert (UNITS[name].plain, UNITS[name].latex) == (plain, latex)


def test_a_space_stands_before_every_unit_but_the_degree_sign() -> None:
    """NIST SP 811 (2008), 7.2."""
    assert [name for name, unit in UNITS.items() if unit.tight] == ["deg"]


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        *(("N·m", "N*m"), ("N m", "N*m"), ("Nm", "N*m"), (" cm ", "cm"), ("", "1")),
        *(("°", "deg"), ("degrees", "deg"), ("ft*lbf", "lbf*ft"), ("in*lbf", "lbf*in")),
        *(("lbf·ft", "lbf*ft"), ("lbf·in", "lbf*in")),
        *(("lbf/in^2", "psi"), ("lbf/ft^2", "psf"), ("kip/in^2", "ksi")),
    ],
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


# A dimension, and the unit each system prints it in.
COHERENT = [
    (PLAIN, "1", "1"),
    (ANGLE, "deg", "deg"),
    (LENGTH, "m", "ft"),
    (MASS, "kg", "slug"),
    (FORCE, "N", "lbf"),
    (TORQUE, "N*m", "lbf*ft"),
    (ACCELERATION, "m/s^2", "ft/s^2"),
    (STIFFNESS, "N/m", "lbf/ft"),
    (PRESSURE, "Pa", "psf"),
    (Dimension(length=2), "m^2", "ft^2"),
    (Dimension(length=3), "m^3", "ft^3"),
    (DENSITY, "kg/m^3", "kg/m^3"),  # nothing is customary for a density: the SI has it
    (WEIGHT_PER_VOLUME, "N/m^3", "lbf/ft^3"),
    (Dimension(5, 5, 5), "1", "1"),  # no unit is of it
]


@pytest.mark.parametrize(("dimension", "metric", "customary"), COHERENT)
def test_each_system_prints_a_dimension_in_its_coherent_unit(
    dimension: Dimension, metric: str, customary: str
) -> None:
    assert SI.unit_of(dimension).name == metric
    assert US_CUSTOMARY.unit_of(dimension).name == customary


@pytest.mark.parametrize(
    ("name", "metric", "customary"),
    [
        *(("deg", True, True), ("rad", True, True), ("turn", True, True), ("1", True, True)),
        *(("cm", True, False), ("kg", True, False), ("m/s^2", True, False)),
        *(("ft", False, True), ("lbf", False, True), ("slug", False, True)),
    ],
)
def test_which_units_are_at_home_in_a_system(name: str, metric: bool, customary: bool) -> None:
    assert SI.speaks(UNITS[name]) is metric
    assert US_CUSTOMARY.speaks(UNITS[name]) is customary


def test_the_usual_gravity_of_each_system() -> None:
    assert (SI.gravity, US_CUSTOMARY.gravity) == ("9.80", "32.2")


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


def test_a_working_whose_forces_are_all_in_kilonewtons_is_in_them() -> None:
    metre, kilonewton, newton = UNITS["m"], UNITS["kN"], UNITS["N"]
    for stated in ([metre, kilonewton], [UNITS["kN/m"]], [UNITS["kN/m^3"], metre]):
        suited = SI.suited_to(stated)
        assert [suited.unit_of(of).name for of in (FORCE, TORQUE, LENGTH)] == ["kN", "kN*m", "m"]
        assert suited.name == SI.name
    for stated in ([metre], [kilonewton, newton], [kilonewton, UNITS["kg"]], [UNITS["N/m"]]):
        assert SI.suited_to(stated) is SI


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
