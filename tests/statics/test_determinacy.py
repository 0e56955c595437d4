"""Whether equilibrium settles a situation: as many independent equations as unknowns, all held."""

from __future__ import annotations

import re

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.statics.determinacy import require_determinate
from probgen.statics.refusal import Refusal
from tests.statics.entries import CABLE, HINGE, HOLDS_ENDS, ball, beam, entry, finding, roller

# The choices of `entries.HEAD`, in coherent units; further draws must not matter.
VALUES = {"L": [2.0, 1.0], "m": [10.0, 20.0], "mu": [0.5, 0.4], "F": [12.0, 15.0],
          "S": [24.0, 30.0], "q": [50.0, 40.0], "g": [9.8, 9.8]}  # fmt: skip


def refusal(template: str) -> str:
    """What is said against a situation; "" where it is determinate."""
    system = read_template(template, "own.toml").system
    values = {id: np.array(choices) for id, choices in VALUES.items()}
    try:
        require_determinate(system, values)
    except Refusal as refused:
        return str(refused)
    return ""


DETERMINATE = [
    beam(HINGE, CABLE, finding("T")),
    beam(HOLDS_ENDS, finding("N_1")),  # two balances, and nothing pushes sideways
    beam(entry("fixed", at="A", symbol="R", couple="M"), finding("M")),
    ball(
        entry("cable", direction=30, symbol="T_1"),
        entry("cable", direction=150, symbol="T_2"),
        finding("T_1"),
    ),
]


@pytest.mark.parametrize("template", DETERMINATE)
def test_as_many_independent_equations_as_unknowns_settle_a_situation(template: str) -> None:
    assert refusal(template) == ""


# Supports, and by the degree of indeterminacy (unknowns less equations) which of their reactions
# share the load: of a beam on rollers the horizontal balance says nothing.
SHARED = [
    ((HOLDS_ENDS, roller("C", "N_3")), 3, 1, {"N_1", "N_2", "N_3"}),
    ((HINGE, CABLE, roller("C", "N_3")), 4, 1, {"R.y", "T", "N_3"}),
    ((HINGE, entry("hinge", at="B", symbol="Q")), 4, 1, {"R.x", "Q.x"}),
    ((HOLDS_ENDS, roller("C", "N_3"), CABLE), 4, 2, {"N_1", "N_2", "N_3", "T"}),
]


@pytest.mark.parametrize(("supports", "unknowns", "degree", "loose"), SHARED)
def test_more_unknowns_than_independent_equations_share_the_load(
    supports: tuple[str, ...], unknowns: int, degree: int, loose: set[str]
) -> None:
    said = refusal(beam(*supports, finding(min(loose).partition(".")[0])))
    found = re.search(r"(\d) unknowns .*only (\d) independent.*\); (.+) cannot.*give (\d)", said)
    assert found is not None
    assert (int(found[1]), int(found[2]), int(found[4])) == (unknowns, unknowns - degree, degree)
    assert set(found[3].split(", ")) == loose


# A support missing, and the motion that its loads then drive.
MOVING = [
    (
        (
            entry("cable", at="A", direction=90, symbol="T_1"),
            entry("cable", at="B", direction=90, symbol="T_2"),
            entry("force", at="B", direction=0, magnitude="F"),
        ),
        "moving sideways",
    ),
    ((roller("A", "N_1", 0), roller("B", "N_2", 180)), "moving up or down"),
    ((HINGE,), "turning"),
    ((roller("A", "N_1"), roller("A", "N_2", 0)), "turning"),
]


@pytest.mark.parametrize(("supports", "motion"), MOVING)
def test_a_motion_that_a_load_drives_and_nothing_resists_is_named(
    supports: tuple[str, ...], motion: str
) -> None:
    said = refusal(beam(*supports, finding(supports[0].partition('symbol = "')[2].split('"')[0])))
    assert motion in said


def test_a_line_of_action_through_the_hinge_has_no_lever_arm() -> None:
    """The cable lies along the beam, and so cannot hold it against turning about A."""
    along = entry("cable", at="B", direction=180, symbol="T")
    said = refusal(beam(HINGE, along, finding("T")))
    assert "line of action of T passes through A" in said
    slanting = entry("cable", at="B", direction=150, symbol="T")
    assert refusal(beam(HINGE, slanting, finding("T"))) == ""


def test_a_force_that_is_given_may_have_to_be_found() -> None:
    """12 N at an end cannot hold 98 N in the middle; a weight is no such force."""
    pulled = entry("cable", at="B", direction=90, magnitude="F", symbol="T")
    assert "let T be found" in refusal(beam(roller("A", "N"), pulled, finding("N")))
    assert "be found" not in refusal(beam(HINGE, finding("R")))


def test_a_condition_against_the_balances_is_told_as_it_is_written() -> None:
    """Each roller bears half of a uniform beam."""
    told = entry("condition", that="N_1 = 2*N_2", because="so told")
    assert "N_1 = 2 N_2 contradicts" in refusal(beam(HOLDS_ENDS, told, finding("N_1")))
    agreed = entry("condition", that="N_1 = N_2", because="so told")
    assert refusal(beam(HOLDS_ENDS, agreed, finding("N_1"))) == ""
