"""The states that stand apart are called by their nouns, each beside its own."""

from __future__ import annotations

from probgen.figures.paper.scene import Label, Scene
from probgen.problem.problem_figures import situation_scene
from tests.beam_states import TWO_STATES
from tests.figures.seen import box_of, tagged, touching
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


def test_one_state_needs_no_name() -> None:
    assert not tagged(drawn(STAYED_SHELF), "note:shelf")
