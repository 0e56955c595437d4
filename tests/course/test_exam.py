"""An exam's fields, and its pile dealt out."""

import tomllib
from collections import Counter

import pytest

from probgen.course.exam import Exam, deal, read_exam
from probgen.course.roster import Student
from probgen.input.fault import Faults
from probgen.input.table import Table

CLASS = [Student(f"Student {n}", f"s{n}") for n in range(10)]


def read(text: str) -> tuple[Exam, list[str]]:
    faults = Faults("assignment.toml")
    found = read_exam(Table(tomllib.loads(text), "exam", faults))
    return found, [fault.field for fault in faults.found]


def test_what_is_left_out_is_what_an_exam_usually_has() -> None:
    assert read("versions = 4") == (Exam(4), [])
    assert Exam(4) == Exam(4, row=0, spare=0, cover=True, notes=())


def test_every_field_is_read() -> None:
    text = 'versions = 3\nrow = 12\nspare = 6\ncover = false\nnotes = ["90 minutes."]'
    assert read(text) == (Exam(3, 12, 6, False, ("90 minutes.",)), [])
    assert read(text)[0].letters == "ABC"


@pytest.mark.parametrize(
    ("text", "field"),
    [
        ("", "exam.versions"),
        ("versions = 1", "exam.versions"),
        ("versions = 27", "exam.versions"),
        ("versions = 2\nrow = 0", "exam.row"),
        ("versions = 2\nspare = -1", "exam.spare"),
        ('versions = 2\ncover = "no"', "exam.cover"),
        ("versions = 2\ncolour = 1", "exam.colour"),
    ],
)
def test_faults_name_their_field(text: str, field: str) -> None:
    assert read(text)[1] == [field]


def test_everybody_gets_a_paper_and_the_spare_ones_follow() -> None:
    pile = list(deal(Exam(3, row=5, spare=4), CLASS))
    assert [student for _, student in pile] == [*CLASS, None, None, None, None]
    assert "".join(letter for letter, student in pile if student is None) == "ABCA"
    assert Counter(letter for letter, student in pile if student).most_common()[-1][1] >= 3
