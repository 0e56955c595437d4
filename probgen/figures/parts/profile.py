"""A head in profile, with its neck.

Lengths are pt, places complex numbers in pt.
"""

from __future__ import annotations

from typing import Final

from probgen.figures.paper.scene import (
    FINE,
    LIGHT,
    MEDIUM,
    Curve,
    Shape,
    Spot,
    Tone,
    circle,
    heading,
)
from probgen.figures.paper.tag import Tag

_LARGE: Final = 25.0  # radius of a head that has a face, pt


def head(base: Spot, radius: float, facing: int, tag: Tag, lean: float = 0.0) -> tuple[Shape, ...]:
    """A head in profile with its neck, standing on `base`, the joint of head and neck.

    facing: 1 to the right, -1 to the left; lean: how far it is bent forward, degrees.  A large
    one that is bent has an ear, an eye that looks down and a neck that is broken off.
    """
    r, turn = radius, heading(-lean * facing)

    def at(x: float, y: float) -> Spot:
        return base + r * complex(x * facing, y) * turn

    torn = (at(0.12, -0.62), at(-0.16, -0.92), at(-0.42, -0.75))
    profile = Curve(
        at(-0.42, -0.75),
        (
            (at(-0.40, -0.2), at(-0.9, 0.2), at(-0.92, 0.9)),
            (at(-0.94, 1.9), at(0.75, 2.0), at(0.88, 1.05)),
            (at(0.9, 0.9), at(1.08, 0.62), at(1.12, 0.5)),  # the nose
            (at(1.1, 0.4), at(0.98, 0.42), at(0.95, 0.36)),
            (at(0.98, 0.1), at(0.96, -0.22), at(0.6, -0.2)),  # the chin
            (at(0.4, -0.18), at(0.32, -0.3), at(0.34, -0.75)),
            *((torn,) if lean and r >= _LARGE else ()),
        ),
        MEDIUM,
        tag,
        tone=Tone.BODY,
    )
    if lean and r < _LARGE:  # where the eye would be, the centre of mass is marked
        return (profile,)
    if lean:
        ear = (
            (at(-0.62, 0.8), at(-0.32, 0.87), at(-0.34, 0.65)),
            (at(-0.35, 0.55), at(-0.43, 0.54), at(-0.43, 0.44)),
            (at(-0.43, 0.35), at(-0.53, 0.37), at(-0.55, 0.46)),
        )
        fold = ((at(-0.5, 0.72), at(-0.38, 0.74), at(-0.41, 0.61)),)
        lid = ((at(0.78, 0.72), at(0.84, 0.72), at(0.88, 0.77)),)
        brow = ((at(0.75, 0.94), at(0.83, 0.97), at(0.9, 0.93)),)
        return (
            profile,
            Curve(at(-0.57, 0.56), ear, LIGHT, tag),
            Curve(at(-0.52, 0.61), fold, FINE, tag),
            Curve(at(0.74, 0.8), lid, LIGHT, tag),
            Curve(at(0.71, 0.9), brow, FINE, tag),
        )
    return profile, circle(at(0.62, 0.72), 0.07 * r, FINE, tag, filled=True)
