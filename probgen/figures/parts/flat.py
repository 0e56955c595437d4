"""A plate of several parts with holes, or a bent wire.

Places are complex numbers in pt.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.figures.paper.scene import BARE, Path, Pen, Shape, Spot, Tone, polygon
from probgen.figures.paper.tag import Tag

_WIRE: Final = Pen(2.0, round=True)


def flat(
    parts: Sequence[Sequence[Spot]], holes: Sequence[Sequence[Spot]],
    wires: Sequence[Sequence[Spot]], pen: Pen, tag: Tag,
) -> tuple[Shape, ...]:  # fmt: skip
    """The parts as one: each hides the inner part of the strokes about the others."""
    outlines = [polygon(run, Pen(3 * pen.weight), tag) for run in parts]
    insides = [polygon(run, BARE, tag, tone=Tone.BODY) for run in parts]
    insides += [Path(((*run, run[0]),), pen, tag, tone=Tone.BODY) for run in parts]
    cut = [polygon(run, pen, tag, tone=Tone.PAPER) for run in holes]
    bent = [Path((tuple(run),), _WIRE, tag) for run in wires]
    return (*outlines, *insides, *cut, *bent)
