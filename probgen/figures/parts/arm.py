"""An arm as a drafter sketches it: the forearm with its fist, a whole arm that hangs, the
shoulder it is held out from.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from probgen.figures.paper.scene import BARE, FINE, LIGHT, Curve, Path, Shape, Spot, Tone
from probgen.figures.paper.tag import Tag
from probgen.figures.parts.limb import Bend, outline


def forearm(elbow: Spot, hand: Spot, tag: Tag, *, behind: bool = False) -> tuple[Shape, ...]:
    """A tapering forearm from the elbow's pin, and a fist about its end point.

    behind: it begins at a tendon's end behind the elbow instead, rounded about that.
    """
    n = abs(hand - elbow)
    wrist = n - 15.0
    bends: tuple[Bend, ...] = (
        ((0.16 * n, 7.2), (0.34 * n, 7.0), (0.55 * n, 4.8)),
        ((0.7 * n, 3.4), (wrist - 8, 3.0), (wrist, 3.0)),
        ((wrist + 3, 3.2), (wrist + 5, 6.6), (wrist + 11, 7.0)),  # the fist
        ((wrist + 18, 7.6), (wrist + 25, 6.0), (wrist + 25, 0.5)),
        ((wrist + 25, -5.6), (wrist + 19, -7.0), (wrist + 12, -6.6)),
        ((wrist + 6, -6.2), (wrist + 4, -3.2), (wrist, -3.0)),
        ((wrist - 8, -3.0), (0.7 * n, -3.8), (0.55 * n, -4.8)),
        ((0.34 * n, -6.6), (0.16 * n, -6.8), (4.0, -5.4)),
    )
    if behind:
        bends += (
            ((0.5, -5.2), (-3.6, -3.4), (-3.6, 0.0)),
            ((-3.6, 3.4), (0.5, 5.2), (4.0, 5.4)),
        )
    unit = (hand - elbow) / n
    return outline(elbow, unit, (4.0, 5.4), bends, tag), _fingers(elbow + unit * wrist, unit, tag)


def shoulder(joint: Spot, hand: Spot, tag: Tag) -> tuple[Shape, ...]:
    """One side of somebody upright, from the neck over the shoulder of an arm down to the waist."""
    size = abs(hand - joint) / 100.0
    side = 1 if hand.real >= joint.real else -1

    def at(x: float, y: float) -> Spot:
        return joint + complex(-x * side, y) * size

    upper = (
        (at(24.0, 21.0), at(24.5, 17.0), at(21.0, 14.5)),
        (at(15.0, 11.0), at(10.0, 10.6), at(4.0, 9.2)),
        (at(-2.0, 7.6), at(-6.0, 5.0), at(-12.0, 3.4)),
    )
    lower = (
        (at(-5.0, -5.0), at(1.0, -5.0), at(3.5, -11.0)),
        (at(6.0, -18.0), at(6.0, -24.0), at(7.0, -32.0)),
    )
    neck, armpit = at(23.5, 25.0), at(-12.0, -3.4)
    across = (armpit, armpit, armpit)
    middle = tuple((spot, spot, spot) for spot in (at(36.0, -32.0), at(36.0, 25.0), neck))
    return (
        Curve(neck, (*upper, across, *lower, *middle), BARE, tag, tone=Tone.SKIN),
        Curve(neck, upper, LIGHT, tag),
        Curve(armpit, lower, LIGHT, tag),
    )


def hanging_arm(shoulder: Spot, hand: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A whole arm, straight from the shoulder to a fist about its end point."""
    n = abs(hand - shoulder)
    side: tuple[Bend, ...] = (
        ((0.16 * n, 5.2), (0.3 * n, 4.6), (0.48 * n, 3.6)),
        ((0.6 * n, 4.2), (n - 12, 2.8), (n - 7, 2.5)),
        ((n - 5, 2.6), (n - 4, 4.3), (n - 1, 4.4)),
        ((n + 3, 4.5), (n + 4.6, 2.8), (n + 4.6, 0.0)),
    )
    starts = (0.0, 4.6), *(bend[2] for bend in side)
    back = tuple(
        ((c, -d), (a, -b), (x, -y))
        for (x, y), ((a, b), (c, d), _) in zip(starts[-2::-1], side[::-1], strict=True)
    )
    unit = (hand - shoulder) / n
    return (outline(shoulder, unit, starts[0], (*side, *back), tag),)


def _fingers(wrist: Spot, unit: complex, tag: Tag) -> Path:
    """The thumb across a fist, and the lines between its fingers."""
    thumb = ((5.0, 1.5), (9.0, 3.8), (14.0, 3.2), (16.0, 0.6), (13.5, -0.8), (9.0, 0.0))
    lines = (thumb, *(((x, -0.6), (x + 1.0, -5.6)) for x in (14.0, 17.5, 21.0)))
    spots = [tuple(wrist + unit * complex(x, y) for x, y in run) for run in lines]
    return Path(tuple(spots), FINE, tag)
