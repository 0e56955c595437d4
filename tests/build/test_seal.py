"""The seal of a working folder: of this user, and of the place where it lies."""

from __future__ import annotations

import stat
from pathlib import Path

import pytest

from probgen.build.seal import is_sealed, seal


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
