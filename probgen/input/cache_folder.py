"""The user's cache folder: closed to everybody else, and done without where there can be none."""

from __future__ import annotations

import atexit
import os
import shutil
import stat
import tempfile
from functools import cache
from pathlib import Path
from typing import Final

from platformdirs import user_cache_path

from probgen.input.folder_lock import hold

_MOST_BYTES: Final = 2**28
"""Of a cached file; a dumped TeX format has some 20 MB."""


def cache_folder(kind: str) -> Path:
    """The folder for cached things of one kind ("plans"), which only its user can write or read.

    A folder for this process alone where the user has none: no home, a home that cannot be written
    to, or a folder there that belongs to somebody else.  Raises OSError when there is no place for
    temporary files either.
    """
    try:
        folder = user_cache_path("probgen")
        if folder.is_absolute():  # "~" is left as it is where nobody knows the user's home
            folder.mkdir(parents=True, exist_ok=True)
            _close(folder)
            own = folder / kind
            own.mkdir(mode=0o700, exist_ok=True)
            _close(own)
            if os.access(own, os.W_OK):
                return own
    except (OSError, RuntimeError):
        pass
    return folder_for_this_process(kind)


def cached_bytes(path: Path) -> bytes | None:
    """The content of a cached file; None when there is none, or one that others could write."""
    try:
        with open(path, "rb", opener=_no_link) as file:
            return file.read(_MOST_BYTES) if _is_own(os.fstat(file.fileno())) else None
    except OSError:
        return None


def _no_link(path: str, flags: int) -> int:
    return os.open(path, flags | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0))


def _close(folder: Path) -> None:
    """Closes a folder of the user's to all others; OSError for one that is somebody else's."""
    found = folder.stat()
    if not hasattr(os, "geteuid"):  # where profiles are closed by the system
        return
    if found.st_uid != os.geteuid():
        raise PermissionError(f"{folder} belongs to somebody else")
    if found.st_mode & 0o077:
        folder.chmod(0o700)


def _is_own(found: os.stat_result) -> bool:
    own = not hasattr(os, "geteuid") or found.st_uid == os.geteuid()
    return own and stat.S_ISREG(found.st_mode) and not found.st_mode & 0o002


@cache
def folder_for_this_process(kind: str) -> Path:
    """A folder in place of the cache's, gone when the process ends.  Raises OSError."""
    folder = Path(tempfile.mkdtemp(prefix=f"probgen-run-{kind}-"))
    hold(folder)  # as long as the process lives
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    return folder
