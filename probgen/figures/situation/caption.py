"""What the states of a thing that stand apart are called: below each, if there is room."""

from __future__ import annotations

from itertools import chain
from typing import Final

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around
from probgen.figures.paper.scene import box_around
from probgen.figures.paper.tag import Tag, What
from probgen.figures.situation.stage import Stage

_BELOW: Final = 12.0  # how far below a state's lowest place its name is first tried, pt
_SMALL: Final = 8.0  # size of the name, pt


def draw_captions(stage: Stage, field: Field) -> None:
    """The noun of the first body of each state, nearer to it than to another; nothing where there
    is one state.
    """
    spots = {
        bodies[0]: [stage.spot(p) for id in bodies for p in stage.system.body(id).outline]
        for bodies in stage.measured.states
    }
    sides = {body: box_around(each) for body, each in spots.items()}
    for body, own in sides.items():
        noun, tag = stage.measured.labels.bodies[body], Tag(What.NOTE, body)
        others = [box for other, box in sides.items() if other != body]
        foot = complex(own.centre.real, own.bottom)
        boxes, again = (around(noun, ((foot, 270.0),), _BELOW, _SMALL) for _ in range(2))
        nearer = (box for box in boxes if all(box.gap(own) < box.gap(each) for each in others))
        field.place(noun, chain(nearer, again), tag, _SMALL)
