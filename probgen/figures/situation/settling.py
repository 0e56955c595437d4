"""A second look at the labels of loads, once the lengths are drawn: what made way for a line that
then ran elsewhere comes nearer to its own thing.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around
from probgen.figures.paper.scene import Box, Label, Path
from probgen.figures.paper.tag import Tag, What
from probgen.figures.situation.carried import Note
from probgen.figures.situation.lettering import (
    BY,
    OFF,
    THIN,
    lead_if_far,
    leadable,
    line_to,
    nearer,
)

_NEAR: Final = 6.0  # so near its thing a label stays where it is, pt
_WORTH: Final = 2.5  # by how much nearer it has to come, pt
_BEHIND: Final = 6.0  # what a thin line between a label and its thing counts as, pt
_ASIDE: Final = 3.0  # what a label counts as that is neither beside its thing nor above or below it
_AT: Final = 3.0  # so near a label its line begins, pt
_LED: Final = 8.0  # what a line to it counts as, pt


def settled(field: Field, notes: Sequence[Note], things: Sequence[Box]) -> Field:
    """The paper with each note at the best place there now is for it.

    things: the rectangles around all that could be meant.
    """
    for note in notes:
        if note.thing is not None:
            field = _settled(field, note, note.thing, things)
    return field


def noted(paper: Field, other: Field, notes: Sequence[Note]) -> Field:
    """A paper with its notes where they are on another one, and the lines from them."""
    tags = {note.tag for note in notes}
    led = {Tag(What.LEADER, tag) for tag in tags}
    paper = paper.trial()
    paper.add(*(shape for shape in other.shapes if shape.tag in tags | led))
    return paper


def _settled(field: Field, note: Note, thing: Box, things: Sequence[Box]) -> Field:
    """The paper with one note in a better place, if there is one."""
    named = [s for s in field.shapes if isinstance(s, Label) and s.tag == note.tag]
    label = min(named, key=lambda each: each.box.gap(thing))  # the same mass may be told twice
    leaders = [*_leaders(field, label)]
    now = _off(field, label.box, thing) + (_LED if leaders else 0.0)
    if now < _NEAR:
        return field
    others = [other for other in things if other != thing]
    other = field.without(label, *leaders)
    best, least, inside = None, now - _WORTH, field.on_opaque(label.box)
    near = nearer(other, thing, others, around(note.text, note.anchors, farthest=BY))
    for box in leadable(other, thing, near):
        off = _off(other, box, thing) + (_LED if box.gap(thing) > OFF else 0.0)
        if off < least and (inside or not other.on_opaque(box)):
            best, least = box, off
    if best is None:
        return field
    lead_if_far(other, other.place(note.text, (best,), note.tag), thing, others)
    return other


def _leaders(field: Field, label: Label) -> Iterator[Path]:
    """The line from a label to its thing, where there is one."""
    tag, reach = Tag(What.LEADER, label.tag), label.box.grown(_AT)
    for shape in field.shapes:
        if isinstance(shape, Path) and shape.tag == tag and reach.away(shape.lines[0][0]) == 0.0:
            yield shape


def _off(field: Field, box: Box, thing: Box) -> float:
    """How far a label seems to be from its thing, pt."""
    ends = line_to(box, thing)
    hidden = any(field.hits(*ends, what, thing) for what in THIN)
    way = thing.way_to(box)
    aside = min(abs(way.real), abs(way.imag)) > 0.0
    return abs(way) + (_BEHIND if hidden else 0.0) + (_ASIDE if aside else 0.0)
