from collections.abc import Callable

import numpy as np
import pytest

from probgen.bank.template import Template
from probgen.draws.draw import draw
from probgen.draws.requirement import requirements_hold, stacked
from probgen.input.fault import InputError


def test_all_draws_are_judged_together(hook: Callable[..., Template]) -> None:
    values = {"L": np.array([0.5, 0.6, 0.7, 0.8]), "T": np.array([1.0, 1.0, 1.0, 30.0])}
    assert requirements_hold(hook(), values).tolist() == [False, False, True, False]


@pytest.mark.parametrize(
    ("relation", "held"), [("<", False), ("<=", True), (">=", True), (">", False)]
)
def test_equality_allows_for_the_rounding_of_floats(
    hook: Callable[..., Template], relation: str, held: bool
) -> None:
    equal = 0.1 + 0.5
    assert bool(requirements_hold(hook(relation=relation), {"L": equal, "T": 0.0})) == held


@pytest.mark.parametrize(
    ("relation", "length", "held"),
    [
        *((">=", 0.6 * (1 - 5e-10), True), (">=", 0.6 * (1 - 2e-9), False)),
        *(("<=", 0.6 * (1 + 5e-10), True), ("<=", 0.6 * (1 + 2e-9), False)),
        *((">", 0.6 * (1 - 5e-10), False), ("<", 0.6 * (1 + 5e-10), False)),
        *((">=", 5.0, True), ("<=", 5.0, False), (">=", 0.1, False), ("<=", 0.1, True)),
    ],
)
def test_the_slack_is_a_billionth(
    hook: Callable[..., Template], relation: str, length: float, held: bool
) -> None:
    assert bool(requirements_hold(hook(relation=relation), {"L": length, "T": 0.0})) is held


def test_requirements_on_results_wait_for_them(hook: Callable[..., Template]) -> None:
    values = {"L": np.array([0.5, 0.7])}
    assert requirements_hold(hook(), values, known_only=True).tolist() == [False, True]
    with pytest.raises(InputError, match="asked for"):
        requirements_hold(hook(), values)


def test_draws_are_stacked_to_arrays(hook: Callable[..., Template]) -> None:
    draws = [draw(hook(), "s", student) for student in "abc"]
    values = stacked(draws)
    assert values["m"].tolist() == [each.coherent()["m"] for each in draws]
    assert stacked([]) == {}
