"""A class by its sections: who is in which, what each gets, and what a file may say of them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from probgen.course.assignment import Assigned, ProblemSet, SectionDue
from probgen.course.edition import Printing
from probgen.course.exam import Exam
from probgen.course.record import Record
from probgen.course.roster import Student
from probgen.course.section import folder_names, judge_sections, part_of, sections_of
from probgen.draws.draw import Draw
from probgen.input.fault import Faults
from tests.records import Column, record_of
from tests.terms import new_record

PEOPLE = (
    Student("Ada", "1", "Tue"), Student("Bea", "2", "Wed"), Student("Cid", "3", "Tue"),
    Student("Dan", "4"),
)  # fmt: skip
CODES = ("AAAA", "BBBB", "CCCC", "DDDD")
PROBLEMS = (Assigned("a", 5), Assigned("b", 6, sections=("Wed",)), Assigned("c", 7, "", ("Tue",)))
SET = ProblemSet(
    "M", "W", "class.csv", PROBLEMS, "5 May", due_in=(SectionDue("Wed", "6 May"),)
)  # fmt: skip
NOBODY = new_record()


def class_of(problem_set: ProblemSet = SET) -> Record:
    columns = [Column(each.template, each.template, [Draw(each.template, 1, {})] * 4)
               for each in problem_set.problems]  # fmt: skip
    return record_of(problem_set, PEOPLE, CODES, columns)


def test_the_sections_of_a_class_in_its_order() -> None:
    assert sections_of(class_of()) == ("Tue", "Wed", "")


@pytest.mark.parametrize(
    ("section", "problems", "due", "ids"),
    [("Tue", ["a", "c"], "5 May", ["1", "3"]), ("Wed", ["a", "b"], "6 May", ["2"]),
     ("", ["a"], "5 May", ["4"])],
)  # fmt: skip
def test_a_section_has_its_problems_its_day_and_its_students(
    section: str, problems: list[str], due: str, ids: list[str]
) -> None:
    part = part_of(class_of(), section)
    assert [each.template for each in part.set.problems] == problems
    assert [each.template_id for each in part.issue.templates] == problems
    assert part.set.due == due
    assert [student.id for student in part.students] == ids
    assert [version.code for version in part.versions] == [CODES[int(id) - 1] for id in ids]


def test_a_paper_stays_in_the_section_that_it_names() -> None:
    record = class_of()
    moved = (replace(PEOPLE[0], section="Wed"), *PEOPLE[1:])
    assert sections_of(replace(record, students=moved)) == sections_of(record)


def test_a_corrected_section_takes_all_editions_of_the_paper_with_it() -> None:
    record = class_of()
    later = replace(record.editions[0], code="EEEE", section="Wed", follows="AAAA")
    record = replace(record, printings=(*record.printings, Printing(0, (later,))))
    assert [e.code for e in part_of(record, "Wed").editions] == ["AAAA", "BBBB", "EEEE"]
    assert [e.code for e in part_of(record, "Tue").editions] == ["CCCC"]


def test_an_exam_has_the_letters_of_the_students_of_a_section() -> None:
    exam = replace(SET, problems=(Assigned("a", 5),), due_in=(), exam=Exam(2))
    part = part_of(class_of(exam), "Tue")
    assert (part.letters, len(part.versions)) == (("A", "A"), 2)


def test_folders_that_no_system_takes_for_one_another() -> None:
    names = folder_names(["A/1", "a 1", "", "Ä"])
    assert len({name.casefold() for name in names.values()}) == 4
    assert names[""] == "without-section"
    assert all("/" not in name for name in names.values())
    assert folder_names(["CON", "con", "Com1", "cone"]) == {
        "CON": "section-con", "con": "section-con-2", "Com1": "section-com1", "cone": "cone",
    }  # fmt: skip


def faults_of(earlier: Record = NOBODY, students: Any = PEOPLE, **changes: Any) -> list[str]:
    faults = Faults("week.toml")
    judge_sections(replace(SET, **changes), students, earlier, "class.csv", faults)
    return [f"{each.field}: {each.found}: {each.expected}: {each.mend}" for each in faults.found]


def test_sections_that_there_are_not_are_told_at_once_with_the_nearest() -> None:
    wrong = (Assigned("a", 5), Assigned("b", 5, "", ("Tues", "Wed")))
    faults = faults_of(problems=wrong, due_in=(SectionDue("wed", "6 May"), SectionDue("X", "7")))
    assert [fault.split(": ")[:2] for fault in faults] == [
        ["problem[1].sections", '"Tues"'], ["due_in.wed", '"wed"'], ["due_in.X", '"X"'],
    ]  # fmt: skip
    assert faults[0].endswith('did you mean "Tue"?')
    assert faults[1].endswith('did you mean "Wed"?')


def test_a_class_list_without_sections_has_none_to_name() -> None:
    nobody = [replace(student, section="") for student in PEOPLE]
    assert len(faults_of(students=nobody)) == 3


def test_nobody_is_without_a_problem() -> None:
    (fault,) = faults_of(problems=PROBLEMS[1:])
    assert "a problem for students without a section too" in fault


def test_a_section_whose_students_have_left_may_still_be_named() -> None:
    stayed = [student for student in PEOPLE if student.section != "Wed"]
    assert faults_of(class_of(), stayed) == []
    assert faults_of(students=stayed)
