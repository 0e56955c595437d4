"""A plan evaluated: one draw as a batch of one, and quantities made of what was found.

By hand: T = 117.6 N m/(0.96 m sin 40°) = 190.576 N, R = (145.99, -4.90) N.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.statics.plan import find_plan
from probgen.statics.rerun import first_limit_id
from probgen.statics.solution import solve
from probgen.statics.system import Find, Form
from tests.situations import SLIDES, STAYED_SHELF, TIPS, cabinet, finding

ONE = {"L": 1.2, "d": 0.96, "m": 4.0, "M": 8.0, "theta": 40.0, "g": 9.8}
MANY = {
    "L": np.array([1.2, 1.4]), "d": np.array([0.96, 1.0]), "m": np.array([4.0, 5.0]),
    "M": np.array([8.0, 3.0]), "theta": np.array([40.0, 25.0]), "g": np.array([9.8, 9.8]),
}  # fmt: skip
PLAN = find_plan(read_template(STAYED_SHELF, "own.toml").system, MANY)


def by_hand(values: dict[str, float]) -> dict[str, float]:
    """The shelf from torques about its hinge and sums of forces."""
    weights = values["m"] * 9.8, values["M"] * 9.8
    turned = math.radians(values["theta"])
    torque = weights[0] * values["L"] / 2 + weights[1] * values["L"]
    tension = torque / (values["d"] * math.sin(turned))
    x, y = tension * math.cos(turned), sum(weights) - tension * math.sin(turned)
    return {
        "T": tension, "R.x": x, "R.y": y, "R.magnitude": math.hypot(x, y),
        "R.direction": math.degrees(math.atan2(y, x)), "W_s": weights[0], "W_t": weights[1],
    }  # fmt: skip


def test_one_draw() -> None:
    solved = solve(PLAN, ONE)
    expected = by_hand(ONE)
    assert expected["T"] == pytest.approx(190.576, abs=0.001)
    assert {id: float(solved[id]) for id in expected} == pytest.approx(expected)


def test_a_batch_has_each_draw_s_own_values() -> None:
    solved = solve(PLAN, MANY)
    for place in range(2):
        own = {id: float(values[place]) for id, values in MANY.items()}
        found = {id: float(np.asarray(solved[id])[place]) for id in by_hand(own)}
        assert found == pytest.approx(by_hand(own))


def test_data_are_kept_and_not_changed() -> None:
    data = dict(ONE)
    solved = solve(PLAN, data)
    assert data == ONE
    assert {id: solved[id] for id in ONE} == ONE


PUSHED = {"m": 60.0, "b": 0.5, "h": 0.9, "mu": 0.2, "g": 9.8}
PROBE = {id: np.array([value, value]) for id, value in PUSHED.items()}


def test_one_draw_at_its_first_limit_is_a_number() -> None:
    """mu W = 117.6 N; W b/(2 h) = 163.3 N."""
    text = cabinet() + SLIDES + TIPS + finding("P", "largest")
    plan = find_plan(read_template(text, "own.toml").system, PROBE)
    solved = solve(plan, PUSHED)
    assert float(solved["P"]) == pytest.approx(117.6)
    assert float(solved[first_limit_id(Find("P", Form.LARGEST))]) == 0.0
    assert np.shape(solved["P"]) == ()


def test_a_limit_that_growing_never_passes_gives_no_value() -> None:
    """f >= -mu N is not passed by pushing harder toward +x: nothing ends it."""
    never = '[[limit]]\nid = "back"\nthat = "f >= -mu*N"\nname = "it slides back"\n'
    text = cabinet() + never + finding("P", "largest")
    plan = find_plan(read_template(text, "own.toml").system, PROBE)
    assert np.isnan(float(solve(plan, PUSHED)["P"]))
