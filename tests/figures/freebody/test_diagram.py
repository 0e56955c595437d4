"""The free-body diagram: every force, its true direction, its place in the order of sizes."""

from __future__ import annotations

import itertools

import pytest

from probgen.figures.freebody.arrows import distance
from probgen.figures.freebody.diagram import HEIGHT, WIDTH, free_body
from probgen.figures.measured.survey import survey
from probgen.figures.measured.vector import vectors
from probgen.figures.paper.scene import Arrow, Label, Scene, apart, bearing, heading
from tests.figures.conftest import CASES, SEEDS, Case
from tests.figures.seen import touching
from tests.figures.sketches import STACK, loaded, read


def drawing(case: Case) -> Scene:
    body = case.system.bodies[0].id
    return free_body(case.system, case.values, body, case.system.elements[0].at)


@pytest.fixture(scope="module")
def scenes(draws: list[Case]) -> list[tuple[Case, Scene]]:
    return [(case, drawing(case)) for case in draws]


def arrow(scene: Scene, tag: str) -> Arrow:
    (shape,) = scene.tagged(tag)
    assert isinstance(shape, Arrow)
    return shape


def test_forces_have_their_solved_directions(scenes: list[tuple[Case, Scene]]) -> None:
    for case, scene in scenes:
        for force in case.system.forces:
            size = case.values[force.magnitude.id]  # type: ignore[union-attr]
            if abs(size) < 1e-9 or force.part in ("x", "y"):
                continue
            drawn = arrow(scene, f"force:{force.id}")
            direction = survey(case.system, case.values).number(force.direction)
            true = direction + (180.0 if size < 0 else 0.0)
            assert apart(bearing(drawn.head - drawn.tail), true) < 1e-6


@pytest.mark.parametrize(("name", "hinge"), [("beam", "R"), ("forearm", "J")])
def test_hinge_force_is_drawn_whole_with_its_components_dashed(
    cases: dict[tuple[str, int], Case], name: str, hinge: str
) -> None:
    for seed in SEEDS:
        case = cases[name, seed]
        scene = drawing(case)
        solved = complex(case.values[f"{hinge}.x"], case.values[f"{hinge}.y"])
        whole = arrow(scene, f"force:{hinge}")
        assert apart(bearing(whole.head - whole.tail), bearing(solved)) < 1e-6
        assert not whole.pen.dash
        for part, step in (("x", solved.real), ("y", 1j * solved.imag)):
            if min(abs(solved.real), abs(solved.imag)) < 1e-9 * abs(solved):
                assert not scene.tagged(f"component:{hinge}")  # the whole is its component
                continue
            leg = arrow(scene, f"component:{hinge}.{part}")
            assert leg.pen.dash
            assert apart(bearing(leg.head - leg.tail), bearing(complex(step))) < 1e-6


def test_both_signs_of_a_hinge_component_occur(cases: dict[tuple[str, int], Case]) -> None:
    """So that the direction test above has seen an arrow turned round."""
    signs = {cases["beam", seed].values["R.y"] > 0 for seed in SEEDS}
    assert signs == {True, False}


def test_longer_arrow_means_larger_force(scenes: list[tuple[Case, Scene]]) -> None:
    for case, scene in scenes:
        measured = survey(case.system, case.values)
        found = vectors(measured, case.system.bodies[0])
        sized = sorted(
            (vector.size, abs(a.head - a.tail))
            for vector in found
            if vector.part not in ("x", "y")
            for a in [arrow(scene, f"force:{vector.id}")]
        )
        for (small, short), (large, long) in itertools.pairwise(sized):
            assert short <= long + 1e-9
            if large > 1.01 * small:
                assert short < long


def test_no_label_touches_anything(scenes: list[tuple[Case, Scene]]) -> None:
    assert [touching(scene) for _, scene in scenes] == [[]] * len(scenes)


def test_each_force_is_labelled_with_its_symbol(scenes: list[tuple[Case, Scene]]) -> None:
    for case, scene in scenes:
        found = vectors(survey(case.system, case.values), case.system.bodies[0])
        symbols = {v.symbol for v in found if v.part not in ("x", "y")}
        shown = {getattr(label.text, "symbol", "") for label in scene.labels}
        assert symbols <= shown


def test_symbol_stands_nearest_to_its_own_arrow(scenes: list[tuple[Case, Scene]]) -> None:
    for _, scene in scenes:
        forces = {a.tag.partition(":")[2]: a for a in scene.tagged("force")}
        shafts = {id: (a.tail, a.head) for id, a in forces.items() if isinstance(a, Arrow)}
        for id, own in shafts.items():
            (label,) = scene.tagged(f"label:{id}")
            assert isinstance(label, Label)
            away = distance(label.box.centre, *own)
            others = [distance(label.box.centre, *s) for other, s in shafts.items() if other != id]
            assert all(away < other for other in others)


def test_diagram_keeps_to_its_room(scenes: list[tuple[Case, Scene]]) -> None:
    for _, scene in scenes:
        assert scene.box.width <= WIDTH + 0.01
        assert scene.box.height <= HEIGHT + 0.01


@pytest.mark.parametrize("name", CASES)
def test_pivot_axes_and_body_are_there(cases: dict[tuple[str, int], Case], name: str) -> None:
    case = cases[name, 1]
    scene = drawing(case)
    pivot = case.system.elements[0].at
    (letter,) = scene.tagged(f"letter:{pivot}")
    assert isinstance(letter, Label)
    assert scene.tagged(f"pivot:{pivot}")
    assert scene.tagged("axes:x")
    assert scene.tagged("body")


@pytest.mark.parametrize(("sense", "sign"), [("counter-clockwise", 1), ("clockwise", -1)])
def test_positive_rotation_is_the_course_s(
    cases: dict[tuple[str, int], Case], sense: str, sign: int
) -> None:
    case = cases["beam", 0]
    scene = free_body(case.system, case.values, "beam", "A", sense)  # type: ignore[arg-type]
    arc = scene.tagged("axes:positive")[0]
    assert arc.sweep * sign > 0  # type: ignore[union-attr]


def test_force_without_a_value_is_drawn_as_assumed(cases: dict[tuple[str, int], Case]) -> None:
    case = cases["ladder", 0]
    values = {name: value for name, value in case.values.items() if name != "N_f"}
    drawn = arrow(free_body(case.system, values, "ladder", "B"), "force:N_f")
    assert bearing(drawn.head - drawn.tail) == pytest.approx(90.0)


def test_components_without_values_make_no_resultant(cases: dict[tuple[str, int], Case]) -> None:
    case = cases["beam", 0]
    values = {name: v for name, v in case.values.items() if not name.startswith("R.")}
    scene = free_body(case.system, values, "beam", "A")
    assert not scene.tagged("force:R")
    assert scene.tagged("force:R.x")
    assert scene.tagged("force:R.y")


def test_single_forces_begin_or_end_at_their_points_unless_two_share_a_line(
    scenes: list[tuple[Case, Scene]],
) -> None:
    for case, scene in scenes:
        found = [
            v
            for v in vectors(survey(case.system, case.values), case.system.bodies[0])
            if v.part not in ("x", "y")
        ]
        for vector in found:
            drawn = arrow(scene, f"force:{vector.id}")
            spot = vector.at * scene.scale
            off = min(abs(drawn.tail - spot), abs(drawn.head - spot))
            close = any(
                abs(((other.at - vector.at) / heading(vector.direction)).imag) * scene.scale < 5.0
                and apart(other.direction, vector.direction) < 15.0
                for other in found
                if other is not vector
            )
            assert off < 1e-6 or close


def test_couple_of_a_built_in_end_turns_the_way_it_acts() -> None:
    system, values, _ = read(loaded("even"))
    for moment in (50.0, -50.0):
        solved = {**values, "R.x": 0.0, "R.y": 9.0, "M_A": moment}
        arc = free_body(system, solved, "shelf", "A").tagged("couple:M_A")[0]
        assert (arc.sweep > 0) == (moment > 0)  # type: ignore[union-attr]


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


def test_letters_of_the_diagram_are_those_of_all_forces() -> None:
    system, values, _ = read(loaded("even"))
    scene = free_body(system, {**values, "R.x": 0, "R.y": 9, "M_A": 9}, "shelf", "A")
    wanted = {force.point for force in system.forces}
    assert {tag.tag.partition(":")[2] for tag in scene.tagged("letter")} == wanted
