"""One run of tests, in a process that was forked off with their libraries in memory."""

from __future__ import annotations

import os
import sys
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Final

LIBRARIES: Final = (
    "pytest", "_pytest.assertion.rewrite", "_pytest.terminal", "coverage", "numpy", "hypothesis",
    "jinja2", "cattrs", "click", "rich.console", "networkx", "PIL.Image", "faker", "pdfplumber",
)  # fmt: skip
"""Loaded once, before the first run; a run takes a few milliseconds to begin."""

_OPTIONS: Final = (
    "-x", "-q", "-p", "no:cacheprovider", "-p", "no:faker",
    "-W", "ignore::pytest.PytestAssertRewriteWarning",  # of plugins in LIBRARIES
)  # fmt: skip


def run_tests(
    folder: Path, tests: Sequence[str], surroundings: Mapping[str, str], data: Path | None
) -> None:
    """Runs tests of a copy of the project until one fails, and ends with pytest's exit code.

    surroundings: variables of the environment; data: where coverage writes which lines of the
    package are run, if it is asked to.
    """
    os.setsid()
    os.environ.update(surroundings, PYTHONPATH=str(folder))
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    sys.dont_write_bytecode = False
    tempfile.tempdir = None  # looked up anew
    os.chdir(folder)
    _forget_the_project()
    sys.path.insert(0, str(folder))
    with open(os.devnull, "w") as nowhere:
        for stream in (1, 2):
            os.dup2(nowhere.fileno(), stream)
    code = _measured([*_OPTIONS, *tests], data)
    os._exit(code)  # an exit in order would wait for joblib's idle workers, which takes minutes


def _forget_the_project() -> None:
    for name in [*sys.modules]:
        if name.partition(".")[0] in ("probgen", "tests") and name != __name__:
            del sys.modules[name]


def _measured(arguments: list[str], data: Path | None) -> int:
    import pytest

    if data is None:
        return int(pytest.main(arguments))
    from coverage import Coverage

    coverage = Coverage(data_file=str(data), source=["probgen"])
    coverage.start()
    try:
        return int(pytest.main(arguments))
    finally:
        coverage.stop()
        coverage.save()
