"""The order of steps as one works: one body after the other, as far as the steps allow."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain

from probgen.quantities.expression import names_in
from probgen.statics.step import Step

_Home = tuple[str, ...]


def body_by_body(steps: Sequence[Step]) -> list[Step]:
    """The steps so that those of one body, or of one group of bodies, follow one another.

    A step comes after those whose results it uses.  After a body comes one that goes on with what
    was found on it; else the order is kept.  A condition belongs to the body whose result it uses,
    one on data alone to that which uses its result first.  Steps of equations solved together stay
    together.
    """
    waiting = _units(steps)
    found = {step.unknown for step in steps}
    homes: dict[str, _Home] = {}
    ordered: list[Step] = []
    here: _Home = ()
    while waiting:
        ready = [unit for unit in waiting if not _needs(unit) & found - homes.keys()]
        own = (u for u in ready if _home(u, homes) in (here, ()))
        going_on = (u for u in ready if any(homes.get(id) == here for id in _needs(u)))
        unit = next(chain(own, going_on, ready))
        waiting.remove(unit)
        here = _home(unit, homes) or _used_by(unit, waiting) or here
        homes |= {step.unknown: here for step in unit}
        ordered += unit
    return ordered


def _units(steps: Sequence[Step]) -> list[tuple[Step, ...]]:
    """Each step alone, or with those it was solved with."""
    units: list[tuple[Step, ...]] = []
    taken: set[str] = set()
    for step in steps:
        if step.unknown in taken:
            continue
        partners = {partner.unknown for partner in step.partners}
        unit = (step, *(each for each in steps if each.unknown in partners))
        taken |= {each.unknown for each in unit}
        units.append(unit)
    return units


def _needs(unit: Sequence[Step]) -> frozenset[str]:
    """What the steps use that they do not give themselves."""
    used = frozenset[str]().union(*(names_in(step.expression) for step in unit))
    return used - {step.unknown for step in unit}


def _used_by(unit: Sequence[Step], waiting: Sequence[Sequence[Step]]) -> _Home:
    """The bodies of the first step that uses a result; () where none that has bodies does."""
    given = {step.unknown for step in unit}
    using = (step for other in waiting if given & _needs(other) for step in other)
    return next((step.equation.bodies for step in using if step.equation.bodies), ())


def _home(unit: Sequence[Step], homes: dict[str, _Home]) -> _Home:
    """The bodies a step is about; () for a condition on data alone."""
    for step in unit:
        if step.equation.bodies:
            return step.equation.bodies
    results = [homes[id] for id in homes if id in _needs(unit)]
    return results[-1] if results else ()
