"""The records that lie in folders: a course's, or those that somebody names."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import Final

from probgen.course.record import RECORD
from probgen.course.secret import Secret
from probgen.input.fault import InputError
from probgen.input.file import read_bytes

_CODE: Final = re.compile(rb'"code": ?"([0-9A-Z-]{1,20})"')
_DEEPEST: Final = 4
"""Folders below one that is searched."""


def records_in(place: Path, deepest: int = _DEEPEST) -> Iterator[Path]:
    """The records in and below a folder, or the one that is named; hidden folders are left out."""
    if place.is_file():
        yield place
        return
    if (place / RECORD).is_file():
        yield place / RECORD
    if deepest:
        with suppress(OSError):
            for inner in sorted(place.iterdir()):
                if inner.is_dir() and not inner.name.startswith(".") and not inner.is_symlink():
                    yield from records_in(inner, deepest - 1)


def codes_beside(out: Path, course: Secret | None) -> frozenset[str]:
    """The codes of the other records of a course, or of those in the folders beside one.

    Files that cannot be read hold none.
    """
    own = (out / RECORD).resolve()
    place, deepest = (course.folder, _DEEPEST) if course else (out.resolve().parent, 1)
    found: set[str] = set()
    for path in records_in(place, deepest):
        if path.resolve() != own:
            with suppress(InputError):
                found |= {code.decode() for code in _CODE.findall(read_bytes(path, "record"))}
    return frozenset(found)
