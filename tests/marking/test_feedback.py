"""What a student gets back: each answer with its verdict, its points, and what explains it."""

from __future__ import annotations

from decimal import Decimal

from probgen.course.assignment import Assigned, ProblemSet
from probgen.marking.feedback import feedback_of, name_of
from probgen.marking.gradebook import totals
from probgen.marking.marks import Key
from probgen.sheets.document import Feedback
from probgen.wording.sentence import plain_text
from tests.marking.test_marks import marked, table

SET = ProblemSet("Mechanics", "Week 1", "class.csv", (Assigned("own", 10), Assigned("own", 10)))
PAPERS = marked(("2.00", "30"), ("1,234", ""))


def feedback(place: int, changed: dict[Key, Decimal] | None = None) -> Feedback:
    rows = table(PAPERS, changed)
    sums = list(totals((each.paper for each in PAPERS), rows))
    return feedback_of(PAPERS[place], sums[place], {row.key: row for row in rows}, SET)


def test_each_answer_has_its_verdict_points_and_slip() -> None:
    page = feedback(0)
    assert (page.header.student_id, page.header.code, page.header.title) == (
        "1", "code-1", "Week 1",
    )  # fmt: skip
    tension, lean = page.problems[1].answers
    assert (tension.typed, tension.verdict, tension.points) == ("2.00", "a known slip", "2")
    assert "masses used as weights" in plain_text(tension.remarks[0])
    assert (plain_text(tension.right), tension.most) == ("19.6 N", 4)
    assert (lean.verdict, lean.points) == ("right", "6")
    assert (page.problems[0].points, page.problems[0].most) == ("8", 10)
    assert (page.points, page.most) == ("16", 20)
    assert [problem.number for problem in page.problems] == [1, 2]


def test_what_is_open_has_no_points_until_a_person_gives_some() -> None:
    tension, lean = feedback(1).problems[0].answers
    assert (tension.points, tension.verdict) == ("", "to be read by a person")
    assert (lean.typed, lean.verdict, lean.points) == ("–", "empty", "0")
    assert feedback(1).points == feedback(1).problems[0].points == ""
    given = feedback(1, {("2", "1", "T"): Decimal(3)})
    assert [each.points for each in given.problems] == ["3", ""]
    assert given.points == "", "the second problem is open yet"
    decided = given.problems[0].answers[0]
    assert (decided.points, decided.verdict) == ("3", "read by a person")
    (said,) = (plain_text(each) for each in decided.remarks)
    assert said == "A person has looked at this, and given the points."
    both = feedback(1, {("2", "1", "T"): Decimal(3), ("2", "2", "T"): Decimal(2)})
    assert both.points == "5"


def test_files_are_named_after_their_students() -> None:
    assert name_of(PAPERS[0].paper) == "student-1-1-code-1"
