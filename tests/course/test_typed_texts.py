"""Every text that somebody has typed is remarked on where no page shows it as it stands."""

from dataclasses import replace

import pytest

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.issue import Erratum
from probgen.course.roster import Student
from probgen.course.typed_texts import judge_typed, remarks_on_texts
from probgen.draws.draw import Draw
from probgen.input.fault import Faults
from probgen.sheets.house import House
from probgen.sheets.style import HouseStyle
from tests.records import Column, record_of

LOST = "\U00013000"
TEMPLATE = """
title = "A \U00013000"
statement = "plain"
[given]
L = { name = "B \u202e", choices = [1] }
[[find]]
quantity = "R"
name = "C \U00013000"
"""
COLUMN = Column("shelf", TEMPLATE, [Draw("shelf", 1, {}), Draw("shelf", 1, {})])


def told(exam: bool) -> set[str]:
    """The texts that are remarked on."""
    notes = Exam(2, notes=("plain", f"note {LOST}")) if exam else None
    chosen = ProblemSet(
        f"course {LOST}",
        f"title {LOST}",
        "class.csv",
        (Assigned("shelf", 8),),
        due=f"due {LOST}",
        exam=notes,
    )
    student = Student(f"name {LOST}", f"id {LOST}", f"section {LOST}", f"seat {LOST}")
    plain = Student("Bo", "2", needs=f"needs {LOST}")
    house = House(HouseStyle(header=f"header {LOST}"))
    record = record_of(chosen, (student, plain), ("A", "B"), [COLUMN], house)
    issue = replace(record.issue, erratum=Erratum("2027-03-12", f"erratum {LOST}"))
    remarks = remarks_on_texts(replace(record, issues=(issue,)))
    return {remark.partition(":")[0].removesuffix(f" {LOST}") for remark in remarks}


TYPED = {"course", "title", "due", "header", "erratum", "name", "id", "section", "seat", "needs"}
IN_TEMPLATE = {"shelf, title", "shelf, given.L.name", "shelf, find[0].name"}


def test_every_text_is_remarked_on() -> None:
    assert told(exam=False) == TYPED | IN_TEMPLATE
    assert told(exam=True) == TYPED | IN_TEMPLATE | {"note"}


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("\x1b[2J", r"\x1b"),
        ("\udcff", r"\udcff"),
        ("x" * 1001, "1001"),
        (" ", '" "'),
        ("\u200b", "200b"),
    ],
)
def test_what_is_typed_at_a_command_is_judged_as_what_stands_in_files(
    text: str, found: str
) -> None:
    faults = Faults("a.toml")
    judge_typed("Since 12 March.", "note", faults)
    assert faults.found == []
    judge_typed(text, "note", faults)
    (fault,) = faults.found
    assert (fault.file, fault.field, fault.asked) == ("", "note", True)
    assert found in fault.found
    assert fault.mend
