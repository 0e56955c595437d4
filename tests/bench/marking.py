"""A large class marked from a table of answers: how long it takes, and how much memory."""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path
from random import Random
from statistics import median

from probgen.bank.bank import default_bank
from probgen.build.tables import write_csv
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.record_file import write_record
from probgen.course.roster import Student
from probgen.course.version_code import code_of
from probgen.marking.form import OWN_HEADINGS, Place, columns, papers
from probgen.problem.problem import prepare
from probgen.working.convention import Convention
from tests.bench.line import at_most
from tests.bench.school import memory, of_different_families
from tests.bench.simulated import Paper, Students
from tests.records import SECRET, Column, record_of

_RUNS = 3  # of which the middle one counts
_SAMPLE_SECONDS = 0.5  # to look takes the processes looked at some milliseconds too


def bench(folder: Path, large: int) -> None:
    """large: papers of the larger class; a third of them is the other one."""
    runs = [_marked(folder / f"large {run}", large) for run in range(_RUNS)]
    seconds, most = median(seconds for seconds, _ in runs), max(most for _, most in runs)
    _, least = _marked(folder / "small", large // 3)
    at_most(f"marked-{large}-papers", seconds * 3000 / large, 10.0, " s for 3,000")
    at_most(f"marking-memory-{large}-beside-{large // 3}", most / least, 1.3)


def _marked(folder: Path, count: int) -> tuple[float, float]:
    """Seconds, and the most memory (MB), that the command takes for a class."""
    folder.mkdir()
    _fill_in(folder, count)
    words = ["mark", str(folder / "record.json"), str(folder / "answers.csv"), "--out",
             str(folder / "marks")]  # fmt: skip
    start, most = time.perf_counter(), 0.0
    command = [sys.executable, "-m", "probgen", *words]
    with subprocess.Popen(command, stdout=subprocess.DEVNULL) as marking:
        while marking.poll() is None:
            most = max(most, memory(marking.pid))
            time.sleep(_SAMPLE_SECONDS)
    if marking.returncode:
        raise SystemExit(f"probgen mark ended with exit code {marking.returncode}")
    return time.perf_counter() - start, most


def _fill_in(folder: Path, count: int) -> None:
    """A record of five problems, each student with numbers of their own, and what they typed."""
    ids = of_different_families()
    bank = default_bank()
    problems = [prepare(bank.read(id), Convention()) for id in ids]
    sheets = [
        list(Students(problem, Random(f"marking {problem.template.id}"), count).one_each())
        for problem in problems
    ]
    students = [Student(f"Student {n}", str(n)) for n in range(count)]
    assigned = tuple(Assigned(id, 10) for id in ids)
    chosen = ProblemSet("Mechanics", "Bench", "class.csv", assigned)
    record = record_of(chosen, students, [code_of(SECRET, str(n)) for n in range(count)], [
        Column(problem.template.id, problem.template.source, [paper.own.draw for paper in sheet])
        for problem, sheet in zip(problems, sheets, strict=True)
    ])  # fmt: skip
    (folder / "record.json").write_text(write_record(record), encoding="utf-8")
    asked = columns(record, problems)
    heads = [*OWN_HEADINGS, *(column.heading for column in asked)]
    rows = [
        ["", paper.id, paper.name,
         *(_cell(sheets[column.problem - 1][at], column.answer, column.place)
           for column in asked)]
        for at, paper in enumerate(papers(record))
    ]  # fmt: skip
    write_csv(folder / "answers.csv", heads, rows)


def _cell(paper: Paper, answer: str, place: Place) -> str:
    return paper.typed[answer].get(place, "")
