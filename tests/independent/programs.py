"""Two programs for structures that know nothing of ours, asked about the same frames.

anaStruct and PyNite find everything by the stiffness of elastic members.  The structures are
statically determinate, so that the stiffness chosen has no influence on what is compared.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import Any

import numpy as np
from anastruct import SystemElements
from numpy.polynomial import Polynomial
from Pynite import FEModel3D

from tests.independent.sketch import Frame

Curves = tuple[Polynomial, Polynomial, Polynomial]
"""Axial force, shear force and bending moment, in metres from a member's first node."""


@dataclass
class Found:
    """What a program finds, newtons and metres.

    reactions: each support's F_x, F_y and couple on the structure.  pulls: of the members that are
    ties, by their place in the frame; inside: of the others, with our signs where the member leads
    to the right or straight up.
    """

    reactions: dict[str, list[float]]
    pulls: dict[int, float] = field(default_factory=dict)
    inside: dict[int, Curves] = field(default_factory=dict)


Program = Callable[[Frame], Found]


def by_anastruct(frame: Frame) -> Found:
    model = SystemElements(EA=1e5, EI=1e4)
    elements = []
    for first, last, loose in frame.members:
        ends = [list(frame.nodes[first]), list(frame.nodes[last])]
        if loose == "tie":
            elements.append(model.add_truss_element(ends))
        else:
            elements.append(model.add_element(ends, spring={2: 0} if loose else None))
    number = {name: model.find_node_id(list(place)) for name, place in frame.nodes.items()}
    for node, kind in frame.supports.items():
        support = {
            "hinge": model.add_support_hinged,
            "fixed": model.add_support_fixed,
            "roller": model.add_support_roll,
        }
        support[kind](number[node])
    for node, (x, y, couple) in gathered(frame.forces).items():
        model.point_load(number[node], Fx=x, Fy=y)
        model.moment_load(number[node], couple)
    for place, (low, high) in gathered(frame.spreads).items():  # it keeps one load a member
        model.q_load(q=[-low, -high], element_id=elements[place], direction="y")
    model.solve()
    nodes = {node: model.get_node_results_system(number[node]) for node in frame.supports}
    found = Found(
        {node: [-float(each[key]) for key in ("Fx", "Fy", "Tz")] for node, each in nodes.items()}
    )
    for place, member in enumerate(frame.members):
        own = model.get_element_results(elements[place], verbose=True)
        if member[2] == "tie":
            found.pulls[place] = float(own["Nmax"])
        else:
            along = np.linspace(0.0, own["length"], len(own["M"]))
            found.inside[place] = fitted(along, own["N"], -own["Q"], -own["M"])
    return found


def gathered(loads: Sequence[tuple[Any, ...]]) -> dict[Any, list[float]]:
    """What acts on each node or member, taken together."""
    total: dict[Any, list[float]] = {}
    for where, *load in loads:
        so_far = total.get(where, [0.0] * len(load))
        total[where] = [a + b for a, b in zip(so_far, load, strict=True)]
    return total


def fitted(x: Any, *along: Any) -> Curves:
    """The curves through values at places; under an evenly growing load they are cubics or less."""
    axial, shear, moment = (
        Polynomial.fit(x, values, degree) for values, degree in zip(along, (2, 2, 3), strict=True)
    )
    return axial, shear, moment


def by_pynite(frame: Frame) -> Found:
    model = FEModel3D()
    model.add_material("any", 1e6, 4e5, 0.3, 0.0)
    model.add_section("any", 0.1, 0.1, 0.1, 0.1)
    turned = {node for *ends, loose in frame.members if loose != "tie" for node in ends}
    for name, (x, y) in frame.nodes.items():
        model.add_node(name, x, y, 0.0)
        held = frame.supports.get(name)
        in_a_plane = {"support_DZ": True, "support_RX": True, "support_RY": True}
        model.def_support(
            name,
            support_DX=held in ("hinge", "fixed"),
            support_DY=held is not None,
            support_RZ=held == "fixed" or name not in turned,  # a tie turns no node
            **in_a_plane,
        )
    for place, (first, last, loose) in enumerate(frame.members):
        model.add_member(str(place), first, last, "any", "any")
        model.def_releases(str(place), Rzi=loose == "tie", Rzj=loose != "")
    for node, x, y, couple in frame.forces:
        for kind, size in (("FX", x), ("FY", y), ("MZ", couple)):
            model.add_node_load(node, kind, size)
    for place, low, high in frame.spreads:
        model.add_member_dist_load(str(place), "FY", -low, -high)
    model.analyze_linear()
    found = Found({})
    for name in frame.supports:
        node = model.nodes[name]
        found.reactions[name] = [r["Combo 1"] for r in (node.RxnFX, node.RxnFY, node.RxnMZ)]
    for place, (_, _, loose) in enumerate(frame.members):
        own = model.members[str(place)]
        if loose == "tie":
            found.pulls[place] = -own.axial(0.0)
        else:
            places = np.linspace(0.0, own.L(), 5)
            axial, shear, moment = (
                [along(each) for each in places]
                for along in (own.axial, partial(own.shear, "Fy"), partial(own.moment, "Mz"))
            )
            found.inside[place] = fitted(places, np.negative(axial), shear, np.negative(moment))
    return found
