"""A state of a bank to be compared: a folder, a release, or a revision of the version control."""

from __future__ import annotations

import subprocess
import tarfile
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import Final

from probgen.bank.bank_folder import read_bank_folder
from probgen.bank.release import newest, read_release
from probgen.bank.template import Template
from probgen.input.fault import Fault, InputError
from probgen.input.outside import OutsideError
from probgen.problem.lookup import choose_bank

_SECONDS: Final = 60
_MOST_BYTES: Final = 256 * 2**20
"""Of what a version control gives out of one revision."""
_PLAIN: Final = ("-c", "core.fsmonitor=false", "-c", "core.hooksPath=/dev/null")
"""That no program is run which a folder's own settings name."""


@dataclass(frozen=True, slots=True)
class State:
    """name: as it was named; templates: by their ids."""

    name: str
    templates: Mapping[str, Template]


def read_state(named: str) -> State:
    """The state of a name: what `choose_bank` takes, or "FOLDER@REVISION" for git's revisions.

    Raises InputError for a name of nothing, or with the faults of all templates; OutsideError where
    git is needed and cannot be had.
    """
    folder, at, revision = named.rpartition("@")
    if at and folder and not Path(named).exists():
        with tempfile.TemporaryDirectory(prefix="probgen-state-") as place:
            _extract(Path(folder), revision, Path(place))
            return State(named, _templates(str(place)))
    return State(named, _templates(named))


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


def _templates(named: str) -> dict[str, Template]:
    bank = choose_bank(named, Path(), "BANK", "")
    return {template.id: template for template in bank.read_all()}


def _extract(folder: Path, revision: str, place: Path) -> None:
    """The files of a folder as they were in a revision."""
    expected = "a folder in a git repository, and a revision of it"
    if not folder.is_dir() or revision.startswith("-"):
        raise InputError([Fault(f"{folder}@{revision}", "", "no such folder", expected)])
    command = ["git", *_PLAIN, "-C", str(folder), "archive", "--format=tar", revision, "--", "."]
    try:
        found = subprocess.run(command, capture_output=True, timeout=_SECONDS, check=False)
    except FileNotFoundError:
        mend = "install git, or check the revision out and name its folder"
        raise OutsideError("git is not there", mend) from None
    except subprocess.TimeoutExpired:
        raise OutsideError(f"git took more than {_SECONDS} s", "check the folder out") from None
    if found.returncode or len(found.stdout) > _MOST_BYTES:
        said = found.stderr.decode(errors="replace").strip().splitlines()
        told = said[-1] if said else "more than can be read"
        raise InputError([Fault(f"{folder}@{revision}", "", told, expected, "see git log")])
    with tarfile.open(fileobj=BytesIO(found.stdout)) as archive:
        archive.extractall(place, filter="data")
