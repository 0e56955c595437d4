"""Definitions that data alone settle, and those that wait for something to be found."""

from __future__ import annotations

from probgen.quantities.expression import names_in
from probgen.statics.system import Definition, System


def settle(system: System) -> tuple[tuple[Definition, ...], tuple[Definition, ...]]:
    """Definitions that givens alone settle, and those that hold an unknown."""
    open_names = set(system.unknowns)
    settled, unsettled = [], []
    for definition in system.definitions:
        if names_in(definition.expression) & open_names:
            open_names.add(definition.variable)
            unsettled.append(definition)
        else:
            settled.append(definition)
    return tuple(settled), tuple(unsettled)
