"""What a key says of forces and lever arms is checked against the numbers of the draw.

Positions come from `numeric_equations.coordinates`, directions from the draw; the telling's own
lever arms are not used.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, Worked, draw_class, prepare, work
from probgen.quantities.expression import Expression, Number, evaluate, names_in
from probgen.quantities.printing import plain
from probgen.statics.equation import Equation
from probgen.statics.numeric_equations import coordinates
from probgen.statics.system import Force, Kind
from probgen.wording.block import Display, Picture
from probgen.wording.facts.balance import (
    CoupleNegative,
    ForceSplit,
    PlaceNegative,
)
from probgen.wording.facts.ending import ArmAmong, PullCompared, QuadrantTold
from probgen.wording.facts.forces import (
    LeverExpected,
    NothingAgainst,
    PartExpected,
    SharesExpected,
    SignsOpen,
    TurnExpected,
)
from probgen.wording.facts.torque import (
    AngleToArm,
    ByCoordinates,
    LeverArm,
    LineBeside,
    Placed,
    Side,
    SquareToArm,
    TurningHeading,
    TurnsBody,
)
from probgen.wording.key import tell
from probgen.wording.passage import Passage
from probgen.working.convention import Convention
from probgen.working.fact import Fact
from tests.situations import HEAD, SHELF
from tests.situations import worked as worked_out
from tests.wording.own_telling import told_of as lines_told

ROOT = Path(__file__).parents[2]
TEMPLATES = {path.stem: path for path in sorted((ROOT / "templates").glob("*/*.toml"))}
FEW, MANY = 10, pytest.param(100, marks=pytest.mark.proof)


@cache
def problem(name: str, torque: str) -> Problem:
    path = TEMPLATES[name]
    template = read_template(path.read_text(encoding="utf-8"), path.name)
    return prepare(template, Convention(torque=torque))  # type: ignore[arg-type]


def told(name: str, torque: str, students: int) -> Iterator[tuple[Worked, tuple[Passage, ...]]]:
    of = problem(name, torque)
    names = [str(each) for each in range(students)]
    for own in work(of, draw_class(of, "true", names).draws):
        yield own, tell(own.digits, of.unused)


def about(passages: tuple[Passage, ...]) -> Iterator[tuple[TurningHeading, Fact]]:
    """Every fact with what its passage turns about what, "" where it turns nothing."""
    for passage in passages:
        heading = passage.heading
        where = heading if isinstance(heading, TurningHeading) else TurningHeading((), "")
        for part in passage.parts:
            if not isinstance(part, Display | Picture):
                yield from ((where, fact) for fact in part.facts)


def geometry(
    own: Worked, pivot: str, acting: Expression | Placed, bodies: tuple[str, ...] = ()
) -> tuple[complex, complex]:
    """Where a force acts, from the pivot (m), and which way (of size 1).

    bodies: those it acts on, for two of one letter; any where there are none.
    """
    case = own.case
    of = bodies or tuple(body.id for body in case.system.bodies)
    letter, point = (acting.force, acting.point) if isinstance(acting, Placed) else (acting, None)
    force = next(
        f
        for f in case.system.forces
        if f.magnitude == letter and f.body in of and f.point == (point or f.point)
    )
    found = coordinates(case.system, case.values)
    places = {id: complex(float(x), float(y)) for id, (x, y) in found.items()}
    way = math.radians(float(evaluate(force.direction, case.values)))
    return places[force.point] - places[pivot], complex(math.cos(way), math.sin(way))


def turning(reach: complex, way: complex) -> float:
    return (reach.conjugate() * way).imag


def test_no_height_is_said_not_to_matter_where_there_is_none() -> None:
    """One foot of a step ladder is level with the other; the middle of its leg is not."""
    ((_, passages),) = told("climbing-triangle", "angle", 1)
    beside = [fact for _, fact in about(passages) if isinstance(fact, LineBeside)]
    assert [fact.plain for fact in beside] == [True, False]


@pytest.mark.one_in(4)
@pytest.mark.parametrize("students", [FEW, MANY])
@pytest.mark.parametrize("name", TEMPLATES)
def test_right_angles_angles_and_distances_are_as_said(name: str, students: int) -> None:
    for own, passages in told(name, "angle", students):
        if own.case.plan.branches:
            continue  # told at other values than the case has
        for where, fact in about(passages):
            match fact:
                case SquareToArm(forces):
                    for letter in forces:
                        reach, way = geometry(own, where.pivot, letter, where.bodies)
                        assert abs(turning(reach, way)) == pytest.approx(abs(reach)), letter
                case LineBeside(forces, _, arm, side, plain):
                    for letter in forces:
                        reach, way = geometry(own, where.pivot, letter, where.bodies)
                        assert plain or abs(turning(reach, way)) < abs(reach) * (1 - 1e-9)
                        if isinstance(arm[-1], Number):
                            size = float(evaluate(arm[-1], {}))
                            assert size == pytest.approx(abs(turning(reach, way)), rel=1e-3)
                        check_side(side, reach, way)
                case AngleToArm(forces, angle) if isinstance(angle[-1], Number):
                    for letter in forces:
                        reach, way = geometry(own, where.pivot, letter, where.bodies)
                        between = abs(math.degrees(np.angle(way / reach)))
                        assert float(evaluate(angle[-1], {})) == pytest.approx(between, rel=1e-3)


def check_side(side: Side, reach: complex, way: complex) -> None:
    match side:
        case Side.RIGHT | Side.LEFT:
            assert abs(way.real) < 1e-9
            assert (reach.real > 0) == (side == Side.RIGHT)
        case Side.ABOVE | Side.BELOW:
            assert abs(way.imag) < 1e-9
            assert (reach.imag > 0) == (side == Side.ABOVE)
        case Side.OBLIQUE:
            assert abs(way.real) > 1e-9
            assert abs(way.imag) > 1e-9


@pytest.mark.one_in(2)
@pytest.mark.parametrize("name", TEMPLATES)
def test_a_lever_arm_is_not_told_before_it_is_found(name: str) -> None:
    """What a passage works out of data and earlier results stands there with a value, else not."""
    own, passages = next(told(name, "arm", 1))
    plan = own.case.plan
    torques = [step for step in plan.steps if step.equation.kind == "torque" and not step.partners]
    sought = [step.unknown for step in torques if _in_arm(step.equation, step.unknown)]
    asked = [fact for _, fact in about(passages) if isinstance(fact, LeverArm) and fact.sought]
    assert len(asked) >= len(sought)
    for fact in asked:
        assert len(fact.arm) == 1  # letters only


def _in_arm(equation: Equation, unknown: str) -> bool:
    lengths = (term.length for term in equation.terms if term.length is not None)
    return any(unknown in names_in(length) for length in lengths)


@pytest.mark.one_in(2)
@pytest.mark.parametrize("students", [FEW, MANY])
@pytest.mark.parametrize("name", TEMPLATES)
def test_a_pull_is_compared_with_weights_as_their_lever_arms_say(name: str, students: int) -> None:
    for own, passages in told(name, "angle", students):
        pivots = [where.pivot for where, _ in about(passages) if where.pivot]
        for _, fact in about(passages):
            if isinstance(fact, PullCompared):
                assert pivots
                check_sense(own, pivots[0], fact)


def check_sense(own: Worked, pivot: str, fact: PullCompared) -> None:
    arm = abs(turning(*geometry(own, pivot, fact.pull)))
    pull = next(f for f in own.case.system.forces if f.magnitude == fact.pull)
    weights = [f for f in own.case.system.forces if is_weight(f) and f.body == pull.body]
    arms = [abs(turning(*geometry(own, pivot, weight.magnitude))) for weight in weights]
    share = float(fact.share.value)
    match fact.arm:
        case ArmAmong.SHORTER:
            assert arm < min(arms)
            assert share >= 1.0
        case ArmAmong.LONGER:
            assert arm > max(arms)
            assert share <= 1.0
        case ArmAmong.EQUAL:
            assert [arm] == pytest.approx(arms)


def is_weight(force: Force) -> bool:
    return force.kind is Kind.WEIGHT


@pytest.mark.one_in(4)
@pytest.mark.parametrize("students", [FEW, MANY])
@pytest.mark.parametrize("name", TEMPLATES)
def test_forces_act_the_way_that_was_reasoned_before_solving(name: str, students: int) -> None:
    for own, passages in told(name, "angle", students):
        if own.case.plan.branches:
            continue
        for _, fact in about(passages):
            match fact:
                case PartExpected(force, drawn=drawn) | LeverExpected(force, drawn=drawn):
                    value = float(evaluate(force, own.complete))
                    assert value * (1 if drawn else -1) > 0.0
                case NothingAgainst(force):
                    assert abs(float(evaluate(force, own.complete))) < 1e-9
                case TurnExpected(letter, drawn=drawn):
                    value = float(evaluate(letter, own.complete))
                    assert value * (1 if drawn else -1) > 0.0
                    check_turned(own, fact)
                case SharesExpected(forces, drawn=drawn):
                    values = [float(evaluate(force, own.complete)) for force in forces]
                    assert all(value * (1 if drawn else -1) > 0.0 for value in values)


PUSHED_UP = (
    SHELF
    + """
[[fixed]]
at = "A"
symbol = "R"
couple = "C_A"
[[force]]
at = "B"
magnitude = "300 N"
direction = 90
symbol = "P"
[[find]]
quantity = "C_A"
"""
)
HANGING_OUT = TEMPLATES["stand-roof-inside"].read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("text", "rotation"),
    [
        pytest.param(PUSHED_UP, "clockwise", id="a wall holds a shelf down"),
        pytest.param(HANGING_OUT, "counter-clockwise", id="the rest of a roof holds its end up"),
    ],
)
def test_a_negative_couple_acts_the_way_that_is_said(text: str, rotation: str) -> None:
    own = prepare(read_template(text, "own.toml"), Convention())
    (worked,) = work(own, draw_class(own, "true", ["one"]).draws)
    facts = [fact for _, fact in about(tell(worked.digits, own.unused))]
    assert [each.rotation for each in facts if isinstance(each, CoupleNegative)] == [rotation]


SEESAW = (
    HEAD.replace("Trial.", "Where does {{ W_3 }} sit?")
    + """
[given]
W_1 = { name = "first weight", choices = [200], unit = "N" }
W_3 = { name = "other weight", choices = [250], unit = "N" }
[unknown]
x = { name = "place", unit = "m", from = -2, to = 2 }
[points]
A = ["-2 m", 0]
B = ["2 m", 0]
C = ["1 m", 0]
O = [0, 0]
X = ["x", 0]
[body.board]
along = ["A", "B"]
[[fulcrum]]
at = "O"
symbol = "N"
[[weight]]
at = "C"
force = "W_1"
[[weight]]
at = "X"
force = "W_3"
[[find]]
quantity = "x"
"""
)


def test_a_place_left_of_the_origin_is_told_as_it_was_taken_and_then_where_it_lies() -> None:
    own, worked = worked_out(SEESAW)
    assert worked.complete["x"] == pytest.approx(-0.8)  # 200 N (1 m)/(250 N) on the other side
    facts = [fact for _, fact in about(tell(worked.digits, own.unused))]
    (turned,) = (fact for fact in facts if isinstance(fact, TurnsBody))  # all one way, as written
    assert {each if isinstance(each, Placed) else plain(each) for each in turned.forces} == {
        "W_1",
        "W_3",
    }
    (found,) = (fact for fact in facts if isinstance(fact, PlaceNegative))
    assert (plain(found.distance), found.way.right) == ("x", False)


def check_turned(own: Worked, fact: TurnExpected) -> None:
    """Whether the other forces turn the body the way that is said."""
    for letter in fact.others:
        sense = 1 if turning(*geometry(own, fact.pivot, letter)) > 0.0 else -1
        assert sense == (1 if fact.rotation == "counter-clockwise" else -1)


def test_what_alone_holds_weights_about_a_pivot_is_reasoned() -> None:
    """A couple of a wall, and the upper hinge of a gate: nobody leaves them open."""
    told_of = {}
    for name in ("balcony-built-in", "gate-two-hinges"):
        ((_, passages),) = told(name, "angle", 1)
        facts = [fact for _, fact in about(passages)]
        told_of[name] = [plain(f.letter) for f in facts if isinstance(f, TurnExpected)]
        assert not any(isinstance(fact, SignsOpen) for fact in facts)
    assert told_of == {"balcony-built-in": ["M_A"], "gate-two-hinges": ["R_2x"]}


@pytest.mark.one_in(2)
@pytest.mark.parametrize("students", [FEW, MANY])
@pytest.mark.parametrize("name", TEMPLATES)
def test_angles_of_forces_and_quadrants_are_those_of_the_draw(name: str, students: int) -> None:
    for own, passages in told(name, "angle", students):
        if own.case.plan.branches:
            continue
        values = own.case.values
        for _, fact in about(passages):
            if isinstance(fact, ForceSplit):
                check_split(own, fact)
            elif isinstance(fact, QuadrantTold):
                x, y = float(evaluate(fact.x, values)), float(evaluate(fact.y, values))
                assert (fact.direction.way.right, fact.direction.way.up) == (x > 0, y > 0)
                steep = math.degrees(math.atan(abs(y / x)))
                assert float(fact.steep.value) == pytest.approx(steep, abs=0.051)


def check_split(own: Worked, fact: ForceSplit) -> None:
    values = own.case.values
    forces = [f for f in own.case.system.forces if f.magnitude == fact.force]
    angle = float(evaluate(fact.angle[-1], {}))  # type: ignore[arg-type]
    steep = 90.0 - angle if fact.upright else angle
    turned = steep if fact.way.right else 180.0 - steep
    turned = turned if fact.way.up else -turned
    told = [(turned - float(evaluate(f.direction, values)) + 180.0) % 360.0 - 180.0 for f in forces]
    assert min(map(abs, told)) < 0.01
    for axis, (part,) in fact.parts:
        size = float(evaluate(fact.force, values))
        trig = math.cos if axis == "x" else math.sin
        found = float(evaluate(part, values))  # type: ignore[arg-type]
        assert found == pytest.approx(size * trig(math.radians(turned)), rel=1e-3)


@pytest.mark.one_in(2)
@pytest.mark.parametrize("name", TEMPLATES)
def test_coordinates_are_written_with_one_sign(name: str) -> None:
    """−(h − c) where that is below the pivot, never c − h, and no minus before a minus."""
    for own, passages in told(name, "components", 3):
        if own.case.plan.branches:
            continue  # told at other values than the case has
        for _, fact in about(passages):
            if isinstance(fact, ByCoordinates):
                for coordinate in fact.at:
                    written = plain(coordinate)
                    inner = written.removeprefix("−")
                    assert not inner.startswith(("−", "(−"))
                    value = float(evaluate(coordinate, own.case.values))
                    assert (value < 0.0) == (inner != written)
                assert "−(−" not in plain(fact.torque)


def test_no_coordinate_is_told_that_neither_turns_nor_stands_anywhere() -> None:
    """How high a cabinet's weight acts is printed nowhere, and does not matter."""
    lines = lines_told("cabinet-slide-or-tip", Convention(torque="components"))
    placed = [line for line in lines if " only, with " in line]
    assert len(placed) == 2
    assert [line for line in placed if re.search(r"\d m\b", line)] == []


def test_a_formula_from_data_alone_has_its_reason() -> None:
    lines = lines_told("bookcase-centre-tilt")
    for heading, reason in (
        ("# y-coordinate of the centre of mass", "The centre of mass of several parts is"),
        ("# Tilt from upright at which it begins to fall over", "It begins to fall when its"),
    ):
        assert lines[lines.index(heading) + 1].startswith(reason)
