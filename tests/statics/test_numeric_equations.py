"""The equations as numbers: the shelf of `tests.situations`, by hand."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.quantities.expression import Name, Product, number
from probgen.statics.cross_check import with_definitions
from probgen.statics.numeric_equations import Assembled, assemble, coordinates, size_of_sides
from probgen.statics.system import Condition
from tests.situations import STAYED_SHELF, system_of

DATA = {"L": 1.2, "d": 0.96, "m": 4.0, "M": 8.0, "theta": 40.0, "g": 9.8}
FOUND = {"T": 190.57616879, "R.x": 145.9897, "R.y": -4.9}
SINE, COSINE = np.sin(np.radians(40.0)), np.cos(np.radians(40.0))


def assembled(text: str, values: dict[str, float]) -> Assembled:
    system = system_of(text)
    return assemble(system, with_definitions(system, values))


def test_points_are_the_sums_of_their_links() -> None:
    slanted = STAYED_SHELF.replace(
        'C = ["d", 0]', 'C = ["d", 0]\nE = { from = "C", distance = "L", direction = "theta" }'
    )
    places = coordinates(system_of(slanted), DATA)
    assert [float(part) for part in places["A"]] == [0.0, 0.0]
    assert [float(part) for part in places["C"]] == pytest.approx([0.96, 0.0])
    expected = [0.96 + 1.2 * COSINE, 1.2 * SINE]
    assert [float(part) for part in places["E"]] == pytest.approx(expected)


def test_the_right_values_close_every_equation() -> None:
    found = assembled(STAYED_SHELF, {**DATA, **FOUND, "T": 117.6 / (0.96 * SINE),
                                     "R.x": 117.6 / (0.96 * SINE) * COSINE})  # fmt: skip
    assert found.labels == (("shelf", "x"), ("shelf", "y"), ("shelf", "turn"))
    assert found.relative == pytest.approx([0.0], abs=1e-14)


def test_residuals_are_sums_of_forces_and_torques_about_the_origin() -> None:
    """T = 100 N, R = (10, 20) N: along x 10 - 100 cos 40°, and so on."""
    found = assembled(STAYED_SHELF, {**DATA, "T": 100.0, "R.x": 10.0, "R.y": 20.0})
    x, y, turn = found.residual[0]
    assert x == pytest.approx(10.0 - 100.0 * COSINE)
    assert y == pytest.approx(20.0 + 100.0 * SINE - 117.6)
    assert turn == pytest.approx(100.0 * 0.96 * SINE - 117.6)
    assert found.scale[0][:2] == pytest.approx([78.4, 78.4])  # the largest component
    assert found.scale[0][2] == pytest.approx(94.08)  # W_t L, as 78.4 N x the farthest coordinate
    assert found.relative[0] == pytest.approx(max(abs(x) / 78.4, abs(y) / 78.4, abs(turn) / 94.08))


def test_torques_about_another_origin() -> None:
    """About B only R_y, T and the shelf's weight turn."""
    system = system_of(STAYED_SHELF)
    values = with_definitions(system, {**DATA, "T": 100.0, "R.x": 10.0, "R.y": 20.0})
    turn = assemble(system, values, (1.2, 0.5)).residual[0][2]
    about_b = -1.2 * 20.0 + 0.5 * 10.0  # R at (-1.2, -0.5) from there
    about_b += -0.24 * 100.0 * SINE + 0.5 * (-100.0 * COSINE)  # T at (-0.24, -0.5)
    assert turn == pytest.approx(about_b + 0.6 * 39.2)


@pytest.mark.parametrize(
    ("left", "size"),
    [
        (Name("d", "d"), 1.2e-3),  # a thousandth of the longest length, 1.20 m
        (Product((number(2), Name("d", "d"))), 2e-9),  # no quantity by itself
    ],
)
def test_what_a_quantity_is_compared_with_counts_among_its_kind(
    left: Name | Product, size: float
) -> None:
    values = {**DATA, "d": 1e-9}
    zero = Condition("c", left, number(0))
    assert size_of_sides(system_of(STAYED_SHELF), zero, values, 1) == pytest.approx([size])
