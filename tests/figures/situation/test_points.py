"""Which points have a letter: those that both states have are lettered at each."""

from __future__ import annotations

from probgen.figures.paper.scene import Label, Scene
from probgen.figures.paper.tag import What
from probgen.problem.problem_figures import situation_scene
from probgen.quantities.expression import Name
from tests.beam_states import TWO_STATES
from tests.figures.seen import box_of, tagged
from tests.figures.sketches import BEAM, CASE, LEANING, sketch
from tests.situations import worked


def letters(scene: Scene) -> dict[str, Label]:
    return {str(label.tag.of): label for label in scene.labels if label.tag.what is What.LETTER}


def test_ends_and_supports_have_letters() -> None:
    assert letters(sketch(LEANING)).keys() == {"A", "B", "C"}


def test_the_axis_of_a_box_has_letters_where_the_text_names_them_and_dots_there() -> None:
    shown = 'case = "bookcase"'
    assert letters(sketch(CASE)).keys() >= {"O", "T"}
    assert letters(sketch(CASE, shown)).keys() == set()
    named = sketch(CASE, shown, named=["O"])
    assert letters(named).keys() == {"O"}
    assert [shape.tag.of for shape in named.showing(What.POINT)] == ["O"]


def test_a_point_of_two_states_is_lettered_at_both() -> None:
    scene = situation_scene(*worked(TWO_STATES), solved=False)
    found = letters(scene)
    assert found.keys() == {"A", "B", "second:A", "second:B"}
    second = box_of(scene, "body:second")
    for point, label in found.items():
        assert isinstance(label.text, Name)
        assert label.text.symbol == point[-1]
        assert (label.box.gap(second) < 20.0) == point.startswith("second")


def test_a_named_point_of_a_beam_where_nothing_is_has_a_dot() -> None:
    bolted = BEAM.replace("[body.shelf]", 'D = ["L/2", 0]\n[body.shelf]')
    scene = sketch(bolted, named=("A", "D"))
    (dot,) = tagged(scene, "point")
    assert str(dot.tag) == "point:D"
