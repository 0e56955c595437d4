"""The example class and its assignment file: good input, as a course has it and a demonstration."""

import re
import sys
import tomllib

import pytest

from probgen.build.example import course_assignment, demo_assignment, invent_roster
from probgen.course.assignment import parse_assignment
from probgen.course.roster import parse_roster

WRITTEN = 60


def test_a_class_of_ordinary_size_does_not_depend_on_faker(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "faker", None)  # importing it fails
    students = parse_roster(invent_roster(WRITTEN), "roster.csv").students
    assert invent_roster(12) == "\n".join(invent_roster(WRITTEN).split("\n")[:14]) + "\n"
    assert len({student.name for student in students}) == WRITTEN
    with pytest.raises(ImportError):
        invent_roster(WRITTEN + 1)


def test_further_students_are_made_up_the_same_way_each_time() -> None:
    more = invent_roster(3 * WRITTEN)
    assert more == invent_roster(3 * WRITTEN)
    assert more.startswith(invent_roster(WRITTEN))
    many = parse_roster(more, "roster.csv").students
    assert len({student.name for student in many}) > 2.5 * WRITTEN


@pytest.mark.parametrize(
    "name", ["phys-101", "Mécanique 2", 'a "quoted" one', "back\\\\slash", "$x"]
)
def test_a_course_may_be_called_anything(name: str) -> None:
    text = course_assignment(name)
    assert parse_assignment(text, "assignment.toml").course == name


def test_the_two_texts_differ_in_what_lies_where_alone() -> None:
    """Lines that are remarks in one and used in the other do not count."""
    own, demo = tomllib.loads(course_assignment("M")), tomllib.loads(demo_assignment())
    differing = {key for key in {**own, **demo} if own.get(key) != demo.get(key)}
    assert differing == {"course", "title", "roster", "style", "avoid"}
    assert (own["roster"], own["style"], own["avoid"]) == (
        "../roster.csv", "../house.toml", ["../*/"],
    )  # fmt: skip


@pytest.mark.parametrize("field", ["pivot", "parts", "marks", "sections"])
def test_a_field_behind_a_remark_can_be_used_beside_the_points(field: str) -> None:
    """The sharing of the points is besides them, as the text says, and adds up to them."""
    text = re.sub(rf"^# ({field} *=)", r"\1", demo_assignment(), flags=re.MULTILINE)
    (used,) = [each for each in parse_assignment(text, "a.toml").problems if getattr(each, field)]
    told = re.search(rf"^{field} *=.*", text, re.MULTILINE)
    assert used.points > 0
    assert told is not None
    assert "in place of" not in told[0]
