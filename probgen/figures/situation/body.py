"""Bodies of a situation: what each is drawn as, how broad it is, and its own strokes.

A body's depiction is a word or two of its template; what it does not say, a plain bar shows.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import Shape, Spot
from probgen.figures.parts import limb, mechanical, solid
from probgen.statics.system import Body, Element, Kind

if TYPE_CHECKING:
    from probgen.figures.situation.support import Supports

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


def outline_of(supports: Supports, body: Body) -> tuple[Shape, ...]:
    """A body's own strokes, stopped short of its pins and cut to its surfaces."""
    shown = supports.depicts.get(body.id, "").lower()
    spots = [supports.spot(name) for name in body.outline]
    tag = f"body:{body.id}"
    if len(spots) < 2:
        return _particle(supports, body, shown, tag)
    corners = corners_of(supports.measured, body, shown)
    if corners:
        return solid.box([corner * supports.scale for corner in corners], tag)
    if is_round(shown):
        return _round(supports, body, shown, tag)
    if "wheelbarrow" in shown:
        return solid.wheelbarrow(spots[0], spots[-1], tag)
    drawn = _limb(supports, body, spots, limb_of(shown), tag)
    if drawn:
        return drawn
    for end, inner in ((0, 1), (-1, -2)):
        short = supports.pins.get(body.outline[end], 0.0)
        way = spots[inner] - spots[end]
        spots[end] += way / abs(way) * short
    cuts = (supports.cuts.get(body.outline[0], 0j), supports.cuts.get(body.outline[-1], 0j))
    half = supports.half(body.id)
    if "ladder" in shown:
        return mechanical.ladder((spots[0], spots[-1]), half, tag, cuts)
    return mechanical.bar(spots, half, tag, cuts)


def _particle(supports: Supports, body: Body, shown: str, tag: str) -> tuple[Shape, ...]:
    spot = supports.spot(body.outline[0])
    block = supports.blocks.get(body.id)
    if block:
        return block.drawn(spot, tag)
    match limb_of(shown):
        case "head":
            return limb.head(spot, 18.0, 1, tag)
        case "kneecap":
            return limb.kneecap(spot, supports.pulled(body), tag)
    if supports.wheels.get(body.id):
        return mechanical.pulley(spot, supports.wheels[body.id], tag)
    return (mechanical.ring(spot, tag),)


def _round(supports: Supports, body: Body, shown: str, tag: str) -> tuple[Shape, ...]:
    axle, radii, bars = arms_of(supports.measured, body, shown)
    centre = supports.spot(axle)
    shapes = solid.drum(centre, [radius * supports.scale for radius in radii], tag)
    for name in bars:
        way = supports.spot(name) - centre
        shapes += mechanical.bar((centre + way / abs(way) * mechanical.PIN, centre + way), 2.2, tag)
    return shapes


def _limb(
    supports: Supports, body: Body, spots: Sequence[Spot], part: str, tag: str
) -> tuple[Shape, ...]:
    """A part of a human body between its joint and its other end; none for another body."""
    elements = supports.measured.system.elements
    own = [element for element in elements if element.body == body.id]
    joint = next((supports.spot(e.at) for e in own if e.kind == Kind.HINGE), spots[0])
    match part:
        case "forearm" | "arm":
            return limb.forearm(spots[0], spots[-1], tag)
        case "leg":
            return limb.lower_leg(spots[0], spots[-1], tag, _toes(spots))
        case "pelvis":
            return limb.pelvis(spots[0], joint, spots[-1], tag)
        case "jaw":
            return limb.jaw(spots[0], spots[-1], tag)
        case "foot":
            heel, ball = sorted((spots[0], spots[-1]), key=lambda spot: -spot.imag)
            return limb.foot(heel, joint, ball, tag)
        case "head":
            heavy = [supports.spot(e.at) for e in own if e.kind == Kind.WEIGHT]
            way = (heavy[0] if heavy else spots[-1]) - joint
            radius = min(max(1.5 * abs(way), 26.0), 60.0)
            return limb.head(joint, radius, 1 if way.real >= 0 else -1, tag, 14.0)
    return ()


def _toes(spots: Sequence[Spot]) -> int:
    """Which side the toes of a leg are on: those of a hanging leg to the right."""
    way = spots[-1] - spots[0]
    return 1 if way.real >= 0 else -1
