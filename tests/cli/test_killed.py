"""Every kind of build killed as it makes, renames or takes away a file: nothing is lost.

The moments are counted in changes of the disk, so that the narrow ones are met too: between the two
renames by which a build takes its place.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import pytest

from probgen.course.record_file import read_record
from probgen.course.secret import SECRET
from tests.cli.conftest import FilesIn
from tests.terms import lamp

KILLER: Final = """
import os, signal, sys
CHANGES = {"os.rename", "os.remove", "os.rmdir", "os.mkdir", "os.link", "os.truncate"}
last, own, seen = int(sys.argv[1]), os.getpid(), []
def count(event, args):
    writes = event == "open" and isinstance(args[2], int) and args[2] & (os.O_WRONLY | os.O_RDWR)
    if (event in CHANGES or writes) and os.getpid() == own:
        seen.append(f"{event} {args[0]!r} {args[1]!r}")
        if len(seen) == last:
            os.kill(own, signal.SIGKILL)
sys.addaudithook(count)
sys.argv = ["probgen", *sys.argv[2:]]
from probgen.cli import main
main(standalone_mode=False)
text, last = "\\n".join(seen), 0
with open(os.environ["COUNTED"], "w") as file:
    file.write(text)
"""
"""Runs a command line that ends just before a change of the disk, counted from 1; 0 for none.

It notes what it changed if it comes to its end.
"""
PART: Final = ".part"
"""How a folder's name ends that is not whole yet."""
ASSIGNMENT: Final = """
course = "M"
title = "W"
roster = "class.csv"
working = 0
seed = "spring term, section 2"
[[problem]]
template = "lamp.toml"
points = 5
"""


@dataclass(frozen=True)
class Kind:
    """words: of the command; late: somebody is new; text: of the lamp, corrected.

    begun: how the folder was built before, None where there is none yet.
    """

    words: Sequence[str]
    begun: Sequence[str] | None = ()
    late: bool = False
    text: str = "A lamp of"


BUILD: Final = ("build", "assignment.toml", "--out", "class", "--workers", "1")
KINDS: Final = {
    "new": Kind(BUILD, None),
    "added": Kind(BUILD, late=True),
    "corrected": Kind((*BUILD, "--correct", "the lamp"), text="A lantern of"),
    "replaced": Kind((*BUILD, "--replace"), text="A lantern of"),
    "draft": Kind((*BUILD, "--draft"), ("--draft",), text="A lantern of"),
    "solutions": Kind(("solutions", "class", "--workers", "1")),
    "solutions again": Kind(
        ("solutions", "class", "--workers", "1", "--note", "Released again."), ()
    ),
}


def command(folder: Path, words: Sequence[str], moment: int = 0) -> list[str]:
    """Runs a command line to its end, or to a moment; gives the changes it made, none if killed."""
    counted = folder.parent / "counted"
    counted.unlink(missing_ok=True)
    done = subprocess.run(
        [sys.executable, "-c", KILLER, str(moment), *words],
        cwd=folder, capture_output=True, text=True, check=False,
        env=os.environ | {"COUNTED": str(counted)},
    )  # fmt: skip
    if not counted.exists():
        assert done.returncode == -9, done.stderr
        return []
    return counted.read_text().splitlines()


def write(folder: Path, text: str, late: bool) -> None:
    names = "name,id\nAda,1\nBo,2\n" + "Cy,3\n" * late
    (folder / "class.csv").write_text(names)
    (folder / "lamp.toml").write_text(lamp(text))
    (folder / "assignment.toml").write_text(ASSIGNMENT)


def begin(place: Path, kind: Kind, name: str) -> Path:
    """A course as it is before a build of a kind."""
    folder = place / "course"
    folder.mkdir(parents=True)
    (folder / SECRET).write_text("0123456789abcdef" * 2)
    (folder / SECRET).chmod(0o600)
    write(folder, "A lamp of", late=False)
    if kind.begun is not None:
        command(folder, (*BUILD, *kind.begun))
        (folder / "class" / "keys" / "marked.txt").write_text("hours of work")
    if name == "solutions again":
        command(folder, KINDS["solutions"].words)
    write(folder, kind.text, kind.late)
    return folder


def require_whole(folder: Path, whole: dict[str, bytes], kind: Kind, files_in: FilesIn) -> None:
    """The command has been given again: all is as if it had never been killed."""
    found = files_in(folder)
    if "--replace" in kind.words:  # one that was done but for its end is replaced once more
        found = {name: text for name, text in found.items() if ".replaced-2" not in name}
    assert found.keys() == whole.keys()
    assert found == whole


def play(name: str, tmp_path: Path, files_in: FilesIn, most: int) -> None:
    """Kills a build at moments, as many as that at most, and gives it again each time."""
    kind = KINDS[name]
    before = begin(tmp_path / "before", kind, name)

    def copied(place: str) -> Path:
        shutil.rmtree(tmp_path / place, ignore_errors=True)
        shutil.copytree(before, folder := tmp_path / place / "course")
        return folder

    command(copied("first"), kind.words)  # on a new machine this fills the user's cache
    changes = command(folder := copied("whole"), kind.words)
    whole = files_in(folder)
    for moment in moments_of(changes, folder, most):
        folder = copied("killed")
        assert command(folder, kind.words, moment) == []
        require_kept(folder, before, kind)
        assert command(folder, kind.words)
        require_whole(folder, whole, kind, files_in)


def moments_of(changes: Sequence[str], folder: Path, most: int) -> list[int]:
    """Before and after each rename beside the build's place, and others in between."""
    beside = re.compile(rf"os\.rename .*{re.escape(str(folder))}/[^/']+'\)?$")
    narrow = [place for place, change in enumerate(changes, start=1) if beside.search(change)]
    assert narrow
    found = {place + after for place in narrow for after in (0, 1)} & set(range(len(changes)))
    step = max(1, len(changes) // max(1, most - len(found)))
    found |= set(range(1, len(changes), step)) if most > len(found) else set()
    return sorted(found)


def require_kept(folder: Path, before: Path, kind: Kind) -> None:
    """Whatever was handed out is in one of the records that are there, and so are own files."""
    if kind.begun is None or "--draft" in kind.begun:
        return
    found = (path.parent for path in folder.rglob("record.json"))
    places = [place for place in found if not any(part.endswith(PART) for part in place.parts)]
    known = {edition for place in places for edition in codes(place)}
    assert codes(before / "class") <= known
    assert any((place / "keys" / "marked.txt").exists() for place in places)


def codes(place: Path) -> set[str]:
    return {edition.code for edition in read_record(place / "record.json").editions}


@pytest.mark.proof
@pytest.mark.parametrize("name", KINDS)
def test_killed_at_twenty_moments(name: str, tmp_path: Path, files_in: FilesIn) -> None:
    play(name, tmp_path, files_in, most=20)


@pytest.mark.parametrize("name", ["replaced"])
def test_killed_as_it_takes_its_place(name: str, tmp_path: Path, files_in: FilesIn) -> None:
    play(name, tmp_path, files_in, most=0)
