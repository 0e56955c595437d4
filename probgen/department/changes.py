"""What became of a state's templates in another: new, gone, renamed, changed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from difflib import SequenceMatcher
from typing import Final

from probgen.bank.template import Template
from probgen.department.change import Changes
from probgen.department.comparison import compare
from probgen.statics.fingerprint import fingerprint

_ALIKE: Final = 0.5
"""Of two texts with the same physics, from which on one is taken for the other renamed."""


def changes(before: Mapping[str, Template], after: Mapping[str, Template]) -> Changes:
    """Every template of two states held against what it was.

    A template with an id of its own counts as renamed where it says so (origin.replaces), or has
    the physics of one that is gone, and much of its text.
    """
    gone = {id: each for id, each in before.items() if id not in after}
    new = {id: each for id, each in after.items() if id not in before}
    formerly = dict(_renamed(gone, new))
    pairs = [(before[formerly.get(id, id)], each) for id, each in after.items()
             if formerly.get(id, id) in before]  # fmt: skip
    found = [compare(old, now) for old, now in pairs]
    told = tuple(each for each in found if each.kinds or each.renamed)
    return Changes(
        tuple(id for id in new if id not in formerly),
        tuple(id for id in gone if id not in formerly.values()),
        told,
        len(found) - len(told),
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
