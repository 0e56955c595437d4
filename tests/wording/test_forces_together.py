"""The forces on bodies taken as one, and what is left to tell of each of them."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.problem import draw_class, prepare, work
from probgen.quantities.expression import Name
from probgen.quantities.printing import plain
from probgen.wording.block import Display, Picture
from probgen.wording.facts.forces import ForceNamed, JointForce, JointReaction, SignsOpen
from probgen.wording.forces import forces_passage
from probgen.wording.passage import Items, Passage, Sentences
from probgen.working.bodies_used import as_told, bodies_used
from probgen.working.convention import Convention
from probgen.working.fact import Fact
from tests.held_by_ropes import OVER_A_PULLEY, STANDING
from tests.wording.own_telling import told, told_of
from tests.wording.shown import shown
from tests.wording.told_keys import TEMPLATES


def facts_of(passage: Passage) -> list[Fact]:
    parts = [part for part in passage.parts if isinstance(part, Sentences | Items)]
    return [fact for part in parts for fact in part.facts]


def passages_of(name: str) -> list[Passage]:
    """The forces on each body that the key of a template tells, in its order."""
    problem = prepare(default_bank().read(name), Convention())
    (own,) = work(problem, draw_class(problem, "signs", ["ada"]).draws)
    told = replace(own.digits, case=replace(own.case, plan=as_told(own.case.plan)))
    return [forces_passage(told, body) for body in bodies_used(own.case.plan)]


def test_bodies_taken_as_one_have_the_forces_from_outside_alone() -> None:
    """What is between them is named as it cancels; a joint's force by one letter at its pin."""
    whole, right, left = passages_of("stepladder-tie")
    assert [shown(fact) for fact in facts_of(whole)[:2]] == [
        "TakenAsOne(left right, R O T )",
        "ForcesCounted(left right, 4, 0)",
    ]
    letters = [f.letter for f in facts_of(whole) if isinstance(f, ForceNamed)]
    assert [str(plain((each,))) for each in letters] == ["N_1", "N_2", "W_s", "W_d"]
    assert whole.parts[-1] == Picture("free-body", "left+right")
    weights = [[part for part in each.parts if isinstance(part, Display)] for each in (right, left)]
    assert weights == [[], []]  # they are worked out with the whole


def test_a_force_is_told_in_full_once_and_its_sense_reasoned_once() -> None:
    """About B the left pin's push up follows for the whole shed; of a half only the ridge's pin is
    new, whose other half is never drawn.
    """
    whole, left = map(facts_of, passages_of("shed-three-hinges"))
    joints = [f for f in (*whole, *left) if isinstance(f, JointForce)]
    assert [(f.element, f.again) for f in joints] == [
        ("R", False), ("S", False), ("R", True), ("Q", False),
    ]  # fmt: skip
    assert [shown(f) for f in whole[-2:]] == ["SignsOpen(R_x)", "LeftOpen(S_x S_y)"]
    assert sum("TurnExpected(R_y, left right" in shown(f) for f in (*whole, *left)) == 1
    assert [shown(f) for f in left if isinstance(f, SignsOpen)] == ["SignsOpen(Q_x Q_y)"]


def test_a_joint_s_force_is_a_reaction_where_the_other_is_told_before_or_asked() -> None:
    """Of the climbing triangle's left ladder no diagram is drawn."""
    _, right = map(facts_of, passages_of("climbing-triangle"))
    (joint,) = [fact for fact in right if isinstance(fact, JointForce)]
    assert (str(joint.letter), joint.again) == (str(Name("Q", "Q")), False)
    _, right, left = map(facts_of, passages_of("stepladder-tie"))
    assert [fact.other for fact in right if isinstance(fact, JointReaction)] == ["left"]
    assert [fact.again for fact in left if isinstance(fact, JointForce)] == [True]


def test_pulls_of_one_rope_on_a_whole_are_told_by_the_bodies() -> None:
    whole, worker = map(facts_of, passages_of("painter-board-seat"))
    assert [f.on for f in whole if isinstance(f, ForceNamed)] == ["worker", "board", "", "", ""]
    assert not any(f.on for f in worker if isinstance(f, ForceNamed))
    assert "the pull T of the rope on the board, straight up" in told_of("painter-board-seat")


def test_the_forces_are_told_where_a_balance_first_needs_them() -> None:
    headings = [line for line in told_of("stepladder-tie") if line.startswith("# ")]
    assert headings[1:10] == [
        "# Forces on the whole ladder",
        "# Which forces turn the whole ladder about A?",
        "# Torque balance",
        "# Forces on the right side",
        "# Force balance on the right side",
        "# Which forces turn the right side about O?",
        "# Torque balance",
        "# Forces on the left side",
        "# Force balance on the left side",
    ]


LIMITED = """[[force]]
body = "left"
at = "D"
direction = 270
symbol = "P"
[[limit]]
id = "snaps"
that = "T <= 150 N"
name = "the strap snaps"
[[limit]]
id = "sinks"
that = "N_1 <= 500 N"
name = "the foot sinks in"
[[find]]
quantity = "P"
as = "largest"
"""


def test_up_to_several_limits_the_forces_are_told_once_before_them() -> None:
    """The push on the ladder's step at which its strap snaps, or a foot sinks in."""
    text = TEMPLATES["stepladder-tie"].read_text(encoding="utf-8")
    person = text.index('[[weight]]\nbody = "left"\nat = "D"')
    text = text[:person] + LIMITED
    text = re.sub("person_mass = .*\n", "", text)
    text = re.sub('statement = """.*?"""', 'statement = "Own."', text, flags=re.S)
    headings = [line for line in told(text) if line.startswith("# ")]
    forces = [place for place, line in enumerate(headings) if line.startswith("# Forces on ")]
    assert [headings[place] for place in forces] == [
        "# Forces on the right side",
        "# Forces on the whole ladder",
    ]
    assert forces == [1, 2]


def test_what_acts_on_a_particle_that_turns_with_a_body_has_its_place() -> None:
    lines = told(STANDING)
    start = lines.index("# Forces on the plank and the person together")
    assert "the pull T of the rope at B, straight up" in lines[start:]
    assert lines[start + 1 :].index("the pull T of the rope at C, straight up") < 6
    assert "the pull T of the rope, straight up" in lines  # on the person alone


def test_a_plank_is_held_by_who_stands_on_it() -> None:
    """By hand: 300 N of 1800 N m/(6 m), 400 N of it, and 300 N in the cable as well."""
    lines = told(STANDING)
    assert {"= 300 N", "= 400 N"} <= set(lines)
    assert not any("wo equations together" in line for line in lines)


def test_a_joint_named_after_the_other_body_is_none_on_that_body() -> None:
    """The pin's force comes from the post, and on the post from the beam; the pin is neither."""
    text = OVER_A_PULLEY.replace('symbol = "F"', 'symbol = "F"\nname = "pulley"')
    lines = told('pivot = "B"\n' + text + '[[find]]\nquantity = "C_A"\n')
    assert any(line.startswith("the reaction of the beam at B, equal and opp") for line in lines)
    assert not any("of the pulley at B, equal" in line for line in lines)
    assert any("torques about the hinge B" in line for line in lines)


def test_a_rope_that_pulls_elsewhere_too_is_said_to_have_one_tension() -> None:
    """On the second body, and of bodies taken as one on both; nothing is said of a rope that pulls
    on one body only, though it be twice.
    """
    said = "The cord is light and runs freely, so the tension T is the same all along."
    lines = told_of("table-pulley-sand")
    assert lines.count(said) == 1
    assert lines.index("# Forces on the bucket") < lines.index(said)
    painter = told_of("painter-board-seat")
    (place,) = (n for n, line in enumerate(painter) if line.endswith("T is the same all along."))
    assert place < painter.index("# Forces on the worker")
    assert not any("all along" in line for line in told_of("kneecap-squat"))


@pytest.mark.parametrize(
    ("name", "how"),
    [
        ("plank-over-edge", "N_e of the edge at C, up and to the left, square to the plank"),
        ("ladder-holds", "N_b of the branch at C, up and to the left, square to the ladder"),
    ],
)
def test_an_edge_pushes_square_to_what_lies_on_it(name: str, how: str) -> None:
    assert f"the push {how} because there is no friction there" in told_of(name)


def test_a_surface_pushes_square_to_itself() -> None:
    """On an end of a ladder, and on a bar between its ends that it is not square to."""
    smooth = ", to the left, square to its surface because it is smooth"
    assert f"the push N_w of the wall at B{smooth}" in told_of("ladder-smooth-wall")
    path = TEMPLATES["plank-over-edge"]
    text = path.read_text(encoding="utf-8").replace('"plank_angle + 90"', "180")
    assert f"the push N_e of the edge at C{smooth}" in told(text)


def test_all_bodies_taken_as_one_go_by_the_author_s_word_or_by_their_number() -> None:
    assert "The whole frame is at rest, so the torques about B add up to zero." in told_of(
        "shed-three-hinges"
    )
    painter = told_of("painter-board-seat")
    assert any(line.startswith("The forces on the two together balance") for line in painter)


def test_what_is_carried_pulls_or_pushes_and_its_weight_acts_on_itself() -> None:
    """On a whole and then on a part of it that is said once."""
    lines = told_of("stepladder-tie")
    first = "the decorator's push down at D, equal to the weight W_d"
    again = "the decorator's push W_d down at D"
    assert [line for line in lines if "the decorator's push" in line] == [first, again]
    assert "the weight W_s of the left side, straight down at G" in lines
    hung = "the pull of the arms and toolbox down at H, equal to their weight W_s"
    told_of_back = told_of("bent-back-toolbox")
    assert hung in told_of_back
    assert "the weight W_h of the head, straight down at N" in told_of_back


def test_where_two_bodies_touch_the_second_push_is_told_as_the_reaction() -> None:
    """Of a beam that lies on another; the first body's push has nothing to be compared with."""
    pushes = [x for x in told_of("footbridge-two-beams") if x.startswith("the push P of the ")]
    assert pushes == [
        "the push P of the short beam at C, straight down",
        "the push P of the long beam at C, straight up, equal and opposite to that on the long "
        "beam",
    ]
