"""The course's method as an assignment file states it, in a table of its own."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from dataclasses import replace
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from pathlib import Path
from typing import Any, Final, get_args, get_type_hints

from probgen.input.fault import Faults
from probgen.input.file_kind import ASSIGNMENT, kind_of, require_kind
from probgen.input.table import Table
from probgen.input.toml import read_toml
from probgen.quantities.unit import ACCELERATION, SI, US_CUSTOMARY, UnitSystem
from probgen.working.convention import Convention

_CHOICES: Final[dict[str, tuple[str, ...]]] = {
    name: get_args(hint) for name, hint in get_type_hints(Convention).items() if get_args(hint)
}
_CALLED: Final = {"turning": "torque_word", "figures": "significant_figures"}
"""What a file calls a convention's field, where that is another word."""
_MEANT: Final = {
    "g": "gravity",
    "digits": "significant_figures",
    "sig_figs": "significant_figures",
    "sigfigs": "significant_figures",
    "moment": "torque_word",
    "sign": "positive",
    "rotation": "positive",
    "angles": "direction",
}
"""Fields by other words of the trade."""
_SYSTEMS_MEANT: Final = {
    **dict.fromkeys(("us", "usc", "uscs", "english", "imperial", "ft-lb"), US_CUSTOMARY.name),
    **dict.fromkeys(("metric", "mks", "si units"), SI.name),
}
_WORDS_MEANT: Final = {
    "torque": {
        **dict.fromkeys(("lever arm", "lever-arm", "lever", "moment arm", "arms"), "arm"),
        **dict.fromkeys(("sine", "sin", "angles"), "angle"),
        **dict.fromkeys(("cross product", "vector", "vectors", "component"), "components"),
    },
    "positive": {"ccw": "counter-clockwise", "anticlockwise": "counter-clockwise",
                 "anti-clockwise": "counter-clockwise", "cw": "clockwise"},
}  # fmt: skip
"""Words by others of the trade."""
_GRAVITY: Final = (Decimal("9.7"), Decimal("9.9"))  # m/s^2, least and greatest
_SYSTEMS: Final = {system.name: system for system in (SI, US_CUSTOMARY)}


def read_method(table: Table) -> Convention:
    """The method of a [method]; notes its faults.  Closes the table."""
    usual = Convention()
    table.rename(**{new: old for old, new in _CALLED.items()})
    read: dict[str, Any] = {
        name: table.word(
            _CALLED.get(name, name), choices, getattr(usual, name), _WORDS_MEANT.get(name, {})
        )
        for name, choices in _CHOICES.items()
    }
    units = unit_system_named(_read_units(table, usual.units.name))
    read["units"] = units
    read["gravity"] = str(_read_gravity(table, units))
    read["figures"] = table.whole(_CALLED["figures"], 2, 6, usual.figures)
    read["tolerance"] = float(table.number("tolerance", usual.tolerance, "0", "0.5"))
    table.close(_MEANT)
    return Convention(**read)


def read_method_file(path: Path) -> Convention:
    """The [method] of an assignment file, or a file that has nothing but a method.

    Raises InputError with all its faults.
    """
    content = read_toml(path, "file with a method")
    require_method(content, str(path))
    faults = Faults(str(path))
    if "method" in content or kind_of(content) == ASSIGNMENT:
        table = Table(content, "", faults).table("method")
    else:
        table = Table(content, "", faults)
    convention = read_method(table)
    faults.settle()
    return convention


def require_method(content: Mapping[str, Any], where: str) -> None:
    """Raises InputError for a file of another kind that says nothing of a method."""
    if "method" not in content:
        require_kind(content, ASSIGNMENT, where)


def _read_units(table: Table, usual: str) -> str:
    return table.word("units", list(_SYSTEMS), usual, _SYSTEMS_MEANT) or SI.name


def with_typed(
    convention: Convention, units: UnitSystem | None, gravity: str | None, where: str
) -> Convention:
    """A convention in another system of units, with its usual g, or with a g as typed in `where`.

    None leaves either as it is.  Raises InputError.
    """
    if units is not None and units != convention.units:
        convention = replace(convention, units=units, gravity=units.gravity)
    if gravity is None:
        return convention
    faults = Faults(where)
    content: dict[str, object] = {"units": convention.units.name, "gravity": gravity}
    with suppress(ArithmeticError):
        content["gravity"] = Decimal(gravity)
    typed = read_method(Table(content, "", faults))
    faults.settle()
    return replace(convention, gravity=typed.gravity)


def unit_system_named(name: str) -> UnitSystem:
    """The unit system of that name; KeyError when there is none."""
    return _SYSTEMS[name]


def gravity_bounds(units: UnitSystem) -> tuple[Decimal, Decimal]:
    """The least and the greatest g that a set may state, in the system's own unit."""
    size = Decimal(str(units.unit_of(ACCELERATION).factor))
    low, high = (end / size for end in _GRAVITY)
    place = Decimal("0.01")
    return low.quantize(place, ROUND_CEILING), high.quantize(place, ROUND_FLOOR)


def _read_gravity(table: Table, units: UnitSystem) -> Decimal:
    """g in the unit of the system, between its least and its greatest on the ground.

    From 9.7 to 9.9 m/s^2: it is 9.76 on high mountains at the equator and 9.83 at the poles.
    """
    unit, (low, high) = units.unit_of(ACCELERATION), gravity_bounds(units)
    g = table.decimal("gravity", required=False)
    if g is None:
        return Decimal(units.gravity)
    if not low <= g <= high:
        expected = f"g on the ground in {unit.plain}, from {low} to {high}"
        table.fault("gravity", g, expected, _mend_gravity(g, units))
        return Decimal(units.gravity)
    return g


def _mend_gravity(g: Decimal, units: UnitSystem) -> str:
    """What to write; a g of the other system tells that its units were meant."""
    other = US_CUSTOMARY if units == SI else SI
    low, high = gravity_bounds(other)
    mend = f"write gravity = {units.gravity}"
    return f'{mend}, or units = "{other.name}"' if low <= g <= high else mend
