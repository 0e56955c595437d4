"""What quantities are worked out from, and which definitions data alone settle."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from probgen.quantities.expression import names_in
from probgen.statics.system import Definition, System


def names_behind(names: Iterable[str], definitions: Sequence[Definition]) -> frozenset[str]:
    """Ids of quantities, and of all that they are worked out from, however many steps away.

    definitions: in an order in which each uses earlier ones only.
    """
    held = frozenset(names)
    for definition in reversed(definitions):
        if definition.variable in held:
            held |= names_in(definition.expression)
    return held


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
