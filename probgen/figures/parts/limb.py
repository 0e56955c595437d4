"""Parts of the human body as a drafter sketches them: bones, joints, muscles, hand, foot, head.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

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
    dot,
    heading,
    polygon,
)
from probgen.figures.paper.tag import Tag, What

Bend = tuple[tuple[float, float], tuple[float, float], tuple[float, float]]
"""A cubic piece: two controls and an end, along and across the limb (pt)."""

_CONDYLE: Final = 15.0  # radius of a thigh bone's end at the knee, pt
_CAP: Final = 8.0  # how far the controls of a kneecap's back are behind it, pt
_TENDON: Final = 80.0  # length of the tendon below a kneecap, pt


def outline(origin: Spot, unit: complex, start: tuple[float, float], bends: Sequence[Bend],
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
    return (outline(knee, (ankle - knee) / n, (4.0, 5.2 * s), bends, tag),)


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
    inside = replace(outline(joint, unit, (4.4, 4.6 * w), face, tag), pen=BARE)

    def side(sign: int) -> Curve:
        bends = [_mirrored(bend, sign) for bend in face[:2]]
        edge = outline(joint, unit, (4.4, 4.6 * w * sign), bends, tag)
        return replace(edge, tone=None)

    return inside, side(1), side(-1), *break_mark(end, bearing(unit), 6.6 * thickness, tag)


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
    return (outline(hips, unit, (-9.0, 2.0 * s), bends, tag),)


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
    return (outline(heel, unit, (a + 5.5, 6.5 * s), bends, tag),)


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
    drawn = outline(joint, unit, (3.2, 3.0 * s), bends, tag)
    return drawn, Path(teeth, LIGHT, tag, closed=True, tone=Tone.PAPER)


def upper_jaw(joint: Spot, tip: Spot, tag: Tag) -> tuple[Shape, ...]:
    """The head about a lower jaw: the light outline of a profile with its mouth open, the skull
    above the joint with the socket of its eye, and the upper teeth.
    """
    n = abs(tip - joint)
    unit = (tip - joint) / n
    s = 1 if unit.real >= 0 else -1
    skull: tuple[Bend, ...] = (
        ((-0.12 * n, -3.0), (-0.2 * n, 0.04 * n), (-0.28 * n, 0.1 * n)),
        ((-0.5 * n, 0.18 * n), (-0.64 * n, 0.4 * n), (-0.6 * n, 0.62 * n)),
        ((-0.52 * n, 1.18 * n), (0.78 * n, 1.26 * n), (0.92 * n, 0.78 * n)),  # the brow
        ((0.95 * n, 0.7 * n), (0.9 * n, 0.66 * n), (0.95 * n, 0.6 * n)),
        ((0.98 * n, 0.5 * n), (0.9 * n, 20.0 + 0.2 * n), (n - 2.0, 20.0 + 0.12 * n)),
        ((n + 3.0, 20.0 + 0.06 * n), (n + 9.0, 24.0), (n + 7.0, 20.0)),
        ((n, 19.0), (0.7 * n, 20.0), (0.52 * n, 20.0)),
        ((0.46 * n, 24.0), (0.3 * n, 26.0), (0.2 * n, 22.0)),  # the cheekbone
        ((0.1 * n, 18.0), (7.0, 10.0), (4.0, 4.0)),
    )
    teeth = tuple(
        tuple(
            joint + unit * complex(n + at + along, s * across)
            for along, across in ((0, 20.0), (0, 15.5), (4.2, 15.5), (4.2, 20.0))
        )
        for at in (-11.0, -6.4, -1.8, 2.8)
    )
    eye = circle(
        joint + unit * complex(0.76, 0.66 * s) * n, 0.09 * n, MEDIUM, tag, tone=Tone.PERSON
    )
    return (
        _profile(joint, unit, n, s, Tag(What.SCENERY)),
        outline(joint, unit, (-3.0, 4.0 * s), [_mirrored(bend, s) for bend in skull], tag),
        eye,
        Path(teeth, LIGHT, tag, closed=True, tone=Tone.PAPER),
    )


def _profile(joint: Spot, unit: complex, n: float, s: int, tag: Tag) -> Curve:
    """The outline of a head from the nape to the throat, its lower jaw `n` long; s: 1 for one
    that looks to the right, -1 to the left.
    """
    bends: tuple[Bend, ...] = (
        ((-0.46 * n, -4.0), (-0.74 * n, 0.2 * n), (-0.7 * n, 0.62 * n)),
        ((-0.62 * n, 1.34 * n), (0.86 * n, 1.38 * n), (1.0 * n, 0.82 * n)),
        ((1.03 * n, 0.72 * n), (1.0 * n, 0.7 * n), (1.03 * n, 0.64 * n)),
        ((1.07 * n, 0.54 * n), (1.15 * n, 20.0 + 0.26 * n), (1.17 * n, 20.0 + 0.2 * n)),  # the nose
        ((1.18 * n, 20.0 + 0.14 * n), (1.1 * n, 20.0 + 0.12 * n), (n + 14.0, 27.0)),
        ((n + 18.0, 22.0), (n + 19.0, 15.0), (n + 12.0, 14.5)),  # the lips
        ((n + 6.0, 12.0), (n + 6.0, 4.0), (n + 13.0, 1.0)),
        ((n + 18.0, -1.0), (n + 16.0, -6.0), (n + 15.0, -8.0)),
        ((n + 19.0, -14.0), (n + 20.0, -26.0), (n + 6.0, -27.0)),  # the chin
        ((0.7 * n, -27.0), (0.3 * n, -22.0), (0.16 * n, -38.0)),
    )
    turned = [_mirrored(bend, s) for bend in bends]
    profile = outline(joint, unit, (-0.44 * n, -38.0 * s), turned, tag)
    return replace(profile, pen=LIGHT, tone=Tone.SKIN)


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
        ((_CAP, 0.55 * half), (_CAP, -0.55 * half), (0.0, -half)),
        ((-1.5 * thick, -0.6 * half), (-1.5 * thick, 0.6 * half), (0.0, half)),
    )
    return (replace(outline(at, back, (0.0, half), bends, tag), tone=Tone.PERSON),)


def patella(at: Spot, along: complex, tag: Tag) -> tuple[Shape, ...]:
    """A small kneecap that a tendon runs into along a unit step."""
    bends: tuple[Bend, ...] = (
        ((-3.0, 3.2), (3.0, 3.2), (4.5, 0.0)),
        ((3.0, -3.0), (-3.0, -3.0), (-4.5, 0.0)),
    )
    return (replace(outline(at, along, (-4.5, 0.0), bends, tag), tone=Tone.PERSON),)


def knee(at: Spot, thigh: complex, shin: complex, tag: Tag) -> tuple[Shape, ...]:
    """The bones behind a kneecap, each along the tendon over it (unit steps): the thigh's round
    end, which the kneecap lies on, and the shin, to whose front the lower tendon runs.
    """
    back = (thigh + shin) / abs(thigh + shin)
    centre = at + back * (_CONDYLE + 0.75 * _CAP)
    front = (thigh / shin).imag
    return (
        *_shin(at, shin, -1 if front > 0 else 1, tag),
        *_thigh(centre, at + thigh * 112.0 + _inward(thigh, back) * 8.0, tag),
    )


def _inward(way: complex, back: complex) -> complex:
    """The unit step square to a way, to the side where the joint is."""
    return way * 1j if dot(way * 1j, back) > 0 else way * -1j


def _thigh(centre: Spot, end: Spot, tag: Tag) -> tuple[Shape, ...]:
    """A thigh bone, its round end about a centre; it is broken off at its other end."""
    n, r, k = abs(end - centre), _CONDYLE, 0.5523 * _CONDYLE
    unit = (end - centre) / n
    side: tuple[Bend, ...] = (
        ((0.8 * n, 7.2), (0.66 * n, 6.4), (0.5 * n, 6.8)),
        ((0.34 * n, 7.2), (1.2 * r, r), (0.0, r)),
        ((-k, r), (-r, k), (-r, 0.0)),
    )
    other = tuple(_mirrored(bend, -1) for bend in _reversed((n, 7.6), side))
    drawn = outline(centre, unit, (n, 7.6), (*side, *other), tag)
    return drawn, *break_mark(end, bearing(unit), 7.6, tag)


def _reversed(start: tuple[float, float], bends: Sequence[Bend]) -> tuple[Bend, ...]:
    """The same pieces of a curve from their end back to its start."""
    ends = (start, *(bend[2] for bend in bends))
    return tuple(
        (second, first, end)
        for end, (first, second, _) in zip(ends[-2::-1], bends[::-1], strict=True)
    )


def _shin(at: Spot, unit: complex, side: int, tag: Tag) -> tuple[Shape, ...]:
    """A shin bone whose front has the end of a tendon on it that comes straight from a kneecap.

    side: 1 for a bone to the right of the way down the tendon, -1 for one to the left.
    """
    t = _TENDON
    bends: tuple[Bend, ...] = (
        ((t + 16, -3.0), (t + 6, 0.0), (t, 0.0)),
        ((t - 8, 0.0), (t - 12, -2.0), (t - 20, -5.0)),  # the bump that the tendon is fixed to
        ((t - 28, -8.0), (t - 42, -6.0), (t - 42, -12.0)),
        ((t - 42, -20.0), (t - 43, -30.0), (t - 40, -36.0)),  # the head, below the thigh bone
        ((t - 36, -42.0), (t - 18, -22.0), (t + 4, -20.0)),
        ((t + 12, -18.0), (t + 20, -18.0), (t + 34, -18.0)),
    )
    turned = tuple(_mirrored(bend, side) for bend in bends)
    drawn = outline(at, unit, (t + 34, -4.0 * side), turned, tag)
    end = at + unit * complex(t + 34, -11.0 * side)
    return drawn, *break_mark(end, bearing(unit), 7.0, tag)


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
