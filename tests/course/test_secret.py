"""The secret of a course: drawn once, closed to others, found from the folders below."""

import os
from pathlib import Path

import pytest

from probgen.course.secret import SECRET, find_secret, new_secret, write_secret
from probgen.input.fault import InputError


def test_drawn_once_and_closed_to_others(tmp_path: Path) -> None:
    path = write_secret(tmp_path)
    before = path.read_text()
    assert path.stat().st_mode & 0o777 == 0o600
    assert write_secret(tmp_path).read_text() == before
    found = find_secret(tmp_path)
    assert found is not None
    assert (found.text, found.folder) == (before.strip(), tmp_path)


def test_found_from_two_folders_below_and_not_from_three(tmp_path: Path) -> None:
    write_secret(tmp_path)
    below = tmp_path / "week-5" / "drafts" / "old"
    below.mkdir(parents=True)
    assert find_secret(below.parent) == find_secret(tmp_path)
    assert find_secret(below) is None


@pytest.mark.parametrize("text", ["", "hush", "0" * 31, "G" * 32])
def test_what_is_no_secret_is_refused(text: str, tmp_path: Path) -> None:
    path = write_secret(tmp_path)
    path.write_text(text)
    with pytest.raises(InputError, match="something else"):
        find_secret(tmp_path)


@pytest.mark.skipif(os.name != "posix", reason="needs permissions")
@pytest.mark.parametrize("mode", [0o644, 0o640, 0o602])
def test_one_that_others_may_read_is_refused(mode: int, tmp_path: Path) -> None:
    write_secret(tmp_path).chmod(mode)
    with pytest.raises(InputError, match=f"chmod 600 .*{SECRET}"):
        find_secret(tmp_path)


def test_no_two_are_alike() -> None:
    assert len({new_secret() for _ in range(100)}) == 100
