"""What stands about a situation and holds nothing of it up: water, a boat, a phone; and posts.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from collections.abc import Sequence

from probgen.figures.paper.scene import (
    BARE,
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Box,
    Curve,
    Path,
    Shape,
    Spot,
    Tone,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag, What

_WAVE = 13.0  # length of a wave, pt
_FLIGHT = 9.0  # how thick a staircase is below its steps, pt
_LOG = 10.0  # how thick a raft's logs are, pt
_LOGS = 5
_RAFT = 66.0  # how much of them is drawn, pt
_EAVES = 12.0  # how far a roof reaches beyond the walls, pt
_WALL = 22.0  # how much of them is drawn, pt
_STAY = 8.0  # length of the stays that hold a billboard, pt
_PLATE = 3.6  # its thickness
_OVER = 15.0  # how far it goes on above and below them, pt
_MARK = 4.0  # half the width of the mark of a water surface, pt


def water(box: Box, tag: Tag) -> tuple[Shape, ...]:
    """Water filling a box, with a ruffled surface."""
    corners = (
        complex(box.left, box.bottom), complex(box.right, box.bottom),
        complex(box.right, box.top), complex(box.left, box.top),
    )  # fmt: skip
    count = max(1, round(box.width / _WAVE))
    step = box.width / count
    bend = complex(step / 3, 1.8)
    start = complex(box.left, box.top)
    pieces = []
    for i in range(count):
        a, b, way = start + i * step, start + (i + 1) * step, bend if i % 2 else bend.conjugate()
        pieces.append((a + way, b - way.conjugate(), b))
    return polygon(corners, BARE, tag, tone=Tone.WATER), Curve(start, tuple(pieces), FINE, tag)


def pool(corners: Sequence[Spot], tag: Tag) -> tuple[Shape, ...]:
    """Still water between corners, of which the first two are the ends of its level surface, with
    the mark of a free surface nearer to the second.
    """
    near, far = corners[:2]
    tip = near + 0.7 * (far - near)
    rim = tip + complex(-_MARK, 1.6 * _MARK), tip + complex(_MARK, 1.6 * _MARK)
    under = ((0.8, 2.2), (0.4, 4.0))
    strokes = tuple((tip + complex(-half * _MARK, -down), tip + complex(half * _MARK, -down))
                    for half, down in under)  # fmt: skip
    return (
        polygon(tuple(corners), BARE, tag, tone=Tone.WATER),
        line(near, far, LIGHT, tag),
        polygon((tip, *rim), FINE, tag, tone=Tone.PAPER),
        Path(strokes, FINE, tag),
    )


def bathtub(start: Spot, end: Spot, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A bathtub on something level, from its foot to the steeper head end."""
    way, up = (end - start) / abs(end - start), 1j * height
    tub = Curve(
        start + up,
        (
            (start + 0.4 * up + 1.5 * way, start + 2.0 * way, start + 11.0 * way),
            (start + 20.0 * way, end - 20.0 * way, end - 8.0 * way),
            (end - 2.0 * way, end + 0.3 * up, end + up),
            (end + up, start + up, start + up),
        ),
        LIGHT,
        tag,
        tone=Tone.SKIN,
    )
    rim = line(start + up - 3.0 * way, end + up + 2.0 * way, HEAVY, tag)
    return tub, rim


def boat(bow: Spot, length: float, tag: Tag) -> tuple[Shape, ...]:
    """A rowing boat with its bow to the left, where a rope is fixed."""
    stern = bow + length
    hull = Curve(
        bow,
        (
            (bow + 0.2 * length - 2j, stern - 0.3 * length - 2j, stern - 1j),
            (stern - 5j, stern - 2 - 9j, stern - 5 - 11j),
            (stern - 0.4 * length - 12j, bow + 0.3 * length - 12j, bow + 0.22 * length - 11j),
            (bow + 0.1 * length - 9j, bow + 2 - 4j, bow),
        ),
        MEDIUM,
        tag,
        tone=Tone.BODY,
    )
    return (hull,)


def roof(left: Spot, right: Spot, ridge: Spot) -> tuple[Shape, ...]:
    """The end of a house under both sides of its roof: a gable, and the walls below it."""
    tag = Tag(What.SOIL)
    inner = [left + _EAVES, right - _EAVES]
    feet = [spot - 1j * _WALL for spot in inner]
    return (
        polygon((inner[0], inner[1], feet[1], feet[0]), BARE, tag, tone=Tone.SKIN),
        Path(tuple(zip(inner, feet, strict=True)), LIGHT, tag),
        polygon((left, right, ridge), LIGHT, tag, tone=Tone.BODY),
    )


def stairs(begin: Spot, slope: complex, tread: float, count: int, tag: Tag) -> tuple[Shape, ...]:
    """A staircase of so many steps, the first edge of which is at `begin`.

    slope: the unit step up along its edges; tread: how far it goes on for each step, pt.
    """
    step = complex(tread * (1 if slope.real >= 0 else -1), tread * slope.imag / abs(slope.real))
    edges = [begin + step * i for i in range(count)]
    run = (begin - 1j * step.imag, *(spot for each in edges for spot in (each, each + step.real)))
    under = run[-1] - 1j * (_FLIGHT + step.imag), run[0] - 1j * _FLIGHT
    flight = polygon((*run, *under), BARE, tag, tone=Tone.GROUND)
    return flight, Path((run,), HEAVY, tag)


def raft(corner: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A raft of logs from above, broken off to the left and below; a cross pole holds them."""
    ends = [corner + complex(_LOG, -_LOG * i) for i in range(_LOGS)]
    logs = []
    for i, end in enumerate(ends):
        tip = end - (1.5 if i % 2 else 0.0)
        up, far = 0.5j * _LOG, end - _RAFT
        logs.append(Curve(
            far + up,
            ((far + up, tip - 3.0 + up, tip - 3.0 + up), (tip + up, tip + up, tip),
             (tip - up, tip - up, tip - 3.0 - up), (tip - 3.0 - up, far - up, far - up)),
            LIGHT, tag, tone=Tone.BODY,
        ))  # fmt: skip
    top, low = (at - 2.2 * _LOG + side * _LOG for at, side in ((ends[0], 0.7j), (ends[-1], -0.7j)))
    pole = polygon((top - 2.0, top + 2.0, low + 2.0, low - 2.0), LIGHT, tag, tone=Tone.PERSON)
    return *logs, pole


def billboard(stays: Sequence[Spot], side: int, tag: Tag) -> tuple[Shape, ...]:
    """A billboard from its edge, on stays from places of what holds it; side: 1 to their right."""
    off, half = side * _STAY, side * _PLATE / 2
    low, high = min(s.imag for s in stays), max(s.imag for s in stays)
    foot, top = (complex(stays[0].real + off, y) for y in (low - _OVER, high + _OVER))
    rods = Path(tuple((stay, stay + off) for stay in stays), MEDIUM, tag)
    corners = (foot - half, foot + half, top + half, top - half)
    return rods, polygon(corners, MEDIUM, tag, tone=Tone.PERSON)


def post(top: Spot, foot: Spot, half: float, tag: Tag) -> tuple[Shape, ...]:
    """A post or a pier from the ground up."""
    return (polygon((foot - half, foot + half, top + half, top - half), MEDIUM, tag,
                    tone=Tone.BODY),)  # fmt: skip


def ledge(inner: Spot, outer: Spot, thick: float, tag: Tag) -> tuple[Shape, ...]:
    """A ledge that sticks out from a wall, its top from `inner` at the wall to `outer`."""
    down = -1j * thick
    corners = (inner, outer, outer + 0.5 * down, inner + down)
    return (polygon(corners, MEDIUM, tag, tone=Tone.BODY),)


def phone(at: Spot, lean: float, tag: Tag) -> tuple[Shape, ...]:
    """A phone seen from its side, about its middle, its top leaning by some degrees."""
    along = heading(90.0 + lean)
    side = along * -1j
    half, thick = along * 13.0, side * 1.8
    corners = (at - half - thick, at - half + thick, at + half + thick, at + half - thick)
    shows = at + half * 0.8 + thick, at - half * 0.8 + thick
    glass = polygon((*shows, shows[1] + side, shows[0] + side), LIGHT, tag)
    return polygon(corners, MEDIUM, tag, tone=Tone.PERSON), glass
