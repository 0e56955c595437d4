"""What failed, told with the mend in the command line's own words: its options and commands."""

from __future__ import annotations

import errno
import shlex
from dataclasses import replace
from typing import Final

from probgen.input.fault import Fault, InputError
from probgen.input.outside import OutsideError
from probgen.input.remedy import (
    BuildIt,
    CorrectOrReplace,
    NewBank,
    OtherFolder,
    OtherFolderOrReplace,
    OwnNote,
    Remedy,
    Replace,
    SeeTemplates,
    TakeEdited,
    TrustLayouts,
    WorkAgain,
    WorkIt,
)

_OPTIONS: Final = {"person": "--by"}
"""What an option is called where it is not called as its task calls what is typed with it."""

_FULL = "make room on the disk, or name a {place} on another one{option}"
_CLOSED = "name a {place} you may write to{option}"
_MENDS: Final = {
    errno.ENOSPC: _FULL,
    errno.EDQUOT: _FULL,
    errno.EACCES: _CLOSED,
    errno.EPERM: _CLOSED,
    errno.EROFS: _CLOSED,
    errno.ENOENT: _CLOSED,
    errno.ENOTDIR: _CLOSED,
    errno.EEXIST: "move what is there away, or name another {place}{option}",
    errno.ENAMETOOLONG: "name a {place} with a shorter name{option}",
    errno.EISDIR: "name a file, and not a folder{option}",
}
"""What to do when the system refuses; nothing is half-written then."""


def told(error: InputError | OutsideError) -> str:
    """The message, every mend with what this command line has to offer."""
    if isinstance(error, OutsideError):
        return str(OutsideError(error.failed, _mend(error.mend, error.remedy)))
    return str(InputError(map(_in_own_words, error.faults)))


def _in_own_words(fault: Fault) -> Fault:
    option = _OPTIONS.get(fault.field, f"--{fault.field}")
    field = option if fault.asked else fault.field
    return replace(fault, field=field, mend=_mend(fault.mend, fault.remedy))


def told_by_system(error: OSError, folder: bool) -> str:
    """As `told`, of what the operating system refused.

    folder: whether the command makes a folder, named with --out; others write a file that is named.
    """
    where = f": {error.filename}" if error.filename else ""
    mend = _MENDS.get(error.errno or 0, "see whether the place can be written to")
    mend = mend.format(place="folder" if folder else "place", option=" with --out" * folder)
    return str(OutsideError(f"{error.strerror or error}{where}", mend))


def _mend(mend: str, remedy: Remedy | None) -> str:
    match remedy:
        case None:
            return mend
        case OtherFolder():
            return ", or ".join(filter(None, (mend, "name another folder with --out")))
        case OtherFolderOrReplace():
            own = (
                "name another folder with --out, or begin anew with --draft --replace, which keeps "
                "the old build beside it"
            )
            return "; ".join(filter(None, (mend, own)))
        case Replace():
            own = "begin anew with --replace, which keeps the old build beside it"
            return "; or ".join(filter(None, (mend, own)))
        case SeeTemplates():
            return "; ".join(filter(None, (mend, "see the ids with `probgen list`")))
        case NewBank(folder):
            own = f"or make one with `probgen bank new {shlex.quote(folder)}`"
            return ", ".join(filter(None, (mend, own)))
        case CorrectOrReplace():
            own = (
                'say what is corrected with --correct "the beam\'s length", and print it anew; or '
                "begin anew with --replace, which keeps the old build beside it; where nothing was "
                "handed out yet, write on with --draft --replace, and later with --draft alone"
            )
            return "; ".join(filter(None, (mend, own)))
        case TakeEdited():
            own = (
                "take it as it is with `probgen build --edited`: papers that changed get new codes"
            )
            return ", or ".join(filter(None, (mend, own)))
        case OwnNote():
            own = 'say in your own words when they were released: --note "Released early."'
            return ", or ".join(filter(None, (mend, own)))
        case BuildIt(path):
            return "; ".join(filter(None, (mend, f"build it with: probgen build {path}")))
        case WorkIt(path):
            return "; ".join(filter(None, (mend, f"work it with: probgen work {path}")))
        case TrustLayouts():
            own = "add --trust-layouts, or take your own: `probgen build --layouts DIR`"
            return "; ".join(filter(None, (mend, own)))
        case WorkAgain(template, values, customary):
            stated = "--units US " * customary
            stated += " ".join(f"--with {name}={value}" for name, value in values.items())
            again = f"see it again with: probgen work {template} {stated}"
            return "; ".join(filter(None, (mend, again)))
