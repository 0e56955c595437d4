"""Couples in a situation: a curved arrow about a point, or about what exerts the couple."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import LIGHT, MEDIUM, line
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts.axes import turning
from probgen.figures.situation.built import couple_at
from probgen.figures.situation.carried import Note
from probgen.figures.situation.stage import Stage
from probgen.quantities.expression import Name
from probgen.statics.system import Element

_BESIDE: Final = 12.0  # how far its label reaches beyond what exerts a couple, pt
_OVER: Final = 44.0  # how far over that dimension lines keep, pt


def draw_couples(stage: Stage, field: Field, element: Element) -> Iterator[Note]:
    """Draw the couple an element exerts where its sense is known; what it is labelled with."""
    for couple in stage.system.couples:
        known = couple.element == element.id and stage.measured.has(couple.moment)
        if not known or couple.pair or not isinstance(couple.moment, Name):
            continue
        spot, turn = couple_at(stage, element)
        sense = 1 if stage.measured.number(couple.moment) > 0 else -1
        field.add(*turning(spot, turn, sense, MEDIUM, Tag(What.COUPLE, couple.id)))
        if spot != stage.spot(element.at):  # no dimension line between it and its label
            for side in (spot - turn - _BESIDE, spot + turn + _BESIDE):
                field.watch(line(side, side + 1j * (turn + _OVER), LIGHT))
        anchors = ((spot + 1j * turn, 90.0), (spot - 1j * turn, 270.0))
        text = stage.text(stage.stated(couple.moment))
        yield Note(text, anchors, Tag(What.LABEL, couple.id))
