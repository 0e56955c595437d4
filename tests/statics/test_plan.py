"""The plan: fewest steps, the pivot that removes most unknowns, refusals that teach."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from probgen.quantities.printing import plain
from probgen.statics.method import Method
from probgen.statics.plan import Plan, find_plan
from probgen.statics.refusal import Refusal
from probgen.statics.system import System

Build = Callable[[str], System]
Values = dict[str, np.ndarray]

HINGE = '[[hinge]]\nat = "A"\nsymbol = "R"\n'
CABLE = '[[cable]]\nat = "C"\ndirection = "180 - theta"\nsymbol = "T"\n'
FIND_T = '[[find]]\nquantity = "T"\n'
FIND_R = '[[find]]\nquantity = "R"\n'


def steps(plan: Plan) -> list[tuple[str, str, str]]:
    return [(s.equation.kind, s.equation.about, s.unknown) for s in plan.steps]


def test_torques_about_the_hinge_come_first(stayed: System, beam_values: Values) -> None:
    plan = find_plan(stayed, beam_values)
    assert steps(plan) == [("torque", "A", "T"), ("force", "x", "R.x"), ("force", "y", "R.y")]
    assert plan.steps[0].removed == ("R.x", "R.y")
    assert plain(plan.steps[0].expression) == "(W_s (L/2) + W_t L)/(d sin θ)"


def test_no_step_is_shown_that_is_not_needed(shelf: Build, beam_values: Values) -> None:
    plan = find_plan(shelf(HINGE + CABLE + FIND_T), beam_values)
    assert steps(plan) == [("torque", "A", "T")]


def test_the_author_may_name_the_pivot(shelf: Build, beam_values: Values) -> None:
    system = shelf('[[hinge]]\nat = "A"\nsymbol = "R"\n' + CABLE + FIND_T + FIND_R)
    plan = find_plan(replace(system, pivot="C"), beam_values)
    assert ("torque", "C", "R.y") in steps(plan)


@pytest.mark.parametrize("form", ["angle", "arm", "components"])
@pytest.mark.parametrize("positive", ["counter-clockwise", "clockwise"])
def test_the_method_changes_no_step(
    stayed: System, beam_values: Values, form: str, positive: str
) -> None:
    plan = find_plan(stayed, beam_values, Method(form, positive))  # type: ignore[arg-type]
    assert steps(plan) == steps(find_plan(stayed, beam_values))


SECOND_HINGE = '[[hinge]]\nat = "B"\nsymbol = "S"\n'
ROLLER = '[[roller]]\nat = "{at}"\nsymbol = "{symbol}"\n'
REFUSED = [
    (
        HINGE + CABLE + SECOND_HINGE + FIND_T,
        r"statically indeterminate: 5 unknowns \(R\.x, R\.y, S\.x, S\.y, T\) but only 3 "
        r"independent equations .*give 2 of them, or take away 2 support reactions",
    ),
    (
        HINGE + CABLE + ROLLER.format(at="B", symbol="N") + FIND_T,
        r"statically indeterminate: 4 unknowns .*take away 1 support reaction$",
    ),
    (HINGE + FIND_R, "unstable: nothing holds the shelf against turning"),
    (CABLE + FIND_T, "unstable: nothing holds the shelf against"),
    (
        ROLLER.format(at="A", symbol="N") + CABLE + FIND_T,
        "unstable: nothing holds the shelf against turning",
    ),
]


@pytest.mark.parametrize(("rest", "message"), REFUSED)
def test_situations_without_an_answer_are_refused(
    shelf: Build, beam_values: Values, rest: str, message: str
) -> None:
    with pytest.raises(Refusal, match=message):
        find_plan(shelf(rest), beam_values)
