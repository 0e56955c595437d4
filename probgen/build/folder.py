"""The output folder: written beside its place, and put there by a rename when it is whole."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from contextlib import AbstractContextManager, contextmanager, suppress
from dataclasses import asdict, dataclass, field
from itertools import count
from pathlib import Path
from typing import Final

from probgen.build.lock import held
from probgen.build.manifest import (
    MANIFEST,
    edited_files,
    is_of_this_user,
    made_in,
    own_files,
    write_manifest,
)
from probgen.build.place import place_of
from probgen.build.seal import SEAL, is_being_sealed, is_sealed, seal
from probgen.course.record import RECORD
from probgen.input.cache_folder import cached_bytes
from probgen.input.fault import Fault, InputError
from probgen.input.file import is_part, sync, write_beside
from probgen.input.outside import OutsideError
from probgen.input.remedy import OtherFolder

ANSWERS: Final = "answers.csv"
VERSIONS: Final = "versions.csv"
"""Tells who gets which version of an exam; there only for an exam."""
PIECES: Final = ".pieces"
"""The folder of what later builds need not print again."""
MISSING: Final = "missing.txt"
"""Tells what could not be printed; there only when something could not."""


@dataclass(frozen=True, slots=True)
class Working:
    """A build's working folder: `whole` will be delivered, `pieces` in it tells what is done."""

    folder: Path

    @property
    def whole(self) -> Path:
        return self.folder / "whole"

    @property
    def pieces(self) -> Path:
        return self.whole / PIECES

    @property
    def record(self) -> Path:
        return self.whole / RECORD


@dataclass(slots=True)
class Delivery:
    """How a build takes its place.

    record: the text of the build's record; inputs: files of this build, which may lie in target.
    replace: keep the earlier build beside the new one.  marks: digests of the files it has made,
    by their paths, as far as they are known.
    Once it is in its place: left: what somebody has edited there and that stays as it is, by its
    path; kept: where the earlier build is.
    """

    record: str = ""
    inputs: tuple[Path, ...] = ()
    replace: bool = False
    marks: Mapping[str, str] = field(default_factory=dict)
    left: tuple[str, ...] = ()
    kept: Path | None = None


@dataclass(frozen=True, slots=True)
class Exchange:
    """How an earlier build makes place.

    identity: what its folder keeps when it is renamed; name: that it gets, beside its place.
    copied: the files of it that are wanted in the new one too, by their paths.
    """

    identity: str
    name: str
    copied: Sequence[str] = ()


@contextmanager
def delivered(target: Path, how: Delivery) -> Iterator[Working]:
    """A working folder beside `target`; its whole takes the target's place when the block ends.

    An earlier build there is replaced then and not before; other files in it are carried over, and
    so are files of it that somebody has edited, where the new build has not other ones.  One that
    this user has not built is kept beside.
    When the block fails, or its process is killed, the working folder stays if chunks in it
    are done, and is what the block gets next time if the record is the same.
    Raises InputError when the target holds something that is no earlier build, or the new one has
    another content for an edited file; OutsideError while another build works on it.
    """
    target = place_of(target)
    require_ours(target, how.inputs)
    _require_alike(target, how)
    target.parent.mkdir(parents=True, exist_ok=True)
    with _locked(target):
        _recover(target)
        if _previous(target).exists():
            failed = f"{_previous(target)} is in the way, and no build of yours"
            raise OutsideError(failed, "move it elsewhere", OtherFolder())
        working = working_on(target)
        if _is_of(working, how.record):
            _tidy(working)
        else:
            _start(working, how.record)
        try:
            yield working
            write_manifest(working.whole, how.marks)
            _sync_new(working.whole, how.marks)
            _exchange(working.whole, target, how)
            sync([target.parent])
        finally:
            begun = working.whole.exists() and any(working.pieces.glob("*.json"))
            if is_sealed(working.folder) and not begun:
                with suppress(OSError):
                    _remove(working)


def working_on(target: Path) -> Working:
    """Where a build of `target` keeps what it has done so far."""
    target = target.resolve()
    return Working(target.with_name(f".{target.name}.part"))


def recover(target: Path) -> None:
    """Mends a target whose build was killed just as it took its place.

    Raises InputError where no build can be put.
    """
    target = place_of(target)
    working = working_on(target)
    if _note(target).exists():
        with _locked(target):
            _recover(target)
            if is_sealed(working.folder) and not working.whole.exists():
                _remove(working)


def require_ours(out: Path, inputs: Iterable[Path]) -> None:
    """Raises InputError when a folder holds what no build has made and what is no input of it."""
    target, inputs = place_of(out), {path.resolve() for path in inputs}
    if not target.exists():
        return
    strangers = [entry for entry in sorted(target.iterdir()) if entry not in inputs]
    if strangers and not made_in(target):
        expected = f"an empty folder, or one of an earlier build (with its {MANIFEST})"
        found = strangers[0].name
        raise InputError([Fault(str(target), "", found, expected, remedy=OtherFolder())])


def _require_alike(target: Path, how: Delivery) -> None:
    """Raises InputError where solutions would take the place of a class with its record, or the
    other way round."""
    made = made_in(target)
    if made and (RECORD in made) != bool(how.record) and not how.replace:
        found, own = ("a class", "solutions") if RECORD in made else ("solutions", "a class")
        expected = f"a folder for {own} alone"
        raise InputError([Fault(str(target), "", found, expected, remedy=OtherFolder())])


def _sync_new(whole: Path, known: Collection[str]) -> None:
    """Returns when a whole build is on the disk; known: the paths of files that are already."""
    made = [path for path in whole.rglob("*") if path.relative_to(whole).as_posix() not in known]
    sync([*made, whole])


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
    if is_sealed(working.folder) or is_being_sealed(working.folder):
        _remove(working)
    if working.folder.is_symlink() or working.folder.exists():
        failed = f"{working.folder} is in the way, and no build of yours"
        raise OutsideError(failed, "move it elsewhere", OtherFolder())
    working.folder.mkdir(mode=0o700)
    seal(working.folder)
    write_beside(working.record, record.encode())


def _tidy(working: Working) -> None:
    """Takes away what a build that was killed left of files that it was writing."""
    for path in working.folder.rglob("*"):
        if is_part(path.name) and not path.is_dir():
            path.unlink()


def _remove(working: Working) -> None:
    """Takes a working folder away, its seal last: as long as it is there it is known."""
    for entry in working.folder.iterdir():
        if entry.name != SEAL:
            shutil.rmtree(entry) if entry.is_dir() and not entry.is_symlink() else entry.unlink()
    shutil.rmtree(working.folder)


def _exchange(whole: Path, target: Path, how: Delivery) -> None:
    """Puts a whole build into its place."""
    if not target.exists():
        whole.rename(target)
        return
    _require_no_collision(whole, target)
    if not how.replace:
        how.left = _judge_edited(whole, target, how)
    beside = how.replace or bool(made_in(target) and not is_of_this_user(target))
    moved = _beside(target) if beside else _previous(target)
    copied = (*own_files(target), *how.left) if beside else ()
    exchange = Exchange(_identity(target), moved.name, copied)
    write_beside(_note(target), json.dumps(asdict(exchange)).encode())
    target.rename(moved)
    try:
        whole.rename(target)
    except OSError:
        moved.rename(target)
        raise
    how.kept = moved if beside else None
    _settle(exchange, target)


def _settle(exchange: Exchange, target: Path) -> None:
    """Puts into a new build what of the earlier one is to be there too."""
    moved = target.with_name(exchange.name)
    if moved == _previous(target):
        _carry(moved, target)
    else:
        _copy(exchange.copied, moved, target)
    _note(target).unlink()


def _beside(target: Path) -> Path:
    """A free name for an earlier build of a target."""
    places = (target.with_name(f"{target.name}.replaced-{number}") for number in count(1))
    return next(place for place in places if not os.path.lexists(place))


def _copy(names: Iterable[str], kept: Path, target: Path) -> None:
    """Copies what no build has made, or not so: it may be wanted beside the new build too.

    What has been copied, and perhaps written into since, stays as it is.
    """
    there = {*own_files(target), *edited_files(target)}
    part = working_on(target).folder / "copy"
    for name in (name for name in names if name not in there):
        (target / name).parent.mkdir(parents=True, exist_ok=True)
        part.unlink(missing_ok=True)
        shutil.copy2(kept / name, part, follow_symlinks=False)
        part.replace(target / name)


def _judge_edited(whole: Path, target: Path, how: Delivery) -> tuple[str, ...]:
    """The files that somebody has edited and that can stay as they are.

    Raises InputError where the new build has something else to say in their place.
    """
    edited = list(edited_files(target))
    expected = "what a build has made there, as it was: the new one has another such file"
    mend = "move what you have changed out of the folder"
    inputs = {path.resolve() for path in how.inputs}
    changed = [name for name in edited if not _stays(name, target, whole)]
    if changed := [name for name in changed if target / name not in inputs]:
        raise InputError(
            [Fault(str(target / name), "", "changed since", expected, mend) for name in changed]
        )
    return tuple(name for name in edited if name not in changed)


def _stays(name: str, earlier: Path, later: Path) -> bool:
    """Whether the later build makes a file no other way than the earlier one did."""
    made = made_in(earlier)[name]
    return made_in(later).get(name, made) == made


def _require_no_collision(whole: Path, target: Path) -> None:
    """Raises OutsideError where a file that somebody put there has the name of a new one."""
    taken = [name for name in own_files(target) if (whole / name).exists()]
    if taken:
        failed = f"your own files have names that this build uses: {', '.join(taken)}"
        raise OutsideError(failed, f"move them out of {target}", OtherFolder())


def _recover(target: Path) -> None:
    """Back, or further on, from between the two renames of `_exchange`.

    A folder which no build of this user has moved aside is left alone.
    """
    exchange = _begun(target)
    if exchange is None:
        return
    if target.exists():
        _settle(exchange, target)
    else:
        target.with_name(exchange.name).rename(target)


def _begun(target: Path) -> Exchange | None:
    """The exchange by which this user has moved the target aside, None where there is none."""
    note = cached_bytes(_note(target)) if is_sealed(working_on(target).folder) else None
    with suppress(ValueError, TypeError):
        found = Exchange(**json.loads(note or b""))
        if _identity(target.with_name(found.name)) == found.identity:
            return found
    return None


def _note(target: Path) -> Path:
    """Tells, within the sealed working folder, which folder is about to make place."""
    return working_on(target).folder / "exchange"


def _identity(folder: Path) -> str:
    """What a folder keeps when it is renamed."""
    with suppress(OSError):
        found = folder.lstat()
        return f"{found.st_dev} {found.st_ino}"
    return "none"


def _carry(previous: Path, target: Path) -> None:
    """Moves what is not ours, or not as it was, from the earlier build to the new one."""
    for name in list(own_files(previous)):
        if not (target / name).exists():
            (target / name).parent.mkdir(parents=True, exist_ok=True)
            (previous / name).rename(target / name)
    for name in [name for name in edited_files(previous) if _stays(name, previous, target)]:
        (target / name).parent.mkdir(parents=True, exist_ok=True)
        (previous / name).replace(target / name)
    if not any(own_files(previous)):
        # Not taken away where it is: half of it, without its list, would look like somebody's own.
        previous.rename(working_on(target).folder / "earlier")
