"""After the first print: somebody joins late, and a paper is looked for."""

from __future__ import annotations

import csv
import subprocess
import sys
from pathlib import Path

from tests.bench.line import at_most, seconds
from tests.bench.school import School

_TIMES = 3
_LATE = "Zora Lately,S9999,Mon\n"


def bench(school: School, students: int) -> None:
    """A class is built, a line is added to its list, it is built again, and a code is looked up."""
    assignment = school.assignment(students)
    built = assignment.parent / "term"
    words = ("build", str(assignment), "--out", str(built), "--quiet")
    first = seconds(lambda: _run(*words))
    with assignment.with_name("class.csv").open("a", encoding="utf-8") as roster:
        roster.write(_LATE)
    at_most("one-late-student-beside-class", seconds(lambda: _run(*words)) / first, 0.1)
    code = _code_of_somebody(built)
    traced = seconds(lambda: _run("trace", code, str(built)), _TIMES)
    at_most(f"trace-in-{students}", traced, 1.0, "s")


def _code_of_somebody(built: Path) -> str:
    with (built / "codes.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = [*csv.DictReader(file)]
    return rows[len(rows) // 2]["code"]


def _run(*words: str) -> None:
    command = [sys.executable, "-m", "probgen", *words]
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
