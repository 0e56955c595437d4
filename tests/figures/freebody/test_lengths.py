"""Lengths and lever arms in a free-body diagram: those of the balance, in their true size."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

import pytest

from probgen.figures.freebody.lengths import draw_arms, lengths_of
from probgen.figures.measured.survey import survey
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import Arrow, Path, Scene, dot, heading
from probgen.figures.paper.tag import What
from probgen.figures.situation.drawing import situation
from probgen.quantities.expression import Name, evaluate
from probgen.quantities.printing import plain
from probgen.statics.equation import torque_balance
from probgen.statics.method import Method
from tests.figures.conftest import CASES, SEEDS, Case
from tests.figures.seen import dimension_ends, tagged, touching
from tests.figures.sketches import read
from tests.figures.telling import telling


def diagram(case: Case, torque: Literal["angle", "arm", "components"]) -> Scene:
    body, pivot = case.system.bodies[0].id, case.system.elements[0].at
    balance = torque_balance(case.system, (body,), pivot, Method(torque))
    return case.alone(body, pivot, balance=balance)


@pytest.mark.parametrize("name", CASES)
@pytest.mark.parametrize("torque", ["angle", "arm"])
def test_dimension_lines_are_as_long_as_what_they_say(
    cases: dict[tuple[str, int], Case], name: str, torque: Literal["angle", "arm"]
) -> None:
    for seed in SEEDS:
        case = cases[name, seed]
        body, pivot = case.system.bodies[0].id, case.system.elements[0].at
        measured = survey(case.system, case.labels, case.values)
        balance = torque_balance(case.system, (body,), pivot, Method(torque))
        scene = diagram(case, torque)
        found = lengths_of(measured, balance, body).reaches
        assert found
        for reach in found:
            if tagged(scene, f"dimension:{reach.tag}"):
                start, end = dimension_ends(scene, reach.tag)
                value = abs(float(evaluate(reach.length, case.values)))
                assert abs(end - start) / scene.scale == pytest.approx(value)


@pytest.mark.parametrize("name", ["beam", "forearm"])
def test_lever_arm_is_square_to_the_line_of_action_and_gives_the_torque(
    cases: dict[tuple[str, int], Case], name: str
) -> None:
    """The torque by the drawn arm against x F_y - y F_x."""
    seen = 0
    for seed in SEEDS:
        case = cases[name, seed]
        scene = diagram(case, "arm")
        measured = survey(case.system, case.labels, case.values)
        pivot = measured.places[case.system.elements[0].at]
        for lever in tagged(scene, "lever"):
            force = case.system.force(str(lever.tag.of))
            (action,) = tagged(scene, f"action:{force.id}")
            assert isinstance(lever, Path)
            assert isinstance(action, Path)
            start, end = lever.lines[0]
            unit = heading(measured.number(force.direction))
            assert dot(end - start, unit) == pytest.approx(0.0, abs=1e-6)
            along = action.lines[0][1] - action.lines[0][0]
            assert (along / unit).imag == pytest.approx(0.0, abs=1e-6)
            assert abs(along) > abs(end - action.lines[0][0])  # it runs on past the foot
            assert dot(along, end - action.lines[0][0]) >= 0
            way = measured.places[force.point] - pivot
            torque = way.real * unit.imag - way.imag * unit.real
            assert abs(end - start) / scene.scale == pytest.approx(abs(torque))
            (label,) = tagged(scene, f"label:{lengths_label(case, force.id)}")
            assert label
            seen += 1
    assert seen > 20


def test_an_arm_too_short_to_be_seen_hides_no_other(cases: dict[tuple[str, int], Case]) -> None:
    case = cases["beam", 0]
    measured = survey(case.system, case.labels, case.values)
    body, pivot = case.system.bodies[0].id, case.system.elements[0].at
    balance = torque_balance(case.system, (body,), pivot, Method("arm"))
    (arm,) = lengths_of(measured, balance, body).arms
    short = replace(arm, reach=replace(arm.reach, end=arm.reach.start))
    field = Field()
    draw_arms(field, measured, (short, arm), 60.0)
    assert [s.tag.of for s in field.shapes if s.tag.what is What.LEVER] == [arm.force.id]


def lengths_label(case: Case, force: str) -> str:
    """What the lever arm of a force is called."""
    body, pivot = case.system.bodies[0].id, case.system.elements[0].at
    measured = survey(case.system, case.labels, case.values)
    balance = torque_balance(case.system, (body,), pivot, Method("arm"))
    (arm,) = [a for a in lengths_of(measured, balance, body).arms if a.force.id == force]
    return arm.reach.tag


def test_components_of_a_slanting_force_are_sides_of_its_rectangle(
    cases: dict[tuple[str, int], Case],
) -> None:
    """However small the force is beside the others."""
    for seed in SEEDS:
        case = cases["beam", seed]
        scene = diagram(case, "components")
        (whole,) = tagged(scene, "force:T")
        assert isinstance(whole, Arrow)
        legs = [each for part in "xy" for each in tagged(scene, f"component:T.{part}")]
        steps = [leg.head - leg.tail for leg in legs if isinstance(leg, Arrow)]
        assert len(steps) == 2
        assert sum(steps) == pytest.approx(whole.head - whole.tail)
        assert {str(label.tag) for label in scene.labels} >= {"label:T.x", "label:T.y"}


@pytest.mark.parametrize("torque", ["angle", "arm", "components"])
@pytest.mark.parametrize("name", CASES)
def test_nothing_touches_a_label(
    cases: dict[tuple[str, int], Case],
    name: str,
    torque: Literal["angle", "arm", "components"],
) -> None:
    found = [touching(diagram(cases[name, seed], torque)) for seed in SEEDS]
    assert found == [[]] * len(SEEDS)


EITHER_SIDE = """
[unknown]
x = { name = "place of the post", unit = "m", from = "-L/2", to = "L/2" }
[points]
O = [0, 0]
A = ["-L/2", 0]
B = ["L/2", 0]
X = ["x", 0]
[body.plank]
along = ["A", "B"]
[[weight]]
uniform = true
mass = "m"
[[weight]]
at = "A"
mass = "2*m"
symbol = "W_2"
[[fulcrum]]
at = "X"
symbol = "P"
[[find]]
quantity = "x"
"""


@pytest.mark.parametrize(("x", "length"), [(-1.0, "\N{MINUS SIGN}x"), (0.5, "x")])
def test_a_place_on_the_other_side_is_measured_by_the_opposite_of_what_says_it(
    x: float, length: str
) -> None:
    """No line is as long as something below nothing; here x of a plank whose middle is O."""
    template, values, givens = read(EITHER_SIDE)
    known = {**values, "x": x}
    balance = torque_balance(template.system, ("plank",), "X", Method("angle"))
    measured = survey(template.system, template.labels, known)
    reaches = lengths_of(measured, balance, "plank").reaches
    for reach in reaches:
        size = abs(reach.end - reach.start)
        assert evaluate(reach.length, measured.values) == pytest.approx(size)
    assert length in {reach.tag for reach in reaches}
    about = template.system, template.labels, known, template.depicts, givens
    scene = situation(*about, tell=telling(template))
    (label,) = [label for label in scene.labels if str(label.tag) == "label:x"]
    assert isinstance(label.text, Name) is (x > 0)


PUSHED = """
[points]
A = [0, 0]
B = ["L", 0]
C = ["L", "L"]
[body.frame]
along = ["A", "B", "C"]
[[fixed]]
at = "A"
symbol = "R"
couple = "M"
[[force]]
at = "C"
direction = 180
magnitude = "2*w*L"
symbol = "P"
[[find]]
quantity = "R"
as = "components"
"""


def test_a_piece_is_measured_by_the_term_along_it_and_not_by_one_as_long() -> None:
    """A level push turns by its height alone, which is as long as the way beside it."""
    template, values, _ = read(PUSHED)
    balance = torque_balance(template.system, ("frame",), "A", Method("angle"))
    measured = survey(template.system, template.labels, values)
    reaches = lengths_of(measured, balance, "frame").reaches
    assert [each.end - each.start for each in reaches] == [3j]


ROOF = """
[points]
A = [0, 0]
C = { from = "A", distance = "L", direction = "theta" }
B = { from = "C", distance = "L", direction = "-theta" }
[body.roof]
along = ["A", "C", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[roller]]
at = "B"
symbol = "N"
[[weight]]
mass = "m"
at = "C"
[[find]]
quantity = "N"
"""


def test_a_way_of_several_pieces_counted_together_is_measured_by_its_lever_arm() -> None:
    """Over the ridge it is N (2 L) cos theta, which no piece of the way is as long as."""
    template, values, _ = read(ROOF)
    balance = torque_balance(template.system, ("roof",), "A", Method("angle"))
    measured = survey(template.system, template.labels, values)
    found = lengths_of(measured, balance, "roof")
    ends = {plain(reach.length): reach.end for reach in found.reaches}
    assert ends["(2 L) cos θ"] == pytest.approx(measured.places["B"])
    assert ends["L"] == pytest.approx(measured.places["C"])
    assert found.arms == ()
