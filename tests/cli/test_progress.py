"""Progress on long work: shown on a terminal once it takes long, and never elsewhere."""

import pytest
from rich import console
from rich.progress import Progress

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


def test_every_stage_has_one_bar() -> None:
    bar = Progress(console=console.Console(quiet=True))
    reports = [("sheets", 1, 9), ("piles", 2, 3), ("sheets", 4, 9), ("piles", 3, 3)]
    for stage, done, total in reports:
        module._update(bar, stage, done, total)
    shown = [(task.description, task.completed, task.total) for task in bar.tasks]
    assert shown == [("sheets", 4, 9), ("piles", 3, 3)]


@pytest.mark.usefixtures("terminal")
def test_quiet_shows_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    work_through(quiet=True)
    assert capsys.readouterr() == ("", "")


@pytest.mark.parametrize(("seconds", "seen"), [(0.9, False), (1.1, True)])
def test_bars_show_once_the_work_takes_a_second(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, seconds: float, seen: bool
) -> None:
    times = iter([500.0])  # a clock that counts from when the machine was started
    monkeypatch.setattr(console, "Console", Terminal)
    monkeypatch.setattr(module, "monotonic", lambda: next(times, 500.0 + seconds))
    work_through()
    assert ("students" in capsys.readouterr().err) is seen


def test_what_is_no_terminal_sees_nothing(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "_PATIENCE", -1.0)
    work_through()
    assert capsys.readouterr() == ("", "")
