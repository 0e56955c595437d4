"""Whether a moment is the largest in its body, of several draws at once."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.statics.flaw import FlawKind
from probgen.statics.largest_moment import _Along, _Load, larger_elsewhere
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from tests.bank.test_largest_moment import DOWN, EVEN, asked
from tests.bank.test_section import BEAM, BUILT_IN, ON_TWO, TURNED, read, spread

VALUES = {"L": [6.0] * 3, "a": [1.5] * 3, "d": [2.5] * 3, "w": [120.0] * 3, "g": [9.8] * 3}
HANGING = ON_TWO.replace('at = "B"', 'at = "E"')  # a roller at 5 m of 6 m
FROM_B = 'between = ["A", "B"]\nfrom = "B"'
UPWARD = DOWN.replace("270", "90")
CASES = [
    # the load F at 1.5 m in three draws, what is asked, in which draws the moment is larger
    # elsewhere and, of these, how far that is from the point the place is told from
    (ON_TWO + EVEN + DOWN, asked('at = "C"'), [100, 300, 900], {0: 2.7917, 1: 2.375}),
    (ON_TWO + EVEN + DOWN, asked('between = ["C", "B"]'), [100, 300, 900], {2: 1.5}),
    # what hangs over the roller takes 60 N m, whatever the load
    (HANGING + EVEN + DOWN, asked('between = ["C", "E"]'), [100, 300, 900], {2: 1.5}),
    (HANGING + EVEN + DOWN, asked('at = "E"'), [100, 300, 900], {0: 2.15, 1: 1.65, 2: 1.5}),
    # built in: the wall holds w L^2/2 = 2160 N m, less what is pushed up 4.5 m away
    (BUILT_IN + EVEN + UPWARD, asked('at = "B"'), [0, 300, 700], {2: 700 / 120}),
    # a couple of 400 N m alone at 1.5 m of 6 m: three quarters of it beyond, a quarter before
    (ON_TWO + TURNED, asked('at = "C"', 'just = "after"'), [0, 0, 0], {}),
    (ON_TWO + TURNED, asked('at = "C"', 'just = "before"'), [0, 0, 0], {0: 1.5, 1: 1.5, 2: 1.5}),
    (ON_TWO + spread("B", "A", "0", '"w"'), asked(FROM_B), [0, 0, 0], {}),
]


@pytest.mark.parametrize(("text", "find", "loads", "larger"), CASES)
def test_a_moment_that_is_larger_elsewhere(
    text: str, find: str, loads: list[float], larger: dict[int, float]
) -> None:
    system = read(BEAM + text + find).system
    given = {id: np.array(each, float) for id, each in (VALUES | {"F": loads}).items()}
    plan = find_plan(system, given)
    found = prove(plan, solve(plan, given))
    flaws = [
        [f.value for f in faults if f.kind is FlawKind.LARGER_ELSEWHERE] for faults in found.faults
    ]
    assert {place for place, own in enumerate(flaws) if own} == larger.keys()
    for place, far in larger.items():
        assert flaws[place] == pytest.approx([far], rel=1e-4)


def test_a_value_that_is_not_the_one_there_is_refused() -> None:
    system = read(BEAM + ON_TWO + EVEN + asked('between = ["A", "B"]')).system
    given = {id: np.array(each, float) for id, each in (VALUES | {"F": [0] * 3}).items()}
    plan = find_plan(system, given)
    values = prove(plan, solve(plan, given)).values
    (largest,) = system.largest
    moved = {**values, "M_max": np.asarray(values["M_max"]) * [1.0, 1.001, -1.0]}
    assert larger_elsewhere(system, moved, largest).wrong.tolist() == [False, True, True]


def test_of_two_places_alike_neither_is_the_largest() -> None:
    """Two loads alike, as far from either end: between them the moment is one and the same."""
    second = DOWN.replace('at = "C"', 'at = "K"').replace('"F"', '"F"\nsymbol = "P"')
    text = BEAM.replace("[body.beam]", 'K = ["4.5 m", 0]\n[body.beam]') + ON_TWO + DOWN + second
    system = read(text + asked('at = "C"')).system
    given = {id: np.array(each, float) for id, each in (VALUES | {"F": [300] * 3}).items()}
    plan = find_plan(system, given)
    found = prove(plan, solve(plan, given))
    (largest,) = system.largest
    assert larger_elsewhere(system, found.values, largest).wrong.all()


def test_a_load_at_a_place_but_for_rounding_is_at_it() -> None:
    """50 N down 333 m along a kilometre, which rounding has put a tenth of a nanometre farther."""
    one, nothing = np.array([1.0]), np.array([0.0])
    load = _Load(333.0 * one + 1e-10, -50.0 * one, nothing)
    along = _Along((nothing, nothing), (one, nothing), 1000.0 * one, (load,), ())
    assert along.shear(333.0 * one, 1.0).tolist() == [-50.0]
    assert along.shear(333.0 * one, -1.0).tolist() == [0.0]
