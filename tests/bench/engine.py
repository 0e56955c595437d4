"""The statics engine beside numpy's solver on the same systems, and the time to find a plan."""

from collections.abc import Sequence
from functools import partial

import numpy as np
from numpy.typing import NDArray

from probgen.bank.bank import default_bank
from probgen.bank.template import Template
from probgen.draws.draw import Draw
from probgen.problem.problem import Problem, coherent_values, draw_class, prepare
from probgen.quantities.expression import Values
from probgen.statics.numeric_equations import assemble
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from probgen.working.convention import Convention
from tests.bench.line import at_most, seconds

_DRAWS = 20_000
_DIFFERENT = 200
_TIMES = 5
_TYPICAL = "beam-stay-cable"  # one body, three unknowns that hang together


def bench() -> None:
    bank = default_bank()
    templates = [bank.read(id) for id in bank.files]
    slowest = max(seconds(partial(prepare, t, Convention())) for t in templates)
    at_most("plan-of-the-worst-template", slowest, 0.3, "s")
    _bench_draws(bank.read(_TYPICAL))


def _bench_draws(template: Template) -> None:
    """Both see the same systems: ours as values of givens, numpy's solver as matrices."""
    problem = prepare(template, Convention())
    draws = draw_class(problem, "bench", [str(n) for n in range(_DIFFERENT)]).draws
    values = _many(problem, draws)
    solved = solve(problem.plan, values)
    matrix, right = _as_matrices(problem, solved)
    assert np.allclose(
        np.linalg.solve(matrix, right)[..., 0],
        np.stack([np.broadcast_to(solved[n], _DRAWS) for n in template.system.unknowns], axis=1),
    )
    bare = seconds(lambda: np.linalg.solve(matrix, right), _TIMES)
    evaluated = seconds(lambda: solve(problem.plan, values), _TIMES)
    proved = seconds(lambda: prove(problem.plan, solve(problem.plan, values)), _TIMES)
    print(f"{template.id}: {_DRAWS / evaluated:,.0f} draws evaluated a second, "
          f"{_DRAWS / proved:,.0f} proved, {_DRAWS / bare:,.0f} by numpy.linalg.solve")  # fmt: skip
    at_most("draws-evaluated-beside-numpy", evaluated / bare, 3.0)
    at_most("draws-proved-beside-numpy", proved / bare, 8.0)


def _many(problem: Problem, draws: Sequence[Draw]) -> dict[str, NDArray[np.float64]]:
    values = coherent_values(draws, problem.convention)
    return {name: np.resize(column, _DRAWS) for name, column in values.items()}


def _as_matrices(
    problem: Problem, solved: Values
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Coefficients and right sides of the linear balances, found by changing one unknown a time."""
    system = problem.template.system
    without = dict(solved) | {name: np.zeros(_DRAWS) for name in system.unknowns}
    free = assemble(system, without).residual
    columns = [
        assemble(system, without | {name: np.ones(_DRAWS)}).residual - free
        for name in system.unknowns
    ]
    return np.stack(columns, axis=-1), -free[..., np.newaxis]
