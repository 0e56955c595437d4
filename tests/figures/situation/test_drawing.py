"""The situation: to scale, labelled with the data, nothing touching, nothing given away."""

from __future__ import annotations

import pytest

from probgen.bank.depiction import Depictions
from probgen.figures.paper.scale import LEEWAY
from probgen.figures.paper.scene import (
    Arc,
    Arrow,
    Label,
    Path,
    Scene,
    Stated,
    apart,
    bearing,
    bounds,
)
from probgen.figures.paper.tag import What
from probgen.figures.situation import drawing as module
from probgen.figures.situation.drawing import HEIGHT, TALL, WIDTH, situation
from probgen.figures.writers.latex import latex_picture
from probgen.quantities.expression import Name, Number, evaluate
from probgen.quantities.unit import ANGLE, LENGTH
from tests.figures.conftest import Case, unknown_forces
from tests.figures.seen import box_of, dimension_ends, tagged, touching
from tests.figures.sketches import BEAM, CABINET, LEANING, TRUSS, loaded, read, sketch
from tests.figures.telling import telling


def drawing(case: Case) -> Scene:
    return case.situation()


@pytest.fixture(scope="module")
def scenes(draws: list[Case]) -> list[tuple[Case, Scene]]:
    return [(case, drawing(case)) for case in draws]


def test_no_label_touches_anything(scenes: list[tuple[Case, Scene]]) -> None:
    assert [touching(scene) for _, scene in scenes] == [[]] * len(scenes)


def test_figure_keeps_to_its_room(scenes: list[tuple[Case, Scene]]) -> None:
    for _, scene in scenes:
        assert scene.box.width <= WIDTH + LEEWAY.real + 0.01
        assert HEIGHT + LEEWAY.imag <= TALL
        assert scene.box.height <= TALL + 0.01


def test_what_is_narrow_may_be_higher() -> None:
    """An upright pole and a level one of the same length: as wide as it may be, or as high."""
    upright, level = LEANING.replace("60", "90"), LEANING.replace("60", "0")
    upright = upright.replace("direction = 150", "direction = 180")
    level = level.replace("direction = 150", "direction = 90")
    high, wide = sketch(upright), sketch(level)
    assert HEIGHT < high.box.height <= TALL
    assert high.box.width < 170.0
    assert wide.box.width <= WIDTH


def test_dimension_lines_have_the_lengths_they_state(scenes: list[tuple[Case, Scene]]) -> None:
    for case, scene in scenes:
        for given in case.template.givens:
            if given.unit.dimension == LENGTH:
                start, end = dimension_ends(scene, given.id)
                assert abs(end - start) / scene.scale == pytest.approx(case.values[given.id])


def test_arcs_have_the_angles_they_state(scenes: list[tuple[Case, Scene]]) -> None:
    for case, scene in scenes:
        for given in case.template.givens:
            angle = case.values[given.id]
            if given.unit.dimension == ANGLE and angle:
                (arc,) = tagged(scene, f"angle:{given.id}")
                assert isinstance(arc, Arc)
                assert abs(arc.sweep) == pytest.approx(angle)


def test_every_given_is_labelled_with_its_printed_number(
    scenes: list[tuple[Case, Scene]],
) -> None:
    for case, scene in scenes:
        numbers = {
            (str(number.value), number.unit)
            for label in scene.labels
            for number in (label.text.number if isinstance(label.text, Stated) else label.text,)
            if isinstance(number, Number)
        }
        stated = {
            (str(number.value), number.unit)
            for number in case.givens.values()
            if evaluate(number, {})  # an angle of zero opens nothing
        }
        assert numbers == stated


def test_lines_run_in_the_directions_of_the_forces(scenes: list[tuple[Case, Scene]]) -> None:
    seen = 0
    for case, scene in scenes:
        for force in case.system.forces:
            for kind in ("cable", "muscle"):
                for shape in tagged(scene, f"{kind}:{force.id}"):
                    if isinstance(shape, Path):
                        a, b = shape.lines[0]
                        direction = float(evaluate(force.direction, case.values))
                        assert apart(bearing(b - a), direction) < 1e-6
                        seen += 1
                        break
    assert seen >= len(scenes) * any(f.kind in ("cable", "muscle") for f in case.system.forces)


def test_no_arrow_shows_a_force_to_be_found(scenes: list[tuple[Case, Scene]]) -> None:
    for case, scene in scenes:
        assert unknown_forces(case.system)
        shown = {str(shape.tag) for shape in scene.shapes if isinstance(shape, Arrow)}
        assert not shown & {f"force:{id}" for id in unknown_forces(case.system)}


def test_unknown_length_is_labelled_by_its_symbol_and_not_to_scale(
    cases: dict[tuple[str, int], Case],
) -> None:
    case = cases["seesaw", 0]
    scene = drawing(case)
    (label,) = tagged(scene, "label:distance_2")
    assert isinstance(label, Label)
    assert label.text == Name("distance_2", "d_2")
    drawn_before = dimension_ends(scene, "distance_2")
    start, end = drawn_before
    assert abs(end - start) / scene.scale != pytest.approx(case.values["distance_2"], rel=1e-3)


def test_unknown_length_is_to_scale_when_its_value_is_passed(
    cases: dict[tuple[str, int], Case],
) -> None:
    case = cases["seesaw", 0]
    scene = case.situation(case.values)
    start, end = dimension_ends(scene, "distance_2")
    assert abs(end - start) / scene.scale == pytest.approx(case.values["distance_2"])


def test_same_values_give_the_same_picture(draws: list[Case]) -> None:
    assert latex_picture(drawing(draws[0])) == latex_picture(drawing(draws[0]))


def test_missing_given_is_an_error(draws: list[Case]) -> None:
    case = draws[0]
    known = case.known
    del known[next(g.id for g in case.template.givens if g.unit.dimension == LENGTH)]
    with pytest.raises(KeyError):
        case.situation(known)


def test_push_on_a_solid_ends_at_its_face() -> None:
    scene = sketch(CABINET)
    (push,) = (s for s in tagged(scene, "force:P") if isinstance(s, Arrow))
    assert push.head.real == pytest.approx(box_of(scene, "body").left, abs=0.5)
    assert push.tail.real < push.head.real


def test_length_laid_off_by_halves_is_dimensioned() -> None:
    text = LEANING.replace("[body.pole]", 'E = ["-L/2", 0]\nF = ["L/2", 0]\n[body.pole]').replace(
        'distance = "L"', 'distance = "3.5 m"'
    )
    scene = sketch(text)
    start, end = dimension_ends(scene, "L")
    assert abs(end - start) / scene.scale == pytest.approx(3.0)


def test_stated_sizes_are_drawn_and_said_not_to_be_to_scale() -> None:
    template, values, givens = read(loaded("even"))
    shown = (template.system, template.labels, values, Depictions(), givens)
    scene = situation(*shown, drawn={"L": 1.0}, tell=telling(template))
    assert "not to scale" in {label.text for label in scene.labels}
    assert "not to scale" in latex_picture(scene)
    plain = situation(*shown, tell=telling(template))
    assert not tagged(plain, "note:scale")


def test_points_the_statement_names_are_lettered() -> None:
    middle = BEAM.replace('B = ["L", 0]', 'B = ["L", 0]\nM = ["L/2", 0]')
    template, values, givens = read(middle)
    shown = (template.system, template.labels, values, Depictions(), givens)
    assert not tagged(situation(*shown, tell=telling(template)), "letter:M")
    assert tagged(situation(*shown, named=["M"], tell=telling(template)), "letter:M")


def test_a_named_point_where_nothing_is_drawn_has_a_dot() -> None:
    """N, beside the beam, and M, which lies on it; at A there is a wall."""
    beside = BEAM.replace('B = ["L", 0]', 'B = ["L", 0]\nM = ["L/2", 0]\nN = ["L/2", "L/4"]')
    template, values, givens = read(beside)
    shown = (template.system, template.labels, values, Depictions(), givens)
    scene = situation(*shown, named=["A", "M", "N"], tell=telling(template))
    assert [str(shape.tag) for shape in tagged(scene, "point")] == ["point:M", "point:N"]


def test_ends_of_bodies_are_lettered_as_keys_take_torques_about_them() -> None:
    scene = sketch(loaded("even"))
    assert {str(shape.tag) for shape in tagged(scene, "letter")} == {"letter:A", "letter:B"}


@pytest.mark.parametrize(("moment", "sense"), [("3 N*m", 1), ("-3 N*m", -1)])
def test_a_couple_that_is_data_turns_about_its_point_as_it_does(moment: str, sense: int) -> None:
    motor = f'[[couple]]\nat = "B"\nmoment = "{moment}"\nsymbol = "C_0"\nname = "motor"\n'
    scene = sketch(BEAM + motor)
    arc, arrow = tagged(scene, "couple:C_0")
    assert isinstance(arc, Arc)
    assert isinstance(arrow, Arrow)
    _, end = dimension_ends(scene, "L")
    assert arc.centre.real == pytest.approx(end.real)
    assert arc.sweep * sense > 0
    radius, way = arrow.tail - arc.centre, arrow.head - arrow.tail
    assert (radius.conjugate() * way).imag * sense > 0  # the arrow goes on round
    assert abs(box_of(scene, "label:C_0").centre - arc.centre) < 2.0 * arc.radius
    assert touching(scene) == []


@pytest.mark.parametrize("steep", [0, 25])
def test_a_section_is_a_line_square_across_its_member(steep: int) -> None:
    fixed = '[[fixed]]\nat = "A"\nsymbol = "R"\ncouple = "M_A"\n'
    cut = f'[[cut]]\nat = "A"\naxis = {steep}\naxial = "N"\nshear = "V"\ncouple = "M_A"\n'
    text = BEAM.replace(fixed, cut).replace('quantity = "R"\nas = "components"', 'quantity = "V"')
    text = text.replace('["L", 0]', f'{{ from = "A", distance = "L", direction = {steep} }}')
    scene = sketch(text + '[[weight]]\nuniform = true\nmass = "m"\n')
    (mark,) = tagged(scene, "section:N")
    assert isinstance(mark, Path)
    ((one, other),) = mark.lines
    assert apart(bearing(other - one), steep + 90.0) == pytest.approx(0.0, abs=1e-9)
    assert abs(one + other) < 1e-9  # about A, where the beam begins
    assert abs(other - one) > 2.0 * 9.0


def test_lengths_that_find_no_place_are_drawn_once_more_before_the_labels(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    first: list[bool] = []

    def nowhere(self: module._Situation) -> bool:
        first.append(self.lengths_first)
        return False

    monkeypatch.setattr(module._Situation, "_lengths", nowhere)
    sketch(BEAM)
    assert first
    assert first == [False, True] * (len(first) // 2)


def test_loads_push_on_top_of_a_truss_and_hang_below_it() -> None:
    scene = sketch(TRUSS)
    joint = {str(label.tag): label for label in scene.labels}
    assert {"letter:A", "letter:B", "letter:C", "letter:D"} <= joint.keys()
    (push,), (pull,) = (
        [each for each in tagged(scene, f"force:{id}") if isinstance(each, Arrow)] for id in "PQ"
    )
    assert push.tail.imag > push.head.imag > pull.tail.imag > pull.head.imag
    (arc,) = tagged(scene, "angle:theta")
    assert isinstance(arc, Arc)
    assert abs(arc.sweep) == pytest.approx(25.0)


def test_a_couple_that_is_a_given_the_other_way_is_labelled_with_the_given() -> None:
    motor = '[[couple]]\nat = "B"\nmoment = "-M"\nsymbol = "C_0"\nname = "motor"\n'
    given = 'M = { name = "couple", choices = [4.0], unit = "N*m" }\n'
    scene = sketch(given + BEAM + motor)
    (label,) = tagged(scene, "label:C_0")
    assert isinstance(label, Label)
    assert isinstance(label.text, Stated)
    assert label.text.symbol == Name("M", "M")


MOORED = """
alpha = { name = "bearing of a line", choices = [318], unit = "deg" }
gamma = { name = "bearing of the current", choices = [166], unit = "deg" }
[body.buoy]
particle = true
[[force]]
direction = { bearing = "gamma" }
magnitude = "900 N"
symbol = "P"
[[force]]
direction = 270
magnitude = "200 N"
symbol = "Q"
[[cable]]
direction = { bearing = "alpha" }
symbol = "T_1"
[[cable]]
direction = { bearing = "theta" }
symbol = "T_2"
[[find]]
quantity = "T_1"
"""


def test_the_arc_of_a_bearing_beyond_half_a_turn_is_nearest_to_its_vertex() -> None:
    scene = sketch(MOORED)
    bearings = {"alpha": 318.0, "gamma": 166.0, "theta": 25.0}
    arcs = [arc for id in bearings for arc in tagged(scene, f"angle:{id}") if isinstance(arc, Arc)]
    assert [arc.sweep for arc in arcs] == pytest.approx([-sweep for sweep in bearings.values()])
    wide, *others = (arc.radius for arc in arcs)
    assert wide < min(others)


def test_arrows_at_a_ring_reach_beyond_the_angles_between_them() -> None:
    scene = sketch(MOORED)
    arcs = [arc.radius for arc in tagged(scene, "angle") if isinstance(arc, Arc)]
    arrows = [arrow for arrow in tagged(scene, "force") if isinstance(arrow, Arrow)]
    assert len(arrows) == 2
    assert min(abs(arrow.head - arrow.tail) for arrow in arrows) > max(arcs)


def test_the_roller_under_a_joint_of_a_truss_leaves_its_circle_whole() -> None:
    scene = sketch(TRUSS)
    pins = [s for s in scene.showing(What.BODY) if isinstance(s, Arc)]
    supports = [s for s in scene.showing(What.SUPPORT) if isinstance(s, Path)]
    plates = [s for s in supports if len(s.lines[0]) == 3 and bounds([s]).height < 4.0]
    assert plates
    for plate in plates:
        nearest = min(abs(plate.lines[0][0] - pin.centre) - pin.radius for pin in pins)
        assert nearest >= 0.0
