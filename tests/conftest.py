"""What every test run says at its end: how many published answers agree."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

HERE = Path(__file__).parent / "published"


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
