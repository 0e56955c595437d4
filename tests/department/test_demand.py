"""A level beside the steps that it takes."""

from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from probgen.department.demand import STEPS, demand
from probgen.department.doubt import DoubtKind
from probgen.problem.problem import prepare
from probgen.working.convention import Convention
from tests.department.worked import worked


@pytest.mark.one_in(8)
@pytest.mark.parametrize("id", sorted(default_bank().files))
def test_supplied_levels_fit(id: str) -> None:
    assert not list(demand(prepare(default_bank().read(id), Convention())))


@pytest.mark.parametrize(
    ("id", "old", "new", "steps"),
    [
        ("stepladder-tie", "level = 5", "level = 2", 14),
        ("seesaw-two-riders", "level = 1", "level = 5", 5),
    ],
)
def test_one_too_low_and_one_too_high(id: str, old: str, new: str, steps: int) -> None:
    (doubt,) = demand(worked(id, old, new)[0])
    least, most = STEPS[int(new[-1])]
    assert (doubt.kind, doubt.count) == (DoubtKind.LEVEL, steps)
    assert doubt.told == f"level {new[-1]} has {least} to {most}"


def test_the_guide_tells_how_many_steps_a_level_has() -> None:
    guide = " ".join((Path(__file__).parents[2] / "templates" / "README.md").read_text().split())
    for level, (least, most) in STEPS.items():
        steps = f"{least} to {most}" if most < 99 else f"{least} or more"
        assert f"{steps} at level {level}" in guide


def test_levels_take_more_and_more() -> None:
    assert list(STEPS) == [1, 2, 3, 4, 5]
    assert [most for _, most in STEPS.values()] == sorted(most for _, most in STEPS.values())
