"""The angles of wedges in a situation, each once, at the face that is driven in."""

from __future__ import annotations

from collections.abc import Collection

from probgen.figures.measured.survey import is_told
from probgen.figures.paper.angle import draw_angle
from probgen.figures.paper.canvas import Field
from probgen.figures.situation.stage import Stage


def draw_wedge_angles(stage: Stage, field: Field, drawn: Collection[str]) -> frozenset[str]:
    """Add what students are told of them; the ids of those, and of the ones drawn before."""
    done = set(drawn)
    for body in stage.system.bodies:
        block = stage.blocks.get(body.id)
        corner = block.faced.corner if block and block.faced else None
        if corner is None or corner.id in done or not is_told(stage.measured, corner.id):
            continue
        done.add(corner.id)
        at, ways = stage.spot(body.outline[0]) + corner.at, (corner.reference, corner.way)
        text = stage.text(stage.system.variables[corner.id].as_name)
        draw_angle(field, at, *ways, text, corner.id, reference_drawn=False)
    return frozenset(done)
