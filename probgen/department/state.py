"""A state of a bank to be compared: a folder, a release, or a revision of the version control."""

from __future__ import annotations

import os
import subprocess
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import Final, NamedTuple

from probgen.bank.bank import Bank
from probgen.bank.bank_folder import read_bank_folder
from probgen.bank.release import newest, read_release
from probgen.input.fault import Fault, Faults, InputError
from probgen.input.file import read_text
from probgen.input.outside import OutsideError
from probgen.problem.lookup import choose_bank

_SECONDS: Final = 60
_MOST_BYTES: Final = 256 * 2**20
"""Of what a version control gives out of one revision."""
_MOST_FILES: Final = 20_000
_PLAIN: Final = (
    "-c", "core.fsmonitor=false", "-c", "core.hooksPath=/dev/null", "-c", "protocol.allow=never",
)  # fmt: skip
"""That no program is run which a folder's own settings name, and nothing fetched."""


@dataclass(frozen=True, slots=True)
class Text:
    """What a file holds; path: by which messages name it."""

    path: str
    content: str


@dataclass(frozen=True, slots=True)
class State:
    """name: as it was named; texts: of its templates' files, by their ids.

    bank: what they were read as; its files may be gone, where they came out of git.
    """

    name: str
    bank: Bank
    texts: Mapping[str, Text]


def read_state(named: str) -> State:
    """The state of a name: what `choose_bank` takes, or "FOLDER@REVISION" for git's revisions.

    Raises InputError for a name of nothing, or where files cannot be read; OutsideError where git
    is needed and cannot be had.
    """
    folder, at, revision = named.rpartition("@")
    if at and folder and not Path(named).exists():
        with tempfile.TemporaryDirectory(prefix="probgen-state-") as place:
            _extract(Path(folder), revision, Path(place))
            return _state(named, place)
    return _state(named)


def last_release(folder: str) -> str:
    """The file of the newest release of a bank.

    Raises InputError where the folder is no bank, or nothing was released of it.
    """
    bank = read_bank_folder(Path(folder))
    found = newest(read_release(path) for path in bank.releases.values())
    if found is None:
        mend = "name two states to compare"
        raise InputError([Fault(folder, "releases", "", "a release made of the bank", mend)])
    return str(bank.releases[found.name])


def _state(named: str, place: str = "") -> State:
    """The state of a name; place: where the files of a revision lie until they are read."""
    bank = choose_bank(place or named, Path(), "BANK", "")
    faults, texts = Faults(bank.id), {}
    for id, path in bank.files.items():
        told = f"{named}/{path.relative_to(place).as_posix()}" if place else str(path)
        try:
            texts[id] = Text(told, read_text(path, "template"))
        except InputError as error:
            faults.take(error)
    faults.settle()
    return State(named, bank, texts)


def _extract(folder: Path, revision: str, place: Path) -> None:
    """The files of a folder as they were in a revision, byte for byte.

    Listed and read object by object: what writes files out runs programs that settings name.
    """
    if not folder.is_dir() or revision.startswith("-"):
        raise _unfit(folder, revision, "no such folder")
    listed = _git(folder, revision, b"", "ls-tree", "-r", "-l", "-z", revision, ".")
    try:
        files = [each for each in map(_Listed.of, listed.split(b"\0")) if each]
    except ValueError:
        raise _unfit(folder, revision, "files that git lacks") from None
    if sum(each.size for each in files) > _MOST_BYTES or len(files) > _MOST_FILES:
        raise _unfit(folder, revision, "more than can be read")
    wanted = b"".join(each.id + b"\n" for each in files)
    content = BytesIO(_git(folder, revision, wanted, "cat-file", "--batch"))
    for each in files:
        content.readline()  # its id again
        own, path = content.read(each.size), place / each.path
        content.read(1)
        if path.resolve().is_relative_to(place.resolve()):
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(own)


class _Listed(NamedTuple):
    """A plain file of a revision; size: in bytes."""

    id: bytes
    size: int
    path: str

    @classmethod
    def of(cls, line: bytes) -> _Listed | None:
        """From a line of git's list; None for links, for other repositories, and the end.

        Raises ValueError where git has no such object.
        """
        head, _, path = line.partition(b"\t")
        match head.split():
            case [b"100644" | b"100755", b"blob", id, size]:
                return cls(id, int(size), os.fsdecode(path))
        return None


def _git(folder: Path, revision: str, given: bytes, *words: str) -> bytes:
    """What git prints for a command in a folder."""
    command = ["git", *_PLAIN, "-C", str(folder), *words]
    surroundings = {**os.environ, "GIT_NO_LAZY_FETCH": "1"}
    try:
        found = subprocess.run(
            command, input=given, env=surroundings, capture_output=True, timeout=_SECONDS,
            check=False,
        )  # fmt: skip
    except FileNotFoundError:
        mend = "install git, or check the revision out and name its folder"
        raise OutsideError("git is not there", mend) from None
    except subprocess.TimeoutExpired:
        raise OutsideError(f"git took more than {_SECONDS} s", "check the folder out") from None
    if found.returncode:
        said = found.stderr.decode(errors="replace").strip().splitlines()
        raise _unfit(folder, revision, said[-1] if said else "nothing that git knows")
    return found.stdout


def _unfit(folder: Path, revision: str, found: str) -> InputError:
    expected = "a folder in a git repository, and a revision of it"
    return InputError([Fault(f"{folder}@{revision}", "", found, expected, "see git log")])
