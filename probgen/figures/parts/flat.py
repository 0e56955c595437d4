"""A plate of several parts with holes, or a bent wire.

Places are complex numbers in pt.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.figures.paper.scene import BARE, FINE, Path, Pen, Shape, Spot, Tone, polygon
from probgen.figures.paper.tag import Tag

_CROSS: Final = 3.0  # half the length of a mark's strokes, pt
_WIRE: Final = Pen(2.0, round=True)


def flat(
    parts: Sequence[Sequence[Spot]], holes: Sequence[Sequence[Spot]],
    wires: Sequence[Sequence[Spot]], pen: Pen, tag: Tag, centres: Sequence[Spot] = (),
) -> tuple[Shape, ...]:  # fmt: skip
    """The parts as one: each hides the inner part of the strokes about the others.

    centres: where a small cross marks the centre of a round hole.
    """
    outlines = [polygon(run, Pen(3 * pen.weight), tag) for run in parts]
    insides = [polygon(run, BARE, tag, tone=Tone.BODY) for run in parts]
    insides += [Path(((*run, run[0]),), pen, tag, tone=Tone.BODY) for run in parts]
    cut = [polygon(run, pen, tag, tone=Tone.PAPER) for run in holes]
    bent = [Path((tuple(run),), _WIRE, tag) for run in wires]
    arms = (_CROSS, 1j * _CROSS)
    marks = [Path(tuple((at - arm, at + arm) for arm in arms), FINE, tag) for at in centres]
    return (*outlines, *insides, *cut, *bent, *marks)
