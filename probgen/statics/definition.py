"""What quantities are worked out from, and which definitions data alone settle."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set

from probgen.quantities.expression import names_in
from probgen.statics.system import Definition, System


def all_behind(names: Iterable[str], sources: Mapping[str, Set[str]]) -> frozenset[str]:
    """Ids of quantities, and of all that they are worked out from, however many steps away.

    sources: what each quantity that is worked out holds, in any order; circles are no harm.
    """
    held = set(names)
    waiting = [*held]
    while waiting:
        fresh = sources.get(waiting.pop(), frozenset()) - held
        waiting += fresh
        held |= fresh
    return frozenset(held)


def names_behind(names: Iterable[str], definitions: Sequence[Definition]) -> frozenset[str]:
    """The same, of what definitions alone say."""
    return all_behind(names, {each.variable: names_in(each.expression) for each in definitions})


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
