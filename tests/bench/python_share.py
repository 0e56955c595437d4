"""What Python takes for one student, in starts of an interpreter that imports click.

Such a start takes as long on every machine as the work of a student does there, so that figures of
different machines, and of different days, can be compared.
"""

import subprocess
import sys
from resource import RUSAGE_CHILDREN, RUSAGE_SELF, getrusage

from probgen.build.build import build_assignment
from probgen.build.workers import Crew
from tests.bench.line import at_most
from tests.bench.school import School

_TIMES = 9
_AIM = 1.0
"""The first class that was measured so took 2.6."""


def bench(school: School, students: int) -> None:
    """A class of five problems, built by this process alone: TeX's time is that of its children."""
    assignment = school.assignment(students)
    out = assignment.parent / "by-one-process"
    before = _work(RUSAGE_SELF)
    build_assignment(assignment, out, Crew(1), lambda *told: None)
    each = (_work(RUSAGE_SELF) - before) / students
    start = min(_click() for _ in range(_TIMES))
    print(f"Python: {each * 1e3:.1f} ms a student, {start * 1e3:.1f} ms to start with click")
    at_most("python-a-student", each / start, _AIM, " starts of click")


def _click() -> float:
    before = _work(RUSAGE_CHILDREN)
    subprocess.run([sys.executable, "-c", "import click"], check=True)
    return _work(RUSAGE_CHILDREN) - before


def _work(whose: int) -> float:
    """Processor time (s) that has been taken."""
    used = getrusage(whose)
    return used.ru_utime + used.ru_stime
