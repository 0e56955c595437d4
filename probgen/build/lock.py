"""One build at a time into one folder, also when an earlier one was killed."""

from __future__ import annotations

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
    another process holds it, or when it is a link to somewhere else.
    """
    if path.is_symlink():
        raise OutsideError(f"{path} is a link, not a lock", "take it away", OtherFolder())
    if not path.parent.is_dir():
        raise FileNotFoundError(2, "No such folder", str(path.parent))
    lock = FileLock(path)
    try:
        lock.acquire(timeout=0)
    except Timeout:
        failed = "another build is writing to this folder"
        raise OutsideError(failed, "wait until it is done", OtherFolder()) from None
    try:
        yield
    finally:
        with suppress(OSError):  # Windows removes no file that is open; it can stay
            path.unlink()
        lock.release()
