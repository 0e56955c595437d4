"""One build at a time into one folder, also when an earlier one was killed."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from probgen.input.outside import OutsideError
from probgen.input.remedy import OtherFolder

if sys.platform == "win32":
    import msvcrt

    def _seize(file: int) -> None:
        try:
            msvcrt.locking(file, msvcrt.LK_NBLCK, 1)
        except OSError as error:
            raise BlockingIOError from error
else:
    import fcntl

    def _seize(file: int) -> None:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)


@contextmanager
def held(path: Path) -> Iterator[None]:
    """Holds the lock file at a path, which is gone afterwards.

    The system lets go of it when the process ends, however it ends.  Raises OutsideError when
    another process holds it.
    """
    file = _acquire(path)
    try:
        yield
    finally:
        with suppress(OSError):  # Windows removes no file that is open; it can stay
            path.unlink()
        os.close(file)


def _acquire(path: Path) -> int:
    while True:
        file = os.open(path, os.O_RDWR | os.O_CREAT, 0o644)
        try:
            _seize(file)
            # Its holder may have removed the file between our two calls.
            if os.path.exists(path) and os.path.samestat(os.fstat(file), os.stat(path)):
                return file
        except FileNotFoundError:
            pass
        except BlockingIOError:
            os.close(file)
            raise OutsideError(
                "another build is writing to this folder",
                "wait until it is done",
                OtherFolder(),
            ) from None
        os.close(file)
