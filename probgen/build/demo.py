"""The demonstration class: an invented roster, an assignment file full of remarks, their build."""

from __future__ import annotations

from collections.abc import Iterator
from importlib.resources import files
from itertools import cycle, islice
from pathlib import Path
from typing import Final

from probgen.course.assignment import ASSIGNMENT
from probgen.input.csv import csv_lines

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
    """
    folder.mkdir(parents=True, exist_ok=True)
    assignment = folder / (_FORMER if (folder / _FORMER).exists() else ASSIGNMENT)
    set_text = (_FILES / "demo-assignment.toml").read_text(encoding="utf-8")
    for path, text in ((assignment, set_text), (folder / ROSTER, invent_roster(students))):
        try:
            with path.open("x", encoding="utf-8") as file:
                file.write(text)
        except FileExistsError:
            continue
    return assignment


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
