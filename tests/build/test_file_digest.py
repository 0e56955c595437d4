"""The digest of a file, read once as long as it is the same file."""

import os
from pathlib import Path

import pytest

from probgen.build.file_digest import digest_of_content, file_digest, file_mark


def test_a_file_at_two_places_is_read_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    first, second = tmp_path / "a", tmp_path / "b"
    first.write_bytes(b"content")
    os.link(first, second)
    assert file_mark(first) == (7, digest_of_content(b"content"))
    monkeypatch.setattr(Path, "read_bytes", None)
    assert file_digest(second) == file_digest(first)


def test_other_content_is_seen_also_of_the_same_size(tmp_path: Path) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"content")
    before = file_digest(path)
    path.write_bytes(b"CONTENT")
    assert file_digest(path) == digest_of_content(b"CONTENT") != before


def test_what_is_not_there_has_none(tmp_path: Path) -> None:
    with pytest.raises(OSError, match="No such file"):
        file_digest(tmp_path / "a")
