"""What of all that was ever handed out the class has now."""

from dataclasses import replace

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.edition import Printing
from probgen.course.exam import Exam
from probgen.course.roster import Student
from probgen.draws.draw import Draw
from tests.records import Column, record_of

SET = ProblemSet("M", "W", "class.csv", (Assigned("shelf", 8),))
CLASS = (Student("Ada", "1"), Student("Bo", "2"), Student("Cid", "3"))
COLUMN = Column("shelf", "", [Draw("shelf", revision, {}) for revision in (1, 2, 3)])
RECORD = record_of(SET, CLASS, ("A", "B", "C"), [COLUMN])
EXAM = record_of(replace(SET, exam=Exam(2, row=3)), CLASS, ("A", "B"), [COLUMN])


def test_a_version_for_each_student_in_their_order() -> None:
    turned = replace(RECORD, students=CLASS[::-1])
    assert [version.owner for version in RECORD.versions] == ["Ada (1)", "Bo (2)", "Cid (3)"]
    assert [version.code for version in turned.versions] == ["C", "B", "A"]


def test_the_last_edition_counts_and_who_has_left_has_none() -> None:
    ada, bo, _ = RECORD.editions
    later = (replace(ada, code="A2", follows="A"), replace(bo, code="D", owner="22", follows="B"))
    record = replace(
        RECORD,
        printings=(*RECORD.printings, Printing(0, later)),
        students=(CLASS[0], Student("Bo", "22")),
    )
    assert [version.code for version in record.versions] == ["A2", "D"]
    assert ("2", False) not in record.held
    assert record.held["3", False].code == "C"


def test_an_exams_few_each_also_large_where_somebody_needs_it() -> None:
    assert [version.owner for version in EXAM.versions] == ["version A", "version B"]
    assert EXAM.letter_of == {"1": "A", "2": "B", "3": "A"}
    large = (CLASS[0], replace(CLASS[1], large=True), CLASS[2])
    record = record_of(EXAM.set, large, ("A", "B"), [COLUMN])
    assert [(v.letter, v.large) for v in record.versions] == [
        ("A", False), ("B", False), ("B", True),
    ]  # fmt: skip
