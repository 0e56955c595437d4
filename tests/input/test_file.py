"""Files of any kind: read when they are plain and of ordinary size, refused with a mend else."""

import os
import threading
from pathlib import Path
from typing import NoReturn

import psutil
import pytest

from probgen.input.fault import InputError
from probgen.input.file import is_part, naming, read_bytes, read_text, sync, write_beside


def test_text_is_read_with_or_without_its_mark(tmp_path: Path) -> None:
    path = tmp_path / "a.txt"
    for content in (b"\xef\xbb\xbfZo\xc3\xab\r\nb\rc", b"Zo\xc3\xab\nb\nc"):
        path.write_bytes(content)
        assert read_text(path, "class list") == "Zoë\nb\nc"
    path.write_bytes(b"Zo\xeb")
    with pytest.raises(InputError, match="UTF-8"):
        read_text(path, "class list")


def test_a_file_has_its_bound(tmp_path: Path) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"x" * 1000)
    assert len(read_bytes(path, "picture", 1000)) == 1000
    with pytest.raises(InputError, match=r"more than 0 KB"):
        read_bytes(path, "picture", 999)


@pytest.mark.parametrize(
    ("most", "said"),
    [(4_000, "more than 4 KB"), (2**20 - 1, "more than 1048 KB"), (2**21, "more than 2 MB")],
)
def test_a_bound_is_told_in_a_size_one_knows(tmp_path: Path, most: int, said: str) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"x" * (most + 1))
    with pytest.raises(InputError, match=said):
        read_bytes(path, "picture", most)


@pytest.mark.parametrize("path", ["/dev/zero", "/dev/null"])
def test_devices_are_refused(path: str) -> None:
    with pytest.raises(InputError, match="a device or a pipe"):
        read_bytes(Path(path), "picture")


def test_a_pipe_is_refused_at_once(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    done: list[str] = []

    def read() -> None:
        with pytest.raises(InputError, match="a device or a pipe"):
            read_bytes(tmp_path / "pipe", "record")
        done.append("refused")

    reader = threading.Thread(target=read, daemon=True)
    reader.start()
    reader.join(5)
    assert done == ["refused"]


@pytest.mark.parametrize("name", ["a\0b", "\ud800"])
def test_names_that_are_no_text_are_refused(name: str) -> None:
    for use in (lambda: read_bytes(Path(name), "record"), lambda: write_beside(Path(name), b"")):
        with pytest.raises(InputError, match="a name that is no text") as caught:
            use()
        assert str(caught.value).isascii()


def test_missing_files_and_folders(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="no such file"):
        read_bytes(tmp_path / "none", "record")
    with pytest.raises(InputError, match="a folder"):
        read_bytes(tmp_path, "record")
    (tmp_path / "loop").symlink_to("loop")
    with pytest.raises(InputError, match="symbolic links"):
        read_bytes(tmp_path / "loop", "record")


def test_a_file_is_written_whole(tmp_path: Path) -> None:
    write_beside(tmp_path / "new" / "a", b"one")
    write_beside(tmp_path / "new" / "a", b"two")
    assert [path.name for path in (tmp_path / "new").iterdir()] == ["a"]
    assert (tmp_path / "new" / "a").read_bytes() == b"two"


def test_a_disk_that_is_full_is_named_and_nothing_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(path: Path, mode: str) -> NoReturn:
        assert is_part(path.name)
        path.touch()
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "open", full)
    with pytest.raises(OSError, match="No space left") as caught:
        write_beside(tmp_path / "a", b"one")
    assert caught.value.filename == str(tmp_path / "a")
    assert list(tmp_path.iterdir()) == []


def test_only_files_not_yet_whole_are_named_as_such() -> None:
    assert is_part(".0123456789abcdef.part")
    assert not any(map(is_part, ("a.part", ".part", ".0123456789abcdef.part2", ".class.part")))


def test_what_the_system_refuses_names_a_file() -> None:
    for own, told in ((None, "a"), ("b", "b")):
        with pytest.raises(OSError, match="No space left") as caught, naming(Path("a")):
            raise OSError(28, "No space left on device", own)
        assert caught.value.filename == told


def test_what_is_on_the_disk_is_open_no_more(tmp_path: Path) -> None:
    (tmp_path / "a").touch()
    before = psutil.Process().num_fds()
    sync([tmp_path / "a", tmp_path])
    assert psutil.Process().num_fds() == before
