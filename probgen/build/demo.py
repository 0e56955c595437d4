"""The demonstration class: an invented roster, an assignment file full of remarks, their build."""

from __future__ import annotations

from collections.abc import Iterator
from importlib.resources import files
from itertools import cycle, islice
from pathlib import Path
from typing import Final

from probgen.build.folder import require_ours
from probgen.course.assignment import ASSIGNMENT
from probgen.course.record import RECORD
from probgen.input.csv import csv_lines
from probgen.input.fault import Fault, InputError
from probgen.input.file import write_beside
from probgen.input.json import read_json
from probgen.input.remedy import OtherFolder

_FILES: Final = files(__package__)
_FORMER: Final = "set.toml"
"""Its name in release 0.1."""
ROSTER: Final = "roster.csv"
SEED: Final = "demonstration"
SECRET: Final = "de30" * 8
"""The demonstration's seed and secret are known to all, and so are its numbers and codes."""
_LOCALES: Final = ["en_US", "en_GB", "es_ES", "de_DE", "fr_FR", "pl_PL"]
_SEED: Final = 1730  # another than that of the names written down


def write_demo(folder: Path, students: int = 12) -> Path:
    """Puts an assignment file and a class list into a folder, and gives the assignment file's path.

    Files of those names that are there already stay as they are: somebody may have edited them.
    Raises InputError for a folder of something else, and for that of a real class.
    """
    assignment = folder / (_FORMER if (folder / _FORMER).exists() else ASSIGNMENT)
    roster = folder / ROSTER
    require_ours(folder, (assignment, roster))
    _require_no_class(folder / RECORD)
    set_text = (_FILES / "demo-assignment.toml").read_text(encoding="utf-8")
    for path, text in ((assignment, set_text), (roster, invent_roster(students))):
        if not path.exists():
            write_beside(path, text.encode())
    return assignment


def _require_no_class(record: Path) -> None:
    """Raises InputError where papers were built that are no demonstration's: they would be lost."""
    if not record.is_file():
        return
    content = read_json(record, "record", "name another folder")
    seed = content.get("seed") if isinstance(content, dict) else None
    if seed != SEED:
        found, expected = "the record of a class", "none, or that of a demonstration"
        raise InputError([Fault(str(record), "", found, expected, remedy=OtherFolder())])


def invent_roster(students: int) -> str:
    """A class list of invented people, as CSV text: the same every time, as far as names go.

    The first are written down; Faker, whose names change with its release, makes up the rest.
    """
    rows = [["Name", "Student ID", "Section"]]
    for place, name in enumerate(islice(_names(), students), start=1):
        rows.append([name, f"S{1000 + place}", "Mon" if place % 2 else "Wed"])
    remark = "# An invented class. Yours may be any CSV file with headings such as these.\n"
    return remark + "".join(csv_lines(rows))


def _names() -> Iterator[str]:
    """Invented names without end."""
    yield from (_FILES / "demo-names.txt").read_text(encoding="utf-8").splitlines()
    from faker import Faker

    fake = Faker(_LOCALES)
    fake.seed_instance(_SEED)
    for locale in cycle(_LOCALES):
        yield f"{fake[locale].first_name()} {fake[locale].last_name()}"
