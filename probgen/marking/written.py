"""What markings have written into their folder, so that the next replaces that and nothing else."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Final

from probgen.build.file_digest import file_digest
from probgen.course.record import RECORD
from probgen.input.fault import Fault, InputError
from probgen.input.file import read_text, write_beside
from probgen.input.own_file import require_folder

LIST: Final = ".marked.json"
"""Lies in the folder: the digest of each file written, by its path."""
_HANDED_OUT: Final = "sheets"
"""The folder of a build that students get."""


def require_place(folder: Path) -> None:
    """Judges, before any work, whether a marking can be put into a folder.

    Raises InputError where it is none, or holds papers to hand out; OutsideError where it is
    closed.
    """
    require_folder(folder)
    place = folder.resolve()
    for around in (place, *place.parents):
        if around.name == _HANDED_OUT and (around.parent / RECORD).is_file():
            found, expected = "papers to hand out", "a folder that no student gets"
            raise InputError([Fault(str(folder), "", found, expected, "name another folder")])


def take_own(folder: Path, names: Iterable[str], begun: bool) -> Mapping[str, str]:
    """Takes the list away while files of these names are written; gives what it said.

    begun: whether a marking lies there; without a list it is one of an earlier release, or one
    that was stopped, and is believed.
    Raises InputError for every file of a name that no marking has written as it is now.
    """
    listed = _read(folder)
    if listed is None and begun:
        return {}
    there = (name for name in names if (folder / name).exists() or (folder / name).is_symlink())
    foreign = [name for name in there if not _is(folder / name, (listed or {}).get(name))]
    if foreign:
        found = "a file that no marking has written, or that was changed since"
        expected = "nothing, or what was written there"
        mend = "move it away, or name another folder"
        raise InputError([Fault(str(folder / name), "", found, expected, mend) for name in foreign])
    (folder / LIST).unlink(missing_ok=True)
    return listed or {}


def note_own(folder: Path, names: Iterable[str], listed: Mapping[str, str]) -> None:
    """Notes the files of these names as written by a marking, beside those listed before."""
    written = dict(_written(folder, names))
    text = json.dumps({**listed, **written}, indent=0, ensure_ascii=False)
    write_beside(folder / LIST, text.encode())


def _written(folder: Path, names: Iterable[str]) -> Iterator[tuple[str, str]]:
    for name in names:
        if (folder / name).is_file():
            yield name, file_digest(folder / name)


def _is(path: Path, digest: str | None) -> bool:
    return path.is_file() and not path.is_symlink() and file_digest(path) == digest


def _read(folder: Path) -> Mapping[str, str] | None:
    """What the list says; None where there is none, or none that can be read."""
    with suppress(InputError, ValueError, RecursionError):
        content = json.loads(read_text(folder / LIST, "list of what a marking has written"))
        if isinstance(content, dict):
            return {str(name): str(digest) for name, digest in content.items()}
    return None
