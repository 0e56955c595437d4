"""Progress on long work: a bar on standard error, and nothing when that is no terminal."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from time import monotonic
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from rich.progress import Progress

    from probgen.build.progress import Report

_PATIENCE = 1.0  # seconds after which somebody wants to see something


@contextmanager
def progress(quiet: bool = False) -> Iterator[Report]:
    """A report to hand to long work; the bars show once the work has taken a second.

    Each stage has a bar with what is done, its whole and the time left.  quiet: none is shown.
    """
    if quiet:
        yield lambda stage, done, total: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TimeRemainingColumn

    columns = ("{task.description}", BarColumn(), MofNCompleteColumn(), TimeRemainingColumn())
    bar = Progress(*columns, console=Console(stderr=True), transient=True)
    shown = bar.console.is_terminal
    start = monotonic()

    def report(stage: str, done: int, total: int) -> None:
        if shown and not bar.live.is_started and monotonic() - start > _PATIENCE:
            bar.start()
        _update(bar, stage, done, total)

    try:
        yield report
    finally:
        if bar.live.is_started:
            bar.stop()


def _update(bar: Progress, stage: str, done: int, total: int) -> None:
    task = next((task.id for task in bar.tasks if task.description == stage), None)
    if task is None:
        task = bar.add_task(stage, total=total)
    bar.update(task, completed=done)
