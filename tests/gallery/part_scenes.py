"""Every part that figures are put together from, each as a small scene under its name."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from probgen.figures.paper.scene import LIGHT, MEDIUM, Box, Scene, Shape, composed, heading, line
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts import (
    arm,
    distributed,
    goods,
    limb,
    mechanical,
    person,
    profile,
    rod,
    scenery,
    solid,
    standing,
    vehicles,
    waterworks,
    works,
)
from probgen.figures.parts.axes import axes, turning
from probgen.figures.parts.chain import chain
from probgen.figures.parts.ground import Surface, fulcrum, hatched, lug, roller, tinted
from probgen.figures.parts.hip import Hip

_T = UNTAGGED
_ADULT: Final = 64.0  # pt
_SLOPE: Final = heading(68.0)
_CASE: Final = (-16 + 0j, 16 + 0j, 16 + 60j, -16 + 60j)
_BACK: Final = heading(215.0)

_Named = tuple[str, Iterable[Shape]]


def part_scenes() -> tuple[tuple[str, Scene], ...]:
    """Name and scene of every part, in the order of a contact sheet."""
    groups = (_bodies(), _people(), _limbs(), _loads(), _lines(), _supports(), _about(), _signs())
    return tuple((name, composed(shapes)) for group in groups for name, shapes in group)


def _bodies() -> tuple[_Named, ...]:
    return (
        ("beam", mechanical.bar((0j, 70 + 0j), 3.0, _T)),
        ("bent lever", mechanical.bar((-40 + 0j, 0j, 35j), 3.0, _T)),
        ("truss", mechanical.truss((0j, 30 + 36j, 60 + 0j, 0j), 2.0, _T)),
        ("bar notched for a lap", solid.lapped((-40 + 0j, 40 + 0j), 3.0, _T, (0, 1))),
        ("fishing rod", rod.fishing_rod(0j, 100 * _SLOPE, 28.0, _T)),
        ("ladder", mechanical.ladder((0j, 70 * _SLOPE), 3.2, _T, (0j, 0j))),
        ("particle", (mechanical.ring(0j, _T),)),
        ("wheel", mechanical.wheel(0j, 16.0, _T)),
        ("pulley", mechanical.pulley(0j, 10.0, _T)),
        ("cabinet", solid.box(_CASE, _T)),
        ("leg of a table", solid.table_leg(_CASE, _T)),
        ("bookcase", (
            *solid.box(_CASE, _T),
            *(line(*ends, LIGHT, _T) for ends in solid.shelf_lines(0j, 60j, 16.0)),
        )),
        ("filing cabinet", solid.filing_cabinet(_CASE, _T)),
        ("refrigerator on a hand truck", (
            *solid.refrigerator((0j, 74 * _SLOPE, (74 + 27j) * _SLOPE, 27j * _SLOPE), _T),
            *vehicles.hand_truck(0j, (74 * _SLOPE, 27j * _SLOPE), _T),
        )),
        ("drum on its stand", (
            *solid.drum(0j, (20.0, 11.0), _T), *solid.stand(0j, 20.0, 46.0, _T),
        )),
        ("drum in a band", (
            *solid.drum(0j, (20.0, 11.0), _T), solid.band(0j, (-20 + 0j, 20 + 0j), 2j, _T),
        )),
        ("reel", solid.reel(0j, 34.0, _T)),
        ("gate", solid.boarded((0j, 60j, 90 + 60j, 90 + 0j), _T)),
        ("bollard", solid.bollard(12j, 0j, _T, _T)),
        ("wheelbarrow", (*solid.wheelbarrow(0j, 90 + 8j, _T), *solid.barrow_wheel(0j, _T))),
    )  # fmt: skip


def _people() -> tuple[_Named, ...]:
    rungs = mechanical.ladder((-12 * _SLOPE, 66 * _SLOPE), 3.2, _T, (0j, 0j))
    on = _SLOPE * 1j
    return (
        ("person", person.standing(0j, _ADULT, _T)),
        ("push-up", person.braced(0j, 52 + 24j, 52 + 0j, _T)),
        ("child", person.standing(0j, 0.69 * _ADULT, _T)),
        (
            "seated",
            (
                *person.seated(0j, _ADULT, 1, _T),
                *mechanical.bar((-25 - 3j, 35 - 3j), 3.0, _T),
            ),
        ),
        ("lying", person.lying(0j, _ADULT + 0j, _T)),
        ("climber", (*rungs, *person.climbing(on * 3.2, _SLOPE, on, _ADULT, 54.0, _T))),
        ("hanging", person.hanging(0j, _ADULT, _T)),
        ("holding", person.holding(0j, _ADULT, 1, _T)),
        ("something on the shoulder", person.bearing(0j, _ADULT, 1, _T)),
        ("holding something up", person.lifting(0j, 9.4 + 70j, 1, _T)),
        ("boot", person.boot(0j, 15.0, 1, _T)),
        ("sitting and holding", person.sitting(0j, _ADULT, 1, _T)),
    )


def _limbs() -> tuple[_Named, ...]:
    return (
        ("upper arm, forearm, hand", (
            *limb.bone(0j, 58j, _T), *limb.joint(0j, 4.0, _T), *arm.forearm(0j, 95 + 0j, _T),
        )),
        ("shoulder", arm.shoulder(0j, 90 + 0j, _T)),
        ("hanging arm", arm.hanging_arm(0j, -40j, _T)),
        ("thigh, lower leg, foot", (
            *limb.bone(0j, -58 + 0j, _T, 1.3), *limb.joint(0j, 4.0, _T),
            *limb.lower_leg(0j, 75 * heading(-60.0), _T),
        )),
        ("head and neck", profile.head(0j, 22.0, 1, _T)),
        ("bones of a hip", (
            *Hip(0j, 4.0, 1, 5.5, 12.0).pelvis(_T),
            *Hip(0j, 4.0, 1, 5.5, 12.0).femur(-29 - 17j, _T),
        )),
        ("pelvis", limb.pelvis(-45 + 12j, 0j, 80 + 0j, _T)),
        ("foot on its ball", limb.foot(0j, 16 - 4j, 60 - 34j, _T)),
        ("jaws", (*limb.upper_jaw(0j, 54 + 0j, _T), *limb.jaw(0j, 54 + 0j, _T))),
        ("trunk", limb.trunk(0j, 80 * heading(30.0), _T)),
        ("kneecap and bones", (
            *limb.kneecap(0j, _BACK, _T), *limb.knee(0j, heading(175.0), heading(255.0), _T),
        )),
        ("small kneecap", limb.patella(0j, 1 + 0j, _T)),
        ("muscle", limb.muscle(0j, 60j, _T)),
    )  # fmt: skip


def _loads() -> tuple[_Named, ...]:
    return (
        ("block", mechanical.block(0j, 30.0, 20.0, _T)),
        ("crate", mechanical.crate(0j, 30.0, 20.0, _T)),
        ("hung crate", mechanical.hung_block(0j, 12.0, 30.0, 20.0, _T)),
        ("sign", mechanical.hung_sign(0j, 36.0, 18.0, _T)),
        ("lamp", mechanical.lamp(0j, 12.0, _T)),
        ("bucket", mechanical.bucket(0j, 12.0, 1.0, _T)),
        ("pail that stands", mechanical.standing_pail(0j, _T)),
        ("basket", mechanical.pail(0j, 15 + 14j, _T)),
        ("plant", mechanical.plant(0j, _T)),
        ("tree", mechanical.tree(0j, 48.0, _T)),
        ("ball", mechanical.ball(0j, 7.0, _T)),
        (
            "cuff",
            (
                *mechanical.bar((-25 + 0j, 25 + 0j), 4.0, _T),
                *mechanical.cuff(0j, 1 + 0j, 4.0, _T),
            ),
        ),
        ("pedal", (mechanical.pad(0j, -1j, _T),)),
        ("bag", goods.sack(0j, _T)),
        ("tool bag", goods.holdall(0j, 64.0, 16.0, _T)),
        ("toolbox", goods.toolbox(0j, 64.0, 16.0, _T)[0]),
        ("bale", goods.bale(0j, 64.0, 16.0, _T)),
        ("pipe", goods.ball(0j, 24.0, _T, hollow=True)),
        ("trough about to slide", goods.trough(0j, 27 + 15.5j, 1j, 1 + 0j, _T)),
        ("sled", goods.sled(0j, 32 + 11j, _T)),
        ("engine", works.engine(0j, _T)),
        ("heap", goods.heap(0j, 56.0, 20.0, _T)),
        ("bottle", goods.bottle(0j, _T)),
        ("loaded pallet", goods.pallet(0j, 27 + 11.5j, 1j, _T)),
        ("piano", goods.piano(0j, 12.0, _T)),
        ("motor", works.motor(0j, 26.0, _T)),
        ("trolley's wheel", works.caster(0j, _T)),
        ("safety valve", works.valve(0j, -22 + 0j, _T)),
        ("block of wood", works.wooden_block(0j, 18.0, 1, _T)),
        ("stone", (works.stone((0j, 90 + 0j), 6.5, _T, lifted=(False, True)),)),
        ("panel about to slide", works.panel(0j, 3.6 + 36j, -1j, _T)),
        ("plate of a sign", works.sign_plate(0j, 50j, -1 + 0j, 3.4, _T)),
        ("loudspeaker", goods.loudspeaker(0j, 12.0, _T)),
        ("net", goods.net(0j, 12.0, _T)),
        ("bird feeder", goods.feeder(0j, 12.0, _T)),
        ("centre of mass", mechanical.centre_mark(0j, _T)),
        ("even load", distributed.spread(0j, 70 + 0j, -90.0, (15.0, 15.0), _T)),
        ("growing load", distributed.spread(0j, 70 + 0j, -90.0, (0.0, 22.0), _T)),
    )


def _lines() -> tuple[_Named, ...]:
    return (
        ("cable", mechanical.cable(0j, 45 + 30j, _T)),
        ("two strands", mechanical.strands(0j, 45j, 2, _T)),
        ("spring", mechanical.spring(0j, 50 + 0j, _T)),
        ("chain", chain(0j, 45 + 30j, _T)),
        ("gas strut", vehicles.gas_strut(0j, 45 + 30j, _T)),
        ("strut", mechanical.strut(0j, 45 + 30j, _T)),
        ("broken off", limb.break_mark(0j, 0.0, 4.0, _T)),
        ("section", (
            *mechanical.bar((-22 + 0j, 22 + 0j), 3.0, _T), *mechanical.section(0j, 1 + 0j, 3.0, _T),
        )),
    )  # fmt: skip


def _supports() -> tuple[_Named, ...]:
    floor, wall = Surface(0j, 90.0, 30.0, 30.0), Surface(-11 + 0j, 0.0, 18.0, 18.0)
    beam = mechanical.bar((0j, 40 + 0j), 3.0, _T)
    return (
        ("hinge on a wall", (*lug(0j, -11 + 0j, _T), *hatched(wall))),
        ("hinge on the ground", (*lug(11j, 0j, _T), *hatched(floor))),
        ("built-in end", (
            *beam,
            *mechanical.built_in(0j, 1 + 0j, 3.0, _T),
            *hatched(Surface(0j, 0.0, 18.0, 18.0)),
        )),
        ("fulcrum", (*fulcrum(17j, 17.0, _T), *hatched(floor))),
        ("hand pump", (
            *waterworks.pump(0j, 40 + 13j, -70j, _T), *waterworks.pump_rod(40j, 0j, _T),
        )),
        ("well", waterworks.well(0j, 26.0, 48.0, _T, _T)),
        ("raised plank", works.raised_plank(0j, 80 * heading(30.0), _T)),
        ("roller", (*roller(7.2j, 90.0, _T), *hatched(floor))),
        ("scale", (*solid.scale(0j, 17.0, _T), *hatched(floor))),
        ("ground", (tinted(floor), *hatched(floor))),
        ("joint pin", (
            *mechanical.bar((-35 + 0j, -2.4 + 0j), 3.0, _T), mechanical.pin(0j, _T),
            *mechanical.bar((2.4 + 0j, 35 + 0j), 3.0, _T),
        )),
        ("tree with a rope", solid.tied_tree(0j, 60j, _T)),
        ("pulling hand", rod.pulling_hand(0j, heading(150.0), _T)),
        ("sling", limb.band(0j, 1 + 0j, 10.0, _T)),
        ("post with a rope", (*solid.post(0j, 60j, _T), solid.rope_ring(55j, _T))),
        ("peg from above", mechanical.peg(0j, _T)),
        ("winch", (*solid.winch(17j, 0j, _T), *hatched(floor))),
        ("hand on a stick", (*solid.stick(64j, 0j, _T), *hatched(floor))),
        ("post", scenery.post(34j, 0j, 4.5, _T)),
        ("ledge", scenery.ledge(0j, 20 + 0j, 8.0, _T)),
        ("inclined plane", mechanical.wedge(0j, 65.0, 37.5, _T)),
    )  # fmt: skip


def _about() -> tuple[_Named, ...]:
    return (
        ("water", scenery.water(Box(0.0, 0.0, 80.0, 20.0), _T)),
        ("bathtub", scenery.bathtub(0j, 80 + 0j, 34.0, _T)),
        ("bales", goods.bales(0j, 120 + 0j, 42.0, _T)),
        ("boat", scenery.boat(0j, 46.0, _T)),
        ("person about a pelvis", standing.Body(0j, 1.0, 1, 6.0, 11.0).outline(_T)),
        ("pelvis of that person", standing.Body(0j, 2.0, 1, 6.0, 11.0).pelvis(_T)),
        ("phone", scenery.phone(0j, 24.0, _T)),
        ("rear of a van", vehicles.van_rear(0j, -8 - 60j, _T)),
        ("stairs", scenery.stairs(0j, heading(28.0), 20.0, 5, _T)),
        ("raft from above", scenery.raft(0j, _T)),
        ("billboard", scenery.billboard((0j, 50j), -1, _T)),
        ("roof", scenery.roof(-60 + 0j, 50 + 0j, 36j)),
        ("ridge", mechanical.ridge(-60 + 0j, 50 + 0j, 36j)),
    )


def _signs() -> tuple[_Named, ...]:
    return (
        ("couple", turning(0j, 11.0, 1, MEDIUM, _T)),
        ("axes", axes(0j, 1)),
        ("axes of a particle", axes(0j, 0)),
        ("other rotation", turning(0j, 11.0, -1, LIGHT, _T)),
    )
