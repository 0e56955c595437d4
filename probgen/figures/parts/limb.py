"""Parts of the human body as a drafter sketches them: bones, joints, muscles, hand, foot, head.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from probgen.figures.paper.scene import (
    BARE,
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Curve,
    Path,
    Shape,
    Spot,
    Tone,
    bearing,
    circle,
    heading,
    polygon,
)
from probgen.figures.paper.tag import Tag

Bend = tuple[tuple[float, float], tuple[float, float], tuple[float, float]]
"""A cubic piece: two controls and an end, along and across the limb (pt)."""


def _outline(origin: Spot, unit: complex, start: tuple[float, float], bends: Sequence[Bend],
             tag: Tag) -> Curve:  # fmt: skip
    """A curve given along and across a direction."""

    def at(place: tuple[float, float]) -> Spot:
        return origin + unit * complex(*place)

    pieces = tuple((at(first), at(second), at(end)) for first, second, end in bends)
    return Curve(at(start), pieces, MEDIUM, tag, tone=Tone.BODY)


def _mirrored(bend: Bend, sign: int) -> Bend:
    """A piece on the other side of its limb when the sign is -1."""
    (a, b), (c, d), (e, f) = bend
    return (a, sign * b), (c, sign * d), (e, sign * f)


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
    return _outline(elbow, unit, (4.0, 5.4), bends, tag), _fingers(elbow + unit * wrist, unit, tag)


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
    return (_outline(shoulder, unit, starts[0], (*side, *back), tag),)


def _fingers(wrist: Spot, unit: complex, tag: Tag) -> Path:
    """The thumb across a fist, and the lines between its fingers."""
    thumb = ((5.0, 1.5), (9.0, 3.8), (14.0, 3.2), (16.0, 0.6), (13.5, -0.8), (9.0, 0.0))
    lines = (thumb, *(((x, -0.6), (x + 1.0, -5.6)) for x in (14.0, 17.5, 21.0)))
    spots = [tuple(wrist + unit * complex(x, y) for x, y in run) for run in lines]
    return Path(tuple(spots), FINE, tag)


def lower_leg(knee: Spot, ankle: Spot, tag: Tag, toes: int = 1) -> tuple[Shape, ...]:
    """A lower leg from the knee's pin with its calf, and a foot beyond the ankle.

    toes: 1 for a foot to the left of the way from knee to ankle, -1 for one to the right.
    """
    n = abs(ankle - knee)
    s = toes
    bends: tuple[Bend, ...] = (
        ((0.2 * n, 5.2 * s), (0.6 * n, 4.4 * s), (n - 6, 3.6 * s)),
        ((n - 3, 3.6 * s), (n - 2, 5.5 * s), (n - 1, 9 * s)),
        ((n, 14 * s), (n + 2, 17.5 * s), (n + 5, 17.5 * s)),
        ((n + 6.6, 17.5 * s), (n + 6.6, 15 * s), (n + 6.4, 12 * s)),
        ((n + 6, 6 * s), (n + 7, 2 * s), (n + 6.6, -3 * s)),
        ((n + 6.4, -6.4 * s), (n + 1, -6.4 * s), (n - 3, -4.2 * s)),
        ((0.72 * n, -3.6 * s), (0.6 * n, -6 * s), (0.4 * n, -8 * s)),
        ((0.25 * n, -9 * s), (0.1 * n, -7 * s), (4.0, -5.2 * s)),
    )
    return (_outline(knee, (ankle - knee) / n, (4.0, 5.2 * s), bends, tag),)


def bone(joint: Spot, end: Spot, tag: Tag, thickness: float = 1.0) -> tuple[Shape, ...]:
    """The limb beyond a joint (upper arm, thigh): it broadens at the joint and is broken off."""
    length = abs(end - joint)
    unit = (end - joint) / length

    w, n = thickness, length
    face: tuple[Bend, ...] = (
        ((8, 5.4 * w), (0.2 * n, 6.2 * w), (0.4 * n, 6.8 * w)),
        ((0.62 * n, 7.4 * w), (0.8 * n, 7.2 * w), (n, 6.6 * w)),
        ((n, 2.0 * w), (n, -2.0 * w), (n, -6.6 * w)),
        ((0.8 * n, -7.2 * w), (0.62 * n, -7.4 * w), (0.4 * n, -6.8 * w)),
        ((0.2 * n, -6.2 * w), (8, -5.4 * w), (4.4, -4.6 * w)),
    )
    inside = replace(_outline(joint, unit, (4.4, 4.6 * w), face, tag), pen=BARE)

    def side(sign: int) -> Curve:
        bends = [_mirrored(bend, sign) for bend in face[:2]]
        edge = _outline(joint, unit, (4.4, 4.6 * w * sign), bends, tag)
        return replace(edge, tone=None)

    return inside, side(1), side(-1), *break_mark(end, bearing(unit), 6.6 * thickness, tag)


def head(base: Spot, radius: float, facing: int, tag: Tag, lean: float = 0.0) -> tuple[Shape, ...]:
    """A head in profile with its neck, standing on `base`, the joint of head and neck.

    facing: 1 to the right, -1 to the left; lean: how far it is bent forward, degrees.
    """
    r, turn = radius, heading(-lean * facing)

    def at(x: float, y: float) -> Spot:
        return base + r * complex(x * facing, y) * turn

    profile = Curve(
        at(-0.42, -0.75),
        (
            (at(-0.40, -0.2), at(-0.9, 0.2), at(-0.92, 0.9)),
            (at(-0.94, 1.9), at(0.75, 2.0), at(0.88, 1.05)),
            (at(0.9, 0.9), at(1.08, 0.62), at(1.12, 0.5)),  # the nose
            (at(1.1, 0.4), at(0.98, 0.42), at(0.95, 0.36)),
            (at(0.98, 0.1), at(0.96, -0.22), at(0.6, -0.2)),  # the chin
            (at(0.4, -0.18), at(0.32, -0.3), at(0.34, -0.75)),
        ),
        MEDIUM,
        tag,
        tone=Tone.BODY,
    )
    if lean:  # where the eye would be, the centre of mass is marked
        return (profile,)
    return profile, circle(at(0.62, 0.72), 0.07 * r, FINE, tag, filled=True)


def trunk(hips: Spot, neck: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A trunk seen from the side, from the hips to the neck; the back is its upper side."""
    n = abs(neck - hips)
    unit = (neck - hips) / n
    s = 1 if unit.real >= 0 else -1
    bends: tuple[Bend, ...] = (
        ((-6.0, 11.0 * s), (0.1 * n, 11.0 * s), (0.22 * n, 9.5 * s)),
        ((0.42 * n, 9.0 * s), (0.6 * n, 13.5 * s), (0.78 * n, 12.0 * s)),
        ((0.9 * n, 11.0 * s), (0.93 * n, 5.0 * s), (n, 4.5 * s)),
        ((n + 1.0, 1.0 * s), (n + 1.0, -1.0 * s), (n, -4.5 * s)),
        ((0.93 * n, -5.0 * s), (0.88 * n, -12.0 * s), (0.74 * n, -13.0 * s)),
        ((0.55 * n, -13.5 * s), (0.3 * n, -12.0 * s), (0.14 * n, -12.0 * s)),
        ((-4.0, -12.0 * s), (-11.0, -6.0 * s), (-9.0, 2.0 * s)),
    )
    return (_outline(hips, unit, (-9.0, 2.0 * s), bends, tag),)


def foot(heel: Spot, ankle: Spot, ball: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A foot raised on its ball, from where the Achilles tendon is fixed; toes on the ground."""
    n, a = abs(ball - heel), abs(ankle - heel)
    unit = (ball - heel) / n
    s = 1 if unit.real >= 0 else -1
    level = 1.0 / unit  # the ground's direction, along and across the foot

    def toe(forward: float, up: float) -> tuple[float, float]:
        place = n + s * level * complex(forward, s * up)
        return place.real, place.imag

    bends: tuple[Bend, ...] = (
        ((a + 0.3 * (n - a), 6.5 * s), (0.8 * n, 6.0 * s), (n - 2.0, 8.0 * s)),
        (toe(7, 8), toe(15, 6), toe(16, 2)),
        (toe(16, -0.4), toe(8, 0), (n, 0.0)),  # the toes, level on the ground
        ((n - 6.0, -1.5 * s), (0.62 * n, 0.0), (0.42 * n, -5.0 * s)),
        ((0.3 * n, -9.5 * s), (-2.0, -10.0 * s), (-4.5, -5.0 * s)),  # the heel
        ((-5.5, -2.0 * s), (-2.0, -1.0 * s), (0.0, 0.0)),
        ((2.0, 2.0 * s), (max(a - 9.0, 3.0), 4.0 * s), (max(a - 7.0, 4.0), 6.5 * s)),
    )
    return (_outline(heel, unit, (a + 5.5, 6.5 * s), bends, tag),)


def jaw(joint: Spot, tip: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A lower jaw from its joint to its teeth, which bite at `tip`."""
    n = abs(tip - joint)
    unit = (tip - joint) / n
    s = 1 if unit.real >= 0 else -1
    bends: tuple[Bend, ...] = (
        ((0.3 * n, 2.0 * s), (0.6 * n, 0.0), (n + 7, 0.0)),
        ((n + 9, -3 * s), (n + 9, -8 * s), (n + 11, -12 * s)),
        ((n + 13, -19 * s), (n + 3, -21 * s), (n - 6, -20 * s)),  # the chin
        ((0.6 * n, -19 * s), (0.4 * n, -18 * s), (0.2 * n, -15 * s)),
        ((0.08 * n, -13 * s), (-3, -11 * s), (-3.4, -3.2 * s)),
    )
    teeth = tuple(
        tuple(
            joint + unit * complex(n + at + along, s * across)
            for along, across in ((0, 0), (0, 4.5), (4.2, 4.5), (4.2, 0))
        )
        for at in (-11.0, -6.4, -1.8, 2.8)
    )
    outline = _outline(joint, unit, (3.2, 3.0 * s), bends, tag)
    return outline, Path(teeth, LIGHT, tag, closed=True, tone=Tone.PAPER)


def upper_jaw(joint: Spot, tip: Spot, tag: Tag) -> tuple[Shape, ...]:
    """The skull above a lower jaw: from the joint along the cheekbone to nose and upper teeth."""
    n = abs(tip - joint)
    unit = (tip - joint) / n
    s = 1 if unit.real >= 0 else -1
    bends: tuple[Bend, ...] = (
        ((-2.0, 22.0 * s), (0.1 * n, 38.0 * s), (0.3 * n, 40.0 * s)),  # the temple
        ((0.45 * n, 40.0 * s), (0.5 * n, 62.0 * s), (0.66 * n, 62.0 * s)),  # below the eye
        ((0.8 * n, 62.0 * s), (0.86 * n, 56.0 * s), (n - 4.0, 52.0 * s)),
        ((n + 4.0, 50.0 * s), (n + 8.0, 38.0 * s), (n + 6.0, 34.0 * s)),  # the nose
        ((n + 2.0, 30.0 * s), (n + 11.0, 24.0 * s), (n + 8.0, 20.0 * s)),
        ((n, 19.0 * s), (0.7 * n, 20.0 * s), (0.52 * n, 20.0 * s)),
        ((0.46 * n, 24.0 * s), (0.3 * n, 26.0 * s), (0.2 * n, 22.0 * s)),  # the cheekbone
        ((0.1 * n, 18.0 * s), (7.0, 10.0 * s), (4.0, 4.0 * s)),
    )
    teeth = tuple(
        tuple(
            joint + unit * complex(n + at + along, s * across)
            for along, across in ((0, 20.0), (0, 15.5), (4.2, 15.5), (4.2, 20.0))
        )
        for at in (-11.0, -6.4, -1.8, 2.8)
    )
    outline = _outline(joint, unit, (-3.0, 4.0 * s), bends, tag)
    return outline, Path(teeth, LIGHT, tag, closed=True, tone=Tone.PAPER)


def pelvis(crest: Spot, joint: Spot, middle: Spot, tag: Tag) -> tuple[Shape, ...]:
    """One half of a pelvis, from its outer crest over the socket of the hip to its middle."""
    way, rise = middle - joint, abs(crest - joint) * 1j
    rim = joint + 1.04 * (crest - joint)
    ball = 7.0 if way.real > 0 else -7.0
    over = 8.5j
    pieces = (
        (rim + 0.45 * rise, joint + 0.05 * way + 0.6 * rise, joint + 0.45 * way + 0.36 * rise),
        (joint + 0.75 * way + 0.22 * rise, joint + 1.08 * way + 0.3 * rise, joint + 1.08 * way),
        (joint + 1.08 * way - 0.34 * rise, joint + 0.5 * way - 0.4 * rise, joint + ball - 1j),
        (joint + ball + over, joint - ball + over, joint - ball - 1j),
        (joint - 3.0 * ball - 4j, rim - 0.2 * rise, rim),
    )
    return (Curve(rim, pieces, MEDIUM, tag, tone=Tone.BODY),)


def band(at: Spot, along: complex, half: float, tag: Tag) -> tuple[Shape, ...]:
    """A band round a limb that runs along a unit step, half as high as told (pt)."""
    side, way = along * 1j * half, along * 3.5
    corners = (at - way - side, at + way - side, at + way + side, at - way + side)
    return (polygon(corners, MEDIUM, tag, tone=Tone.PERSON),)


def kneecap(at: Spot, back: complex, tag: Tag) -> tuple[Shape, ...]:
    """A kneecap in profile; back: the unit step toward the thigh bone behind it."""
    half, thick = 14.0, 6.0
    bends: tuple[Bend, ...] = (
        ((thick, 0.55 * half), (thick, -0.55 * half), (0.0, -half)),
        ((-1.5 * thick, -0.6 * half), (-1.5 * thick, 0.6 * half), (0.0, half)),
    )
    return (replace(_outline(at, back, (0.0, half), bends, tag), tone=Tone.PERSON),)


def patella(at: Spot, along: complex, tag: Tag) -> tuple[Shape, ...]:
    """A small kneecap that a tendon runs into along a unit step."""
    bends: tuple[Bend, ...] = (
        ((-3.0, 3.2), (3.0, 3.2), (4.5, 0.0)),
        ((3.0, -3.0), (-3.0, -3.0), (-4.5, 0.0)),
    )
    return (replace(_outline(at, along, (-4.5, 0.0), bends, tag), tone=Tone.PERSON),)


def knee(at: Spot, thigh: complex, shin: complex, tag: Tag) -> tuple[Shape, ...]:
    """The bones behind a kneecap: a round end, the thigh and the shin along their unit steps."""
    back = (thigh + shin) / abs(thigh + shin)
    centre, apart = at + back * 42.0, thigh - shin
    return (
        circle(centre, 15.0, MEDIUM, tag, tone=Tone.BODY),
        *bone(centre + thigh * 12.0 - apart * 2.0, centre + thigh * 68.0 - apart * 3.0, tag),
        *bone(centre + shin * 12.0 + apart * 2.0, centre + shin * 68.0 + apart * 3.0, tag),
    )


def break_mark(at: Spot, direction: float, half: float, tag: Tag) -> tuple[Shape, ...]:
    """The wavy end of a member that goes on beyond the drawing."""
    side, unit = heading(direction) * 1j, heading(direction)
    a, b = at + side * (half + 1.5), at - side * (half + 1.5)
    bend = unit * 2.5
    third = (b - a) / 3
    return (Curve(a, ((a + third + bend, b - third - bend, b),), LIGHT, tag),)


def joint(at: Spot, radius: float, tag: Tag) -> tuple[Shape, ...]:
    """The joint of a limb: a ring about its centre."""
    ring = circle(at, radius, MEDIUM, tag, tone=Tone.PAPER)
    return ring, circle(at, 0.8, FINE, tag, filled=True)


def muscle(insertion: Spot, end: Spot, tag: Tag) -> tuple[Shape, ...]:
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
        tone=Tone.PERSON,
    )
    fibres = tuple(
        (insertion + way * 0.36 + side * k, insertion + way * 0.72 + side * k)
        for k in (-0.32, 0.32)
    )
    tendons = ((insertion, a), (b, end))
    fixing = circle(insertion, 1.3, FINE, tag, filled=True)
    return Path(tendons, HEAVY, tag), belly, Path(fibres, FINE, tag), fixing
