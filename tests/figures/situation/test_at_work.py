"""A worker holds something up from the ground it stands on, another has it on the shoulder; a boot
blocks its foot.
"""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arc, Arrow, bounds
from probgen.figures.situation.at_work import at_work, underfoot
from tests.figures.readings import TEMPLATES, prepared, scenes_of, solved
from tests.figures.seen import box_of, tagged, touching
from tests.figures.sketches import HELD, LEANING, sketch, stage

RAISED = LEANING.replace("direction = 60", "direction = 35").replace(
    """[[contact]]
at = "C"
direction = 150
symbol = "N"
name = "branch"
""",
    """[[force]]
at = "C"
direction = 125
symbol = "N"
[[force]]
at = "A"
direction = 0
symbol = "P"
""",
)


def test_a_worker_stands_on_the_ground_of_what_they_hold_up() -> None:
    scene = sketch(RAISED, 'N = "worker"')
    worker = box_of(scene, "load:N")
    foot, grip = (next(iter(tagged(scene, f"force:{id}"))) for id in ("P", "N"))
    assert isinstance(foot, Arrow)
    assert isinstance(grip, Arrow)  # the force is told by an arrow all the same
    assert worker.top == pytest.approx(grip.tail.imag, abs=1.5)
    ground = box_of(scene, "ground")
    assert worker.bottom == pytest.approx(ground.top, abs=1.5)
    assert ground.left < foot.tail.real < worker.left < worker.right < ground.right  # one ground


def test_a_worker_faces_the_way_they_push_and_is_no_taller_than_their_reach() -> None:
    scene = sketch(RAISED, 'N = "worker"')
    (head,) = [s for s in tagged(scene, "load:N") if isinstance(s, Arc) and s.filled]
    worker = box_of(scene, "load:N")
    assert head.centre.real < worker.right - 0.1 * worker.height  # leaning to the left
    assert head.centre.imag + head.radius < worker.top


def test_who_holds_up_what_touches_no_ground_stands_on_their_own() -> None:
    set_out = stage(HELD, 'F = "worker"')
    (floor,) = underfoot(set_out)
    hands = set_out.spot("B")
    assert floor.normal == 90.0
    assert (hands - floor.at).imag == pytest.approx(1.75 * 1.09 * set_out.scale)
    assert underfoot(stage(HELD)) == []


def test_who_bears_something_stands_below_it_with_the_shoulder_at_the_point() -> None:
    scene = sketch(HELD, 'F = "shoulder"')
    bearer, shelf = box_of(scene, "load:F"), box_of(scene, "body:shelf")
    (force,) = tagged(scene, "force:F")
    assert isinstance(force, Arrow)  # told by an arrow all the same
    (head,) = [s for s in tagged(scene, "load:F") if isinstance(s, Arc) and s.filled]
    assert head.centre.real - head.radius > force.tail.real + 0.5  # which the head leaves free
    assert bearer.left < force.tail.real < bearer.right
    assert bearer.bottom < shelf.bottom - 25.0
    letter = next(label for label in scene.labels if str(label.tag) == "label:F")
    assert letter.box.right < force.head.real  # which leaves the other side to lengths
    grounds = [bounds([face]).top for face in tagged(scene, "ground")]
    assert bearer.bottom == pytest.approx(min(grounds), abs=1.5)
    set_out = stage(HELD, 'F = "shoulder"')
    (floor,) = underfoot(set_out)
    below = set_out.spot("B") - 1j * set_out.halves["shelf"] - floor.at
    assert below == pytest.approx(0.82j * 1.75 * set_out.scale)


def test_hands_that_hold_a_body_up_come_from_beyond_its_ends_and_from_below() -> None:
    problem = prepared(next(path for path in TEMPLATES if path.stem == "box-carried-upstairs"))
    for own in solved(problem, 3):
        scene = scenes_of(problem, own)[0]
        box = box_of(scene, "body")
        for id, side in (("F_1", -1), ("F_2", 1)):
            hand, (push,) = box_of(scene, f"load:{id}"), tagged(scene, f"force:{id}")
            assert isinstance(push, Arrow)  # told by an arrow all the same
            at = push.head if side < 0 else push.tail
            assert hand.away(at) == 0.0
            assert (hand.centre - at).real * side > 5.0
            assert hand.centre.imag < at.imag - 5.0
            assert (hand.right > box.right) if side > 0 else (hand.bottom < box.bottom)
        assert touching(scene) == []


def test_those_who_bear_one_thing_stand_on_one_ground() -> None:
    problem = prepared(next(path for path in TEMPLATES if path.stem == "ladder-carried"))
    for own in solved(problem, 3):
        scene = scenes_of(problem, own)[0]
        rear, front = box_of(scene, "load:N_1"), box_of(scene, "load:N_2")
        assert rear.bottom == pytest.approx(front.bottom)
        ground, bag = box_of(scene, "ground"), box_of(scene, "load:W_b")
        assert ground.left < rear.left
        assert front.right < ground.right
        assert bag.bottom > ground.top + 3.0  # nothing but its rope holds it
        assert rear.right < bag.left
        assert not box_of(scene, "letter:D").overlaps(bag)


@pytest.mark.parametrize("slope", [20, 35, 60])
def test_a_boot_is_on_the_ground_against_the_foot_that_it_blocks(slope: int) -> None:
    scene = sketch(
        RAISED.replace("direction = 35", f"direction = {slope}"), 'P = "boots"', 'pole = "ladder"'
    )
    boot, foot = box_of(scene, "load:P"), box_of(scene, "body:pole")
    assert boot.bottom == pytest.approx(box_of(scene, "ground").top, abs=1.2)
    assert boot.right == pytest.approx(foot.left, abs=1.5)


def test_a_boot_is_behind_the_arrow_of_its_push() -> None:
    scene = sketch(RAISED, 'P = "boots"')
    (arrow,) = tagged(scene, "force:P")
    assert isinstance(arrow, Arrow)
    boot = box_of(scene, "load:P")
    assert boot.left < boot.right < arrow.tail.real
    assert boot.bottom == pytest.approx(arrow.tail.imag, abs=0.5)
    assert bounds(tagged(scene, "load:P")).width < 20.0


def test_nobody_is_at_work_unless_a_word_says_so() -> None:
    set_out = stage(RAISED)
    assert at_work(set_out, set_out.system.element("N")) == ()


def test_the_arrow_of_a_valve_comes_up_from_below_to_the_disc_under_its_spindle() -> None:
    problem = prepared(next(path for path in TEMPLATES if path.stem == "safety-valve-lever"))
    for own in solved(problem, 3):
        scene = scenes_of(problem, own)[0]
        spindle, disc = (bounds([shape]) for shape in tagged(scene, "load:F")[-2:])
        (push,) = tagged(scene, "force:F")
        assert isinstance(push, Arrow)
        assert push.tail.imag < push.head.imag
        assert push.head.imag == pytest.approx(disc.bottom, abs=0.5)
        assert push.head.real == pytest.approx(spindle.centre.real)
        assert spindle.top == pytest.approx(box_of(scene, "body:bar").bottom, abs=0.7)
        assert box_of(scene, "beyond").left < box_of(scene, "support:R").left
