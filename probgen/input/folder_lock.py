"""A folder held by the process that works in it, so that nobody takes it for left over.

The system lets go of it when the process ends, however it ends.  Cleaners of temporary files
leave a folder alone that is held so (systemd-tmpfiles(8)), whatever the clock says.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

try:
    import fcntl
except ImportError:  # Windows, where a folder in use cannot be removed
    fcntl = None  # type: ignore[assignment]


def hold(folder: Path) -> int | None:
    """Holds a folder until the number it gives is let go of; None where the system has no such.

    Raises BlockingIOError when somebody else holds it, OSError when there is no such folder.
    """
    if fcntl is None:
        return None
    opened = os.open(folder, os.O_RDONLY | os.O_DIRECTORY | os.O_NOFOLLOW)
    try:
        fcntl.flock(opened, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        os.close(opened)
        raise
    return opened


def let_go(held: int | None) -> None:
    """Lets go of what `hold` has given."""
    if held is not None:
        os.close(held)


@contextmanager
def holding(folder: Path) -> Iterator[None]:
    """Holds a folder in a block; raises what `hold` does."""
    held = hold(folder)
    try:
        yield
    finally:
        let_go(held)
