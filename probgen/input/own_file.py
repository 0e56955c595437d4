"""Single files that somebody asks for by name: nothing of theirs is lost to one.

Each ends in a comment with a digest of all before it.  A file is replaced only while that holds:
then it is one of ours, as it was written.
"""

from __future__ import annotations

import hashlib
import os
from pathlib import Path
from typing import Final

from probgen.input.fault import Fault, InputError
from probgen.input.file import read_bytes, require_nameable, write_beside
from probgen.input.outside import OutsideError

_COMMENTS: Final = {".pdf": ("%probgen ", "\n"), ".html": ("\n<!-- probgen ", " -->\n")}
_COMMENTS[".svg"] = _COMMENTS[".html"]
"""How a comment begins and ends in each kind of file."""
_SIGNS: Final = 32


def require_free(path: Path, kind: str) -> None:
    """Judges, before any work, whether a file of a kind (".pdf") can be put at a path.

    Raises InputError for a folder, a device, a link, and a file that is not ours as we wrote it;
    OutsideError where nothing can be written.
    """
    if _is_taken(path):
        _require_own(path, kind)
    _require_open(path.parent)


def require_folder(path: Path) -> None:
    """As `require_free`, for a folder in which files are to be put."""
    if _is_taken(path) and not path.is_dir():
        raise _unfit(path, "no folder")
    _require_open(path)


def write_own(path: Path, content: bytes, kind: str) -> None:
    """Writes a file of a kind whole, as far as the place is free.  Raises as `require_free`."""
    require_free(path, kind)
    begin, end = _COMMENTS[kind]
    write_beside(path, content + f"{begin}{_digest(content)}{end}".encode())


def _is_taken(path: Path) -> bool:
    require_nameable(path, "place for a file")
    try:
        path.lstat()
    except FileNotFoundError:
        return False
    except OSError as error:  # a file in place of a folder, a ring of links, a name too long
        raise _unfit(path, (error.strerror or str(error)).lower()) from None
    return True


def _require_own(path: Path, kind: str) -> None:
    if path.is_symlink():
        raise _unfit(path, "a link")
    try:
        content = read_bytes(path, "file that probgen has written")
    except InputError as error:
        raise _unfit(path, error.faults[0].found) from None
    begin, end = _COMMENTS[kind]
    length = len(begin) + _SIGNS + len(end)
    own = content[:-length]
    if content[-length:] != f"{begin}{_digest(own)}{end}".encode():
        raise _unfit(path, "a file that probgen has not written, or that was changed since")


def _require_open(folder: Path) -> None:
    there = next((each for each in (folder, *folder.parents) if each.exists()), Path())
    if not os.access(there, os.W_OK | os.X_OK):
        raise OutsideError(f"{there} is closed to you", "name a file where you may write")


def _unfit(path: Path, found: str) -> InputError:
    mend = "name another file, or move what is there away"
    return InputError([Fault(str(path), "", found, "nothing, or what probgen wrote there", mend)])


def _digest(content: bytes) -> str:
    return hashlib.blake2b(content, digest_size=_SIGNS // 2).hexdigest()
