"""Records of other assignments found and read; what an exam may have again."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.avoided import Avoided, read_avoided, require_new
from probgen.course.exam import Exam
from probgen.course.record import RECORD, Record
from probgen.course.record_file import write_record
from probgen.input.fault import InputError
from tests.terms import begun, class_of

CLASS = class_of(3)


def put(folder: Path, record: Record) -> None:
    folder.mkdir(parents=True)
    (folder / RECORD).write_text(write_record(record), encoding="utf-8")


@pytest.fixture
def course(tmp_path: Path) -> Path:
    """Two weeks, an exam and this week's folder, which is week 3."""
    for week in (1, 2):
        put(tmp_path / f"week-{week}" / "output", begun(CLASS, title=f"Week {week}"))
    put(tmp_path / "exam", begun(CLASS, title="Exam", exam=Exam(2)))
    (tmp_path / "week-3").mkdir()
    return tmp_path


def before(course: Path, *avoid: str, **more: Any) -> Avoided:
    own = course / "week-3"
    chosen = ProblemSet("Mechanics", "Week 3", "c", (Assigned("lamp", 1),), avoid=avoid)
    out = more.pop("out", own / "output")
    return read_avoided(chosen, ["lamp"], own / "assignment.toml", out, **more)


@pytest.mark.parametrize(
    ("avoid", "had"),
    [
        ([], 0),
        (["../week-1"], 3),
        (["../week-*/"], 6),
        (["../week-1/output/record.json"], 3),
        (["../*/"], 8),
        (["../week-*/", "../week-1/output"], 6),
    ],
    ids=str,
)
def test_globs_find_records_in_and_below_folders(course: Path, avoid: list[str], had: int) -> None:
    assert len(before(course, *avoid).had) == had


def test_an_exams_versions_are_anybodys(course: Path) -> None:
    assert {each.owner for each in before(course, "../exam").had} == {""}
    assert {each.owner for each in before(course, "../week-1").had} == {"1", "2", "3"}


def test_the_own_record_counts_only_where_the_build_begins_anew(course: Path) -> None:
    put(course / "week-3" / "output", begun(CLASS, title="Week 3"))
    assert len(before(course, "../week-*/").had) == 6
    anew = before(course, "../week-*/", anew=True)
    assert len(anew.had) == 9
    assert anew.templates["lamp"].startswith("Week 2")


def test_an_earlier_build_of_the_same_has_numbers_and_no_templates(course: Path) -> None:
    put(course / "week-3" / "output.replaced-1", begun(CLASS, title="Week 3"))
    found = before(course, "../week-3/*")
    assert (len(found.had), found.templates) == (3, {})


def test_drafts_bind_nobody(course: Path) -> None:
    draft = begun(CLASS, title="Week 9")
    draft = replace(draft, issues=(replace(draft.issue, draft=True),))
    put(course / "week-9", draft)
    assert before(course, "../week-9/") == Avoided()


def test_where_a_template_was_is_told_by_title_and_folder(course: Path) -> None:
    assert before(course, "../week-1").templates == {"lamp": "Week 1 (../week-1/output)"}


def test_numbers_of_templates_that_nobody_asks_for_are_left_out(course: Path) -> None:
    chosen = ProblemSet("M", "W", "c", (Assigned("sign", 1),), avoid=("../week-1",))
    found = read_avoided(chosen, ["sign"], course / "week-3" / "a.toml", course / "week-3" / "out")
    assert found.had == ()
    assert "lamp" in found.templates


@pytest.mark.parametrize("avoid", ["../wek-*/", "../week-7", "../week-4/", ""])
def test_a_glob_that_finds_nothing_is_a_fault(course: Path, avoid: str) -> None:
    (course / "week-4").mkdir()  # which is not built yet
    with pytest.raises(InputError) as refused:
        before(course, "../week-1", avoid)
    (fault,) = refused.value.faults
    assert fault.field == "avoid[1]"
    assert fault.found == f'"{avoid}"'


def test_a_glob_that_finds_its_own_folder_alone_is_none(tmp_path: Path) -> None:
    (tmp_path / "week-3").mkdir()
    assert before(tmp_path, "../week-*/") == Avoided()


@pytest.mark.parametrize(
    ("text", "told"),
    [("{}", "a record"), ("no JSON", "JSON"), ('{"format": 9}', "format 1 or 2")],
)
def test_a_record_that_cannot_be_read_is_one_fault(course: Path, text: str, told: str) -> None:
    (course / "week-2" / "output" / RECORD).write_text(text)
    with pytest.raises(InputError) as refused:
        before(course, "../week-*/")
    (fault,) = refused.value.faults
    assert fault.field == "avoid"
    assert fault.found == f'"../week-2/output/{RECORD}"'
    assert told in fault.expected


def test_a_file_that_is_no_record_is_named_as_it_is(course: Path) -> None:
    (course / "class.csv").write_text("name,id")
    with pytest.raises(InputError) as refused:
        before(course, "../class.csv")
    assert [fault.found for fault in refused.value.faults] == ['"../class.csv"']


EXAM = ProblemSet("M", "E", "c", (Assigned("lamp", 1), Assigned("sign", 1)), exam=Exam(2))
SEEN = Avoided((), {"lamp": "Week 1 (../week-1)"})


def require(problem_set: ProblemSet, *known: str) -> None:
    require_new(SEEN, problem_set, ["lamp", "sign"], known, "exam.toml")


def test_a_template_that_the_class_had_is_refused_in_an_exam_with_where_it_was() -> None:
    with pytest.raises(InputError) as refused:
        require(EXAM)
    (fault,) = refused.value.faults
    assert fault.field == "problem[0].template"
    assert "it was in Week 1 (../week-1)" in fault.expected
    assert 'again = ["lamp"]' in fault.mend


def test_it_may_come_again_by_name_in_homework_and_where_it_was_handed_out_already() -> None:
    require(replace(EXAM, again=("lamp",)))
    require(replace(EXAM, exam=None))
    require(EXAM, "lamp")


def test_a_name_of_no_problem_is_a_fault() -> None:
    with pytest.raises(InputError) as refused:
        require(replace(EXAM, again=("lamp", "sing")))
    (fault,) = refused.value.faults
    assert (fault.field, fault.mend) == ("again[1]", 'did you mean "sign"?')
