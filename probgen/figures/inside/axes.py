"""Empty axes below a level body, for a student to draw its shear force and bending moment into.

Each zero line is as long as the body and right below it, as in the diagram of the key; above and
below it is the same room, so that nothing tells the sign.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import beside, set_in
from probgen.figures.paper.scene import LIGHT, REFERENCE, Arrow, Scene, Shape, Spot, line
from probgen.figures.paper.tag import Tag, What
from probgen.quantities.expression import Name
from probgen.statics.internal_forces import Inside

_ROOM: Final = 30.0  # above a zero line and below it, pt
_GAP: Final = 14.0  # between two rows, and above the first, pt
_AWAY: Final = 8.0  # from an axis to its letter, pt

Kind = tuple[Inside, Name, str]
"""One of what acts inside a body, its letter, and the unit it is drawn in."""


def with_axes(
    above: Scene, start: Spot, length: float, kinds: tuple[Kind, ...], words: str
) -> Scene:
    """A situation with a row of axes for each kind below all of it.

    start: where the body begins on it, pt; length: of the body, metres.
    words: what the rows are for, for readers who cannot see.
    """
    field = Field()
    field.add(*above.shapes)
    top, wide = field.box.bottom - _GAP, length * above.scale
    height = 2 * _ROOM + _GAP
    bottom = top - len(kinds) * height + _GAP
    for across in (start.real, start.real + wide):
        field.add(line(complex(across, top), complex(across, bottom), REFERENCE))
    for place, (of, letter, unit) in enumerate(kinds):
        zero = complex(start.real, top - place * height - _ROOM)
        field.add(*_strokes(of, zero, wide))
        told, tag = f"({unit})", Tag(What.LABEL, of)
        placed = set_in(told, beside(told, zero, 180.0, _AWAY), tag)
        end = complex(placed.box.left, placed.box.centre.imag)
        field.add(placed, set_in(letter, beside(letter, end, 180.0, 3.0), tag))
    return Scene(tuple(field.shapes), field.box, above.scale, f"{above.words} {words}".strip())


def _strokes(of: Inside, zero: Spot, wide: float) -> Iterator[Shape]:
    """The zero line, and the axis upward."""
    tag = Tag(What.DIAGRAM, of)
    yield line(zero, zero + wide, LIGHT, tag)
    yield Arrow(zero - 1j * _ROOM, zero + 1j * _ROOM, LIGHT, tag, 4.5, 3.2)
