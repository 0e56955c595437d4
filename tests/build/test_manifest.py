"""What a build has made in a folder, told from what somebody else has put there."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from probgen.build.manifest import (
    MANIFEST,
    edited_files,
    is_of_this_user,
    made_in,
    own_files,
    write_manifest,
)


@pytest.fixture
def made(tmp_path: Path) -> Path:
    (tmp_path / "sheets").mkdir()
    (tmp_path / "record.json").write_text("{}")
    (tmp_path / "sheets" / "01.pdf").write_bytes(b"%PDF")
    write_manifest(tmp_path)
    return tmp_path


def test_what_was_made_is_nobody_s_own(made: Path) -> None:
    assert set(made_in(made)) == {"record.json", "sheets/01.pdf"}
    assert list(own_files(made)) == []
    assert list(edited_files(made)) == []


def test_files_put_there_since_are_somebody_s_own(made: Path) -> None:
    (made / "sheets" / "marks.txt").write_text("8 of 10")
    assert list(own_files(made)) == ["sheets/marks.txt"]
    assert list(edited_files(made)) == []


def test_a_changed_file_is_told(made: Path) -> None:
    (made / "sheets" / "01.pdf").write_bytes(b"%PDG")
    assert list(edited_files(made)) == ["sheets/01.pdf"]


def test_a_link_in_a_file_s_place_is_a_change_even_with_the_same_content(made: Path) -> None:
    same = made.parent / "same.json"
    same.write_text("{}")
    (made / "record.json").unlink()
    (made / "record.json").symlink_to(same)
    assert list(edited_files(made)) == ["record.json"]


def test_a_removed_file_is_no_change(made: Path) -> None:
    (made / "record.json").unlink()
    assert list(edited_files(made)) == []


@pytest.mark.parametrize("text", ["", "[]", "{", '"x"', "[" * 100_000])
def test_a_manifest_that_cannot_be_read_is_none(made: Path, text: str) -> None:
    (made / MANIFEST).write_text(text)
    assert made_in(made) == {}
    assert set(own_files(made)) == {"record.json", "sheets/01.pdf"}


def test_a_folder_without_one(tmp_path: Path) -> None:
    assert made_in(tmp_path) == {}


@pytest.mark.parametrize("place", [MANIFEST, "record.json"])
@pytest.mark.parametrize("kind", ["a pipe", "a device"])
def test_what_never_ends_is_not_read(place: str, kind: str, made: Path) -> None:
    (made / place).unlink()
    if kind == "a pipe":
        os.mkfifo(made / place)
    else:
        (made / place).symlink_to("/dev/zero")
    assert list(edited_files(made)) == ([] if place == MANIFEST else ["record.json"])


def test_a_list_with_true_digests_is_not_therefore_this_user_s(
    made: Path, monkeypatch: pytest.MonkeyPatch, tmp_path_factory: pytest.TempPathFactory
) -> None:
    assert is_of_this_user(made)
    path = made / MANIFEST
    whole = path.read_text()
    for mark in ({}, {"": "0" * 64}, {"": "\ud800"}):
        path.write_text(json.dumps({**made_in(made), **mark}))
        assert set(made_in(made)) == {"record.json", "sheets/01.pdf"}
        assert not is_of_this_user(made)
    path.write_text(whole.replace("01.pdf", "02.pdf"))
    assert not is_of_this_user(made)
    path.write_text(whole)
    assert is_of_this_user(made)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("of another")))
    assert not is_of_this_user(made)
