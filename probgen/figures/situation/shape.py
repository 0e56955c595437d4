"""The shape of a body: round or boxed, a part of a person or a bar; how broad, with what corners.

A body's depiction is a word or two of its template; what it does not say, a plain bar shows.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import Spot
from probgen.figures.parts import solid
from probgen.statics.system import Body, Element, Kind

_LIMBS: Final = {
    "forearm": "forearm", "arm": "arm", "leg": "leg", "trunk": "trunk", "torso": "trunk",
    "back": "trunk", "foot": "foot", "jaw": "jaw", "head": "head", "kneecap": "kneecap",
    "pelvis": "pelvis", "hip": "pelvis",
}  # fmt: skip
_ROUNDS: Final = ("drum", "windlass", "winch", "wheel", "capstan", "pulley")
_THICKNESSES: Final = (
    ("ladder", 3.2), ("forearm", 2.0), ("arm", 4.0), ("leg", 4.5), ("plank", 2.2), ("rod", 1.6),
    ("wheelbarrow", 1.5),
)  # fmt: skip
_SLENDER: Final = 0.2  # half the breadth of an upright box of unknown breadth, of its height


def limb_of(depiction: str) -> str:
    """Which part of a human body a depiction asks for, "" for none."""
    words = depiction.lower().replace("-", " ").split()
    return next((_LIMBS[word] for word in words if word in _LIMBS), "")


def is_round(depiction: str) -> bool:
    """Whether a depiction asks for something that turns about an axle."""
    return any(word in depiction.lower().split() for word in _ROUNDS)


def is_upright(depiction: str) -> bool:
    """Whether a depiction asks for a box about an axis."""
    return any(word in depiction.lower().split() for word in solid.UPRIGHT)


def is_closed(body: Body) -> bool:
    """Whether a body's outline runs back to where it began."""
    return len(body.outline) > 3 and body.outline[0] == body.outline[-1]


def half_thickness(depiction: str) -> float:
    """Half the thickness a slender body is drawn with, pt."""
    shown = depiction.lower()
    return next((half for word, half in _THICKNESSES if word in shown), 3.0)


def half_breadth(measured: Survey, body: Body) -> float:
    """Half the breadth (m) of an upright box: from the points beside an end of its axis."""
    foot, *_, top = measured.outline(body)
    way = (top - foot) / abs(top - foot)
    beside = [(place - foot) / way for place in measured.places.values()]
    widths = [abs(p.imag) for p in beside if abs(p.real) < 1e-6 and abs(p.imag) > 1e-6]
    return max(widths, default=_SLENDER * abs(top - foot))


def own_weight(element: Element, body: Body) -> bool:
    """Whether a weight is that of the body itself, not of something it carries."""
    noun = element.name.removeprefix("the ").strip()
    return element.kind == Kind.WEIGHT and noun == body.name.removeprefix("the ").strip()


def encloses(corners: Sequence[Spot], spot: Spot) -> bool:
    """Whether a closed outline has a spot inside, by the crossings to the right of it."""
    inside = False
    for a, b in pairwise((*corners, *corners[:1])):
        if (a.imag > spot.imag) != (b.imag > spot.imag):
            across = a.real + (spot.imag - a.imag) / (b.imag - a.imag) * (b.real - a.real)
            inside ^= across > spot.real
    return inside


def corners_of(measured: Survey, body: Body, depiction: str) -> tuple[complex, ...]:
    """The corners (m) of a body that is drawn as a solid, none for another."""
    if is_closed(body):
        return measured.outline(body)[:-1]
    if len(body.outline) == 2 and is_upright(depiction):
        foot, top = measured.outline(body)
        side = (top - foot) / abs(top - foot) * 1j * half_breadth(measured, body)
        return foot - side, foot + side, top + side, top - side
    return ()


def arms_of(measured: Survey, body: Body, depiction: str) -> tuple[str, list[float], list[str]]:
    """Of a round body: the point of its axle, its radii (m), and the ends of its cranks."""
    system = measured.system
    hinges = [e.at for e in system.elements if e.kind == Kind.HINGE and e.body == body.id]
    axle = hinges[0] if hinges else body.outline[len(body.outline) // 2]
    ends = [name for name in dict.fromkeys(body.outline) if name != axle]
    ends.sort(key=lambda name: abs(measured.places[name] - measured.places[axle]))
    cranks = {"crank", "handle", "lever"} & set(depiction.lower().split())
    bars = ends[-1:] if cranks and len(ends) > 1 else []
    radii = [abs(measured.places[n] - measured.places[axle]) for n in ends if n not in bars]
    return axle, list(dict.fromkeys(round(radius, 9) for radius in radii)), bars
