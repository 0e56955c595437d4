"""The strokes of bodies: a solid, a round, a part of a person, a ladder, a bar, a particle."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Final

from probgen.bank.depiction import Anchor, Look, Source
from probgen.figures.measured.flat import flat_of
from probgen.figures.paper.scene import MEDIUM, Shape, Spot, bearing, heading
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import arm, limb, mechanical, person, profile, rod, solid
from probgen.figures.parts.flat import flat
from probgen.figures.situation.built import built
from probgen.figures.situation.hip import hip_of
from probgen.figures.situation.shape import ROUND, arms_of
from probgen.figures.situation.stage import Ends, Stage
from probgen.figures.situation.standing import standing
from probgen.statics.system import Body, Kind

_REEL: Final = 11.0  # from a hand to the reel beyond it, pt

_SOLIDS: Final[dict[Look, Callable[[Sequence[Spot], Tag], tuple[Shape, ...]]]] = {
    Look.GATE: solid.boarded,
    Look.FRIDGE: solid.refrigerator,
    Look.FILES: solid.filing_cabinet,
}  # that are more than a box

BENT: Final = 30.0
"""How far a head with a neck muscle is bent forward, degrees."""


def outline_of(stage: Stage, body: Body, ends: Ends) -> tuple[Shape, ...]:
    """A body's own strokes, stopped short of its pins and cut to its surfaces."""
    look = stage.look(body.id)
    spots = [stage.spot(name) for name in body.outline]
    tag = Tag(What.BODY, body.id)
    if len(spots) < 2:
        return _particle(stage, body, look, tag)
    if made := flat_of(stage.measured, body):
        shown = made.scaled(stage.scale)
        return flat(shown.parts, shown.holes, shown.wires, MEDIUM, tag, shown.centres)
    corners = stage.corners(body)
    if corners:
        return _SOLIDS.get(look, solid.box)(corners, tag)
    if look in ROUND:
        return _round(stage, body, look, tag)
    if look is Look.TRUSS:
        return mechanical.truss(spots, stage.halves[body.id], tag)
    if look is Look.WHEELBARROW:
        return solid.wheelbarrow(spots[0], spots[-1], tag)
    drawn = _limb(stage, body, spots, look, tag) or built(stage, body, tag)
    if drawn:
        return drawn
    if look is Look.FISHING_ROD:
        return rod.fishing_rod(spots[0], spots[-1], _reel(stage, body), tag)
    for end, inner in ((0, 1), (-1, -2)):
        short = ends.gaps.get(body.outline[end], 0.0)
        way = spots[inner] - spots[end]
        spots[end] += way / abs(way) * short
    laps = tuple(ends.laps.get((body.id, body.outline[end]), 0) for end in (0, -1))
    if any(laps):
        upward = 1 if (spots[-1] - spots[0]).real > 0 else -1
        sides = laps[0] * upward, laps[-1] * upward
        return solid.lapped((spots[0], spots[-1]), stage.halves[body.id], tag, sides)
    cuts = (ends.cuts.get(body.outline[0], 0j), ends.cuts.get(body.outline[-1], 0j))
    half = stage.halves[body.id]
    if look is Look.LADDER:
        return mechanical.ladder((spots[0], spots[-1]), half, tag, cuts)
    return mechanical.bar(spots, half, tag, cuts)


def _reel(stage: Stage, body: Body) -> float:
    """How far a rod's reel is from its butt, pt: a little beyond the hand that grips it."""
    butt = stage.spot(body.outline[0])
    grips = [e for e in stage.system.elements if stage.depicts.forces.get(e.id) is Source.GRIP]
    reaches = [abs(stage.spot(e.at) - butt) + _REEL for e in grips if e.body == body.id]
    return max(reaches, default=0.25 * abs(stage.spot(body.outline[-1]) - butt))


def _particle(stage: Stage, body: Body, look: Look, tag: Tag) -> tuple[Shape, ...]:
    spot = stage.spot(body.outline[0])
    block = stage.blocks.get(body.id)
    if block:
        return block.drawn(spot, tag)
    match look:
        case Look.HEAD:
            return profile.head(spot, 18.0, 1, tag)
        case Look.KNEECAP:
            return limb.kneecap(spot, _pulled(stage, body), tag)
        case Look.BOLLARD:
            return solid.bollard(spot, stage.foot(body), tag, Tag(What.ROPE, body.id))
    wheel = stage.wheel(body.id)
    return mechanical.pulley(spot, wheel, tag) if wheel else (mechanical.ring(spot, tag),)


def _pulled(stage: Stage, body: Body) -> complex:
    """The unit step in which a particle's ropes pull it together."""
    whole = sum(stage.pulls(body.id), 0j)
    return whole / abs(whole) if abs(whole) > 0.1 else 1j


def _round(stage: Stage, body: Body, look: Look, tag: Tag) -> tuple[Shape, ...]:
    axle, radii, bars = arms_of(stage.measured, body, look)
    centre = stage.spot(axle)
    if look is Look.REEL:
        return solid.reel(centre, max(radii) * stage.scale, tag)
    shapes = solid.drum(centre, [radius * stage.scale for radius in radii], tag)
    for name in bars:
        way = stage.spot(name) - centre
        shapes += mechanical.bar((centre + way / abs(way) * mechanical.PIN, centre + way), 2.2, tag)
    return *shapes, *_band(stage, body, centre)


def _band(stage: Stage, body: Body, axle: Spot) -> Iterator[Shape]:
    """The part of a band that lies on a drum, between its two ends."""
    told = stage.depicts.lines
    own = [e for e in stage.system.elements if e.body == body.id and told.get(e.id) is Anchor.BAND]
    ways = [way for e in own if (way := stage.measured.direction_of(e)) is not None]
    if len(ways) == len(own) == 2:
        ends = stage.spot(own[0].at), stage.spot(own[1].at)
        pulled = heading(ways[0]) + heading(ways[1])
        yield solid.band(axle, ends, pulled, Tag(What.CABLE, own[0].id))


def _limb(
    stage: Stage, body: Body, spots: Sequence[Spot], look: Look, tag: Tag
) -> tuple[Shape, ...]:
    """A part of a human body between its joint and its other end; none for another body."""
    elements = stage.system.elements
    own = [element for element in elements if element.body == body.id]
    joint = next((stage.spot(e.at) for e in own if stage.is_joint(e)), spots[0])
    match look:
        case Look.FOREARM | Look.ARM:
            return arm.forearm(spots[0], spots[-1], tag, behind=abs(joint - spots[0]) > 1.0)
        case Look.LEG:
            leg = limb.lower_leg(spots[0], spots[-1], tag, _toes(spots))
            if any(map(stage.is_joint, own)):
                return leg
            unit = (spots[-1] - spots[0]) / abs(spots[-1] - spots[0])
            return *leg, *limb.break_mark(spots[0] + 4.0 * unit, bearing(unit), 3.8, tag)
        case Look.PELVIS if hip := hip_of(stage, body.id):
            return hip.pelvis(tag)
        case Look.PELVIS if whole := standing(stage):
            return whole.pelvis(tag)
        case Look.PELVIS:
            return limb.pelvis(spots[0], joint, spots[-1], tag)
        case Look.JAW:
            return limb.jaw(spots[0], spots[-1], tag)
        case Look.FOOT:
            heel, ball = sorted((spots[0], spots[-1]), key=lambda spot: -spot.imag)
            return limb.foot(heel, joint, ball, tag)
        case Look.TRUNK:
            return limb.trunk(spots[0], spots[-1], tag)
        case Look.HEAD:
            heavy = [stage.spot(e.at) for e in own if e.kind == Kind.WEIGHT]
            way = (heavy[0] if heavy else spots[-1]) - joint
            radius = min(max(1.5 * abs(way), 26.0), 60.0)
            return profile.head(joint, radius, 1 if way.real >= 0 else -1, tag, BENT)
        case Look.PUSH_UP:
            return person.braced(spots[0], spots[len(spots) // 2], spots[-1], tag)
    return ()


def _toes(spots: Sequence[Spot]) -> int:
    """Which side the toes of a leg are on: those of a hanging leg to the right."""
    way = spots[-1] - spots[0]
    return 1 if way.real >= 0 else -1
