"""Sliders: a block about a pin that slides along a face, and a bar with a slot for a pin."""

from __future__ import annotations

from typing import Final

from probgen.bank.depiction import Touch
from probgen.figures.measured.survey import ways_out
from probgen.figures.paper.scene import (
    MEDIUM,
    Path,
    Pen,
    Shape,
    Spot,
    Tone,
    circle,
    dot,
    heading,
    polygon,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts.ground import Surface, lug
from probgen.figures.parts.mechanical import PIN
from probgen.figures.situation.fixture import FACE, Fixture
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element

_SLIDER: Final = 11.0 + 7.5j  # half of what a slider takes along its face and across, pt
_SQUARE: Final = 0.02  # most cosine between a bar and what pushes square to it
_PLATE: Final = 5.6  # half the breadth of a bar where it is slotted, pt
_SLOT: Final = 3.1  # half the breadth of a slot, its edges with it, pt
_EDGE: Final = 0.6  # weight of these, pt
_RUN: Final = 13.0  # how far a slot goes on along its bar, pt
_END: Final = 4.5  # and beyond the pin where the bar ends there
_RIM: Final = 4.0  # of the bar beyond its slot, pt
_BRACKET: Final = 13.0  # from a pin that is held to the face behind it, pt


def sliding(stage: Stage, element: Element) -> Fixture:
    """What a slider is drawn as: a slot in a bar that the push is square to, with its pin on a
    bracket; else a block about a pin on a face.
    """
    pin, normal = stage.spot(element.at), stage.normal(element)
    tag, slot = Tag(What.SUPPORT, element.id), slot_of(stage, element)
    if not slot:
        return _block(pin, normal, tag)
    face = pin - heading(normal) * _BRACKET
    return Fixture((*lug(pin, face, tag), *slot), (Surface(face, normal, FACE, FACE),))


def slot_of(stage: Stage, element: Element) -> tuple[Shape, ...]:
    """The slot about an element's pin; nothing where no bar runs square to its push."""
    if stage.depicts.contacts.get(element.id) is not Touch.SLOT:
        return ()
    out, at = heading(stage.normal(element)), stage.measured.places[element.at]
    pairs = (stage.system.force(id).pair for id in element.forces)
    bodies = [element.body, *(stage.system.force(pair).body for pair in pairs if pair)]
    for id in dict.fromkeys(bodies):
        ways = [w / abs(w) for w in ways_out(stage.measured.outline(stage.system.body(id)), at)]
        if ways and all(abs(dot(way, out)) < _SQUARE for way in ways):
            return _slotted(stage.spot(element.at), ways, Tag(What.SUPPORT, element.id))
    return ()


def _slotted(pin: Spot, ways: list[complex], tag: Tag) -> tuple[Shape, ...]:
    """A bar broadened about a pin, with the slot the pin is in."""
    along = ways[0]
    ends = pin + along * _RUN, pin - along * (_RUN if len(ways) > 1 else _END)
    rim, side = along * (_SLOT + _RIM), along * 1j * _PLATE
    corners = (
        ends[0] + rim + side,
        ends[0] + rim - side,
        ends[1] - rim - side,
        ends[1] - rim + side,
    )
    broad = polygon(corners, MEDIUM, tag, tone=Tone.BODY)
    edges, inside = (
        Path((ends,), Pen(2 * half, round=True), tag, tone=tone)
        for half, tone in ((_SLOT, None), (_SLOT - _EDGE, Tone.PAPER))
    )
    return broad, edges, inside, circle(pin, PIN, MEDIUM, tag, tone=Tone.PAPER)


def _block(pin: Spot, normal: float, tag: Tag) -> Fixture:
    """A block about a pin that slides along a face: a ram in its guide."""
    out, along = heading(normal) * _SLIDER.imag, heading(normal - 90.0) * _SLIDER.real
    corners = (pin - out - along, pin - out + along, pin + out + along, pin + out - along)
    block = polygon(corners, MEDIUM, tag, tone=Tone.BODY)
    held = circle(pin, PIN, MEDIUM, tag, tone=Tone.PAPER)
    face = Surface(pin - out, normal, _SLIDER.real + FACE, _SLIDER.real + FACE)
    return Fixture((block, held), (face,))
