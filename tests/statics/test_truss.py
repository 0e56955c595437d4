"""Trusses taken apart: walks along members, joints, and the parts that sections leave."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.quantities.expression import ZERO, Name, evaluate, number
from probgen.quantities.printing import plain
from probgen.statics.method import Method
from probgen.statics.plan import Plan, find_plan
from probgen.statics.proof import prove
from probgen.statics.refusal import Refusal
from probgen.statics.solution import solve
from probgen.statics.system import Body, Kind, Member, System
from probgen.statics.truss import taken_apart, trimmed, walk, with_joints
from tests.situations import HEAD, worked

GIVEN = """
[given]
p = { name = "panel length", choices = [2.0], unit = "m" }
t = { name = "slope", symbol = "theta", choices = [55], unit = "deg" }
P = { name = "load", choices = [12.0], unit = "kN" }
"""
WARREN = """
[points]
A = [0, 0]
B = ["p/2", "p/2*tan(t)"]
C = ["p", 0]
D = ["3*p/2", "p/2*tan(t)"]
E = ["2*p", 0]
[[member]]
along = ["A", "C", "E"]
[[member]]
along = ["A", "B", "C", "D", "E"]
[[member]]
along = ["B", "D"]
[[hinge]]
at = "A"
symbol = "R"
[[roller]]
at = "E"
symbol = "N"
[[force]]
at = "B"
magnitude = "P"
direction = 270
"""
VALUES = {"p": np.array([2.0]), "t": np.array([55.0]), "P": np.array([12e3]), "g": np.array([9.8])}
HEIGHT = 1.0 * np.tan(np.radians(55.0))
# Of the members, by hand from N = P/4 and R = 3P/4: joint A, joint E, then moments about B and C.
FORCES = {
    "F_AB": -9e3 / np.sin(np.radians(55.0)),
    "F_AC": 9e3 / np.tan(np.radians(55.0)),
    "F_DE": -3e3 / np.sin(np.radians(55.0)),
    "F_CE": 3e3 / HEIGHT,
    "F_BD": -3e3 * 2.0 / HEIGHT,
    "F_CD": 3e3 / np.sin(np.radians(55.0)),
    "F_BC": -3e3 / np.sin(np.radians(55.0)),
}


def system_of(rest: str, by: str = "") -> System:
    head = f'{HEAD}by = "{by}"\n' if by else HEAD
    return read_template(head + GIVEN + rest, "trial.toml").system


def warren(*asked: str, by: str = "") -> System:
    finds = "".join(f'[[find]]\nquantity = "{name}"\n' for name in asked)
    return system_of(WARREN + finds, by)


def bodies_of(plan: Plan) -> set[str]:
    return {body for step in plan.steps for each in step.equations for body in each.bodies}


def member(start: str, end: str) -> Member:
    return Member("truss", start, end, Name(f"F_{start}{end}", f"F_{start}{end}"), number(0))


WALKS = [
    ["AB"],
    ["AB", "BC"],
    ["AB", "BC", "AC"],
    ["AB", "AC", "AD"],
    ["AB", "BC", "AC", "CD", "BD"],
]


@pytest.mark.parametrize("members", WALKS, ids="-".join)
def test_a_walk_goes_along_every_member_and_does_not_close(members: list[str]) -> None:
    path = walk([member(*ends) for ends in members])
    gone = {frozenset(step) for step in pairwise(path)}
    assert gone == {frozenset(ends) for ends in members}
    assert path[0] != path[-1]


@pytest.mark.parametrize("by", ["", "joints", "sections"])
@pytest.mark.parametrize("asked", sorted(FORCES))
def test_the_force_in_a_member(asked: str, by: str) -> None:
    plan = find_plan(warren(asked, by=by), VALUES)
    solved = solve(plan, VALUES)
    assert float(np.ravel(solved[asked])[0]) == pytest.approx(FORCES[asked], rel=1e-12)
    assert prove(plan, solved).holds.all()


LOADED = '[[force]]\nat = "D"\ndirection = 270\nsymbol = "Q"\n[[find]]\nquantity = "Q"\n'


def test_what_a_member_bears_is_asked_by_a_condition_and_not_as_a_limit() -> None:
    """F_CE H = N p/2 with N = P/4 + 3Q/4, about D, the height H above CE."""
    bears = '[[condition]]\nthat = "F_CE = 9 kN"\nbecause = "it yields"\n'
    solved = solve(find_plan(system_of(WARREN + LOADED + bears), VALUES), VALUES)
    expected = 4.0 / 3.0 * (9e3 * HEIGHT - 3e3)
    assert float(np.ravel(solved["Q"])[0]) == pytest.approx(expected, rel=1e-12)
    limit = 'as = "largest"\n[[limit]]\nid = "yields"\nthat = "F_CE <= 9 kN"\nname = "it yields"\n'
    with pytest.raises(Refusal, match=r"largest Q that a truss bears .*\[\[condition\]\]"):
        find_plan(system_of(WARREN + LOADED + limit), VALUES)


def test_by_joints_no_section_is_laid() -> None:
    used = bodies_of(find_plan(warren("F_BD", by="joints"), VALUES))
    assert {"truss", "joint-E", "joint-D"} == used
    assert not any(body.startswith("part") for body in used)


def test_a_section_isolates_a_member_by_one_balance() -> None:
    plan = find_plan(warren("F_BD", by="sections"), VALUES)
    (last,) = plan.steps[-1].equations
    assert (last.kind, last.about) == ("torque", "C")  # where the other two of those cut meet
    assert len(plan.steps) == 2  # a support first


def test_the_course_s_way_is_taken_where_the_template_leaves_it_open() -> None:
    sections, joints = Method(trusses="sections"), Method(trusses="joints")
    assert bodies_of(find_plan(warren("F_BD"), VALUES, joints)) == {"truss", "joint-E", "joint-D"}
    own = find_plan(warren("F_BD", by="joints"), VALUES, sections)
    assert not any(body.startswith("part") for body in bodies_of(own))
    cut = bodies_of(find_plan(warren("F_BC", "F_BD", "F_CD"), VALUES, sections))
    assert any(body.startswith("part") for body in cut)
    assert not any(body.startswith("joint") for body in cut)


def test_the_shorter_way_is_the_section_for_a_chord_and_the_joint_for_an_end() -> None:
    assert any(b.startswith("part") for b in bodies_of(find_plan(warren("F_BD"), VALUES)))
    assert bodies_of(find_plan(warren("F_DE"), VALUES)) == {"truss", "joint-E"}


def test_a_part_has_what_acts_on_its_joints_and_the_members_that_are_cut() -> None:
    system = taken_apart(warren("F_BD"), {"F_BD"})
    part = system.body("part-A-B-C")
    on = {force.id: force for force in system.forces if force.body == part.id}
    assert on.keys() == {"R.x", "R.y", "P", "F_BD", "F_CD", "F_CE"}
    assert {each.kind for each in on.values()} == {Kind.HINGE, Kind.FORCE, Kind.MEMBER}
    other = {f.id: f for f in system.forces if f.body == "part-D-E"}
    assert other.keys() == {"N", "F_BD'", "F_CD'", "F_CE'"}
    here, there = (
        float(np.ravel(evaluate(f.direction, VALUES))[0]) for f in (on["F_CD"], other["F_CD'"])
    )
    assert (there - here) % 360.0 == pytest.approx(180.0)


def test_sections_are_laid_through_members_looked_for() -> None:
    bodies = {body.id for body in taken_apart(warren("F_BD"), {"F_AB"}).bodies}
    assert not any(body == "part-A-B-C" for body in bodies)


def test_joints_alone_hold_all_that_is_known_of_a_truss() -> None:
    system = with_joints(warren("F_BD"))
    assert [body.id for body in system.bodies] == [f"joint-{at}" for at in "ACEBD"]
    assert all(body.particle for body in system.bodies)
    assert sum(force.kind is Kind.MEMBER for force in system.forces) == 2 * len(FORCES)


def test_parts_without_a_balance_are_left_out() -> None:
    system = taken_apart(warren("F_BD", "F_CD"), {"F_BD", "F_CD"})
    plan = find_plan(warren("F_BD", by="sections"), VALUES)
    assert {"part-A-B-C", "part-D-E"} <= {body.id for body in system.bodies}
    left = trimmed(system, plan.steps)
    (part,) = plan.steps[-1].equation.bodies
    assert [body.id for body in left.bodies if body.joints] == ["truss", part]
    assert {force.body for force in left.forces} <= {body.id for body in left.bodies}


def test_a_system_without_trusses_stays_as_it_is() -> None:
    system = System({}, (), {}, (Body("ball", ("A",), particle=True),), (), (), (), (), ())
    assert with_joints(system) == taken_apart(system, ()) == trimmed(system, ()) == system


FRAME = """
[points]
A = [0, 0]
B = ["p", 0]
C = ["2*p", 0]
D = ["p", "p*tan(t)"]
[[member]]
along = ["A", "B", "C", "D", "A"]
[[member]]
along = ["B", "D"]
[[hinge]]
at = "A"
symbol = "R"
[[roller]]
at = "C"
symbol = "N"
[[force]]
at = "D"
magnitude = "P"
direction = 270
"""


def test_a_third_member_at_an_unloaded_joint_carries_nothing() -> None:
    plan = find_plan(system_of(FRAME + '[[find]]\nquantity = "F_BD"\n'), VALUES)
    (step,) = plan.steps
    assert (step.unknown, step.expression, step.equation.bodies) == ("F_BD", ZERO, ("joint-B",))
    assert step.idle


TWO = (
    FRAME.replace('["A", "B", "C", "D", "A"]', '["A", "B", "C", "D", "A"]').replace(
        'C = ["2*p", 0]', 'C = ["2*p", 0]\nE = ["3*p", "p*tan(t)"]'
    )
    + '[[member]]\nalong = ["C", "E", "D"]\n'
)


@pytest.mark.parametrize("asked", ["F_CE", "F_DE"])
def test_two_members_at_an_unloaded_joint_that_are_not_in_line_carry_nothing(asked: str) -> None:
    plan = find_plan(system_of(TWO + f'[[find]]\nquantity = "{asked}"\n'), VALUES)
    (step,) = plan.steps
    assert (step.expression, step.equation.bodies) == (ZERO, ("joint-E",))
    assert step.idle
    assert len(step.equation.terms) == 1


def test_a_truss_that_is_no_truss_is_refused() -> None:
    loose = WARREN.replace('[[member]]\nalong = ["B", "D"]\n', "")
    with pytest.raises(Refusal, match="unstable"):
        find_plan(system_of(loose + '[[find]]\nquantity = "F_AB"\n'), VALUES)
    stiff = FRAME.replace('[[roller]]\nat = "C"\nsymbol = "N"', '[[hinge]]\nat = "C"\nsymbol = "N"')
    with pytest.raises(Refusal, match="indeterminate"):
        find_plan(system_of(stiff + '[[find]]\nquantity = "F_AB"\n'), VALUES)


CHORDS_MEET = """
[given]
p = { name = "panel", from = 3.0, to = 4.0, step = 0.5, unit = "m" }
h = { name = "height of E", from = 2.0, to = 2.4, step = 0.2, unit = "m" }
k = { name = "height of F", from = 2.8, to = 3.4, step = 0.2, unit = "m" }
P = { name = "load", from = 20, to = 40, step = 5, unit = "kN" }
[points]
A = [0, 0]
B = ["p", 0]
C = ["2*p", 0]
D = ["3*p", 0]
E = ["p", "h"]
F = ["2*p", "k"]
[[member]]
along = ["A", "B", "C", "D", "F", "E", "A"]
[[member]]
along = ["B", "E"]
[[member]]
along = ["C", "F"]
[[member]]
along = ["E", "C"]
[[hinge]]
at = "A"
symbol = "R"
[[roller]]
at = "D"
symbol = "N"
[[force]]
at = "C"
direction = 270
magnitude = "P"
[[find]]
quantity = "F_CE"
"""


@pytest.mark.parametrize(("height", "apart"), [('"k"', True), ('"2*h - 1.2 m"', False)])
def test_a_section_takes_torques_where_the_other_two_members_meet(height: str, apart: bool) -> None:
    """The chords meet off the truss; where a measure in metres would lead there it is not taken."""
    text = HEAD + 'by = "sections"\n' + CHORDS_MEET.replace('"k"]', f"{height}]")
    problem, own = worked(text)
    meeting = [point.id for point in problem.plan.system.points.values() if point.meeting]
    found = [step.unknown for step in problem.plan.steps]
    if apart:
        assert found == ["N", "F_CE"]
        assert problem.plan.pivots == ("A", *meeting)
        assert plain(problem.plan.system.points[meeting[0]].links[-1].length).count("√") == 0
    else:
        assert (meeting, found[-1]) == ([], "F_CE")
        assert len(found) > 2
    assert own.residual < 1e-9
