"""What two products of sines and cosines add up to is said where they become one."""

from __future__ import annotations

import pytest

from probgen.working.convention import Convention
from tests.wording.own_telling import told_of

COMPONENTS = Convention(torque="components")

SAID = [
    ("well-windlass", "Here (sin θ)² + (cos θ)² = 1."),
    ("tiptoe-achilles", "Here cos θ cos α + sin θ sin α = cos(θ − α)."),
    ("bent-back-toolbox", "Here sin θ cos(θ − β) − cos θ sin(θ − β) = sin β."),
    (
        "fishing-rod",
        "Here (sin θ)² + (cos θ)² = 1 and cos θ sin β + sin θ cos β = sin(β + θ).",
    ),
]


@pytest.mark.parametrize(("name", "words"), SAID)
def test_a_theorem_is_said_where_two_terms_become_one(name: str, words: str) -> None:
    assert words in told_of(name, COMPONENTS)


@pytest.mark.parametrize("name", ["triceps-band", "diving-board"])
def test_none_is_said_where_each_force_has_one_term(name: str) -> None:
    assert not any(line.startswith("Here ") for line in told_of(name, COMPONENTS))
