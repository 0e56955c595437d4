"""States that share nothing to be found, and what belongs to each."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import UNITY
from probgen.statics.equation import Equation
from probgen.statics.method import Method
from probgen.statics.refusal import Refusal
from probgen.statics.state import limits_to, state_of, steps_of_state, utmost_finds, way_sought
from probgen.statics.step import Step
from probgen.statics.system import Find, Form
from tests.situations import (
    EITHER_WAY,
    HOLDS,
    SLIDES,
    SLOPE,
    TIPS,
    cabinet,
    crate,
    finding,
    system_of,
)
from tests.two_states import two_crates

LEAST, MOST = Find("T", Form.SMALLEST), Find("T_2", Form.LARGEST)


def test_the_finds_that_ask_how_far() -> None:
    assert utmost_finds(system_of(two_crates() + finding("N"))) == (LEAST, MOST)
    assert [way_sought(each) for each in (LEAST, MOST)] == [-1.0, 1.0]


def test_a_state_has_its_own_body_forces_limits_and_questions() -> None:
    """And quantities that data settle, such as the weights, stand in both."""
    system = system_of(two_crates() + finding("N") + finding("N_2"))
    least, most = state_of(system, LEAST), state_of(system, MOST)
    assert [body.id for body in least.bodies] == ["crate"]
    assert [body.id for body in most.bodies] == ["second"]
    assert set(least.unknowns) == {"T", "N", "f"}
    assert set(most.unknowns) == {"T_2", "N_2", "f_2"}
    assert {force.body for force in most.forces} == {"second"}
    assert [find.quantity for find in least.finds] == ["T", "N"]
    assert [find.quantity for find in most.finds] == ["T_2", "N_2"]
    assert [limit.id for limit in limits_to(system, LEAST)] == ["down"]
    assert [limit.id for limit in limits_to(system, MOST)] == ["up"]
    assert {"W_c", "W_2"} <= least.variables.keys() & most.variables.keys()


def test_one_utmost_value_has_the_whole_system_and_all_limits() -> None:
    system = system_of(cabinet() + SLIDES + TIPS + finding("P", "largest"))
    (find,) = utmost_finds(system)
    assert state_of(system, find) is system
    assert limits_to(system, find) == system.limits


def test_whether_limits_hold_is_asked_of_all() -> None:
    system = system_of(cabinet("100") + SLIDES + TIPS + HOLDS)
    assert limits_to(system, system.finds[0]) == system.limits


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        (
            crate() + SLOPE + EITHER_WAY + finding("T", "smallest") + finding("T", "largest"),
            "the smallest and the largest T are asked of one state",
        ),
        (
            crate() + SLOPE + EITHER_WAY + finding("T", "largest") + finding("N", "largest"),
            "the largest T and the largest N are asked of one state",
        ),
    ],
    ids=["both ends", "two"],
)
def test_two_of_one_state_are_refused(text: str, asked: str) -> None:
    system = system_of(text)
    with pytest.raises(Refusal, match=f"^{asked}: give each a body of its own"):
        state_of(system, utmost_finds(system)[1])


def test_a_limit_of_both_makes_one_state() -> None:
    both = '[[limit]]\nid = "both"\nthat = "T + T_2 <= 900 N"\nname = "the winch gives way"\n'
    with pytest.raises(Refusal, match="of one state"):
        state_of(system_of(two_crates() + both), LEAST)


def test_a_shared_unknown_makes_one_state() -> None:
    """The two crates on one slope that is to be found."""
    text = two_crates().replace('theta = { name = "slope"', 'phi = { name = "slope"')
    unknown = '[unknown]\ntheta = { name = "slope", unit = "deg" }\n[body.crate]'
    system = system_of(text.replace("[body.crate]", unknown))
    with pytest.raises(Refusal, match="of one state"):
        state_of(system, LEAST)


def test_steps_of_a_state_and_those_of_others() -> None:
    system = system_of(two_crates())
    steps = [_step(name) for name in ("N_2", "N", "f", "T_2", "T")]
    own, others = steps_of_state(system, steps, LEAST)
    assert [step.unknown for step in own] == ["N", "f", "T"]
    assert [step.unknown for step in others] == ["N_2", "T_2"]


def _step(unknown: str) -> Step:
    return Step(unknown, Equation("force", ("crate",), "x", (), Method()), UNITY)
