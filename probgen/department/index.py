"""What a bank's files say, kept in a database beside the cache so that thousands are found at once.

The files alone are the truth: a file that is other than it was is read again, and whatever is wrong
with the database costs time, not an answer.
"""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from contextlib import closing, suppress
from dataclasses import asdict, dataclass, replace
from datetime import date
from hashlib import blake2b
from pathlib import Path
from typing import Any, Final

from probgen import __version__
from probgen.bank.bank import read_file
from probgen.bank.bank_folder import BankFolder
from probgen.bank.uses import USES, read_use_file
from probgen.department.entry import Entry, entry_of
from probgen.input.cache_folder import cache_folder
from probgen.input.fault import Fault, Faults, InputError

_TABLES: Final = """
create table file (path text primary key, stamp text not null);
create table template (path text primary key, id text not null, entry text not null);
create table use (path text not null, day text not null, template text not null,
                  students integer not null, marked integer not null, facility real);
create index use_path on use (path);
create table past (template text primary key, times integer not null, students integer not null,
                   last text not null, earned real, marked integer not null);
"""
_FORM: Final = f"{__version__} 2"
"""Of what is kept; a database of another form is made anew."""
_SUMMED_UP: Final = """
insert into past
select template, count(*), sum(students), max(day), sum(facility * marked),
       sum(case when facility is null then 0 else marked end)
from use group by template
"""
"""Of all uses of each template; renewed where a file of uses is other than it was."""


@dataclass(frozen=True, slots=True)
class Listed:
    """entries: by id; faults: of files that could not be read, and are not among them."""

    entries: tuple[Entry, ...]
    faults: tuple[Fault, ...]


def entries_of(bank: BankFolder) -> Listed:
    """The newest revision of every template of a bank, with its uses."""
    name = blake2b(str(bank.path.resolve()).encode("utf-8", "surrogatepass")).hexdigest()[:32]
    path = cache_folder("banks") / f"{name}.sqlite"
    try:
        return _entries(bank, str(path))
    except sqlite3.Error:
        with suppress(OSError):
            path.unlink()
        return _entries(bank, ":memory:")


def _entries(bank: BankFolder, database: str) -> Listed:
    with closing(sqlite3.connect(database)) as kept, kept:
        _prepare(kept)
        files = [max(own.items())[1] for own in bank.revisions.values()]
        faults = _renew(kept, files, sorted((bank.path / USES).glob("*.csv")))
        past = {row[0]: row[1:] for row in kept.execute("select * from past")}
        rows = kept.execute("select entry from template order by id").fetchall()
        found = (_read(row[0]) for row in rows)
        return Listed(tuple(_with_past(each, past.get(each.id)) for each in found), tuple(faults))


def _prepare(kept: sqlite3.Connection) -> None:
    kept.execute("create table if not exists form (said text)")
    if kept.execute("select said from form").fetchall() == [(_FORM,)]:
        return
    for table in ("form", "file", "template", "use", "past"):
        kept.execute(f"drop table if exists {table}")
    kept.execute("create table form (said text)")
    kept.execute("insert into form values (?)", (_FORM,))
    kept.executescript(_TABLES)


def _renew(
    kept: sqlite3.Connection, templates: Sequence[Path], uses: Sequence[Path]
) -> list[Fault]:
    """Takes in what is new or other, and drops what is gone; faults of what cannot be read."""
    known = dict(kept.execute("select path, stamp from file"))
    stamps = {str(path): _stamp(path) for path in (*templates, *uses)}
    changed = {path for path, stamp in stamps.items() if known.get(path) != stamp}
    gone = known.keys() - stamps.keys()
    _forget(kept, {*changed, *gone})
    faults: list[Fault] = []
    for path in changed & set(map(str, templates)):
        try:
            entry = entry_of(read_file(Path(path)))
        except InputError as error:
            faults += error.faults
            continue
        said = json.dumps(asdict(entry), default=str)
        kept.execute("insert into template values (?, ?, ?)", (path, entry.id, said))
        kept.execute("insert into file values (?, ?)", (path, stamps[path]))
    faults += _renew_uses(kept, {str(path): stamps[str(path)] for path in uses}, changed)
    if gone or changed & set(map(str, uses)):
        kept.execute("delete from past")
        kept.execute(_SUMMED_UP)
    return faults


def _renew_uses(
    kept: sqlite3.Connection, stamps: Mapping[str, str], changed: Set[str]
) -> Iterator[Fault]:
    """Takes in the rows of files of uses, as far as they are among those changed."""
    for path in stamps.keys() & changed:
        own = Faults(path)
        rows = list(_use_rows(Path(path), own))
        yield from own.found
        if not own.found:
            kept.executemany("insert into use values (?, ?, ?, ?, ?, ?)", rows)
            kept.execute("insert into file values (?, ?)", (path, stamps[path]))


def _stamp(path: Path) -> str:
    found = path.stat()
    return f"{found.st_size} {found.st_mtime_ns} {found.st_ino}"


def _forget(kept: sqlite3.Connection, paths: Iterable[str]) -> None:
    for path in paths:
        for table in ("file", "template", "use"):
            kept.execute(f"delete from {table} where path = ?", (path,))


def _use_rows(path: Path, faults: Faults) -> Iterator[tuple[object, ...]]:
    try:
        for use in read_use_file(path, faults):
            day = use.day.isoformat()
            yield str(path), day, use.template, use.students, use.marked, use.facility
    except InputError as error:
        faults.take(error)


def _read(said: str) -> Entry:
    row: dict[str, Any] = json.loads(said)
    return Entry(**{**row, "goals": tuple(row["goals"]), "asks": tuple(row["asks"])})


def _with_past(entry: Entry, past: tuple[int, int, str, float, int] | None) -> Entry:
    if past is None:
        return entry
    times, students, last, earned, marked = past
    return replace(
        entry,
        times=times,
        students=students,
        last=date.fromisoformat(last),
        facility=earned / marked if marked else None,
    )
