"""The command line run as a user runs it, inside the test's own process."""

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from probgen.cli import main

Run = Callable[..., Result]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Runs a command line in an empty folder."""
    monkeypatch.chdir(tmp_path)
    return lambda *words: CliRunner().invoke(main, [str(word) for word in words])
