"""Parts of a situation as a drafter sketches them: from places on paper to strokes.

Lengths are pt, places complex numbers in pt, directions degrees counter-clockwise from +x.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.figures.scene import (
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
    bearing,
    circle,
    dot,
    heading,
    line,
    polygon,
)

PIN: Final = 2.4
"""Radius of a drawn pin, pt."""

_LIMB: Final = Pen(1.5)
_RUNG: Final = 7.0


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
    spots: Sequence[Spot], half: float, tag: str, cuts: tuple[complex, complex] = (0j, 0j)
) -> tuple[Shape, ...]:
    """A straight or bent bar of thickness 2 `half` about its axis."""
    if len(spots) == 2:
        left, right = cut_rails((spots[0], spots[1]), half, cuts)
        return (polygon((*left, *reversed(right)), MEDIUM, tag),)
    bent_left, bent_right = rails(spots, half)
    return (polygon((*bent_left, *reversed(bent_right)), MEDIUM, tag),)


def ladder(
    ends: tuple[Spot, Spot], half: float, tag: str, cuts: tuple[complex, complex]
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


def forearm(elbow: Spot, hand: Spot, tag: str) -> tuple[Shape, ...]:
    """A tapering forearm from the elbow's pin to a hand that reaches a little past its point."""
    length = abs(hand - elbow)
    unit = (hand - elbow) / length
    wrist = length - 9.0

    def at(x: float, y: float) -> Spot:
        return elbow + unit * complex(x, y)

    outline = Curve(
        at(4.0, 4.6),
        (
            (at(length * 0.3, 5.6), at(length * 0.6, 3.2), at(wrist, 2.6)),
            (at(length - 4, 3.2), at(length - 2, 1.6), at(length + 5, 1.6)),
            (at(length + 9, 1.6), at(length + 9, 5.0), at(length + 11, 5.0)),
            (at(length + 14, 5.0), at(length + 12, -2.6), at(length + 5, -2.6)),
            (at(length - 2, -2.6), at(length - 4, -2.8), at(wrist, -2.6)),
            (at(length * 0.6, -3.4), at(length * 0.3, -5.8), at(4.0, -4.6)),
        ),
        MEDIUM,
        tag,
    )
    return (outline,)


def upper_arm(elbow: Spot, top: Spot, tag: str) -> tuple[Shape, ...]:
    """The bone above an elbow: a shaft that broadens at both ends."""
    length = abs(top - elbow)
    unit = (top - elbow) / length

    def at(x: float, y: float) -> Spot:
        return elbow + unit * complex(x, y)

    def side(sign: int) -> Curve:
        return Curve(
            at(4.6, 3.4 * sign),
            (
                (at(9, 3.4 * sign), at(10, 2.3 * sign), at(16, 2.3 * sign)),
                (at(0.6 * length, 2.3 * sign), at(0.7 * length, 2.3 * sign), at(length, 3 * sign)),
            ),
            MEDIUM,
            tag,
        )

    return side(1), side(-1), *break_mark(top, bearing(unit), 3.0, tag)


def break_mark(at: Spot, direction: float, half: float, tag: str) -> tuple[Shape, ...]:
    """The wavy end of a member that goes on beyond the drawing."""
    side, unit = heading(direction) * 1j, heading(direction)
    a, b = at + side * (half + 1.5), at - side * (half + 1.5)
    bend = unit * 2.5
    third = (b - a) / 3
    return (Curve(a, ((a + third + bend, b - third - bend, b),), LIGHT, tag),)


def joint(at: Spot, radius: float, tag: str) -> tuple[Shape, ...]:
    """The joint of a limb: a ring about its centre."""
    return (circle(at, radius, MEDIUM, tag), circle(at, 0.8, FINE, tag, filled=True))


def muscle(insertion: Spot, end: Spot, tag: str) -> tuple[Shape, ...]:
    """A muscle: tendons along its line of action, a spindle-shaped belly between them."""
    way = end - insertion
    unit = way / abs(way)
    side = unit * 1j * min(4.0, abs(way) / 12)
    a, b = insertion + way * 0.22, insertion + way * 0.86
    belly = Curve(
        a,
        (
            (a + way * 0.2 + side * 1.3, b - way * 0.2 + side * 1.3, b),
            (b - way * 0.2 - side * 1.3, a + way * 0.2 - side * 1.3, a),
        ),
        MEDIUM,
        tag,
    )
    fibres = tuple(
        (insertion + way * 0.36 + side * k, insertion + way * 0.72 + side * k)
        for k in (-0.32, 0.32)
    )
    tendons = ((insertion, a), (b, end))
    return Path(tendons, HEAVY, tag), belly, Path(fibres, FINE, tag), _fixing(insertion, tag)


def _fixing(at: Spot, tag: str) -> Arc:
    return circle(at, 1.3, FINE, tag, filled=True)


def cable(start: Spot, end: Spot, tag: str) -> tuple[Shape, ...]:
    """A taut cable with its fixing at the start."""
    return line(start, end, MEDIUM, tag), _fixing(start, tag)


def centre_mark(at: Spot, tag: str) -> tuple[Shape, ...]:
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

    return circle(at, r, LIGHT, tag), quarter(0.0), quarter(180.0)


def block(foot: Spot, width: float, height: float, tag: str) -> tuple[Shape, ...]:
    """A block standing with the middle of its bottom edge at `foot`."""
    a, b = foot - width / 2, foot + width / 2
    up = complex(0, height)
    return (polygon((a, b, b + up, a + up), MEDIUM, tag),)


def hung_block(
    at: Spot, rope: float, width: float, height: float, tag: str
) -> tuple[Shape, ...]:
    """A block on a rope of a length below its point; the block comes last."""
    top = at - complex(0, rope)
    ring = circle(top - 1.4j, 1.4, LIGHT, tag)
    body = block(top - complex(0, 2.8 + height), width, height, tag)
    return line(at, top, MEDIUM, tag), ring, _fixing(at, tag), *body


def hung_sign(at: Spot, width: float, height: float, tag: str) -> tuple[Shape, ...]:
    """A sign board on two cords; the board comes last."""
    left, right = at + complex(-0.38 * width, -13), at + complex(0.38 * width, -13)
    board = block(at - complex(0, 13 + height), width, height, tag)
    return Path(((at, left), (at, right)), LIGHT, tag), _fixing(at, tag), *board


def ball(at: Spot, radius: float, tag: str) -> tuple[Shape, ...]:
    """A ball about its centre."""
    return (circle(at, radius, MEDIUM, tag),)


def cuff(at: Spot, along: complex, half: float, tag: str) -> tuple[Shape, ...]:
    """A weighted cuff about a limb."""
    side, length = along * 1j, along * 5.5
    pads = [
        polygon((at + side * a - length, at + side * a + length, at + side * b + length,
                 at + side * b - length), MEDIUM, tag)
        for a, b in ((half, half + 4.0), (-half, -half - 4.0))
    ]  # fmt: skip
    return tuple(pads)


def plant(foot: Spot, tag: str) -> tuple[Shape, ...]:
    """A potted plant."""
    pot = polygon((foot - 4, foot + 4, foot + 5.5 + 8j, foot - 5.5 + 8j), MEDIUM, tag)
    stem = line(foot + 8j, foot + 13j, HEAVY, tag)
    return pot, stem, circle(foot + 19j, 6.0, MEDIUM, tag)


def bucket(at: Spot, rope: float, size: float, tag: str) -> tuple[Shape, ...]:
    """A bucket hung by its handle from a rope; `size` is 1 for one of 19 pt."""
    top = at - complex(0, rope)
    rim, floor = top - 7j * size, top - 19j * size
    wide, narrow = 6.5 * size, 4.6 * size
    pail = polygon((rim - wide, rim + wide, floor + narrow, floor - narrow), MEDIUM, tag)
    handle = Path(((rim - wide, top, rim + wide),), LIGHT, tag)
    return line(at, top, MEDIUM, tag), handle, pail, _fixing(at, tag)


def lamp(at: Spot, rope: float, tag: str) -> tuple[Shape, ...]:
    """A lamp with a cone for a shade."""
    top = at - complex(0, rope)
    shade = polygon((top - 2, top + 2, top + 9 - 9j, top - 9 - 9j), MEDIUM, tag)
    bulb = Arc(top - 9j, 3.0, 180.0, 180.0, LIGHT, tag)
    return line(at, top, MEDIUM, tag), shade, bulb, _fixing(at, tag)


def standing_person(feet: Spot, height: float, tag: str) -> tuple[Shape, ...]:
    """A person upright on both feet."""

    def at(x: float, y: float) -> Spot:
        return feet + height * complex(x, y)

    limbs = Path(
        (
            (at(-0.11, 0.0), at(0.0, 0.45), at(0.0, 0.76)),
            (at(0.11, 0.0), at(0.0, 0.45)),
            (at(-0.14, 0.46), at(0.0, 0.74), at(0.14, 0.46)),
        ),
        _LIMB,
        tag,
    )
    return limbs, circle(at(0.0, 0.89), height * 0.1, FINE, tag, filled=True)


def seated_person(seat: Spot, height: float, facing: int, tag: str) -> tuple[Shape, ...]:
    """A person sitting, knees up, facing right (1) or left (-1); height is that when standing."""

    def at(x: float, y: float) -> Spot:
        return seat + height * complex(x * facing, y)

    limbs = Path(
        (
            (at(0.27, 0.02), at(0.2, 0.2), at(0.0, 0.03), at(-0.04, 0.38)),
            (at(-0.04, 0.34), at(0.1, 0.2), at(0.22, 0.24)),
        ),
        _LIMB,
        tag,
    )
    return limbs, circle(at(-0.03, 0.5), height * 0.1, FINE, tag, filled=True)


def climber(
    feet: Spot, along: complex, outward: complex, height: float, tag: str
) -> tuple[Shape, ...]:
    """A person on a ladder that rises `along`, on the side `outward` (unit steps)."""

    def at(out: float, up: float) -> Spot:
        return feet + height * (outward * out + along * up)

    limbs = Path(
        (
            (at(0.0, 0.0), at(0.12, 0.2), at(0.2, 0.42), at(0.19, 0.74)),
            (at(0.0, 0.17), at(0.05, 0.34), at(0.2, 0.42)),
            (at(0.19, 0.7), at(0.1, 0.58), at(0.0, 0.7)),
        ),
        _LIMB,
        tag,
    )
    return limbs, circle(at(0.2, 0.87), height * 0.095, FINE, tag, filled=True)


def pulley(at: Spot, radius: float, tag: str) -> tuple[Shape, ...]:
    """A wheel with its pin."""
    return circle(at, radius, MEDIUM, tag), circle(at, 1.2, FINE, tag, filled=True)
