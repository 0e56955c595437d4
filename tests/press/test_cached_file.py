"""Kept files: found by what they were made from, and only while they hold what they say."""

from __future__ import annotations

from pathlib import Path
from tempfile import gettempdir

import pytest

from probgen.input.file import write_beside
from probgen.input.outside import OutsideError
from probgen.press.cached_file import find, keep, mark_of


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))


def test_a_mark_differs_where_anything_differs() -> None:
    marks = {mark_of(), mark_of("a"), mark_of("b"), mark_of("a", "b"), mark_of("b", "a")}
    assert len(marks) == 5
    assert mark_of("a", "b") == mark_of("a", "b")


def test_what_is_kept_is_found_again() -> None:
    path = keep("fonts", mark_of("a"), b"content", ".zip")
    assert (path.read_bytes(), path.suffix) == (b"content", ".zip")
    assert find("fonts", mark_of("a")) == path
    assert find("fonts", mark_of("b")) is None
    assert find("formats", mark_of("a")) is None


@pytest.mark.parametrize("content", [b"", b"conten", b"CONTENT"])
def test_what_was_cut_short_or_exchanged_is_taken_away(content: bytes) -> None:
    path = keep("fonts", mark_of("a"), b"content", ".zip")
    path.write_bytes(content)
    assert find("fonts", mark_of("a")) is None
    assert not path.exists()


def test_found_once_and_exchanged_then_is_noticed() -> None:
    path = keep("fonts", mark_of("a"), b"content", ".zip")
    assert find("fonts", mark_of("a")) == path
    path.write_bytes(b"something else")
    assert find("fonts", mark_of("a")) is None


def test_a_whole_one_beside_a_broken_one_is_found() -> None:
    broken = keep("fonts", mark_of("a"), b"one", ".zip")
    whole = keep("fonts", mark_of("a"), b"two", ".zip")
    broken.write_bytes(b"three")
    assert find("fonts", mark_of("a")) == whole


def full(path: Path, content: bytes) -> None:
    raise OSError(28, "No space left on device")


def test_a_full_cache_costs_time_and_no_build(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full_there(path: Path, content: bytes) -> None:
        full(path, content) if tmp_path in path.parents else write_beside(path, content)

    monkeypatch.setattr("probgen.press.cached_file.write_beside", full_there)
    path = keep("fonts", mark_of("full"), b"content", ".zip")
    assert tmp_path not in path.parents
    assert find("fonts", mark_of("full")) == path
    path.write_bytes(b"conten")
    assert find("fonts", mark_of("full")) is None
    assert keep("fonts", mark_of("full"), b"content", ".zip").read_bytes() == b"content"


def test_where_nothing_can_be_written_the_folders_are_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("probgen.press.cached_file.write_beside", full)
    with pytest.raises(OutsideError, match="No space left") as caught:
        keep("fonts", mark_of("a"), b"content", ".zip")
    assert str(tmp_path) in caught.value.failed
    assert gettempdir() in caught.value.failed
