"""TeX run on a folder of files: safely, without a clock, within a time limit."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import tempfile
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Final

from probgen.input.outside import OutsideError

ENGINE: Final = "pdflatex"
DEBIAN_PACKAGES: Final = (
    "texlive-latex-base", "texlive-latex-recommended", "texlive-pictures", "lmodern",
)  # fmt: skip
"""What a print run needs, by the package names of Debian and Ubuntu."""

# Paranoid file access, a fixed date for the few places TeX writes one, no fonts made on the fly,
# and error lines that are not folded at 79 columns.
_SURROUNDINGS: Final = {
    "openin_any": "p",
    "openout_any": "p",
    "shell_escape": "f",
    "SOURCE_DATE_EPOCH": "946684800",
    "FORCE_SOURCE_DATE": "1",
    "MKTEXPK": "0",
    "max_print_line": "2000",
    "error_line": "254",
    "half_error_line": "238",
}
_OPTIONS: Final = (
    "-no-shell-escape", "-interaction=nonstopmode", "-halt-on-error", "-file-line-error",
)  # fmt: skip
_ERROR: Final = re.compile(r"^(?:!|\./(\S+?)(?:\.tex)?:\d+:) ?(.+)$", re.MULTILINE)
_UNWRITTEN: Final = re.compile(
    r"No space left on device|Disk quota exceeded|File too large|Could not write"
    r"|I can't write on file `(?:run|preamble)\.\w+'"
)
"""TeX cannot write; a document that asks for a file elsewhere is at fault for that itself."""
_MISSING_PACKAGE: Final = re.compile(r"File `([^']+)' not found")


@dataclass(frozen=True, slots=True)
class Run:
    """How a run went: whether it came to its end.

    complaint: TeX's own words about the first error; file: where that was, without ".tex", "" if
    TeX does not say.
    """

    good: bool
    complaint: str = ""
    file: str = ""


def run_tex(
    arguments: Sequence[str],
    folder: Path,
    seconds: float,
    program: str = ENGINE,
    surroundings: Mapping[str, str] = MappingProxyType({}),
) -> Run:
    """Runs TeX in a folder; a run over its time is a bad run.

    surroundings: further environment variables.  Raises OutsideError when TeX is missing, cannot
    write, or was stopped from outside.
    """
    command = [engine(program), *_OPTIONS, *arguments]
    try:
        done = subprocess.run(
            command,
            cwd=folder,
            env={**os.environ, **surroundings, **_SURROUNDINGS},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            timeout=seconds,
            check=False,
        )
    except subprocess.TimeoutExpired:
        return Run(False, f"TeX was not done after {seconds:.0f} s")
    if done.returncode < 0:
        raise OutsideError(
            f"TeX was stopped by signal {-done.returncode}",
            "see whether the machine ran out of memory; fewer workers need less",
        )
    return Run(True) if done.returncode == 0 else _bad_run(done.stdout.decode("utf-8", "replace"))


def _bad_run(text: str) -> Run:
    """A run with TeX's first error and the line it stopped at."""
    if unwritten := _UNWRITTEN.search(text):
        mend = f"make room on the disk that holds {tempfile.gettempdir()}, or set TMPDIR to another"
        raise OutsideError(f"TeX could not write its files: {unwritten[0]}", mend)
    error = _ERROR.search(text)
    if error is None:
        return Run(False, text.strip()[-300:] or "TeX failed without a word")
    place = re.compile(r"^l\.\d+ (.+)$", re.MULTILINE).search(text, error.end())
    words = error[2].strip() + (f" (at: {place[1].strip()})" if place else "")
    return Run(False, words, error[1] or "")


def missing_file(complaint: str) -> str:
    """The file TeX looked for in vain, "" when the complaint is another."""
    found = _MISSING_PACKAGE.search(complaint)
    return found[1] if found else ""


def install_hint() -> str:
    """What to do where TeX or one of its packages is missing."""
    return "on Debian or Ubuntu: apt-get install " + " ".join(DEBIAN_PACKAGES)


def engine(program: str = ENGINE) -> str:
    """The path of a TeX.  Raises OutsideError, naming the packages, when there is none."""
    found = shutil.which(program)
    if found is None:
        mend = f"{install_hint()}; elsewhere install TeX Live (macOS: MacTeX, Windows: MiKTeX)"
        raise OutsideError(f"{program} was not found: TeX is not installed", mend)
    return found


@cache
def engine_version(path: str) -> str:
    """Tells one installation from another: the engine's banner and its base format's date."""
    shown = subprocess.run([path, "--version"], capture_output=True, text=True, check=False)
    banner = shown.stdout.partition("\n")[0]
    kpsewhich = shutil.which("kpsewhich")
    if kpsewhich is None:
        return banner
    looked_up = [kpsewhich, "-engine=pdftex", f"{ENGINE}.fmt"]
    base = subprocess.run(looked_up, capture_output=True, text=True, check=False).stdout.strip()
    return f"{banner} {Path(base).stat().st_mtime_ns}" if base else banner
