"""A file that is followed: what is made of it is made anew each time somebody saves it."""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from probgen.cli.mend import told
from probgen.cli.terminal import say
from probgen.input.fault import InputError
from probgen.input.outside import OutsideError

_T = TypeVar("_T")


def follow(path: Path, make: Callable[[], _T]) -> _T | None:
    """Calls `make` at once and whenever the file was saved, until Ctrl-C.

    What is wrong with the file meanwhile is told, and the file followed further; a file that is
    away for a moment, as while an editor replaces it, is waited for.  Returns what was made last.
    """
    seen, made = None, None
    try:
        while True:
            state = _state(path)
            if state not in (None, seen):
                seen = state
                made = _told(make) or made
                say(f"-- {path} is followed: save it, or stop with Ctrl-C", err=True)
            time.sleep(0.1)  # s: sooner than anybody looks up
    except KeyboardInterrupt:
        return made


def _state(path: Path) -> tuple[int, int, int] | None:
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size, found.st_ino


def _told(make: Callable[[], _T]) -> _T | None:
    """What was made; None, and a message, where something is wrong."""
    try:
        return make()
    except (InputError, OutsideError) as error:
        say(told(error), err=True)
        return None
