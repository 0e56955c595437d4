"""What a shape stands for: a force, a body, a label, and the id of the thing shown."""

from __future__ import annotations

from enum import StrEnum
from typing import Final, NamedTuple


class What(StrEnum):
    """What a shape can stand for; the values are how a drawing's file names them."""

    NOTHING = ""
    # the situation
    SCENERY = "scenery"
    SOIL = "soil"
    GROUND = "ground"
    HATCH = "hatch"
    INCLINE = "incline"
    BEYOND = "beyond"
    BODY = "body"
    SUPPORT = "support"
    MUSCLE = "muscle"
    CABLE = "cable"
    ROPE = "rope"
    SPRING = "spring"
    STRUT = "strut"
    PULLEY = "pulley"
    LOAD = "load"
    SHELF = "shelf"
    DISTRIBUTED = "distributed"
    CENTRE = "centre"
    SECTION = "section"
    # forces and what helps to read them
    FORCE = "force"
    COMPONENT = "component"
    RECTANGLE = "rectangle"
    COUPLE = "couple"
    PAIR = "pair"
    POINT = "point"
    PIVOT = "pivot"
    ACTION = "action"
    LEVER = "lever"
    SQUARE = "square"
    AXES = "axes"
    AXIS = "axis"
    DIAGRAM = "diagram"
    # measures and letters
    DIMENSION = "dimension"
    ANGLE = "angle"
    ARM = "arm"
    REFERENCE = "reference"
    LABEL = "label"
    LETTER = "letter"
    LEADER = "leader"
    NOTE = "note"


class Tag(NamedTuple):
    """What kind of thing, and the id of the one meant: a body, an element, a point, a quantity.

    of: "" where there is one of the kind alone; a tag where the shape serves another shape, as a
    leader serves its label.  A tuple, as figures make them by the thousand.
    """

    what: What
    of: str | Tag = ""

    def __str__(self) -> str:
        """As a drawing's file names it, "body:beam"."""
        return f"{self.what}:{self.of}" if self.of else str(self.what)


UNTAGGED: Final = Tag(What.NOTHING)
"""Of a shape that no one asks for."""
