"""The states that stand apart are called by their nouns, each beside its own."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Label, Scene
from probgen.problem.problem_figures import situation_scene
from tests.beam_states import TWO_STATES
from tests.figures.seen import box_of, tagged, touching
from tests.figures.sketches import STACK, sketch
from tests.situations import STAYED_SHELF, worked


def drawn(text: str) -> Scene:
    return situation_scene(*worked(text), solved=False)


def test_each_state_is_called_by_its_noun_beside_it() -> None:
    scene = drawn(TWO_STATES)
    for body, noun in (("first", "hinged beam"), ("second", "clamped beam")):
        (label,) = tagged(scene, f"note:{body}")
        assert isinstance(label, Label)
        assert label.text == noun
        own, others = box_of(scene, f"body:{body}"), {"first", "second"} - {body}
        (other,) = (box_of(scene, f"body:{each}") for each in others)
        assert label.box.gap(own) < label.box.gap(other)
    assert touching(scene) == []


def test_bodies_that_nothing_joins_are_called_by_their_nouns_wherever_they_stand() -> None:
    beside = TWO_STATES.replace(
        '[body.first]', 'C = ["1.5*L", 0]\nD = ["2.5*L", 0]\n[body.first]'
    )  # fmt: skip
    first, second = beside.split("[body.second]")
    second = second.replace('along = ["A", "B"]', 'along = ["C", "D"]')
    for element in ('body = "second"\nat = "A"', 'body = "second"\nat = "B"'):
        new = element.replace('"A"', '"C"').replace('"B"', '"D"')
        second = second.replace(element, new)
    scene = drawn(f"{first}[body.second]{second}")
    for body, noun in (("first", "hinged beam"), ("second", "clamped beam")):
        (label,) = tagged(scene, f"note:{body}")
        assert isinstance(label, Label)
        assert label.text == noun


def test_one_state_needs_no_name() -> None:
    assert not tagged(drawn(STAYED_SHELF), "note:shelf")


SACKS = (
    "".join(
        f"""
[body.{body}]
particle = true
name = "{noun}"
[[weight]]
body = "{body}"
mass = "m"
symbol = "W_{body[0]}"
[[contact]]
body = "{body}"
direction = 90
symbol = "N_{body[0]}"
name = "ground"
"""
        for body, noun in (("full", "FULL"), ("empty", "EMPTY"))
    )
    + '[[find]]\nquantity = "N_f"\n'
)


def test_particles_that_nothing_joins_are_called_by_their_nouns_below_all() -> None:
    scene = sketch(SACKS.replace("FULL", "full sack").replace("EMPTY", "empty sack"))
    for body, noun in (("full", "full sack"), ("empty", "empty sack")):
        (label,) = tagged(scene, f"note:{body}")
        assert isinstance(label, Label)
        assert label.text == noun
        own = box_of(scene, f"body:{body}")
        assert label.box.centre.real == pytest.approx(own.centre.real, abs=1.0)
        assert label.box.top < box_of(scene, "ground").bottom
    assert touching(scene) == []


def test_a_stack_in_two_states_is_called_by_the_noun_of_its_first_body() -> None:
    lid = """
[body.lid_N]
particle = true
[[weight]]
body = "lid_N"
mass = "m"
symbol = "V_N"
[[contact]]
body = "lid_N"
other = "BODY"
direction = 90
symbol = "P_N"
"""
    lids = "".join(lid.replace("_N", f"_{b[0]}").replace("BODY", b) for b in ("full", "empty"))
    text = SACKS.replace("FULL", "full sack").replace("EMPTY", "empty sack")
    scene = sketch(text.replace("[[find]]", f"{lids}[[find]]"))
    for body, noun in (("full", "full sack"), ("empty", "empty sack")):
        (label,) = tagged(scene, f"note:{body}")
        assert isinstance(label, Label)
        assert label.text == noun
    assert len(tagged(scene, "note")) == 2


def test_nouns_that_tell_nothing_apart_are_left_out() -> None:
    assert not tagged(sketch(SACKS.replace("FULL", "sack").replace("EMPTY", "sack")), "note")
    assert not tagged(sketch(STACK), "note")  # one stands on the other
