"""The tests of a room tried on a copy of the project in which one thing is broken."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from tests.mutants.breaks import Break

ROOT: Final = Path(__file__).resolve().parents[2]
_COPIED: Final = ("probgen", "tests", "templates", "banks")
FAILED, OUT_OF_TIME = "failed", "out of time"
_LONGER: Final = 5  # times as long as on sound code is how long tests may take
_LONGEST: Final = 900.0  # seconds, on sound code
_NONE_FAILED: Final = (0, 5)  # pytest's exit codes: all passed; none there, as where all are proofs


GUARDS: Final[dict[str, tuple[str, ...]]] = {
    "bank": ("published", "problem"),  # what a template means shows in its answers
    "course": ("papers",),
    "draws": ("course",),
    "input": ("bank/test_requirements.py", "course"),  # faults and bounds show in what is read
    "mistakes": ("wording/test_slip.py",),  # a slip is shown by the key that tells of it
    "papers": ("golden", "cli/test_pdfs.py"),  # what stands on a page, looked for on pages
    "problem": ("cli/test_work.py", "cli/test_check.py"),
    "quantities": ("wording/test_reread.py",),  # what is printed is read back
    "sheets": ("papers", "golden"),
    "statics": ("published", "wording/test_reread.py"),  # answers printed in textbooks
    "wording": ("sheets/latex", "problem"),
    "working": ("published", "wording"),  # facts that the key tells
}
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
        """The test file that mirrors it, whether there is one or not."""
        return Path("tests", *self.path.parts[1:-1], f"test_{self.path.name}")

    def tests(self) -> list[Path]:
        """The tests to try, one after another: its own, its folder's, its room's, its guards'."""
        tried = [self.own_tests, *list(self.own_tests.parents)[:-2]]
        guards = (Path("tests", *name.split("/")) for name in GUARDS.get(self.room, ()))
        return [path for path in (*tried, *guards) if (ROOT / path).exists()]


@dataclass(frozen=True, slots=True)
class Trial:
    """What the tests said of a break.

    noticed_by: the first file or folder of tests that failed, "" when none did; how: FAILED, or
    OUT_OF_TIME when they went on for too long, as in a loop that no longer ends.
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

    def complaint(self, tests: Path, limit: float) -> str:
        """What tests say of the copy within so many seconds: FAILED, OUT_OF_TIME, or nothing."""
        with tempfile.TemporaryDirectory(prefix="probgen-mutant-") as own:
            (cache := Path(own, "cache")).mkdir()
            surroundings = os.environ | {
                "PYTHONPATH": str(self.folder), "XDG_CACHE_HOME": str(cache), "TMPDIR": own
            }  # fmt: skip
            command = [sys.executable, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider"]
            running = subprocess.Popen(
                [*command, str(tests)],
                cwd=self.folder, env=surroundings, start_new_session=True,
                stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
            )  # fmt: skip
            try:
                return "" if running.wait(limit) in _NONE_FAILED else FAILED
            except subprocess.TimeoutExpired:
                return OUT_OF_TIME
            finally:
                _end(running)

    def tried(self, module: Module, change: Break, limits: Limits) -> Trial:
        """The break made and tests run, one file or folder after another, until one fails."""
        for tests in module.tests():
            if how := self._complaint(tests, module, change, limits):
                return Trial(module, change, str(tests), how)
        return Trial(module, change, "", "")

    def _complaint(self, tests: Path, module: Module, change: Break, limits: Limits) -> str:
        limit = limits.of(self, tests)
        if not limit:
            return ""
        file = self.folder / module.path
        whole = file.read_text(encoding="utf-8")
        try:
            self._write(file, change.applied(whole))
            return self.complaint(tests, limit)
        finally:
            self._write(file, whole)

    def _write(self, file: Path, text: str) -> None:
        """Writes a module, and forgets how it was compiled: times of files are too coarse."""
        file.write_text(text, encoding="utf-8")
        for compiled in (file.parent / "__pycache__").glob(f"{file.stem}.*.pyc"):
            compiled.unlink()


class Limits:
    """How many seconds tests may take before they count as failed: a multiple of sound code's."""

    def __init__(self) -> None:
        self._seconds: dict[Path, float] = {}

    def of(self, copy: Copy, tests: Path) -> float:
        """Measured on a sound copy; 0 where tests fail on that, and so can notice nothing."""
        if tests not in self._seconds:
            began = time.monotonic()
            how = copy.complaint(tests, _LONGEST)
            self._seconds[tests] = 0.0 if how else 10 + _LONGER * (time.monotonic() - began)
            if how:
                print(f"{tests}: {how} on sound code, so that it notices nothing", flush=True)
        return self._seconds[tests]


def _end(running: subprocess.Popen[bytes]) -> None:
    """Ends a run of tests with all it has started, which is a group of its own."""
    with suppress(ProcessLookupError):
        os.killpg(running.pid, signal.SIGKILL)
    running.wait()
