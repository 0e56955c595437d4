"""A program shut in by the kernel: it opens what it was given, and nothing else on the machine.

Linux does that with Landlock (since 5.13).  Where there is none, nothing is shut, and what TeX and
the press themselves forbid has to do: see `engine` and `lualatex`.
"""

from __future__ import annotations

import ctypes
import os
import subprocess
import sys
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Final

# From linux/landlock.h and the kernel's documentation of Landlock; the system calls have these
# numbers on every architecture but Alpha.
_CREATE, _ADD, _RESTRICT = 444, 445, 446
_VERSION: Final = 1  # flag of _CREATE: tells the version of the interface
_BENEATH: Final = 1  # kind of rule: what lies beneath a path
_NO_NEW_PRIVILEGES: Final = 38  # of prctl, in linux/prctl.h

_READ: Final = 0b1100  # read a file, read a folder
_OF_FILES: Final = 0b100_0000_0000_0110  # write, read, truncate: what a rule on a file may grant
_EXECUTE: Final = 0b1  # stays free: whatever is run is shut in as well
_CALLS: Final = {1: 13, 2: 14, 3: 15, 4: 15, 5: 16}  # how many rights a version knows of
_TCP: Final = 0b11  # bind, connect; since version 4
_OTHERS: Final = 0b11  # sockets without a name, signals to other processes; since version 6


@dataclass(frozen=True, slots=True)
class Enclosure:
    """What may be opened: `own` is a folder to work in, `readable` are files and folders to read.

    Paths that are not there grant nothing.
    """

    own: Path
    readable: tuple[Path, ...]


class _Ruleset(ctypes.Structure):
    _fields_ = (
        ("files", ctypes.c_uint64), ("network", ctypes.c_uint64), ("scoped", ctypes.c_uint64),
    )  # fmt: skip


class _Beneath(ctypes.Structure):
    _pack_ = 1
    _layout_ = "ms"
    _fields_ = (("allowed", ctypes.c_uint64), ("parent", ctypes.c_int32))


def start(
    enclosure: Enclosure | None, command: Sequence[str], **options: Any
) -> subprocess.Popen[bytes]:
    """Starts a program inside an enclosure, None for outside of any.

    options: as of `subprocess.Popen`.
    """
    if enclosure is None or not shuts():
        return subprocess.Popen(command, **options)
    # What a thread shuts itself into holds for what it starts, and for no other thread.
    with ThreadPoolExecutor(1) as alone:
        return alone.submit(_start_shut_in, enclosure, command, options).result()


@cache
def shuts() -> bool:
    """Whether this kernel shuts programs in."""
    return _version() > 0


@cache
def _version() -> int:
    if not sys.platform.startswith("linux"):
        return 0
    return int(_libc().syscall(_CREATE, None, ctypes.c_size_t(0), _VERSION))


@cache
def _libc() -> Any:
    return ctypes.CDLL(None, use_errno=True)


def _start_shut_in(
    enclosure: Enclosure, command: Sequence[str], options: dict[str, Any]
) -> subprocess.Popen[bytes]:
    version = _version()
    every = 2 ** _CALLS.get(version, 16) - 1 & ~_EXECUTE
    rules = _Ruleset(every, _TCP if version >= 4 else 0, _OTHERS if version >= 6 else 0)
    ruleset = _call(_CREATE, ctypes.byref(rules), ctypes.c_size_t(ctypes.sizeof(rules)), 0)
    try:
        _allow(ruleset, enclosure.own, every)
        _allow(ruleset, Path(os.devnull), every & _OF_FILES)
        for path in enclosure.readable:
            _allow(ruleset, path, _READ)
        _libc().prctl(_NO_NEW_PRIVILEGES, 1, 0, 0, 0)
        _call(_RESTRICT, ruleset, 0)
    finally:
        os.close(ruleset)
    return subprocess.Popen(command, **options)


def _allow(ruleset: int, path: Path, rights: int) -> None:
    with suppress(FileNotFoundError, NotADirectoryError), _opened(path) as place:
        granted = rights if path.is_dir() else rights & _OF_FILES
        rule = _Beneath(granted, place)
        _call(_ADD, ruleset, _BENEATH, ctypes.byref(rule), 0)


@contextmanager
def _opened(path: Path) -> Iterator[int]:
    place = os.open(path, os.O_PATH)
    try:
        yield place
    finally:
        os.close(place)


def _call(number: int, *arguments: Any) -> int:
    done = int(_libc().syscall(number, *arguments))
    if done < 0:
        raise OSError(ctypes.get_errno(), os.strerror(ctypes.get_errno()))
    return done


def there(paths: Iterable[str]) -> tuple[Path, ...]:
    """Those of some paths that are there."""
    return tuple(Path(path) for path in paths if path and os.path.exists(path))
