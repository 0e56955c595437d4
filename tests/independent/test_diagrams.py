"""Axial force, shear force and bending moment along beams and the straight bodies of frames, the
largest moment and its place, against anaStruct and PyNite.

Each program's values along a member are curves of the third degree at most, as ours are; where
they are level, and which of those is largest, is found from the program's curves alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import dist

import numpy as np
import pytest

from probgen.statics.internal_forces import Inside, InternalForces
from probgen.statics.plan import find_plan
from probgen.statics.solution import solve
from tests.independent.cut import asked, cut_open
from tests.independent.layouts import KINDS, span
from tests.independent.programs import Curves, Found, by_anastruct, by_pynite
from tests.independent.sketch import GRAVITY, Layout

AGREEMENT = 1e-6
"""Largest difference, relative to the largest of its kind there can be: `load`, `turn`."""
PROGRAMS = (by_anastruct, by_pynite)
STRAIGHT = [kind for kind in KINDS if kind != "portal"]
LAYOUTS, QUICK = 30, 2
"""Random systems of each kind whose bodies are straight; every test run compares the first few."""
CASES = [
    pytest.param(kind, seed, marks=[] if seed < QUICK else [pytest.mark.proof])
    for kind in STRAIGHT
    for seed in range(LAYOUTS)
]
SPANS, SPANS_QUICK = 200, 8
"""Random beams whose largest moment is asked."""
ASKED = [
    pytest.param(seed, marks=[] if seed < SPANS_QUICK else [pytest.mark.proof])
    for seed in range(SPANS)
]


def members(layout: Layout, body: str, found: Found) -> Iterator[tuple[float, float, Curves]]:
    """A body's members: where each begins and ends on its axis (m), and what acts inside."""
    frame, line = layout.frames[0], layout.bodies[body]
    along = {node: dist(frame.nodes[line[0]], frame.nodes[node]) for node in line}
    for place, curves in found.inside.items():
        one, other, _ = frame.members[place]
        if {one, other} <= along.keys():
            yield along[one], along[other], curves


def largest_moment(layout: Layout, body: str, found: Found) -> tuple[float, list[float]]:
    """The largest bending moment by a program, either way, and where on the axis it is (m)."""
    places = []
    for start, end, (_, _, moment) in members(layout, body, found):
        slope = moment.deriv()
        slope = slope.trim(1e-9 * max(abs(slope.coef)))  # what rounding leaves of a higher degree
        roots = np.asarray(slope.roots(), complex)
        level = [float(x.real) for x in roots if abs(x.imag) < 1e-9]
        inside = [x for x in level if 0.0 < x < end - start]
        places += [(start + x, abs(float(moment(x)))) for x in (0.0, *inside, end - start)]
    most = max(value for _, value in places)
    return most, [x for x, value in places if value >= most * (1.0 - 1e-5)]


@pytest.mark.parametrize(("kind", "seed"), CASES)
def test_what_acts_inside_agrees(kind: str, seed: int) -> None:
    layout = KINDS[kind](seed)
    inside = cut_open(layout)
    for program in PROGRAMS:
        found = program(layout.frames[0])
        for body, ours in inside.items():
            compared = 0.0
            for start, end, curves in members(layout, body, found):
                compared += end - start
                for share in (0.001, 0.2, 0.5, 0.8, 0.999):
                    x = start + share * (end - start)
                    for of, curve in zip(Inside, curves, strict=True):
                        size = ours.turn if of is Inside.MOMENT else ours.load
                        theirs = float(curve(x - start))
                        assert abs(ours.at(x, of) - theirs) <= AGREEMENT * size, (body, of, x)
            assert compared == pytest.approx(0.0 if body == "strut" else ours.length)
            if compared:
                assert_largest(ours, *largest_moment(layout, body, found))


def assert_largest(ours: InternalForces, most: float, places: list[float]) -> None:
    """Ours is as large, and where one of theirs is."""
    own = ours.largest(Inside.MOMENT)
    assert abs(own.value) == pytest.approx(most, abs=AGREEMENT * ours.turn)
    if most > 1e-4 * ours.turn:  # a moment that is level along a stretch is as large at its ends
        assert min(abs(own.x - x) for x in places) <= 1e-4 * ours.length


@pytest.mark.parametrize("seed", ASKED)
def test_the_largest_moment_asked_agrees(seed: int) -> None:
    """That of the plan, which a key tells, with its distance from the end that is named."""
    layout = span(seed)
    ours = cut_open(layout)["beam"]
    find = asked(layout, ours)
    assert find is not None
    given = {id: np.array([value]) for id, value in (layout.draws[0] | {"g": GRAVITY}).items()}
    found = solve(find_plan(find.system, given), given)
    moment, place = (float(np.asarray(found[id]).flat[0]) for id in ("M_max", "x_m"))
    for program in PROGRAMS:
        most, places = largest_moment(layout, "beam", program(layout.frames[0]))
        assert abs(moment) == pytest.approx(most, abs=AGREEMENT * ours.turn)
        counted = [ours.length - x if find.from_last else x for x in places]
        assert min(abs(place - x) for x in counted) <= 1e-4 * ours.length
