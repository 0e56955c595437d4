"""From a system to its steps: which root is meant, what is left out, what comes last."""

from __future__ import annotations

import math

import numpy as np
import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.problem.problem import prepare
from probgen.quantities.expression import ZERO, evaluate, names_in
from probgen.quantities.printing import plain
from probgen.statics.derivation import derived_steps
from probgen.statics.method import Method
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.refusal import Refusal
from probgen.statics.rerun import rerun
from probgen.statics.truss import without_idle
from probgen.working.convention import Convention
from tests.situations import (
    FIND_R,
    FIND_T,
    HEAD,
    HINGED,
    SHELF,
    STAYED,
    STAYED_SHELF,
    THREE_CABLES,
    ball_on_a_cord,
    finding,
)

SHELF_DATA = {
    "L": np.array([1.2, 1.4]), "d": np.array([0.96, 1.0]), "m": np.array([4.0, 5.0]),
    "M": np.array([8.0, 3.0]), "theta": np.array([40.0, 25.0]), "g": np.array([9.8, 9.8]),
    "W_s": np.array([39.2, 49.0]), "W_t": np.array([78.4, 29.4]),
}  # fmt: skip


def steps(text: str, *wanted: str, known: dict[str, np.ndarray] = SHELF_DATA) -> list[str]:
    system = read_template(text, "own.toml").system
    found = derived_steps(system, (), known, wanted, Method())
    assert found is not None
    return [f"{step.unknown} by {step.equation.kind} {step.equation.about}" for step in found]


def test_only_what_is_wanted_and_what_that_needs() -> None:
    assert steps(STAYED_SHELF, "T") == ["T by torque A"]
    assert steps(STAYED_SHELF, "R.x") == ["T by torque A", "R.x by force x"]
    assert steps(STAYED_SHELF, "T", "R.x", "R.y") == [
        "T by torque A", "R.x by force x", "R.y by force y",
    ]  # fmt: skip


def test_what_a_pivot_keeps_out_is_told() -> None:
    system = read_template(STAYED_SHELF, "own.toml").system
    found = derived_steps(system, (), SHELF_DATA, ("T", "R.x", "R.y"), Method())
    assert found is not None
    assert [step.removed for step in found] == [("R.x", "R.y"), ("R.y",), ("R.x",)]


def test_a_force_whose_line_passes_through_the_pivot_does_not_appear() -> None:
    """The cable along the shelf, for these numbers: about A only the weights turn."""
    along = SHELF + HINGED + STAYED.replace('"180 - theta"', "90") + FIND_T + FIND_R
    system = read_template(along, "own.toml").system
    found = derived_steps(system, (), SHELF_DATA, ("R.x",), Method())
    assert found is not None
    assert [step.equation.silent for step in found] == [("R.y", "T", "W_s", "W_t")]


def test_equations_solved_together_are_partners() -> None:
    """With the pivots kept on the beam, three cables take more than one equation at once."""
    known = {
        "L": np.array([2.0, 2.0]), "m": np.array([60.0, 60.0]), "g": np.array([9.8, 9.8]),
        "W_b": np.array([588.0, 588.0]),
    }  # fmt: skip
    system = read_template(THREE_CABLES, "own.toml").system
    found = derived_steps(system, (), known, ("T_1",), Method())
    assert found is not None
    (first,) = [step for step in found if step.partners]
    assert len(first.equations) == 1 + len(first.partners)
    assert {step.unknown for step in first.partners} < set(system.unknowns)


BALL_DATA = {
    id: np.array([value, value])
    for id, value in {"m": 2.0, "F": 12.0, "T": 24.0, "g": 9.8, "W_b": 19.6}.items()
}


def lean(low: int, high: int) -> float:
    """sin t = 12/24: 30° or 150°."""
    system = read_template(ball_on_a_cord(low, high), "own.toml").system
    found = derived_steps(system, (), BALL_DATA, ("t",), Method())
    assert found is not None
    return float(np.ravel(evaluate(found[-1].expression, BALL_DATA))[0])


@pytest.mark.parametrize(("low", "high", "root"), [(0, 90, 30.0), (90, 180, 150.0)])
def test_the_root_that_lies_where_it_may(low: int, high: int, root: float) -> None:
    assert lean(low, high) == pytest.approx(root)


def test_two_roots_where_it_may_are_refused() -> None:
    with pytest.raises(Refusal, match="t has more than one possible value between 0 and 180"):
        lean(0, 180)


SLEDGES = (
    HEAD
    + """
[given]
W_1 = { name = "weight of the lower sledge", choices = [400], unit = "N" }
W_2 = { name = "weight of the upper sledge", choices = [800], unit = "N" }
mu_1 = { name = "lower coefficient of friction", choices = [0.15], unit = "1" }
mu_2 = { name = "upper coefficient of friction", choices = [0.40], unit = "1" }
[unknown]
theta = { name = "slope", unit = "deg", from = 0, to = 89, measured = "from the horizontal" }
[body.lower]
particle = true
[body.upper]
particle = true
[[cable]]
body = "lower"
other = "upper"
direction = "theta"
symbol = "T"
[[find]]
quantity = "theta"
[[find]]
quantity = "T"
"""
    + "".join(
        f"""
[[weight]]
body = "{body}"
force = "W_{n}"
symbol = "W_{n}"
of = "{body} sledge"
[[rough]]
body = "{body}"
direction = "90 + theta"
normal = "N_{n}"
friction = "f_{n}"
friction_direction = "theta"
coefficient = "mu_{n}"
"""
        for n, body in enumerate(("lower", "upper"), start=1)
    )
)


def test_balances_along_axes_that_turn_with_an_unknown_angle_are_counted_once() -> None:
    """Five equations together; along x, y, the slope and square to it they would be eight."""
    known = {"W_1": np.array([400.0, 90.0]), "W_2": np.array([800.0, 60.0]), "g": np.full(2, 9.8),
             "mu_1": np.array([0.15, 0.2]), "mu_2": np.array([0.40, 0.7])}  # fmt: skip
    plan = find_plan(read_template(SLEDGES, "own.toml").system, known)
    solved = rerun(plan, known)
    pressed = known["mu_1"] * known["W_1"] + known["mu_2"] * known["W_2"]
    slope = np.arctan(pressed / (known["W_1"] + known["W_2"]))
    assert solved["theta"] == pytest.approx(np.degrees(slope))
    assert solved["T"] == pytest.approx(
        known["W_1"] * (np.sin(slope) - known["mu_1"] * np.cos(slope))
    )
    assert prove(plan, solved).holds.all()


ON_A_LOG = (
    SHELF.replace('C = ["d", 0]', 'C = ["d", 0]\nX = ["x", 0]')
    + '[unknown]\nx = { name = "distance to the log", unit = "m", from = 0, to = 1.6 }\n'
    + '[[fulcrum]]\nat = "X"\nsymbol = "P"\n'
    + finding("x")
)


def test_arms_from_a_place_that_is_found_are_written_the_positive_way_round() -> None:
    """The log is between the middle and the end: W_s (x - L/2) against W_t (L - x)."""
    (step,) = find_plan(read_template(ON_A_LOG, "own.toml").system, SHELF_DATA).steps
    arms = {plain(term.length): term.sign for term in step.equation.terms if term.length}
    assert arms == {"x − L/2": 1, "L − x": -1}


def test_a_part_found_to_be_zero_is_left_out_afterwards() -> None:
    """The pin of the bridge bears nothing along x: said once, and not carried on."""
    plan = prepare(default_bank().read("footbridge-truss-crowd"), Convention()).plan
    zero, *later = plan.steps
    assert (zero.unknown, zero.expression) == ("R.x", ZERO)
    for step in later:
        assert "R.x" not in names_in(step.equation.expression) | names_in(step.expression)
        assert "R.x" not in step.equation.silent
    whole, part = (body for body in plan.system.bodies if body.joints)
    told = without_idle(plan.system, plan.steps)
    on = {body.id: [f.id for f in told.forces if f.body == body.id] for body in (whole, part)}
    assert "R.x" in on[whole.id]
    assert "R.x" not in on[part.id]
    assert "R.y" in on[part.id]
    assert all(set(e.forces) <= set(on[part.id]) for e in told.elements if e.body == part.id)


SQUEEZED_OUT = (
    HEAD
    + """
[given]
F = { name = "load", choices = [500], unit = "N" }
mu = { name = "coefficient above", symbol = "mu_1", choices = [0.3], unit = "1" }
nu = { name = "coefficient below", symbol = "mu_2", choices = [0.2], unit = "1" }
[unknown]
t = { name = "slope", unit = "deg", from = 0, to = 80 }
[body.block]
particle = true
[body.wedge]
particle = true
[[weight]]
body = "block"
force = "F"
[[contact]]
body = "block"
name = "wall"
direction = 180
symbol = "S"
[[rough]]
body = "block"
other = "wedge"
direction = "90 - t"
friction_direction = "180 - t"
normal = "N_1"
friction = "f_1"
coefficient = "mu"
[[rough]]
body = "wedge"
name = "floor"
friction_direction = 0
normal = "N_2"
friction = "f_2"
coefficient = "nu"
"""
    + finding("t")
)


def test_the_steepest_wedge_that_stays_is_as_steep_as_both_angles_of_friction_together() -> None:
    """Both bodies together give N_2 = F and S = f_2, and along no axis anything of the slope."""
    known = {id: np.array([value]) for id, value in (("F", 500.0), ("mu", 0.3), ("nu", 0.2))}
    known["g"] = np.array([9.8])
    plan = find_plan(read_template(SQUEEZED_OUT, "own.toml").system, known)
    found = math.degrees(math.atan(0.3) + math.atan(0.2))
    assert float(np.ravel(rerun(plan, known)["t"])[0]) == pytest.approx(found, rel=1e-9)
