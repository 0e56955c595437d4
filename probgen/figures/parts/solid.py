"""Bodies with breadth, and rounds: boxes, cabinets, bookcases, drums, wheelbarrows, trees.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from probgen.figures.paper.scene import (
    BARE,
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Arc,
    Box,
    Curve,
    Path,
    Pen,
    Shape,
    Spot,
    Tone,
    bearing,
    box_around,
    circle,
    dot,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag
from probgen.figures.parts import mechanical

BOLLARD: Final = 5.5
"""Half the breadth of a bollard, pt."""

WINCH: Final = 6.5
"""Radius of a winch's drum, pt."""

LAP: Final = 6.0
"""How far two bars that lie on each other reach beyond the middle of their lap, pt."""

BAND: Final = Pen(1.6)
"""A band or a belt, seen from its edge."""

LEG: Final = 14.0 + 34.0j
"""Half the breadth and height of a table's leg with the end of its top, pt."""

_TOP: Final = 62.0 + 15.0j  # how far that goes on beyond the leg, and how thick it is, pt
_BOARD: Final = 27.0  # about how broad a gate's boards are, pt
_STILE: Final = 7.0  # and its stiles, pt

_DOOR: Final = 0.88  # how far from its back the door of a refrigerator is, of its depth
_FREEZER: Final = 0.68  # where that is parted, of its height
_DRAWERS: Final = 4
_FRONT: Final = 5.0  # how thick their fronts are, pt
_HANDLE: Final = 3.0  # how far a handle stands off it, pt

TRUNK: Final = 3.3
"""Half the breadth of a tree's trunk, pt."""

WHEEL: Final = 13.0
"""Radius of a wheelbarrow's wheel, pt."""
TRAY: Final = 27.0
"""Height of its tray's rim above the shafts, pt."""
LEGS: Final = WHEEL - 2.5
"""How far its legs reach below them, pt: off the ground while the shafts are level."""

_GRIP: Final = 15.0  # length of its grips, pt


def box(corners: Sequence[Spot], tag: Tag) -> tuple[Shape, ...]:
    """A solid outline."""
    return (polygon(corners, MEDIUM, tag, tone=Tone.BODY),)


def table_top(corners: Sequence[Spot]) -> Box:
    """The end of a table's top over its leg; it goes on to the side where the leg is longer."""
    left, _, right, high = box_around(corners)
    foot = min(corners, key=lambda corner: corner.imag)
    out = _TOP.real if foot.real < (left + right) / 2 else -_TOP.real
    return Box(min(left, left + out), high - _TOP.imag, max(right, right + out), high)


def table_leg(corners: Sequence[Spot], tag: Tag) -> tuple[Shape, ...]:
    """A leg under the end of a table's top."""
    left, low, right, high = table_top(corners)
    top = (complex(left, low), complex(right, low), complex(right, high), complex(left, high))
    return *box(corners, tag), *box(top, tag)


def boarded(corners: Sequence[Spot], tag: Tag) -> tuple[Shape, ...]:
    """A gate's outline: level boards between the stiles at its two ends, an odd number of them, so
    that what is at its middle is on one.
    """
    left, right = min(c.real for c in corners), max(c.real for c in corners)
    low, high = min(c.imag for c in corners), max(c.imag for c in corners)
    count = max(3, 2 * round((high - low) / _BOARD / 2) + 1)
    edges = [low + (high - low) * place / count for place in range(1, count)]
    inner = left + _STILE, right - _STILE
    boards = tuple((complex(inner[0], edge), complex(inner[1], edge)) for edge in edges)
    stiles = tuple((complex(x, low), complex(x, high)) for x in inner)
    return *box(corners, tag), Path((*stiles, *boards), FINE, tag)


def filing_cabinet(corners: Sequence[Spot], tag: Tag) -> tuple[Shape, ...]:
    """A filing cabinet from its side: the fronts of its drawers, with handles, to the right."""
    right = max(c.real for c in corners)
    low, high = min(c.imag for c in corners), max(c.imag for c in corners)
    front = right - _FRONT
    tiers = [low + (high - low) * (0.05 + 0.93 * share / _DRAWERS) for share in range(_DRAWERS + 1)]
    seams = tuple((complex(front, tier), complex(right, tier)) for tier in tiers)
    edge = (complex(front, tiers[0]), complex(front, tiers[-1]))
    handles = tuple(
        (complex(right, at - 4.0), complex(right + _HANDLE, at - 4.0),
         complex(right + _HANDLE, at + 4.0), complex(right, at + 4.0))
        for at in (lower + 0.6 * (upper - lower) for lower, upper in pairwise(tiers))
    )  # fmt: skip
    drawn = Path((edge, *seams), LIGHT, tag), Path(handles, MEDIUM, tag)
    return *box(corners, tag), *drawn


def refrigerator(corners: Sequence[Spot], tag: Tag) -> tuple[Shape, ...]:
    """A refrigerator from its side: the first long side of its outline is its back, and the edges
    of two doors with their handles are on the other.
    """
    if abs(corners[1] - corners[0]) < abs(corners[2] - corners[1]):
        corners = (*corners[1:], corners[0])
    foot, up, out = corners[0], corners[1] - corners[0], corners[-1] - corners[0]
    beyond = out / abs(out) * _HANDLE

    def at(height: float, depth: float = 1.0) -> Spot:
        return foot + up * height + out * depth

    seams = (at(0.0, _DOOR), at(1.0, _DOOR)), (at(_FREEZER, _DOOR), at(_FREEZER))
    handles = tuple(
        (at(low), at(low) + beyond, at(high) + beyond, at(high))
        for low, high in ((0.42, 0.6), (_FREEZER + 0.05, _FREEZER + 0.18))
    )
    return *box(corners, tag), Path(seams, LIGHT, tag), Path(handles, MEDIUM, tag)


def lapped(
    ends: tuple[Spot, Spot], half: float, tag: Tag, sides: tuple[int, int]
) -> tuple[Shape, ...]:
    """A straight bar notched at its ends where another one lies on it or under it.

    sides: of each end 1 where what is left of it is the left half, 0 for a whole end, -1.
    """
    unit = (ends[1] - ends[0]) / abs(ends[1] - ends[0])
    across = unit * 1j * half

    def end(at: Spot, out: complex, side: int) -> tuple[Spot, ...]:
        """The corners from the bar's right edge to its left, for who looks along it."""
        if not side:
            return at - across, at + across
        inner, outer = at - out * LAP, at + out * LAP
        steps = (inner + across, inner, outer, outer - across)
        return steps[::-1] if side < 0 else (inner - across, inner, outer, outer + across)

    corners = (*end(ends[1], unit, sides[1]), *reversed(end(ends[0], -unit, sides[0])))
    return (polygon(corners, MEDIUM, tag, tone=Tone.BODY),)


def shelf_lines(foot: Spot, top: Spot, half: float) -> list[tuple[Spot, Spot]]:
    """Where the shelves of a bookcase may be, from below."""
    side = (top - foot) / abs(top - foot) * 1j * half
    return [
        (foot + (top - foot) * share + side, foot + (top - foot) * share - side)
        for share in (0.25, 0.44, 0.63, 0.82)
    ]


def drum(axle: Spot, radii: Sequence[float], tag: Tag) -> tuple[Shape, ...]:
    """A drum, or drums of several radii on one axle."""
    largest_first = sorted(radii, reverse=True)
    rims = tuple(circle(axle, r, MEDIUM, tag, tone=Tone.BODY) for r in largest_first)
    return (*rims, circle(axle, mechanical.PIN, MEDIUM, tag, tone=Tone.PAPER))


def reel(axle: Spot, radius: float, tag: Tag) -> tuple[Shape, ...]:
    """The flange of a reel of cable, seen from its side: its rim, and the hub with four bolts."""
    hub = 0.3 * radius
    bolts = (axle + 0.64 * radius * heading(45.0 + 90.0 * turn) for turn in range(4))
    return (
        circle(axle, radius, MEDIUM, tag, tone=Tone.BODY),
        circle(axle, radius - 3.0, FINE, tag),
        circle(axle, hub, LIGHT, tag, tone=Tone.PERSON),
        *(circle(bolt, 1.4, FINE, tag, tone=Tone.PAPER) for bolt in bolts),
    )


def band(axle: Spot, ends: tuple[Spot, Spot], pulled: complex, tag: Tag) -> Arc:
    """A band round a drum from one end to the other, on the side it does not pull to."""
    begin, end = (bearing(spot - axle) for spot in ends)
    sweep = (end - begin) % 360.0
    middle = heading(begin + sweep / 2)
    sweep -= 360.0 if dot(middle, pulled) > 0 else 0.0
    return Arc(axle, abs(ends[0] - axle), begin, sweep, BAND, tag)


def stand(axle: Spot, radius: float, height: float, tag: Tag) -> tuple[Shape, ...]:
    """The posts that carry a drum's axle, seen below the drum."""
    feet = axle - 1j * height
    way = complex(0.2, -1.0) / abs(complex(0.2, -1.0))
    posts = []
    for side in (1, -1):
        unit = complex(way.real * side, way.imag)
        posts.append((axle + unit * radius, feet + 0.2 * height * side))
    return (Path(tuple(posts), HEAVY, tag),)


def scale(foot: Spot, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A scale to weigh on, its dial to the front."""
    dial = foot + 0.5j * height
    hand = line(dial, dial + heading(60.0) * 0.25 * height, FINE, tag)
    face = circle(dial, 0.32 * height, LIGHT, tag, tone=Tone.PAPER)
    return *mechanical.block(foot, 30.0, height, tag), face, hand


def winch(axle: Spot, foot: Spot, tag: Tag, crank: complex = 0j) -> tuple[Shape, ...]:
    """The drum of a winch on a stand from its foot up; crank: the unit step of its crank, which
    stands away from the foot unless it is said.
    """
    up = (axle - foot) / abs(axle - foot)
    arm = crank or up
    side, grip = up * 1j, axle + arm * (WINCH + 6.0)
    legs = polygon((foot + side * 7.0, axle, foot - side * 7.0), MEDIUM, tag, tone=Tone.BODY)
    drawn = circle(axle, WINCH, MEDIUM, tag, tone=Tone.BODY)
    handle = (line(axle, grip, HEAVY, tag), line(grip - arm * 5.0j, grip, MEDIUM, tag))
    return legs, drawn, circle(axle, 1.4, LIGHT, tag, tone=Tone.PAPER), *handle


def stick(hand: Spot, foot: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A walking stick from the ground up, and the hand on its grip."""
    grip = hand - 2.5j
    fist = circle(hand, 4.6, MEDIUM, tag, tone=Tone.PERSON)
    return (
        line(grip, foot, HEAVY, tag),
        line(grip - 8.0, grip + 8.0, HEAVY, tag),
        fist,
        *(line(hand + x - 1.0j, hand + x - 4.2j, FINE, tag) for x in (-1.5, 1.5)),
    )


def wheelbarrow(axle: Spot, grips: Spot, tag: Tag) -> tuple[Shape, ...]:
    """Shafts from the wheel's axle to the grips, a tray on them, and a leg below."""
    way = grips - axle
    up = way / abs(way) * (1j if way.real > 0 else -1j)

    def at(share: float, height: float) -> Spot:
        return axle + way * share + up * height

    tray = (at(0.11, 1.5), at(0.66, 1.5), at(0.74, TRAY), at(0.03, TRAY))
    leg = (at(0.56, -1.5), at(0.6, -LEGS), at(0.67, -LEGS), at(0.72, -1.5))
    unit = way / abs(way)
    shaft = mechanical.bar((axle + unit * mechanical.PIN, grips), 1.5, tag)
    one, other = mechanical.cut_rails((grips - unit * _GRIP, grips), 2.4, (0j, 0j))
    return (
        *shaft,
        polygon((*one, *reversed(other)), MEDIUM, tag, tone=Tone.PERSON),
        polygon(tray, MEDIUM, tag, tone=Tone.BODY),
        Path((leg,), BAND, tag),
    )


def barrow_wheel(axle: Spot, tag: Tag) -> tuple[Shape, ...]:
    """The wheel of a wheelbarrow about its axle."""
    return (
        circle(axle, WHEEL, HEAVY, tag, tone=Tone.PERSON),
        circle(axle, WHEEL - 2.2, FINE, tag, tone=Tone.PAPER),
        circle(axle, mechanical.PIN, MEDIUM, tag, tone=Tone.PAPER),
    )


def post(foot: Spot, top: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A post from the ground up."""
    return (polygon((foot - 2.2, top - 2.2, top + 2.2, foot + 2.2), MEDIUM, tag, tone=Tone.BODY),)


def tied_tree(foot: Spot, at: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A tree from the ground up, and the turn of a cord round its trunk at a spot."""
    head, w = at + 2j, TRUNK
    trunk = Curve(
        foot - 1.7 * w,
        (
            (foot - w + 2j, foot - w + 8j, foot - w + 14j),
            (foot - w + 20j, head - 0.8 * w - 10j, head - 0.8 * w),
            (head - 0.3 * w, head + 0.3 * w, head + 0.8 * w),
            (head + 0.8 * w - 10j, foot + w + 20j, foot + w + 14j),
            (foot + w + 8j, foot + w + 2j, foot + 1.7 * w),
        ),
        MEDIUM, tag, tone=Tone.BODY,
    )  # fmt: skip
    lobes = [head + 6j + 5.6 * heading(72.0 * i + 18.0) for i in range(5)]
    crown = [circle(lobe, 5.2, MEDIUM, tag, tone=Tone.PERSON) for lobe in lobes]
    inside = circle(head + 6j, 6.8, BARE, tag, tone=Tone.PERSON)
    return trunk, *crown, inside, line(at - 0.9 * w, at + 0.9 * w, HEAVY, tag)


def bollard(at: Spot, foot: Spot, tag: Tag, rope: Tag) -> tuple[Shape, ...]:
    """A bollard from the ground up, and a rope's turns round it about a spot."""

    def slab(under: Spot, half: float, height: float) -> Path:
        top = under + 1j * height
        return polygon(
            (under - half, under + half, top + half, top - half), MEDIUM, tag, tone=Tone.BODY
        )

    half = BOLLARD
    turns = tuple(
        (at - half + 1j * (lift - 1.0), at + half + 1j * (lift + 1.0)) for lift in (-3.0, 0.0, 3.0)
    )
    return (
        slab(foot, half, abs(at - foot) + 8.0),
        slab(foot, half + 3.0, 3.0),
        slab(at + 8.0j, half + 3.0, 4.0),
        Path(turns, MEDIUM, rope),
    )


def rope_ring(at: Spot, tag: Tag) -> Shape:
    """Where a rope goes round a post."""
    return line(at - 2.2, at + 2.2, HEAVY, tag)
