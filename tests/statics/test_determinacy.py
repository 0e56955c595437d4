"""Whether equilibrium settles a situation: as many independent equations as unknowns, all held."""

from __future__ import annotations

import re

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.statics.definition import settle
from probgen.statics.determinacy import said_already, unsettled
from probgen.statics.line import Line, worked
from probgen.statics.plan import find_plan, wanted_unknowns
from probgen.statics.proof import prove
from probgen.statics.refusal import Refusal
from probgen.statics.rerun import rerun
from tests.statics.entries import CABLE, HINGE, HOLDS_ENDS, ball, beam, entry, finding, roller

# The choices of `entries.HEAD`, in coherent units; further draws must not matter.
VALUES = {"L": [2.0, 1.0], "m": [10.0, 20.0], "mu": [0.5, 0.4], "F": [12.0, 15.0],
          "S": [24.0, 30.0], "q": [50.0, 40.0], "g": [9.8, 9.8]}  # fmt: skip


def refusal(template: str, length: float = 1.0, mass: float = 1.0) -> str:
    """What is said against a situation so many times as long, and as heavy; "" for nothing."""
    system = read_template(template, "own.toml").system
    times = {"L": length, "m": mass, "F": mass, "S": mass}
    values = {id: times.get(id, 1.0) * np.array(choices) for id, choices in VALUES.items()}
    try:
        unsettled(system, values, wanted_unknowns(system))
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


SIZES = [(1e-3, 1.0), (1e3, 1.0), (1.0, 1e-3), (1.0, 1e3), (1e-3, 1e3), (1e3, 1e-3)]


@pytest.mark.parametrize(("length", "mass"), SIZES)
def test_no_size_makes_a_situation_determinate_or_takes_that_from_it(
    length: float, mass: float
) -> None:
    assert refusal(DETERMINATE[0], length, mass) == ""
    assert refusal(DETERMINATE[2], length, mass) == ""
    assert "indeterminate" in refusal(
        beam(HINGE, CABLE, roller("C", "N"), finding("N")), length, mass
    )
    assert "turning" in refusal(beam(HINGE, finding("R")), length, mass)


def test_a_long_heavy_beam_may_be_built_in() -> None:
    """20 t over 40 m: the couple at the wall, 4 MN m, is far from 1 N m, and holds it."""
    assert refusal(DETERMINATE[2], 20.0, 2000.0) == ""


def test_something_has_to_be_looked_for() -> None:
    held = beam(entry("cable", at="C", direction=90, magnitude="F", symbol="T"))
    assert "nothing is unknown" in refusal(held + '[[find]]\nquantity = "T"\n')


# Supports, and by the degree of indeterminacy (unknowns less equations) which of their reactions
# share the load: of a beam on rollers the horizontal balance says nothing.
SHARED = [
    ((HOLDS_ENDS, roller("C", "N_3")), 3, 1, {"N_1", "N_2", "N_3"}),
    ((HINGE, CABLE, roller("C", "N_3")), 4, 1, {"R.y", "T", "N_3"}),
    ((HINGE, entry("hinge", at="B", symbol="Q")), 4, 1, {"R.x", "Q.x"}),
    ((HOLDS_ENDS, roller("C", "N_3"), CABLE), 4, 2, {"N_1", "N_2", "N_3", "T"}),
    (
        (HINGE, entry("hinge", at="B", symbol="Q"), roller("C", "N_3")),
        *(5, 2, {"R.x", "Q.x", "R.y", "Q.y", "N_3"}),  # along the beam by itself, and across it
    ),
]


def rough(at: str, number: int) -> str:
    normal, friction = f"N_{number}", f"f_{number}"
    return entry(
        "rough", at=at, normal=normal, friction=friction, friction_direction=0,
        coefficient="mu", verge=False,
    )  # fmt: skip


# What is asked may be settled all the same: two hinges share what runs along their line alone.
SETTLED = [
    ((HINGE, entry("hinge", at="B", symbol="Q")), "R.y", {"R.x", "Q.x"}),
    ((HOLDS_ENDS, roller("A", "N_3")), "N_2", {"N_1", "N_3"}),
    ((rough("A", 1), rough("B", 2)), "N_1", {"f_1", "f_2"}),  # nor what is limited by it
]


@pytest.mark.parametrize(("supports", "asked", "loose"), SETTLED)
def test_what_is_asked_is_found_where_only_the_rest_shares_the_load(
    supports: tuple[str, ...], asked: str, loose: set[str]
) -> None:
    template = read_template(beam(*supports, f'[[find]]\nquantity = "{asked}"\n'), "own.toml")
    values = {id: np.array(choices) for id, choices in VALUES.items()}
    plan = find_plan(template.system, values)
    assert plan.left_open == loose
    solved = rerun(plan, values)
    assert solved[asked] == pytest.approx(0.5 * values["m"] * values["g"])
    proof = prove(plan, solved)
    assert proof.holds.all()
    assert not loose & proof.values.keys()


@pytest.mark.parametrize(("supports", "unknowns", "degree", "loose"), SHARED)
def test_more_unknowns_than_independent_equations_share_the_load(
    supports: tuple[str, ...], unknowns: int, degree: int, loose: set[str]
) -> None:
    said = refusal(beam(*supports, finding(min(loose).partition(".")[0])))
    found = re.search(r"(\d) unknowns .*only (\d) independent.*\); (.+) cannot.*give (\d)", said)
    assert found is not None
    assert (int(found[1]), int(found[2]), int(found[4])) == (unknowns, unknowns - degree, degree)
    assert set(found[3].split(", ")) == loose
    assert re.findall(r"sum of (\w+) on beam", said) == ["F_x", "F_y", "torques"]


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


# The hinge, and a cable's point and direction; D is 1 m above the middle.
THROUGH = [("A", "B", 180), ("B", "A", 0), ("A", "D", 225), ("B", "D", 315)]


@pytest.mark.parametrize(("hinge", "at", "direction"), THROUGH)
def test_a_line_of_action_through_the_hinge_has_no_lever_arm(
    hinge: str, at: str, direction: int
) -> None:
    """The cable cannot hold the beam against turning; 30 degrees aside, it can."""
    above = 'D = ["L/2", "L/2"]\n'

    def held_by(way: int) -> str:
        cable = entry("cable", at=at, direction=way, symbol="T")
        return refusal(
            beam(entry("hinge", at=hinge, symbol="R"), cable, finding("T"), points=above)
        )

    assert f"of T passes through {hinge}, where R_x, R_y acts" in held_by(direction)
    assert held_by(direction + 30) == ""


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
    assert refusal(beam(HOLDS_ENDS, agreed, finding("N_1"))) == ""  # `find_plan` names it


@pytest.mark.parametrize("said", ["N_1 = N_2", "2*N_2 = m*g", "N_1 + 4*N_2 = 2.5*m*g"])
def test_a_condition_that_all_else_says_already_is_found(said: str) -> None:
    """Of three rollers' forces a condition has to settle one; a further one repeats."""
    news = entry("condition", that="N_3 = N_2/2", because="so told")
    told = entry("condition", that=said, because="so told")
    values = {id: np.array(choices) for id, choices in VALUES.items()}

    def repeated(*entries: str) -> list[str]:
        system = read_template(beam(HOLDS_ENDS, *entries, finding("N_1")), "own.toml").system
        settled, _ = settle(system)
        known = worked((Line(each.variable, each.expression) for each in settled), values)
        return [each.id for each in said_already(system, known)]

    assert repeated(told) == ["1"]
    third = roller("C", "N_3")
    assert repeated(third, news) == []
    assert repeated(third, told) == (["1"] if said == "N_1 = N_2" else [])
    assert len(repeated(third, news, news.replace("N_2/2", "0.5*N_2"))) == 1


ANGLES = "".join(
    f'{id} = {{ name = "angle", unit = "deg", from = 0, to = 90, measured = "from up" }}\n'
    for id in ("alpha", "beta")
)


@pytest.mark.parametrize(("third", "said"), [("alpha", ""), ("beta", "contradicts")])
def test_a_condition_may_follow_from_balances_that_are_not_linear(third: str, said: str) -> None:
    """98 N held by two weights over pulleys: the cosine rule of their closed triangle."""
    template = ball(
        *(
            entry("cable", magnitude=size, direction=f"90 {sign} {angle}", symbol=f"T_{angle[0]}")
            for size, sign, angle in (("9*F", "+", "alpha"), ("3*S", "-", "beta"))
        ),
        entry(
            "condition",
            that=f"(3*S)^2 = (9*F)^2 + (m*g)^2 - 2*(9*F)*m*g*cos({third})",
            because="the forces form a closed triangle",
        ),
        finding("alpha"),
        unknown=ANGLES,
    )
    assert (said in refusal(template)) if said else refusal(template) == ""
