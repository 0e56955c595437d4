"""The folder a TeX run works in, which is gone when the run is done."""

from __future__ import annotations

import errno
import shutil
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from functools import cache
from pathlib import Path
from typing import Final

from probgen.input.folder_lock import holding
from probgen.input.outside import OutsideError

_PREFIX: Final = "probgen-run-"
_SECONDS_LEFT: Final = 86400.0
"""No run takes a day; what is as old as that was left by one that was killed."""
_OF_THE_DISK: Final = (errno.ENOSPC, errno.EDQUOT, errno.EROFS)


@contextmanager
def workroom() -> Iterator[Path]:
    """An empty folder among the temporary files, held while it is in use.

    Raises OutsideError, naming the place, where none can be made or the disk is full.
    """
    place = ""
    try:
        place = tempfile.gettempdir()
        _sweep(Path(place))
        with tempfile.TemporaryDirectory(prefix=_PREFIX) as name, holding(Path(name)):
            yield Path(name)
    except OSError as error:
        if place and error.errno not in _OF_THE_DISK and not str(error.filename).startswith(place):
            raise
        where = f"{place} cannot" if place else "no folder can"
        failed = f"{where} be used for temporary files"
        mend = "make room on the disk that holds it, or set TMPDIR to another folder"
        raise OutsideError(f"{failed}: {error.strerror or error}", mend) from None


@cache
def _sweep(place: Path) -> None:
    """Removes, once for a process, what killed runs have left: old by the clock, and not held."""
    oldest = time.time() - _SECONDS_LEFT
    for left in place.glob(f"{_PREFIX}*"):
        with suppress(OSError):  # another process may just be sweeping too, or still be at work
            if left.stat().st_mtime < oldest:
                with holding(left):
                    shutil.rmtree(left, ignore_errors=True)
