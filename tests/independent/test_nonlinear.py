"""Situations whose balances are not linear in what is asked, against scipy's root finder.

Each template in nonlinear/ is drawn many times; its balances are written out here by hand, force
by force, and solved from many starts.  Exactly one root is possible, and it has to be ours.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from math import atan2, cos, degrees, radians, sin
from pathlib import Path
from random import Random

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import root

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from probgen.statics.system import Variable

HERE = Path(__file__).parent / "nonlinear"
AGREEMENT = 1e-6
"""Largest difference, relative to the value."""
DRAWS = 30
STARTS = 12
GRAVITY = 9.8


Place = tuple[float, float]
Acting = tuple[Place, float, float]
"""A force: its point, size and direction."""
Parts = Mapping[str, float]
"""One draw, by id."""


def at(length: float, direction: float) -> Place:
    return length * cos(radians(direction)), length * sin(radians(direction))


def balance(*forces: Acting) -> list[float]:
    """Sums of F_x, F_y and torques about the origin of forces (point, size, direction)."""
    sums = [0.0, 0.0, 0.0]
    for (x, y), size, direction in forces:
        along, up = at(size, direction)
        sums = [a + b for a, b in zip(sums, (along, up, x * up - y * along), strict=True)]
    return sums


ORIGIN = (0.0, 0.0)
"""The foot of a bar; where all forces on a particle act."""


def weight_of(mass: float, point: Place = ORIGIN) -> Acting:
    return point, mass * GRAVITY, 270


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


def drawn(template: Template) -> dict[str, NDArray[np.float64]]:
    """Draws with every given anywhere between its values, by column."""
    random = Random(template.id)
    values = {"g": np.full(DRAWS, GRAVITY)}
    for given in template.givens:
        low, high = (float(value) * given.unit.factor for value in given.choices)
        values[given.id] = np.array([random.uniform(low, high) for _ in range(DRAWS)])
    return values


def possible_roots(
    balances: Callable[..., list[float]],
    draw: Parts,
    names: Sequence[str],
    variables: Mapping[str, Variable],
) -> list[dict[str, float]]:
    """Every root scipy finds within the range of the first unknown, no push being negative."""
    first = variables[names[0]]
    assert first.low is not None
    assert first.high is not None
    low, high = first.low / first.unit.factor, first.high / first.unit.factor
    size = (draw["m"] + draw.get("M", 0.0)) * GRAVITY
    scale = np.array([1.0] + [size] * (len(names) - 1))
    found: dict[float, dict[str, float]] = {}
    for start in np.linspace(low, high, STARTS + 2)[1:-1]:
        begin = np.array([start] + [1.0] * (len(names) - 1))
        reached = root(lambda x: np.array(balances(draw, *(x * scale))) / size, begin, tol=1e-13)
        values = dict(zip(names, reached.x * scale, strict=True))
        residual = np.max(np.abs(balances(draw, *values.values()))) / size
        pushes = [values[name] for name in names if variables[name].nonnegative]
        if residual < 1e-10 and low <= values[names[0]] <= high and min(pushes, default=0.0) >= 0.0:
            found[round(values[names[0]], 6)] = values
    return list(found.values())


@pytest.mark.parametrize(
    ("balances", "names"), SITUATIONS, ids=[balances.__name__ for balances, _ in SITUATIONS]
)
def test_the_one_possible_root_is_found(
    balances: Callable[..., list[float]], names: tuple[str, ...]
) -> None:
    path = HERE / f"{balances.__name__}.toml"
    template = read_template(path.read_text(encoding="utf-8"), path.name)
    values = drawn(template)
    plan = find_plan(template.system, values)
    ours = solve(plan, values)
    assert not any(prove(plan, ours).faults)
    for place in range(DRAWS):
        draw = {id: float(column[place]) for id, column in values.items()}
        (theirs,) = possible_roots(balances, draw, names, template.system.variables)
        for name in set(names) & set(ours):
            own = np.asarray(ours[name])[place]
            assert own == pytest.approx(theirs[name], rel=AGREEMENT), (name, draw)
