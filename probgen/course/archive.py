"""The records that lie in folders: a course's, or those that somebody names."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.course.edition import content_of
from probgen.course.record import RECORD
from probgen.course.record_file import read_record
from probgen.course.secret import Secret
from probgen.input.fault import Fault, InputError
from probgen.input.file import read_bytes

_CODE: Final = re.compile(rb'"code": ?"([0-9A-Z-]{1,20})"')
_DEEPEST: Final = 4
"""Folders below one that is searched."""
_TOLD: Final = 5
"""Records that a message names."""


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


def record_at(place: Path) -> Path:
    """The record that is named, or the one in or below the folder that is.

    A path without a record stays as it is; who reads it tells so.  Raises InputError where a folder
    has several.
    """
    found = [] if place.is_file() or (place / RECORD).is_file() else list(records_in(place))
    if len(found) > 1:
        told = ", ".join(map(str, found[:_TOLD])) + (", ..." if found[_TOLD:] else "")
        fault = Fault(str(place), "", f"{len(found)} records: {told}", "one", "name one of them")
        raise InputError([fault])
    if found:
        return found[0]
    return place / RECORD if place.is_dir() else place


@dataclass(slots=True)
class Beside:
    """The other records of a course, or of the folders beside one, by the codes in them.

    places: the record that holds each code, read whole only when it is asked for.
    """

    places: dict[str, Path]

    def content(self, code: str) -> str:
        """As `edition.Elsewhere` has it; a record that cannot be read holds nothing."""
        if code not in self.places:
            return ""
        with suppress(InputError):
            record = read_record(self.places[code], edited=True)
            issue = record.issues[record.issue_of[code]]
            edition = next(each for each in record.editions if each.code == code)
            return content_of(issue, edition)
        return ""


def records_beside(out: Path, course: Secret | None) -> Beside:
    """What lies in the folder of a course, or beside a build's own folder where it has none."""
    own = (out / RECORD).resolve()
    place, deepest = (course.folder, _DEEPEST) if course else (out.resolve().parent, 1)
    places: dict[str, Path] = {}
    for path in records_in(place, deepest):
        if path.resolve() != own:
            with suppress(InputError):
                found = _CODE.findall(read_bytes(path, "record"))
                places |= dict.fromkeys((code.decode() for code in found), path)
    return Beside(places)
