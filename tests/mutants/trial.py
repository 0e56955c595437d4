"""The tests of a room tried on a copy of the project in which one thing is broken."""

from __future__ import annotations

import ast
import multiprocessing
import os
import shutil
import signal
import tempfile
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from fnmatch import fnmatch
from functools import cached_property
from multiprocessing.process import BaseProcess
from pathlib import Path
from typing import Final

from tests.mirrors import ELSEWHERE, mirror_of
from tests.mutants.breaks import Break
from tests.mutants.reach import ROOT, Reach, read_lines
from tests.mutants.run import LIBRARIES, run_tests
from tests.mutants.type_check import types_fail

_COPIED: Final = ("probgen", "tests", "templates", "banks")
OWN, ROOM, GUARD = "the module's own test file", "its room", "the guards of its room"
TYPES = "mypy"
FAILED, OUT_OF_TIME = "failed", "out of time"
_LONGER: Final = 5  # times as long as on sound code is how long tests may take
_LONGEST: Final = 900.0  # seconds, on sound code
_NONE_FAILED: Final = (0, 5)  # pytest's exit codes: all passed; none there, as where all are proofs

# Forked off a process that has the libraries, and nothing of the project, in memory.
_PROCESSES: Final = multiprocessing.get_context("forkserver")
_PROCESSES.set_forkserver_preload([*LIBRARIES])

Reached = Callable[[Path], Reach]
"""What a test file does on sound code, measured where it is first asked for."""

_READ_ALOUD: Final = "wording/test_workings.py"  # workings as they were last read
_LOOKED_AT: Final = "golden/test_drawings.py"  # figures as somebody has seen them

GUARDS: Final[dict[str, tuple[str, ...]]] = {
    # what a template means shows in its answers, its words and its figures
    "bank": (_READ_ALOUD, _LOOKED_AT, "published", "problem", "cli/test_check.py"),
    # builds run as a user runs them, and what is told when one fails
    "build": (
        "cli/test_build.py", "cli/test_draft.py", "cli/test_print_run.py", "cli/test_solutions.py",
        "cli/test_failure.py", "hostile/test_places.py",
    ),
    "cli": ("hostile/test_commands.py", "hostile/test_output.py", "hostile/test_places.py"),
    # a term with its corrections, its sections and drafts, and papers looked for in it
    "course": (
        "papers", "hostile/test_records.py", "cli/test_sections.py", "cli/test_draft.py",
        "cli/test_term.py", "cli/test_trace.py",
    ),
    "department": ("cli/test_bank.py", "cli/test_bank_release.py"),  # kept as a keeper keeps it
    "draws": ("course",),
    "figures": (_LOOKED_AT,),
    "input": ("bank/test_requirements.py", "course", "hostile"),  # faults and bounds show there
    "marking": ("cli/test_form.py",),  # a class marked as a user marks it
    # a slip is shown by the key that tells of it, and named in what students type
    "mistakes": ("wording/test_slip.py", "marking/test_judged.py"),
    "papers": ("golden", "cli/test_pdfs.py"),  # what stands on a page, looked for on pages
    "press": ("papers", "cli/test_pdfs.py", "cli/test_failure.py"),  # pages, and what is told
    "problem": (_READ_ALOUD, "cli/test_work.py", "cli/test_check.py"),
    "quantities": (_READ_ALOUD, _LOOKED_AT, "wording/test_reread.py"),  # what is printed is read
    "sheets": ("papers", "golden"),
    # answers printed in textbooks, and the ways that lead to them
    "statics": (_READ_ALOUD, _LOOKED_AT, "published", "wording/test_reread.py"),
    "wording": ("sheets/latex", "problem"),
    "working": ("published", "wording"),  # facts that the key tells
}  # fmt: skip
"""Tests of other rooms that are the guard of a room's behaviour, tried after its own."""


@dataclass(frozen=True, slots=True)
class Module:
    """A file of the package; path: within the project, such as probgen/bank/load.py."""

    path: Path

    @property
    def room(self) -> str:
        return self.path.parts[1]

    @property
    def own_tests(self) -> Path:
        """The test file that mirrors it, or the one that stands in for it."""
        name = Path(*self.path.parts[1:]).as_posix()
        elsewhere = (test for pattern, test in ELSEWHERE.items() if fnmatch(name, pattern))
        return Path("tests", next(elsewhere, mirror_of(name)))

    def test_files(self) -> list[Path]:
        """Every test file that may notice a break of it: its own, its room's, its guards'."""
        places = (self.room, *GUARDS.get(self.room, ()))
        found = [self.own_tests] if (ROOT / self.own_tests).exists() else []
        for place in places:
            path = ROOT / "tests" / place
            files = sorted(path.rglob("test_*.py")) if path.is_dir() else [path]
            found += [file.relative_to(ROOT) for file in files]
        return list(dict.fromkeys(found))

    def stages(self, line: int, reached: Reached) -> Iterator[tuple[str, list[Path]]]:
        """The files to try on a break of a line, those likely to notice it and quick ones first.

        OWN: its own file.  TYPES: none, since mypy is asked.  ROOM, GUARD: what runs the function
        that the line is in; outside functions, or where it is run in another process only, all of
        its room and guards.
        """
        files = self.test_files()
        if self.own_tests in files and reached(self.own_tests).passes:
            yield OWN, [self.own_tests]
        yield TYPES, []
        first, last = self._function(line)
        sound = [test for test in files if test != self.own_tests and reached(test).passes]
        meeting = [test for test in sound if last and reached(test).meets(self.path, first, last)]
        likely = sorted(meeting or sound, key=lambda test: reached(test).seconds)
        yield ROOM, [test for test in likely if test.parts[1] == self.room]
        yield GUARD, [test for test in likely if test.parts[1] != self.room]

    def _function(self, line: int) -> tuple[int, int]:
        """The lines of the body of the outermost function that a line is in; (1, 0) if none."""
        tree = ast.parse((ROOT / self.path).read_text(encoding="utf-8"))
        for node in ast.walk(tree):
            if isinstance(node, ast.FunctionDef):
                first, last = node.body[0].lineno, node.end_lineno or 0
                if first <= line <= last:
                    return first, last
        return 1, 0


@dataclass(frozen=True, slots=True)
class Trial:
    """What the tests said of a break.

    noticed_by: OWN, TYPES, ROOM or GUARD, the first that did, "" where nobody did; how: FAILED, or
    OUT_OF_TIME when tests went on for too long, as in an endless loop.
    """

    module: Module
    change: Break
    noticed_by: str
    how: str


class Copy:
    """A copy of the project that may be broken, with caches of its own."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        for name in _COPIED:
            shutil.copytree(
                ROOT / name, folder / name, ignore=shutil.ignore_patterns("__pycache__")
            )
        for path in ROOT.iterdir():
            if path.is_file():
                shutil.copy2(path, folder / path.name)

    def reach(self, test: Path) -> Reach:
        """What a test file does on the sound copy."""
        began = time.monotonic()
        data = self.folder / ".reached"
        how = self._complaint([test], _LONGEST, data)
        lines = read_lines(data, self.folder) if data.exists() else {}
        data.unlink(missing_ok=True)
        return Reach(not how, time.monotonic() - began, lines)

    def is_sound(self, reaches: Mapping[Path, Reach]) -> bool:
        """Whether tests still pass here with nothing broken: the quickest of those that did."""
        passing = [test for test, reach in reaches.items() if reach.passes]
        quickest = min(passing, key=lambda test: reaches[test].seconds)
        return not self._complaint([quickest], 10 + _LONGER * reaches[quickest].seconds)

    @cached_property
    def typed(self) -> bool:
        """Whether mypy finds nothing while nothing is broken; it is quicker from then on."""
        return not types_fail(self.folder)

    def tried(self, module: Module, change: Break, reached: Reached) -> Trial:
        """The break shown to one stage after another, until one complains."""
        for stage, tests in module.stages(change.line, reached):
            if stage == TYPES:
                how = FAILED if self._types_complain(module, change) else ""
            else:
                limit = 10 + _LONGER * sum(reached(test).seconds for test in tests)
                with self._broken(module, change):
                    how = self._complaint(tests, limit) if tests else ""
            if how:
                return Trial(module, change, stage, how)
        return Trial(module, change, "", "")

    def _types_complain(self, module: Module, change: Break) -> bool:
        if not self.typed:
            return False
        with self._broken(module, change):
            return types_fail(self.folder)

    @contextmanager
    def _broken(self, module: Module, change: Break) -> Iterator[None]:
        """The copy with a break made, which is whole again afterwards."""
        file = self.folder / module.path
        whole = file.read_text(encoding="utf-8")
        self._write(file, change.applied(whole))
        try:
            yield
        finally:
            self._write(file, whole)

    def _complaint(self, tests: Sequence[Path], limit: float, data: Path | None = None) -> str:
        """What tests say of the copy within so many seconds: FAILED, OUT_OF_TIME, or nothing."""
        with tempfile.TemporaryDirectory(prefix="probgen-mutant-") as own:
            (cache := Path(own, "cache")).mkdir()
            surroundings = {"XDG_CACHE_HOME": str(cache), "TMPDIR": own}
            running = _PROCESSES.Process(
                target=run_tests, args=(self.folder, [*map(str, tests)], surroundings, data)
            )
            running.start()
            running.join(limit)
            try:
                if running.exitcode is None:
                    return OUT_OF_TIME
                return "" if running.exitcode in _NONE_FAILED else FAILED
            finally:
                _end(running)

    def _write(self, file: Path, text: str) -> None:
        """Writes a module, and forgets how it was compiled: times of files are too coarse."""
        file.write_text(text, encoding="utf-8")
        for compiled in (file.parent / "__pycache__").glob(f"{file.stem}.*.pyc"):
            compiled.unlink()


def _end(running: BaseProcess) -> None:
    """Ends a run of tests with all it has started, which is a group of its own."""
    with suppress(ProcessLookupError):
        os.killpg(running.pid or 0, signal.SIGKILL)
    running.join()
