"""The output folder: written beside its place, and put there by a rename when it is whole."""

from __future__ import annotations

import os
import re
import shutil
import unicodedata
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Final

from probgen.bank.fault import Fault, InputError
from probgen.course.roster import Student

RECORD: Final = "record.json"


@contextmanager
def delivered(target: Path, inputs: Iterable[Path] = ()) -> Iterator[Path]:
    """A new folder to write into; it takes the place of `target` when the block ends well.

    An earlier build there is replaced then and not before; other files in it are carried over.
    inputs: files of this build, which may lie in the target.
    Raises InputError when the target holds something that is no earlier build.
    """
    target = target.resolve()
    previous = target.with_name(f".{target.name}.previous")
    if previous.exists() and not target.exists():  # a build was killed between two renames
        previous.rename(target)
    _require_ours(target, {path.resolve() for path in inputs})
    target.parent.mkdir(parents=True, exist_ok=True)
    part = target.with_name(f".{target.name}.{os.getpid()}.part")
    shutil.rmtree(part, ignore_errors=True)
    part.mkdir()
    try:
        yield part
        _exchange(part, target, previous)
    finally:
        shutil.rmtree(part, ignore_errors=True)


def write_file(path: Path, content: bytes) -> None:
    """One file, written beside its place and renamed."""
    path.parent.mkdir(parents=True, exist_ok=True)
    part = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        part.write_bytes(content)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


def file_names(students: Iterable[Student]) -> tuple[str, ...]:
    """A file name, without ending, for each student: place in the roster, name, id."""
    listed = list(students)
    width = max(2, len(str(len(listed))))
    return tuple(
        "-".join(filter(None, (f"{place:0{width}}", _slug(student.name), _slug(student.id))))
        for place, student in enumerate(listed, start=1)
    )


def _slug(text: str) -> str:
    """Lower-case ASCII letters, digits and hyphens; empty when nothing of the text is left."""
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:40].rstrip("-")


def _require_ours(target: Path, inputs: set[Path]) -> None:
    if not target.exists():
        return
    if not target.is_dir():
        mend = "name another place with --out"
        raise InputError([Fault(str(target), "", "a file", "a folder, or nothing", mend)])
    strangers = [entry for entry in sorted(target.iterdir()) if entry not in inputs]
    if strangers and not (target / RECORD).is_file():
        expected = f"an empty folder, or one of an earlier build (with its {RECORD})"
        mend = "name another folder with --out"
        raise InputError([Fault(str(target), "", strangers[0].name, expected, mend)])


def _exchange(part: Path, target: Path, previous: Path) -> None:
    if not target.exists():
        part.rename(target)
        return
    for entry in target.iterdir():
        if not (part / entry.name).exists():
            _carry(entry, part / entry.name)
    shutil.rmtree(previous, ignore_errors=True)
    target.rename(previous)
    try:
        part.rename(target)
    except OSError:
        previous.rename(target)
        raise
    shutil.rmtree(previous, ignore_errors=True)


def _carry(entry: Path, place: Path) -> None:
    if entry.is_dir() and not entry.is_symlink():
        shutil.copytree(entry, place, symlinks=True)
    else:
        shutil.copy2(entry, place, follow_symlinks=False)
