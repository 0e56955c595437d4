"""The proof catches a wrong solution, whatever made it wrong."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.draws.sample import sample
from probgen.problem.problem import prepare, proved_values
from probgen.quantities.expression import Expression, Name, Value, negative, number, times
from probgen.statics.cross_check import solve_all
from probgen.statics.flaw import Flaw, FlawKind
from probgen.statics.plan import Plan, find_plan
from probgen.statics.proof import TOLERANCE, Proof, _blame_range, _Faults, _size_of, prove
from probgen.statics.solution import solve
from probgen.statics.system import System
from probgen.working.convention import Convention
from tests.situations import HEAD

Values = dict[str, np.ndarray]


@pytest.fixture
def plan(stayed: System, beam_values: Values) -> Plan:
    return find_plan(stayed, beam_values)


def test_a_right_solution_is_proved(plan: Plan, beam_values: Values) -> None:
    """190.6 N, 146 N and -4.90 N: worked by hand from two balances and one torque balance."""
    solved = solve(plan, beam_values)
    proof = prove(plan, solved)
    assert proof.holds.all()
    assert proof.max_residual.max() < 1e-13
    assert proof.second_solver_difference.max() < 1e-12
    tension, upward = (np.asarray(solved[id])[0] for id in ("T", "R.y"))
    assert tension == pytest.approx(117.6 / (0.96 * np.sin(np.radians(40.0))), rel=1e-12)
    assert upward == pytest.approx(-4.9, rel=1e-9)


@pytest.mark.parametrize("name", ["T", "R.x", "R.y"])
@pytest.mark.parametrize("factor", [1.0 + 1e-6, -1.0, 0.0])
def test_a_changed_value_is_caught(
    plan: Plan, beam_values: Values, name: str, factor: float
) -> None:
    solved = solve(plan, beam_values)
    solved[name] = np.multiply(solved[name], factor)
    proof = prove(plan, solved)
    assert not proof.holds.any()
    assert all(Flaw(FlawKind.UNBALANCED) in fault for fault in proof.faults)
    assert all(Flaw(FlawKind.DISPUTED) in fault for fault in proof.faults)


@pytest.mark.parametrize("name", ["R.magnitude", "R.direction"])
@pytest.mark.parametrize("part", [1.0, 1e-9])
def test_a_size_or_direction_that_its_components_do_not_make_is_caught(
    plan: Plan, beam_values: Values, name: str, part: float
) -> None:
    """However small the forces are."""
    masses = {id: np.multiply(v, part) for id, v in beam_values.items() if id.startswith("m")}
    solved = solve(plan, beam_values | masses)
    assert prove(plan, solved).holds.all()
    solved[name] = np.multiply(solved[name], 1.0 + 1e-4)
    assert not prove(plan, solved).holds.any()


def _halved(expression: Expression) -> Expression:
    return times(number("0.5"), expression)


@pytest.mark.parametrize("change", [negative, _halved])
@pytest.mark.parametrize("place", [0, 1, 2])
def test_a_changed_step_is_caught(
    plan: Plan, beam_values: Values, place: int, change: Callable[[Expression], Expression]
) -> None:
    step = plan.steps[place]
    wrong = replace(step, expression=change(step.expression))
    steps = (*plan.steps[:place], wrong, *plan.steps[place + 1 :])
    changed = replace(plan, steps=steps)
    assert not prove(changed, solve(changed, beam_values)).holds.any()


def test_a_cable_that_would_have_to_push_is_named(plan: Plan, beam_values: Values) -> None:
    beam_values["theta"] = np.array([-40.0, 25.0, 62.0])
    proof = prove(plan, solve(plan, beam_values))
    assert list(proof.holds) == [False, True, True]
    (flaw,) = proof.faults[0]
    assert (flaw.kind, flaw.quantity) == (FlawKind.NEGATIVE, "T")
    assert flaw.value == pytest.approx(117.6 / (0.96 * np.sin(np.radians(-40.0))))


def test_a_cable_along_the_beam_is_not_finite_or_caught(plan: Plan, beam_values: Values) -> None:
    beam_values["theta"] = np.array([0.0, 25.0, 62.0])
    with np.errstate(all="ignore"):
        proof = prove(plan, solve(plan, beam_values))
    assert list(proof.holds) == [False, True, True]


def test_the_second_solver_needs_no_plan(stayed: System, beam_values: Values, plan: Plan) -> None:
    start = np.ones((3, 3))
    found = solve_all(stayed, beam_values, start)
    solved = solve(plan, beam_values)
    expected = np.stack([solved[name] for name in stayed.unknowns], axis=1)
    assert found == pytest.approx(expected, rel=1e-10)


def test_one_draw_and_a_batch_agree(plan: Plan, beam_values: Values) -> None:
    first: dict[str, Value] = {name: float(value[0]) for name, value in beam_values.items()}
    batch = solve(plan, beam_values)
    single = solve(plan, first)
    assert {k: float(v) for k, v in single.items()} == pytest.approx(
        {k: float(np.asarray(v)[0]) for k, v in batch.items()}
    )
    assert float(prove(plan, single).max_residual[0]) < TOLERANCE


def solved(text: str, draws: int = 40) -> Proof:
    problem = prepare(read_template(text, "own.toml"), Convention())
    return proved_values(problem, sample(problem.template, draws).values)[1]


TWO_WHEELS = (
    HEAD
    + """
[given]
m = { name = "mass of each wheel", choices = [2.0, 3.0], unit = "kg" }
beta = { name = "slope", choices = [25, 30], unit = "deg" }
[unknown]
theta = { name = "rise of the rod", unit = "deg", from = -40, to = 40 }
[body.left]
particle = true
[body.right]
particle = true
[[weight]]
body = "left"
mass = "m"
symbol = "W_1"
[[weight]]
body = "right"
mass = "m"
symbol = "W_2"
[[contact]]
body = "left"
direction = "90 - beta"
symbol = "N_1"
[[contact]]
body = "right"
direction = "90 + beta"
symbol = "N_2"
[[strut]]
body = "left"
other = "right"
direction = "180 + theta"
symbol = "S"
[[find]]
quantity = "theta"
[[find]]
quantity = "S"
"""
)


def test_an_angle_that_is_zero_by_symmetry() -> None:
    """A rod between two wheels on equal slopes lies level and pushes with W tan(beta)."""
    proof = solved(TWO_WHEELS)
    assert proof.faults == ((),) * 40
    assert np.allclose(proof.values["theta"], 0.0, atol=1e-9)
    push = np.tan(np.radians(proof.values["beta"])) * proof.values["W_1"]
    assert np.allclose(proof.values["S"], push)


SLOPE_ASKED = (
    HEAD
    + """
[given]
W = { name = "weight", choices = [200, 50], unit = "N" }
T = { name = "pull", choices = [<pulls>], unit = "N" }
[unknown]
theta = { name = "slope", unit = "deg", from = 0, to = 90 }
[body.block]
particle = true
[[weight]]
force = "W"
symbol = "W"
[[contact]]
direction = "90 + theta"
symbol = "N"
[[cable]]
direction = "theta"
magnitude = "T"
[[find]]
quantity = "theta"
"""
)


@pytest.mark.parametrize("pulls", ["1.2, 30", "5, 45", "49, 0.1"])
def test_a_force_nobody_asks_for_leads_the_second_solver_to_no_other_solution(pulls: str) -> None:
    """sin(theta) = T/W, whatever N is; N = W cos(theta) is left out of the plan."""
    proof = solved(SLOPE_ASKED.replace("<pulls>", pulls))
    assert proof.faults == ((),) * 40
    sine = np.sin(np.radians(proof.values["theta"]))
    assert np.allclose(sine, np.asarray(proof.values["T"]) / np.asarray(proof.values["W"]))


TIPPING = (
    HEAD
    + """
[given]
L = { name = "length", from = 8.1, to = 9.7, step = 0.4, unit = "m" }
s = { name = "distance between the supports", choices = [4.5, 5.4], unit = "m" }
w = { name = "weight of the beam", choices = [270, 320], unit = "N" }
p = { name = "weight of the boy", choices = [540, 660], unit = "N" }
[unknown]
x = { name = "distance of the boy beyond the support", unit = "m" }
d = { name = "distance of the moved support", unit = "m", from = 0, to = 4.5 }
[points]
K = ["-L/2", 0]
M = ["L/2", 0]
A = ["-s/2", 0]
B = ["s/2", 0]
X = ["s/2 + x", 0]
E = ["L/2 - d", 0]
[body.beam]
along = ["K", "M"]
[body.moved]
along = ["K", "M"]
[[weight]]
body = "beam"
force = "w"
uniform = true
symbol = "w_1"
[[weight]]
body = "beam"
at = "X"
force = "p"
symbol = "p_1"
[[roller]]
body = "beam"
at = "A"
symbol = "N_A"
[[roller]]
body = "beam"
at = "B"
symbol = "N_B"
[[limit]]
id = "tips"
that = "N_A >= 0 N"
name = "the beam tips"
[[weight]]
body = "moved"
force = "w"
uniform = true
symbol = "w_2"
[[weight]]
body = "moved"
at = "M"
force = "p"
symbol = "p_2"
[[fulcrum]]
body = "moved"
at = "E"
symbol = "N_E"
[[find]]
quantity = "x"
as = "largest"
[[find]]
quantity = "d"
"""
)


def test_a_force_that_vanishes_at_its_limit_drowns_no_other_equation() -> None:
    """w s/2 = p x at the verge of tipping, and d = w L/(2 (w + p))."""
    proof = solved(TIPPING)
    assert proof.faults == ((),) * 40
    v = {id: np.asarray(proof.values[id]) for id in ("w", "p", "s", "x", "L", "d")}
    assert np.allclose(v["x"], v["w"] * v["s"] / (2 * v["p"]))
    assert np.allclose(v["d"], v["w"] * v["L"] / (2 * (v["w"] + v["p"])))


@pytest.mark.parametrize(
    ("value", "kinds"),
    [
        (2.0, []), (3.0, []), (2.0 * (1 - TOLERANCE / 2), []), (3.0 * (1 + TOLERANCE / 2), []),
        (1.999, [FlawKind.TOO_LOW]), (3.001, [FlawKind.TOO_HIGH]),
    ],
)  # fmt: skip
def test_bounds_belong_to_what_they_bound(
    stayed: System, value: float, kinds: list[FlawKind]
) -> None:
    variable = replace(stayed.variables["T"], low=2.0, high=3.0)
    faults = _Faults(1)
    beyond = _blame_range(variable, np.array([value]), {}, faults)
    assert [flaw.kind for flaw in faults[0]] == kinds
    assert beyond.tolist() == [bool(kinds)]


def test_a_bound_that_is_computed_is_another_in_each_draw(stayed: System) -> None:
    variable = replace(stayed.variables["T"], low=0.0, high=9.0, most=Name("d", "d"))
    faults = _Faults(2)
    values = {"d": np.array([3.0, 5.0])}
    beyond = _blame_range(variable, np.array([4.0, 4.0]), values, faults)
    assert beyond.tolist() == [True, False]
    assert faults.each() == ((Flaw(FlawKind.TOO_HIGH, "T", value=3.0),), ())


@pytest.mark.parametrize(
    ("name", "value", "size"),
    [
        ("T", 0.5, 100.0),  # of forces the largest that is looked for, not a load
        ("T", -700.0, 700.0),
        ("theta", 0.2, 1.0),  # a degree
        ("theta", -40.0, 40.0),
        ("d", 0.0, 0.002),  # a thousandth of the largest length
        ("d", 0.9, 0.9),
    ],
)
def test_a_difference_counts_against_others_of_its_kind(
    stayed: System, name: str, value: float, size: float
) -> None:
    values = {"R.x": -100.0, "R.y": 3.0, "T": 0.5, "W_t": 900.0, "L": 2.0, "d": 0.9, "theta": 70.0}
    assert _size_of(stayed, name, np.array([value]), values) == pytest.approx(size)


IDLE = (
    HEAD
    + """
[given]
W = { name = "weight", choices = [60], unit = "N" }
[body.lamp]
particle = true
[body.shackle]
particle = true
[[weight]]
body = "lamp"
force = "W"
[[cable]]
body = "lamp"
direction = 90
symbol = "T"
[[force]]
body = "shackle"
symbol = "R"
name = "post"
[[find]]
quantity = "T"
[[find]]
quantity = "R"
as = "FORM"
"""
)


@pytest.mark.parametrize("form", ["magnitude and direction", "components"])
def test_a_force_that_is_zero_has_no_direction(form: str) -> None:
    """Nothing but the post touches the shackle."""
    system = read_template(IDLE.replace("FORM", form), "own.toml").system
    values = {"W": np.array([60.0]), "g": np.array([9.8])}
    plan = find_plan(system, values)
    (faults,) = prove(plan, solve(plan, values)).faults
    asked = Flaw(FlawKind.NO_DIRECTION, "R")
    assert faults == ((asked,) if form.startswith("magnitude") else ())
