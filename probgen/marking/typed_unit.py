"""Units as people type them: every unit a text may stand for."""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal
from functools import cache, lru_cache
from typing import Final

from probgen.quantities.unit import UNITS, Unit

_WORDS: Final = {
    "N": ("newton", "newtons"),
    "kN": ("kilonewton", "kilonewtons"),
    "N*m": ("newton metre", "newton metres", "newton meter", "newton meters"),
    "m": ("metre", "metres", "meter", "meters"),
    "cm": ("centimetre", "centimetres", "centimeter", "centimeters"),
    "mm": ("millimetre", "millimetres", "millimeter", "millimeters"),
    "km": ("kilometre", "kilometres", "kilometer", "kilometers"),
    "kg": ("kilogram", "kilograms", "kilogramme", "kilogrammes"),
    "g": ("gram", "grams", "gramme", "grammes"),
    "deg": ("°", "º", "degree", "degrees", "deg."),
    "rad": ("radian", "radians"),
    "ft": ("foot", "feet", "ft."),
    "in": ("inch", "inches", "in.", '"', "″"),
    "lb": ("lb", "lbs", "lbm", "pound", "pounds"),
    "lbf": ("lb", "lbs", "lbf", "pound", "pounds", "pound-force"),  # pounds of force, in daily use
    "lbf*ft": ("ft lb", "ft lbs", "lb ft", "lbs ft", "foot pounds", "pound feet", "ft lbf"),
    "lbf*in": ("in lb", "in lbs", "lb in", "lbs in", "inch pounds", "pound inches", "in lbf"),
    "lbf/ft": ("lb/ft", "lbs/ft"),
    "lbf/in": ("lb/in", "lbs/in"),
    "kip": ("kips",),
    "ton": ("tons",),
    "Pa": ("pascal", "pascals"),
    "slug": ("slugs",),
}
"""What a unit is called besides its name."""

_JOINTS: Final = re.compile(r"\s*[*.\-]\s*|\s+")
_PER: Final = re.compile(r"\s*/\s*|\s+per\s+")


@lru_cache(1000)
def units_of(text: str) -> tuple[tuple[Unit | None, Decimal], ...]:
    """Every unit that a text may stand for, and what the number before it is taken times.

    No text is no unit.  Empty for what is no unit at all.
    """
    text = text.strip()
    if not text:
        return ((None, Decimal(1)),)
    if text == "%":
        return ((UNITS["1"], Decimal("0.01")),)
    spelled = _spelled(text)
    exact = _table().get(spelled, ())
    found = exact or _folded().get(spelled.casefold(), ())
    return tuple((unit, Decimal(1)) for unit in found)


def _spelled(text: str) -> str:
    """A unit's text with one sign between its factors and none about a bar."""
    text = text.rstrip(" .") if text not in ("deg.", "ft.", "in.") else text
    return _JOINTS.sub("*", _PER.sub("/", text))


@cache
def _table() -> dict[str, tuple[Unit, ...]]:
    found: dict[str, tuple[Unit, ...]] = {}
    for unit in UNITS.values():
        for text in dict.fromkeys(_spellings(unit)):
            found[text] = (*found.get(text, ()), unit)
    return found


def _spellings(unit: Unit) -> Iterator[str]:
    yield _spelled(unit.name)
    yield from map(_spelled, _WORDS.get(unit.name, ()))
    factors = unit.name.split("*")
    yield "*".join(reversed(factors))
    yield "".join(factors)


@cache
def _folded() -> dict[str, tuple[Unit, ...]]:
    """Units by their names in small letters: "KN" is no unit but kN."""
    found: dict[str, tuple[Unit, ...]] = {}
    for text, units in _table().items():
        key = text.casefold()
        found[key] = tuple(dict.fromkeys((*found.get(key, ()), *units)))
    return found
