"""Templates in two systems of units: what takes another's place in US customary.

Any table of a template may hold `us = { ... }`: entries that take the place of the table's own in
US customary, such as the range, the unit and the name of a given.  A template is read for one
system, and is then as if it had been written for that one alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, Final

from probgen.bank.template import Derived, Given
from probgen.input.fault import Faults
from probgen.quantities.unit import SI, US_CUSTOMARY, UnitSystem

_KEY: Final = "us"
_OF_THE_FILE: Final = ("points", "statement")
"""What a file has once: written after the line of a table, `us.points` would be that table's."""
_RANGE: Final = frozenset({"from", "to", "step", "choices"})


def in_units(content: Mapping[str, Any], units: UnitSystem, faults: Faults) -> dict[str, Any]:
    """The content of a template's file for one system of units, without what is for the other."""
    found = _resolved(content, units == US_CUSTOMARY, "", faults)
    assert isinstance(found, dict)
    return found


def systems_of(content: object) -> tuple[UnitSystem, ...]:
    """The systems a template's content is written for: SI, and US customary where it says so."""
    return (SI, US_CUSTOMARY) if _holds_other(content) else (SI,)


def require_units(
    id: str, units: UnitSystem, stated: Iterable[Given | Derived], faults: Faults
) -> None:
    """Notes a fault when quantities are given in another system than the one asked for.

    In a set in SI an author's pounds stay pounds, as they always did.
    """
    strange = [each for each in stated if units != SI and not units.speaks(each.unit)]
    if strange:
        names = ", ".join(f"{each.id} in {each.unit.plain}" for each in strange)
        mend = 'add us = { from = ..., to = ..., step = ..., unit = "ft" } to each, or take'
        mend += " another template for a set in US customary"
        faults.add("given", f"{id} with {names}", f"quantities given in {units.name} units", mend)


def _resolved(content: object, customary: bool, path: str, faults: Faults) -> object:
    if isinstance(content, list):
        rows = enumerate(content)
        return [_resolved(row, customary, f"{path}[{place}]", faults) for place, row in rows]
    if not isinstance(content, Mapping):
        return content
    other = content.get(_KEY, {})
    own = {key: value for key, value in content.items() if key != _KEY}
    if path and isinstance(other, Mapping):
        other = _without_astray(own, other, path, faults)
    if not isinstance(other, Mapping):
        faults.add(_entry(path, _KEY), other, "a table of entries", 'write us = { unit = "ft" }')
    elif customary:
        own = _laid_over(own, other)
    return {
        key: _resolved(value, customary, _entry(path, key), faults) for key, value in own.items()
    }


def _without_astray(
    own: Mapping[str, Any], other: Mapping[str, Any], path: str, faults: Faults
) -> dict[str, Any]:
    """What takes the place of a table's entries, without what is of the whole file."""
    astray = [key for key in _OF_THE_FILE if key in other and key not in own]
    for key in astray:
        expected = f"{_entry(_KEY, key)} before the first table of the file"
        mend = f"move it up, beside id and title: where it stands it is an entry of {path}"
        faults.add(_entry(_entry(path, _KEY), key), other[key], expected, mend)
    return {key: value for key, value in other.items() if key not in astray}


def _entry(path: str, key: str) -> str:
    """What an entry is called in a fault: a table's name before its key."""
    return ".".join([path, key] if path else [key])


def _laid_over(own: Mapping[str, Any], other: Mapping[str, Any]) -> dict[str, Any]:
    """The entries of both, the other's first; a range or choices take the place of either."""
    if _RANGE & other.keys():
        own = {key: value for key, value in own.items() if key not in _RANGE}
    merged = {**own, **other}
    for key in own.keys() & other.keys():
        if isinstance(own[key], Mapping) and isinstance(other[key], Mapping):
            merged[key] = _laid_over(own[key], other[key])
    return merged


def _holds_other(content: object) -> bool:
    if isinstance(content, Mapping):
        return _KEY in content or any(map(_holds_other, content.values()))
    return isinstance(content, list) and any(map(_holds_other, content))
