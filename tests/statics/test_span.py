"""Where an unknown may lie: as is said of it, and as all that only pulls or pushes leaves it."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.quantities.expression import Name
from probgen.quantities.unit import ANGLE, DEGREE, FORCE, LENGTH, METRE, NEWTON
from probgen.statics.flaw import Flaw, FlawKind
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.refusal import Refusal
from probgen.statics.rerun import rerun
from probgen.statics.span import may_be, span_of
from probgen.statics.system import Role, System, Variable
from tests.situations import HEAD, finding

X = Name("x", "x")
PLACE = Variable(X, LENGTH, METRE, Role.UNKNOWN, nonnegative=True)
SPANS = [
    (PLACE, (0.0, math.inf)),
    (replace(PLACE, low=0.2, high=0.5), (0.2, 0.5)),
    (replace(PLACE, high=0.5), (0.0, 0.5)),
    (Variable(X, FORCE, NEWTON, Role.UNKNOWN), (-math.inf, math.inf)),
    (Variable(X, ANGLE, DEGREE, Role.UNKNOWN), (0.0, 90.0)),
    (Variable(X, ANGLE, DEGREE, Role.UNKNOWN, low=-30.0, high=120.0), (-30.0, 120.0)),
]


@pytest.mark.parametrize(("variable", "span"), SPANS)
def test_where_an_unknown_may_lie(variable: Variable, span: tuple[float, float]) -> None:
    assert span_of(variable) == span


def ring(last: str, to: int, first: str = "F", more: str = "") -> System:
    """A ring pulled by F to the right and by G up, and by `last` at t degrees."""
    return read_template(
        HEAD
        + f"""
[given]
F = {{ name = "pull", choices = [30, 40, 60], unit = "N" }}
G = {{ name = "other pull", choices = [40, 50, 60], unit = "N" }}
[unknown]
t = {{ name = "direction", symbol = "theta", unit = "deg", from = 0, to = {to} }}
{more}
[body.ring]
particle = true
[[cable]]
direction = 0
{first}
[[cable]]
direction = 90
magnitude = "G"
[[{last}]]
direction = "t"
{{}}
""".replace("{}", 'symbol = "T"' if not more else 'magnitude = "T"')
        + finding("t"),
        "own.toml",
    ).system


KNOWN = 'magnitude = "F"'
VALUES = {"F": np.array([30.0, 40.0]), "G": np.array([40.0, 30.0]), "g": np.full(2, 9.8)}


@pytest.mark.parametrize("last", ["cable", "strut", "force"])
def test_what_acts_one_way_alone_tells_a_direction_over_a_whole_turn(last: str) -> None:
    """30 N and 40 N are held by 50 N down and to the left: 180 + arctan(4/3) degrees."""
    system = ring(last, 360, KNOWN)
    plan = find_plan(system, VALUES)
    solved = rerun(plan, VALUES)
    expected = 180.0 + np.degrees(np.arctan2(VALUES["G"], VALUES["F"]))
    assert solved["t"] == pytest.approx(expected)
    assert prove(plan, solved).holds.all()
    assert may_be(system, "t", expected, VALUES).all()
    assert not may_be(system, "t", expected - 180.0, VALUES).any()  # T would have to be -50 N
    assert not may_be(system, "t", expected - 90.0, VALUES).any()


EITHER_WAY = 'T = { name = "force", unit = "N" }'


def test_a_force_that_may_point_either_way_leaves_both() -> None:
    with pytest.raises(Refusal, match="t has more than one possible value between 0 and 360"):
        find_plan(ring("force", 360, KNOWN, EITHER_WAY), VALUES)
    above = EITHER_WAY.replace('"N"', '"N", from = 0')
    find_plan(ring("force", 360, KNOWN, above), VALUES)


def test_a_cable_that_nobody_asks_for_speaks_against_an_angle() -> None:
    """G = 80 N sin(t - 180): t = 210 or 330 degrees, and at 330 the first cable would push."""
    system = ring("cable", 360, 'symbol = "S"', 'T = { name = "size", unit = "N" }')
    stated = replace(system.variables["T"], role=Role.GIVEN)
    system = replace(system, variables={**system.variables, "T": stated})
    values = {**VALUES, "G": np.full(2, 40.0), "T": np.full(2, 80.0)}
    plan = find_plan(system, values)
    assert rerun(plan, values)["t"] == pytest.approx(np.full(2, 210.0))


def test_what_hangs_together_otherwise_speaks_against_nothing() -> None:
    """Two unknown angles: what follows from one of them is not found by linear equations."""
    two = ring("cable", 360, 'symbol = "S"').variables["t"]
    system = ring("cable", 360, KNOWN)
    other = replace(two, as_name=Name("u", "u"))
    turned = tuple(
        replace(force, direction=other.as_name) if force.id == "G" else force
        for force in system.forces
    )
    system = replace(system, variables={**system.variables, "u": other}, forces=turned)
    assert may_be(system, "t", np.array([0.0, 100.0]), VALUES).all()


def test_a_draw_whose_direction_lies_across_a_right_angle_is_told_as_that() -> None:
    """In the third draw the pull of 40 N is to the left, and the third cable's to the right."""
    plan = find_plan(ring("cable", 360, KNOWN), VALUES)
    more = {"F": np.array([30.0, 40.0, -40.0]), "G": np.array([40.0, 30.0, 40.0])}
    proof = prove(plan, rerun(plan, {**more, "g": np.full(3, 9.8)}))
    assert proof.faults[:2] == ((), ())
    (flaw,) = proof.faults[2]
    assert flaw == Flaw(FlawKind.OTHER_FORMULA, "t", value=flaw.value)
    assert flaw.value == pytest.approx(315.0)
