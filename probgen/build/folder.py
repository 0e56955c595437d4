"""The output folder: written beside its place, and put there by a rename when it is whole."""

from __future__ import annotations

import shutil
from collections.abc import Iterable, Iterator
from contextlib import AbstractContextManager, contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.build.lock import held
from probgen.build.manifest import MANIFEST, edited_files, made_in, own_files, write_manifest
from probgen.build.place import place_of
from probgen.build.seal import is_sealed, seal
from probgen.course.record import RECORD
from probgen.input.cache_folder import cached_bytes
from probgen.input.fault import Fault, InputError
from probgen.input.file import write_beside
from probgen.input.outside import OutsideError
from probgen.input.remedy import OtherFolder

ANSWERS: Final = "answers.csv"
VERSIONS: Final = "versions.csv"
"""Tells who gets which version of an exam; there only for an exam."""
MISSING: Final = "missing.txt"
"""Tells what could not be printed; there only when something could not."""


@dataclass(frozen=True, slots=True)
class Working:
    """A build's working folder: `whole` will be delivered, `chunks` tells what is in it so far."""

    folder: Path

    @property
    def whole(self) -> Path:
        return self.folder / "whole"

    @property
    def chunks(self) -> Path:
        return self.folder / "chunks"

    @property
    def record(self) -> Path:
        return self.whole / RECORD


@contextmanager
def delivered(target: Path, record: str = "", inputs: Iterable[Path] = ()) -> Iterator[Working]:
    """A working folder beside `target`; its whole takes the target's place when the block ends.

    An earlier build there is replaced then and not before; other files in it are carried over.
    When the block fails, or its process is killed, the working folder stays if chunks in it
    are done, and is what the block gets next time if the record is the same.
    record: the text of the build's record; inputs: files of this build, which may lie in target.
    Raises InputError when the target holds something that is no earlier build, OutsideError while
    another build works on it.
    """
    target = place_of(target)
    require_ours(target, inputs)
    target.parent.mkdir(parents=True, exist_ok=True)
    with _locked(target):
        _recover(target)
        if _previous(target).exists():
            failed = f"{_previous(target)} is in the way, and no build of yours"
            raise OutsideError(failed, "move it elsewhere", OtherFolder())
        working = working_on(target)
        if not _is_of(working, record):
            _start(working, record)
        try:
            yield working
            write_manifest(working.whole)
            _exchange(working.whole, target)
        finally:
            begun = working.whole.exists() and any(working.chunks.glob("*.json"))
            if is_sealed(working.folder) and not begun:
                shutil.rmtree(working.folder, ignore_errors=True)


def working_on(target: Path) -> Working:
    """Where a build of `target` keeps what it has done so far."""
    target = target.resolve()
    return Working(target.with_name(f".{target.name}.part"))


def recover(target: Path) -> None:
    """Mends a target whose build was killed just as it took its place.

    Raises InputError where no build can be put.
    """
    target = place_of(target)
    if _previous(target).exists():
        with _locked(target):
            _recover(target)


def require_ours(out: Path, inputs: Iterable[Path]) -> None:
    """Raises InputError when a folder holds what no build has made and what is no input of it."""
    target, inputs = place_of(out), {path.resolve() for path in inputs}
    if not target.exists():
        return
    if edited := [name for name in edited_files(target) if target / name not in inputs]:
        expected = "what a build has made there, as it was"
        mend = "move what you have changed out of the folder"
        raise InputError(
            [Fault(str(target / name), "", "changed since", expected, mend) for name in edited]
        )
    strangers = [entry for entry in sorted(target.iterdir()) if entry not in inputs]
    if strangers and not made_in(target):
        expected = f"an empty folder, or one of an earlier build (with its {MANIFEST})"
        found = strangers[0].name
        raise InputError([Fault(str(target), "", found, expected, remedy=OtherFolder())])


def _locked(target: Path) -> AbstractContextManager[None]:
    return held(target.with_name(f".{target.name}.lock"))


def _previous(target: Path) -> Path:
    return target.with_name(f".{target.name}.previous")


def _is_of(working: Working, record: str) -> bool:
    """Whether a build was begun there with this record, and is not yet delivered."""
    try:
        return is_sealed(working.folder) and working.record.read_text(encoding="utf-8") == record
    except (OSError, UnicodeDecodeError):
        return False


def kept_record(target: Path) -> Path | None:
    """The record of an unfinished build of a target, None when this user has begun none."""
    working = working_on(target)
    return working.record if is_sealed(working.folder) else None


def _start(working: Working, record: str) -> None:
    if is_sealed(working.folder):
        shutil.rmtree(working.folder)
    with suppress(OSError):
        working.folder.rmdir()  # empty: a build was killed just there
    if working.folder.is_symlink() or working.folder.exists():
        failed = f"{working.folder} is in the way, and no build of yours"
        raise OutsideError(failed, "move it elsewhere", OtherFolder())
    working.folder.mkdir(mode=0o700)
    seal(working.folder)
    for folder in (working.whole, working.chunks):
        folder.mkdir()
    write_beside(working.record, record.encode())


def _exchange(whole: Path, target: Path) -> None:
    if not target.exists():
        whole.rename(target)
        return
    previous = _previous(target)
    _require_no_collision(whole, target)
    _exchange_note(target).write_text(_identity(target), encoding="ascii")
    target.rename(previous)
    try:
        whole.rename(target)
    except OSError:
        previous.rename(target)
        raise
    _carry(previous, target)


def _require_no_collision(whole: Path, target: Path) -> None:
    """Raises OutsideError where a file that somebody put there has the name of a new one."""
    taken = [name for name in own_files(target) if (whole / name).exists()]
    if taken:
        failed = f"your own files have names that this build uses: {', '.join(taken)}"
        raise OutsideError(failed, f"move them out of {target}", OtherFolder())


def _recover(target: Path) -> None:
    """Back, or further on, from between the two renames of `_exchange`.

    A folder of that name which no build of this user has put there is left alone.
    """
    previous = _previous(target)
    if not _was_ours(previous, target):
        return
    if target.exists():
        _carry(previous, target)
    else:
        previous.rename(target)


def _was_ours(previous: Path, target: Path) -> bool:
    """Whether an exchange begun by this user has renamed the target to that."""
    note = cached_bytes(_exchange_note(target))
    sealed = is_sealed(working_on(target).folder)
    return sealed and note is not None and note.decode("ascii", "replace") == _identity(previous)


def _exchange_note(target: Path) -> Path:
    """Tells, within the sealed working folder, which folder is about to make place."""
    return working_on(target).folder / "exchange"


def _identity(folder: Path) -> str:
    """What a folder keeps when it is renamed."""
    with suppress(OSError):
        found = folder.lstat()
        return f"{found.st_dev} {found.st_ino}"
    return "none"


def _carry(previous: Path, target: Path) -> None:
    """Moves what is not ours from the earlier build to the new one, and takes the rest away."""
    for name in list(own_files(previous)):
        if not (target / name).exists():
            (target / name).parent.mkdir(parents=True, exist_ok=True)
            (previous / name).rename(target / name)
    if not any(own_files(previous)):
        shutil.rmtree(previous)
