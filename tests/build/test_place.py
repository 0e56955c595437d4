"""Where a build cannot be put: told before any work, with the true cause."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from probgen.build.place import place_of
from probgen.input.fault import InputError
from probgen.input.outside import OutsideError


def test_a_new_folder_and_an_old_one(tmp_path: Path) -> None:
    assert place_of(tmp_path / "a" / ".." / "b") == tmp_path.resolve() / "b"
    (tmp_path / "b").mkdir()
    (tmp_path / "link").symlink_to(tmp_path / "b")
    assert place_of(tmp_path / "link") == tmp_path.resolve() / "b"


WRONG = {
    "/": "the root of the disk",
    "/proc": "a mount point",
    "/dev/null/class": "a file|not a directory",
    "{}": "the folder you are in",
    "{}/..": "the folder you are in",
    "{}/ring": "a ring of links|too many levels",
    "{}/file": "a file",
    "{}/file/class": "a file|not a directory",
    "{}/a\0b": "no text",
}


@pytest.mark.parametrize("out", [*WRONG, "{}/" + "n" * 250, "{}/" + "n/" * 3000])
def test_where_no_build_can_be_put(
    out: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "file").touch()
    (tmp_path / "ring").symlink_to("ring")
    with pytest.raises(InputError, match=WRONG.get(out, "name too long")):
        place_of(Path(out.format(tmp_path)))
    assert {each.name for each in tmp_path.iterdir()} == {"file", "ring"}


def test_a_folder_closed_to_the_user(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "access", lambda path, mode: Path(path) != tmp_path.resolve())
    with pytest.raises(OutsideError, match="is closed to you"):
        place_of(tmp_path / "new" / "class")
