"""Balances written out by hand, force by force, and solved by scipy's root finder.

A situation is a template and its balances.  The template is drawn many times, each given anywhere
between its two values; the balances are solved from many starts.  Exactly one root is possible,
and it has to be ours.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import product
from math import cos, radians, sin
from pathlib import Path
from random import Random

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import root

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.quantities.unit import KILOGRAM, NEWTON
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from probgen.statics.system import Variable

AGREEMENT = 1e-6
"""Largest difference, relative to the value."""
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


def pushing(size: float, direction: float) -> Acting:
    """A force on a particle."""
    return ORIGIN, size, direction


Balances = Callable[..., list[float]]
"""Of a draw and the unknowns in their order: what is zero at rest."""


def agreed(
    folder: Path, balances: Balances, names: Sequence[str], *, draws: int, starts: int
) -> int:
    """How many draws of a template, named after its balances, were compared.

    names: our ids of the unknowns; starts: for each of them that has a range.
    """
    path = folder / f"{balances.__name__}.toml"
    template = read_template(path.read_text(encoding="utf-8"), path.name)
    values = drawn(template, draws)
    plan = find_plan(template.system, values)
    told = solve(plan, values)
    proof = prove(plan, told)
    assert not any(proof.faults)
    unknowns = {name: template.system.variables[name] for name in names}
    asked = {str(number) for find in template.system.finds for number in find.numbers}
    assert asked <= told.keys()
    assert asked <= unknowns.keys()
    for place in range(draws):
        draw = {id: float(column[place]) for id, column in values.items()}
        (theirs,) = possible_roots(balances, draw, unknowns, size(template, draw), starts)
        for ours in (told, proof.values):  # the second solver finds what no step was needed for
            for name in theirs.keys() & ours.keys():
                own = float(np.broadcast_to(ours[name], draws)[place])
                assert own == pytest.approx(theirs[name], rel=AGREEMENT), (name, draw)
        assert theirs.keys() <= proof.values.keys()
    return draws


def drawn(template: Template, draws: int) -> dict[str, NDArray[np.float64]]:
    """Draws with every given anywhere between its values, by column."""
    random = Random(template.id)
    values = {"g": np.full(draws, GRAVITY)}
    for given in template.givens:
        low, high = (float(value) * given.unit.factor for value in given.choices)
        values[given.id] = np.array([random.uniform(low, high) for _ in range(draws)])
    return values


def size(template: Template, draw: Parts) -> float:
    """The known weights and forces of a draw, taken together (N)."""
    units = {given.id: given.unit for given in template.givens}
    weights = sum(draw[id] * GRAVITY for id, unit in units.items() if unit == KILOGRAM)
    return weights + sum(draw[id] for id, unit in units.items() if unit == NEWTON)


def possible_roots(
    balances: Balances,
    draw: Parts,
    unknowns: Mapping[str, Variable],
    size: float,
    starts: int,
) -> list[dict[str, float]]:
    """Every root scipy finds within the ranges of the unknowns, no push being negative."""
    ranges = {
        name: (each.low, each.high)
        for name, each in unknowns.items()
        if each.low is not None and each.high is not None
    }
    sizes = {NEWTON: size, KILOGRAM: size / GRAVITY}
    scale = np.array([sizes.get(each.unit, 1.0) for each in unknowns.values()])
    grids = (
        np.linspace(*ranges[name], starts + 2)[1:-1] if name in ranges else [1.0]
        for name in unknowns
    )
    found: dict[tuple[float, ...], dict[str, float]] = {}
    for start in product(*grids):
        reached = root(lambda x: np.array(balances(draw, *(x * scale))) / size, start, tol=1e-13)
        values = dict(zip(unknowns, (reached.x * scale).tolist(), strict=True))
        residual = np.max(np.abs(balances(draw, *values.values()))) / size
        within = all(low <= values[name] <= high for name, (low, high) in ranges.items())
        pushes = [values[name] for name, each in unknowns.items() if each.nonnegative]
        if residual < 1e-10 and within and min(pushes, default=0.0) >= 0.0:
            found[tuple(round(values[name], 6) for name in ranges)] = values
    return list(found.values())
