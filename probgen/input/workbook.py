"""Workbooks (.xlsx, .ods): read within bounds, by python-calamine in a process of its own.

A workbook is a zip file, a thousandth of what it unpacks to, and one cell far down makes its reader
take memory for all cells above it.  So it is unpacked and counted before it is opened, and opened
by a process that may take so much memory and time and not more.
"""

from __future__ import annotations

import json
import subprocess
import sys
import zipfile
from dataclasses import dataclass
from io import BytesIO
from typing import Final

from probgen.input.csv import MOST_ROWS
from probgen.input.fault import Fault, InputError

MOST_UNPACKED: Final = 64 * 2**20
"""Bytes of all members together: a class of 10,000 with 100 columns has half of that."""
_MOST_MEMBERS: Final = 1000
_SECONDS: Final = 30.0
_PIECE: Final = 2**16
_MEND: Final = "save the sheet with the table alone, as .xlsx or as CSV"
_PACKED: Final = b"PK\x03\x04"
_OLD: Final = b"\xd0\xcf\x11\xe0"

Cell = str | float | bool
"""As it is kept, not as it is shown: a number has no zeros before it.  Dates are texts."""


Range = tuple[tuple[int, int], tuple[int, int]]


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet's cells, row by row from the first; hidden: the spreadsheet does not show it.

    merged: cells made one, as row and column from 0 of the first and the last of them.
    """

    name: str
    hidden: bool
    rows: tuple[tuple[Cell, ...], ...]
    merged: tuple[Range, ...] = ()


def is_workbook(content: bytes) -> bool:
    """Whether a file's content is packed as workbooks are, or is one of the old kind."""
    return content.startswith((_PACKED, _OLD))


def read_sheets(content: bytes, where: str) -> tuple[Sheet, ...]:
    """The sheets of a workbook that hold anything; `where` names the file in messages.

    Raises InputError when it is none, or is too large in any way.
    """
    if content.startswith(_OLD):
        mend = "open it in the spreadsheet, and save it as .xlsx without a password, or as CSV"
        raise _refused(where, "a workbook of the old kind, or one with a password", mend)
    _require_small(content, where)
    words = [sys.executable, "-m", "probgen.input.workbook_reader"]
    try:
        done = subprocess.run(words, input=content, capture_output=True, timeout=_SECONDS)
    except subprocess.TimeoutExpired:
        raise _refused(where, f"a workbook that takes more than {_SECONDS:.0f} s to read") from None
    if done.returncode:
        raise _refused(where, "a workbook that takes more memory than a table of a class does")
    answer = json.loads(done.stdout)
    if "failed" in answer:
        raise _refused(where, f"no workbook that can be read: {answer['failed']}")
    return tuple(
        Sheet(
            each["name"],
            each["hidden"],
            tuple(map(tuple, each["rows"])),
            tuple((tuple(first), tuple(last)) for first, last in each["merged"]),
        )
        for each in answer["sheets"]
        if each["rows"]
    )


def _require_small(content: bytes, where: str) -> None:
    """Unpacks what is in it without keeping it: the sizes that it states may be untrue."""
    left = MOST_UNPACKED
    try:
        with zipfile.ZipFile(BytesIO(content)) as packed:
            members = packed.infolist()
            if len(members) > _MOST_MEMBERS:
                raise _refused(where, f"a packed file of {len(members)} members")
            for member in members:
                with packed.open(member) as unpacked:
                    while piece := unpacked.read(_PIECE):
                        left -= len(piece)
                        if left < 0:
                            most = MOST_UNPACKED // 2**20
                            raise _refused(where, f"more than {most} MB when unpacked")
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, OSError, ValueError, EOFError):
        raise _refused(where, "a packed file that is broken or has a password") from None


def _refused(where: str, found: str, mend: str = _MEND) -> InputError:
    expected = f"a workbook (.xlsx or .ods) with a table of at most {MOST_ROWS} rows"
    return InputError([Fault(where, "", found, expected, mend)])
