"""The sizes of the lines that pull or push with a force that is told, and the letters of others."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from probgen.figures.paper.scene import bearing
from probgen.figures.paper.tag import Tag, What
from probgen.figures.situation.carried import Note
from probgen.figures.situation.drawn_line import Line
from probgen.figures.situation.stage import Stage
from probgen.quantities.expression import Expression, Name, names_in
from probgen.quantities.unit import STIFFNESS
from probgen.statics.definition import names_behind
from probgen.statics.system import System


def told_pulls(stage: Stage, lines: Sequence[Line], told: Collection[str]) -> Iterator[Note]:
    """Each once: what is given, and what the statement calls by a letter; told: their ids."""
    done: set[str] = set()
    for each in lines:
        if not each.ends:
            continue
        start, end = each.ends
        force = stage.system.force(stage.system.element(each.element).forces[0])
        magnitude = _stiffness(stage.system, force.magnitude) or force.magnitude
        if isinstance(magnitude, Name) and magnitude.id in told and magnitude.id not in done:
            done.add(magnitude.id)
            near, way = start + (end - start) * 0.7, bearing(end - start)
            anchors = ((near, way - 90.0), (near, way + 90.0), (end, way))
            yield Note(stage.text(magnitude), anchors, Tag(What.LABEL, magnitude.id))


def _stiffness(system: System, magnitude: Expression) -> Name | None:
    """The stiffness a spring's force is computed with, where it is data."""
    held = names_behind(names_in(magnitude), system.definitions)
    names = [system.variables[id] for id in sorted(held)]
    return next((v.as_name for v in names if v.dimension == STIFFNESS), None)
