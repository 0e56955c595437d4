"""What a test run leaves to the proofs, and says at its end: how many published answers agree."""

from __future__ import annotations

import gc
import tomllib
from collections import defaultdict
from collections.abc import Sequence
from itertools import count
from pathlib import Path
from typing import Any
from zlib import crc32

import pytest

HERE = Path(__file__).parent / "published"


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: Sequence[pytest.Item]) -> None:
    """Of a test that is marked so, one case in so many is tried at once, the rest when proving."""
    places: dict[str, count[int]] = defaultdict(count)
    for item in items:
        mark = item.get_closest_marker("one_in")
        if mark:
            name = item.nodeid.partition("[")[0]
            if not at_once(name, next(places[name]), *mark.args):
                item.add_marker(pytest.mark.proof)


def at_once(name: str, place: int, share: int) -> bool:
    """Each test has cases of its own; where they are in rows of `share`, each row another."""
    return (crc32(name.encode()) + place + place // share) % share == 0


@pytest.hookimpl(trylast=True)
def pytest_runtest_teardown(item: pytest.Item, nextitem: pytest.Item | None) -> None:
    """Spares the collector of garbage what the tests of a file keep for later ones.

    It would look through all of that again and again, for seconds at a time in the end, which the
    limits of processor time could then blame on a problem.
    """
    if nextitem is None or nextitem.path != item.path:
        gc.collect()
        gc.freeze()


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    tried = [
        (report.nodeid, outcome)
        for outcome in ("passed", "failed", "error")
        for report in terminalreporter.stats.get(outcome, [])
        if "test_published.py::test_answer_agrees[" in report.nodeid
    ]
    if tried:
        agreeing = len({nodeid for nodeid, outcome in tried if outcome == "passed"})
        listed = _listed()
        apart = sum("computed" in answer for answer in listed)
        terminalreporter.write_line(
            f"published: {agreeing} of {len(listed)} answers agree"
            f" ({apart} of them with the exact value, where the book rounds midway or errs)"
        )


def _listed() -> list[dict[str, Any]]:
    problems = tomllib.loads((HERE / "answers.toml").read_text(encoding="utf-8"))["problem"]
    return [answer for problem in problems for answer in problem["answer"]]
