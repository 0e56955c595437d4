"""What a test run leaves to the proofs, and says at its end: how many published answers agree."""

from __future__ import annotations

import tomllib
from collections import defaultdict
from collections.abc import Sequence
from itertools import count
from pathlib import Path
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


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    tried = [
        (report.nodeid, outcome)
        for outcome in ("passed", "failed", "error")
        for report in terminalreporter.stats.get(outcome, [])
        if "test_published.py::test_answer_agrees[" in report.nodeid
    ]
    if tried:
        agreeing = len({nodeid for nodeid, outcome in tried if outcome == "passed"})
        terminalreporter.write_line(f"published: {agreeing} of {_listed()} answers agree")


def _listed() -> int:
    problems = tomllib.loads((HERE / "answers.toml").read_text(encoding="utf-8"))["problem"]
    return sum(len(problem["answer"]) for problem in problems)
