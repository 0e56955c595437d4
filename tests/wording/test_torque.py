"""Which forces turn a body which way, beside torques worked out from coordinates."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any, Literal

import numpy as np
import pytest

from probgen.quantities.expression import evaluate
from probgen.quantities.printing import plain
from probgen.statics.numeric_equations import coordinates
from probgen.statics.step import Step
from probgen.statics.truss import without_idle
from probgen.wording.block import Section
from probgen.wording.sentence import plain_text
from probgen.wording.torque import turning_passage
from probgen.working.case import Case
from probgen.working.convention import Convention
from tests.beam_states import TWO_STATES
from tests.situations import (
    BRACKET,
    FIND_T,
    HEAD,
    HINGED,
    SHELF,
    STAYED,
    STAYED_SHELF,
    THREE_CABLES,
    THREE_HINGES,
    TWO_BEAMS,
    worked,
)
from tests.wording.own_telling import told as told_lines
from tests.wording.own_telling import told_of
from tests.wording.shown import lines
from tests.wording.told_keys import (
    SENSES,
    USUAL,
    cases,
    keys,
    runs,
    sentences,
    turns,
    works,
)

SENSE = re.compile(
    r"(?:As drawn, )?(?P<names>\S+(?:, \S+)*(?: and \S+)?) turns? the .+? "
    r"(?P<word>counter-clockwise|clockwise) \((?P<sign>positive|negative)\)\."
)


def turns_told(section: Section) -> dict[str, tuple[str, str]]:
    """For each force or couple named: which way, and with which sign, it is said to turn."""
    told: dict[str, tuple[str, str]] = {}
    for run in runs(section):
        for found in SENSE.finditer(plain_text(run)):
            for symbol in re.split(r", | and ", found["names"]):
                assert symbol not in told
                told[symbol] = (found["word"], found["sign"])
    return told


def turns_computed(case: Case, bodies: tuple[str, ...], pivot: str) -> dict[str, float]:
    """Torque per newton, or couple per newton metre, about a point, by its printed letter."""
    system, values = without_idle(case.system, case.plan.steps), case.values
    places = coordinates(system, values)
    reach = max(float(np.hypot(*place)) for place in places.values()) or 1.0
    inner = {force.id for force in system.forces if force.body in bodies}
    computed = {}
    for force in system.forces:
        if force.body in bodies and force.pair not in inner:
            x, y = (p - o for p, o in zip(places[force.point], places[pivot], strict=True))
            angle = np.radians(float(evaluate(force.direction, values)))
            turn = float(x * np.sin(angle) - y * np.cos(angle)) / reach
            computed[plain((force.magnitude,))] = turn if abs(turn) > 1e-9 else 0.0
    for couple in system.couples:
        if couple.body in bodies:
            _, sign, letter = plain((couple.moment,)).rpartition("−")
            computed[letter] = -1.0 if sign else 1.0
    return computed


def balanced(case: Case) -> list[Step]:
    """The steps from a balance of torques, which is the only one where several are solved."""
    steps = case.plan.steps
    partners = {each.unknown for step in steps for each in step.partners}
    return [
        step
        for step in steps
        if step.unknown not in partners
        and [each for each in step.equations if each.kind == "torque"] == [step.equation]
    ]


@pytest.mark.parametrize(("name", "positive"), SENSES)
def test_the_senses_told_are_those_of_the_torques(name: str, positive: Any) -> None:
    convention = replace(USUAL, positive=positive)
    for sections, own in zip(keys(name, convention), works(name, convention), strict=True):
        balances = [(case, step.equation) for case in cases(own) for step in balanced(case)]
        told = [section for section in sections if section.title.startswith("Which forces turn")]
        assert len(told) == len(balances)
        for section, (case, balance) in zip(told, balances, strict=True):
            computed = turns_computed(case, balance.bodies, balance.about)
            words = {1.0: "counter-clockwise", -1.0: "clockwise"}
            nought = {symbol for symbol in computed if case.values.get(symbol) == 0}
            turning = {symbol: turn for symbol, turn in computed.items() if symbol not in nought}
            expected = {symbol: words[np.sign(turn)] for symbol, turn in turning.items() if turn}
            found = turns_told(section)
            assert {symbol: word for symbol, (word, _) in found.items()} == expected
            for word, sign in found.values():
                assert (sign == "positive") == (word == positive)


@pytest.mark.one_in(4)
@pytest.mark.parametrize(("name", "positive"), SENSES)
def test_the_positive_sense_is_told_before_torques_are_taken(name: str, positive: Any) -> None:
    convention = replace(USUAL, positive=positive)
    for sections, own in zip(keys(name, convention), works(name, convention), strict=True):
        told = f"{positive} torques are positive" in sentences(sections[:1])
        assert told == turns(own)


# -- the facts of turning ----------------------------------------------------------------------

HINGE_AT_A = [
    "TurningHeading(shelf, A)",
    "PivotHeld(A, torque, hinge, R, shelf)",
    "TurnsNothing(R_x R_y, , R_x R_y)",
]
TURNED_BOTH_WAYS = [
    "TurnsBody(W_s W_t, shelf, clockwise, False)",
    "TurnsBody(T, shelf, counter-clockwise, True)",
]
SQUARE = "SquareToArm(W_s W_t, A G A B, sin 90° = 1)"
ARM, COMPONENTS = Convention(torque="arm"), Convention(torque="components")


def turning(text: str, convention: Convention = USUAL) -> list[list[str]]:
    """What is said before each balance of torques of a working."""
    _, own = worked(text, convention)
    steps = [step for step in own.case.plan.steps if step.equation.kind == "torque"]
    return [lines(turning_passage(own.digits, step)) for step in steps]


def pulled(direction: str, kind: str = "cable") -> str:
    """The shelf with its cable in another direction."""
    held = STAYED.replace('"180 - theta"', direction).replace("cable", kind)
    return SHELF + HINGED + held + FIND_T


ANGLES = [
    # Angle between force and arm, 140° for a pull up and back at 40° to the shelf.
    ('"180 - theta"', "AngleToArm(T, A C, 180° − θ = 180° − 40° = 140°, sin 140° = sin 40°)"),
    ('"theta"', "AngleToArm(T, A C, θ = 40°, -)"),
    ("140", "AngleToArm(T, A C, 140°, sin 140° = sin 40°)"),
    ("120.5", "AngleToArm(T, A C, 120.5°, sin 120.5° = sin 59.5°)"),
]


@pytest.mark.parametrize(("direction", "said"), ANGLES)
def test_the_angle_between_a_force_and_its_arm(direction: str, said: str) -> None:
    assert turning(pulled(direction)) == [[*HINGE_AT_A, *TURNED_BOTH_WAYS, SQUARE, said]]


def test_an_angle_below_the_arm_is_folded() -> None:
    """A force at -40° makes an angle of 40° with its arm, and turns the shelf clockwise."""
    (said,) = turning(pulled('"-theta"', "force"))
    turned = "TurnsBody(W_s W_t T, shelf, clockwise, False, True)"
    assert said == [*HINGE_AT_A, turned, SQUARE, "AngleToArm(T, A C, θ = 40°, -)"]


def test_an_arm_to_the_left() -> None:
    """Held at B, loaded at A: up and back at 140° is 40° from the arm, which points to 180°."""
    text = pulled('"180 - theta"').replace('at = "A"', 'at = "E"')
    text = text.replace('at = "B"', 'at = "A"').replace('at = "E"', 'at = "B"')
    assert turning(text) == [[
        "TurningHeading(shelf, B)",
        "PivotHeld(B, torque, hinge, R, shelf)",
        "TurnsNothing(R_x R_y, , R_x R_y)",
        "TurnsBody(T, shelf, clockwise, False)",
        "TurnsBody(W_s W_t, shelf, counter-clockwise, True)",
        "SquareToArm(W_s W_t, B G B A, sin 90° = 1)",
        "AngleToArm(T, B C, 40°, -)",
    ]]  # fmt: skip


def test_all_square() -> None:
    turned = ["TurnsBody(W_s W_t, shelf, clockwise, False)", TURNED_BOTH_WAYS[1]]
    square = "SquareToArm(T W_s W_t, A C A G A B, sin 90° = 1)"
    assert turning(pulled("90")) == [[*HINGE_AT_A, *turned, square]]


def test_lever_arms() -> None:
    """0.96 m sin 40° = 0.6171 m."""
    (said,) = turning(STAYED_SHELF, ARM)
    assert said[-3:] == [
        "LeverArm(T, d sin θ = (0.96 m) sin 40° = 0.6171 m, A C, 180° − θ = 180° − 40° = 140°, "
        "sin 140° = sin 40°)",
        "LeverArm(W_s, L/2 = 0.600 m)",
        "LeverArm(W_t, L = 1.20 m)",
    ]


def test_by_coordinates() -> None:
    """x F_y - y F_x of each force, worked by hand."""
    (said,) = turning(STAYED_SHELF, COMPONENTS)
    assert said == [
        *HINGE_AT_A,
        *TURNED_BOTH_WAYS,
        "CoordinatesFrom(x y, A, torque, True)",
        "ByCoordinates(T, T_x T_y, d 0, −T cos θ T sin θ, d T sin θ, True, x y)",
        "ByCoordinates(W_s, W_sx W_sy, L/2 0, 0 −W_s, −(L/2) W_s, True, x y)",
        "ByCoordinates(W_t, W_tx W_ty, L 0, 0 −W_t, −L W_t, True, x y)",
    ]


def test_the_positive_sense_and_the_word_are_the_course_s() -> None:
    (said,) = turning(STAYED_SHELF, Convention(positive="clockwise", turning="moment"))
    assert said[1] == "PivotHeld(A, moment, hinge, R, shelf)"
    assert said[3:5] == [
        "TurnsBody(W_s W_t, shelf, clockwise, True)",
        "TurnsBody(T, shelf, counter-clockwise, False)",
    ]


def test_coordinates_have_letters_of_their_own_where_the_problem_calls_something_x() -> None:
    lines = "\n".join(told_of("reaction-board", COMPONENTS))
    assert "With (r_x, r_y) counted from A, the torque of a force is r_x times" in lines
    assert "with r_x = x − a and" in lines


def test_two_products_of_coordinates_become_the_term_of_the_balance() -> None:
    """The abductors' line is square to a: a F (sin² α + cos² α)."""
    (said,) = [line for line in told_of("hip-one-leg", COMPONENTS) if "F acts at" in line]
    assert said.endswith("= (a sin α) F sin α + (a cos α) F cos α = a F.")


def test_a_force_reached_by_two_legs() -> None:
    """L sin 30° = 1.00 m and h sin 60° = 0.433 m."""
    said = {torque: turning(BRACKET, Convention(torque=torque))[0][5:] for torque in FORMS}
    assert said == {
        "angle": ["ArmOfLegs(T, L h, torque)", "SquareToArm(W, A K, sin 90° = 1)"],
        "arm": [
            "LegsAcross(T, L h, L sin 30° h sin 60°, -, "
            "L sin 30° + h sin 60° = (2.00 m) sin 30° + (0.50 m) sin 60° "
            "= 1.00 m + 0.4330 m = 1.433 m)",
            "LeverArm(W, L = 2.00 m)",
        ],
        "components": [
            "CoordinatesFrom(x y, A, torque, True)",
            "ByCoordinates(T, T_x T_y, L h, −T cos 30° T sin 30°, L T sin 30° + h T cos 30°, "
            "True, x y)",
            "ByCoordinates(W, W_x W_y, L 0, 0 −W, −L W, True, x y)",
        ],
    }


FORMS: tuple[Literal["angle", "arm", "components"], ...] = ("angle", "arm", "components")


def test_a_pivot_is_told_by_what_holds_the_body_itself_there() -> None:
    assert [held for _, held, *_ in turning(TWO_STATES)] == [
        "PivotHeld(A, torque, hinge, R, first)",
        "PivotHeld(A, torque, built-in, S, second)",
    ]


def test_what_touches_and_what_is_built_in() -> None:
    assert turning(TWO_BEAMS) == [
        [
            "TurningHeading(right, B)",
            "PivotHeld(B, torque, pushed, N, right)",
            "TurnsNothing(N, , N)",
            "TurnsNothing(Q_x, B, Q_x)",
            "TurnsBody(Q_y W_r, right, counter-clockwise, True, True)",
            "SquareToArm(Q_y W_r, B C B G, sin 90° = 1)",
        ],
        [
            "TurningHeading(left, A)",
            "PivotHeld(A, torque, built-in, R, left)",
            "TurnsNothing(R_x R_y, , R_x R_y)",
            "TurnsNothing(Q_x, A, Q_x)",
            "TurnsBody(Q_y M_A, left, counter-clockwise, True, True)",
            "CoupleAnywhere(M_A, torque)",
            "SquareToArm(Q_y, A C, sin 90° = 1)",
        ],
    ]


def test_where_lines_of_action_meet() -> None:
    """Three cables: about the point where two of their lines meet."""
    (said,) = turning(THREE_CABLES)
    assert said[1].startswith("PivotMeeting(S")
    assert said[1].endswith(", torque, T_2 T_3)")
    assert said[2] == "TurnsNothing(T_2 T_3, S_2, T_2 T_3)"


def test_one_line_through_a_pivot_of_the_author_s_meets_no_other() -> None:
    """A shelf on rough ground, pulled from above it: torques about its empty end."""
    ground = """
[[rough]]
at = "X"
normal = "N"
friction = "f"
friction_direction = 180
[[force]]
at = "D"
direction = 0
magnitude = "20 N"
symbol = "H"
[unknown]
x = { name = "distance to the ground", unit = "m", from = 0, to = 1.2 }
[[find]]
quantity = "x"
"""
    text = 'pivot = "A"\n' + SHELF.replace(
        'C = ["d", 0]', 'C = ["d", 0]\nX = ["x", 0]\nD = ["L", "0.2 m"]'
    )
    (said,) = turning(text + ground)
    assert said[1] == "PivotBare(A, torque)"
    assert said[2].startswith("TurnsNothing(")


def test_a_known_force_at_the_pivot_leaves_with_no_unknown() -> None:
    """A lamp of 8.0 kg below the hinge: nothing unknown goes with it."""
    lamp = SHELF.replace('at = "B"\nmass', 'at = "A"\nmass')
    (said,) = turning(lamp + HINGED + STAYED + FIND_T)
    assert said[2] == "TurnsNothing(R_x R_y W_t, , R_x R_y)"
    told = " ".join(told_lines(lamp + HINGED + STAYED + FIND_T))
    assert "turn nothing, and the unknowns R_x and R_y leave the equation." in told


def test_what_was_found_before_is_no_unknown_at_the_pivot() -> None:
    """Both forces of the floor follow from four equations before torques are taken."""
    (said,) = [line for line in told_of("ladder-least-angle") if "We take torques" in line]
    assert said.endswith("so their lever arms are zero: they turn nothing.")


def test_what_is_not_known_in_a_lever_arm_is_named_once() -> None:
    """Not the arm is looked for but the angle in it."""
    arms = [line for line in told_of("ladder-least-angle", ARM) if "Lever arm" in line]
    assert arms == [
        "Lever arm of N_w: ℓ sin θ, with θ still to be found.",
        "Lever arm of f_w: ℓ cos θ.",
        "Lever arm of W_L: (ℓ/2) cos θ.",
    ]


def test_bodies_taken_as_one() -> None:
    """Two legs of a step ladder on smooth hinges: about a foot both together."""
    heavy = '[[weight]]\nbody = "left"\nmass = "m"\nuniform = true\nsymbol = "W_l"\n'
    taken = [
        said for said in turning(THREE_HINGES + heavy) if "TurningHeading(left right" in said[0]
    ]
    assert taken
    assert not any("Q" in line for said in taken for line in said)


def test_of_a_force_with_two_legs_the_greater_torque_tells_the_sense() -> None:
    """At (2.00, 0.50) m along 30°: 2.00 sin 30° - 0.50 cos 30° = +0.567 m."""
    (said,) = turning(BRACKET.replace("direction = 150", "direction = 30"))
    assert "TurnsBody(T, bracket, counter-clockwise, True)" in said
    assert "TurnsBody(W, bracket, clockwise, False)" in said


BALANCED = (
    HEAD
    + """
[given]
L = { name = "length", choices = [6.0], unit = "m" }
m = { name = "mass", choices = [30], unit = "kg" }
[unknown]
x = { name = "distance", unit = "m", from = 0, to = 6 }
[points]
A = [0, 0]
B = ["L", 0]
X = ["x", 0]
[body.board]
along = ["A", "B"]
[[fulcrum]]
at = "X"
symbol = "N"
[[weight]]
mass = "m"
uniform = true
[[find]]
quantity = "x"
"""
)


def test_the_line_of_the_only_force_beside_the_pivot_s_passes_through_it() -> None:
    """The board balances on its middle, where its weight turns nothing."""
    (said,) = turning(BALANCED)
    assert said[-1] == "PassesThrough(W_b, board, X)"
    assert not any(line.startswith("TurnsBody") for line in said)
