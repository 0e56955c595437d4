"""Every text that somebody has typed is remarked on where no page shows it as it stands."""

from dataclasses import replace

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.issue import Erratum
from probgen.course.roster import Student
from probgen.course.typed_texts import remarks_on_texts
from probgen.draws.draw import Draw
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
