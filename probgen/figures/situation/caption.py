"""What the states of a thing that stand apart are called: below each, if there is room."""

from __future__ import annotations

from itertools import chain
from typing import Final

from probgen.figures.measured.states import separate
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around
from probgen.figures.paper.scene import box_around
from probgen.figures.paper.tag import Tag, What
from probgen.figures.situation.stage import Stage

_BELOW: Final = 12.0  # how far below a state's lowest place its name is first tried, pt
_UNDER: Final = 2.0  # the same below all that is drawn, pt
_SMALL: Final = 8.0  # size of the name, pt


def draw_captions(stage: Stage, field: Field) -> None:
    """The noun of the first body of each state, nearer to it than to another; nothing where there
    is one state.
    """
    measured = stage.measured
    states = measured.states or separate(measured)
    spots = {
        bodies[0]: [stage.spot(p) for id in bodies for p in stage.system.body(id).outline]
        for bodies in states
    }
    sides = {body: box_around(each) for body, each in spots.items()}
    bottom = field.box.bottom
    extended = any(len(body.outline) > 1 for body in stage.system.bodies)
    for body, own in sides.items():
        noun, tag = measured.labels.bodies[body], Tag(What.NOTE, body)
        others = [box for other, box in sides.items() if other != body]
        # Under a particle are its ground and what hangs from it.
        foot = complex(own.centre.real, own.bottom if extended else bottom)
        off = _BELOW if extended else _UNDER
        boxes, again = (around(noun, ((foot, 270.0),), off, _SMALL) for _ in range(2))
        nearer = (box for box in boxes if all(box.gap(own) < box.gap(each) for each in others))
        field.place(noun, chain(nearer, again), tag, _SMALL)
