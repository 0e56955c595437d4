"""What is other in a bank, told in lines that a colleague reads."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from probgen.department.change import GRAVEST_FIRST, Change, Changes, Difference, Trial
from probgen.input.fault import counted_from_one

_LONGEST: Final = 60  # characters of a value that is shown
_MOST: Final = 6  # fields of a template that are shown


def change_list(changes: Changes) -> Iterator[str]:
    """What is new, what is gone, and every change, gravest first."""
    for title, ids in (("new", changes.new), ("gone", changes.gone)):
        for id in ids:
            yield f"{title}: {id}"
    for change in sorted(changes.changed, key=_gravity):
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
    if change.trials:
        yield from _trials(change.trials)


def _gravity(change: Change) -> tuple[int, str]:
    places = [GRAVEST_FIRST.index(kind) for kind in change.kinds]
    return min(places, default=len(GRAVEST_FIRST)), change.id


def _trials(trials: Sequence[Trial]) -> Iterator[str]:
    agree = sum(trial.agree for trial in trials)
    yield f"    the same answers in {agree} of {len(trials)} equal draws; the first:"
    yield f"      {trials[0].values}"
    after = dict(trials[0].after)
    for id, printed in trials[0].before:
        yield f"      {id}: {printed} -> {after.pop(id, 'not asked, or no solution')}"
    for id, printed in after.items():
        yield f"      {id}: not asked, or no solution -> {printed}"


def _told(difference: Difference) -> str:
    """A field with what is other in it; of long texts, the words around that."""
    old, new = (" ".join(text.split()) for text in (difference.before, difference.after))
    if max(len(old), len(new)) > _LONGEST and old and new:
        old, new = _around(old, new)
    field = counted_from_one(difference.field)
    return f"{field}: {_cut(old) or 'nothing'} -> {_cut(new) or 'nothing'}"


def _around(old: str, new: str) -> tuple[str, str]:
    words, others = old.split(), new.split()
    start = _alike(words, others)
    end = _alike(words[start:][::-1], others[start:][::-1])
    before, after = "... " * (start > 0), " ..." * (end > 0)
    own, other = words[start : len(words) - end], others[start : len(others) - end]
    return f"{before}{' '.join(own)}{after}", f"{before}{' '.join(other)}{after}"


def _alike(words: Sequence[str], others: Sequence[str]) -> int:
    """How many words two texts begin with alike."""
    pairs = enumerate(zip(words, others, strict=False))
    return next((i for i, (one, other) in pairs if one != other), min(len(words), len(others)))


def _cut(text: str) -> str:
    return text if len(text) <= 2 * _LONGEST else f"{text[: 2 * _LONGEST - 3]}..."
