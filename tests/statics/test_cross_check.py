"""The second solver: every unknown at once, beside values worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.statics import cross_check
from probgen.statics.cross_check import is_linear, solve_all, with_definitions
from tests.situations import (
    HEAD,
    SLIDES,
    STAYED_SHELF,
    THREE_HINGES,
    TWO_BEAMS,
    cabinet,
    finding,
    system_of,
)

SPREAD = (
    HEAD
    + """
[given]
L = { name = "length", choices = [6.0], unit = "m" }
p = { name = "load", choices = [30], unit = "N/m" }
[points]
A = [0, 0]
B = ["L", 0]
[body.beam]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[roller]]
at = "B"
symbol = "N"
[[distributed]]
from = "A"
to = "B"
symbol = "W"
<sizes>
[[find]]
quantity = "N"
"""
)


def test_a_load_that_grows_along_a_line() -> None:
    """From 0 to 30 N/m over 6 m: 90 N, two thirds of the way along, so N = 60 N."""
    text = SPREAD.replace("<sizes>", 'start = "0 N/m"\nend = "p"')
    system = system_of(text)
    data = {"L": np.array([6.0]), "p": np.array([30.0]), "g": np.array([9.8])}
    found = solve_all(system, data, np.ones((1, 3)))
    known = dict(zip(system.unknowns, found[0], strict=True))
    assert known == pytest.approx({"R.x": 0.0, "R.y": 30.0, "N": 60.0}, abs=1e-9)


def solved(text: str, data: dict[str, float]) -> dict[str, float]:
    system = system_of(text)
    values = {id: np.array([value]) for id, value in data.items()}
    found = solve_all(system, values, np.ones((1, len(system.unknowns))))
    return dict(zip(system.unknowns, (float(each) for each in found[0]), strict=True))


def test_all_unknowns_of_all_bodies_at_once() -> None:
    """Two beams: half of 98.0 N on the roller, half on the joint and so on the wall."""
    found = solved(TWO_BEAMS, {"L": 2.0, "m": 10.0, "g": 9.8})
    assert found == pytest.approx(
        {"Q.x": 0.0, "Q.y": -49.0, "R.x": 0.0, "R.y": 49.0, "M_A": 98.0, "N": 49.0}, abs=1e-9
    )


def test_three_hinges() -> None:
    """The right leg leans over 1 m and 2 m high, 98.0 N at its middle, 1.5 m from A.

    About A for both: S_y 2 m = 98.0 N x 1.5 m; about C for the left leg: R_x 2 m = R_y 1 m.
    """
    data = {"L": 2.0, "m": 10.0, "g": 9.8}
    found = with_definitions(system_of(THREE_HINGES), data | solved(THREE_HINGES, data))
    assert found["S.y"] == pytest.approx(73.5)
    assert found["R.y"] == pytest.approx(24.5)
    assert found["R.x"] == pytest.approx(12.25)
    assert found["S.x"] == pytest.approx(-12.25)


@pytest.mark.parametrize(
    ("text", "linear"),
    [
        (STAYED_SHELF, True),
        (TWO_BEAMS, True),
        (cabinet() + SLIDES + finding("P"), False),  # where the normal force acts is sought
    ],
)
def test_linear_where_only_sizes_are_sought(text: str, linear: bool) -> None:
    assert is_linear(system_of(text)) is linear


def test_equations_that_are_not_linear_are_solved_from_a_guess() -> None:
    """The cabinet pushed with 100 N at 0.80 m: x = b/2 + P h/W."""
    text = cabinet("100", m="50.0", b="0.50", h="0.80", mu="0.30") + finding("x")
    system = system_of(text)
    data = {"m": 50.0, "b": 0.5, "h": 0.8, "mu": 0.3, "P_0": 100.0, "g": 9.8}
    values = {id: np.array([value]) for id, value in data.items()}
    start = np.array([[{"x": 0.4, "N": 480.0, "f": 90.0}[id] for id in system.unknowns]])
    found = dict(zip(system.unknowns, solve_all(system, values, start)[0], strict=True))
    assert found == pytest.approx({"x": 0.25 + 80.0 / 490.0, "N": 490.0, "f": 100.0})


def test_a_guess_with_no_value_is_left_alone() -> None:
    """Where an angle is not a number no step can be taken, and nothing is found."""
    text = cabinet("100", m="50.0", b="0.50", h="0.80", mu="0.30") + finding("x")
    system = system_of(text)
    data = {"m": 50.0, "b": 0.5, "h": 0.8, "mu": 0.3, "P_0": 100.0, "g": 9.8}
    values = {id: np.array([value]) for id, value in data.items()}
    start = np.full((1, len(system.unknowns)), np.nan)
    assert np.isnan(solve_all(system, values, start)).all()


def test_slopes_without_value_end_the_search(monkeypatch: pytest.MonkeyPatch) -> None:
    """Beside a guess whose forces have values there may be none: 1e308 and a step further."""
    text = cabinet("100", m="50.0", b="0.50", h="0.80", mu="0.30") + finding("x")
    system = system_of(text)
    data = {"m": 50.0, "b": 0.5, "h": 0.8, "mu": 0.3, "P_0": 100.0, "g": 9.8}
    values = {id: np.array([value]) for id, value in data.items()}
    start = np.full((1, len(system.unknowns)), 100.0)
    slopes = np.full((1, len(system.unknowns), len(system.unknowns)), np.nan)
    monkeypatch.setattr(cross_check, "jacobian", lambda *_: slopes)
    assert (solve_all(system, values, start) == start).all()


def test_what_is_defined_follows_from_the_data() -> None:
    found = with_definitions(system_of(STAYED_SHELF), {"m": 4.0, "M": 8.0, "g": 9.8})
    assert (found["W_s"], found["W_t"]) == pytest.approx((39.2, 78.4))


def test_each_draw_is_solved_by_itself() -> None:
    """T = (m/2 + M) g L/(d sin theta)."""
    data = {
        "L": np.array([1.2, 1.4]), "d": np.array([0.96, 1.0]), "m": np.array([4.0, 5.0]),
        "M": np.array([8.0, 3.0]), "theta": np.array([40.0, 25.0]), "g": np.array([9.8, 9.8]),
    }  # fmt: skip
    system = system_of(STAYED_SHELF)
    found = solve_all(system, data, np.ones((2, 3)))[:, system.unknowns.index("T")]
    torque = (data["m"] / 2 + data["M"]) * 9.8 * data["L"]
    assert found == pytest.approx(torque / (data["d"] * np.sin(np.radians(data["theta"]))))
