"""The order of steps as one works: one body after the other, as far as the steps allow."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from probgen.quantities.expression import names_in
from probgen.statics.step import Step

_Home = tuple[str, ...]
_FIRST: Final = {"forces first": "force", "torques throughout": "torque"}
_NOTHING: Final[Mapping[str, Collection[str]]] = MappingProxyType({})


def body_by_body(
    steps: Sequence[Step],
    wanted: Sequence[str] = (),
    after: Mapping[str, Collection[str]] = _NOTHING,
) -> list[Step]:
    """The steps so that those of one body, or of one group of bodies, follow one another.

    A step comes after those whose results it uses.  Of the bodies that may come next, and of a
    body's steps as far as the course has no rule, those are first that lead to what is asked first;
    then bodies that go on with what was found on the one before; else the order is kept.  A
    condition belongs to the body whose result it uses, one on data alone to that which uses its
    result first.  Steps of equations solved together stay together.
    wanted: what is asked, in its order; after: by the unknown of a step what else it comes after.
    """
    waiting = list(_units(steps, after))
    leads = _leads(waiting, wanted)
    found = {step.unknown for step in steps}
    homes: dict[str, _Home] = {}
    ordered: list[Step] = []
    here: _Home = ()
    while waiting:
        ready = [unit for unit in waiting if not unit.needs & found - homes.keys()]
        own = [unit for unit in ready if unit.home(homes) in (here, ())]
        if not own:
            going_on = {unit for unit in ready if any(homes.get(id) == here for id in unit.uses)}
            first = min(ready, key=lambda each: (leads[each], each not in going_on))
            own = [unit for unit in ready if unit.home(homes) == first.home(homes)]
        unit = min(own, key=lambda each: (each.is_late, leads[each]))
        waiting.remove(unit)
        here = unit.home(homes) or _used_by(unit, waiting) or here
        homes |= dict.fromkeys(unit.gives, here)
        ordered += unit.steps
    return ordered


@dataclass(frozen=True, slots=True, eq=False)
class _Unit:
    """A step alone, or with those it was solved with.

    uses: the quantities that they use and do not give themselves; needs: these, and what else has
    to be known before.
    """

    steps: tuple[Step, ...]
    uses: frozenset[str]
    needs: frozenset[str]

    @property
    def gives(self) -> frozenset[str]:
        return frozenset(step.unknown for step in self.steps)

    @property
    def is_late(self) -> bool:
        """Whether the course takes other steps of the same body before it."""
        equation = self.steps[0].equation
        return equation.kind != _FIRST.get(equation.method.order, equation.kind)

    def home(self, homes: Mapping[str, _Home]) -> _Home:
        """The bodies it is about; () for a condition on data alone."""
        for step in self.steps:
            if step.equation.bodies:
                return step.equation.bodies
        results = [homes[id] for id in homes if id in self.uses]
        return results[-1] if results else ()


def _units(steps: Sequence[Step], after: Mapping[str, Collection[str]]) -> Iterator[_Unit]:
    taken: set[str] = set()
    for step in steps:
        if step.unknown in taken:
            continue
        partners = {partner.unknown for partner in step.partners}
        own = (step, *(each for each in steps if each.unknown in partners))
        given = {each.unknown for each in own}
        used = frozenset[str]().union(*(names_in(each.expression) for each in own))
        else_needed = frozenset[str]().union(*(after.get(id, ()) for id in given))
        taken |= given
        yield _Unit(own, used - given, (used | else_needed) - given)


def _leads(units: Sequence[_Unit], wanted: Sequence[str]) -> dict[_Unit, int]:
    """The place among what is asked of the first thing that each leads to."""
    giving = {id: unit for unit in units for id in unit.gives}
    leads: dict[_Unit, int] = {}
    for place, asked in enumerate(wanted):
        behind = [asked]
        while behind:
            unit = giving.get(behind.pop())
            if unit is not None and unit not in leads:
                leads[unit] = place
                behind += unit.needs
    return {unit: leads.get(unit, len(wanted)) for unit in units}


def _used_by(unit: _Unit, waiting: Sequence[_Unit]) -> _Home:
    """The bodies of the first step that uses a result; () where none that has bodies does."""
    using = (step for other in waiting if unit.gives & other.uses for step in other.steps)
    return next((step.equation.bodies for step in using if step.equation.bodies), ())
