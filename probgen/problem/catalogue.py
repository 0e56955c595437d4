"""Where templates are found, and what each is, without reading more of them than a list needs."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

from probgen.bank.supplied import supplied
from probgen.input.fault import Fault, InputError

_HEAD: Final = ("id", "family", "level", "title", "revision")


@dataclass(frozen=True, slots=True)
class Entry:
    """One template as a list shows it; path: its file."""

    id: str
    family: str
    level: int
    title: str
    revision: int
    path: str


@cache
def read_catalogue(folder: Path | None = None) -> tuple[Entry, ...]:
    """The templates in a folder, or those that came with probgen, by family, level and id.

    Raises InputError naming every file that has not the fields of a template.
    """
    entries: list[Entry] = []
    faults: list[Fault] = []
    for path in sorted((folder or supplied("templates")).rglob("*.toml")):
        try:
            head = tomllib.loads(path.read_text(encoding="utf-8"))
            entries.append(Entry(**{key: head[key] for key in _HEAD}, path=str(path)))
        except (tomllib.TOMLDecodeError, KeyError) as error:
            faults.append(Fault(str(path), "", str(error), "a template", "correct the file"))
    if faults:
        raise InputError(faults)
    return tuple(sorted(entries, key=lambda e: (e.family, e.level, e.id)))
