"""The classes the bench builds, and what building them with the command line takes."""

import os
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path

import psutil

from probgen.build.example import invent_roster
from probgen.problem.catalogue import read_catalogue

PROBLEMS = 5
_SAMPLE_SECONDS = 0.1


@dataclass(frozen=True)
class Cost:
    """seconds: wall time; work: processor time of all processes; memory: their largest sum at one
    time, MB (shared pages are counted once where the system can tell, on Linux)."""

    seconds: float
    work: float
    memory: float


@dataclass(frozen=True)
class School:
    """folder: where the classes are made."""

    folder: Path

    def assignment(self, students: int) -> Path:
        """A set of five problems of different families for so many students."""
        folder = self.folder / str(students)
        folder.mkdir(exist_ok=True)
        (folder / "class.csv").write_text(invent_roster(students), encoding="utf-8")
        problems = "".join(
            f'[[problem]]\ntemplate = "{id}"\npoints = 10\n' for id in of_different_families()
        )
        head = 'course = "Mechanics"\ntitle = "Bench"\nroster = "class.csv"\n'
        head += 'seed = "five problems of a bench"\n'
        (folder / "assignment.toml").write_text(head + problems, encoding="utf-8")
        return folder / "assignment.toml"

    def build(self, students: int, workers: int | None = None) -> Cost:
        """Builds a class as a user does, watching the memory of all its processes."""
        assignment = self.assignment(students)
        words = ["build", str(assignment), "--out", str(assignment.parent / "built"), "--quiet"]
        words += ["--workers", str(workers)] if workers else []
        start, most, before = time.perf_counter(), 0.0, work_of_children()
        with subprocess.Popen([sys.executable, "-m", "probgen", *words]) as build:
            while build.poll() is None:
                most = max(most, memory(build.pid))
                time.sleep(_SAMPLE_SECONDS)
            taken = time.perf_counter() - start
        if build.returncode:
            raise SystemExit(f"probgen ended with exit code {build.returncode}")
        return Cost(taken, work_of_children() - before, most)


def of_different_families() -> list[str]:
    """The first templates of the catalogue, each of another family as far as there are so many."""
    entries = read_catalogue()
    first = {entry.family: entry.id for entry in reversed(entries)}
    others = [entry.id for entry in entries if entry.id not in first.values()]
    return [*sorted(first.values()), *others][:PROBLEMS]


def work_of_children() -> float:
    """Processor time (s) of all processes that were started and have ended."""
    times = os.times()
    return times.children_user + times.children_system


def memory(pid: int) -> float:
    """Memory (MB) of a process and all it has started."""
    total = 0
    try:
        root = psutil.Process(pid)
        for process in [root, *root.children(recursive=True)]:
            try:
                held = process.memory_full_info()
                total += getattr(held, "pss", 0) or held.uss
            except psutil.Error:  # it has ended meanwhile
                continue
    except psutil.Error:
        return 0.0
    return total / 1e6


def cores() -> int:
    return os.cpu_count() or 1
