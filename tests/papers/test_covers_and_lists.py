"""What an assistant holds beside the papers: what it counts, and how a pile is dealt."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.print_run import PrintRun
from probgen.course.record import Record
from probgen.course.roster import Student
from probgen.papers.answers import answer_rows
from probgen.papers.covers_and_lists import (
    answer_table,
    keys_cover,
    pile_heads,
    pile_rows,
    sheets_cover,
    version_list,
)
from probgen.wording.english import ENGLISH
from probgen.wording.sentence import plain_text
from tests.records import Column, record_of
from tests.situations import STAYED_SHELF, worked

PROBLEM, OWN = worked(STAYED_SHELF)
STUDENTS = (Student("Zoë", "7", seat="A1"), Student("Bea", "8", seat="A2"), Student("Cid", "9"))
ROOM = Exam(2, row=5, spare=3)
SET = ProblemSet(
    "Mechanics", "Week 3", "class.csv", (Assigned("own", 8), Assigned("own", 5)),
    due="5 May 2031", run=PrintRun(duplex=False),
)  # fmt: skip
COLUMNS = [Column("own", STAYED_SHELF, [OWN.draw] * 3)] * 2
CODES = ("AAAA", "BBBB", "CCCC")


def class_of(problem_set: ProblemSet = SET, students: Sequence[Student] = STUDENTS) -> Record:
    return record_of(problem_set, students, CODES, COLUMNS)


def exam_of(exam: Exam = ROOM, students: Sequence[Student] = STUDENTS, **changes: Any) -> Record:
    return class_of(replace(SET, exam=exam, **changes), students)


CLASS, EXAM = class_of(), exam_of()
SEATED = tuple(replace(each, seat=f"A{n}") for n, each in enumerate(STUDENTS, start=1))


def test_a_cover_counts_papers_problems_and_points() -> None:
    cover = sheets_cover(CLASS)
    assert (cover.header.course, cover.header.title) == ("Mechanics", "Week 3")
    assert cover.facts == (
        ("Papers", "3"), ("Problems", "2, for 13 points"), ("Due", "5 May 2031"),
    )  # fmt: skip
    assert cover.notes == ("In the order of the class list.",)


def test_an_exam_has_a_date_and_versions_and_spare_papers() -> None:
    assert sheets_cover(EXAM).facts == (
        ("Papers", "6"), ("Problems", "2, for 13 points"), ("Versions", "A, B"),
        ("Date", "5 May 2031"),
    )  # fmt: skip


def test_a_cover_of_keys_counts_each_key_once() -> None:
    assert keys_cover(CLASS).facts[0] == ("Keys", "3")
    assert keys_cover(EXAM).facts[0] == ("Keys", "2")
    assert keys_cover(EXAM).notes == ("Holds the solutions: not for students.",)


def test_without_a_date_none_is_told() -> None:
    undated = class_of(replace(SET, due=""))
    assert [label for label, _ in sheets_cover(undated).facts] == ["Papers", "Problems"]


def test_how_the_pile_lies() -> None:
    run = PrintRun("seat", duplex=True)
    notes = sheets_cover(class_of(replace(SET, run=run))).notes
    assert notes == (
        "In the order of the seats.",
        "Print on both sides: each paper begins on a right-hand page.",
    )


def test_who_gets_large_print_is_told() -> None:
    students = (replace(STUDENTS[0], large=True), *STUDENTS[1:])
    assert sheets_cover(class_of(students=students)).notes[-1] == "In large print: Zoë."


DEALT = [
    (EXAM, "Deal them out in this order, 5 to a row"),
    (exam_of(Exam(2)), "Deal them out in this order: nobody"),
    (exam_of(students=SEATED), "Give each seat the version that the list of versions names"),
    (exam_of(students=SEATED, run=PrintRun("seat", duplex=False)),
     "Deal them out in this order, row by row"),
]  # fmt: skip


@pytest.mark.parametrize(("record", "said"), DEALT, ids=[said for _, said in DEALT])
def test_a_cover_claims_of_dealing_what_is_so(record: Record, said: str) -> None:
    assert sheets_cover(record).notes[1].startswith(said)


def test_spare_papers_are_last() -> None:
    assert "The last 3 are spare." in sheets_cover(EXAM).notes
    assert not any("spare" in note for note in sheets_cover(DEALT[1][0]).notes)


def test_the_pile_from_top_to_bottom() -> None:
    rows = pile_rows(EXAM, ROOM)
    assert [row[0] for row in rows] == ["1", "2", "3", "4", "5", "6"]
    assert [row[1:4] for row in rows[:3]] == [
        ("A1", "Zoë", "7"),
        ("A2", "Bea", "8"),
        ("", "Cid", "9"),
    ]
    assert {row[1:4] for row in rows[3:]} == {("", ENGLISH.page.spare, "")}
    assert rows[0][4] != rows[1][4]
    assert {row[4] for row in rows} == {"A", "B"}
    assert {row[5] for row in rows} == {""}
    assert {(row[4], row[6]) for row in rows} == {("A", "AAAA"), ("B", "BBBB")}
    assert len(pile_heads()) == len(rows[0])
    assert [row.labels for row in version_list(EXAM, ROOM).rows] == rows


def test_large_print_is_marked_in_the_list() -> None:
    large = (replace(STUDENTS[0], large=True), *STUDENTS[1:])
    rows = pile_rows(exam_of(Exam(2), large), Exam(2))
    assert [bool(row[5]) for row in rows] == [True, False, False]


def test_all_answers_a_version_a_row() -> None:
    rows = [row for version in CLASS.versions for row in answer_rows(version, [OWN, OWN])]
    table = answer_table(CLASS, [PROBLEM, PROBLEM], rows)
    assert table.labels == ("Name", "Id", "Code")
    assert [row.labels for row in table.rows] == [
        ("Zoë", "7", "AAAA"), ("Bea", "8", "BBBB"), ("Cid", "9", "CCCC"),
    ]  # fmt: skip
    printed = [plain_text(cell) for cell in table.rows[0].cells]
    assert printed == ["191 N", "146 N", "1.9° below, right"] * 2


def test_in_an_exam_by_its_letters() -> None:
    rows = [row for version in EXAM.versions for row in answer_rows(version, [OWN, OWN])]
    table = answer_table(EXAM, [PROBLEM, PROBLEM], rows)
    assert [row.labels for row in table.rows] == [("A", "AAAA"), ("B", "BBBB")]
