"""Units: what a number is measured in, and how that unit is printed.

Everything is computed in one coherent set: metre, kilogram, second, newton, and the degree for
angles.  A `Unit` knows its size in that set.  Conversion factors of customary units are exact by
definition (NIST SP 811 (2008), appendix B.8: the foot is 0.3048 m, the avoirdupois pound is
0.45359237 kg, and the pound-force is that mass under standard gravity 9.80665 m/s^2; the kip is
1000 lbf, the short ton 2000 lb, the ounce a sixteenth of a pound).
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Final, NamedTuple


class Dimension(NamedTuple):
    """Exponents of length, mass, time and plane angle."""

    length: int = 0
    mass: int = 0
    time: int = 0
    angle: int = 0

    def times(self, other: Dimension) -> Dimension:
        return Dimension(*(a + b for a, b in zip(self, other, strict=True)))

    def over(self, other: Dimension) -> Dimension:
        return Dimension(*(a - b for a, b in zip(self, other, strict=True)))

    def power(self, exponent: int) -> Dimension:
        return Dimension(*(a * exponent for a in self))

    @property
    def noun(self) -> str:
        """The trade's word for a quantity of this dimension, for messages."""
        return _NOUNS.get(self, "quantity of another kind")


PLAIN: Final = Dimension()
LENGTH: Final = Dimension(length=1)
MASS: Final = Dimension(mass=1)
ANGLE: Final = Dimension(angle=1)
FORCE: Final = Dimension(1, 1, -2)
TORQUE: Final = Dimension(2, 1, -2)
ACCELERATION: Final = Dimension(1, 0, -2)
STIFFNESS: Final = Dimension(0, 1, -2)
PRESSURE: Final = Dimension(-1, 1, -2)
AREA: Final = Dimension(2)
VOLUME: Final = Dimension(3)
DENSITY: Final = Dimension(-3, 1)
WEIGHT_PER_VOLUME: Final = Dimension(-2, 1, -2)

_NOUNS: Final = {
    PLAIN: "plain number",
    LENGTH: "length",
    AREA: "area",
    VOLUME: "volume",
    MASS: "mass",
    ANGLE: "angle",
    FORCE: "force",
    TORQUE: "torque",
    ACCELERATION: "acceleration",
    STIFFNESS: "force per length",
    PRESSURE: "pressure",
    DENSITY: "density",
    WEIGHT_PER_VOLUME: "weight per volume",
}


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit.

    name: as an author types it, such as "cm" or "N*m".
    size: one of this unit in metres, kilograms, seconds, newtons, degrees, exactly (a radian to the
    digits of a float); factor: the same as a float.
    plain: as printed in running text; latex: the same for LaTeX math, upright.
    tight: printed without a space after the number (the degree sign; NIST SP 811, 7.2).
    words: what it is, for the list of all units, where its name does not say so.
    """

    name: str
    size: Fraction
    dimension: Dimension
    plain: str
    latex: str
    tight: bool = False
    words: str = ""
    factor: float = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "factor", float(self.size))

    def __hash__(self) -> int:
        return hash(self.name)  # of all its fields it would take twenty times as long


_FOOT = Fraction("0.3048")
_INCH = _FOOT / 12
_POUND = Fraction("0.45359237")
_STANDARD_GRAVITY = Fraction("9.80665")
_POUND_FORCE = _POUND * _STANDARD_GRAVITY


def _unit(name: str, size: Fraction | int, dimension: Dimension, words: str = "") -> Unit:
    """A unit printed as it is typed, with a raised dot and raised exponents."""
    plain = name.replace("*", "·").replace("^2", "²").replace("^3", "³")
    latex = re.sub(r"\^(\d)", r"^{\1}", name).replace("*", r"{\cdot}")
    return Unit(name, Fraction(size), dimension, plain, rf"\mathrm{{{latex}}}", words=words)


ONE: Final = Unit("1", Fraction(1), PLAIN, "", "", words="a plain number")
DEGREE: Final = Unit("deg", Fraction(1), ANGLE, "°", r"^{\circ}", tight=True, words="degree")
METRE: Final = _unit("m", 1, LENGTH)
KILOGRAM: Final = _unit("kg", 1, MASS)
NEWTON: Final = _unit("N", 1, FORCE)
NEWTON_METRE: Final = _unit("N*m", 1, TORQUE)
METRE_PER_SECOND_SQUARED: Final = _unit("m/s^2", 1, ACCELERATION)

_METRIC: Final = (
    METRE,
    _unit("cm", Fraction(1, 100), LENGTH),
    _unit("mm", Fraction(1, 1000), LENGTH),
    _unit("km", 1000, LENGTH),
    _unit("m^2", 1, AREA),
    _unit("cm^2", Fraction(1, 10**4), AREA),
    _unit("mm^2", Fraction(1, 10**6), AREA),
    _unit("m^3", 1, VOLUME),
    _unit("cm^3", Fraction(1, 10**6), VOLUME),
    KILOGRAM,
    _unit("g", Fraction(1, 1000), MASS),
    _unit("t", 1000, MASS, "metric ton, 1000 kg"),
    NEWTON,
    _unit("kN", 1000, FORCE),
    _unit("MN", 10**6, FORCE),
    NEWTON_METRE,
    _unit("N*cm", Fraction(1, 100), TORQUE),
    _unit("N*mm", Fraction(1, 1000), TORQUE),
    _unit("kN*m", 1000, TORQUE),
    METRE_PER_SECOND_SQUARED,
    _unit("N/m", 1, STIFFNESS),
    _unit("N/cm", 100, STIFFNESS),
    _unit("N/mm", 1000, STIFFNESS),
    _unit("kN/m", 1000, STIFFNESS),
    _unit("Pa", 1, PRESSURE),
    _unit("kPa", 1000, PRESSURE),
    _unit("MPa", 10**6, PRESSURE),
    _unit("N/m^2", 1, PRESSURE),
    _unit("N/mm^2", 10**6, PRESSURE),
    _unit("kN/m^2", 1000, PRESSURE),
    _unit("kg/m^3", 1, DENSITY),
    _unit("g/cm^3", 1000, DENSITY),
    _unit("N/m^3", 1, WEIGHT_PER_VOLUME),
    _unit("kN/m^3", 1000, WEIGHT_PER_VOLUME),
)

FOOT: Final = _unit("ft", _FOOT, LENGTH, "foot")
INCH: Final = _unit("in", _INCH, LENGTH, "inch, 1/12 ft")
POUND_FORCE: Final = _unit("lbf", _POUND_FORCE, FORCE, "pound-force")
_CUSTOMARY: Final = (
    FOOT,
    INCH,
    _unit("yd", 3 * _FOOT, LENGTH, "yard, 3 ft"),
    _unit("ft^2", _FOOT**2, AREA),
    _unit("in^2", _INCH**2, AREA),
    _unit("ft^3", _FOOT**3, VOLUME),
    _unit("in^3", _INCH**3, VOLUME),
    _unit("lb", _POUND, MASS, "pound, a mass"),
    _unit("oz", _POUND / 16, MASS, "ounce, 1/16 lb"),
    _unit("slug", _POUND_FORCE / _FOOT, MASS, "1 lbf s^2/ft"),
    _unit("ton", 2000 * _POUND, MASS, "US short ton, 2000 lb"),
    POUND_FORCE,
    _unit("kip", 1000 * _POUND_FORCE, FORCE, "1000 lbf"),
    _unit("tonf", 2000 * _POUND_FORCE, FORCE, "weight of a US short ton, 2000 lbf"),
    _unit("lbf*ft", _POUND_FORCE * _FOOT, TORQUE),
    _unit("lbf*in", _POUND_FORCE * _INCH, TORQUE),
    _unit("kip*ft", 1000 * _POUND_FORCE * _FOOT, TORQUE),
    _unit("kip*in", 1000 * _POUND_FORCE * _INCH, TORQUE),
    _unit("ft/s^2", _FOOT, ACCELERATION),
    _unit("in/s^2", _INCH, ACCELERATION),
    _unit("lbf/ft", _POUND_FORCE / _FOOT, STIFFNESS),
    _unit("lbf/in", _POUND_FORCE / _INCH, STIFFNESS),
    _unit("kip/ft", 1000 * _POUND_FORCE / _FOOT, STIFFNESS),
    _unit("psi", _POUND_FORCE / _INCH**2, PRESSURE, "lbf/in^2"),
    _unit("psf", _POUND_FORCE / _FOOT**2, PRESSURE, "lbf/ft^2"),
    _unit("ksi", 1000 * _POUND_FORCE / _INCH**2, PRESSURE, "kip/in^2"),
    _unit("lb/ft^3", _POUND / _FOOT**3, DENSITY),
    _unit("lbf/ft^3", _POUND_FORCE / _FOOT**3, WEIGHT_PER_VOLUME),
    _unit("lbf/in^3", _POUND_FORCE / _INCH**3, WEIGHT_PER_VOLUME),
)

UNITS: Final[dict[str, Unit]] = {
    unit.name: unit
    for unit in (
        ONE,
        DEGREE,
        _unit("rad", Fraction(repr(180 / math.pi)), ANGLE, "radian"),
        Unit("turn", Fraction(360), ANGLE, "turns", r"\mathrm{turns}"),
        *_METRIC,
        *_CUSTOMARY,
    )
}
"""Every unit an author may write, by the name typed."""

_MULTIPLES: Final = {
    **{"mm": "m", "cm": "m", "m": "km", "g": "kg", "N": "kN", "kN": "MN"},
    **{"N*mm": "N*m", "N*cm": "N*m", "N*m": "kN*m", "N/m": "kN/m", "N/m^2": "kN/m^2"},
    **{"Pa": "kPa", "kPa": "MPa", "N/m^3": "kN/m^3"},
    **{"lbf": "kip", "lbf*ft": "kip*ft", "lbf*in": "kip*in", "lbf/ft": "kip/ft", "psi": "ksi"},
}


def multiple_of(unit: Unit) -> Unit | None:
    """The next larger unit, by a power of ten, that is used beside one; None for none."""
    return UNITS.get(_MULTIPLES.get(unit.name, ""))


_SPELLINGS: Final = {
    **{"°": "deg", "degrees": "deg", "N·m": "N*m", "N m": "N*m", "Nm": "N*m", "": "1"},
    **{"ft*lbf": "lbf*ft", "in*lbf": "lbf*in", "lbf·ft": "lbf*ft", "lbf·in": "lbf*in"},
    **{"lbf/in^2": "psi", "lbf/ft^2": "psf", "kip/in^2": "ksi"},
}


@dataclass(frozen=True, slots=True)
class UnitSystem:
    """The coherent units a course's working is printed in, one for each dimension.

    name: as an assignment file states it; gravity: the usual g, as printed, in
    `unit_of(ACCELERATION)`.
    """

    name: str
    gravity: str
    units: tuple[Unit, ...]

    def unit_of(self, dimension: Dimension) -> Unit:
        """The unit results of this dimension are printed in; SI when the system names none."""
        for unit in (*self.units, *SI.units):
            if unit.dimension == dimension:
                return unit
        return next((u for u in UNITS.values() if u.dimension == dimension and u.size == 1), ONE)

    def speaks(self, unit: Unit) -> bool:
        """Whether a unit is at home in this system; degrees and plain numbers are in each."""
        return unit not in (_METRIC if self.name == US_CUSTOMARY.name else _CUSTOMARY)

    def suited_to(self, stated: Iterable[Unit]) -> UnitSystem:
        """The units a working is printed in, by those its quantities are stated in.

        Everything is in feet where nothing is in inches, else in inches: feet are whole inches.
        Forces are in kN where all are stated in kN, each alone or by length, area or volume.
        """
        of_all = set(stated)
        if self == SI:
            loads = {unit for unit in of_all if unit.dimension in _OF_LOADS}
            return _IN_KILONEWTONS if loads and loads <= _KILONEWTONS else self
        inches = set(_IN_INCHES.units) - set(US_CUSTOMARY.units)
        return _IN_INCHES if self == US_CUSTOMARY and inches & of_all else self


SI: Final = UnitSystem(
    "SI",
    "9.80",
    (ONE, DEGREE, METRE, KILOGRAM, NEWTON, NEWTON_METRE, METRE_PER_SECOND_SQUARED),
)


def _customary(length: str) -> UnitSystem:
    """US customary with this unit of length; a mass goes with g in ft/s^2 in either."""
    area, pressure = f"{length}^2", {"ft": "psf", "in": "psi"}[length]
    names = (
        *(length, f"lbf*{length}", f"lbf/{length}", area, f"{length}^3", pressure),
        *("slug", "ft/s^2", "lbf", f"lbf/{length}^3"),
    )
    return UnitSystem("US customary", "32.2", (ONE, DEGREE, *(UNITS[name] for name in names)))


_OF_LOADS: Final = (FORCE, TORQUE, STIFFNESS, PRESSURE, WEIGHT_PER_VOLUME, MASS, DENSITY)
_IN_KILONEWTONS: Final = UnitSystem(
    SI.name,
    SI.gravity,
    tuple(UNITS[name] for name in ("kN", "kN*m", "kN/m", "kN/m^2", "kN/m^3")) + SI.units,
)
_KILONEWTONS: Final = frozenset(_IN_KILONEWTONS.units) - frozenset(SI.units)

US_CUSTOMARY: Final = _customary("ft")
_IN_INCHES: Final = _customary("in")


def unit_named(text: str) -> Unit:
    """The unit an author typed.

    Raises ValueError, naming the units there are, when there is none of that name.
    """
    name = text.strip()
    unit = UNITS.get(_SPELLINGS.get(name, name))
    if unit is None:
        raise ValueError(f"no unit {name!r}; expected one of {', '.join(UNITS)}")
    return unit
