"""Situations whose balances are not linear in what is asked, against scipy's root finder.

Their balances are written out here by hand, force by force.
"""

from __future__ import annotations

from collections.abc import Callable
from math import atan2, cos, degrees, radians
from pathlib import Path

import pytest

from tests.independent.by_hand import ORIGIN, Parts, agreed, at, balance, weight_of

HERE = Path(__file__).parent / "nonlinear"
DRAWS = 30
STARTS = 12


def parcel(draw: Parts, t: float, n: float, f: float) -> list[float]:
    """On a ramp, on the verge of sliding down against a level push."""
    forces = (ORIGIN, draw["F"], 0), (ORIGIN, n, 90 + t), (ORIGIN, f, t), weight_of(draw["m"])
    return [*balance(*forces)[:2], f - draw["mu"] * n]


def pull(draw: Parts, t: float, n: float, f: float) -> list[float]:
    """A crate on the verge of sliding, pulled at an angle."""
    forces = (ORIGIN, draw["F"], t), (ORIGIN, n, 90), (ORIGIN, f, 180), weight_of(draw["m"])
    return [*balance(*forces)[:2], f - draw["mu"] * n]


def lean(draw: Parts, t: float, n: float, f: float, s: float) -> list[float]:
    """A ladder on the verge of slipping, with a climber on it, at a smooth wall."""
    ladder = weight_of(draw["m"], at(draw["L"] / 2, t))
    climber = weight_of(draw["M"], at(draw["c"], t))
    wall = at(draw["L"], t), s, 180
    floor = (ORIGIN, n, 90), (ORIGIN, f, 0)
    return [*balance(ladder, climber, wall, *floor), f - draw["mu"] * n]


def rough(draw: Parts, t: float, n: float, f: float, s: float, h: float) -> list[float]:
    """The same ladder on the verge of slipping at a rough wall too."""
    upper = at(draw["L"], t), h, 90
    ends = *lean(draw, t, n, f, s)[:3], f - draw["mu"] * n, h - draw["nu"] * s
    return [a + b for a, b in zip(ends, [*balance(upper), 0.0, 0.0], strict=True)]


def peg(draw: Parts, t: float, n: float, s: float) -> list[float]:
    """A rod with its foot at a smooth wall, over a smooth peg at a distance from it."""
    edge = at(draw["d"] / cos(radians(t)), t), s, 90 + t
    return balance(weight_of(draw["m"], at(draw["L"] / 2, t)), (ORIGIN, n, 0), edge)


def trough(draw: Parts, t: float, n: float, s: float) -> list[float]:
    """A rod with its ends on two smooth planes."""
    planes = (ORIGIN, n, 90 - draw["p"]), (at(draw["L"], t), s, 90 + draw["q"])
    return balance(weight_of(draw["m"], at(draw["r"], t)), *planes)


def spring(draw: Parts, t: float, x: float, y: float) -> list[float]:
    """A bar hinged at its foot, kept from falling by a level spring at its top."""
    end = at(draw["L"], 90 - t)
    held = end, draw["k"] * (end[0] - draw["b"]), 180
    middle = at(draw["L"] / 2, 90 - t)
    return balance(weight_of(draw["m"], middle), held, (ORIGIN, x, 0), (ORIGIN, y, 90))


def anchor(draw: Parts, h: float, x: float, y: float) -> list[float]:
    """A level beam on a cable of known tension, whose anchor's height is wanted."""
    cable = (draw["L"], 0.0), draw["T"], degrees(atan2(h, -draw["L"]))
    weight = weight_of(draw["m"], (draw["L"] / 2, 0.0))
    return balance(weight, cable, (ORIGIN, x, 0), (ORIGIN, y, 90))


SITUATIONS = [
    (parcel, ("t", "N", "f")),
    (pull, ("t", "N", "f")),
    (lean, ("t", "N", "f", "S")),
    (rough, ("t", "N", "f", "S", "h")),
    (peg, ("t", "N", "S")),
    (trough, ("t", "N", "S")),
    (spring, ("t", "R.x", "R.y")),
    (anchor, ("h", "R.x", "R.y")),
]
"""The balances written out, and our ids of their unknowns: the one with a range, then forces."""


@pytest.mark.parametrize(
    ("balances", "names"), SITUATIONS, ids=[balances.__name__ for balances, _ in SITUATIONS]
)
def test_the_one_possible_root_is_found(
    balances: Callable[..., list[float]], names: tuple[str, ...]
) -> None:
    assert agreed(HERE, balances, names, draws=DRAWS, starts=STARTS) == DRAWS
