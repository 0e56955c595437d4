"""A class's pages beside a stock TeX process for each document: processor time of all processes."""

import subprocess
import tempfile
from collections.abc import Sequence
from pathlib import Path

from probgen.build.build import build_assignment
from probgen.build.workers import Crew
from tests.bench.line import at_least, at_most
from tests.bench.ordinary.written import written
from tests.bench.school import School, work_of_children
from tests.bench.stages import Stages

_FEW = 8  # students whose documents are printed one by one: their mean is that of a class
_SAMPLES = 5
_SAMPLE = r"\input{sample2e}"


def bench(school: School, students: int) -> None:
    """Ours beside what a department would write, and beside the sample that comes with TeX."""
    assignment = school.assignment(min(_FEW, students))
    with written() as files:
        build_assignment(assignment, assignment.parent / "ordinary", Crew(1), lambda *told: None)
    ordinary, sample = _each(files), _each([_SAMPLE] * _SAMPLES)
    ours = school.build(students)
    documents = 2 * students
    each = ours.work / documents
    print(f"{documents} documents in {ours.seconds:.1f} s; processor time of one: ours "
          f"{each * 1e3:.0f} ms, TeX for an ordinary one {ordinary * 1e3:.0f} ms, "
          f"for its sample {sample * 1e3:.0f} ms")  # fmt: skip
    near = at_most("class-beside-sample", each / sample, 0.19)
    far = at_least("one-process-each-beside-class", ordinary / each, 30.0)
    if not (near and far):
        stages = Stages()
        with stages.watched():
            build_assignment(assignment, assignment.parent / "watched", Crew(1), lambda *told: None)
        print(stages.shares())


def _each(files: Sequence[str]) -> float:
    """Processor time (s) of one file, by pdfLaTeX as it is installed."""
    with tempfile.TemporaryDirectory(prefix="probgen-bench-") as name:
        before = work_of_children()
        for place, text in enumerate(files):
            Path(name, f"{place}.tex").write_text(text, encoding="utf-8")
            command = ["pdflatex", "-interaction=batchmode", "-halt-on-error", f"{place}.tex"]
            run = subprocess.run(command, cwd=name, stdout=subprocess.DEVNULL)
            if run.returncode:
                log = Path(name, f"{place}.log").read_text(encoding="utf-8", errors="replace")
                raise SystemExit(f"pdflatex: {log[-2000:]}")
        return (work_of_children() - before) / len(files)
