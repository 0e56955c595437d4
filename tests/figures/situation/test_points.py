"""Which points have a letter: those that both states have are lettered at each."""

from __future__ import annotations

from probgen.figures.paper.scene import Label, Scene
from probgen.figures.paper.tag import What
from probgen.problem.problem_figures import situation_scene
from probgen.problem.single import work_single
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


def test_where_a_load_stands_has_a_dot() -> None:
    """The angler's feet are broader than a point; at the walkway's weight there is a mark."""
    single = work_single("jetty-mooring")
    scene = situation_scene(single.problem, single.worked, solved=False)
    assert "D" in {str(shape.tag.of) for shape in scene.showing(What.POINT)}
    assert "E" not in {str(shape.tag.of) for shape in scene.showing(What.POINT)}


def test_an_angle_to_the_axis_of_a_stout_body_has_the_axis_drawn() -> None:
    single = work_single("bent-back-toolbox")
    scene = situation_scene(single.problem, single.worked, solved=False)
    assert "muscle_angle" in {str(shape.tag.of) for shape in scene.showing(What.REFERENCE)}
    arm = work_single("forearm-load")
    drawn = situation_scene(arm.problem, arm.worked, solved=False)
    assert {str(shape.tag.of) for shape in drawn.showing(What.REFERENCE)} <= {"muscle_angle"}
