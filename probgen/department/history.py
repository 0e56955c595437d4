"""A template's revisions in its bank, each held against the one before."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

from probgen.bank.bank import Bank, read_file
from probgen.bank.bank_folder import BankFolder, bank_of, read_bank_folder
from probgen.department.change import Change
from probgen.department.comparison import compare


@dataclass(frozen=True, slots=True)
class Revision:
    """One of a template's revisions; change: against the one before, None for the first."""

    number: int
    change: Change | None


def folder_of(bank: Bank) -> BankFolder | None:
    """The department's bank whose templates these are; None where they lie in no such folder.

    Raises InputError with what is wrong in that folder.
    """
    folder = next(map(bank_of, bank.files.values()), None)
    return read_bank_folder(folder) if folder else None


def history(revisions: Mapping[int, Path], last: int) -> tuple[Revision, ...]:
    """The newest first, down from the last that is wanted; revisions: their files, ascending.

    Raises InputError for a revision that cannot be read.
    """
    numbers = [number for number in revisions if number <= last]
    templates = [read_file(revisions[number]) for number in numbers]
    found = [Revision(number, None) for number in numbers[:1]]
    for before, after in pairwise(templates):
        found.append(Revision(after.revision, compare(before, after)))
    return tuple(reversed(found))
