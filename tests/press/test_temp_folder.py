"""Folders of TeX runs: gone when they are done, and when a killed run has left them."""

import os
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

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


def test_what_killed_runs_left_is_removed(temporary: Path) -> None:
    ages = {"probgen-run-old": 2 * 86400, "probgen-run-new": 60, "others-old": 2 * 86400}
    for name, age in ages.items():
        (temporary / name).mkdir()
        (temporary / name / "run.tex").write_text("x")
        os.utime(temporary / name, (time.time() - age,) * 2)
    with workroom():
        pass
    assert {entry.name for entry in temporary.iterdir()} == {"probgen-run-new", "others-old"}
