"""What became of a state's templates in another: new, gone, renamed, changed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Final

from probgen.bank.template import Template
from probgen.department.change import Change, Changes
from probgen.department.comparison import compare
from probgen.statics.fingerprint import fingerprint

_ALIKE: Final = 0.5
"""Of two texts with the same physics, from which on one is taken for the other renamed."""


@dataclass(frozen=True, slots=True)
class Paired:
    """The templates of two states, each with what it was; new, gone: those that have no other."""

    pairs: tuple[tuple[Template, Template], ...]
    new: tuple[Template, ...]
    gone: tuple[Template, ...]


def changes(before: Mapping[str, Template], after: Mapping[str, Template]) -> Changes:
    """Every template of two states held against what it was."""
    both = paired(before, after)
    return gathered(both, [compare(*pair) for pair in both.pairs])


def paired(before: Mapping[str, Template], after: Mapping[str, Template]) -> Paired:
    """Which template of a state is which of another.

    A template with an id of its own counts as renamed where it says so (origin.replaces), or has
    the physics of one that is gone, and much of its text.
    """
    gone = {id: each for id, each in before.items() if id not in after}
    new = {id: each for id, each in after.items() if id not in before}
    formerly = dict(_renamed(gone, new))
    return Paired(
        tuple((before[formerly.get(id, id)], each) for id, each in after.items()
              if formerly.get(id, id) in before),
        tuple(each for id, each in new.items() if id not in formerly),
        tuple(each for id, each in gone.items() if id not in formerly.values()),
    )  # fmt: skip


def gathered(both: Paired, found: Sequence[Change], same: int = 0) -> Changes:
    """What was found of every pair; same: templates that nobody had to look at."""
    told = tuple(each for each in found if each.is_any)
    return Changes(
        tuple(each.id for each in both.new),
        tuple(each.id for each in both.gone),
        told,
        len(found) - len(told) + same,
    )


def _renamed(
    gone: Mapping[str, Template], new: Mapping[str, Template]
) -> Iterator[tuple[str, str]]:
    """New ids with their former ones, each taken once, the most alike first."""
    left = dict(gone)
    physics = {id: fingerprint(each.system) for id, each in (*gone.items(), *new.items())}
    pairs = [
        (2.0 if now.origin.replaces == old else _likeness(gone[old], now), id, old)
        for id, now in new.items()
        for old in gone
        if now.origin.replaces == old or physics[id] == physics[old]
    ]
    taken: set[str] = set()
    for likeness, id, old in sorted(pairs, key=lambda pair: (-pair[0], *pair[1:])):
        if likeness >= _ALIKE and id not in taken and old in left:
            taken.add(id)
            del left[old]
            yield id, old


def _likeness(one: Template, other: Template) -> float:
    return SequenceMatcher(None, one.source, other.source, autojunk=False).ratio()
