"""A part drawn elsewhere is the part moved; what follows a direction turns with it, and what has
two sides is its own mirror image on the other.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

import pytest

from probgen.figures.paper.scene import MEDIUM, Arc, Arrow, Box, Curve, Path, Shape, heading
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts import (
    arm,
    distributed,
    goods,
    limb,
    mechanical,
    person,
    profile,
    scenery,
    solid,
    vehicles,
    waterworks,
    works,
)
from probgen.figures.parts.axes import axes, turning
from probgen.figures.parts.chain import chain
from probgen.figures.parts.ground import Surface, fulcrum, hatched, lug, roller, tinted
from probgen.figures.parts.hip import Hip

Part = Callable[[complex, complex], Iterable[Shape]]
"""What is drawn at a place, along a unit step."""


def one(shape: Shape) -> tuple[Shape, ...]:
    return (shape,)


_T = UNTAGGED
TURNING: dict[str, Part] = {
    "bar": lambda at, way: mechanical.bar((at, at + 70 * way), 3.0, _T),
    "bar with a cut end": lambda at, way: mechanical.bar(
        (at, at + 70 * way), 3.0, _T, (0j, way * heading(20.0))
    ),
    "bent lever": lambda at, way: mechanical.bar(
        (at - 40 * way, at, at + 35 * way * heading(70.0)), 3.0, _T
    ),
    "ladder": lambda at, way: mechanical.ladder(
        (at, at + 70 * way), 3.2, _T, (0j, way * heading(30.0))
    ),
    "cable": lambda at, way: mechanical.cable(at, at + 50 * way, _T),
    "pad": lambda at, way: one(mechanical.pad(at, way, _T)),
    "cuff": lambda at, way: mechanical.cuff(at, way, 4.0, _T),
    "spring": lambda at, way: mechanical.spring(at, at + 50 * way, _T),
    "strut": lambda at, way: mechanical.strut(at, at + 50 * way, _T),
    "gas strut": lambda at, way: vehicles.gas_strut(at, at + 50 * way, _T),
    "hand truck": lambda at, way: vehicles.hand_truck(at, (90 * way, 30j * way), _T),
    "refrigerator": lambda at, way: solid.refrigerator(
        (at, at + 90 * way, at + (90 + 30j) * way, at + 30j * way), _T
    ),
    "pallet": lambda at, way: goods.pallet(at, 27 + 11j, way, _T),
    "trough": lambda at, way: goods.trough(at, 27 + 15j, way, 1j * way, _T),
    "chain": lambda at, way: chain(at, at + 50 * way, _T),
    "strands": lambda at, way: mechanical.strands(at, at + 50 * way, 3, _T),
    "built-in end": lambda at, way: mechanical.built_in(at, way, 3.0, _T),
    "section": lambda at, way: mechanical.section(at, way, 3.0, _T),
    "broken off": lambda at, way: limb.break_mark(at, degrees(way), 4.0, _T),
    "bone": lambda at, way: limb.bone(at, at + 60 * way, _T, 1.3),
    "forearm": lambda at, way: arm.forearm(at, at + 95 * way, _T),
    "hanging arm": lambda at, way: arm.hanging_arm(at, at + 40 * way, _T),
    "lower leg": lambda at, way: limb.lower_leg(at, at + 75 * way, _T, -1),
    "kneecap": lambda at, way: limb.kneecap(at, way, _T),
    "small kneecap": lambda at, way: limb.patella(at, way, _T),
    "knee": lambda at, way: limb.knee(at, way, way * heading(80.0), _T),
    "muscle": lambda at, way: limb.muscle(at, at + 60 * way, _T),
    "phone": lambda at, way: scenery.phone(at, degrees(way), _T),
    "shelves": lambda at, way: one(
        Path(tuple(solid.shelf_lines(at, at + 60 * way, 16.0)), MEDIUM, _T)
    ),
    "lug": lambda at, way: lug(at, at + 11 * way, _T),
    "ground": lambda at, way: (*hatched(face(at, way)), tinted(face(at, way))),
    "roller": lambda at, way: roller(at, degrees(way), _T),
    "axes": lambda at, way: axes(at, 0, degrees(way)),
    "a load along its line": lambda at, way: distributed.spread(
        at, at + 70 * way, degrees(way) - 90.0, (8.0, 22.0), _T
    ),
}
UPRIGHT: dict[str, Part] = {
    "block": lambda at, _: mechanical.block(at, 30.0, 20.0, _T),
    "crate": lambda at, _: mechanical.crate(at, 30.0, 20.0, _T),
    "hung crate": lambda at, _: mechanical.hung_block(at, 12.0, 30.0, 20.0, _T),
    "sign": lambda at, _: mechanical.hung_sign(at, 36.0, 18.0, _T, 20.0),
    "bucket": lambda at, _: mechanical.bucket(at, 12.0, 0.8, _T),
    "basket": lambda at, _: mechanical.pail(at, 15 + 14j, _T),
    "pail": lambda at, _: mechanical.standing_pail(at, _T),
    "lamp": lambda at, _: mechanical.lamp(at, 12.0, _T),
    "plant": lambda at, _: mechanical.plant(at, _T),
    "tree": lambda at, _: mechanical.tree(at, 48.0, _T),
    "wheel": lambda at, _: mechanical.wheel(at, 16.0, _T),
    "pulley": lambda at, _: mechanical.pulley(at, 10.0, _T),
    "ball": lambda at, _: mechanical.ball(at, 7.0, _T),
    "centre of mass": lambda at, _: mechanical.centre_mark(at, _T),
    "wedge": lambda at, _: mechanical.wedge(at, 65.0, 37.5, _T),
    "heap": lambda at, _: goods.heap(at, 56.0, 20.0, _T),
    "feeder": lambda at, _: goods.feeder(at, 12.0, _T),
    "piano": lambda at, _: goods.piano(at, 12.0, _T),
    "sack": lambda at, _: goods.sack(at, _T, 0.8),
    "holdall": lambda at, _: goods.holdall(at, 60.0, 16.0, _T),
    "toolbox": lambda at, _: goods.toolbox(at, 60.0, 16.0, _T)[0],
    "bale": lambda at, _: goods.bale(at, 60.0, 16.0, _T),
    "bales": lambda at, _: goods.bales(at, at + 150, 45.0, _T),
    "pipe": lambda at, _: goods.ball(at, 30.0, _T, hollow=True),
    "engine": lambda at, _: works.engine(at, _T),
    "filing cabinet": lambda at, _: solid.filing_cabinet(
        (at, at + 40, at + 40 + 90j, at + 90j), _T
    ),
    "sled": lambda at, _: goods.sled(at, 32 + 12j, _T),
    "pump": lambda at, _: waterworks.pump(at, at + 40 + 12j, at - 80j, _T),
    "rod of a pump": lambda at, _: waterworks.pump_rod(at, at - 30j, _T),
    "well": lambda at, _: waterworks.well(at, 30.0, 50.0, _T, _T),
    "raised plank": lambda at, _: works.raised_plank(at, 80 * heading(35.0), _T),
    "loudspeaker": lambda at, _: goods.loudspeaker(at, 12.0, _T),
    "stairs": lambda at, _: scenery.stairs(at, heading(28.0), 20.0, 4, _T),
    "shoulder": lambda at, _: arm.shoulder(at, at + 90, _T),
    "trolley's wheel": lambda at, _: works.caster(at, _T),
    "motor": lambda at, _: works.motor(at, 22.0, _T),
    "safety valve": lambda at, _: works.valve(at, at - 20 + 3j, _T),
    "block of wood": lambda at, _: works.wooden_block(at, 16.0, 1, _T),
    "panel": lambda at, _: works.panel(at, 3 + 36j, -1j, _T),
    "plate of a sign": lambda at, _: works.sign_plate(at, at + 40j, -1 + 0j, 3.4, _T),
    "stone": lambda at, _: one(works.stone((at, at + 90), 6.5, _T, lifted=(False, True))),
    "raft": lambda at, _: scenery.raft(at, _T),
    "billboard": lambda at, _: scenery.billboard((at, at + 60j), -1, _T),
    "boat": lambda at, _: scenery.boat(at, 46.0, _T),
    "bathtub": lambda at, _: scenery.bathtub(at, at + 80, 35.0, _T),
    "reel": lambda at, _: solid.reel(at, 40.0, _T),
    "gate": lambda at, _: solid.boarded((at, at + 60j, at + 100 + 60j, at + 100), _T),
    "post": lambda at, _: scenery.post(at + 34j, at, 4.5, _T),
    "ledge": lambda at, _: scenery.ledge(at, at + 20, 8.0, _T),
    "water": lambda at, _: scenery.water(
        Box(at.real, at.imag, at.real + 80, at.imag + 20), _T
    ),
    "roof": lambda at, _: scenery.roof(at, at + 120, at + 70 + 50j),
    "drum": lambda at, _: solid.drum(at, (11.0, 20.0), _T),
    "stand": lambda at, _: solid.stand(at, 20.0, 46.0, _T),
    "scale": lambda at, _: solid.scale(at, 17.0, _T),
    "slender post": lambda at, _: (*solid.post(at, at + 60j, _T), solid.rope_ring(at + 55j, _T)),
    "fulcrum": lambda at, _: fulcrum(at, 17.0, _T),
    "van": lambda at, _: vehicles.van_rear(at, at - 8 - 60j, _T),
    "person": lambda at, _: person.standing(at, 64.0, _T),
    "hanging": lambda at, _: person.hanging(at, 64.0, _T),
    "seated": lambda at, _: person.seated(at, 64.0, 1, _T),
    "holding": lambda at, _: person.holding(at, 64.0, -1, _T),
    "sitting": lambda at, _: person.sitting(at, 64.0, 1, _T),
    "lying": lambda at, _: person.lying(at, 60 + 0j, _T),
    "bearing": lambda at, _: person.bearing(at, 64.0, 1, _T),
    "push-up": lambda at, _: person.braced(at, at + 70 + 25j, at + 70, _T),
    "climbing": lambda at, _: person.climbing(at, heading(68.0), heading(158.0), 64.0, 200.0, _T),
    "head": lambda at, _: profile.head(at, 22.0, 1, _T, 20.0),
    "pelvis": lambda at, _: limb.pelvis(at - 45 + 12j, at, at + 80, _T),
    "half of a pelvis": lambda at, _: Hip(at, 5.0, 1, 5.5, 12.0).pelvis(_T),
    "thigh bone": lambda at, _: Hip(at, 5.0, 1, 5.5, 12.0).femur(at - 45 - 21j, _T),
    "foot": lambda at, _: limb.foot(at, at + 16 - 4j, at + 60 - 34j, _T),
    "jaws": lambda at, _: (*limb.jaw(at, at + 80, _T), *limb.upper_jaw(at, at + 80, _T)),
    "trunk": lambda at, _: limb.trunk(at, at + 80 * heading(30.0), _T),
    "wheelbarrow": lambda at, _: (
        *solid.wheelbarrow(at, at + 90 + 8j, _T), *solid.barrow_wheel(at, _T)
    ),
    "couple": lambda at, _: turning(at, 11.0, 1, MEDIUM, _T),
    "axes with a rotation": lambda at, _: axes(at, -1),
}  # fmt: skip


def degrees(way: complex) -> float:
    """The direction of a unit step that is one of those below."""
    return next(d for d in (0.0, *TURNS) if abs(heading(d) - way) < 1e-9)


TURNS = (40.0, 90.0, 155.0, 200.0, 310.0)


def face(at: complex, way: complex) -> Surface:
    return Surface(at, degrees(way), 20.0, 31.0)


def carried(shape: Shape, move: Callable[[complex], complex], turn: float) -> Shape:
    """The shape with all its places moved; turn: by how much that turns it, degrees."""
    match shape:
        case Path():
            return replace(shape, lines=tuple(tuple(map(move, run)) for run in shape.lines))
        case Curve():
            pieces = tuple((move(a), move(b), move(c)) for a, b, c in shape.pieces)
            return replace(shape, start=move(shape.start), pieces=pieces)
        case Arc():
            return replace(shape, centre=move(shape.centre), start=shape.start + turn)
        case Arrow():
            return replace(shape, tail=move(shape.tail), head=move(shape.head))
        case _:
            raise TypeError(shape)


def spots(shape: Shape) -> list[complex]:
    """Every place of a shape, those of its curves' controls among them."""
    match shape:
        case Path():
            return [spot for run in shape.lines for spot in run]
        case Curve():
            return [shape.start, *(spot for piece in shape.pieces for spot in piece)]
        case Arc():
            whole = abs(shape.sweep) >= 360.0  # where it begins makes no difference
            ends = (0.0,) if whole else (shape.start, shape.start + shape.sweep)
            around = [] if whole else [shape.centre + shape.radius * heading(d) for d in ends]
            return [shape.centre, shape.centre + shape.radius, *around]
        case Arrow():
            return [shape.tail, shape.head]
        case _:
            raise TypeError(shape)


def assert_same(found: Iterable[Shape], expected: Iterable[Shape]) -> None:
    for one, other in zip(found, expected, strict=True):
        assert type(one) is type(other)
        assert (one.pen, str(one.tag)) == (other.pen, str(other.tag))  # type: ignore[union-attr]
        pairs = zip(spots(one), spots(other), strict=True)
        assert max(abs(a - b) for a, b in pairs) < 1e-6


@pytest.mark.parametrize("name", [*TURNING, *UPRIGHT])
def test_a_part_drawn_elsewhere_is_the_part_moved(name: str) -> None:
    draw = (TURNING | UPRIGHT)[name]
    moved = [carried(shape, lambda spot: spot + 13 - 7j, 0.0) for shape in draw(2 + 3j, 1 + 0j)]
    assert moved
    assert_same(draw(15 - 4j, 1 + 0j), moved)


@pytest.mark.parametrize("turn", TURNS)
@pytest.mark.parametrize("name", TURNING)
def test_a_part_turns_with_its_direction(name: str, turn: float) -> None:
    draw, step = TURNING[name], heading(turn)
    turned = [carried(shape, lambda spot: spot * step, turn) for shape in draw(0j, 1 + 0j)]
    assert_same(draw(0j, step), turned)


def mirrored(spot: complex) -> complex:
    return complex(-spot.real, spot.imag)


FACING: dict[str, Callable[[int], Iterable[Shape]]] = {
    "seated": lambda side: person.seated(0j, 64.0, side, _T),
    "holding": lambda side: person.holding(0j, 64.0, side, _T),
    "sitting": lambda side: person.sitting(0j, 64.0, side, _T),
    "head": lambda side: profile.head(0j, 22.0, side, _T),
    "bent head": lambda side: profile.head(0j, 22.0, side, _T, 25.0),
    "trunk": lambda side: limb.trunk(0j, 80.0 * heading(90.0 - 60.0 * side), _T),
    "jaw": lambda side: limb.jaw(0j, 80.0 * side + 0j, _T),
    "upper jaw": lambda side: limb.upper_jaw(0j, 80.0 * side + 0j, _T),
    "foot": lambda side: limb.foot(0j, side * 16 - 4j, side * 60 - 34j, _T),
    "pelvis": lambda side: limb.pelvis(-45 * side + 12j, 0j, 80.0 * side + 0j, _T),
    "half of a pelvis": lambda side: Hip(0j, 5.0, side, 5.5, 12.0).pelvis(_T),
    "lower leg": lambda side: limb.lower_leg(0j, -75j, _T, side),
    "shoulder": lambda side: arm.shoulder(0j, 90.0 * side + 0j, _T),
    "lying": lambda side: person.lying(0j, 60.0 * side + 0j, _T),
    "bearing": lambda side: person.bearing(0j, 64.0, side, _T),
    "pump": lambda side: waterworks.pump(0j, 40.0 * side + 12j, -80j, _T),
    "raised plank": lambda side: works.raised_plank(0j, 80j * heading(-55.0 * side), _T),
    "wedge": lambda side: mechanical.wedge(0j, 65.0 * side, 37.5, _T),
    "billboard": lambda side: scenery.billboard((0j, 60j), side, _T),
    "van": lambda side: vehicles.van_rear(0j, -8.0 * side - 60j, _T, side),
    "stone": lambda side: one(
        works.stone((0j, 90.0 * side + 0j), 6.5, _T, lifted=(False, True))
    ),
    "block of wood": lambda side: works.wooden_block(0j, 16.0, side, _T)[:1],
    "wheelbarrow": lambda side: solid.wheelbarrow(0j, 90.0 * side + 8j, _T),
}  # fmt: skip


@pytest.mark.parametrize("name", FACING)
def test_who_looks_the_other_way_is_the_mirror_image(name: str) -> None:
    right, left = FACING[name](1), FACING[name](-1)
    for one, other in zip(right, left, strict=True):
        if not isinstance(one, Arc):  # a whole circle; of where it begins there is no image
            one, places = carried(one, mirrored, 0.0), spots(other)
            # An outline may be drawn the other way round.
            gaps = [min(abs(spot - place) for place in places) for spot in spots(one)]
            assert max(gaps) < 1e-6
        else:
            assert isinstance(other, Arc)
            assert abs(mirrored(one.centre) - other.centre) < 1e-6


SYMMETRIC: dict[str, Iterable[Shape]] = {
    "motor": works.motor(0j, 22.0, _T),
    "trolley's wheel": works.caster(0j, _T),
    "safety valve": works.valve(0j, 0j, _T),
    "block": mechanical.block(0j, 30.0, 20.0, _T),
    "crate": mechanical.crate(0j, 30.0, 20.0, _T),
    "sign": mechanical.hung_sign(0j, 36.0, 18.0, _T, 20.0),
    "bucket": mechanical.bucket(0j, 12.0, 0.8, _T),
    "basket": mechanical.pail(0j, 15 + 14j, _T),
    "pail": mechanical.standing_pail(0j, _T),
    "plant": mechanical.plant(0j, _T),
    "tree": mechanical.tree(0j, 48.0, _T),
    "heap": goods.heap(0j, 56.0, 20.0, _T),
    "feeder": goods.feeder(0j, 12.0, _T),
    "holdall": goods.holdall(0j, 60.0, 16.0, _T),
    "toolbox": goods.toolbox(0j, 60.0, 16.0, _T)[0],
    "bale": goods.bale(0j, 60.0, 16.0, _T),
    "bales": goods.bales(-75 + 0j, 75 + 0j, 45.0, _T),
    "sled": goods.sled(0j, 32 + 12j, _T),
    "trough": goods.trough(0j, 27 + 15j, 1j, 0j, _T),
    "well": waterworks.well(0j, 30.0, 50.0, _T, _T),
    "post": scenery.post(34j, 0j, 4.5, _T),
    "stand": solid.stand(0j, 20.0, 46.0, _T),
    "slender post": solid.post(0j, 60j, _T),
    "fulcrum": fulcrum(0j, 17.0, _T),
    "person": person.standing(0j, 64.0, _T),
    "hanging": person.hanging(0j, 64.0, _T),
    "ladder": mechanical.ladder((0j, 70j), 3.2, _T, (0j, 0j)),
    "strands": mechanical.strands(0j, 45j, 3, _T),
    "muscle": limb.muscle(0j, 60j, _T),
    "kneecap": limb.patella(0j, 1 + 0j, _T),
    "even load": distributed.spread(-35 + 0j, 35 + 0j, 270.0, (15.0, 15.0), _T),
    "bar": mechanical.bar((0j, 50j), 3.0, _T),
    "strut": mechanical.strut(0j, 50j, _T),
    "cuff": mechanical.cuff(0j, 1 + 0j, 4.0, _T),
    "section": mechanical.section(0j, 1j, 3.0, _T),
    "built-in end": mechanical.built_in(0j, 1j, 3.0, _T),
    "lug": lug(11j, 0j, _T),
}


@pytest.mark.parametrize("name", SYMMETRIC)
def test_both_sides_are_alike(name: str) -> None:
    shapes = (shape for shape in SYMMETRIC[name] if not isinstance(shape, Arc))
    places = [spot for shape in shapes for spot in spots(shape)]
    for spot in places:
        assert min(abs(mirrored(spot) - other) for other in places) < 1e-6, spot
