"""What rounding on the way carries into a result.

By hand, the shelf to three figures: its weights (39.2 N, 78.4 N) are off by 0.05 N, so that T is by
0.05 N (0.60 m + 1.20 m)/(0.96 m sin 40) = 0.1459 N and, rounded to 191 N itself, by 0.6459 N where
it is put in: R_x = T cos 40 is off by 0.4948 N, R_y = W_s + W_t - T sin 40 by 0.5151 N.
"""

from __future__ import annotations

import numpy as np
import pytest

from probgen.quantities.expression import Value
from probgen.working.asked import asked_answers
from probgen.working.carried import carried_into
from probgen.working.tolerance import half_width
from tests.situations import STAYED_SHELF, worked

CARRIED = {"W_s": 0.0, "T": 0.1459, "R.x": 0.4948, "R.y": 0.5151}


@pytest.mark.parametrize(("id", "off"), CARRIED.items())
def test_each_number_on_the_way_is_rounded(id: str, off: float) -> None:
    _, own = worked(STAYED_SHELF)

    def half(name: str) -> float:
        return 0.5 if name == "T" else 0.05

    assert carried_into(own.case.plan, id, own.case.values, half) == pytest.approx(off, abs=1e-4)


def test_draws_together_are_as_each_alone() -> None:
    _, own = worked(STAYED_SHELF)
    many = {id: np.array([each, each]) for id, each in own.case.values.items()}

    def half(name: str) -> Value:
        return np.array([0.5, 1.0])

    both = carried_into(own.case.plan, "T", many, half)
    assert both == pytest.approx([1.4585, 2.9170], rel=1e-4)  # both weights off by 0.5 N, by 1 N


def test_what_no_line_reaches_may_be_off_by_anything() -> None:
    _, own = worked(STAYED_SHELF)
    assert carried_into(own.case.plan, "elsewhere", own.case.values, lambda name: 0.0) == np.inf


HEAVY = STAYED_SHELF.replace("[4.0]", "[400]").replace("[8.0]", "[800]")
SCREW = (
    HEAVY.replace(
        "[points]", '[given.r]\nname = "mean radius"\nchoices = [12]\nunit = "mm"\n[points]'
    )
    + '[[find]]\nvalue = "T*r/L"\nunit = "N"\nsymbol = "F"\nname = "force on the bar"\n'
)


def test_a_small_multiple_of_a_large_force_is_asked_as_closely_as_any() -> None:
    """T = 19 058 N is known to 50 N, and F = T/100 = 190.6 N to less than the 2% of it."""
    problem, own = worked(SCREW)
    (found,) = (each.id for each in own.answers if each.symbol == "F")
    assert half_width(own.digits, found) == pytest.approx(0.02 * 190.58, rel=1e-4)
    solved = {id: np.array([value]) for id, value in own.case.values.items()}
    asked = asked_answers(problem.plan, problem.template.labels, problem.convention, solved)
    place = list(problem.plan.system.asked).index(found)
    assert asked.halves[0][place] == pytest.approx(0.02 * 190.58, rel=1e-4)


def test_a_small_difference_of_large_forces_is_not_asked_closer_than_they_are() -> None:
    """R_y = 11 760 N - 12 250 N = -490 N, where T sin 40 is known to 41.5 N, each weight to 5 N."""
    _, own = worked(HEAVY)
    assert half_width(own.digits, "R.y") == pytest.approx(50.0)
