"""An exam's fields, and its pile dealt out."""

import tomllib
from collections import Counter

import pytest

from probgen.course.exam import Exam, deal, letters_for, read_exam
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
        ("versions = 0", "exam.versions"),
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
    exam = Exam(3, row=5, spare=4)
    pile = list(deal(exam, CLASS, letters_for(exam, CLASS, {})))
    assert [student for _, student in pile] == [*CLASS, None, None, None, None]
    assert "".join(letter for letter, student in pile if student is None) == "ABCA"
    assert Counter(letter for letter, student in pile if student).most_common()[-1][1] >= 3


def test_a_make_up_for_one_has_one_version() -> None:
    assert read("versions = 1")[0].letters == "A"
    assert letters_for(Exam(1), CLASS[:1], {}) == ("A",)


def test_who_has_a_version_keeps_it_and_a_newcomer_gets_what_no_neighbour_has() -> None:
    exam = Exam(3, row=5)
    before = dict(zip((s.id for s in CLASS), letters_for(exam, CLASS, {}), strict=True))
    class_now = [*CLASS[:2], Student("Late", "late"), *CLASS[2:]]
    letters = letters_for(exam, class_now, before)
    assert all(letters[class_now.index(s)] == before[s.id] for s in CLASS)
    # row of five: beside it sit those with the second and the third letter, below the eighth's
    assert letters[2] not in {letters[1], letters[3]}


def test_the_class_list_may_say_which_version_somebody_took() -> None:
    exam = Exam(3, row=5)
    took = [Student("Student 0", "s0", version="c"), *CLASS[1:]]
    assert letters_for(exam, took, {"s0": "A"})[0] == "C"
