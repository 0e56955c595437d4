"""Where templates are found, and what each is, without reading more of them than a list needs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from probgen.bank.supplied import supplied
from probgen.input.fault import Fault, Faults, InputError, nearest, one_of, shown
from probgen.input.table import Table
from probgen.input.toml import read_toml


@dataclass(frozen=True, slots=True)
class Entry:
    """One template as a list shows it; path: its file."""

    id: str
    family: str
    level: int
    title: str
    revision: int
    path: str
    goals: tuple[str, ...] = ()


@cache
def read_catalogue(folder: Path | None = None) -> tuple[Entry, ...]:
    """The templates in a folder, or those that came with probgen, by family, level and id.

    Raises InputError naming every file that has not the fields of a template.
    """
    entries: list[Entry] = []
    faults = Faults("")
    for path in sorted((folder or supplied("templates")).rglob("*.toml")):
        own = Faults(str(path))
        try:
            entries.append(_entry(Table(read_toml(path, "template"), "", own), str(path)))
        except InputError as error:
            faults.take(error)
        faults.found += own.found
    faults.settle()
    return tuple(sorted(entries, key=lambda e: (e.family, e.level, e.id)))


def read_entry(path: Path) -> Entry:
    """What one template's file says of it.  Raises InputError where that is missing."""
    faults = Faults(str(path))
    entry = _entry(Table(read_toml(path, "template"), "", faults), str(path))
    faults.settle()
    return entry


def of_family(entries: Sequence[Entry], family: str, where: str) -> list[Entry]:
    """The entries of one family; `where` names it in messages.

    Raises InputError where neither they nor the supplied templates have such a family.
    """
    known = dict.fromkeys(entry.family for entry in (*read_catalogue(), *entries))
    if family not in known:
        expected = one_of(known, "the families ")
        raise InputError([Fault(where, "", shown(family), expected, nearest(family, known))])
    return [entry for entry in entries if entry.family == family]


def _entry(top: Table, path: str) -> Entry:
    return Entry(
        id=top.text("id"),
        family=top.text("family"),
        level=top.whole("level", 1, 5),
        title=top.text("title"),
        revision=top.whole("revision", 1, 1_000_000),
        path=path,
        goals=top.texts("goals"),
    )
