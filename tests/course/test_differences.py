"""Two issues compared: each thing that differs, by the name it has in the file."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from probgen.course.assignment import Assigned, ProblemSet, SectionDue
from probgen.course.differences import Difference, differences
from probgen.course.issue import FrozenTemplate, Issue
from probgen.sheets.house import House
from probgen.sheets.style import HouseStyle
from probgen.working.convention import Convention
from probgen.working.shares import Share
from tests.banks import template_text, without_origin

SET = ProblemSet("M", "W", "class.csv", (Assigned("a", 5), Assigned("b", 5)))
ISSUE = Issue(SET, (FrozenTemplate("a", 1, "x\ny"), FrozenTemplate("b", 2, "z")))


def with_set(**changes: Any) -> Issue:
    return replace(ISSUE, set=replace(SET, **changes))


def with_second(*found: FrozenTemplate) -> Issue:
    problems = (SET.problems[0], *(Assigned(each.template_id, 5) for each in found))
    return Issue(replace(SET, problems=problems), (ISSUE.templates[0], *found))


LAID_OUT = House(layouts=(("sheet.tex.j2", "x"),))
CASES = {
    "nothing": (ISSUE, ()),
    "a path": (with_set(roster="b.csv"), ()),
    "title": (with_set(title="V"), (Difference("title", '"W"', '"V"'),)),
    "a method": (
        with_set(convention=Convention(figures=4)), (Difference("method.figures", "3", "4"),)),
    "points": (
        with_set(problems=(Assigned("a", 6), SET.problems[1])),
        (Difference("problem 1 (a).points", "5", "6", 0),)),
    "a pivot": (
        with_set(problems=(Assigned("a", 5, "A"), SET.problems[1])),
        (Difference("problem 1 (a).pivot", '""', '"A"', 0),)),
    "its parts": (
        with_set(problems=(Assigned("a", 5, parts=(4, 1)), SET.problems[1])),
        (Difference("problem 1 (a).points", "shared as usual", "parts 4, 1", 0),)),
    "its marks": (
        with_set(problems=(Assigned("a", 5, marks=(Share("torques", 3), Share("results", 2))),
                           SET.problems[1])),
        (Difference("problem 1 (a).points", "shared as usual", "torques 3, results 2", 0),)),
    "its sections": (
        with_set(problems=(SET.problems[0], Assigned("b", 5, sections=("A", "B")))),
        (Difference("problem 2 (b).sections", "everybody", "A, B", 1),)),
    "days of sections": (
        with_set(due_in=(SectionDue("A", "noon"), SectionDue("B", "night"))),
        (Difference("due_in", "nothing", "A: noon, B: night"),)),
    "several": (
        with_set(title="V", problems=(Assigned("a", 6, "A"), SET.problems[1])),
        (Difference("title", '"W"', '"V"'), Difference("problem 1 (a).points", "5", "6", 0),
         Difference("problem 1 (a).pivot", '""', '"A"', 0))),
    "another problem": (
        with_second(FrozenTemplate("c", 1, "z")), (Difference("problem 2", "b", "c", 1),)),
    "a problem less": (with_second(), (Difference("problem 2", "b", "none", 1),)),
    "a problem more": (
        with_second(ISSUE.templates[1], FrozenTemplate("c", 1, "z")),
        (Difference("problem 3", "none", "c", 2),)),
    "a revision": (
        with_second(FrozenTemplate("b", 3, "new")),
        (Difference("problem 2 (b)", "revision 2", "revision 3", 1),)),
    "a text": (
        with_second(FrozenTemplate("b", 2, "zz")),
        (Difference("problem 2 (b)", "", 'its line 1 is now "zz"', 1),)),
    "a style": (
        replace(ISSUE, house=House(HouseStyle(text="sans"))),
        (Difference("style", "another house style", "this one"),)),
    "layouts": (
        replace(ISSUE, house=LAID_OUT), (Difference("layouts", "other layouts", "sheet.tex.j2"),)),
}  # fmt: skip


@pytest.mark.parametrize(("now", "told"), CASES.values(), ids=CASES)
def test_what_differs(now: Issue, told: tuple[Difference, ...]) -> None:
    assert differences(ISSUE, now) == told


def test_where_a_template_comes_from_is_on_no_paper() -> None:
    said = template_text("forearm-load")
    was = with_second(FrozenTemplate("b", 2, without_origin(said)))
    assert differences(was, with_second(FrozenTemplate("b", 2, said))) == ()
    assert differences(was, with_second(FrozenTemplate("b", 2, said.replace("rice", "flour"))))
