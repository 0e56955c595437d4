"""Parts of a situation as a drafter sketches them: from places on paper to strokes.

Lengths are pt, places complex numbers in pt, directions degrees counter-clockwise from +x.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from probgen.figures.paper.scene import (
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Arc,
    Curve,
    Path,
    Pen,
    Shape,
    Spot,
    Tone,
    circle,
    dot,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag, What

PIN: Final = 2.4
"""Radius of a drawn pin, pt."""

JOINT: Final = 2.6
"""Radius of a truss's joint, pt."""

BAIL: Final = 11.0
"""How high a pail's handle stands above its rim, pt."""

CORNER: Final = 2.6
"""How broad the corner posts of a crate are, pt."""

SECTION: Final = Pen(0.6, 4.0, 2.0)
_RUNG: Final = 7.0
_FOLDED: Final = 0.01  # tangent of the least angle between two parts of a bent bar


def rails(spots: Sequence[Spot], half: float) -> tuple[tuple[Spot, ...], tuple[Spot, ...]]:
    """The two lines at a distance `half` left and right of an axis, mitred at its bends."""
    left, right = [], []
    for i, spot in enumerate(spots):
        before = spots[i] - spots[i - 1] if i else spots[1] - spots[0]
        after = spots[i + 1] - spots[i] if i + 1 < len(spots) else before
        one, other = before / abs(before), after / abs(after)
        middle = (one + other) / abs(one + other) if abs(one + other) > 1e-6 else one
        side = middle * 1j * half / max(dot(middle, one), 0.3)
        left.append(spot + side)
        right.append(spot - side)
    return tuple(left), tuple(right)


def cut_rails(
    ends: tuple[Spot, Spot], half: float, cuts: tuple[complex, complex]
) -> tuple[tuple[Spot, Spot], tuple[Spot, Spot]]:
    """The two edges of a straight bar; `cuts` are the normals its ends are cut to (0: square)."""
    unit = (ends[1] - ends[0]) / abs(ends[1] - ends[0])
    edges = []
    for side in (unit * 1j * half, unit * -1j * half):
        a, b = (
            end + side - unit * (dot(side, cut) / dot(unit, cut) if cut else 0.0)
            for end, cut in zip(ends, cuts, strict=True)
        )
        edges.append((a, b))
    return edges[0], edges[1]


def bar(
    spots: Sequence[Spot], half: float, tag: Tag, cuts: tuple[complex, complex] = (0j, 0j)
) -> tuple[Shape, ...]:
    """A straight or bent bar of thickness 2 `half` about its axis."""
    if _is_straight(spots):
        left, right = cut_rails((spots[0], spots[-1]), half, cuts)
        return (polygon((*left, *reversed(right)), MEDIUM, tag, tone=Tone.BODY),)
    shapes = []
    for run in _unfolded(spots):
        left_side, right_side = rails(run, half)
        shapes.append(polygon((*left_side, *reversed(right_side)), MEDIUM, tag, tone=Tone.BODY))
    return tuple(shapes)


def _is_straight(spots: Sequence[Spot]) -> bool:
    """Whether an axis runs from its first spot straight on to its last."""
    ways = [after - before for before, after in pairwise(spots)]
    ahead = (way / ways[0] for way in ways)
    return all(each.real > 0 and abs(each.imag) < _FOLDED * each.real for each in ahead)


def _unfolded(spots: Sequence[Spot]) -> Iterator[Sequence[Spot]]:
    """An axis cut where it turns back the way it came: no bend of a bar is as sharp."""
    begin = 0
    for i in range(1, len(spots) - 1):
        back = (spots[i] - spots[i - 1]) / (spots[i] - spots[i + 1])
        if back.real > 0 and abs(back.imag) < _FOLDED * back.real:
            yield spots[begin : i + 1]
            begin = i
    yield spots[begin:]


def truss(spots: Sequence[Spot], half: float, tag: Tag) -> tuple[Shape, ...]:
    """Bars of thickness 2 `half` between the joints a walk leads through, and a pin at each."""
    bars = dict.fromkeys(
        tuple(sorted(pair, key=lambda spot: (spot.real, spot.imag))) for pair in pairwise(spots)
    )
    members = [bar(ends, half, tag)[0] for ends in bars]
    pins = [circle(spot, JOINT, MEDIUM, tag, tone=Tone.PAPER) for spot in dict.fromkeys(spots)]
    return (*members, *pins)


def ladder(
    ends: tuple[Spot, Spot], half: float, tag: Tag, cuts: tuple[complex, complex]
) -> tuple[Shape, ...]:
    """Two rails with rungs between."""
    foot, top = ends
    side = (top - foot) / abs(top - foot) * 1j * half
    count = max(3, round(abs(top - foot) / _RUNG))
    rungs = tuple(
        (foot + (top - foot) * i / count + side, foot + (top - foot) * i / count - side)
        for i in range(1, count)
    )
    return Path(cut_rails(ends, half, cuts), HEAVY, tag), Path(rungs, LIGHT, tag)


def _fixing(at: Spot, tag: Tag) -> Arc:
    return circle(at, 1.3, FINE, tag, filled=True)


def cable(start: Spot, end: Spot, tag: Tag, pen: Pen = MEDIUM) -> tuple[Shape, ...]:
    """A taut cable with its fixing at the start."""
    return line(start, end, pen, tag), _fixing(start, tag)


def centre_mark(at: Spot, tag: Tag) -> tuple[Shape, ...]:
    """The mark of a centre of mass: a ring with two opposite quarters filled."""
    r = 2.3

    def quarter(start: float) -> Curve:
        one, other = heading(start), heading(start + 90)
        k = 0.5523
        return Curve(
            at,
            (
                (at, at + r * one, at + r * one),
                (at + r * (one + k * other), at + r * (other + k * one), at + r * other),
                (at + r * other, at, at),
            ),
            FINE,
            tag,
            filled=True,
        )

    return circle(at, r, LIGHT, tag, tone=Tone.PAPER), quarter(0.0), quarter(180.0)


def block(foot: Spot, width: float, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A block standing with the middle of its bottom edge at `foot`."""
    a, b = foot - width / 2, foot + width / 2
    up = complex(0, height)
    return (polygon((a, b, b + up, a + up), MEDIUM, tag, tone=Tone.BODY),)


def hung_block(at: Spot, rope: float, width: float, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A block on a rope of a length below its point; the block comes last."""
    top = at - complex(0, rope)
    ring = circle(top - 1.4j, 1.4, LIGHT, tag)
    body = block(top - complex(0, 2.8 + height), width, height, tag)
    return line(at, top, MEDIUM, tag), ring, _fixing(at, tag), *body


def hung_sign(
    at: Spot, width: float, height: float, tag: Tag, rope: float = 13.0
) -> tuple[Shape, ...]:
    """A sign board on two cords, `rope` below its point; the board comes last."""
    fork, top = at - 1j * max(rope - 13.0, 0.0), at - 1j * rope
    left, right = top - 0.38 * width, top + 0.38 * width
    board = block(top - 1j * height, width, height, tag)
    cords = ((at, fork), (fork, left), (fork, right))
    return Path(cords, LIGHT, tag), _fixing(at, tag), *board


def ball(at: Spot, radius: float, tag: Tag) -> tuple[Shape, ...]:
    """A ball about its centre."""
    return (circle(at, radius, MEDIUM, tag, tone=Tone.BODY),)


def pad(at: Spot, pressed: complex, tag: Tag) -> Path:
    """The pad of a pedal, pressed along a unit step at the middle of its face."""
    side, back = pressed * 9j, pressed * 3.0
    corners = (at - side, at + side, at + side + back, at - side + back)
    return polygon(corners, MEDIUM, tag, tone=Tone.PERSON)


def cuff(at: Spot, along: complex, half: float, tag: Tag) -> tuple[Shape, ...]:
    """A weighted cuff about a limb."""
    side, length = along * 1j, along * 5.5
    pads = [
        polygon((at + side * a - length, at + side * a + length, at + side * b + length,
                 at + side * b - length), MEDIUM, tag, tone=Tone.PERSON)
        for a, b in ((half, half + 4.0), (-half, -half - 4.0))
    ]  # fmt: skip
    return tuple(pads)


def plant(foot: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A potted plant with five leaves."""
    sides = (foot - 4, foot + 4, foot + 5.5 + 8j, foot - 5.5 + 8j)
    pot = polygon(sides, MEDIUM, tag, tone=Tone.BODY)
    rim = polygon(
        (foot - 6.2 + 8j, foot + 6.2 + 8j, foot + 6.2 + 10j, foot - 6.2 + 10j),
        MEDIUM,
        tag,
        tone=Tone.BODY,
    )
    root = foot + 10j

    def leaf(direction: float, length: float) -> Curve:
        step = heading(direction) * length
        side = step * 0.28j
        tip = root + step
        return Curve(
            root,
            (
                (root + 0.3 * step + side, root + 0.8 * step + side, tip),
                (root + 0.8 * step - side, root + 0.3 * step - side, root),
            ),
            LIGHT,
            tag,
            tone=Tone.PERSON,
        )

    leaves = (leaf(d, n) for d, n in ((90, 17), (62, 16), (118, 16), (32, 13), (148, 13)))
    return pot, rim, *leaves


def bucket(at: Spot, rope: float, size: float, tag: Tag) -> tuple[Shape, ...]:
    """A bucket hung by its handle from a rope; `size` is 1 for one of 19 pt."""
    top = at - complex(0, rope)
    rim, floor = top - 7j * size, top - 19j * size
    wide, narrow = 6.5 * size, 4.6 * size
    pail = polygon(
        (rim - wide, rim + wide, floor + narrow, floor - narrow), MEDIUM, tag, tone=Tone.BODY
    )
    handle = Path(((rim - wide, top, rim + wide),), LIGHT, tag)
    return line(at, top, MEDIUM, tag), handle, pail, _fixing(at, tag)


def pail(at: Spot, half: complex, tag: Tag) -> tuple[Shape, ...]:
    """A pail or basket about its middle, its handle reaching up to half its height above that."""
    top = at + 1j * (half.imag - BAIL)
    rim, floor = top.imag * 1j + at.real, at - 1j * half.imag
    wide, narrow = half.real, 0.78 * half.real
    pail = polygon(
        (rim - wide, rim + wide, floor + narrow, floor - narrow), MEDIUM, tag, tone=Tone.BODY
    )
    arch = complex(0.0, BAIL / 0.75)  # a curve rises three quarters of the way to its controls
    handle = Curve(rim - wide, ((rim - wide + arch, rim + wide + arch, rim + wide),), LIGHT, tag)
    return pail, handle


def standing_pail(foot: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A pail that stands on something."""
    rim = foot + 12j
    corners = (foot - 4.6, rim - 6.0, rim + 6.0, foot + 4.6)
    sides = polygon(corners, MEDIUM, tag, tone=Tone.BODY)
    arch = 6j
    handle = Curve(rim - 6.0, ((rim - 6.0 + arch, rim + 6.0 + arch, rim + 6.0),), LIGHT, tag)
    return sides, handle


def lamp(at: Spot, rope: float, tag: Tag) -> tuple[Shape, ...]:
    """A lamp with a cone for a shade."""
    top = at - complex(0, rope)
    shade = polygon((top - 2, top + 2, top + 9 - 9j, top - 9 - 9j), MEDIUM, tag, tone=Tone.BODY)
    bulb = Arc(top - 9j, 3.0, 180.0, 180.0, LIGHT, tag)
    return line(at, top, MEDIUM, tag), shade, bulb, _fixing(at, tag)


def pulley(at: Spot, radius: float, tag: Tag) -> tuple[Shape, ...]:
    """A grooved wheel with its pin."""
    return (
        circle(at, radius, MEDIUM, tag, tone=Tone.BODY),
        circle(at, radius - 1.8, FINE, tag),
        circle(at, 1.2, FINE, tag, filled=True),
    )


def wheel(at: Spot, radius: float, tag: Tag) -> tuple[Shape, ...]:
    """A wheel with a hub and spokes."""
    spokes = tuple(
        (at + 0.2 * radius * heading(45.0 * i), at + radius * heading(45.0 * i)) for i in range(8)
    )
    return (
        circle(at, radius, HEAVY, tag, tone=Tone.BODY),
        circle(at, 0.2 * radius, MEDIUM, tag),
        Path(spokes, FINE, tag),
    )


def spring(start: Spot, end: Spot, tag: Tag, half: float = 4.0) -> tuple[Shape, ...]:
    """A coil spring between two places: straight ends, and a zigzag of even teeth between."""
    length = abs(end - start)
    unit = (end - start) / length
    lead = min(6.0, 0.15 * length)
    count = max(4, round((length - 2 * lead) / 4.0))
    pitch = (length - 2 * lead) / count
    spots = [start, start + unit * lead]
    spots += [
        start + unit * (lead + (i + 0.5) * pitch) + unit * 1j * (half if i % 2 == 0 else -half)
        for i in range(count)
    ]
    spots += [end - unit * lead, end]
    return Path((tuple(spots),), MEDIUM, tag), _fixing(start, tag)


def strut(start: Spot, end: Spot, tag: Tag, half: float = 1.7) -> tuple[Shape, ...]:
    """A slender prop with a pin at either end."""
    unit = (end - start) / abs(end - start)
    left, right = cut_rails((start + unit * PIN, end - unit * PIN), half, (0j, 0j))
    pins = (circle(spot, PIN, MEDIUM, tag, tone=Tone.PAPER) for spot in (start, end))
    return polygon((*left, *reversed(right)), MEDIUM, tag, tone=Tone.BODY), *pins


def strands(start: Spot, end: Spot, count: int, tag: Tag) -> tuple[Shape, ...]:
    """Several strands of a rope side by side."""
    side = (end - start) / abs(end - start) * 1j * 2.6
    shifts = [side * (i - (count - 1) / 2) for i in range(count)]
    lines = tuple((start + shift, end + shift) for shift in shifts)
    return (Path(lines, MEDIUM, tag),)


def built_in(at: Spot, out: complex, half: float, tag: Tag) -> tuple[Shape, ...]:
    """Where a body enters what holds it fast: its edges, drawn on a little behind the face."""
    side = out * 1j * half
    edges = ((at + side, at + side - out * 4.5), (at - side, at - side - out * 4.5))
    return (Path(edges, MEDIUM, tag),)


def wedge(foot: Spot, run: float, rise: float, tag: Tag) -> tuple[Shape, ...]:
    """An inclined plane from its foot, `run` to the right (to the left when negative)."""
    corner = foot + run
    top = corner + 1j * rise
    ground = polygon((foot, corner, top), LIGHT, Tag(What.SOIL), tone=Tone.GROUND)
    return ground, line(foot, top, HEAVY, tag)


def ridge(left: Spot, right: Spot, top: Spot) -> tuple[Shape, ...]:
    """The ground between two slopes that meet at a ridge."""
    return (polygon((left, right, top), LIGHT, Tag(What.SOIL), tone=Tone.GROUND),)


def section(at: Spot, along: complex, half: float, tag: Tag) -> tuple[Shape, ...]:
    """The mark of a section through a member: a dash-dotted line square to it."""
    side = along * 1j * (half + 9.0)
    return (line(at - side, at + side, SECTION, tag),)


def tree(foot: Spot, height: float, tag: Tag) -> tuple[Shape, ...]:
    """A tree with a round crown."""
    trunk = 0.45 * height
    edges = ((foot - 0.05 * height, foot + 1j * trunk - 0.035 * height),
             (foot + 0.05 * height, foot + 1j * trunk + 0.035 * height))  # fmt: skip
    crown = circle(foot + 0.7j * height, 0.3 * height, MEDIUM, tag, tone=Tone.PERSON)
    return Path(edges, MEDIUM, tag), crown


def crate(
    foot: Spot, width: float, height: float, tag: Tag, broad: float = CORNER
) -> tuple[Shape, ...]:
    """A crate: a block, which comes first, with corner posts so broad."""
    inner = width / 2 - min(broad, 0.12 * width)
    posts = tuple((foot + x, foot + complex(x, height)) for x in (-inner, inner))
    return *block(foot, width, height, tag), Path(posts, FINE, tag)


def ring(at: Spot, tag: Tag, radius: float = 3.0) -> Arc:
    """A ring or a knot, where lines meet."""
    return circle(at, radius, MEDIUM, tag, tone=Tone.PAPER)


def peg(at: Spot, tag: Tag, radius: float = 3.4) -> tuple[Shape, ...]:
    """A post or a peg seen from above, and its middle."""
    middle = circle(at, 0.8, FINE, tag, filled=True)
    return circle(at, radius, MEDIUM, tag, tone=Tone.GROUND), middle


def pin(at: Spot, tag: Tag) -> Arc:
    """A pin that joins two bodies."""
    return circle(at, PIN, MEDIUM, tag, tone=Tone.PAPER)
