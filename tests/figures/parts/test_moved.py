"""A part drawn elsewhere is the part moved; what follows a direction turns with it, and what has
two sides is its own mirror image on the other.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

import pytest

from probgen.figures.paper.scene import MEDIUM, Arc, Arrow, Box, Curve, Path, Shape, heading
from probgen.figures.parts import distributed, goods, limb, mechanical, person, scenery, solid
from probgen.figures.parts.axes import axes, turning
from probgen.figures.parts.ground import Surface, fulcrum, hatched, lug, roller, tinted

Part = Callable[[complex, complex], Iterable[Shape]]
"""What is drawn at a place, along a unit step."""


def one(shape: Shape) -> tuple[Shape, ...]:
    return (shape,)


TURNING: dict[str, Part] = {
    "bar": lambda at, way: mechanical.bar((at, at + 70 * way), 3.0, ""),
    "bar with a cut end": lambda at, way: mechanical.bar(
        (at, at + 70 * way), 3.0, "", (0j, way * heading(20.0))
    ),
    "bent lever": lambda at, way: mechanical.bar(
        (at - 40 * way, at, at + 35 * way * heading(70.0)), 3.0, ""
    ),
    "ladder": lambda at, way: mechanical.ladder(
        (at, at + 70 * way), 3.2, "", (0j, way * heading(30.0))
    ),
    "cable": lambda at, way: mechanical.cable(at, at + 50 * way, ""),
    "pad": lambda at, way: one(mechanical.pad(at, way, "")),
    "cuff": lambda at, way: mechanical.cuff(at, way, 4.0, ""),
    "spring": lambda at, way: mechanical.spring(at, at + 50 * way, ""),
    "strut": lambda at, way: mechanical.strut(at, at + 50 * way, ""),
    "strands": lambda at, way: mechanical.strands(at, at + 50 * way, 3, ""),
    "built-in end": lambda at, way: mechanical.built_in(at, way, 3.0, ""),
    "section": lambda at, way: mechanical.section(at, way, 3.0, ""),
    "broken off": lambda at, way: limb.break_mark(at, degrees(way), 4.0, ""),
    "bone": lambda at, way: limb.bone(at, at + 60 * way, "", 1.3),
    "forearm": lambda at, way: limb.forearm(at, at + 95 * way, ""),
    "lower leg": lambda at, way: limb.lower_leg(at, at + 75 * way, "", -1),
    "kneecap": lambda at, way: limb.kneecap(at, way, ""),
    "small kneecap": lambda at, way: limb.patella(at, way, ""),
    "knee": lambda at, way: limb.knee(at, way, way * heading(80.0), ""),
    "muscle": lambda at, way: limb.muscle(at, at + 60 * way, ""),
    "phone": lambda at, way: scenery.phone(at, degrees(way), ""),
    "shelves": lambda at, way: one(
        Path(tuple(solid.shelf_lines(at, at + 60 * way, 16.0)), MEDIUM, "")
    ),
    "lug": lambda at, way: lug(at, at + 11 * way, ""),
    "ground": lambda at, way: (*hatched(face(at, way)), tinted(face(at, way))),
    "roller": lambda at, way: roller(at, degrees(way), ""),
    "axes": lambda at, way: axes(at, 0, degrees(way)),
    "a load along its line": lambda at, way: distributed.spread(
        at, at + 70 * way, degrees(way) - 90.0, (8.0, 22.0), ""
    ),
}
UPRIGHT: dict[str, Part] = {
    "block": lambda at, _: mechanical.block(at, 30.0, 20.0, ""),
    "crate": lambda at, _: mechanical.crate(at, 30.0, 20.0, ""),
    "hung crate": lambda at, _: mechanical.hung_block(at, 12.0, 30.0, 20.0, ""),
    "sign": lambda at, _: mechanical.hung_sign(at, 36.0, 18.0, "", 20.0),
    "bucket": lambda at, _: mechanical.bucket(at, 12.0, 0.8, ""),
    "basket": lambda at, _: mechanical.pail(at, 15 + 14j, ""),
    "pail": lambda at, _: mechanical.standing_pail(at, ""),
    "lamp": lambda at, _: mechanical.lamp(at, 12.0, ""),
    "plant": lambda at, _: mechanical.plant(at, ""),
    "tree": lambda at, _: mechanical.tree(at, 48.0, ""),
    "wheel": lambda at, _: mechanical.wheel(at, 16.0, ""),
    "pulley": lambda at, _: mechanical.pulley(at, 10.0, ""),
    "ball": lambda at, _: mechanical.ball(at, 7.0, ""),
    "centre of mass": lambda at, _: mechanical.centre_mark(at, ""),
    "wedge": lambda at, _: mechanical.wedge(at, 65.0, 37.5, ""),
    "heap": lambda at, _: goods.heap(at, 56.0, 20.0, ""),
    "feeder": lambda at, _: goods.feeder(at, 12.0, ""),
    "boat": lambda at, _: scenery.boat(at, 46.0, ""),
    "post": lambda at, _: scenery.post(at + 34j, at, 4.5, ""),
    "ledge": lambda at, _: scenery.ledge(at, at + 20, 8.0, ""),
    "water": lambda at, _: scenery.water(
        Box(at.real, at.imag, at.real + 80, at.imag + 20), ""
    ),
    "drum": lambda at, _: solid.drum(at, (11.0, 20.0), ""),
    "stand": lambda at, _: solid.stand(at, 20.0, 46.0, ""),
    "scale": lambda at, _: solid.scale(at, 17.0, ""),
    "slender post": lambda at, _: (*solid.post(at, at + 60j, ""), solid.rope_ring(at + 55j, "")),
    "fulcrum": lambda at, _: fulcrum(at, 17.0, ""),
    "person": lambda at, _: person.standing(at, 64.0, ""),
    "hanging": lambda at, _: person.hanging(at, 64.0, ""),
    "seated": lambda at, _: person.seated(at, 64.0, 1, ""),
    "holding": lambda at, _: person.holding(at, 64.0, -1, ""),
    "sitting": lambda at, _: person.sitting(at, 64.0, 1, ""),
    "lying": lambda at, _: person.lying(at, 60 + 0j, ""),
    "climbing": lambda at, _: person.climbing(at, heading(68.0), heading(158.0), 64.0, ""),
    "head": lambda at, _: limb.head(at, 22.0, 1, "", 20.0),
    "pelvis": lambda at, _: limb.pelvis(at - 45 + 12j, at, at + 80, ""),
    "foot": lambda at, _: limb.foot(at, at + 16 - 4j, at + 60 - 34j, ""),
    "jaws": lambda at, _: (*limb.jaw(at, at + 80, ""), *limb.upper_jaw(at, at + 80, "")),
    "trunk": lambda at, _: limb.trunk(at, at + 80 * heading(30.0), ""),
    "wheelbarrow": lambda at, _: (
        *solid.wheelbarrow(at, at + 90 + 8j, ""), *solid.barrow_wheel(at, "")
    ),
    "couple": lambda at, _: turning(at, 11.0, 1, MEDIUM, ""),
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
        assert (one.pen, one.tag) == (other.pen, other.tag)  # type: ignore[union-attr]
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
    "seated": lambda side: person.seated(0j, 64.0, side, ""),
    "holding": lambda side: person.holding(0j, 64.0, side, ""),
    "sitting": lambda side: person.sitting(0j, 64.0, side, ""),
    "head": lambda side: limb.head(0j, 22.0, side, ""),
    "bent head": lambda side: limb.head(0j, 22.0, side, "", 25.0),
    "trunk": lambda side: limb.trunk(0j, 80.0 * heading(90.0 - 60.0 * side), ""),
    "jaw": lambda side: limb.jaw(0j, 80.0 * side + 0j, ""),
    "upper jaw": lambda side: limb.upper_jaw(0j, 80.0 * side + 0j, ""),
    "foot": lambda side: limb.foot(0j, side * 16 - 4j, side * 60 - 34j, ""),
    "pelvis": lambda side: limb.pelvis(-45 * side + 12j, 0j, 80.0 * side + 0j, ""),
    "lower leg": lambda side: limb.lower_leg(0j, -75j, "", side),
    "wedge": lambda side: mechanical.wedge(0j, 65.0 * side, 37.5, ""),
    "wheelbarrow": lambda side: solid.wheelbarrow(0j, 90.0 * side + 8j, ""),
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
    "block": mechanical.block(0j, 30.0, 20.0, ""),
    "crate": mechanical.crate(0j, 30.0, 20.0, ""),
    "sign": mechanical.hung_sign(0j, 36.0, 18.0, "", 20.0),
    "bucket": mechanical.bucket(0j, 12.0, 0.8, ""),
    "basket": mechanical.pail(0j, 15 + 14j, ""),
    "pail": mechanical.standing_pail(0j, ""),
    "plant": mechanical.plant(0j, ""),
    "tree": mechanical.tree(0j, 48.0, ""),
    "heap": goods.heap(0j, 56.0, 20.0, ""),
    "feeder": goods.feeder(0j, 12.0, ""),
    "post": scenery.post(34j, 0j, 4.5, ""),
    "stand": solid.stand(0j, 20.0, 46.0, ""),
    "slender post": solid.post(0j, 60j, ""),
    "fulcrum": fulcrum(0j, 17.0, ""),
    "person": person.standing(0j, 64.0, ""),
    "hanging": person.hanging(0j, 64.0, ""),
    "ladder": mechanical.ladder((0j, 70j), 3.2, "", (0j, 0j)),
    "strands": mechanical.strands(0j, 45j, 3, ""),
    "muscle": limb.muscle(0j, 60j, ""),
    "kneecap": limb.patella(0j, 1 + 0j, ""),
    "even load": distributed.spread(-35 + 0j, 35 + 0j, 270.0, (15.0, 15.0), ""),
    "bar": mechanical.bar((0j, 50j), 3.0, ""),
    "strut": mechanical.strut(0j, 50j, ""),
    "cuff": mechanical.cuff(0j, 1 + 0j, 4.0, ""),
    "section": mechanical.section(0j, 1j, 3.0, ""),
    "built-in end": mechanical.built_in(0j, 1j, 3.0, ""),
    "lug": lug(11j, 0j, ""),
}


@pytest.mark.parametrize("name", SYMMETRIC)
def test_both_sides_are_alike(name: str) -> None:
    shapes = (shape for shape in SYMMETRIC[name] if not isinstance(shape, Arc))
    places = [spot for shape in shapes for spot in spots(shape)]
    for spot in places:
        assert min(abs(mirrored(spot) - other) for other in places) < 1e-6, spot
