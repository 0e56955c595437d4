"""The shape of a body: round or boxed, a part of a person or a bar; how broad, with what corners.

A body whose template does not say what it is, is a plain bar or a particle.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from probgen.bank.depiction import Depictions, Hinge, Look
from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import Spot
from probgen.statics.system import Body, Kind

LIMBS: Final = frozenset({
    Look.FOREARM, Look.ARM, Look.LEG, Look.TRUNK, Look.FOOT, Look.JAW, Look.PELVIS,
    Look.HEAD, Look.KNEECAP, Look.PUSH_UP,
})  # fmt: skip
"""Parts of a human body."""

ROUND: Final = frozenset({Look.DRUM, Look.CRANKED_DRUM, Look.REEL})
"""What turns about an axle."""

UPRIGHT: Final = frozenset({Look.CABINET, Look.BOOKCASE, Look.FILES, Look.FRIDGE})
"""Boxes about an axis from the floor up."""

BLOCKS: Final = frozenset({
    Look.CRATE, Look.BLOCK, Look.BRICK, Look.PALLET, Look.TROUGH, Look.SLED, Look.PANEL,
    Look.BOARD, Look.BALL, Look.PIPE, Look.PERSON, Look.BUCKET, Look.SITTER, Look.LEG,
})  # fmt: skip
"""What particles are drawn as that have an extent of their own."""

_HALVES: Final = {
    Look.LADDER: 3.2, Look.FOREARM: 2.0, Look.ARM: 4.0, Look.LEG: 4.5, Look.TRUNK: 12.0,
    Look.PLANK: 2.2, Look.ROD: 1.6, Look.FISHING_ROD: 2.3, Look.WHEELBARROW: 1.5, Look.TRUSS: 1.6,
    Look.PUSH_UP: 0.0, Look.SIGN_POST: 5.6, Look.STONE: 6.5,
}  # fmt: skip
_HALF: Final = 3.0  # half the thickness of any other bar, pt
_SLENDER: Final = 0.2  # half the breadth of an upright box of unknown breadth, of its height


def look_of(depicts: Depictions, body: str) -> Look:
    """What a body is drawn as, a bar when nothing is said."""
    return depicts.bodies.get(body, Look.BEAM)


def is_closed(body: Body) -> bool:
    """Whether a body's outline runs back to where it began."""
    return len(body.outline) > 3 and body.outline[0] == body.outline[-1]


def half_thickness(look: Look) -> float:
    """Half the thickness a slender body is drawn with, pt."""
    return _HALVES.get(look, _HALF)


def half_breadth(measured: Survey, body: Body) -> float:
    """Half the breadth (m) of an upright box: from the points beside an end of its axis."""
    foot, *_, top = measured.outline(body)
    way = (top - foot) / abs(top - foot)
    beside = [(place - foot) / way for place in measured.places.values()]
    widths = [abs(p.imag) for p in beside if abs(p.real) < 1e-6 and abs(p.imag) > 1e-6]
    return max(widths, default=_SLENDER * abs(top - foot))


def encloses(corners: Sequence[Spot], spot: Spot) -> bool:
    """Whether a closed outline has a spot inside, by the crossings to the right of it."""
    inside = False
    for a, b in pairwise((*corners, *corners[:1])):
        if (a.imag > spot.imag) != (b.imag > spot.imag):
            across = a.real + (spot.imag - a.imag) / (b.imag - a.imag) * (b.real - a.real)
            inside ^= across > spot.real
    return inside


def corners_of(measured: Survey, body: Body, look: Look) -> tuple[complex, ...]:
    """The corners (m) of a body that is drawn as a solid, none for another."""
    if is_closed(body):
        return measured.outline(body)[:-1]
    if len(body.outline) == 2 and look in UPRIGHT:
        foot, top = measured.outline(body)
        side = (top - foot) / abs(top - foot) * 1j * half_breadth(measured, body)
        return foot - side, foot + side, top + side, top - side
    return ()


def beyond(part: Look | None, told: Hinge | None, size: float) -> complex:
    """The step (pt) from a joint along what is beyond a limb of some length; 0 for nothing."""
    if told is Hinge.KNEE:
        return -46 + 0j
    match part:
        case Look.FOREARM:
            return 1j * max(0.62 * size, 55.0)
        case Look.FOOT:
            return 6.0 + 52j
        case Look.HEAD:
            return -20.0 - 34.6j
        case Look.TRUNK:
            return -8.0 - 46j
        case Look.PELVIS:
            return -52.0 - 70j
    return 0j


def arms_of(measured: Survey, body: Body, look: Look) -> tuple[str, list[float], list[str]]:
    """Of a round body: the point of its axle, its radii (m), and the ends of its cranks."""
    system = measured.system
    hinges = [e.at for e in system.elements if e.kind == Kind.HINGE and e.body == body.id]
    axle = hinges[0] if hinges else body.outline[len(body.outline) // 2]
    ends = [name for name in dict.fromkeys(body.outline) if name != axle]
    ends.sort(key=lambda name: abs(measured.places[name] - measured.places[axle]))
    cranked = look is Look.CRANKED_DRUM and len(ends) > 1
    bars = ends[-1:] if cranked else []
    radii = [abs(measured.places[n] - measured.places[axle]) for n in ends if n not in bars]
    return axle, list(dict.fromkeys(round(radius, 9) for radius in radii)), bars
