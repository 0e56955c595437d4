"""Random beams and frames against anaStruct and PyNite: reactions, and the force in what ties."""

from __future__ import annotations

import pytest

from tests.independent.conftest import Work
from tests.independent.layouts import KINDS
from tests.independent.programs import Program, by_anastruct, by_pynite

AGREEMENT = 1e-6
"""Largest difference, relative to the largest reaction or load."""
LAYOUTS, QUICK = 40, 2
"""Random layouts of each kind, each drawn ten times; every test run compares the first few."""
CASES = [
    pytest.param(kind, seed, marks=[] if seed < QUICK else [pytest.mark.proof])
    for kind in KINDS
    for seed in range(LAYOUTS)
]


@pytest.mark.parametrize("program", [by_anastruct, by_pynite])
@pytest.mark.parametrize(("kind", "seed"), CASES)
def test_reactions_agree(kind: str, seed: int, program: Program, work: Work) -> None:
    layout, ours = work(kind, seed)
    for place, frame in enumerate(layout.frames):
        theirs = program(frame)
        size = max(abs(value) for reaction in theirs.reactions.values() for value in reaction)
        for id, (node, component) in layout.reactions.items():
            assert abs(ours[id][place] - theirs.reactions[node][component]) <= AGREEMENT * size, id
        assert bool(layout.tie) == bool(theirs.pulls)
        for pull in theirs.pulls.values():
            assert abs(ours[layout.tie][place] - pull) <= AGREEMENT * max(size, abs(pull))
