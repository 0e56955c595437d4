"""An example to begin from: an assignment file full of remarks, and an invented class."""

from __future__ import annotations

import json
from collections.abc import Iterator
from importlib.resources import files
from itertools import cycle, islice
from pathlib import Path
from string import Template
from typing import Final

from probgen.input.csv import csv_lines
from probgen.input.file import read_bytes

ROSTER: Final = "roster.csv"
"""The name of an example's class list."""
HOUSE: Final = "house.toml"
"""The name of the house style of a course."""
_FILES: Final = files(__package__)
_LOCALES: Final = ["en_US", "en_GB", "es_ES", "de_DE", "fr_FR", "pl_PL"]
_SEED: Final = 1730  # another than that of the names written down
_OF_COURSE: Final = "# This list is for every assignment of the course.\n"
_STYLE: Final = """\
# The look of all papers of the course.  Every line may stay out; take the # away to use one.
# header   = "Westmere College, Department of Physics"
# logo     = "arms.pdf"          # or .png, .jpg; the path starts from this file
# logo_height = 12               # mm
# text     = "roman"             # or "sans"
# headings = "roman"             # or "sans"
# colour   = "#1F3A5F"           # of headings and rules
# figures  = "black"             # or "colour"
# paper    = "a4"                # or "letter", whatever an assignment file says
"""
_REMARK: Final = "# An invented class. Yours may be any CSV file with headings such as these.\n"
_STUDENTS: Final = 12
_TEXT: Final = "example-assignment.txt"


def demo_assignment() -> str:
    """The text of an assignment file with its class list beside it."""
    return _assignment(
        command="assignment.toml --out my-class",
        course=json.dumps("Introductory Mechanics"),
        title="Homework 5",
        roster=ROSTER,
        style="# ",
        house=HOUSE,
        avoid="# ",
        others="../week-*/",
    )


def course_assignment(course: str) -> str:
    """The text of a course's first one, in a folder of its own."""
    return _assignment(
        command="assignment.toml",
        course=json.dumps(course, ensure_ascii=False),
        title="Homework 1",
        roster=f"../{ROSTER}",
        style="",
        house=f"../{HOUSE}",
        avoid="",
        others="../*/",
    )


def course_roster() -> str:
    """The class list that a course begins with."""
    return _OF_COURSE + invent_roster(_STUDENTS)


def remarks_on_example(roster: Path) -> tuple[str, ...]:
    """That a class list is still the one that a course begins with."""
    if read_bytes(roster, "class list") != course_roster().encode():
        return ()
    return (f"{roster} is the invented class of a new course; put yours there",)


def course_style() -> str:
    """The house style that a course begins with, which says nothing yet."""
    return _STYLE


def _assignment(**own: str) -> str:
    return Template((_FILES / _TEXT).read_text(encoding="utf-8")).substitute(own)


def invent_roster(students: int) -> str:
    """A class list of invented people, as CSV text: the same every time, as far as names go.

    The first are written down; Faker, whose names change with its release, makes up the rest.
    """
    rows = [["Name", "Student ID", "Section"]]
    for place, name in enumerate(islice(_names(), students), start=1):
        rows.append([name, f"S{1000 + place}", "Mon" if place % 2 else "Wed"])
    return _REMARK + "".join(csv_lines(rows))


def _names() -> Iterator[str]:
    """Invented names without end."""
    yield from (_FILES / "example-names.txt").read_text(encoding="utf-8").splitlines()
    from faker import Faker

    fake = Faker(_LOCALES)
    fake.seed_instance(_SEED)
    for locale in cycle(_LOCALES):
        yield f"{fake[locale].first_name()} {fake[locale].last_name()}"
