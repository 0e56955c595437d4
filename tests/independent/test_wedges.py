"""Wedges about to move, with rough faces above and below, against scipy's root finder."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.independent.by_hand import (
    GRAVITY,
    Acting,
    Balances,
    Parts,
    agreed,
    balance,
    pushing,
    weight_of,
)

HERE = Path(__file__).parent / "wedges"
DRAWS, QUICK = 60, 5
"""Random systems of each situation; every test run compares a few."""
STARTS = 12


def turned(*forces: Acting) -> list[Acting]:
    """What acts the other way round on the other body."""
    return [(place, size, direction + 180) for place, size, direction in forces]


def driven(draw: Parts, *unknowns: float) -> list[float]:
    """A wedge driven in to the right under a block at a rough wall, which rises."""
    return _beside_a_wall(draw, draw["d"], 180, 0, *unknowns)


def pulled(draw: Parts, *unknowns: float) -> list[float]:
    """The same wedge pulled out to the left, the wall there: all friction the other way."""
    return _beside_a_wall(draw, 180 - draw["d"], 0, 180, *unknowns)


def _beside_a_wall(
    draw: Parts, push: float, away: float, turn: float, *unknowns: float
) -> list[float]:
    """push: its direction; away: from the wall; turn: of all friction."""
    n, f, upper, over, lower, under, p = unknowns
    wall = pushing(n, away), pushing(f, 270 + turn)
    faces = pushing(upper, 90 - draw["t"]), pushing(over, -draw["t"] + turn)
    floor = pushing(lower, 90 + draw["s"]), pushing(under, 180 + draw["s"] + turn)
    block = balance(*wall, *faces, pushing(draw["W"], 270))
    wedge = balance(*turned(*faces), *floor, pushing(p, push), weight_of(draw["m"]))
    verges = f - draw["mu"] * n, over - draw["nu"] * upper, under - draw["kappa"] * lower
    return [*block[:2], *wedge[:2], *verges]


def split(draw: Parts, *unknowns: float) -> list[float]:
    """A wedge driven down between a fixed face and a block, which slides to the right."""
    p, n, f, upper, over, lower, under = unknowns
    fixed = pushing(n, draw["t"]), pushing(f, 90 + draw["t"])
    faces = pushing(upper, 180 - draw["s"]), pushing(over, 90 - draw["s"])
    floor = pushing(lower, 90), pushing(under, 180)
    wedge = balance(*fixed, *faces, pushing(p, 270), weight_of(draw["w"]))
    block = balance(*turned(*faces), *floor, weight_of(draw["m"]))
    verges = f - draw["mu"] * n, over - draw["nu"] * upper, under - draw["kappa"] * lower
    return [*wedge[:2], *block[:2], *verges]


def steepest(draw: Parts, t: float, *unknowns: float) -> list[float]:
    """A light wedge that is about to be squeezed out to the left."""
    s, upper, over, lower, under = unknowns
    faces = pushing(upper, 90 - t), pushing(over, 180 - t)
    block = balance(*faces, pushing(s, 180), pushing(draw["W"], 270))
    wedge = balance(*turned(*faces), pushing(lower, 90), pushing(under, 0))
    return [*block[:2], *wedge[:2], over - draw["mu"] * upper, under - draw["nu"] * lower]


def stays(draw: Parts, t: float, *unknowns: float) -> list[float]:
    """A heavy one, whose block would sink along a rough wall."""
    s, along, *faces = unknowns
    light = steepest(draw, t, s, *faces)
    weights = [0.0, along, 0.0, -draw["m"] * GRAVITY, 0.0, 0.0]
    sums = [one + other for one, other in zip(light, weights, strict=True)]
    return [*sums, along - draw["kappa"] * s]


THREE = ("N_1", "f_1", "N_2", "f_2", "N_3", "f_3")
SITUATIONS = [
    (driven, (*THREE, "P")),
    (pulled, (*THREE, "P")),
    (split, ("P", *THREE)),
    (steepest, ("t", "S", "N_1", "f_1", "N_2", "f_2")),
    (stays, ("t", "S", "f_3", "N_1", "f_1", "N_2", "f_2")),
]


@pytest.mark.parametrize("draws", [QUICK, pytest.param(DRAWS, marks=pytest.mark.proof)])
@pytest.mark.parametrize(("balances", "names"), SITUATIONS, ids=[b.__name__ for b, _ in SITUATIONS])
def test_the_pushes_are_those_of_the_balances(
    balances: Balances, names: tuple[str, ...], draws: int
) -> None:
    assert agreed(HERE, balances, names, draws=draws, starts=STARTS) == draws
