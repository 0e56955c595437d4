"""Files that somebody named: read with one clear fault for what can go wrong, written whole."""

from __future__ import annotations

import os
from pathlib import Path

from probgen.input.fault import Fault, InputError


def read_bytes(path: Path, kind: str) -> bytes:
    """The content of a file; `kind` is what it should be ("class list"), for messages.

    Raises InputError when there is no such file, or it cannot be read.
    """
    try:
        return path.read_bytes()
    except FileNotFoundError:
        found, mend = "no such file", "correct the path, or make the file"
    except IsADirectoryError:
        found, mend = "a folder", "name the file in it"
    except OSError as error:
        found, mend = error.strerror or str(error), "make the file readable"
    raise InputError([Fault(str(path), "", found, f"a {kind}", mend)])


def read_text(path: Path, kind: str) -> str:
    """As `read_bytes`, as UTF-8 text."""
    try:
        return read_bytes(path, kind).decode("utf-8-sig")
    except UnicodeDecodeError:
        fault = Fault(str(path), "", "text that is not UTF-8", f"a {kind}", "save it as UTF-8")
        raise InputError([fault]) from None


def write_file(path: Path, content: bytes) -> None:
    """One file, written beside its place and renamed."""
    path.parent.mkdir(parents=True, exist_ok=True)
    part = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        part.write_bytes(content)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)
