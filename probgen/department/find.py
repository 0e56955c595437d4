"""Templates of a bank that are as somebody wants them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from probgen.department.entry import Entry
from probgen.input.fault import Faults, nearest, one_of


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is asked of a template; "" or None where anything will do.

    goal: a part of one; level: the same; family, asks: the same; minutes: at most.
    unused_since: not set on that day or later.  easier_than: facility of at least the share.
    """

    goal: str = ""
    level: int | None = None
    family: str = ""
    asks: str = ""
    minutes: int | None = None
    unused_since: date | None = None
    easier_than: float | None = None


def find(entries: Sequence[Entry], wanted: Wanted, where: str) -> tuple[Entry, ...]:
    """The entries that are as wanted, in their order.

    where: names what the words were typed in.  Raises InputError for a goal, a family or a kind of
    question that no template of the bank has.
    """
    faults = Faults(where)
    goals = {goal for each in entries for goal in each.goals}
    if wanted.goal and not any(wanted.goal.casefold() in goal.casefold() for goal in goals):
        mend = nearest(wanted.goal, goals)
        faults.add("goal", wanted.goal, "a goal that a template of the bank has", mend)
    for field, word, known in (
        ("family", wanted.family, {each.family for each in entries}),
        ("asks", wanted.asks, {word for each in entries for word in each.asks}),
    ):
        if word and word not in known:
            faults.add(field, word, one_of(sorted(known)), nearest(word, known))
    faults.settle()
    return tuple(each for each in entries if all(_fits(each, wanted)))


def _fits(entry: Entry, wanted: Wanted) -> Iterator[bool]:
    """Whether an entry is as wanted, in each respect."""
    goal = wanted.goal.casefold()
    yield any(goal in each.casefold() for each in entry.goals)
    yield wanted.level in (None, entry.level)
    yield wanted.family in ("", entry.family)
    yield not wanted.asks or wanted.asks in entry.asks
    yield wanted.minutes is None or 0 < entry.minutes <= wanted.minutes
    yield not (wanted.unused_since and entry.last) or entry.last < wanted.unused_since
    easier = wanted.easier_than
    yield easier is None or (entry.facility is not None and entry.facility >= easier)
