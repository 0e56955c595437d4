"""Particles drawn beside their points: on the bar they stand on, under the side of a pulley.

The point stays where it is, since a bar has it too.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Final

from probgen.figures.measured.survey import Survey, ways_out
from probgen.figures.paper.scene import dot, heading
from probgen.figures.situation.block import Block
from probgen.figures.situation.linked import HOLDS, SURFACES
from probgen.figures.situation.rope import facing
from probgen.statics.system import Element, ForcePart, Kind

_UPWARD: Final = 0.3  # least sine of a normal that bears something
_END_ON: Final = 0.9  # least cosine between a bar and the normal of its end


def perched(
    measured: Survey,
    blocks: Mapping[str, Block],
    halves: Mapping[str, float],
    turned: Mapping[str, complex],
) -> dict[str, Block]:
    """The blocks, those moved that stand on a bar or hang from a pulley's side.

    halves: half the thickness of bars, pt; turned: how far beside its point each pull of a rope
    is that runs over a pulley there, pt.
    """
    lifts = {**dict(_standing(measured, blocks, halves)), **dict(_hanging(measured, turned))}
    moved = {
        id: replace(blocks[id], lift=step)
        for id, step in lifts.items()
        if id in blocks and not blocks[id].faced
    }
    return {**blocks, **moved}


def _standing(
    measured: Survey, blocks: Mapping[str, Block], halves: Mapping[str, float]
) -> Iterator[tuple[str, complex]]:
    """By what stands on a body with extent and on nothing else, the step from its point (pt)."""
    system = measured.system
    for id, block in blocks.items():
        own = [f for f in system.forces if f.body == id and f.kind in SURFACES]
        pushes = [force for force in own if force.part is ForcePart.NORMAL]
        if len({force.element for force in own}) != 1 or len(pushes) != 1 or not pushes[0].pair:
            continue
        under, way = system.force(pushes[0].pair), pushes[0].direction
        normal = heading(measured.number(way)) if measured.has(way) else 0j
        if normal.imag <= _UPWARD or len(system.body(under.body).outline) < 2:
            continue
        outline = measured.outline(system.body(under.body))
        ways = ways_out(outline, measured.places[under.point])
        along = any(abs(dot(way / abs(way), normal)) > _END_ON for way in ways)
        yield id, normal * (block.depth(normal) + (0.0 if along else halves[under.body]))


def _hanging(measured: Survey, turned: Mapping[str, complex]) -> Iterator[tuple[str, complex]]:
    """By what hangs from a rope alone that runs over a pulley, how far to its side it does (pt)."""
    elements = measured.system.elements
    holding: dict[str, list[Element]] = {}
    for element in elements:
        if element.kind in (*HOLDS, *SURFACES):
            holding.setdefault(element.body, []).append(element)
    for body, held in holding.items():
        if len(held) == 1 and held[0].kind is Kind.ROPE:
            other = facing(measured, held[0], measured.places)
            if other is not None and other.id in turned:
                yield body, turned[other.id]
