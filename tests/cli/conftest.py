"""The command line run as a user runs it, inside the test's own process."""

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from probgen.cli import main
from probgen.course.secret import write_secret

Run = Callable[..., Result]
FilesIn = Callable[[Path], dict[str, bytes]]

SET = """
course = "Mechanics & More_1"
title = "Week 3: 50 % statics"
roster = "class.csv"
seed = "spring term, section 2"
[[problem]]
template = "seesaw-two-riders"
points = 8
[[problem]]
template = "forearm-load"
points = 12
"""
ROSTER = 'Name;ID\n"Ada #1 Quill, Jr.";s_7\nZoë Müller-Łukasz;s_8\n'


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Runs a command line in an empty folder."""
    monkeypatch.chdir(tmp_path)
    return lambda *words: CliRunner().invoke(main, [str(word) for word in words])


@pytest.fixture
def assignment(tmp_path: Path) -> Path:
    """A set of two problems for a class of two, in a course that has a secret."""
    (tmp_path / "class.csv").write_text(ROSTER, encoding="utf-8")
    write_secret(tmp_path)
    path = tmp_path / "week-3.toml"
    path.write_text(SET, encoding="utf-8")
    return path


@pytest.fixture
def files_in() -> FilesIn:
    """Every file below a folder, by its path from there."""
    return lambda folder: {
        str(path.relative_to(folder)): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }
