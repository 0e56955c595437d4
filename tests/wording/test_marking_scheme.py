"""Marking schemes and the intervals that earn full marks."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, Worked, draw_class, prepare, tell_steps, work
from probgen.quantities.unit import US_CUSTOMARY, unit_named
from probgen.statics.derivation import Step
from probgen.statics.plan import Plan
from probgen.statics.system import Form
from probgen.wording.answer import Answer, answers
from probgen.wording.block import Itemize, Paragraph
from probgen.wording.marking_scheme import (
    ANGLE_FLOOR,
    WEIGHTS,
    Mark,
    half_width,
    intervals,
    scheme,
    scheme_section,
    shared,
)
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention

ROOT = Path(__file__).parents[2]
PUBLISHED = ROOT / "tests" / "published"
OWN = sorted(ROOT.glob("templates/*/*.toml"))
STRUT, LADDER, ARM, SCAFFOLD = (
    PUBLISHED / f"{name}.toml"
    for name in ("up1-12.2-cyu8", "up1-12.2-ex5", "cp2e-9.6-ex4", "cp2e-9.5-p25")
)
FIRST_LIMIT = PUBLISHED / "up1-12.1-ex2.toml"  # two strings, one of which breaks first
EVERY = [*OWN, STRUT, LADDER, ARM]
CLEANER = ROOT / "templates" / "ladders" / "ladder-smooth-wall.toml"
USUAL = Convention()
COURSES = [
    USUAL,
    replace(USUAL, direction="axis", units=US_CUSTOMARY),
    replace(USUAL, direction="vertical", figures=2, tolerance=0.05),
]


@cache
def problem(path: Path, convention: Convention = USUAL) -> Problem:
    return prepare(read_template(path.read_text(encoding="utf-8"), path.name), convention)


@cache
def works(path: Path, convention: Convention = USUAL) -> tuple[Worked, ...]:
    own = problem(path, convention)
    students = [str(each) for each in range(4 if own.template.room > 1 else 1)]
    return work(own, draw_class(own, "scheme", students).draws)


def steps(plan: Plan) -> list[Step]:
    """Those to every limit, each once, where there are several ways."""
    ways = [plan, *(branch.plan for branch in plan.branches)]
    return list(dict.fromkeys(step for way in ways for step in way.steps))


def numbers(found: tuple[Answer, ...]) -> list[Answer]:
    """Answers without the name of a limit and without yes or no."""
    words = ("what happens first", "does it hold")
    return [answer for answer in found if answer.symbol not in words]


def named(path: Path) -> str:
    return path.stem


def said(mark: Mark) -> str:
    return plain_text(mark.words)


# The scheme.


@pytest.mark.parametrize("points", [1, 2, 3, 5, 7, 10, 12, 25, 100])
@pytest.mark.parametrize("path", EVERY, ids=named)
def test_points_add_up(path: Path, points: int) -> None:
    marks = scheme(works(path)[0].case, USUAL, points)
    assert sum(mark.points for mark in marks) == points
    assert all(mark.points >= 1 for mark in marks)


@pytest.mark.parametrize("points", [1, 4, 10])
@pytest.mark.parametrize("path", OWN, ids=named)
def test_every_student_is_marked_alike(path: Path, points: int) -> None:
    schemes = [scheme(own.case, USUAL, points) for own in works(path)]
    assert all(each == schemes[0] for each in schemes)


@pytest.mark.parametrize("points", [1, 6, 30])
@pytest.mark.parametrize("path", EVERY, ids=named)
def test_nothing_is_left_unmarked(path: Path, points: int) -> None:
    """Every step's result, every answer from data alone, every force asked, however few points."""
    case = works(path)[0].case
    marks = scheme(case, USUAL, points)
    marked = [id for mark in marks for id in mark.quantities]
    found = [step.unknown for step in steps(case.plan)]
    asked = {find.quantity for find in case.system.finds}
    settled = [d.variable for d in case.plan.definitions if d.variable in asked]
    ends = [outcome.id for outcome in case.plan.outcomes]
    assert marked == found + settled + ends
    assert {answer.id for answer in numbers(answers(case, USUAL)) if answer.asked} <= {*marked}
    kinds = [kind for mark in marks for kind in mark.kinds]
    balances = [step.equation.kind for step in steps(case.plan)]
    assert kinds.count("torque") == balances.count("torque")
    assert kinds.count("formula") == len(settled)


@pytest.mark.parametrize("path", EVERY, ids=named)
def test_what_is_no_number_is_marked_too(path: Path) -> None:
    """Which of several limits comes first, and whether it holds."""
    case = works(path)[0].case
    kinds = [kind for mark in scheme(case, USUAL, 30) for kind in mark.kinds]
    holds = [find for find in case.system.finds if find.form is Form.HOLDS]
    assert kinds.count("limit") == (len(case.plan.branches) > 1) + len(holds)


@pytest.mark.parametrize("path", EVERY, ids=named)
def test_diagrams_are_marked_where_the_key_has_them(path: Path) -> None:
    own = works(path)[0]
    kinds = [kind for mark in scheme(own.case, USUAL, 30) for kind in mark.kinds]
    titles = [section.title for section in tell_steps(problem(path), own)]
    drawn = sum(title.startswith("Forces on the ") for title in titles)
    assert kinds[:drawn] == ["diagram"] * drawn
    assert kinds.count("diagram") == drawn


def test_no_points_cannot_be_shared() -> None:
    with pytest.raises(ValueError, match="0 points: expected 1 or more"):
        scheme(works(STRUT)[0].case, USUAL, 0)


@given(st.integers(0, 60), st.lists(st.integers(1, 5), min_size=1, max_size=12))
def test_largest_remainders(points: int, weights: list[int]) -> None:
    """All points are given, nobody is more than one point off the fair share."""
    shares = shared(points, weights)
    assert sum(shares) == points
    for share, weight in zip(shares, weights, strict=True):
        assert abs(share - points * weight / sum(weights)) < 1


def test_weights_split_the_ladder_as_they_stand() -> None:
    marks = scheme(works(CLEANER)[0].case, USUAL, 10)
    assert [(said(mark), mark.points) for mark in marks] == [
        ("free-body diagram with five forces", WEIGHTS["diagram"]),
        ("torque equation about A with signs and lever arms", WEIGHTS["torque"]),
        ("numbers put in for N_w", WEIGHTS["substitution"]),
        ("N_w found (unit)", WEIGHTS["result"]),
        ("f from the balance along x (sign and unit)", WEIGHTS["force"]),
        ("N_f from the balance along y (unit)", WEIGHTS["force"]),
        ("μ from f = μ N_f", WEIGHTS["condition"]),
    ]


def test_a_hinge_counts_as_one_force() -> None:
    assert said(scheme(works(ARM)[0].case, USUAL, 10)[0]) == "free-body diagram with four forces"


def test_each_body_has_its_diagram() -> None:
    first, second, *_ = scheme(works(SCAFFOLD)[0].case, USUAL, 20)
    bodies = works(SCAFFOLD)[0].case.system.bodies
    assert [mark.kinds for mark in (first, second)] == [("diagram",), ("diagram",)]
    assert f"of the {bodies[0].name}" in said(first)
    assert f"of the {bodies[1].name}" in said(second)


def test_a_centre_of_mass_is_marked_beyond_a_diagram() -> None:
    """No body is in balance: its weighted mean, the numbers in it and the result earn all."""
    (bookcase,) = (path for path in OWN if path.stem == "bookcase-centre-tilt")
    assert not steps(works(bookcase)[0].case.plan)
    marks = scheme(works(bookcase)[0].case, USUAL, 20)
    assert [(said(mark), mark.kinds) for mark in marks[:3]] == [
        ("y_G written out in symbols", ("formula",)),
        ("numbers put in for y_G", ("substitution",)),
        ("y_G found (unit)", ("result",)),
    ]
    assert [each.answer for each in intervals(works(bookcase)[0].case, USUAL)] == ["y_G", "phi"]


def test_few_points_are_for_neighbouring_steps() -> None:
    (whole,) = scheme(works(CLEANER)[0].case, USUAL, 1)
    assert len(whole.kinds) == len(scheme(works(CLEANER)[0].case, USUAL, 10))
    assert said(whole).startswith("free-body diagram with five forces, torque equation")


def test_every_way_to_a_limit_is_marked_and_which_comes_first() -> None:
    case = works(FIRST_LIMIT)[0].case
    marks = scheme(case, USUAL, 40)
    assert marks[-1].kinds == ("limit",)
    steps = [step.unknown for branch in case.plan.branches for step in branch.plan.steps]
    assert {id for mark in marks for id in mark.quantities} == set(steps)
    assert [each.answer for each in intervals(case, USUAL)] == ["m"]


# The intervals.


@pytest.mark.parametrize("convention", COURSES, ids=["usual", "customary", "two figures"])
@pytest.mark.parametrize("path", EVERY, ids=named)
def test_printed_interval_holds_the_exact_one(path: Path, convention: Convention) -> None:
    for own in works(path, convention):
        asked = [a for a in numbers(answers(own.case, convention)) if a.asked]
        told = intervals(own.case, convention)
        assert [each.answer for each in told] == [answer.id for answer in asked]
        for answer, each in zip(asked, told, strict=True):
            unit = unit_named(answer.unit)
            half = half_width(own.case, convention, answer.id) / unit.factor
            value = answer.value if answer.angle_from_x is None else answer.angle_from_x
            slack = 1e-9 * abs(value)
            assert float(each.low.value) <= value - half + slack
            assert float(each.high.value) >= value + half - slack
            step = 10.0 ** int(each.low.value.as_tuple().exponent)
            assert float(each.high.value - each.low.value) < 2 * half + 2 * step + slack
            assert each.low.unit is not None
            assert each.low.unit.name == unit.name


@pytest.mark.parametrize("convention", COURSES, ids=["usual", "customary", "two figures"])
@pytest.mark.parametrize("path", OWN, ids=named)
def test_half_width_is_the_course_tolerance_or_a_floor(path: Path, convention: Convention) -> None:
    for own in works(path, convention):
        for answer in numbers(answers(own.case, convention)):
            half = half_width(own.case, convention, answer.id)
            if answer.angle_from_x is None:
                assert half >= convention.tolerance * abs(own.case.values[answer.id])
            else:
                assert half == ANGLE_FLOOR


def test_a_small_component_of_large_forces_is_not_asked_closer_than_they_are() -> None:
    """The arm's level joint component is zero; 470 N and −407 N are known to half a newton."""
    assert half_width(works(ARM)[0].case, USUAL, "J.x") == 0.5
    assert half_width(works(ARM)[0].case, USUAL, "J.y") == pytest.approx(0.02 * 406.7)


SAID = {
    STRUT: (
        "Full marks for T 1140 N to 1190 N; R 960 N to 1000 N; "
        "R at 16.8° to 18.9° above the horizontal, to the right."
    ),
    ARM: "Full marks for B 460 N to 480 N; J 398 N to 415 N; J straight down, within 1°",
}


@pytest.mark.parametrize("path", SAID, ids=named)
def test_intervals_are_told(path: Path) -> None:
    case = works(path)[0].case
    section = scheme_section(scheme(case, USUAL, 20), intervals(case, USUAL))
    marks, told = section.blocks
    assert section.title == "Marks (20)"
    assert isinstance(marks, Itemize)
    assert isinstance(told, Paragraph)
    assert plain_text(told.inlines).startswith(SAID[path])
    assert plain_text(marks.items[0]).startswith("Free-body diagram with four forces: ")
