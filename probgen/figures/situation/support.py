"""Supports of a situation: hinges, joints of the body, axles, built-in ends, and all that carry."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from probgen.bank.depiction import Hinge, Look
from probgen.figures.paper.angle import draw_angle
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import MEDIUM, Shape, Spot, Tone, bearing, circle, heading
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import arm, limb, mechanical, solid, works
from probgen.figures.parts.ground import Surface, lug
from probgen.figures.parts.standing import KNEE
from probgen.figures.situation.contact import rolling, source, stands_for, touching
from probgen.figures.situation.fixture import FACE, Fixture, Incline, wedge_under
from probgen.figures.situation.hip import hip_of, muscle_end
from probgen.figures.situation.lap import laps_of
from probgen.figures.situation.reeving import foot_height
from probgen.figures.situation.shape import LIMBS, ROUND, arms_of, beyond
from probgen.figures.situation.slider import slot_of
from probgen.figures.situation.stage import Ends, Stage
from probgen.figures.situation.standing import broken_off
from probgen.figures.situation.water import hangs_from_wall
from probgen.figures.situation.waterworks import pump_of, well_of
from probgen.statics.system import Element, Kind

_WALL_GAP: Final = 11.0  # from a hinge's pin to the wall's face, pt
_STEEP: Final = 0.35  # least sine of a bar that rises from the floor
_SUNK: Final = 4.0  # how far below a pin a floor is at most that it is sunk into, pt
_LEVEL: Final = 1.0  # degrees, and pt
_BLOCK: Final = 14.0  # height of a block of wood at least, pt
_PEG: Final = 5.0  # radius of what a hinge is seen from above, pt
_RING: Final = 4.0  # radius of a limb's joint, pt
_JOINTS: Final[dict[Hinge | None, Look | None]] = {
    Hinge.JOINT: None,
    Hinge.SHOULDER: None,
    Hinge.ELBOW: Look.FOREARM,
    Hinge.KNEE: None,
    Hinge.HIP: Look.TRUNK,
}  # the limb a joint belongs to, where the body does not say it


@dataclass(frozen=True, slots=True)
class Held:
    """What the supports of a situation leave to those that draw after them.

    surfaces: faces still to be hatched; ends: how bars end at their supports; inclines: ids of the
    angles told at the foot of a slope; bare: those of them that are still to be drawn.
    """

    surfaces: tuple[Surface, ...]
    ends: Ends
    inclines: frozenset[str]
    bare: tuple[Incline, ...] = ()


def draw_supports(stage: Stage, field: Field) -> Held:
    """Draw what holds the bodies from outside, and the pins between them."""
    surfaces: list[Surface] = []
    gaps: dict[str, float] = {}
    cuts: dict[str, complex] = {}
    laps: dict[tuple[str, str], int] = {}
    inclines: list[Incline] = []
    for element in stage.system.elements:
        if stage.is_inner(element):
            # The pin is in the body drawn first; the other one stops short of it too.
            if element.kind == Kind.HINGE and element.at not in gaps:
                gaps[element.at] = mechanical.PIN
                field.add(mechanical.pin(stage.spot(element.at), Tag(What.SUPPORT, element.id)))
            field.add(*slot_of(stage, element))
            laps |= laps_of(stage, element)
            continue
        fixture = fixture_of(stage, element)
        field.add(*fixture.shapes)
        surfaces += fixture.surfaces
        if fixture.gap:
            gaps[element.at] = fixture.gap
        if fixture.cut:
            cuts[element.at] = fixture.cut
        draw_inclines(field, [each for each in fixture.inclines if not each.bare])
        inclines += fixture.inclines
    bare = tuple(each for each in inclines if each.bare)
    ids = frozenset(each.id for each in inclines)
    return Held(tuple(surfaces), Ends(gaps, cuts, laps), ids, bare)


def draw_inclines(field: Field, inclines: Iterable[Incline]) -> None:
    """The angles at the feet of slopes."""
    for each in inclines:
        told = each.foot, each.level, each.way, each.text, each.id
        draw_angle(field, *told, reference_drawn=not each.bare)


def fixture_of(stage: Stage, element: Element) -> Fixture:
    """What an element that holds its body from outside is drawn as; nothing for any other."""
    match element.kind:
        case Kind.HINGE:
            return _hinge(stage, element)
        case Kind.FIXED:
            return _built_in(stage, element)
        case Kind.CONTACT if stage.is_joint(element):
            return _joint(stage, element, Hinge.JOINT, stage.look(element.body))
        case Kind.ROLLER:
            return rolling(stage, element)
        case Kind.CONTACT | Kind.ROUGH:
            return touching(stage, element)
        case Kind.FORCE if stands_for(stage, element):
            return source(stage, element)
    return Fixture()


def _hinge(stage: Stage, element: Element) -> Fixture:
    pin, ways, tag = stage.spot(element.at), stage.ways(element), Tag(What.SUPPORT, element.id)
    told, look = stage.depicts.hinges.get(element.id), stage.look(element.body)
    if look is Look.BOLLARD:
        foot = stage.foot(stage.system.body(element.body))
        return Fixture(surfaces=(Surface(foot, 90.0, FACE, FACE),))
    if told is Hinge.SHAFT:
        return Fixture()
    if told is Hinge.MACHINE:
        return _pin(pin, tag)
    if pump := pump_of(stage, element.body) if told is Hinge.PUMP else None:
        held = _pin(pin, tag)
        ground = Surface(pump.foot, 90.0, 1.5 * FACE, 1.5 * FACE)
        return Fixture((*pump.shapes, *held.shapes), (ground,))
    if well := well_of(stage, element.body) if look in ROUND else None:
        return Fixture(well.shapes)
    if look in ROUND and ways:
        return _axle(stage, element, pin, tag)
    if look in LIMBS or told in _JOINTS:
        return _joint(stage, element, told, look if look in LIMBS else None)
    if look is Look.TRUSS and told in (Hinge.WALL, Hinge.CEILING):
        ahead = sum(ways, 0j).real
        sideways = 0.0 if ahead >= 0.0 else 180.0
        return _bracket(pin, 270.0 if told is Hinge.CEILING else sideways, tag)
    corners = stage.corners(stage.system.body(element.body))
    if corners:
        middle = sum(corners, 0j) / len(corners)
        return _bracket(pin, 0.0 if middle.real > pin.real else 180.0, tag)
    if stage.measured.labels.plan and told is None and len(ways) != 1:
        return Fixture(mechanical.peg(pin, tag, _PEG))
    if told is Hinge.BLOCK and ways:
        return _on_block(stage, element, tag)
    if len(ways) != 1 or told is Hinge.FULCRUM:
        wedge = wedge_under(pin, stage.halves[element.body], tag)
        return Fixture((*wedge.shapes, circle(pin, 1.6, MEDIUM, tag)), wedge.surfaces)
    if told is None and hangs_from_wall(stage, pin):
        return _pin(pin, tag)
    normal = _bracket_normal(stage, element, told, ways[0])
    steep = abs(ways[0].imag) > _STEEP * abs(ways[0])
    floor = _floor_beside(stage, pin) if normal == 90.0 and steep else None
    if floor is not None:  # sunk into it
        held = _pin(pin, tag)
        return replace(held, surfaces=(Surface(floor, 90.0, FACE, FACE),))
    height = foot_height(stage, element, _WALL_GAP) if normal == 90.0 else _WALL_GAP
    return _bracket(pin, normal, tag, gap=mechanical.PIN, height=height)


def _pin(pin: Spot, tag: Tag) -> Fixture:
    """A pin whose other part is not shown, or is the wall behind it."""
    held = circle(pin, mechanical.PIN, MEDIUM, tag, tone=Tone.PAPER)
    return Fixture((held,), gap=mechanical.PIN)


def _bracket(
    pin: Spot, normal: float, tag: Tag, *, gap: float = 0.0, height: float = _WALL_GAP
) -> Fixture:
    """A bracket that carries a pin out from a face of some outward normal."""
    face = pin - heading(normal) * height
    return Fixture(lug(pin, face, tag), (Surface(face, normal, FACE, FACE),), gap)


def _floor_beside(stage: Stage, pin: Spot) -> Spot | None:
    """Where the floor that something touches elsewhere passes a pin, less than a bracket below."""
    for element in stage.system.elements:
        if element.kind not in (Kind.CONTACT, Kind.ROUGH) or stage.is_inner(element):
            continue
        for face in touching(stage, element).surfaces:
            low = face.at.imag - pin.imag
            if abs(face.normal - 90.0) < _LEVEL and -_SUNK <= low <= _LEVEL:
                return complex(pin.real, face.at.imag)
    return None


def _bracket_normal(stage: Stage, element: Element, told: Hinge | None, way: complex) -> float:
    """The outward normal of the face a hinge is fixed to."""
    sideways = 0.0 if way.real > 0 else 180.0
    match told:
        case Hinge.FLOOR:
            return 90.0
        case Hinge.CEILING:
            return 270.0
        case Hinge.WALL:
            return sideways
    if _stands_on_ground(stage, element.body):
        return 90.0
    if abs(way.real) > 0.35 * abs(way):
        return sideways
    return 90.0 if way.imag > 0 else 270.0


def _stands_on_ground(stage: Stage, body: str) -> bool:
    """Whether rollers or surfaces push the body up and no cable holds it."""
    elements = [e for e in stage.system.elements if e.body == body]
    surfaces = [e.surface for e in elements if e.surface is not None]
    pushed = any(abs(stage.measured.number(surface) - 90.0) < 1.0 for surface in surfaces)
    return pushed and not any(e.kind == Kind.CABLE for e in elements)


def _on_block(stage: Stage, element: Element, tag: Tag) -> Fixture:
    """A block of wood, its upper edge under a bar, on the ground that something else touches."""
    up = max(stage.ways(element), key=lambda way: way.imag)
    side = 1 if up.real >= 0 else -1
    edge = stage.spot(element.at) - side * 1j * up / abs(up) * stage.halves[element.body]
    others = (e for e in stage.system.elements if e.kind in (Kind.CONTACT, Kind.ROUGH))
    faces = [f for e in others if not stage.is_inner(e) for f in touching(stage, e).surfaces]
    levels = [f.at.imag for f in faces if abs(f.normal - 90.0) < _LEVEL and f.at.imag < edge.imag]
    height = max(edge.imag - min(levels, default=edge.imag), _BLOCK)
    foot = edge + complex(side * height / 2, -height)
    shapes = works.wooden_block(edge, height, side, tag)
    return Fixture(shapes, (Surface(foot, 90.0, height / 2 + FACE, height / 2 + FACE),))


def _axle(stage: Stage, element: Element, pin: Spot, tag: Tag) -> Fixture:
    """The axle of a drum on a stand."""
    body = stage.system.body(element.body)
    _, radii, _ = arms_of(stage.measured, body, stage.look(body.id))
    radius = max(radii, default=0.0) * stage.scale
    height = radius + 30.0
    surface = Surface(pin - 1j * height, 90.0, 26.0, 26.0)
    return Fixture(solid.stand(pin, radius, height, tag), (surface,))


def _joint(stage: Stage, element: Element, told: Hinge | None, part: Look | None) -> Fixture:
    """A joint's ring, and the limb beyond it; part: the limb that ends there, where it is known."""
    pin, tag = stage.spot(element.at), Tag(What.SUPPORT, element.id)
    if part is Look.KNEECAP:
        match stage.pulls(element.body):
            case [thigh, shin]:
                return Fixture(limb.knee(pin, thigh, shin, tag))
        return Fixture()
    if part is Look.JAW:
        tip = stage.spot(stage.system.body(element.body).outline[-1])
        return Fixture((*limb.upper_jaw(pin, tip, tag), *limb.joint(pin, _RING, tag)), gap=_RING)
    part = part or _JOINTS.get(told)
    shapes: tuple[Shape, ...] = limb.joint(pin, _RING, tag)
    if told is Hinge.SHOULDER and part is Look.ARM:
        ends = [stage.spot(name) for name in stage.system.body(element.body).outline]
        hand = max(ends, key=lambda spot: abs(spot - pin))
        shapes = (*arm.shoulder(pin, hand, Tag(What.BEYOND, element.id)), *shapes)
    hip, outer = hip_of(stage, element.body), muscle_end(stage, element.body)
    if hip and outer is not None:
        return Fixture((*hip.femur(outer, tag), *shapes), gap=_RING)
    if broken_off(stage, pin) is not None:
        shapes += limb.bone(pin, pin - 1j * KNEE * stage.scale, tag, 0.5)
        return Fixture(shapes, gap=_RING)
    way = beyond(part, told, stage.size(element.body))
    if way:
        shapes += limb.bone(pin, pin + way, tag, 1.0 if part is Look.FOREARM else 1.3)
    return Fixture(shapes, gap=_RING)


def _built_in(stage: Stage, element: Element) -> Fixture:
    """A body's end held fast in a wall, a floor or a ceiling, square to its axis."""
    ways = stage.ways(element)
    if not ways:
        return Fixture()
    out, spot = ways[0] / abs(ways[0]), stage.spot(element.at)
    tag, half = Tag(What.SUPPORT, element.id), stage.halves[element.body]
    surface = Surface(spot, bearing(out), FACE, FACE)
    return Fixture(mechanical.built_in(spot, out, half, tag), (surface,))
