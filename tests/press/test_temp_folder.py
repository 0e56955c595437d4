"""Folders of TeX runs: gone when they are done, and when a killed run has left them."""

import errno
import os
import shutil
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from probgen.input.outside import OutsideError
from probgen.press import temp_folder as module
from probgen.press.temp_folder import workroom


@pytest.fixture
def temporary(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    module._sweep.cache_clear()
    yield tmp_path
    module._sweep.cache_clear()


def test_it_is_gone_afterwards(temporary: Path) -> None:
    with workroom() as folder:
        (folder / "run.tex").write_text("x")
        assert list(temporary.iterdir()) == [folder]
    assert list(temporary.iterdir()) == []


def test_a_run_is_not_taken_for_left_over_when_the_clock_jumps(temporary: Path) -> None:
    with workroom() as folder:
        (folder / "run.tex").write_text("x")
        os.utime(folder, (time.time() - 2 * 86400,) * 2)
        module._sweep.cache_clear()
        with workroom():
            assert (folder / "run.tex").exists()


def test_a_full_disk_is_named(temporary: Path) -> None:
    with pytest.raises(OutsideError, match="No space left") as caught, workroom():
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
    assert str(temporary) in str(caught.value)
    assert "set TMPDIR" in str(caught.value)


def test_a_folder_taken_away_is_named(temporary: Path) -> None:
    def use() -> None:
        with workroom() as folder:
            shutil.rmtree(folder)
            (folder / "run.tex").write_text("x")

    with pytest.raises(OutsideError, match="cannot be used"):
        use()


def test_what_is_not_of_the_folder_stays_what_it_is(temporary: Path) -> None:
    with pytest.raises(PermissionError), workroom():
        raise PermissionError(errno.EACCES, "closed", "/elsewhere")


def test_no_place_at_all(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tempfile, "tempdir", None)
    monkeypatch.setattr(tempfile, "_get_default_tempdir", nowhere)
    with pytest.raises(OutsideError, match="no folder can be used"), workroom():
        pass


def nowhere() -> str:
    raise FileNotFoundError(errno.ENOENT, "No usable temporary directory found")


def test_what_killed_runs_left_is_removed(temporary: Path) -> None:
    ages = {"probgen-run-old": 2 * 86400, "probgen-run-new": 60, "others-old": 2 * 86400}
    for name, age in ages.items():
        (temporary / name).mkdir()
        (temporary / name / "run.tex").write_text("x")
        os.utime(temporary / name, (time.time() - age,) * 2)
    with workroom():
        pass
    assert {entry.name for entry in temporary.iterdir()} == {"probgen-run-new", "others-old"}
