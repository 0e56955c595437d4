"""The free-body diagram: every force, the direction it is assumed in, its length and its place."""

from __future__ import annotations

import pytest

from probgen.figures.freebody.arrows import distance
from probgen.figures.freebody.diagram import UPRIGHT, WIDTH
from probgen.figures.measured.survey import survey
from probgen.figures.measured.vector import vectors
from probgen.figures.paper.scene import (
    Arc,
    Arrow,
    Label,
    Path,
    Scene,
    apart,
    bearing,
    bounds,
    heading,
    segments,
)
from probgen.problem.problem import work
from probgen.problem.problem_figures import free_body_scene, free_body_scenes
from probgen.problem.single import draw_single
from tests.figures.conftest import CASES, SEEDS, Case
from tests.figures.readings import TEMPLATES, prepared, solved
from tests.figures.seen import tagged, touching
from tests.figures.sketches import STACK, alone, loaded, read


def drawing(case: Case) -> Scene:
    body = case.system.bodies[0].id
    return case.alone(body, case.system.elements[0].at)


@pytest.fixture(scope="module")
def scenes(draws: list[Case]) -> list[tuple[Case, Scene]]:
    return [(case, drawing(case)) for case in draws]


def arrow(scene: Scene, tag: str) -> Arrow:
    (shape,) = tagged(scene, tag)
    assert isinstance(shape, Arrow)
    return shape


def test_forces_have_the_directions_they_are_assumed_in(scenes: list[tuple[Case, Scene]]) -> None:
    for case, scene in scenes:
        for force in case.system.forces:
            leg = f"component:{force.id}"
            drawn = arrow(scene, leg if tagged(scene, leg) else f"force:{force.id}")
            assumed = survey(case.system, case.labels, case.values).number(force.direction)
            assert apart(bearing(drawn.head - drawn.tail), assumed) < 1e-6


@pytest.mark.parametrize(("name", "hinge"), [("beam", "R"), ("forearm", "J")])
def test_hinge_force_is_drawn_whole_where_it_acts_as_assumed(
    cases: dict[tuple[str, int], Case], name: str, hinge: str
) -> None:
    """Its components are then sides of the rectangle about it, dashed, and begin or end with it."""
    for seed in SEEDS:
        case = cases[name, seed]
        scene = drawing(case)
        solved = complex(case.values[f"{hinge}.x"], case.values[f"{hinge}.y"])
        if not tagged(scene, f"force:{hinge}"):
            legs = [arrow(scene, f"force:{hinge}.{part}") for part in "xy"]
            assert not any(leg.pen.dash for leg in legs)
            continue
        assert min(solved.real, solved.imag) > 0
        whole = arrow(scene, f"force:{hinge}")
        assert apart(bearing(whole.head - whole.tail), bearing(solved)) < 1e-6
        assert not whole.pen.dash
        for part in "xy":
            leg = arrow(scene, f"component:{hinge}.{part}")
            assert leg.pen.dash
            assert min(abs(leg.tail - whole.tail), abs(leg.head - whole.head)) < 1e-6


def test_both_signs_of_a_hinge_component_occur(cases: dict[tuple[str, int], Case]) -> None:
    """So that the direction test above has seen an arrow that acts the other way."""
    signs = {cases["beam", seed].values["R.y"] > 0 for seed in SEEDS}
    assert signs == {True, False}


def test_lengths_are_to_scale_or_said_not_to_be(scenes: list[tuple[Case, Scene]]) -> None:
    for case, scene in scenes:
        found = vectors(survey(case.system, case.labels, case.values), case.system.bodies[0])
        sized = sorted(
            (vector.size, abs(a.head - a.tail))
            for vector in found
            if tagged(scene, f"force:{vector.id}")
            for a in [arrow(scene, f"force:{vector.id}")]
        )
        assert [long for _, long in sized] == sorted(long for _, long in sized)
        said = [label.text for label in scene.labels if str(label.tag) == "note:scale"]
        turned = any(v.sign < 0 for v in found if tagged(scene, f"force:{v.id}"))
        linear = ["arrow lengths to scale, directions as assumed" if turned else "arrows to scale"]
        assert said in (linear, ["arrows not to scale"])
        if said == linear:
            size, long = sized[-1]
            true = [each * long / size for each, _ in sized]
            assert true == pytest.approx([drawn for _, drawn in sized])


def test_arrows_drawn_against_their_forces_have_only_their_lengths_to_scale() -> None:
    template, values, _ = read(loaded("even"))
    for push, said in (
        (9.0, "arrows to scale"),
        (-9.0, "arrow lengths to scale, directions as assumed"),
    ):
        solved = {**values, "R.x": 9.0, "R.y": push, "M_A": 9.0, "W": 9.0, "w": 9.0}
        scene = alone(template, solved, "shelf", "A")
        assert said in [label.text for label in scene.labels]


def test_axes_keep_out_of_a_drum() -> None:
    """Of one that fills its diagram."""
    (path,) = (path for path in TEMPLATES if path.stem == "cable-reel-ramp")
    problem = prepared(path)
    (own,) = work(problem, [draw_single(problem, 10)])
    scene = free_body_scene(problem, own, "reel")
    rims = [shape for shape in tagged(scene, "body") if isinstance(shape, Arc)]
    reach, centre = max((rim.radius, rim.centre) for rim in rims)
    for axis in tagged(scene, "axes"):
        assert isinstance(axis, Arrow | Arc | Path)
        for x0, y0, x1, y1 in segments(axis):
            assert min(abs(complex(x0, y0) - centre), abs(complex(x1, y1) - centre)) > reach


def test_no_label_touches_anything(scenes: list[tuple[Case, Scene]]) -> None:
    assert [touching(scene) for _, scene in scenes] == [[]] * len(scenes)


def test_each_force_is_labelled_with_its_symbol(scenes: list[tuple[Case, Scene]]) -> None:
    for case, scene in scenes:
        found = vectors(survey(case.system, case.labels, case.values), case.system.bodies[0])
        symbols = {v.symbol for v in found}
        shown = {getattr(label.text, "symbol", "") for label in scene.labels}
        assert symbols <= shown


def test_symbol_stands_nearest_to_its_own_arrow(scenes: list[tuple[Case, Scene]]) -> None:
    for _, scene in scenes:
        forces = {str(a.tag.of): a for a in tagged(scene, "force")}
        shafts = {id: (a.tail, a.head) for id, a in forces.items() if isinstance(a, Arrow)}
        for id, own in shafts.items():
            (label,) = tagged(scene, f"label:{id}")
            assert isinstance(label, Label)
            away = distance(label.box.centre, *own)
            others = [distance(label.box.centre, *s) for other, s in shafts.items() if other != id]
            assert all(away < other for other in others)


def test_diagram_keeps_to_its_room(scenes: list[tuple[Case, Scene]]) -> None:
    for _, scene in scenes:
        assert scene.box.width <= WIDTH + 0.01
        assert scene.box.height <= UPRIGHT + 0.01


@pytest.mark.parametrize("name", CASES)
def test_pivot_axes_and_body_are_there(cases: dict[tuple[str, int], Case], name: str) -> None:
    case = cases[name, 1]
    scene = drawing(case)
    pivot = case.system.elements[0].at
    (letter,) = tagged(scene, f"letter:{pivot}")
    assert isinstance(letter, Label)
    assert tagged(scene, f"pivot:{pivot}")
    assert tagged(scene, "axes:x")
    assert tagged(scene, "body")


@pytest.mark.parametrize(("sense", "sign"), [("counter-clockwise", 1), ("clockwise", -1)])
def test_positive_rotation_is_the_course_s(
    cases: dict[tuple[str, int], Case], sense: str, sign: int
) -> None:
    case = cases["beam", 0]
    scene = case.alone("beam", "A", positive=sense)
    arc = tagged(scene, "axes:positive")[0]
    assert arc.sweep * sign > 0  # type: ignore[union-attr]


def test_force_without_a_value_is_drawn_as_assumed(cases: dict[tuple[str, int], Case]) -> None:
    case = cases["ladder", 0]
    values = {name: value for name, value in case.values.items() if name != "N_f"}
    drawn = arrow(case.alone("ladder", "B", values), "force:N_f")
    assert bearing(drawn.head - drawn.tail) == pytest.approx(90.0)


def test_components_without_values_make_no_resultant(cases: dict[tuple[str, int], Case]) -> None:
    case = cases["beam", 0]
    values = {name: v for name, v in case.values.items() if not name.startswith("R.")}
    scene = case.alone("beam", "A", values)
    assert not tagged(scene, "force:R")
    assert tagged(scene, "force:R.x")
    assert tagged(scene, "force:R.y")


def test_single_forces_begin_or_end_at_their_points_unless_two_share_a_line(
    scenes: list[tuple[Case, Scene]],
) -> None:
    for case, scene in scenes:
        found = [
            v
            for v in vectors(survey(case.system, case.labels, case.values), case.system.bodies[0])
            if v.part not in ("x", "y")
        ]
        for vector in found:
            drawn = arrow(scene, f"force:{vector.id}")
            spot = vector.at * scene.scale
            off = min(abs(drawn.tail - spot), abs(drawn.head - spot))
            close = any(
                abs(((other.at - vector.at) / heading(vector.direction)).imag) * scene.scale < 5.0
                and apart(2 * other.direction, 2 * vector.direction) < 30.0  # either way along it
                for other in found
                if other is not vector
            )
            assert off < 1e-6 or close


def test_couple_of_a_built_in_end_is_drawn_as_assumed() -> None:
    template, values, _ = read(loaded("even"))
    for moment in (50.0, -50.0):
        solved = {**values, "R.x": 0.0, "R.y": 9.0, "M_A": moment}
        arc = tagged(alone(template, solved, "shelf", "A"), "couple:M_A")[0]
        assert arc.sweep > 0  # type: ignore[union-attr]


def test_a_load_is_no_second_force_beside_its_resultant() -> None:
    template, values, _ = read(loaded("even"))
    scene = alone(template, {**values, "R.x": 0.0, "R.y": 9.0, "M_A": 50.0}, "shelf", "A")
    (outline,) = tagged(scene, "distributed")
    assert isinstance(outline, Path)
    assert outline.pen.dash


def test_action_and_reaction_carry_the_same_mark_and_symbol() -> None:
    template, values, _ = read(STACK)
    solved = {**values, "N_1": 117.6, "N_2": 352.8}
    diagrams = [alone(template, solved, body, "") for body in ("books", "box")]
    marks = [tagged(diagram, "pair") for diagram in diagrams]
    assert [len(m) for m in marks] == [1, 1]
    assert len({len(m[0].lines) for m in marks}) == 1  # type: ignore[union-attr]
    assert all("ticks: action and reaction" in [label.text for label in d.labels] for d in diagrams)
    shown = [{getattr(label.text, "symbol", "") for label in d.labels} for d in diagrams]
    assert "N_1" in shown[0] & shown[1]
    ways = [a for d in diagrams for a in tagged(d, "force") if "N_1" in str(a.tag)]
    up, down = (bearing(a.head - a.tail) for a in ways)  # type: ignore[union-attr]
    assert apart(up, down) == pytest.approx(180.0)


def test_particle_s_diagram_shows_no_rotation() -> None:
    template, values, _ = read(STACK)
    scene = alone(template, {**values, "N_1": 117.6, "N_2": 352.8}, "box", "")
    assert tagged(scene, "axes:x")
    assert not tagged(scene, "axes:positive")


def test_letters_of_the_diagram_are_those_of_all_forces_and_of_its_ends() -> None:
    template, values, _ = read(loaded("even"))
    scene = alone(template, {**values, "R.x": 0, "R.y": 9, "M_A": 9}, "shelf", "A")
    (shelf,) = template.system.bodies
    wanted = {force.point for force in template.system.forces} | {*shelf.outline}
    assert {shape.tag.of for shape in tagged(scene, "letter")} == wanted


@pytest.mark.parametrize("name", ["sign-l-plate", "ferry-board-hole"])
def test_a_body_is_not_drawn_tiny_among_long_arrows(name: str) -> None:
    problem = prepared(next(path for path in TEMPLATES if path.stem == name))
    for own in solved(problem, 3):
        (scene,) = free_body_scenes(problem, own).values()
        box = bounds(tagged(scene, "body"))
        assert max(box.width / WIDTH, box.height / UPRIGHT) > 0.4
