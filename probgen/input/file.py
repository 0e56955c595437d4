"""Files that somebody named: read within bounds, written whole; one clear fault for what is wrong.

Only plain files are read: a device or a pipe might never end, and is refused before a byte of it.
"""

from __future__ import annotations

import os
import re
import secrets
import stat
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Final

from probgen.input.fault import Fault, InputError

MOST_BYTES: Final = 32 * 2**20
"""Of any file.  A record of 10,000 students with 20 problems is below it; twice as much JSON would
take more than 1 GB of memory."""

_PART: Final = re.compile(r"\.[0-9a-f]{16}\.part")


_NO_TEXT: Final = (b"PK\x03\x04", b"%PDF", b"\xd0\xcf\x11\xe0", b"\x89PNG", b"\xff\xd8\xff")
"""How files begin that somebody names by mistake."""


def read_bytes(path: Path, kind: str, most: int = MOST_BYTES) -> bytes:
    """The content of a file; `kind` is what it should be ("class list"), for messages.

    Raises InputError when there is no such file, it cannot be read, or it has more than `most`
    bytes.
    """
    require_nameable(path, kind)
    try:
        return _read_plain(path, most)
    except _UnfitError as unfit:
        found, mend = unfit.found, unfit.mend
    except FileNotFoundError:
        found, mend = "no such file", "correct the path, or make the file"
    except IsADirectoryError:
        found, mend = "a folder", "name the file in it"
    except OSError as error:
        found, mend = error.strerror or str(error), "make the file readable"
    raise InputError([Fault(str(path), "", found, a(kind), mend)])


def read_text(path: Path, kind: str, most: int = MOST_BYTES) -> str:
    """As `read_bytes`, as UTF-8 text with or without its mark, lines ended by "\\n"."""
    content = read_bytes(path, kind, most)
    try:
        if content.startswith(_NO_TEXT):
            raise UnicodeError
        text = content.decode("utf-8-sig")
    except UnicodeError:
        found, mend = "text that is not UTF-8", "save it as UTF-8"
        if content.startswith(_NO_TEXT):
            found, mend = "a workbook, a PDF or another file that is no text", "name the text file"
        raise InputError([Fault(str(path), "", found, a(kind), mend)]) from None
    return text.replace("\r\n", "\n").replace("\r", "\n")


def a(kind: str) -> str:
    """A noun with its article."""
    return f"an {kind}" if kind[0] in "aeiou" else f"a {kind}"


def require_nameable(path: Path, kind: str) -> None:
    """Raises InputError for a path that no file can have."""
    try:
        unfit = b"\0" in os.fsencode(path)
    except UnicodeEncodeError:
        unfit = True
    if unfit:
        shown = str(path).encode("ascii", "backslashreplace").decode().replace("\0", "\\0")
        mend = "rename it in plain letters"
        raise InputError([Fault(shown, "", "a name that is no text", a(kind), mend)])


def write_beside(path: Path, content: bytes) -> None:
    """One file, written beside its place and renamed: nobody ever sees half of it.

    Raises OSError, which names the file also where it is the disk that is full.
    """
    require_nameable(path, "place for a file")
    path.parent.mkdir(parents=True, exist_ok=True)
    part = path.with_name(f".{secrets.token_hex(8)}.part")
    try:
        with part.open("xb") as file:  # nothing that somebody has put there is written into
            file.write(content)
        part.replace(path)
    except OSError as error:
        error.filename = str(path)
        raise
    finally:
        part.unlink(missing_ok=True)


@contextmanager
def naming(path: Path) -> Iterator[None]:
    """Has what the system refuses in the block name a file, also where it is the disk that is full.

    It does so by itself only where a file cannot be opened.
    """
    try:
        yield
    except OSError as error:
        error.filename = error.filename or str(path)
        raise


def sync(paths: Iterable[Path]) -> None:
    """Returns when files, or the names in folders, are on the disk itself."""
    for path in paths:
        with suppress(PermissionError):  # Windows opens no folders
            opened = os.open(path, os.O_RDONLY)
            try:
                os.fsync(opened)
            finally:
                os.close(opened)


def is_part(name: str) -> bool:
    """Whether a file is named as `write_beside` names one that is not whole yet."""
    return _PART.fullmatch(name) is not None


class _UnfitError(Exception):
    """What is there is nothing to read."""

    def __init__(self, found: str, mend: str) -> None:
        super().__init__(found)
        self.found, self.mend = found, mend


def _read_plain(path: Path, most: int) -> bytes:
    # Opened first and looked at then, so that it cannot be exchanged between; a pipe without a
    # writer would else wait here for ever.
    with open(path, "rb", opener=_at_once) as file:
        if not stat.S_ISREG(os.fstat(file.fileno()).st_mode):
            raise _UnfitError("a device or a pipe", "save its content as a file, and name that")
        content = file.read(most + 1)
    if len(content) > most:
        raise _UnfitError(f"more than {_size(most)}", "see whether it is the right file")
    return content


def _at_once(path: str, flags: int) -> int:
    return os.open(path, flags | getattr(os, "O_NONBLOCK", 0))


def _size(count: int) -> str:
    return f"{count // 2**20} MB" if count >= 2**20 else f"{count // 1000} KB"
