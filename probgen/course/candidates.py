"""The templates of a bank that rules choose among, with the days they were set last."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from probgen.bank.bank import Bank
from probgen.bank.bank_folder import bank_of
from probgen.bank.uses import Use, read_uses
from probgen.course.assignment import ProblemSet
from probgen.course.choice import Candidate
from probgen.problem.catalogue import read_entry


def candidates(bank: Bank, problem_set: ProblemSet) -> tuple[Candidate, ...]:
    """What each template's file says of it; uses in this very assignment are none.

    Raises InputError where a file, or what is noted of uses, cannot be read.
    """
    last: dict[Path, Mapping[str, str]] = {}
    found = []
    for path in bank.files.values():
        entry, folder = read_entry(path), bank_of(path)
        if folder and folder not in last:
            last[folder] = dict(_last(read_uses(folder), problem_set))
        own = last.get(folder, {}) if folder else {}
        found.append(
            Candidate(entry.id, entry.family, entry.level, entry.goals, own.get(entry.id, ""))
        )
    return tuple(found)


def _last(uses: tuple[Use, ...], problem_set: ProblemSet) -> Iterator[tuple[str, str]]:
    """The day of each template's last use; uses come by day, so that the last one counts."""
    for use in uses:
        if (use.course, use.assignment) != (problem_set.course, problem_set.title):
            yield use.template, use.day.isoformat()
