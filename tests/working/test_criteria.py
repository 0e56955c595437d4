"""What the points of a problem are given for."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, Worked, draw_class, prepare, tell_steps, work
from probgen.quantities.expression import ZERO
from probgen.statics.plan import Plan, limits_asked
from probgen.statics.quantity_id import Quantity
from probgen.statics.step import Step
from probgen.statics.system import Form
from probgen.wording.english import ENGLISH
from probgen.wording.key import tell
from probgen.wording.sentence import plain_text
from probgen.working.bodies_used import steps_compared
from probgen.working.convention import Convention
from probgen.working.criteria import criteria
from probgen.working.criterion import DiagramDrawn
from probgen.working.needed import needed_for
from probgen.working.scheme import WEIGHTS, Mark, scheme, shared
from tests.wording.shown import lines

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


def named(path: Path) -> str:
    return path.stem


def said(mark: Mark, path: Path = CLEANER) -> str:
    return plain_text(ENGLISH.say(mark, problem(path).nouns))


def marks_of(path: Path, points: int) -> tuple[Mark, ...]:
    return scheme(problem(path).plan, USUAL, points)


def test_what_one_limit_alone_needs_earns_nothing_but_as_the_answer() -> None:
    """Where it slides first torques about K give x; where it tips, x is the depth."""
    path = next(path for path in OWN if path.stem == "cabinet-slide-or-tip")
    marks = [said(mark, path) for mark in marks_of(path, 30)]
    assert not any("about K" in each for each in marks)
    assert [each for each in marks if each.startswith("x ")] == [
        "x = b used\u00a0–\u00a0method",
        "x found at the limit reached first (unit)\u00a0–\u00a0accuracy",
    ]


def test_a_verdict_and_its_margin_earn_apart() -> None:
    path = next(path for path in OWN if path.stem == "ladder-holds")
    assert [said(mark, path) for mark in marks_of(path, 10)][-2:] == [
        "f compared with μ N_g; verdict\u00a0–\u00a0method",
        "margin between f and μ N_g (unit)\u00a0–\u00a0accuracy",
    ]


@pytest.mark.one_in(3)
@pytest.mark.parametrize("points", [1, 2, 3, 5, 7, 10, 12, 25, 100])
@pytest.mark.parametrize("path", EVERY, ids=named)
def test_points_add_up(path: Path, points: int) -> None:
    marks = marks_of(path, points)
    assert sum(mark.points for mark in marks) == points
    assert all(mark.points >= 1 for mark in marks)


@pytest.mark.one_in(6)
@pytest.mark.parametrize("points", [1, 4, 10])
@pytest.mark.parametrize("path", OWN, ids=named)
def test_every_student_is_marked_alike(path: Path, points: int) -> None:
    schemes = [scheme(own.case.plan, USUAL, points) for own in works(path)]
    assert all(each == schemes[0] for each in schemes)


@pytest.mark.one_in(3)
@pytest.mark.parametrize("points", [1, 6, 30])
@pytest.mark.parametrize("path", EVERY, ids=named)
def test_nothing_is_left_unmarked(path: Path, points: int) -> None:
    """Every step's result, every answer from data alone, every force asked, however few points.

    A force that a balance finds to be zero and no answer comes from is not marked; what the limit
    reached first decides is so once, and so is each margin.
    """
    case = works(path)[0].case
    marks = scheme(case.plan, USUAL, points)
    marked = [id for mark in marks for id in mark.quantities]
    needed = {id for find in case.system.finds for id in needed_for(case.plan, find)}
    compared = steps_compared(case.plan)
    said = {s.unknown for s in compared if s.equation.kind == "condition"}
    found = [s.unknown for s in compared if s.expression != ZERO or s.unknown in needed | said]
    several = [b for b in case.plan.branches if len(case.plan.branches_to(b.utmost)) > 1]
    here = {s.unknown for b in several for s in b.plan.steps} - {
        id for b in several for id in case.plan.found_anyway(b)
    }
    last = [id for id in case.system.asked if id in here]
    found = [id for id in found if id not in last]
    margins = [e.id for f in case.system.finds if f.form is Form.HOLDS
               for e in limits_asked(case.system, f)]  # fmt: skip
    asked = {find.quantity for find in case.system.finds}
    asked |= {id for each in tuple(asked) for id in Quantity(each).components}
    settled = [d.variable for d in case.plan.definitions if d.variable in asked]
    ends = [outcome.id for outcome in case.plan.outcomes]
    assert marked == found + settled + last + margins + ends
    asked_numbers = [a for a in works(path)[0].answers if a.asked and a.is_number]
    assert {answer.id for answer in asked_numbers} <= {*marked}
    kinds = [kind for mark in marks for kind in mark.kinds]
    balances = [step.equation.kind for step in compared]
    assert kinds.count("torque") == balances.count("torque")
    assert kinds.count("formula") == len(settled)
    curves = [e for e in case.system.elements if e.spread is not None and e.spread.intensity]
    assert kinds.count("integral") == len(curves)


@pytest.mark.parametrize("path", EVERY, ids=named)
def test_what_is_no_number_is_marked_too(path: Path) -> None:
    """Which of several limits comes first, and whether it holds."""
    case = works(path)[0].case
    kinds = [kind for mark in scheme(case.plan, USUAL, 30) for kind in mark.kinds]
    holds = [find for find in case.system.finds if find.form is Form.HOLDS]
    several = [f for f in case.system.finds if len(case.plan.branches_to(f)) > 1]
    assert kinds.count("limit") == len(several) + len(holds)


@pytest.mark.parametrize("path", EVERY, ids=named)
def test_diagrams_are_marked_where_the_key_has_them(path: Path) -> None:
    own = works(path)[0]
    kinds = [kind for mark in scheme(own.case.plan, USUAL, 30) for kind in mark.kinds]
    titles = [section.title for section in tell_steps(problem(path), own)]
    drawn = sum(title.startswith("Forces on ") for title in titles)
    assert kinds[:drawn] == ["diagram"] * drawn
    assert kinds.count("diagram") == drawn


@pytest.mark.parametrize("path", EVERY, ids=named)
def test_diagrams_are_marked_in_the_order_of_the_key(path: Path) -> None:
    own = works(path)[0]
    told = [section.title for section in tell_steps(problem(path), own)]
    titles = [title for title in told if title.startswith("Forces on ")]
    marks = [mark for mark in scheme(own.case.plan, USUAL, 60) if "diagram" in mark.kinds]
    if len(marks) == len(titles) > 1:
        for mark, title in zip(marks, titles, strict=True):
            whose = title.removeprefix("Forces on ").replace(" together", " as one body")
            assert f"of {whose} with" in said(mark, path)


def test_no_points_cannot_be_shared() -> None:
    with pytest.raises(ValueError, match="0 points: expected 1 or more"):
        marks_of(STRUT, 0)


@given(st.integers(0, 60), st.lists(st.integers(1, 5), min_size=1, max_size=12))
def test_largest_remainders(points: int, weights: list[int]) -> None:
    """All points are given, nobody is more than one point off the fair share."""
    shares = shared(points, weights)
    assert sum(shares) == points
    for share, weight in zip(shares, weights, strict=True):
        assert abs(share - points * weight / sum(weights)) < 1


def test_weights_split_the_ladder_as_they_stand() -> None:
    """An answer that a balance or a condition is solved for counts beside it."""
    marks = marks_of(CLEANER, 13)
    assert [(said(mark), mark.points) for mark in marks] == [
        ("free-body diagram with five forces\u00a0–\u00a0method", WEIGHTS["diagram"]),
        ("torque equation about A with signs and angles\u00a0–\u00a0method", WEIGHTS["torque"]),
        ("numbers put in for N_w\u00a0–\u00a0method", WEIGHTS["substitution"]),
        ("N_w found (unit)\u00a0–\u00a0accuracy", WEIGHTS["result"]),
        ("force balance along y\u00a0–\u00a0method", WEIGHTS["force"]),
        ("N_f found (unit)\u00a0–\u00a0accuracy", WEIGHTS["result"]),
        ("force balance along x\u00a0–\u00a0method", WEIGHTS["force"]),
        ("f found (unit)\u00a0–\u00a0accuracy", WEIGHTS["result"]),
        ("f = μ N_f used\u00a0–\u00a0method", WEIGHTS["condition"]),
        ("μ found\u00a0–\u00a0accuracy", WEIGHTS["result"]),
    ]


@pytest.mark.parametrize(
    ("id", "mark"),
    [
        ("cabinet-slide-or-tip", "P found at the limit reached first (unit)"),  # to the right
        ("ladder-raised", "F found (unit)"),  # at right angles to the ladder
        ("crate-ramp-strap", "f worked out (unit)"),  # at its largest, whichever way
        ("wheelbarrow-compost", "F found (unit)"),
        ("fishing-rod", "R_y found (sign and unit)"),
        ("cable-reel-ramp", "f worked out (unit)"),  # up the ramp: no sheet asks for its sign
        ("plank-over-edge", "f found (unit)"),
        ("hip-walking-stick", "J worked out (unit)"),  # on the way, told to act up
        ("roof-truss-snow", "R_y worked out (unit)"),  # on the way, and no answer follows
        ("balcony-built-in", "R_x found\u00a0–"),  # nothing
        ("balcony-built-in", "R_y found (sign and unit)"),
        ("jetty-mooring", "R_x worked out (sign and unit)"),  # the direction of R is asked
        ("stand-roof-inside", "V_D found (sign and unit)"),
        ("spring-scales-baskets", "F_1 found (unit)"),
    ],
)
def test_a_sign_is_asked_where_the_way_of_a_force_is_to_be_found(id: str, mark: str) -> None:
    (path,) = (each for each in OWN if each.stem == id)
    assert any(mark in said(each, path) for each in marks_of(path, 20))


def test_a_hinge_counts_as_one_force() -> None:
    assert (
        said(marks_of(ARM, 10)[0], ARM) == "free-body diagram with four forces\u00a0–\u00a0method"
    )


def test_a_diagram_is_marked_with_the_forces_that_the_key_counts() -> None:
    """Of the bridge's pin one component is left in the part cut off, which is a force as well."""
    (bridge,) = (path for path in OWN if path.stem == "footbridge-truss-crowd")
    convention = Convention(torque="angle", trusses="sections")
    own = works(bridge, convention)[0]
    key = tell(own.digits, problem(bridge, convention).unused)
    told = {line for passage in key for line in lines(passage) if "Counted" in line}
    drawn = [each.what for each in criteria(own.case.plan, convention) if each.kind == "diagram"]
    assert {f"ForcesCounted({' '.join(d.bodies)}, {d.forces}, {d.couples})"
            for d in drawn if isinstance(d, DiagramDrawn)} == told  # fmt: skip


def test_each_body_has_its_diagram() -> None:
    first, second, *_ = marks_of(SCAFFOLD, 20)
    case = works(SCAFFOLD)[0].case
    nouns = [case.labels.bodies[body.id] for body in case.system.bodies]
    assert [mark.kinds for mark in (first, second)] == [("diagram",), ("diagram",)]
    assert f"of the {nouns[0]}" in said(first, SCAFFOLD)
    assert f"of the {nouns[1]}" in said(second, SCAFFOLD)


def test_a_centre_of_mass_is_marked_beyond_a_diagram() -> None:
    """No body is in balance: its weighted mean, the numbers in it and the result earn all."""
    (bookcase,) = (path for path in OWN if path.stem == "bookcase-centre-tilt")
    assert not steps(works(bookcase)[0].case.plan)
    marks = marks_of(bookcase, 20)
    assert [(said(mark, bookcase), mark.kinds) for mark in marks[:3]] == [
        ("y_G written out in symbols\u00a0–\u00a0method", ("formula",)),
        ("numbers put in for y_G\u00a0–\u00a0method", ("substitution",)),
        ("y_G found (unit)\u00a0–\u00a0accuracy", ("result",)),
    ]


def test_few_points_are_for_neighbouring_steps() -> None:
    (whole,) = marks_of(CLEANER, 1)
    assert len(whole.kinds) == len(tuple(criteria(problem(CLEANER).plan, USUAL)))
    assert said(whole).startswith("free-body diagram with five forces, torque equation")


def test_every_way_to_a_limit_is_marked_and_which_comes_first() -> None:
    case = works(FIRST_LIMIT)[0].case
    marks = scheme(case.plan, USUAL, 40)
    assert [mark.kinds for mark in marks[-2:]] == [("limit",), ("result",)]
    steps = [step.unknown for branch in case.plan.branches for step in branch.plan.steps]
    assert {id for mark in marks for id in mark.quantities} == set(steps)


def test_a_couple_belongs_to_the_diagram() -> None:
    """The wall turns the beam as well as it holds it."""
    built_in = ROOT / "templates" / "beams" / "balcony-built-in.toml"
    assert said(marks_of(built_in, 12)[0], built_in).startswith(
        "free-body diagram with four forces and a couple"
    )
    assert "couple" not in said(marks_of(CLEANER, 12)[0])


def test_an_idle_member_is_marked_for_being_seen() -> None:
    bracket = ROOT / "templates" / "structures" / "wall-bracket-board.toml"
    told = [said(mark, bracket) for mark in marks_of(bracket, 12)]
    (idle,) = (each for each in told if "F_BE" in each)
    assert idle == "F_BE seen to be zero at joint B, with the reason"
