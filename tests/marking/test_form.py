"""The answer form: whose a row is, and a column for each thing that is typed."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.course.exam import Exam
from probgen.course.roster import Student
from probgen.marking.form import Place, columns, form_rows, papers
from probgen.problem.problem import Problem, prepare
from probgen.working.convention import Convention
from tests.marking.sections import lamp_problem, record_of_sections
from tests.situations import HOLDS, SLIDES, TIPS, cabinet, worked
from tests.situations import finding as limit
from tests.terms import begun, class_of, lamp, problem_of

RATIO = '[[find]]\nratio = "P/N"\nname = "share"\nsymbol = "n"\n'
PUBLISHED = Path(__file__).parents[1] / "published"


@cache
def problem(name: str, convention: Convention = Convention()) -> Problem:  # noqa: B008
    path = PUBLISHED / f"{name}.toml"
    return prepare(read_template(path.read_text(encoding="utf-8"), path.name), convention)


def headings(own: Problem) -> list[str]:
    return [column.heading for column in columns(begun(class_of(1)), [own])]


def test_a_column_for_each_number_unit_and_side() -> None:
    for own in (problem("up1-12.2-p43"), problem_of(lamp(), Convention())):
        asked = headings(own)
        sides = [each for each in asked if each.endswith(" side")]
        directions = [each for each in asked if each.endswith(".direction")]
        assert [f"{each} side" for each in directions] == sides
        assert f"{asked[0]} unit" in asked


def test_an_angle_from_the_axis_has_no_side() -> None:
    own = problem("up1-12.2-p43", Convention(direction="axis"))
    assert any(each.endswith(".direction") for each in headings(own))
    assert not any(each.endswith(" side") for each in headings(own))


NUMBERS = {"m": "40", "b": "0.50", "h": "1.20", "mu": "0.30"}
LIMITED = [
    (cabinet(**NUMBERS) + SLIDES + TIPS + limit("P", "largest"), ["1 P", "1 P unit", "1 P.limit"]),
    (cabinet(**NUMBERS) + SLIDES + limit("P", "largest"), ["1 P", "1 P unit"]),  # of one, none
    (cabinet("60", **NUMBERS) + SLIDES + TIPS + HOLDS, ["1 slides", "1 tips"]),
]


@pytest.mark.parametrize(("text", "heads"), LIMITED)
def test_limits_are_chosen_where_there_is_a_choice(text: str, heads: list[str]) -> None:
    asked = columns(begun(class_of(1)), [worked(text)[0]])
    assert [column.heading for column in asked] == heads
    places = {column.place for column in asked} - {Place.NUMBER, Place.UNIT}
    assert places <= {Place.CHOICE}


def test_a_plain_number_has_no_unit() -> None:
    plain = cabinet(**NUMBERS) + SLIDES + limit("P", "largest") + RATIO
    assert headings(worked(plain)[0]) == ["1 P", "1 P unit", "1 n"]


def test_a_row_a_paper() -> None:
    record = begun(class_of(3))
    asked = columns(record, [problem_of(lamp(), record.set.convention)])
    rows = list(form_rows(record, asked))
    assert [row[:3] for row in rows] == [(e.code, e.owner, e.name) for e in record.editions]
    assert all(set(row[3:]) == {""} and len(row) == 3 + len(asked) for row in rows)


def test_a_students_section_stands_on_the_row_also_in_an_exam() -> None:
    people = [Student("Ada", "1", "Tue"), Student("Bea", "2", "Wed")]
    for exam in (None, Exam(versions=2)):
        assert [row.section for row in papers(begun(people, exam=exam))] == ["Tue", "Wed"]


@pytest.mark.parametrize("versions", [2, 3])
def test_in_an_exam_a_row_a_student_with_the_code_of_the_version(versions: int) -> None:
    record = begun(class_of(5), exam=Exam(versions=versions))
    rows = papers(record)
    assert [row.id for row in rows] == [student.id for student in record.students]
    codes = {edition.owner: edition.code for edition in record.editions}
    assert [row.code for row in rows] == [codes[letter] for letter in record.letters]


def test_a_problem_has_the_number_that_is_printed_on_each_sections_papers() -> None:
    asked = columns(record_of_sections(), [lamp_problem(), lamp_problem()])
    assert [column.heading for column in asked if not column.heading.endswith("unit")] == [
        "B 1 T", "A 1 T", "B 2 T",
    ]  # fmt: skip
    assert [column.problem for column in asked] == [1, 1, 2, 2, 2, 2]
