"""The print run of an assignment file."""

from __future__ import annotations

import tomllib

import pytest

from probgen.course.print_run import PrintRun, read_print_run
from probgen.input.fault import Faults
from probgen.input.table import Table


def read(text: str) -> tuple[PrintRun, Faults]:
    faults = Faults("assignment.toml")
    return read_print_run(Table(tomllib.loads(text), "print", faults)), faults


READ = [
    ("", PrintRun("roster", True, False, False)),
    ('order = "seat"', PrintRun("seat", True, False, False)),
    ("duplex = false", PrintRun("roster", False, False, False)),
    ("pile_cover = true", PrintRun("roster", True, True, False)),
    ("answers = true", PrintRun("roster", True, False, True)),
    ('tables = "xlsx"', PrintRun("roster", True, False, False, "xlsx")),
]


@pytest.mark.parametrize(("text", "run"), READ)
def test_what_is_not_said_is_as_usual(text: str, run: PrintRun) -> None:
    found, faults = read(text)
    assert (found, faults.found) == (run, [])


@pytest.mark.parametrize(
    ("text", "field"),
    [('order = "name"', "order"), ("duplex = 1", "duplex"), ('tables = "ods"', "tables"),
     ('pile_cover = "yes"', "pile_cover"),
     ("colour = true", "colour")],
)  # fmt: skip
def test_what_cannot_be_meant_is_refused(text: str, field: str) -> None:
    assert [fault.field for fault in read(text)[1].found] == [f"print.{field}"]
