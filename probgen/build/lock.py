"""One build at a time into one folder, also when an earlier one was killed."""

from __future__ import annotations

import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from filelock import FileLock, Timeout

from probgen.input.outside import OutsideError
from probgen.input.remedy import OtherFolder


@contextmanager
def held(path: Path) -> Iterator[None]:
    """Holds the lock file at a path, which is gone afterwards.

    The system lets go of it when the process ends, however it ends.  Raises OutsideError when
    another process holds it, or when what is there is no lock, and therefore not to be removed.
    """
    if what := _else_than_a_lock(path):
        raise OutsideError(f"{path} is {what}, not a lock", "move it elsewhere", OtherFolder())
    if not path.parent.is_dir():
        raise FileNotFoundError(2, "No such folder", str(path.parent))
    try:
        taken = FileLock(path).acquire(timeout=0)
    except Timeout:
        failed = "another build is writing to this folder"
        raise OutsideError(failed, "wait until it is done", OtherFolder()) from None
    with taken:
        try:
            yield
        finally:
            with suppress(OSError):  # Windows removes no file that is open; it can stay
                path.unlink()


def _else_than_a_lock(path: Path) -> str:
    """What lies at the place of a lock, "" for nothing or a lock: an empty file of one name."""
    try:
        found = path.lstat()
    except OSError:
        return ""
    if stat.S_ISLNK(found.st_mode):
        return "a link"
    if not stat.S_ISREG(found.st_mode):
        return "a folder" if stat.S_ISDIR(found.st_mode) else "a device or a pipe"
    if found.st_nlink > 1:
        return "another name of some file"
    return "somebody's file" if found.st_size else ""
