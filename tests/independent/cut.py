"""The engine's own account of what acts inside the bodies of a layout, and how it is asked."""

from __future__ import annotations

from math import dist

import numpy as np

from probgen.bank.reading import read_template
from probgen.statics.cross_check import solve_all, with_definitions
from probgen.statics.internal_forces import Inside, InternalForces, internal_forces
from tests.independent.sketch import GRAVITY, Layout

NEAR = 1e-9
"""Metres that are no distance."""


def cut_open(layout: Layout) -> dict[str, InternalForces]:
    """The first draw, by the solver that needs no plan: what acts inside each body."""
    system = read_template(layout.text, "random.toml").system
    values = {id: np.array([value]) for id, value in (layout.draws[0] | {"g": GRAVITY}).items()}
    found = solve_all(system, values, np.ones((1, len(system.unknowns))))
    known = {id: float(value[0]) for id, value in values.items()}
    known |= {id: float(found[0, at]) for at, id in enumerate(system.unknowns)}
    complete = with_definitions(system, known)
    return {body: internal_forces(system, complete, body) for body in layout.bodies}


def asking(layout: Layout, ours: InternalForces, *, from_last: bool = False) -> tuple[str, float]:
    """The find that fits the first draw, and how far from the end it names the moment is largest.

    from_last: counted from the beam's last end, where it is largest between two nodes.
    """
    (line,) = layout.bodies.values()
    nodes = layout.frames[0].nodes
    along = {node: dist(nodes[line[0]], nodes[node]) for node in line}
    order = sorted(along, key=lambda node: along[node])
    most = ours.largest(Inside.MOMENT)
    near = [node for node in order if abs(along[node] - most.x) < NEAR]
    first, last = order[0], order[-1]
    start = last if near == [first] or (from_last and not near) else first
    where = [f'from = "{start}"']
    if near:
        before = ours.at(most.x, Inside.MOMENT, before=True)
        inner = near[0] not in (first, last)
        just = "before" if abs(before - most.value) <= NEAR * abs(most.value) else "after"
        where += [f'at = "{near[0]}"', *([f'just = "{just}"'] if inner else [])]
    else:
        low = [node for node in order if along[node] < most.x][-1]
        where.append(f'between = ["{low}", "{order[order.index(low) + 1]}"]')
    text = "\n".join(['[[find]]\nlargest_moment = "beam"', *where])
    return text, abs(most.x - along[start])
