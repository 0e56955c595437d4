"""Random beams under spread loads against sympy's beam, which integrates singularity functions."""

from __future__ import annotations

import pytest
from sympy import Rational, Symbol
from sympy.physics.continuum_mechanics.beam import Beam

from tests.independent.conftest import Frame, Work

AGREEMENT = 1e-6
"""Largest difference, relative to the largest reaction."""
LAYOUTS, QUICK = 50, 3
"""Random layouts; every test run compares the first few."""
DRAWS = 4
"""Draws of each layout that are compared."""
CASES = [
    pytest.param(seed, marks=[] if seed < QUICK else [pytest.mark.proof]) for seed in range(LAYOUTS)
]


def reactions(frame: Frame) -> dict[tuple[str, int], float]:
    """By node and component (1 up, 2 couple); sympy counts couples clockwise."""
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
    return {where: float(beam.reaction_loads[symbol]) for where, symbol in unknown.items()}


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
