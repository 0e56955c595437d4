"""Units: what a number is measured in, and how that unit is printed.

Everything is computed in one coherent set: metre, kilogram, second, newton, and the degree for
angles.  A `Unit` knows its size in that set.  Conversion factors of customary units are exact by
definition (NIST SP 811 (2008), appendix B.8: the foot is 0.3048 m, the avoirdupois pound is
0.45359237 kg, and the pound-force is that mass under standard gravity 9.80665 m/s^2).
"""

from __future__ import annotations

import math
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

_NOUNS: Final = {
    PLAIN: "plain number",
    LENGTH: "length",
    Dimension(2): "area",
    MASS: "mass",
    ANGLE: "angle",
    FORCE: "force",
    TORQUE: "torque",
    ACCELERATION: "acceleration",
    STIFFNESS: "force per length",
    PRESSURE: "pressure",
}


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit.

    name: as an author types it, such as "cm" or "N*m".
    size: one of this unit in metres, kilograms, seconds, newtons, degrees, exactly (a radian to the
    digits of a float); factor: the same as a float.
    plain: as printed in running text; latex: the same for LaTeX math, upright.
    tight: printed without a space after the number (the degree sign; NIST SP 811, 7.2).
    """

    name: str
    size: Fraction
    dimension: Dimension
    plain: str
    latex: str
    tight: bool = False
    factor: float = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "factor", float(self.size))


_FOOT = Fraction("0.3048")
_POUND = Fraction("0.45359237")
_STANDARD_GRAVITY = Fraction("9.80665")
_POUND_FORCE = _POUND * _STANDARD_GRAVITY


def _unit(
    name: str, size: Fraction | int, dimension: Dimension, plain: str = "", latex: str = ""
) -> Unit:
    shown = plain or name
    return Unit(name, Fraction(size), dimension, shown, latex or rf"\mathrm{{{shown}}}")


ONE: Final = Unit("1", Fraction(1), PLAIN, "", "")
DEGREE: Final = Unit("deg", Fraction(1), ANGLE, "°", r"^{\circ}", tight=True)
METRE: Final = _unit("m", 1, LENGTH)
KILOGRAM: Final = _unit("kg", 1, MASS)
NEWTON: Final = _unit("N", 1, FORCE)
NEWTON_METRE: Final = _unit("N*m", 1, TORQUE, "N·m", r"\mathrm{N{\cdot}m}")
METRE_PER_SECOND_SQUARED: Final = _unit("m/s^2", 1, ACCELERATION, "m/s²", r"\mathrm{m/s^{2}}")
FOOT: Final = _unit("ft", _FOOT, LENGTH)
INCH: Final = _unit("in", _FOOT / 12, LENGTH)
POUND_FORCE: Final = _unit("lbf", _POUND_FORCE, FORCE)
FOOT_POUND: Final = _unit(
    "lbf*ft", _POUND_FORCE * _FOOT, TORQUE, "lbf·ft", r"\mathrm{lbf{\cdot}ft}"
)

UNITS: Final[dict[str, Unit]] = {
    unit.name: unit
    for unit in (
        ONE,
        DEGREE,
        _unit("rad", Fraction(repr(180 / math.pi)), ANGLE),
        METRE,
        _unit("cm", Fraction(1, 100), LENGTH),
        _unit("mm", Fraction(1, 1000), LENGTH),
        _unit("km", 1000, LENGTH),
        FOOT,
        INCH,
        _unit("m^2", 1, Dimension(2), "m²", r"\mathrm{m^{2}}"),
        KILOGRAM,
        _unit("g", Fraction(1, 1000), MASS),
        _unit("t", 1000, MASS),
        _unit("lb", _POUND, MASS),
        _unit("slug", _POUND_FORCE / _FOOT, MASS),
        NEWTON,
        _unit("kN", 1000, FORCE),
        POUND_FORCE,
        NEWTON_METRE,
        _unit("kN*m", 1000, TORQUE, "kN·m", r"\mathrm{kN{\cdot}m}"),
        FOOT_POUND,
        METRE_PER_SECOND_SQUARED,
        _unit("ft/s^2", _FOOT, ACCELERATION, "ft/s²", r"\mathrm{ft/s^{2}}"),
        _unit("N/m", 1, STIFFNESS),
        _unit("N/cm", 100, STIFFNESS),
        _unit("N/mm", 1000, STIFFNESS),
        _unit("kN/m", 1000, STIFFNESS),
        _unit("lbf/ft", _POUND_FORCE / _FOOT, STIFFNESS),
        _unit("lbf/in", 12 * _POUND_FORCE / _FOOT, STIFFNESS),
        _unit("Pa", 1, PRESSURE),
        _unit("N/m^2", 1, PRESSURE, "N/m²", r"\mathrm{N/m^{2}}"),
    )
}
"""Every unit an author may write, by the name typed."""

_MULTIPLES: Final = {
    "N": "kN", "N*m": "kN*m", "N/m": "kN/m", "Pa": "kPa", "lbf": "kip", "lbf*ft": "kip*ft",
    "lbf/ft": "kip/ft",
}  # fmt: skip


def multiple_of(unit: Unit) -> Unit | None:
    """The thousandfold of a unit that the trade uses beside it, None where there is none."""
    return UNITS.get(_MULTIPLES.get(unit.name, ""))


_SPELLINGS: Final = {"°": "deg", "degrees": "deg", "N·m": "N*m", "N m": "N*m", "Nm": "N*m", "": "1"}


@dataclass(frozen=True, slots=True)
class UnitSystem:
    """The coherent units a course's working is printed in, one for each dimension."""

    name: str
    units: tuple[Unit, ...]

    def unit_of(self, dimension: Dimension) -> Unit:
        """The unit results of this dimension are printed in; SI when the system names none."""
        for unit in (*self.units, *SI.units):
            if unit.dimension == dimension:
                return unit
        return next(
            (u for u in UNITS.values() if u.dimension == dimension and u.size == 1), ONE
        )


SI: Final = UnitSystem(
    "SI", (ONE, DEGREE, METRE, KILOGRAM, NEWTON, NEWTON_METRE, METRE_PER_SECOND_SQUARED)
)
US_CUSTOMARY: Final = UnitSystem(
    "US customary",
    (ONE, DEGREE, FOOT, POUND_FORCE, FOOT_POUND, UNITS["slug"], UNITS["ft/s^2"], UNITS["lbf/ft"]),
)


def unit_named(text: str) -> Unit:
    """The unit an author typed.

    Raises ValueError, naming the units there are, when there is none of that name.
    """
    name = text.strip()
    unit = UNITS.get(_SPELLINGS.get(name, name))
    if unit is None:
        raise ValueError(f"no unit {name!r}; expected one of {', '.join(UNITS)}")
    return unit
