"""The secret that keys a course's codes: 128 random bits, in a file that is closed to others."""

from __future__ import annotations

import os
import re
import secrets
import stat
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.input.fault import Fault, InputError
from probgen.input.file import read_text

SECRET: Final = "course.secret"
"""The file's name; it lies in the folder of a course."""
_BYTES: Final = 16
_FORM: Final = re.compile(rf"[0-9a-f]{{{2 * _BYTES}}}")
_FARTHEST: Final = 2
"""Folders above an assignment's own in which the course's secret may lie."""


@dataclass(frozen=True, slots=True)
class Secret:
    """text: the secret itself; folder: of its course."""

    text: str
    folder: Path


def new_secret() -> str:
    """128 random bits, as text."""
    return secrets.token_hex(_BYTES)


def find_secret(folder: Path) -> Secret | None:
    """The secret of the course to which a folder belongs; None where it has none.

    Raises InputError when the file is no secret, or others may read it.
    """
    own = folder.resolve()
    for place in (own, *list(own.parents)[:_FARTHEST]):
        path = place / SECRET
        if path.is_file():
            _require_closed(path)
            return Secret(_read(path), place)
    return None


def write_secret(folder: Path) -> Path:
    """Draws a secret for the course in a folder; one that is there stays as it is."""
    path = folder / SECRET
    try:
        opened = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    except FileExistsError:
        return path
    with os.fdopen(opened, "w", encoding="ascii") as file:
        file.write(f"{new_secret()}\n")
    return path


def _read(path: Path) -> str:
    text = read_text(path, "secret of a course").strip()
    if not _FORM.fullmatch(text):
        expected = f"{2 * _BYTES} signs from 0 to 9 and a to f, as probgen writes them"
        mend = "take it from a copy; without it new codes are unlike the old ones, which stay good"
        raise InputError([Fault(str(path), "", "something else", expected, mend)])
    return text


def _require_closed(path: Path) -> None:
    mode = stat.S_IMODE(path.stat().st_mode)
    if os.name == "posix" and mode & 0o077:
        expected = "a file that nobody else may read"
        raise InputError([Fault(str(path), "", f"mode {mode:03o}", expected, f"chmod 600 {path}")])
