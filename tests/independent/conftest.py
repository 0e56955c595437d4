"""Random beams and frames as the engine works them."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

import numpy as np
import pytest
from numpy.typing import NDArray

from probgen.bank.reading import read_template
from probgen.statics.plan import find_plan
from probgen.statics.proof import TOLERANCE, prove
from probgen.statics.solution import solve
from tests.independent.layouts import KINDS
from tests.independent.sketch import DRAWS, GRAVITY, Layout


def solved(layout: Layout) -> dict[str, NDArray[np.float64]]:
    """Every quantity asked, one entry a draw, as the engine plans, solves and proves it.

    The proof may blame a push or pull that came out the wrong way, and nothing else.
    """
    system = read_template(layout.text, "random.toml").system
    values = {id: np.array([draw[id] for draw in layout.draws]) for id in layout.draws[0]}
    values["g"] = np.full(DRAWS, GRAVITY)
    plan = find_plan(system, values)
    found = solve(plan, values)
    proof = prove(plan, found)
    assert proof.max_residual.max() <= TOLERANCE
    assert proof.second_solver_difference.max() <= TOLERANCE
    one_way = [v.id for v in system.variables.values() if v.nonnegative and v.id in found]
    wrong = np.any([np.broadcast_to(found[id] < 0.0, DRAWS) for id in one_way], axis=0)
    assert [bool(faults) for faults in proof.faults] == list(np.broadcast_to(wrong, DRAWS))
    return {name: np.broadcast_to(value, DRAWS) for name, value in found.items()}


@cache
def worked(kind: str, seed: int) -> tuple[Layout, dict[str, NDArray[np.float64]]]:
    layout = KINDS[kind](seed)
    return layout, solved(layout)


Work = Callable[[str, int], tuple[Layout, dict[str, NDArray[np.float64]]]]


@pytest.fixture
def work() -> Work:
    """From a kind of layout and a seed to the layout and what the engine finds for its draws."""
    return worked
