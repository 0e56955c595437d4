"""The folder a TeX run works in, which is gone when the run is done."""

from __future__ import annotations

import shutil
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from functools import cache
from pathlib import Path
from typing import Final

_PREFIX: Final = "probgen-run-"
_SECONDS_LEFT: Final = 86400.0
"""No run takes a day; what is as old as that was left by one that was killed."""


@contextmanager
def workroom() -> Iterator[Path]:
    """An empty folder among the temporary files.  Raises OSError where none can be made."""
    _sweep(Path(tempfile.gettempdir()))
    with tempfile.TemporaryDirectory(prefix=_PREFIX) as name:
        yield Path(name)


@cache
def _sweep(place: Path) -> None:
    """Removes, once for a process, what killed runs have left."""
    oldest = time.time() - _SECONDS_LEFT
    for left in place.glob(f"{_PREFIX}*"):
        with suppress(OSError):  # another process may just be sweeping too
            if left.stat().st_mtime < oldest:
                shutil.rmtree(left, ignore_errors=True)
