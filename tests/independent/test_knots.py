"""Knots with two cords whose directions are both unknown, against scipy's root finder."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.independent.by_hand import GRAVITY, Balances, Parts, agreed, balance, pushing, weight_of

HERE = Path(__file__).parent / "knots"
DRAWS, QUICK = 50, 5
"""Random systems of each situation; every test run compares a few."""
STARTS = 5


def hung(draw: Parts, a: float, b: float) -> list[float]:
    """A weight between two others, which hang over smooth pulleys."""
    left = pushing(draw["p"] * GRAVITY, 180 - a)
    right = pushing(draw["q"] * GRAVITY, b)
    return balance(left, right, weight_of(draw["M"]))[:2]


def pulled(draw: Parts, a: float, b: float) -> list[float]:
    """A ring in a level plane, with three cords of known pulls, the directions of two unknown."""
    cords = pushing(draw["T"], a), pushing(draw["S"], -b)
    return balance(*cords, pushing(draw["F"], 180))[:2]


def garland(draw: Parts, a: float, b: float, t: float, s: float) -> list[float]:
    """Two weights on one cord, with a known pull between them."""
    left = pushing(draw["H"], -draw["c"]), pushing(t, 180 - a), weight_of(draw["m"])
    right = pushing(draw["H"], 180 - draw["c"]), pushing(s, b), weight_of(draw["M"])
    return [*balance(*left)[:2], *balance(*right)[:2]]


SITUATIONS = [
    (hung, ("a", "b")),
    (pulled, ("a", "b")),
    (garland, ("a", "b", "T", "S")),
]


@pytest.mark.parametrize("draws", [QUICK, pytest.param(DRAWS, marks=pytest.mark.proof)])
@pytest.mark.parametrize(("balances", "names"), SITUATIONS, ids=[b.__name__ for b, _ in SITUATIONS])
def test_the_directions_are_those_of_the_balances(
    balances: Balances, names: tuple[str, ...], draws: int
) -> None:
    assert agreed(HERE, balances, names, draws=draws, starts=STARTS) == draws
