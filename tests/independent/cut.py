"""The engine's own account of what acts inside the bodies of a layout, and how it is asked."""

from __future__ import annotations

from dataclasses import dataclass
from math import dist

import numpy as np

from probgen.bank.reading import read_template
from probgen.input.fault import InputError
from probgen.statics.cross_check import solve_all, with_definitions
from probgen.statics.internal_forces import Inside, InternalForces, internal_forces
from probgen.statics.system import System
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


@dataclass(frozen=True)
class Asked:
    """A system of which the largest moment is asked.

    between: whether it lies between loads.  place: how far from the end it is counted from, metres;
    from_last: whether that is the beam's last.
    """

    system: System
    between: bool
    place: float
    from_last: bool


def asked(layout: Layout, ours: InternalForces) -> Asked | None:
    """With the find that fits the first draw; None where the load has no short working.

    That is one that does not begin with zero, from neither end.
    """
    (line,) = layout.bodies.values()
    nodes = layout.frames[0].nodes
    along = {node: dist(nodes[line[0]], nodes[node]) for node in line}
    order = sorted(along, key=lambda node: along[node])
    most = ours.largest(Inside.MOMENT)
    near = [node for node in order if abs(along[node] - most.x) < NEAR]
    if near:
        before = ours.at(most.x, Inside.MOMENT, before=True)
        just = "before" if abs(before - most.value) <= NEAR * abs(most.value) else "after"
        where = [f'at = "{near[0]}"']
        where += [f'just = "{just}"'] if near[0] not in (order[0], order[-1]) else []
    else:
        low = [node for node in order if along[node] < most.x][-1]
        where = [f'between = ["{low}", "{order[order.index(low) + 1]}"]']
    for start in order[:: len(order) - 1]:
        if near == [start]:
            continue
        find = "\n".join(['[[find]]\nlargest_moment = "beam"', f'from = "{start}"', *where])
        try:
            system = read_template(f"{layout.text}\n{find}\n", "random.toml").system
        except InputError as error:
            if "begins with zero" not in str(error):
                raise
            continue
        return Asked(system, not near, abs(most.x - along[start]), start == order[-1])
    return None
