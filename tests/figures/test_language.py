"""What the template language can say is on the figures: loads, pairs, particles, slopes, ropes."""

from __future__ import annotations

import pytest

from probgen.bank.depiction import Depictions
from probgen.figures.freebody.diagram import free_body
from probgen.figures.measured.alt_text import towards
from probgen.figures.measured.distributed import spread_of
from probgen.figures.measured.survey import survey
from probgen.figures.paper.scene import Arrow, apart, bearing
from probgen.figures.situation.drawing import situation
from probgen.figures.writers.colour import hexadecimal, ink_of
from probgen.figures.writers.latex import latex_picture
from probgen.figures.writers.svg import svg
from tests.figures.seen import touching
from tests.figures.sketches import BEAM, SLOPE, STACK, read, sketch

LOADS = {
    "even": ('load = "w"', (1.0, 1.0)),
    "growing": ('start = 0\nend = "w"', (0.0, 1.0)),
    "falling": ('start = "w"\nend = 0', (1.0, 0.0)),
    "both": ('start = "w"\nend = "3*w"', (1 / 3, 1.0)),
}


def loaded(kind: str) -> str:
    row = '\n[[distributed]]\nfrom = "A"\nto = "B"\nsymbol = "Q_s"\n'
    return BEAM + row + LOADS[kind][0]


@pytest.mark.parametrize("kind", LOADS)
def test_distributed_load_is_read_back_from_its_resultant(kind: str) -> None:
    system, values, _ = read(loaded(kind))
    element = next(e for e in system.elements if e.kind == "distributed")
    load = spread_of(survey(system, values), element)
    assert load is not None
    assert (load.start, load.end) == (0j, 3 + 0j)
    assert load.shares == pytest.approx(LOADS[kind][1])


@pytest.mark.parametrize("kind", LOADS)
def test_distributed_load_is_drawn_in_both_figures(kind: str) -> None:
    system, values, _ = read(loaded(kind))
    scene = sketch(loaded(kind))
    diagram = free_body(system, {**values, "R.x": 0, "R.y": 9, "M_A": 9}, "shelf", "A")
    assert len([s for s in scene.tagged("distributed") if isinstance(s, Arrow)]) >= 3
    assert diagram.tagged("distributed")
    assert diagram.tagged("force:Q_s")
    assert touching(scene) == touching(diagram) == []


def test_couple_of_a_built_in_end_turns_the_way_it_acts() -> None:
    system, values, _ = read(loaded("even"))
    for moment in (50.0, -50.0):
        solved = {**values, "R.x": 0.0, "R.y": 9.0, "M_A": moment}
        arc = free_body(system, solved, "shelf", "A").tagged("couple:M_A")[0]
        assert (arc.sweep > 0) == (moment > 0)  # type: ignore[union-attr]


def test_what_rests_on_another_is_drawn_on_it_and_only_the_lower_on_the_ground() -> None:
    scene = sketch(STACK)
    (books,), (box,) = scene.tagged("body:books"), scene.tagged("body:box")
    upper, lower = (min(s.imag for s in b.lines[0]) for b in (books, box))  # type: ignore
    assert upper == pytest.approx(max(s.imag for s in box.lines[0]))  # type: ignore[union-attr]
    (face,) = scene.tagged("ground")
    assert face.lines[0][0].imag == pytest.approx(lower)  # type: ignore[union-attr]


def test_action_and_reaction_carry_the_same_mark_and_symbol() -> None:
    system, values, _ = read(STACK)
    solved = {**values, "N_1": 117.6, "N_2": 352.8}
    diagrams = [free_body(system, solved, body, "") for body in ("books", "box")]
    marks = [diagram.tagged("pair") for diagram in diagrams]
    assert [len(m) for m in marks] == [1, 1]
    assert len({len(m[0].lines) for m in marks}) == 1  # type: ignore[union-attr]
    shown = [{getattr(label.text, "symbol", "") for label in d.labels} for d in diagrams]
    assert "N_1" in shown[0] & shown[1]
    ways = [a for d in diagrams for a in d.tagged("force") if "N_1" in a.tag]
    up, down = (bearing(a.head - a.tail) for a in ways)  # type: ignore[union-attr]
    assert apart(up, down) == pytest.approx(180.0)


def test_particle_s_diagram_shows_no_rotation() -> None:
    system, values, _ = read(STACK)
    scene = free_body(system, {**values, "N_1": 117.6, "N_2": 352.8}, "box", "")
    assert scene.tagged("axes:x")
    assert not scene.tagged("axes:positive")


def test_slope_is_drawn_with_its_angle_and_the_block_on_it() -> None:
    scene = sketch(SLOPE)
    (arc,) = scene.tagged("angle:theta")
    assert abs(arc.sweep) == pytest.approx(25.0)  # type: ignore[union-attr]
    plane = next(iter(scene.tagged("incline")))
    a, b = plane.lines[0]  # type: ignore[union-attr]
    assert apart(bearing(b - a), 25.0) < 1e-6
    assert touching(scene) == []


def test_stated_sizes_are_drawn_and_said_not_to_be_to_scale() -> None:
    system, values, givens = read(loaded("even"))
    scene = situation(system, values, Depictions(), givens, drawn={"L": 1.0})
    assert "not to scale" in {label.text for label in scene.labels}
    assert "not to scale" in latex_picture(scene)
    plain = situation(system, values, Depictions(), givens)
    assert not plain.tagged("note:scale")


def test_points_the_statement_names_are_lettered() -> None:
    system, values, givens = read(loaded("even"))
    assert not situation(system, values, Depictions(), givens).tagged("letter:B")
    assert situation(system, values, Depictions(), givens, named=["B"]).tagged("letter:B")


def test_letters_of_the_diagram_are_those_of_all_forces() -> None:
    system, values, _ = read(loaded("even"))
    scene = free_body(system, {**values, "R.x": 0, "R.y": 9, "M_A": 9}, "shelf", "A")
    wanted = {force.point for force in system.forces}
    assert {tag.tag.partition(":")[2] for tag in scene.tagged("letter")} == wanted


@pytest.mark.parametrize(
    ("direction", "words"),
    [(0, "to the right"), (90, "straight up"), (359.8, "to the right"),
     (200, "down and to the left"), (315, "down and to the right"), (91, "up and to the left")],
)  # fmt: skip
def test_direction_in_words(direction: float, words: str) -> None:
    assert towards(direction) == words


def test_words_name_body_supports_and_loads() -> None:
    words = sketch(loaded("even")).words
    assert words == "The shelf is held by the support at A and carries the load at Q."


def test_colour_is_an_option_of_both_writers() -> None:
    scene = sketch(loaded("even"))
    assert r"\color" in latex_picture(scene, colour=True)
    assert r"\color" not in latex_picture(scene)
    assert hexadecimal(ink_of("force:T")) in svg(scene, colour=True)
    strokes = {part.partition('"')[0] for part in svg(scene).split('stroke="')[1:]}
    assert strokes <= {"#000000", "none"}
