"""The seal of a working folder: of this user, and of the place where it lies."""

from __future__ import annotations

import stat
from pathlib import Path

import pytest

from probgen.build.seal import _key_of_this_process, is_being_sealed, is_sealed, seal


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path / "cache"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (found := tmp_path / "class").mkdir()
    seal(found)
    return found


def test_a_sealed_folder_is_known(folder: Path) -> None:
    assert is_sealed(folder)


def test_another_is_not(tmp_path: Path) -> None:
    (other := tmp_path / "other").mkdir()
    assert not is_sealed(other)


def test_moved_or_copied_it_is_known_no_more(folder: Path, tmp_path: Path) -> None:
    moved = folder.rename(tmp_path / "moved")
    assert not is_sealed(moved)


def test_a_link_to_a_sealed_folder_is_not_sealed(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(folder)
    assert not is_sealed(tmp_path / "link")


@pytest.mark.parametrize("found", [b"", b"0" * 64, b"\xff\xfe"])
def test_a_forged_seal_is_none(folder: Path, found: bytes) -> None:
    (folder / "seal").write_bytes(found)
    assert not is_sealed(folder)


def test_another_user_s_is_none(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "another"))
    assert not is_sealed(folder)


def test_nobody_else_can_read_the_secret(folder: Path, own_cache: Path) -> None:
    (key,) = own_cache.rglob("key")
    assert stat.S_IMODE(key.stat().st_mode) == 0o600
    assert len(key.read_bytes()) == 32


def test_a_spoilt_secret_is_drawn_anew(folder: Path, own_cache: Path) -> None:
    (key,) = own_cache.rglob("key")
    key.write_bytes(b"short")
    assert not is_sealed(folder)
    seal(folder)
    assert is_sealed(folder)


def test_where_no_secret_can_be_kept_a_seal_holds_for_this_process(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(path: Path, content: bytes) -> None:
        if path.name == "key":
            raise OSError(28, "No space left on device")
        path.write_bytes(content)

    monkeypatch.setattr("probgen.build.seal.write_beside", full)
    (folder := tmp_path / "class").mkdir()
    seal(folder)
    assert is_sealed(folder)
    _key_of_this_process.cache_clear()
    assert not is_sealed(folder)


def test_what_was_killed_as_it_was_sealed_is_known(folder: Path, tmp_path: Path) -> None:
    (empty := tmp_path / "empty").mkdir()
    assert is_being_sealed(empty)
    (empty / ".0123456789abcdef.part").write_bytes(b"0" * 30)
    assert is_being_sealed(empty)
    assert not is_being_sealed(folder)
    (tmp_path / "link").symlink_to(empty)
    assert not is_being_sealed(tmp_path / "link")


@pytest.mark.parametrize("name", ["thesis.part", "seal", ".0123456789abcdef.part"])
def test_somebody_s_file_is_no_beginning_of_a_seal(name: str, tmp_path: Path) -> None:
    (tmp_path / name).write_text("years of work" * 10)
    assert not is_being_sealed(tmp_path)
