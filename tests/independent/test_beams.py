"""Random beams under spread loads against sympy's beam, which integrates singularity functions.

sympy counts forces upward, couples clockwise, and shear and moment the other way round than we do.
"""

from __future__ import annotations

import numpy as np
import pytest
from sympy import Rational, Symbol
from sympy.physics.continuum_mechanics.beam import Beam

from probgen.statics.flaw import FlawKind
from probgen.statics.internal_forces import Inside, InternalForces, unbalanced
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from tests.independent.conftest import Work
from tests.independent.cut import Asked, asked, cut_open
from tests.independent.layouts import beam, span
from tests.independent.sketch import GRAVITY, Frame, Layout

AGREEMENT = 1e-6
"""Largest difference, relative to the largest reaction."""
EXACT = 1e-9
"""The same inside a beam, where nothing is iterated: of the largest value along it."""
LAYOUTS, QUICK = 50, 3
"""Random layouts; every test run compares the first few."""
DRAWS = 4
"""Draws of each layout that are compared."""
CASES = [
    pytest.param(seed, marks=[] if seed < QUICK else [pytest.mark.proof]) for seed in range(LAYOUTS)
]


CUT_LAYOUTS, CUT_QUICK = 200, 30
"""Random beams of which the inside is compared, one draw each."""
CUT_CASES = [
    pytest.param(seed, marks=[] if seed < CUT_QUICK else [pytest.mark.proof])
    for seed in range(CUT_LAYOUTS)
]


def reactions(frame: Frame) -> dict[tuple[str, int], float]:
    """By node and component: 1 up, 2 couple."""
    beam, unknown = loaded(frame)
    return {where: float(beam.reaction_loads[symbol]) for where, symbol in unknown.items()}


def loaded(frame: Frame) -> tuple[Beam, dict[tuple[str, int], Symbol]]:
    """The beam with its reactions found, and their symbols by node and component."""
    along = {node: exact(x) for node, (x, _) in frame.nodes.items()}
    beam = Beam(max(along.values()), 1, 1)
    unknown = {}
    for node, kind in frame.supports.items():
        unknown[node, 1] = Symbol(f"R_{node}")
        beam.apply_load(unknown[node, 1], along[node], -1)
        if kind == "fixed":
            unknown[node, 2] = Symbol(f"M_{node}")
            beam.apply_load(-unknown[node, 2], along[node], -2)
    for node, _, up, couple in frame.forces:
        beam.apply_load(exact(up), along[node], -1)
        beam.apply_load(exact(-couple), along[node], -2)
    for place, *ends in frame.spreads:
        first, last = (along[node] for node in frame.members[place][:2])
        low, high = map(exact, ends)
        beam.apply_load(-low, first, 0, end=last)
        beam.apply_load(-(high - low) / (last - first), first, 1, end=last)
    beam.solve_for_reaction_loads(*unknown.values())
    return beam, unknown


def exact(value: float) -> Rational:
    """As a fraction, which sympy reckons with many times faster than with a decimal."""
    return Rational(repr(float(value)))


@pytest.mark.parametrize("seed", CASES)
def test_reactions_agree(seed: int, work: Work) -> None:
    layout, ours = work("beam", seed)
    for place, frame in enumerate(layout.frames[:DRAWS]):
        theirs = reactions(frame)
        size = max(abs(value) for value in theirs.values())
        for id, where in layout.reactions.items():
            if where in theirs:
                assert abs(ours[id][place] - theirs[where]) <= AGREEMENT * size, id


@pytest.mark.parametrize("seed", CUT_CASES)
def test_shear_and_moment_agree(seed: int) -> None:
    layout = beam(seed)
    ours = cut_open(layout)["beam"]
    theirs, _ = loaded(layout.frames[0])
    assert ours.residual < EXACT
    for of, along in (
        (Inside.SHEAR, theirs.shear_force()),
        (Inside.MOMENT, theirs.bending_moment()),
    ):
        most = ours.turn if of is Inside.MOMENT else ours.load
        size = max(ours.size(of), 1e-4 * most)  # it may be zero all along
        for piece in ours.pieces:
            for share in (0.1, 0.5, 0.8):
                x = piece.start + share * (piece.end - piece.start)
                there = float(along.subs(theirs.variable, Rational(repr(x))))
                assert abs(ours.at(x, of) + there) <= EXACT * size, (of, x)
                assert unbalanced(ours, x) < EXACT


@pytest.mark.parametrize("seed", CUT_CASES[:8] + CUT_CASES[CUT_QUICK:])
def test_nowhere_is_more_than_the_largest(seed: int) -> None:
    """Values at many places, taken from the balances of the part beyond each."""
    ours = cut_open(beam(seed, steepest=40.0))["beam"]
    for of in Inside:
        most = ours.largest(of)
        tried = [ours.at(x, of) for x in np.linspace(0.0, ours.length, 200)]
        assert max(map(abs, tried)) <= abs(most.value) * (1.0 + EXACT) + EXACT
        near = [abs(ours.at(most.x, of, before=before)) for before in (True, False)]
        assert max(near) == pytest.approx(abs(most.value))
    assert max(unbalanced(ours, piece.end - 1e-3) for piece in ours.pieces) < EXACT


ASKED_LAYOUTS, ASKED_QUICK = 120, 12
"""Random beams whose largest moment is asked, one draw each."""
ASKED = [
    pytest.param(seed, marks=[] if seed < ASKED_QUICK else [pytest.mark.proof])
    for seed in range(ASKED_LAYOUTS)
]


def askable(seed: int) -> tuple[Layout, InternalForces, Asked]:
    """A random beam, every other one with a load between its supports, that can be asked."""
    for again in range(20):
        layout = (beam, span)[seed % 2](seed + again * ASKED_LAYOUTS)
        ours = cut_open(layout)["beam"]
        if ours.size(Inside.SHEAR) > AGREEMENT:  # else no force acts square to it but at supports
            find = asked(layout, ours)
            if find is not None:
                return layout, ours, find
    raise AssertionError(f"nothing to ask near {seed}")


@pytest.mark.parametrize("seed", ASKED)
def test_the_largest_moment_asked_agrees(seed: int) -> None:
    """The plan's, by symbols, where sympy's shear force is zero and its moment is nowhere more."""
    layout, ours, find = askable(seed)
    given = {id: np.array([value]) for id, value in (layout.draws[0] | {"g": GRAVITY}).items()}
    plan = find_plan(find.system, given)
    found = solve(plan, given)
    theirs, _ = loaded(layout.frames[0])
    along, x = theirs.bending_moment(), theirs.variable
    size, most = ours.size(Inside.MOMENT), ours.largest(Inside.MOMENT)

    def moment_at(place: float) -> float:
        return -float(along.subs(x, exact(round(place, 9))))

    moment = float(np.asarray(found["M_max"]).flat[0])
    assert float(np.asarray(found["x_m"]).flat[0]) == pytest.approx(find.place, rel=1e-7)
    if find.between:
        shear = theirs.shear_force().subs(x, Rational(repr(most.x)))
        assert abs(float(shear)) <= EXACT * ours.size(Inside.SHEAR)
        there = -float(along.subs(x, Rational(repr(most.x))))
        assert moment == pytest.approx(there, abs=EXACT * size)
    sides = [min(max(most.x + step, 1e-8), ours.length - 1e-8) for step in (-1e-8, 1e-8)]
    assert min(abs(moment - moment_at(side)) for side in sides) <= 1e-6 * ours.turn
    tried = [moment_at(place) for place in np.linspace(0, ours.length, 15)[1:-1]]
    assert max(map(abs, tried)) <= abs(moment) + 1e-6 * ours.turn
    kinds = {flaw.kind for flaw in prove(plan, found).faults[0]}
    assert kinds <= {FlawKind.NEGATIVE, FlawKind.LARGER_ELSEWHERE}  # a roller may have to pull
    twice = [p for p in ours.turning_points(Inside.MOMENT) if abs(p.value) > (1 - EXACT) * size]
    alone = max(p.x for p in twice) - min(p.x for p in twice) < EXACT
    assert (FlawKind.LARGER_ELSEWHERE in kinds) != alone
