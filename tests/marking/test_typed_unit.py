"""Units as people type them."""

from __future__ import annotations

from decimal import Decimal

import pytest

from probgen.marking.typed_unit import units_of
from probgen.quantities.unit import UNITS

SPELLED = [
    ("N", ["N"]), ("newtons", ["N"]), ("KN", ["kN"]), ("kn", ["kN"]), ("Nm", ["N*m"]),
    ("N m", ["N*m"]), ("N·m", []), ("N*m", ["N*m"]), ("N-m", ["N*m"]), ("m N", ["N*m"]),
    ("ft-lb", ["lbf*ft"]), ("foot pounds", ["lbf*ft"]), ("lb", ["lb", "lbf"]),
    ("pounds", ["lb", "lbf"]), ("lbf", ["lbf"]), ("deg.", ["deg"]), ("°", ["deg"]),
    ("m/s^2", ["m/s^2"]), ("N per m", ["N/m"]), ("N / m", ["N/m"]), ("furlong", []),
    ("N N", []), ("kgf", []), ("ft.", ["ft"]), ("N.", ["N"]),
    ("m kN", ["kN*m"]), ("kNm", ["kN*m"]), ("kg/m^3", ["kg/m^3"]), ("m/N", []), ("NEWTON", ["N"]),
    ("in.", ["in"]), ("″", ["in"]), ("lbs/ft", ["lbf/ft"]), ("LBF", ["lbf"]), ("KIPS", ["kip"]),
]  # fmt: skip


@pytest.mark.parametrize(("text", "names"), SPELLED)
def test_a_unit_by_what_it_is_called(text: str, names: list[str]) -> None:
    found = [unit.name for unit, times in units_of(text) if unit and times == 1]
    assert found == names


def test_no_unit_and_a_share() -> None:
    assert units_of("  ") == ((None, Decimal(1)),)
    assert units_of("%") == ((UNITS["1"], Decimal("0.01")),)


@pytest.mark.parametrize("name", [name for name in UNITS if name != "1"])
def test_every_unit_is_read_as_it_is_printed(name: str) -> None:
    unit = UNITS[name]
    assert unit in [found for found, _ in units_of(unit.name)]
