"""Random beams and frames against two programs that know nothing of ours.

anaStruct and PyNite find reactions by the stiffness of elastic members.  The structures are
statically determinate, so that the stiffness chosen has no influence on the reactions.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

import pytest
from anastruct import SystemElements
from Pynite import FEModel3D

from tests.independent.conftest import Frame, Work

AGREEMENT = 1e-6
"""Largest difference, relative to the largest reaction or load."""
LAYOUTS, QUICK = 25, 5
"""Random layouts of each kind, each drawn ten times; every test run compares the first few."""
KINDS = ["beam", "stayed", "jointed", "legs"]
CASES = [
    pytest.param(kind, seed, marks=[] if seed < QUICK else [pytest.mark.proof])
    for kind in KINDS
    for seed in range(LAYOUTS)
]


Found = tuple[dict[str, list[float]], float | None]


def anastruct_reactions(frame: Frame) -> Found:
    """Each support's F_x, F_y and couple on the structure, and the pull of the tie or None."""
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
    found = {node: model.get_node_results_system(number[node]) for node in frame.supports}
    reactions = {
        node: [-float(each[key]) for key in ("Fx", "Fy", "Tz")] for node, each in found.items()
    }
    ties = [e for e, member in zip(elements, frame.members, strict=True) if member[2] == "tie"]
    return reactions, model.get_element_results(ties[0])["Nmax"] if ties else None


def gathered(loads: Sequence[tuple[Any, ...]]) -> dict[Any, list[float]]:
    """What acts on each node or member, taken together."""
    total: dict[Any, list[float]] = {}
    for where, *load in loads:
        so_far = total.get(where, [0.0] * len(load))
        total[where] = [a + b for a, b in zip(so_far, load, strict=True)]
    return total


def pynite_reactions(frame: Frame) -> Found:
    """Each support's F_x, F_y and couple on the structure, and the pull of the tie or None."""
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
    reactions = {}
    for name in frame.supports:
        node = model.nodes[name]
        reactions[name] = [r["Combo 1"] for r in (node.RxnFX, node.RxnFY, node.RxnMZ)]
    ties = [place for place, member in enumerate(frame.members) if member[2] == "tie"]
    return reactions, -model.members[str(ties[0])].axial(0.0) if ties else None


@pytest.mark.parametrize("reactions_of", [anastruct_reactions, pynite_reactions])
@pytest.mark.parametrize(("kind", "seed"), CASES)
def test_reactions_agree(
    kind: str, seed: int, reactions_of: Callable[[Frame], Found], work: Work
) -> None:
    layout, ours = work(kind, seed)
    for place, frame in enumerate(layout.frames):
        theirs, pull = reactions_of(frame)
        size = max(abs(value) for reaction in theirs.values() for value in reaction)
        for id, (node, component) in layout.reactions.items():
            assert abs(ours[id][place] - theirs[node][component]) <= AGREEMENT * size, id
        if layout.tie:
            assert pull is not None
            assert abs(ours[layout.tie][place] - pull) <= AGREEMENT * max(size, abs(pull))
