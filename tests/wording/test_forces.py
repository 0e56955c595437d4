"""The forces on a body told one by one, and what of them is worked out first."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.problem import draw_class, prepare, work
from probgen.quantities.unit import US_CUSTOMARY
from probgen.statics.shape import Outline
from probgen.statics.system import Kind
from probgen.wording.block import Display, Picture
from probgen.wording.facts.forces import (
    CoupleNamed,
    ForceNamed,
    ForcesCounted,
    JointForce,
    JointReaction,
    PartCentred,
    SignsOpen,
    Spreading,
    SpreadLoad,
    TurnExpected,
)
from probgen.wording.forces import forces_passage
from probgen.wording.passage import Items, Passage, Sentences
from probgen.working.bodies_used import bodies_used
from probgen.working.convention import Convention
from probgen.working.direction import Way
from probgen.working.fact import Fact
from tests.situations import BRACKET, HEAD, STAYED_SHELF, TWO_BEAMS, worked
from tests.wording.own_telling import told, told_of
from tests.wording.shown import shown
from tests.wording.told_keys import ROOT

RIGHT, UP, LEFT, DOWN = (
    Way(0, False, True), Way(1, True, True), Way(2, True, False), Way(3, False, False)
)  # fmt: skip
UP_AND_BACK = Way(None, True, False)


def passage_of(text: str, place: int = 0) -> Passage:
    _, own = worked(text)
    return forces_passage(own.digits, own.case.system.bodies[place])


def asking(name: str, *forces: str) -> str:
    """A supplied template that asks for the size and direction of forces too."""
    (path,) = ROOT.glob(f"templates/*/{name}.toml")
    finds = (
        f'[[find]]\nquantity = "{force}"\nas = "magnitude and direction"\n' for force in forces
    )
    return path.read_text(encoding="utf-8") + "".join(finds)


def facts_of(passage: Passage) -> list[Fact]:
    parts = [part for part in passage.parts if isinstance(part, Sentences | Items)]
    return [fact for part in parts for fact in part.facts]


def test_each_force_with_its_place_and_way() -> None:
    counted, joint, cable, own_weight, load, *_, signs = facts_of(passage_of(STAYED_SHELF))
    assert counted == ForcesCounted(("shelf",), 4, 0)
    assert isinstance(joint, JointForce)
    assert (joint.element, joint.point) == ("R", "A")
    assert [way for _, way in joint.parts] == [RIGHT, UP]
    told = []
    for each in (cable, own_weight, load):
        assert isinstance(each, ForceNamed)
        told.append((each.element, each.kind, each.point, each.way))
    weights = [("W_s", Kind.WEIGHT, "G", DOWN), ("W_t", Kind.WEIGHT, "B", DOWN)]
    assert told == [("T", Kind.CABLE, "C", UP_AND_BACK), *weights]
    assert isinstance(signs, SignsOpen)
    assert shown(signs.letters) == "R_y"  # the cable can only pull, to the left; R_x pushes back


def test_a_weight_that_is_looked_for_acts_down_all_the_same() -> None:
    """Sand in a bucket, given in pounds: nobody has to guess which way it acts."""
    problem = prepare(
        default_bank().read("table-pulley-sand", US_CUSTOMARY), Convention(units=US_CUSTOMARY)
    )
    (own,) = work(problem, draw_class(problem, "sand", ["1"]).draws)
    (bucket,) = [body for body in own.case.system.bodies if body.id == "bucket"]
    told = facts_of(forces_passage(own.digits, bucket))
    assert [fact.element for fact in told if isinstance(fact, ForceNamed)][-1] == "W_s"
    assert not any(isinstance(fact, SignsOpen) for fact in told)


def test_weights_are_worked_out_where_they_are_first_met() -> None:
    parts = passage_of(STAYED_SHELF).parts
    (display,) = [part for part in parts if isinstance(part, Display)]
    assert [shown(row) for row in display.rows] == [
        "W_s = m g = (4.0 kg)(9.80 m/s²) = 39.2 N",
        "W_t = M g = (8.0 kg)(9.80 m/s²) = 78.4 N",
    ]
    assert parts[-1] == Picture("free-body", "shelf")


def test_a_joint_is_a_force_on_one_body_and_its_reaction_on_the_other() -> None:
    left, right = (facts_of(passage_of(TWO_BEAMS, place)) for place in (0, 1))
    assert left[0] == ForcesCounted(("left",), 2, 1)
    assert right[0] == ForcesCounted(("right",), 3, 0)
    (reaction,) = [fact for fact in right if isinstance(fact, JointReaction)]
    assert (reaction.element, reaction.other, reaction.point) == ("Q'", "left", "C")
    assert [way for _, way in reaction.parts] == [LEFT, DOWN]
    assert [fact.element for fact in left if isinstance(fact, JointForce)] == ["Q", "R"]
    assert not any(isinstance(fact, JointReaction) for fact in left)


def test_a_force_of_unknown_direction_is_told_as_that_of_a_joint_and_its_signs_are_open() -> None:
    """A hand in the place of the hinge."""
    hand = STAYED_SHELF.replace("[[hinge]]", "[[force]]").replace(
        'symbol = "R"\n', 'symbol = "R"\nname = "hand"\n'
    )
    facts, hinged = (facts_of(passage_of(text)) for text in (hand, STAYED_SHELF))
    (held,) = [fact for fact in facts if isinstance(fact, JointForce)]
    assert (held.element, held.point) == ("R", "A")
    assert [way for _, way in held.parts] == [RIGHT, UP]
    told = [fact for fact in hinged if not isinstance(fact, JointForce)]
    assert sorted(map(repr, told)) == sorted(repr(fact) for fact in facts if fact is not held)


def test_couples_are_named_after_the_forces() -> None:
    left = facts_of(passage_of(TWO_BEAMS))
    assert [fact.couple for fact in left if isinstance(fact, CoupleNamed)] == ["M_A"]
    assert isinstance(left[3], CoupleNamed)
    assert shown(left[-2]) == "SignsOpen(Q_y M_A)"


def test_of_forces_that_nothing_asked_needs_no_sense_is_reasoned() -> None:
    """The level parts at two beams' joint and wall, and what the wall bears."""
    assert shown(facts_of(passage_of(TWO_BEAMS))[-1]) == "LeftOpen(Q_x R_x R_y)"
    (said,) = (line for line in told_of("tailgate-gas-struts") if "R_x and R_y are" in line)
    assert said.endswith("R_x and R_y are neither asked for nor needed.")
    assert "opposite way" not in " ".join(told_of("tailgate-gas-struts"))


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("bent-back-toolbox", "All other forces have a component along y, downward, so J_y must"),
        ("head-over-phone", "The other two forces, F and W, both have a component along y,"),
        ("kneecap-squat", "Of the other forces only the two pulls T have a component along x"),
        ("ladder-smooth-wall", "the weight W_L of the ladder, straight down at its middle C"),
        ("forearm-load", "the weight W_f of the forearm, straight down at C"),  # given by a length
    ],
)
def test_forces_are_told_as_they_are_in_every_draw(name: str, said: str) -> None:
    assert any(said in line for line in told_of(name))


@pytest.mark.parametrize(
    ("moment", "rotation"), [("20", "counter-clockwise"), ("-20", "clockwise")]
)
def test_a_known_couple_turns_the_way_its_sign_says(moment: str, rotation: str) -> None:
    """Counter-clockwise is positive."""
    couple = f'[[couple]]\nbody = "left"\nat = "C"\nmoment = "{moment} N*m"\nsymbol = "M_0"\n'
    (own,) = [
        fact
        for fact in facts_of(passage_of(TWO_BEAMS + couple))
        if isinstance(fact, CoupleNamed) and fact.couple == "M_0"
    ]
    assert (own.rotation, own.taken) == (rotation, False)


SPREADS = [
    ('load = "9 N/m"', Spreading.EVEN, ""),
    ('start = 0\nend = "9 N/m"', Spreading.TRIANGLE, "B"),
    ('start = "9 N/m"\nend = 0', Spreading.TRIANGLE, "A"),
    ('start = "4 N/m"\nend = "9 N/m"', Spreading.UNEVEN, ""),
]


@pytest.mark.parametrize(("fields", "spreading", "heavy"), SPREADS)
def test_a_spread_load_is_told_by_how_it_lies(
    fields: str, spreading: Spreading, heavy: str
) -> None:
    row = f'[[distributed]]\nfrom = "A"\nto = "B"\nsymbol = "W_q"\n{fields}\n'
    facts = facts_of(passage_of(STAYED_SHELF + row))
    (told,) = [fact for fact in facts if isinstance(fact, SpreadLoad)]
    assert (told.spreading, told.heavy) == (spreading, heavy)


def test_what_is_asked_is_not_told_beforehand() -> None:
    """A weight that is the question of the problem is left for its own step."""
    asked = BRACKET + '[[find]]\nquantity = "W"\n'
    rows = [part for part in passage_of(asked).parts if isinstance(part, Display)]
    assert rows == []
    assert [part for part in passage_of(BRACKET).parts if isinstance(part, Display)] != []


def test_a_weight_on_two_bodies_is_worked_out_once() -> None:
    as_heavy = 'at = "C"\ndirection = 270\nmagnitude = "W_r"\nsymbol = "V"\n'
    shared = TWO_BEAMS + '[[force]]\nbody = "left"\n' + as_heavy
    left, right = (passage_of(shared, place) for place in (0, 1))
    assert any(isinstance(part, Display) for part in left.parts)
    assert not any(isinstance(part, Display) for part in right.parts)


@pytest.mark.parametrize("nonnegative", [True, False])
def test_the_sign_is_open_of_what_may_be_negative(nonnegative: bool) -> None:
    _, own = worked(BRACKET)
    variables = {
        id: replace(each, nonnegative=nonnegative) for id, each in own.case.system.variables.items()
    }
    system = replace(own.case.system, variables=variables)
    case = replace(own.case, plan=replace(own.case.plan, system=system))
    passage = forces_passage(replace(own.digits, case=case), system.bodies[0])
    reasoned = [fact for fact in facts_of(passage) if isinstance(fact, TurnExpected)]
    assert [shown((fact.letter,)) for fact in reasoned] == ([] if nonnegative else ["T"])


def test_a_triangular_load_is_half_of_its_largest_value_times_its_length() -> None:
    (row,) = (line for line in told_of("porch-roof-snow") if line.startswith("W_s ="))
    assert row == "W_s = w_s L/2 = (2.45 kN/m)(3.9 m)/2 = 4.778 kN"


def test_where_a_part_s_centroid_is_told_where_that_is_not_its_middle() -> None:
    """A rectangle and a round hole have theirs in the middle, half a disc has not."""
    lines = told_of("ferry-board-hole")
    (said,) = (line for line in lines if "centroid" in line)
    assert said == (
        "The centroid P_1 of the half disc is 2 h/(3 π) from its straight side. "
        "W_3 is what the part cut out would weigh; counted upward, it is taken off the whole."
    )
    assert "the weight W_3 that the hole takes away, counted straight up at Q" in lines


def test_parts_are_told_where_no_balance_needs_them() -> None:
    lines = told_of("towel-rail-bent")
    start = lines.index("# Weights of the parts of the rail")
    assert lines[start + 1] == "the upright piece: W_1, its centroid at (0, a/2)"
    assert lines[start + 3] == "the half circle: W_3, its centroid at (b + 2 r/π, r)"
    centroid = "The centroid of the half circle is 2 r/π from the line between its ends."
    assert lines[start + 4] == centroid
    assert lines[start + 5].startswith("W_1 = q a = (")
    assert lines[start + 8] == "# x-coordinate of the centre of mass"


TRIANGLE = """
[[weight]]
triangle = ["A", "B", "C"]
per_area = "90 N/m^2"
symbol = "W_q"
of = "gusset"
"""


def test_a_triangle_has_its_centroid_at_a_third_of_its_height() -> None:
    text = STAYED_SHELF.replace('C = ["d", 0]', 'C = ["d", "0.4 m"]') + TRIANGLE
    told = [fact for fact in facts_of(passage_of(text)) if isinstance(fact, PartCentred)]
    assert [(each.element, each.outline) for each in told] == [("W_q", Outline.TRIANGLE)]


def test_why_a_centre_is_a_mean_is_told_once() -> None:
    lines = told_of("sign-l-plate")
    assert len([line for line in lines if line.startswith("The centre of mass of several")]) == 1


TUGS = (
    HEAD
    + """
[given]
P = { name = "pull", choices = [300.0], unit = "N" }
Q = { name = "other pull", choices = [400.0], unit = "N" }
[body.ring]
particle = true
[[force]]
direction = 0
magnitude = "P"
symbol = "T_1"
[[force]]
direction = 90
magnitude = "Q"
symbol = "T_2"
"""
)


def test_what_a_resultant_is_made_of_is_told_and_drawn_by_components_too() -> None:
    asked = '[[find]]\nresultant = ["T_1", "T_2"]\nsymbol = "F"\nname = "both"\nas = "components"\n'
    _, own = worked(TUGS + asked)
    assert [body.id for body in bodies_used(own.case.plan)] == ["ring"]
    lines = told(TUGS + asked)
    assert lines[lines.index("# Forces on the ring") + 1] == "Two forces act on the ring:"


def test_loads_that_are_no_weights_are_not_called_so() -> None:
    """Where something is worked out from them alone."""
    value = '[[find]]\nvalue = "T_1 + T_2"\nunit = "N"\nsymbol = "S"\nname = "both in a row"\n'
    lines = told(TUGS + value)
    assert "# Forces on the ring" in lines
    assert not any("Weights" in line for line in lines)


def test_what_has_no_lever_arm_is_not_held_about_a_joint() -> None:
    (line,) = (line for line in told(asking("band-brake-hoist", "S_O")) if "farther from" in line)
    assert "F alone balances T_2 about O. It acts farther from O than T_2" in line
    assert "with less than T_1 and T_2" in line


def test_where_two_bodies_lie_on_two_slopes_no_way_is_told_for_both() -> None:
    (axes,) = (line for line in told_of("ridge-two-pallets") if line.startswith("x to the right"))
    assert axes == (
        "x to the right, y up; ∥ along the surface each body is on, ⊥ square to it, as its diagram "
        "shows."
    )


@pytest.mark.parametrize("torque", ["angle", "arm"])
def test_friction_is_drawn_against_the_way_a_body_would_slip(torque: Any) -> None:
    """Where other forces alone do not tell its way; alike at two places it is told once."""
    told = " ".join(told_of("ladder-least-angle", Convention(torque=torque)))
    assert "so f_f must act to the right, as drawn. The ladder would slip straight down" in told
    assert "along the wall, so f_w acts the other way, straight up." in told
    assert [line for line in told_of("sliding-arm-post") if "would slip" in line] == [
        "The arm would slip straight down along the post, so f_A and f_B act the other way, "
        "straight up."
    ]


def test_each_state_has_its_own_way_of_slipping() -> None:
    said = [line for line in told_of("trough-ramp-winch") if "would slip" in line]
    assert [line.split("f_")[-1] for line in said] == [
        "1 acts the other way, up and to the right.",
        "2 acts the other way, down and to the left.",
    ]


def test_friction_between_two_bodies_is_told_of_on_the_first() -> None:
    """That of the floor on the wedge is told of both taken as one, before the wedge alone."""
    said = [line for line in told_of("bench-leg-wedge") if "would slip" in line]
    assert [line.split(" along ")[0] for line in said] == [
        "The leg would slip up and to the left",
        "The wedge would slip to the right",
    ]


def test_what_slides_steadily_does_not_only_threaten_to() -> None:
    text = (ROOT / "templates" / "particles" / "crate-ramp-strap.toml").read_text()
    text = re.sub("^coefficient = .*$", r"\g<0>\nsliding = true", text, flags=re.M)
    (said,) = [line for line in told(text) if "the other way" in line]
    assert said.startswith("The crate slides down and to the left along the ramp, so f acts")


def test_friction_on_a_slope_has_its_way_of_the_only_force_along_it() -> None:
    told = " ".join(told_of("plank-raised-slowly"))
    assert (
        "Of the other forces only W has a component along the surface, down and to the left, so f "
        "must act up and to the right, as drawn."
    ) in told


def test_friction_that_a_balance_gives_may_come_out_negative() -> None:
    """The least coefficient follows from it, and does not tell its way."""
    told = " ".join(told_of("cable-reel-ramp"))
    assert "Which way f acts is not plain yet" in told


def test_a_joint_s_force_that_the_problem_states_is_not_called_unknown() -> None:
    """Its part along y is so many times the weight; of no part along x nothing is to be held."""
    (path,) = ROOT.glob("templates/*/hip-walking-stick.toml")
    text = path.read_text(encoding="utf-8").replace('J = "hip joint"\n', "")
    text = text.replace('[[contact]]\nat = "O"\ndirection = 90', '[[hinge]]\nat = "O"')
    text = text.replace("J = ratio*W", "J.y = ratio*W")
    (said,) = [line for line in told(text) if line.startswith("the force J")]
    assert said == (
        "the force J of the hip joint at O, which we write as its components "
        "J_x (to the right) and J_y (up)"
    )
    (said,) = [line for line in told_of("hip-one-leg") if line.startswith("the force J")]
    assert "unknown in size and direction" in said


def test_what_is_reasoned_of_one_body_is_not_open_on_the_next() -> None:
    """The friction between a box and the one it is pulled from under is told of the upper one."""
    problem = prepare(default_bank().read("box-pulled-from-under"), Convention())
    (own,) = work(problem, draw_class(problem, "signs", ["ada"]).draws)
    upper, lower = (forces_passage(own.digits, body) for body in bodies_used(own.case.plan))
    assert "PartExpected(f_1" in "".join(map(shown, facts_of(upper)))
    assert "f_1" not in "".join(shown(f) for f in facts_of(lower) if not isinstance(f, ForceNamed))


def test_an_even_load_is_told_with_its_value() -> None:
    """The wind's push on a square metre times the sign's width."""
    (told,) = (line for line in told_of("road-sign-wind") if "spread evenly" in line)
    assert "the load per length, p b, times the loaded length" in told
