"""What is other in a bank, told in lines that a colleague reads."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from probgen.department.change import Change, Changes, Difference, Marks, Trial
from probgen.department.rewording import CUT, Fate, Words
from probgen.input.fault import counted_from_one

_LONGEST: Final = 120  # characters of a value that is shown
_MOST: Final = 6  # fields of a template that are shown


def change_list(changes: Changes) -> Iterator[str]:
    """What is new, what is gone, and every change, gravest first."""
    for title, ids in (("new", changes.new), ("gone", changes.gone)):
        for id in ids:
            yield f"{title}: {id}"
    for change in sorted(changes.changed, key=lambda each: (each.gravity, each.id)):
        yield from change_lines(change)
    yield f"{changes.same} as they were"


def change_lines(change: Change) -> Iterator[str]:
    """A template's change: its kinds, the fields, and what came out of the same numbers."""
    kinds = [str(kind) for kind in change.kinds]
    said = ", ".join(["renamed"] * change.renamed + kinds)
    was = f", formerly {change.formerly}" if change.renamed else ""
    old, new = change.revisions
    counted = f"r{new}" if old == new else f"r{old} -> r{new}"
    yield f"{said or 'as it was'}: {change.id} ({counted}{was})"
    for each in change.differences[:_MOST]:
        yield f"    {_told(each)}"
    if len(change.differences) > _MOST:
        yield f"    and {len(change.differences) - _MOST} more"
    if change.marks:
        yield f"    points, of a hundred: {' -> '.join(map(_points, change.marks))}"
    if change.trials:
        yield from _trials(change.trials)


def _trials(trials: Sequence[Trial]) -> Iterator[str]:
    agree = sum(trial.agree for trial in trials)
    yield f"    the same answers in {agree} of {len(trials)} equal draws; the first:"
    yield f"      {trials[0].values}"
    after = dict(trials[0].after)
    for id, printed in trials[0].before:
        yield f"      {id}: {printed} -> {after.pop(id, 'not asked, or no solution')}"
    for id, printed in after.items():
        yield f"      {id}: not asked, or no solution -> {printed}"


def _points(marks: Marks) -> str:
    return ", ".join(f"{what} {points}" for what, points in marks) or "nothing"


def _told(difference: Difference) -> str:
    """A field with what is other in it, and the words around that."""
    old, new = (_side(difference.words, other) for other in (Fate.CAME, Fate.WENT))
    field = counted_from_one(difference.field)
    return f"{field}: {_cut(old) or 'nothing'} -> {_cut(new) or 'nothing'}"


def _side(words: Iterable[Words], other: Fate) -> str:
    """One of two texts, without the words that are in the other alone."""
    return " ".join(each.text for each in words if each.fate is not other)


def _cut(text: str) -> str:
    return text if len(text) <= _LONGEST else f"{text[: _LONGEST - 1]}{CUT}"
