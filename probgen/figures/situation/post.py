"""A post that something grips: a solid behind it, and a shoe where the body presses on a side."""

from __future__ import annotations

from typing import Final

from probgen.bank.depiction import Touch
from probgen.figures.paper.scene import (
    BARE,
    FINE,
    MEDIUM,
    Shape,
    Spot,
    Tone,
    dot,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.situation.fixture import Fixture
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element

_BEYOND: Final = 34.0  # how far a post goes on beyond all that touches it, pt
_THICK: Final = 14.0  # thickness of one that is touched on one side alone, pt
_SHOE: Final = 5.0 + 7.5j  # what a shoe takes off its side, and half of what it takes along it, pt
_GRAIN: Final = (0.3, 0.7)  # where across a post its grain is seen
_INSET: Final = 0.04  # how far from its ends that is, of its length


def gripped(stage: Stage, element: Element, face: Spot, normal: float) -> Fixture:
    """A post with a shoe on the side of it that an element is, through a spot of an outward normal;
    the first of the contacts on it has the post.
    """
    out = heading(normal)
    along, on_it = out * 1j, _contacts(stage)
    shoe = _shoe(face, out, along, Tag(What.SUPPORT, element.id))
    ends_here = any(dot(way, out) > 0.0 for way in stage.ways(element))
    gap = _SHOE.real / 2 if ends_here else 0.0  # its end is behind the shoe
    if element is not on_it[0]:
        return Fixture((shoe,), gap=gap)
    spots = [stage.spot(each.at) - face for each in on_it]
    ends = [(spot / along).real for spot in spots]
    low, high = min(ends) - _BEYOND, max(ends) + _BEYOND
    deep = max(-(spot / out).real for spot in spots)
    near = face + low * along, face + high * along
    across = -out * (deep if deep > 1.0 else _THICK)
    return Fixture((*_post(near, across, Tag(What.GROUND, element.id)), shoe), gap=gap)


def _contacts(stage: Stage) -> list[Element]:
    told = stage.depicts.contacts
    return [each for each in stage.system.elements if told.get(each.id) is Touch.POST]


def _shoe(face: Spot, out: complex, along: complex, tag: Tag) -> Shape:
    """What presses on a side, outside it."""
    deep, half = out * _SHOE.real, along * _SHOE.imag
    corners = (face - half, face + half, face + half + deep, face - half + deep)
    return polygon(corners, MEDIUM, tag, tone=Tone.BODY)


def _post(near: tuple[Spot, Spot], across: complex, tag: Tag) -> tuple[Shape, ...]:
    """A wooden post between two sides, open at both ends; near: the ends of one side."""
    low, high = near
    inside = polygon((low, high, high + across, low + across), BARE, tag, tone=Tone.GROUND)
    sides = (line(low + side, high + side, MEDIUM, tag) for side in (0j, across))
    inset = (high - low) * _INSET
    grain = (
        line(low + at * across + inset, high + at * across - inset, FINE, tag) for at in _GRAIN
    )
    return inside, *sides, *grain
