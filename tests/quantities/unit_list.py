"""The list of all units as the guide for authors prints it."""

from __future__ import annotations

from itertools import groupby

from probgen.quantities.unit import UNITS, Unit


def unit_list() -> str:
    """Every unit by what it measures, one line a dimension, in Markdown."""
    ordered = sorted(UNITS.values(), key=_first_place)
    rows = (
        f"| {dimension.noun} | {', '.join(map(_named, units))} |"
        for dimension, units in groupby(ordered, key=lambda unit: unit.dimension)
    )
    return "\n".join(("| of | units |", "| --- | --- |", *rows))


def _first_place(unit: Unit) -> int:
    """Where the first unit of the same dimension stands, so that a dimension stays together."""
    dimensions = [each.dimension for each in UNITS.values()]
    return dimensions.index(unit.dimension)


def _named(unit: Unit) -> str:
    return f"`{unit.name}` ({unit.words})" if unit.words else f"`{unit.name}`"
