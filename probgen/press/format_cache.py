"""A preamble read once and dumped as a TeX format, so that runs start with it at no cost."""

from __future__ import annotations

import gzip
from importlib.resources import files
from pathlib import Path
from typing import Final

from probgen.input.fault import Fault, InputError
from probgen.input.outside import OutsideError
from probgen.press.cached_file import find, keep, mark_of
from probgen.press.engine import (
    ENGINE,
    engine,
    engine_version,
    install_hint,
    missing_file,
    run_tex,
)
from probgen.press.temp_folder import workroom

OWN: Final = ("press.tex", "shortcuts.tex")
"""What the press puts behind every preamble: what it cannot do without, and what saves time."""
_KIND: Final = "formats"
_SECONDS: Final = 120.0
_GZIP: Final = b"\x1f\x8b"  # how such a file begins (RFC 1952)


def format_for(preamble: str) -> Path:
    """The path of the dumped format of a preamble with the press's own commands.

    Made when it is not yet in the user's cache folder.  Raises OutsideError when TeX is missing or
    lacks a package, InputError with TeX's complaint when the preamble cannot be read.
    """
    text = source(preamble) + "\\dump\n"
    mark = mark_of(engine_version(engine()), text)
    return find(_KIND, mark) or keep(_KIND, mark, _dumped(text), ".fmt")


def source(preamble: str) -> str:
    """A preamble and the press's own commands, as TeX reads them before the first document."""
    own = (files("probgen.press") / name for name in OWN)
    return "\n".join([preamble, *(file.read_text(encoding="utf-8") for file in own), ""])


def _dumped(text: str) -> bytes:
    with workroom() as folder:
        (folder / "preamble.tex").write_text(text, encoding="utf-8")
        run = run_tex(["-ini", "-jobname=preamble", f"&{ENGINE}", "preamble.tex"], folder, _SECONDS)
        if not run.good:
            absent = missing_file(run.complaint)
            if absent:
                raise OutsideError(f"TeX lacks the file {absent}", install_hint())
            mend = "correct the preamble layout of your folder of layouts"
            raise InputError([Fault("preamble", "", run.complaint, "LaTeX that TeX reads", mend)])
        return _unpacked((folder / "preamble.fmt").read_bytes())


def _unpacked(dumped: bytes) -> bytes:
    """A format as TeX reads it soonest: unpacking it takes longer than all else before a page."""
    return gzip.decompress(dumped) if dumped.startswith(_GZIP) else dumped
