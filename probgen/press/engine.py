"""TeX run on a folder of files: safely, without a clock, within a time limit."""

from __future__ import annotations

import os
import re
import shutil
import signal
import subprocess
import tempfile
import threading
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from math import ceil
from pathlib import Path
from types import MappingProxyType
from typing import Final

from probgen.input.outside import OutsideError
from probgen.press.enclosure import Enclosure, start, there

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
    "TEXINPUTS": f".{os.pathsep}",  # the usual places follow
    "SOURCE_DATE_EPOCH": "946684800",
    "FORCE_SOURCE_DATE": "1",
    "MKTEXPK": "0",
    "MKTEXTFM": "0",
    "MKTEXMF": "0",
    "max_print_line": "2000",
    "error_line": "254",
    "half_error_line": "238",
}
_KEPT: Final = ("PATH", "SYSTEMROOT")
"""What TeX gets to see of this process's environment."""
_OPTIONS: Final = (
    "-no-shell-escape", "-interaction=nonstopmode", "-halt-on-error", "-file-line-error",
)  # fmt: skip
_SHELL: Final = "/bin/sh"
_LIMITED: Final = """\
ulimit -S -t "$1"; ulimit -f "$2"; ulimit -v "$3" 2>/dev/null; shift 3; exec "$@"
"""
_PATIENCE: Final = 6
"""So many times longer than it may compute a run may last, where others compute as well."""
_BLOCKS: Final = 2**28 // 512
"""No file a run writes is larger: 256 MB, more than ten times what a large chunk's PDF takes."""
_MEMORY: Final = 3 * 2**20
"""In kB, of addresses: LuaTeX with the largest fonts takes a tenth of it."""
_SAID: Final = "said.txt"
_MOST_SAID: Final = 2**20
_SYSTEM: Final = (
    "/lib", "/lib32", "/lib64", "/usr/lib", "/usr/lib32", "/usr/lib64", "/usr/local/lib",
    "/nix/store", "/etc/ld.so.cache", "/dev/urandom", _SHELL,
)  # fmt: skip
"""What any program of a Linux system reads."""
_FROM_OUTSIDE: Final = frozenset({"SIGHUP", "SIGINT", "SIGKILL", "SIGTERM"})
_ERROR: Final = re.compile(
    r"(?:^!|^\./(\S+?)(?:\.tex)?:\d+:|^\S*\.lua:\d+:|\[\\directlua\]:\d+:) ?(?! *==>)(.+)$",
    re.MULTILINE,
)
_UNWRITTEN: Final = re.compile(
    r"No space left on device|Disk quota exceeded|Could not write|error: \S+: fwrite\(\) failed"
    r"|I can't write on file `(?:run|preamble)\.\w+'"
)
"""TeX cannot write; a document that asks for a file elsewhere is at fault for that itself."""
_BEGUN: Final = re.compile(r"\(\./(\d+)\.tex\b")
_MISSING_PACKAGE: Final = re.compile(r"File `([^']+)' not found")


@dataclass(frozen=True, slots=True)
class Run:
    """How a run went: whether it came to its end.

    complaint: TeX's own words about the first error; file: where that was, without ".tex", "" if
    TeX does not say; endless: it would still go on.  said: all that TeX has said.
    """

    good: bool
    complaint: str = ""
    file: str = ""
    endless: bool = False
    said: str = ""


def run_tex(
    arguments: Sequence[str],
    folder: Path,
    seconds: float,
    program: str = ENGINE,
    surroundings: Mapping[str, str] = MappingProxyType({}),
    readable: Iterable[Path] = (),
) -> Run:
    """Runs TeX in a folder, out of which it writes nothing and reads nothing but TeX's own trees.

    A run over its time, or over the limits of memory and of size, is a bad run.
    seconds: of processor time; surroundings: further environment variables; readable: further
    files and folders to read.
    Raises OutsideError when TeX is missing, cannot write, or was stopped from outside.
    """
    path = engine(program)
    command = [path, *_OPTIONS, *arguments]
    if os.path.exists(_SHELL):
        limits = (str(ceil(seconds)), str(_BLOCKS), str(_MEMORY))
        command = [_SHELL, "-c", _LIMITED, _SHELL, *limits, *command]
    own = {"HOME": str(folder), "TMPDIR": str(folder)}
    kept = {name: os.environ[name] for name in _KEPT if name in os.environ}
    enclosure = Enclosure(folder, (*_system(path), *readable)) if tex_trees() else None
    with (folder / _SAID).open("wb") as said:
        running = start(
            enclosure,
            command,
            cwd=folder,
            env={**kept, **own, **surroundings, **_SURROUNDINGS},
            stdin=subprocess.DEVNULL,
            stdout=said,
            stderr=subprocess.STDOUT,
        )
        code = _waited(running, seconds * _PATIENCE)
    with (folder / _SAID).open("rb") as heard:
        text = heard.read(_MOST_SAID).decode("utf-8", "replace")
    return _judged(code, text, seconds)


def _waited(running: subprocess.Popen[bytes], seconds: float) -> int | None:
    """The exit code of a process; None for one that was ended as it was over its time."""
    late = threading.Event()

    def end() -> None:
        late.set()
        running.kill()

    clock = threading.Timer(seconds, end)  # to wait with a limit is to look now and then
    with running:
        clock.start()
        try:
            code = running.wait()
            return None if late.is_set() else code
        finally:
            clock.cancel()
            running.kill()


def _judged(code: int | None, text: str, seconds: float) -> Run:
    """What a run came to.  code: its exit code, None when its time was over."""
    if code == 0:
        return Run(True, said=text)
    if code is not None and code > 0:
        return _bad_run(text)
    name = signal.Signals(-code).name if code else "SIGXCPU"
    if name in _FROM_OUTSIDE:
        raise OutsideError(
            f"TeX was stopped by {name}",
            "see whether the machine ran out of memory; fewer workers need less",
        )
    ends = {
        "SIGXCPU": f"TeX was not done after {seconds:.0f} s",
        "SIGXFSZ": f"TeX wrote more than {_BLOCKS * 512 // 2**20} MB",
    }
    complaint = ends.get(name, f"TeX broke down ({name})")
    return Run(False, complaint, _last_begun(text), endless=name in ends)


def _last_begun(text: str) -> str:
    """The document a run was at, without ".tex": the last whose file was opened, "" for none."""
    begun = _BEGUN.findall(text)
    return begun[-1] if begun else ""


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


@cache
def _system(path: str) -> tuple[Path, ...]:
    """What a TeX reads of the system: itself, libraries, and the trees of TeX's files."""
    return there([path, *_SYSTEM, *tex_trees()])


@cache
def tex_trees() -> tuple[str, ...]:
    """The folders of TeX's own files and fonts, but not those in a user's home; none for MiKTeX."""
    kpsewhich = shutil.which("kpsewhich")
    if kpsewhich is None:
        return ()
    asked = [kpsewhich, "-expand-braces=$TEXMF:$TEXMFCNF"]
    bare = {name: os.environ[name] for name in _KEPT if name in os.environ}
    told = subprocess.run(asked, capture_output=True, text=True, check=False, env=bare).stdout
    trees = (tree.removeprefix("!!") for tree in told.strip().split(os.pathsep))
    return tuple(tree for tree in trees if os.path.isabs(tree))
