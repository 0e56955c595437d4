"""The marks of sections: of parts that are described, and of bodies that the key cuts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from probgen.figures.measured.survey import ways_out
from probgen.figures.paper.scene import Shape
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import mechanical
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Kind


def section_marks(stage: Stage, sections: Sequence[tuple[str, str]]) -> Iterator[Shape]:
    """sections: the bodies that are cut though they are drawn whole, and where."""
    cuts = [(e.body, e.at, e.id) for e in stage.system.elements if e.kind is Kind.CUT]
    for body, point, id in (*cuts, *((body, point, point) for body, point in sections)):
        outline = stage.measured.outline(stage.system.body(body))
        ways = ways_out(outline, stage.measured.places[point])
        if ways:
            along, half = ways[0] / abs(ways[0]), stage.halves[body]
            yield from mechanical.section(stage.spot(point), along, half, Tag(What.SECTION, id))
