"""TeX as an outside tool: missing, incomplete, or unhappy."""

import subprocess
import sys
import time
from pathlib import Path

import pytest

from probgen.input.cache_folder import cache_folder
from probgen.input.fault import InputError
from probgen.input.outside import OutsideError
from probgen.press.batch import Document, print_batch
from probgen.press.engine import DEBIAN_PACKAGES, Run, _bad_run, _judged, _waited, run_tex
from probgen.press.format_cache import format_for
from probgen.sheets.latex.layout import Layouts

SMALL = "\\documentclass{article}\n"

COMPLAINTS = {
    "in a file": (
        "./7.tex:3: Undefined control sequence.\nl.3 a \\oops\n           b\n",
        Run(False, "Undefined control sequence. (at: a \\oops)", "7"),
    ),
    "without a place": ("This is pdfTeX\n! Emergency stop.\n", Run(False, "Emergency stop.")),
    "none": ("", Run(False, "TeX failed without a word")),
}


@pytest.mark.parametrize(("output", "run"), COMPLAINTS.values(), ids=COMPLAINTS)
def test_complaints(output: str, run: Run) -> None:
    assert _bad_run(output) == run


def test_missing_tex_names_the_packages(
    layouts: Layouts, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(OutsideError) as caught:
        print_batch([Document("a", "a", "text", layouts.preamble())])
    message = str(caught.value)
    assert "TeX is not installed" in message
    assert all(package in message for package in DEBIAN_PACKAGES)


def test_a_missing_package_is_named() -> None:
    with pytest.raises(OutsideError, match=r"nosuchpackage\.sty"):
        format_for(SMALL + r"\usepackage{nosuchpackage}")


def test_a_wrong_preamble_is_the_department_s_fault() -> None:
    with pytest.raises(InputError, match="Undefined control sequence"):
        format_for(SMALL + r"\oops")


def test_a_format_is_dumped_once_and_kept() -> None:
    stored = format_for(SMALL)
    before = stored.stat()
    assert format_for(SMALL) == stored
    assert stored.stat().st_mtime_ns == before.st_mtime_ns
    assert format_for(SMALL + "%") != stored


def test_a_format_is_stored_unpacked() -> None:
    assert format_for(SMALL).read_bytes()[:2] != b"\x1f\x8b"


def test_a_read_only_home_is_no_hindrance(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("no folder")
    monkeypatch.setenv("XDG_CACHE_HOME", str(blocked))
    folder = cache_folder("formats")
    assert folder.is_dir()
    assert tmp_path not in folder.parents


UNWRITTEN = (
    "\n!pdfTeX error: pdflatex: fflush() failed (No space left on device)\n",
    "\n!pdfTeX error: /usr/bin/pdflatex: fwrite() failed\n",
    "! I can't write on file `run.log'.\n",
    "! Could not write 4096 8-byte item(s) to preamble.fmt.\n",
)


@pytest.mark.parametrize("output", UNWRITTEN)
def test_what_cannot_be_written_is_no_fault_of_the_document(output: str) -> None:
    with pytest.raises(OutsideError, match=r"could not write its files[^\n]+\n.*make room"):
        _bad_run(f"This is pdfTeX\n{output}! Emergency stop.")


def test_a_document_that_writes_elsewhere_is_at_fault() -> None:
    run = _bad_run("./3.tex:1: I can't write on file `/etc/made.tex'.\nl.1 \\openout\n")
    assert (run.good, run.file) == (False, "3")


@pytest.mark.parametrize(("said", "file"), [("(./3.tex [1]) (./12.tex [2]", "12"), ("TeX", "")])
def test_a_run_over_its_time_is_told_of_the_document_it_was_at(said: str, file: str) -> None:
    run = _judged(None, said, 5.0)
    assert (run.good, run.file, run.endless) == (False, file, True)


def test_a_killed_engine_is_no_fault_of_the_document(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    fake = tmp_path / "pdflatex"
    fake.write_text("#!/bin/sh\nkill -9 $$\n")
    fake.chmod(0o755)
    monkeypatch.setenv("PATH", f"{tmp_path}:/usr/bin:/bin")
    with pytest.raises(OutsideError, match="stopped by SIGKILL"):
        run_tex(["x.tex"], tmp_path, 5.0)


@pytest.mark.parametrize("content", [b"", b"junk", None], ids=["empty", "junk", "cut"])
def test_a_format_that_is_not_whole_costs_no_build(content: bytes | None) -> None:
    stored = format_for(SMALL)
    whole = stored.read_bytes()
    stored.write_bytes(whole[:100_000] if content is None else content)
    (again,) = print_batch([Document("x", "x", "text", SMALL)]).printed
    assert again.pages == 1
    assert format_for(SMALL).stat().st_size == len(whole)


def test_a_format_lies_in_a_folder_closed_to_others() -> None:
    assert format_for(SMALL).parent.stat().st_mode & 0o077 == 0


def test_the_end_of_a_run_is_seen_and_one_over_its_time_ended() -> None:
    done = [subprocess.Popen([sys.executable, "-c", f"raise SystemExit({i})"]) for i in (0, 1)]
    assert [_waited(each, 30.0) for each in done] == [0, 1]
    since = time.monotonic()
    endless = subprocess.Popen([sys.executable, "-c", "import time; time.sleep(60)"])
    assert _waited(endless, 0.2) is None
    assert endless.poll() is not None
    assert time.monotonic() - since < 30.0
