"""What holds a body up: hatched ground and walls, brackets, fulcrums, rollers.

A surface is known by a spot on its face and its outward normal (degrees); the hatching lies on the
other side.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from probgen.figures.paper.scene import (
    BARE,
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Path,
    Shape,
    Spot,
    Tone,
    apart,
    circle,
    dot,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts.mechanical import PIN

_DEPTH: Final = 4.5  # of the hatching, pt
_SPACING: Final = 3.6  # of its strokes, pt
_SQUARE: Final = 0.98  # least sine between a floor and a wall, which meet however far apart
_CORNER: Final = 40.0  # how far from their corner other faces may end that are drawn up to it, pt
_GROUND: Final = Tag(What.GROUND)


@dataclass(frozen=True, slots=True)
class Surface:
    """A hatched face through `at`, from -`before` to `after` along its tangent (pt).

    The tangent is the normal turned clockwise: +x for a floor.  lone: it ends where it ends, and
    is not made one with another on its line.
    """

    at: Spot
    normal: float
    before: float
    after: float
    lone: bool = False

    @property
    def tangent(self) -> complex:
        """The unit step along the face, the solid to its right."""
        return heading(self.normal - 90.0)

    @property
    def ends(self) -> tuple[Spot, Spot]:
        """Where the drawn face begins and ends."""
        return self.at - self.tangent * self.before, self.at + self.tangent * self.after

    def reach(self, spot: Spot) -> float:
        """How far along the tangent a spot lies."""
        return dot(spot - self.at, self.tangent)

    def height(self, spot: Spot) -> float:
        """How far a spot lies in front of the face."""
        return dot(spot - self.at, heading(self.normal))

    def covering(self, spot: Spot, beyond: float) -> Surface:
        """The surface lengthened so that it reaches some way beyond a spot."""
        reach = self.reach(spot)
        return replace(
            self,
            before=max(self.before, beyond - reach),
            after=max(self.after, beyond + reach),
        )


def joined(surfaces: Sequence[Surface], *, corners: bool = True) -> list[Surface]:
    """Surfaces on one line made one; with corners, those that meet drawn up to the corner, else
    only those that would cross.
    """
    merged: list[Surface] = []
    for surface in surfaces:
        for i, other in enumerate(merged):
            if surface.lone or other.lone:
                continue
            if apart(surface.normal, other.normal) < 0.5 and abs(other.height(surface.at)) < 0.5:
                low = min(-other.before, *(other.reach(end) for end in surface.ends))
                high = max(other.after, *(other.reach(end) for end in surface.ends))
                merged[i] = replace(other, before=-low, after=high)
                break
        else:
            merged.append(surface)
    meeting = [surface for surface in merged if not surface.lone]
    if not corners:
        return [s if s.lone else _to_corners(s, _crossed(s, meeting)) for s in merged]
    return [s if s.lone else _to_corners(s, meeting) for s in merged]


def _crossed(surface: Surface, others: Sequence[Surface]) -> list[Surface]:
    """The surfaces that one of them would cross."""
    (start, end) = surface.ends
    found = []
    for other in others:
        far, near = other.ends
        heights = other.height(start), other.height(end)
        theirs = surface.height(far), surface.height(near)
        if max(heights) > 0.0 >= min(heights) and max(theirs) > 0.0 >= min(theirs):
            found.append(other)
    return found


def _to_corners(surface: Surface, others: Sequence[Surface]) -> Surface:
    """The surface ended exactly where another stands up from it."""
    for other in others:
        if other is surface or not 30.0 < apart(surface.normal, other.normal) < 150.0:
            continue
        if max(surface.height(end) for end in other.ends) < 1.0:
            continue  # it falls away behind this face: an outer edge
        closing = dot(surface.tangent, heading(other.normal))
        reach = -other.height(surface.at) / closing
        if abs(closing) < _SQUARE and not _near(surface, other, reach):
            continue
        # A face that looks back along the tangent stands at the far end.
        far = closing < 0
        surface = replace(surface, after=reach) if far else replace(surface, before=-reach)
    return surface


def _near(surface: Surface, other: Surface, reach: float) -> bool:
    """Whether two faces come near the corner they would make, so far along the first (pt)."""
    corner = surface.at + surface.tangent * reach
    return all(
        min(each.before + each.reach(corner), each.after - each.reach(corner)) > -_CORNER
        for each in (surface, other)
    )


def hatched(surface: Surface, tag: Tag = _GROUND) -> tuple[Shape, ...]:
    """The face as a line, with slanted strokes behind it."""
    start, end = surface.ends
    length = abs(end - start)
    back = -heading(surface.normal) * _DEPTH - surface.tangent * _DEPTH
    count = max(2, int((length - _DEPTH) / _SPACING))
    first = (length - (count - 1) * _SPACING - _DEPTH) / 2 + _DEPTH
    feet = [start + surface.tangent * (first + i * _SPACING) for i in range(count)]
    hatching = Path(tuple((foot, foot + back) for foot in feet), FINE, Tag(What.HATCH, tag))
    return line(start, end, HEAVY, tag), hatching


def tinted(surface: Surface) -> Path:
    """The tint of what is behind the face."""
    start, end = surface.ends
    back = -heading(surface.normal) * _DEPTH
    corners = (start, end, end + back, start + back)
    return polygon(corners, BARE, Tag(What.SOIL), tone=Tone.GROUND)


def backing(surface: Surface) -> Path:
    """The back edge of the hatching, for labels to keep clear of; it is not drawn."""
    start, end = surface.ends
    shift = -heading(surface.normal) * _DEPTH
    return line(start + shift, end + shift, FINE)


def lug(pin: Spot, face: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A bracket that carries a pin out from a face."""
    way = pin - face
    side = way / abs(way) * 1j
    near = pin - way / abs(way) * 0.4
    cheeks = (
        (face + side * 6.5, near + side * PIN),
        (face - side * 6.5, near - side * PIN),
    )
    plate = polygon((*cheeks[0], *reversed(cheeks[1])), BARE, tag, tone=Tone.BODY)
    return plate, Path(cheeks, MEDIUM, tag), circle(pin, PIN, MEDIUM, tag, tone=Tone.PAPER)


def fulcrum(tip: Spot, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A wedge with its edge up."""
    left, right = complex(-0.58 * height, -height), complex(0.58 * height, -height)
    return (polygon((tip, tip + left, tip + right), MEDIUM, tag, tone=Tone.BODY),)


def roller(top: Spot, normal: float, tag: Tag) -> tuple[Shape, ...]:
    """Two small wheels under a plate; `top` is where the body rests."""
    up, side = heading(normal), heading(normal - 90.0)
    places = (top - up * 4.6 + side * k for k in (-4.0, 4.0))
    wheels = [circle(place, 2.4, LIGHT, tag, tone=Tone.PAPER) for place in places]
    plate = polygon(
        (top, top - up * 2.0 + side * 7.5, top - up * 2.0 - side * 7.5),
        MEDIUM,
        tag,
        tone=Tone.BODY,
    )
    return (plate, *wheels)


ROLLER_HEIGHT: Final = 7.2
"""From the body down to the ground under a roller, pt."""
