"""Ropes and bands about to slip round a post or a drum, against scipy's root finder.

The balances are written out by hand; a rope about to slip pulls exp(mu beta) times as hard on the
side to which it would slip.
"""

from __future__ import annotations

from math import exp, radians
from pathlib import Path

import pytest

from tests.independent.by_hand import (
    Balances,
    Parts,
    agreed,
    at,
    balance,
    pushing,
    weight_of,
)

HERE = Path(__file__).parent / "belts"
DRAWS, QUICK = 60, 5
"""Random systems of each situation; every test run compares a few."""
STARTS = 12


def grip(mu: float, contact: float) -> float:
    """How many times as hard a rope pulls beyond a contact; finite wherever a root strays."""
    return exp(min(mu * radians(contact), 50.0))


def bollard(draw: Parts, b: float, *forces: float) -> list[float]:
    """A deckhand about to slide, whose rope is about to slip round a bollard."""
    n, f, s, x, y = forces
    to_bollard = pushing(s, 180 + draw["d"])
    hands = balance(pushing(n, 90), pushing(f, 0), to_bollard, weight_of(draw["m"]))
    post = balance(pushing(draw["T"], 180), pushing(s, draw["d"]), pushing(x, 0), pushing(y, 90))
    slips = draw["T"] * grip(-draw["nu"], b) - s
    return [*hands[:2], *post[:2], f - draw["mu"] * n, slips]


def brake(draw: Parts, *forces: float) -> list[float]:
    """A drum with a hung load in a band about to slip, its slack end on a lever."""
    tension, s, q, hand, x, y, u, v = forces
    tight = (-draw["r"], 0.0), tension, 270
    slack = at(draw["r"], 90 - draw["k"]), s, -draw["k"]
    load = weight_of(draw["m"], (draw["b"], 0.0))
    drum = balance(tight, slack, load, pushing(x, 0), pushing(y, 90))
    push = (draw["L"], 0.0), hand, draw["p"]
    rod = (draw["c"], 0.0), q, 90
    lever = balance(push, rod, pushing(u, 0), pushing(v, 90))
    slips = tension - s * grip(draw["mu"], 180 - draw["k"])
    return [*drum, *lever, slips, q - s]


def bars(draw: Parts, *unknowns: float) -> list[float]:
    """A crate about to slide up, on a rope about to slip on two bars in a row."""
    n, f, t, q, s, mass = unknowns
    slope, rope = draw["t"], pushing(t, draw["t"] + draw["u"])
    held = pushing(n, 90 + slope), pushing(f, 180 + slope)
    crate = balance(*held, rope, weight_of(draw["m"]))
    other = balance(pushing(s, 90), weight_of(mass))
    first, second = grip(draw["nu"], draw["b"]), grip(draw["kappa"], draw["c"])
    return [*crate[:2], other[1], f - draw["mu"] * n, q - t * first, s - q * second]


def coefficient(draw: Parts, nu: float, *forces: float) -> list[float]:
    """A box about to slide down, on a rope about to slip on one bar."""
    n, f, t, s = forces
    held = pushing(n, 90 + draw["t"]), pushing(f, draw["t"]), pushing(t, draw["t"])
    box = balance(*held, weight_of(draw["m"]))
    other = balance(pushing(s, 90), weight_of(draw["M"]))
    slips = t * grip(-nu, draw["b"]) - s
    return [*box[:2], other[1], f - draw["mu"] * n, slips]


SITUATIONS = [
    (bollard, ("b", "N", "f", "S", "R.x", "R.y")),
    (brake, ("T_1", "T_2", "J", "F", "R.x", "R.y", "D.x", "D.y")),
    (bars, ("N", "f", "T", "Q", "S", "M")),
    (coefficient, ("nu", "N", "f", "T", "S")),
]


@pytest.mark.parametrize("draws", [QUICK, pytest.param(DRAWS, marks=pytest.mark.proof)])
@pytest.mark.parametrize(("balances", "names"), SITUATIONS, ids=[b.__name__ for b, _ in SITUATIONS])
def test_the_pulls_are_those_of_the_balances(
    balances: Balances, names: tuple[str, ...], draws: int
) -> None:
    assert agreed(HERE, balances, names, draws=draws, starts=STARTS) == draws
