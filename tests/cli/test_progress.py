"""Progress on long work: shown on a terminal once it takes long, and never elsewhere."""

import pytest
from rich import console

from probgen.cli import progress as module
from probgen.cli.progress import progress


class Terminal(console.Console):
    """A terminal that keeps what is written to it."""

    last: "Terminal"

    def __init__(self, **usual: object) -> None:
        super().__init__(record=True, force_terminal=True, width=100, stderr=True)
        Terminal.last = self


def work_through(quiet: bool = False) -> None:
    with progress(quiet) as report:
        for done in range(0, 301, 100):
            report("students", done, 300)


@pytest.fixture
def terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(console, "Console", Terminal)
    monkeypatch.setattr(module, "_PATIENCE", -1.0)


@pytest.mark.usefixtures("terminal")
def test_a_terminal_sees_stage_count_and_time_left(capsys: pytest.CaptureFixture[str]) -> None:
    work_through()
    shown = capsys.readouterr().err
    assert "students" in shown
    assert "300/300" in shown
    assert "0:00:00" in shown


@pytest.mark.usefixtures("terminal")
def test_quiet_shows_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    work_through(quiet=True)
    assert capsys.readouterr() == ("", "")


def test_what_is_no_terminal_sees_nothing(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "_PATIENCE", -1.0)
    work_through()
    assert capsys.readouterr() == ("", "")
