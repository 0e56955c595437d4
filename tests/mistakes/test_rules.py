"""Slips on published problems: the wrong numbers worked out beside them.

The right numbers are published (sources with each problem); the wrong ones were worked out by hand
from the mechanism of each slip, with the same data.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.mistakes.likelihood import LIKELIHOOD
from probgen.mistakes.rules import RULES, missteps, workings
from probgen.mistakes.variant import Misstep, workable, wrong_values
from probgen.problem.problem import draw_class, prepare, work
from probgen.quantities.expression import Name, Product, Value, number
from probgen.statics.method import Method
from probgen.statics.plan import Plan, find_plan
from probgen.statics.solution import solve
from probgen.statics.system import Element, Kind, Limit
from probgen.working.convention import Convention
from tests.situations import STAYED_SHELF, worked

ROOT = Path(__file__).parents[2]
PUBLISHED = ROOT / "tests" / "published"
STRUT = PUBLISHED / "up1-12.2-cyu8.toml"  # University Physics vol. 1, check your understanding 12.8
LADDER = PUBLISHED / "up1-12.2-ex5.toml"  # University Physics vol. 1, example 12.5
ARM = PUBLISHED / "cp2e-9.6-ex4.toml"  # College Physics 2e, example 9.4
ROPES = PUBLISHED / "cp2e-4.7-p42.toml"  # College Physics 2e, section 4.7, problem 42
METHODS = [Method("arm"), Method("components"), Method("angle", "clockwise")]
OWN = sorted(ROOT.glob("templates/*/*.toml"))


@dataclass(frozen=True)
class Wrong:
    """One wrong answer: the slip and its way, the answer's id, its value in
    newtons or degrees, to as many digits as were worked out."""

    path: Path
    slip: str
    way: str
    answer: str
    value: str

    def __str__(self) -> str:
        return f"{self.path.stem}: {self.slip} {self.way} {self.answer} {self.value}"


WORKED = [
    Wrong(ARM, "mass_as_weight", "", "B", "48.0"),
    Wrong(STRUT, "sin_cos_swap", "torque", "T", "875.0"),
    Wrong(STRUT, "sin_cos_swap", "one", "T", "875.0"),
    Wrong(LADDER, "wrong_reference_line", "vertical", "F_w", "265.4"),
    Wrong(STRUT, "no_angle", "one", "T", "700.0"),
    Wrong(LADDER, "no_angle", "all", "F_w", "200.0"),
    Wrong(STRUT, "whole_length_for_weight", "", "T", "1666.7"),
    Wrong(LADDER, "whole_length_for_weight", "", "F_w", "301.4"),
    Wrong(LADDER, "distance_not_perpendicular", "", "F_w", "200.0"),
    Wrong(STRUT, "own_weight_forgotten", "", "T", "666.7"),
    Wrong(ARM, "own_weight_forgotten", "", "B", "372.4"),
    Wrong(STRUT, "torque_sign", "", "T", "166.7"),
    Wrong(STRUT, "joint_is_total_weight", "", "R.magnitude", "1000.0"),
    Wrong(ARM, "joint_is_total_weight", "", "J.magnitude", "63.7"),
    Wrong(ARM, "joint_added_not_subtracted", "up", "J.magnitude", "534.1"),
    Wrong(STRUT, "hinge_vertical_only", "full", "R.magnitude", "166.7"),
    Wrong(STRUT, "hinge_vertical_only", "right", "R.magnitude", "300.0"),
    Wrong(STRUT, "hinge_along_body", "", "R.magnitude", "933.3"),
    Wrong(STRUT, "hinge_along_body", "", "R.direction", "0.0"),
    Wrong(STRUT, "component_only", "x", "R.magnitude", "933.3"),
    Wrong(STRUT, "component_only", "y", "R.magnitude", "300.0"),
    Wrong(STRUT, "component_only", "sum", "R.magnitude", "1233.3"),
    Wrong(STRUT, "tangent_inverted", "", "R.direction", "72.2"),
    Wrong(STRUT, "angle_sign", "up", "R.direction", "-17.8"),
    Wrong(STRUT, "angle_sign", "side", "R.direction", "162.2"),
    Wrong(STRUT, "calculator_radians", "", "R.direction", "0.311"),
    Wrong(STRUT, "tension_equals_load", "load", "T", "400.0"),
    Wrong(STRUT, "tension_equals_load", "total", "T", "1000.0"),
    Wrong(LADDER, "mu_inverted", "", "mu", "2.654"),
    Wrong(LADDER, "normal_at_wall_is_weight", "own", "F_w", "400.0"),
    Wrong(STRUT, "early_rounding", "", "R.x", "936.0"),
]


@cache
def problem(path: Path) -> tuple[Plan, dict[str, Value]]:
    """A template's plan and the values of its givens, arrays of a small class."""
    convention = Convention()
    own = prepare(read_template(path.read_text(encoding="utf-8"), path.name), convention)
    students = [str(each) for each in range(6 if own.template.room > 1 else 1)]
    cases = [each.case for each in work(own, draw_class(own, "slips", students).draws)]
    given = {id: np.array([case.values[id] for case in cases]) for id in cases[0].numbers}
    return own.plan, dict(given)


@cache
def made(path: Path) -> tuple[Misstep, ...]:
    return missteps(*problem(path))  # type: ignore[arg-type]


def ways(path: Path) -> tuple[Plan, ...]:
    """The plan, or those to each limit where the one reached first is asked."""
    plan, _ = problem(path)
    return tuple(branch.plan for branch in plan.branches) or (plan,)


def found(path: Path, slip: str, way: str, answer: str) -> list[float]:
    _, given = problem(path)
    chosen = [each for each in made(path) if (each.slip, each.way) == (slip, way)]
    return [float(np.ravel(wrong_values(each, given)[answer])[0]) for each in chosen]


@pytest.mark.parametrize("wrong", WORKED, ids=str)
def test_gives_the_worked_number(wrong: Wrong) -> None:
    values = found(wrong.path, wrong.slip, wrong.way, wrong.answer)
    half = 0.5 * 10.0 ** -len(wrong.value.partition(".")[2])
    assert [value for value in values if abs(value - float(wrong.value)) <= half * 1.001], values


def test_a_wall_that_would_pull_is_no_result() -> None:
    """In radians the ladder's angle gives the wall -463.9 N, which nobody writes without sign."""
    assert np.isnan(found(LADDER, "calculator_radians", "", "F_w")).all()


@pytest.mark.parametrize("path", [STRUT, LADDER], ids=lambda path: path.stem)
def test_of_some_slips_there_are_as_many_as_among_all(path: Path) -> None:
    plan, given = problem(path)
    every = Counter((each.slip, each.way, repr(each.parts)) for each in made(path))
    assert {slip for slip, _, _ in every} <= RULES.keys() == LIKELIHOOD.keys() - {"other_limit"}
    for slip in RULES:
        alone = missteps(plan, given, slips={slip})  # type: ignore[arg-type]
        told = Counter((each.slip, each.way, repr(each.parts)) for each in alone)
        assert told == {key: count for key, count in every.items() if key[0] == slip}


@pytest.mark.one_in(4)
@pytest.mark.parametrize("path", [STRUT, LADDER, *OWN], ids=lambda path: path.stem)
def test_a_slip_spoils_something(path: Path) -> None:
    """No rule hands back the right working for all its ways."""
    _, given = problem(path)
    for plan in ways(path):
        right = solve(plan, given)
        every = missteps(plan, given)  # type: ignore[arg-type]
        spoiling = set()
        for misstep in every:
            values = wrong_values(misstep, given)
            both = values.keys() & right.keys()  # a slip may ask for what is not needed otherwise
            if any(not np.allclose(values[id], right[id], rtol=1e-6) for id in both):
                spoiling.add(misstep.slip)
        # rounding leaves what has no more figures as it is
        assert {m.slip for m in every} - spoiling <= {"torque_sign", "early_rounding"}


def test_limits_have_their_slips_on_the_way_to_each() -> None:
    """Nothing is worked in the plan that only compares them."""
    branched = [path for path in OWN if problem(path)[0].branches]
    assert branched
    for path in branched:
        assert made(path) == ()
        assert all(missteps(plan, problem(path)[1]) for plan in ways(path))  # type: ignore[arg-type]


@pytest.mark.parametrize("path", [STRUT, LADDER, *OWN], ids=lambda path: path.stem)
def test_right_working_is_untouched(path: Path) -> None:
    """Every working slips are looked for in is itself right."""
    _, given = problem(path)
    for plan in ways(path):
        right = solve(plan, given)
        for working in workings(plan, given):  # type: ignore[arg-type]
            values = wrong_values(Misstep("none", working), given)
            assert values
            for id in values.keys() & right.keys():
                assert np.allclose(values[id], right[id], rtol=1e-9, atol=1e-9)


def test_one_draw_is_worked_as_a_class_is() -> None:
    path = OWN[0]
    _, given = problem(path)
    for misstep in made(path):
        together = wrong_values(misstep, given)
        alone = wrong_values(misstep, {id: float(np.ravel(v)[2]) for id, v in given.items()})
        for id, value in alone.items():
            all_of_them = np.broadcast_to(together[id], 6)
            assert float(all_of_them[2]) == pytest.approx(float(value), rel=1e-12, abs=1e-12)


def test_torques_are_also_taken_about_the_support() -> None:
    """A plan about the strut's tip: slips are made about the tip first, and about the hinge too."""
    plan, given = problem(STRUT)
    about_tip = find_plan(replace(plan.system, pivot="B"), given)  # type: ignore[arg-type]
    unpinned = replace(about_tip, system=plan.system)
    own, usual = workings(unpinned, given)  # type: ignore[arg-type]
    assert (usual.pivots, own.pivots) == (("A",), ("B",))
    pulls = {
        round(float(np.ravel(wrong_values(each, given)["T"])[0]), 1)
        for each in missteps(unpinned, given)  # type: ignore[arg-type]
        if each.slip == "torque_sign"
    }
    assert {166.7, 2166.7} <= pulls


def test_several_bodies_have_no_support_that_all_torques_are_taken_about() -> None:
    for path in OWN:
        for plan in ways(path):
            found = workings(plan, problem(path)[1])  # type: ignore[arg-type]
            assert found[0] == plan
            assert len(found) == 1 or len(plan.system.bodies) == 1


@pytest.mark.parametrize("path", [STRUT, *OWN], ids=lambda path: path.stem)
def test_a_mistaken_tangent_keeps_its_quarter(path: Path) -> None:
    _, given = problem(path)
    for plan in ways(path):
        right = solve(plan, given)
        for misstep in missteps(plan, given):  # type: ignore[arg-type]
            if misstep.slip == "tangent_inverted":
                values = wrong_values(misstep, given)
                for id in (id for id in values if id.endswith(".direction")):
                    pairs = zip(np.ravel(values[id]), np.ravel(right[id]), strict=True)
                    assert all(one // 90.0 == other // 90.0 for one, other in pairs)


def test_friction_along_a_floor_is_no_wall() -> None:
    """What a cabinet is pushed over holds it up with all its weight: that is no slip."""
    (cabinet,) = (path for path in OWN if path.stem == "cabinet-slide-or-tip")
    _, given = problem(cabinet)
    slipped = {m.slip for plan in ways(cabinet) for m in missteps(plan, given)}  # type: ignore[arg-type]
    assert slipped
    assert "normal_at_wall_is_weight" not in slipped


def test_pulls_are_counted_with_weights_where_there_are_some() -> None:
    """No pedal, jaw or kneecap without a weight, and no letter twice."""
    counted = set()
    for path in [ARM, *OWN]:
        system = problem(path)[0].system
        weighed = {force.body for force in system.forces if force.kind is Kind.WEIGHT}
        for misstep in made(path):
            if misstep.slip == "joint_added_not_subtracted":
                counted.add(path.stem)
                joint = misstep.parts["R"]
                assert isinstance(joint, Element)
                assert joint.body in weighed
                letters = misstep.parts["T"]
                assert isinstance(letters, tuple)
                assert len(set(letters)) == len(letters) > 0
    assert {ARM.stem, "forearm-load"} <= counted
    assert not counted & {"pedal-bell-crank", "jaw-bites-nut", "kneecap-squat"}


@pytest.mark.parametrize(
    ("template", "way"),
    [
        ("triceps-band", "up"),
        ("forearm-load", "up-part"),
        ("arm-held-out", "up-part"),
        ("head-over-phone", "down-part"),
        ("hip-one-leg", "down-part"),
    ],
)
def test_a_pull_is_mistaken_against_the_way_it_acts(template: str, way: str) -> None:
    """A muscle that pulls down belongs to the weights: the slip is to take it off them.

    Of one that pulls at a slant it is its vertical component.
    """
    (path,) = [each for each in OWN if each.stem == template]
    found = [each.way for each in made(path) if each.slip == "joint_added_not_subtracted"]
    assert found == [way]


def test_a_level_stay_is_neither_added_nor_taken_off() -> None:
    """Of a derrick's ropes only the one along the boom has a vertical component."""
    (path,) = [each for each in OWN if each.stem == "derrick-hoist-rope"]
    (slipped,) = [each for each in made(path) if each.slip == "joint_added_not_subtracted"]
    assert slipped.parts["T"] == (Name("T", "T"),)
    assert slipped.parts["W"] == (Name("W_n", "W_n"), Name("W_b", "W_b"))


def test_an_upright_force_has_no_tangent_to_mistake() -> None:
    """The forearm's joint force is straight down: no sides to exchange, none to leave out."""
    plan, given = problem(ARM)
    assert not np.any(solve(plan, given)["J.x"])
    slipped = {misstep.slip for misstep in made(ARM)}
    assert not slipped & {"tangent_inverted", "component_only", "hinge_vertical_only"}


BY_ANGLES = ("sin_cos_swap", "no_angle")


@pytest.mark.one_in(3)
@pytest.mark.parametrize("method", METHODS, ids=str)
@pytest.mark.parametrize("path", [LADDER, *OWN], ids=lambda path: path.stem)
def test_numbers_do_not_depend_on_how_torques_are_written(path: Path, method: Method) -> None:
    """But for the angles of torques: with components they are others (`test_angles`)."""
    _, given = problem(path)
    apart = BY_ANGLES if method.torque == "components" else ()
    for plan in ways(path):
        other = find_plan(plan.system, given, method)  # type: ignore[arg-type]
        made = (missteps(each, given) for each in (other, plan))  # type: ignore[arg-type]
        again, usual = (tuple(e for e in every if e.slip not in apart) for every in made)
        assert numbers(again, given) == numbers(usual, given)


_WAYS = {"one-arm": "one", "all-arms": "all"}  # as they are called where torques are by lever arms


def numbers(made: tuple[Misstep, ...], given: dict[str, Value]) -> set[tuple[str, str, str, float]]:
    """Every wrong number of the first draw, to eight figures, with what makes it."""
    return {
        (each.slip, _WAYS.get(each.way, each.way), id, float(f"{size:.8g}") + 0.0)
        for each in made
        for id, value in wrong_values(each, given).items()
        if abs(size := float(np.ravel(value)[0])) > 1e-6
    }


def test_equations_solved_together() -> None:
    """A person on two ropes, sine and cosine of the first one exchanged in both balances."""
    plan, given = problem(ROPES)
    assert any(step.partners for step in plan.steps)
    lean, slope, mass = (float(np.ravel(given[id])[0]) for id in ("a", "b", "m"))
    lean, slope = np.radians(lean), np.radians(slope)
    matrix = [[-np.cos(lean), np.cos(slope)], [np.sin(lean), np.sin(slope)]]
    sizes = np.linalg.solve(matrix, [0.0, mass * 9.8])
    for id, size in zip(("T_1", "T_2"), sizes, strict=True):
        values = found(ROPES, "sin_cos_swap", "one", id)
        assert any(value == pytest.approx(abs(size), rel=1e-9) for value in values)


def test_friction_at_its_limit() -> None:
    """f = mu N for a ladder that stands safely: 0.5 (400 N)."""
    plan, given = problem(LADDER)
    push = plan.system.force("N").magnitude
    limit = Limit("slips", Name("f", "f"), "<=", Product((number("0.5"), push)))
    # the floor's push has to be found before a limit can be made of it
    steps = sorted(plan.steps, key=lambda step: step.unknown != "N")
    safe = replace(plan, system=replace(plan.system, limits=(limit,)), steps=tuple(steps))
    (misstep,) = [m for m in missteps(safe, given) if m.slip == "friction_at_limit"]  # type: ignore[arg-type]
    assert float(np.ravel(wrong_values(misstep, given)["f"])[0]) == pytest.approx(200.0)


@pytest.mark.parametrize("unit", ["kg", "g"])
def test_a_mass_is_taken_as_a_weight_where_kilograms_go_with_newtons(unit: str) -> None:
    """4.0 g are no 4.0 N to anybody who puts kilograms into m g."""
    shelf = STAYED_SHELF.replace('unit = "kg"', f'unit = "{unit}"')
    own, _ = worked(shelf)
    slips = {each.slip for missteps in own.missteps for each in missteps}
    assert ("mass_as_weight" in slips) == (unit == "kg")


def test_the_sign_of_a_torque_is_mistaken_of_what_is_known() -> None:
    """The shelf's weights turn it one way, which makes the slip unlikely; nobody flips T."""
    own, _ = worked(STAYED_SHELF)
    made = [m for missteps in own.missteps for m in missteps if m.slip == "torque_sign"]
    assert {str(m.parts["F"].symbol) for m in made} == {"W_s", "W_t"}  # type: ignore[union-attr]
    assert all(each.unlikely for each in made)


def test_so_it_is_in_the_balance_of_each_body() -> None:
    """A bridge of two beams: of what is known each load turns one of them, and all turn one way."""
    (bridge,) = (path for path in OWN if path.stem == "footbridge-two-beams")
    signs = [m for m in made(bridge) if m.slip == "torque_sign"]
    assert {str(m.parts["F"].symbol) for m in signs} == {"P", "W_1", "W_2", "W_h"}  # type: ignore[union-attr]
    assert all(each.unlikely for each in signs)


@pytest.mark.parametrize(
    ("name", "added"), [("up1-6.1-p29", True), ("cp2e-9.6-p30", False), ("up1-6.2-ex10", False)]
)
def test_sizes_of_two_pulls_are_added_but_none_to_a_weight(name: str, added: bool) -> None:
    """Two muscles at a junction; one and the weight of a head; a push and the weight of a crate."""
    assert ("sizes_added" in {m.slip for m in made(PUBLISHED / f"{name}.toml")}) == added


NOT_MADE = [
    (LADDER, "inverted_arm_ratio"),  # two torques, but none square to the ladder
    (STRUT, "inverted_arm_ratio"),  # three
    (PUBLISHED / "up1-5.6-p67b.toml", "equal_sharing"),  # the force on a ramp and its push
    (PUBLISHED / "up1-6.1-p25.toml", "equal_sharing"),  # a swing's ropes and the level pull
]


@pytest.mark.parametrize(("path", "slip"), NOT_MADE)
def test_what_only_looks_like_a_lever_or_like_two_supports(path: Path, slip: str) -> None:
    assert slip not in {misstep.slip for misstep in made(path)}


def test_a_line_that_uses_what_is_not_found_is_no_working() -> None:
    plan, _ = problem(LADDER)
    assert workable(plan)
    backwards = replace(plan, steps=tuple(reversed(plan.steps)))
    assert not workable(backwards)
