"""Files asked for by name: ours are written again, and nobody else's ever."""

import os
from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.input.outside import OutsideError
from probgen.input.own_file import require_folder, require_free, write_own

KINDS = (".pdf", ".html", ".svg")


@pytest.mark.parametrize("kind", KINDS)
def test_ours_is_written_again(kind: str, tmp_path: Path) -> None:
    path = tmp_path / "deep" / "x"
    for content in (b"one", b"two\n", b""):
        write_own(path, content, kind)
        assert path.read_bytes().startswith(content)
        assert b"probgen" in path.read_bytes()
    assert [each.name for each in path.parent.iterdir()] == ["x"]


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("change", [b"more", b" "])
def test_ours_that_somebody_has_changed_is_theirs(kind: str, change: bytes, tmp_path: Path) -> None:
    path = tmp_path / "x"
    write_own(path, b"one", kind)
    for changed in (path.read_bytes() + change, change + path.read_bytes()):
        path.write_bytes(changed)
        with pytest.raises(InputError, match="has not written, or that was changed"):
            write_own(path, b"two", kind)
        assert path.read_bytes() == changed


def test_a_file_of_another_kind_is_no_place(tmp_path: Path) -> None:
    write_own(tmp_path / "x", b"one", ".pdf")
    with pytest.raises(InputError, match="has not written"):
        write_own(tmp_path / "x", b"two", ".html")


def test_what_is_there_stays(tmp_path: Path) -> None:
    (tmp_path / "mine").write_text("mine")
    (tmp_path / "folder").mkdir()
    (tmp_path / "link").symlink_to("mine")
    (tmp_path / "ring").symlink_to("ring")
    (tmp_path / "nowhere").symlink_to("none")
    os.mkfifo(tmp_path / "pipe")
    for name, told in {
        "mine": "has not written",
        "folder": "a folder",
        "link": "a link",
        "ring": "a link",
        "nowhere": "a link",
        "pipe": "a device or a pipe",
        "mine/x": "not a directory",
        "n" * 300: "name too long",
        "a\0b": "no text",
    }.items():
        for use in (lambda path: require_free(path, ".pdf"), lambda p: write_own(p, b"", ".pdf")):
            with pytest.raises(InputError, match=told):
                use(tmp_path / name)
    assert (tmp_path / "mine").read_text() == "mine"
    assert (tmp_path / "link").readlink() == Path("mine")


def test_a_device_is_no_file() -> None:
    with pytest.raises(InputError, match="a device"):
        require_free(Path(os.devnull), ".pdf")


def test_a_folder_for_files(tmp_path: Path) -> None:
    require_folder(tmp_path)
    require_folder(tmp_path / "new" / "er")
    (tmp_path / "mine").touch()
    with pytest.raises(InputError, match="no folder"):
        require_folder(tmp_path / "mine")
    with pytest.raises(InputError, match="not a directory"):
        require_folder(tmp_path / "mine" / "er")


def test_a_place_that_is_closed_is_told_before_the_work(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "access", lambda path, mode: Path(path) != tmp_path)
    for require in (lambda p: require_free(p, ".pdf"), require_folder):
        with pytest.raises(OutsideError, match="is closed to you"):
            require(tmp_path / "new" / "x")
