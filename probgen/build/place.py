"""The place a build is to be put at, judged before any work is done for it."""

from __future__ import annotations

import os
import re
from pathlib import Path
from typing import Final

from probgen.input.fault import Fault, InputError
from probgen.input.file import require_nameable
from probgen.input.outside import OutsideError
from probgen.input.remedy import OtherFolder

_LONGEST_MARK: Final = ".previous"
"""What is put behind a folder's name, with a point before it, while a build takes its place."""


def place_of(out: Path) -> Path:
    """The path of a build's folder, without links.

    Raises InputError where no build can be put: at the root, on a mount point, around the folder
    that the program was started in, or under a name too long; OutsideError where nothing can be
    written.
    """
    require_nameable(out, "folder for a build")
    try:
        target = out.resolve()
        target.with_name(f".{target.name}{_LONGEST_MARK}").lstat()
    except FileNotFoundError:
        pass
    except ValueError:  # the root has no name
        raise _unfit(out, "the root of the disk", "a folder in it") from None
    except RuntimeError:  # until Python 3.13
        raise _unfit(out, "a ring of links", "the path of a folder") from None
    except OSError as error:
        raise _unfit(out, (error.strerror or str(error)).lower(), "the path of a folder") from None
    _judge(target)
    return target


def _judge(target: Path) -> None:
    if re.search("[\ud800-\udfff]", str(target)):  # the library that writes PDFs takes no such path
        expected = "a path that is text where this runs: in plain letters, or LC_ALL=C.UTF-8"
        raise _unfit(target, "a name that is no text", expected)
    if target.exists() and not target.is_dir():
        raise _unfit(target, "a file", "a folder, or nothing")
    if os.path.ismount(target):
        raise _unfit(target, "a mount point", "a folder in it")
    if Path.cwd().resolve().is_relative_to(target):
        found = "the folder you are in, or one around it"
        raise _unfit(target, found, "a folder that can be exchanged for the new one")
    beside = next(each for each in target.parents if each.exists())
    if not beside.is_dir():
        raise _unfit(beside, "a file", "a folder")
    if not os.access(beside, os.W_OK | os.X_OK):
        mend = "take a folder you may write to"
        raise OutsideError(f"{beside} is closed to you", mend, OtherFolder())


def _unfit(path: Path, found: str, expected: str) -> InputError:
    return InputError([Fault(str(path), "", found, expected, remedy=OtherFolder())])
