"""One writer at a time in a bank's folder: two who add a row at one moment lose none.

Held is the bank's own file, which nobody who writes into the bank replaces, so that no lock is left
over in the version control.  The system lets go of it when the process ends, however it ends.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO, Final

from probgen.bank.bank_folder import BANK_FILE
from probgen.input.outside import OutsideError

PATIENCE: Final = 20.0
"""Seconds; whoever holds a bank adds a few rows to a file."""
_AGAIN: Final = 0.02
"""Seconds between one attempt and the next."""

if sys.platform == "win32":
    import msvcrt

    _BEYOND: Final = 2**30
    """A byte behind the end of any bank's file: others may read it all the same."""

    def _take(file: BinaryIO) -> None:
        file.seek(_BEYOND)
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _take(file: BinaryIO) -> None:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)


@contextmanager
def held(bank: Path) -> Iterator[None]:
    """Waits until nobody else holds the bank in a folder, and holds it.

    A folder without a bank's file is nobody's, and not held.  Raises OutsideError where somebody
    holds the bank for longer than anybody should.
    """
    path = bank / BANK_FILE
    if not path.exists():
        yield
        return
    with _opened(path) as file:
        end = time.monotonic() + PATIENCE
        while not _is_taken(file):
            if time.monotonic() > end:
                failed = f"somebody else is writing to {bank}"
                raise OutsideError(failed, "wait until that is done, and try again")
            time.sleep(_AGAIN)
        yield


def _opened(path: Path) -> BinaryIO:
    """To be written to, which network drives want of a lock, as far as it may be."""
    try:
        return path.open("r+b")
    except PermissionError:
        return path.open("rb")


def _is_taken(file: BinaryIO) -> bool:
    try:
        _take(file)
    except (BlockingIOError, PermissionError):
        return False
    return True
