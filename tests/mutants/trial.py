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
        """The tests to try, one after another: its own, its folder's, its room's."""
        tried = [self.own_tests, *list(self.own_tests.parents)[:-2]]
        return [path for path in tried if (ROOT / path).exists()]


@dataclass(frozen=True, slots=True)
class Trial:
    """What the tests said of a break; noticed_by: the first that failed, "" when none did."""

    module: Module
    change: Break
    noticed_by: str
    seconds: float


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

    def passes(self, tests: Path, limit: float) -> bool:
        """Whether tests pass within so many seconds."""
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
                return running.wait(limit) == 0
            except subprocess.TimeoutExpired:
                return False
            finally:
                _end(running)

    def tried(self, module: Module, change: Break, limit: float) -> Trial:
        """The break made, the tests run until one fails, and the break mended."""
        began = time.monotonic()
        file = self.folder / module.path
        whole = file.read_text(encoding="utf-8")
        try:
            self._write(file, change.applied(whole))
            failing = (str(path) for path in module.tests() if not self.passes(path, limit))
            noticed_by = next(failing, "")
        finally:
            self._write(file, whole)
        return Trial(module, change, noticed_by, time.monotonic() - began)

    def _write(self, file: Path, text: str) -> None:
        """Writes a module, and forgets how it was compiled: times of files are too coarse."""
        file.write_text(text, encoding="utf-8")
        for compiled in (file.parent / "__pycache__").glob(f"{file.stem}.*.pyc"):
            compiled.unlink()


def _end(running: subprocess.Popen[bytes]) -> None:
    """Ends a run of tests with all it has started, which is a group of its own."""
    with suppress(ProcessLookupError):
        os.killpg(running.pid, signal.SIGKILL)
    running.wait()
