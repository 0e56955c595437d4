"""Whose free-body diagram each of several is: its body named in the left upper corner."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from probgen.bank.labels import Labels
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import set_in
from probgen.figures.paper.scene import Box, Scene
from probgen.figures.paper.tag import Tag, What
from probgen.figures.paper.type_metrics import extent
from probgen.statics.system import Body
from probgen.statics.taken_as_one import made_of
from probgen.working.fact import Tell
from probgen.working.figure import BodyNamed

_SMALL: Final = 8.0  # size of a name, pt
_CLEAR: Final = 4.0  # what is free about one in a corner beyond what is about any label, pt
_OVER: Final = 5.0  # from a drawing to a name over it, pt


def captioned(
    scenes: Sequence[Scene], bodies: Sequence[Body], labels: Labels, tell: Tell
) -> tuple[Scene, ...]:
    """The diagrams of one problem with the bodies they are of named; one alone as it is, and those
    of bodies that go by letters.
    """
    if len(scenes) < 2 or not all(id in labels.bodies for b in bodies for id in made_of(b)):
        return tuple(scenes)
    names = [labels.bodies.get(body.id) or tell(BodyNamed(made_of(body))) for body in bodies]
    return tuple(map(_captioned, scenes, bodies, names))


def _captioned(scene: Scene, body: Body, name: str) -> Scene:
    field = Field()
    field.add(*scene.shapes)
    room, box = extent(name, _SMALL), scene.box
    low = box.top - room.height - room.depth
    corner = Box(box.left, low, box.left + room.width, box.top)
    over = corner.shifted(1j * (box.top - low + _OVER))
    place = corner if field.is_free(corner.grown(_CLEAR)) else over
    field.add(set_in(name, place, Tag(What.NOTE, body.id), _SMALL))
    return replace(scene, shapes=tuple(field.shapes), box=field.box)
