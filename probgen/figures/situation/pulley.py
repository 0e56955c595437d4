"""Ropes that tie two particles: over a fixed pulley, or in strands between two pulley blocks.

Places are pt.  A rope's pull on a body is a unit step away from that body.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Final

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import (
    MEDIUM,
    Arc,
    Path,
    Shape,
    Spot,
    bearing,
    dot,
    heading,
    line,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import mechanical
from probgen.figures.situation.block import Block
from probgen.figures.situation.rope import WHEEL, facing, is_jointed, turned
from probgen.quantities.expression import Expression, Number, Product, names_in
from probgen.statics.system import Element, Kind

_RUN: Final = 40.0  # of a rope from a body to its pulley, pt
_DROP: Final = 34.0  # from the pulley to a body that hangs from it
_OVER: Final = 40.0  # how far a pulley is beyond both bodies when both ropes run the same way
_BLOCKS: Final = 78.0  # between the blocks of a tackle
_ALONG: Final = 0.01  # of a rope's length, that its end may be beside its line
_HAULED: Final = (60.0, 124.0)  # the end of a tackle's rope that somebody has in hand
_ASIDE: Final = 34.0  # how far to the side of the tackle that hand is, pt
_BESIDE: Final = 18.0  # between two parts of a rope that would run on one line


@dataclass(frozen=True, slots=True)
class Hoist:
    """One rope that pulls at two particles, and the way it pulls at each.

    loose: its free ends, by the pulls on the block each leaves and their ways.  hauled: it is the
    end of a tackle's rope, which the second particle, somebody at work, has in hand.
    """

    first: Element
    second: Element
    ways: tuple[complex, complex]
    loose: tuple[tuple[Element, complex], ...] = ()
    hauled: bool = False

    @property
    def tackle(self) -> bool:
        """Whether the two pulls face each other, as between the blocks of a tackle."""
        return abs(self.ways[0] + self.ways[1]) < 1e-6

    @property
    def alike(self) -> bool:
        """Whether both pulls run the same way."""
        return abs(self.ways[0] - self.ways[1]) < 1e-6

    @property
    def turn(self) -> int:
        """Which way round the pulley the rope goes: 1 counter-clockwise, -1 clockwise."""
        return 1 if (self.ways[0].conjugate() * -self.ways[1]).imag > 1e-9 else -1


@dataclass(frozen=True, slots=True)
class Course:
    """Where a rope runs: from one body round its pulley to the other."""

    start: Spot
    end: Spot
    centre: Spot
    radius: float
    touching: tuple[Spot, Spot]


def schematic(measured: Survey) -> dict[str, str]:
    """The particles that a figure places by their rope alone: by one, that at the rope's other end.

    A tackle that somebody hauls on stays where its points are, if they are apart.
    """
    hoists = hoists_of(measured)
    hauled = any(each.hauled for each in hoists) and all(is_placed(measured, h) for h in hoists)
    free = () if hauled else hoists
    return {hoist.second.body: hoist.first.body for hoist in free}


def hoists_of(measured: Survey) -> tuple[Hoist, ...]:
    """The ropes of a system that pull at each of two particles: once, or in a tackle with ends of
    the rope that run to neither, or to a third particle.
    """
    groups: dict[str, list[Element]] = {}
    for element in measured.system.elements:
        if element.kind == Kind.ROPE and measured.direction_of(element) is not None:
            (tension,) = names_in(measured.system.force(element.forces[0]).magnitude)
            groups.setdefault(tension, []).append(element)
    found: list[Hoist] = []
    for pulls in groups.values():
        bodies = {pull.body for pull in pulls}
        particles = all(len(measured.system.body(id).outline) == 1 for id in bodies)
        if len(bodies) == 2 and particles and not _over_a_pin(measured, pulls):
            ways = {pull.id: heading(measured.direction_of(pull) or 0.0) for pull in pulls}
            found += _tied(measured, pulls, ways)
        elif len(bodies) > 2 and particles:
            ways = {pull.id: heading(measured.direction_of(pull) or 0.0) for pull in pulls}
            found += _hauled(measured, pulls, ways)
    return tuple(found)


def _over_a_pin(measured: Survey, pulls: Sequence[Element]) -> bool:
    """Whether a rope turns at a pin of bodies with extent, from a particle that has its place."""
    beside, system = turned(measured), measured.system
    return any(pull.id in beside and is_jointed(system, pull.at) for pull in pulls) and any(
        facing(measured, pull, measured.places) for pull in pulls
    )


def _hauled(
    measured: Survey, pulls: Sequence[Element], ways: Mapping[str, complex]
) -> Iterator[Hoist]:
    """A tackle, and the end of its rope that leaves one block for a third particle; nothing where
    several parts of the rope might run between two of them.
    """
    pairs = [
        pair
        for one, other in combinations(pulls, 2)
        if one.body != other.body
        and (pair := Hoist(one, other, (ways[one.id], ways[other.id]))).tackle
        and _even(measured, pair)
    ]
    tackles = [pair for pair in pairs if _strands(measured, pair.first) > 1]
    ends = [pair for pair in pairs if pair not in tackles]
    if len(tackles) != 1 or len(ends) != 1 or len(pulls) != 4:
        return
    (main,), (end,) = tackles, ends
    blocks = {main.first.body, main.second.body}
    if end.first.body not in blocks:
        end = Hoist(end.second, end.first, end.ways[::-1], hauled=True)
    if end.second.body in blocks or end.first.body not in blocks:
        return
    if end.first.body == main.first.body:  # the block whose place the others' follow from
        main = Hoist(main.second, main.first, main.ways[::-1])
    yield main
    yield replace(end, hauled=True)


def _tied(
    measured: Survey, pulls: Sequence[Element], ways: Mapping[str, complex]
) -> Iterator[Hoist]:
    """The rope between two particles, by its pulls and the way of each; nothing where several
    parts of it might run between them.
    """
    pairs = [
        Hoist(one, other, (ways[one.id], ways[other.id]))
        for one, other in combinations(pulls, 2)
        if one.body != other.body
    ]
    if len(pulls) > 2:
        pairs = [pair for pair in pairs if pair.tackle and _even(measured, pair)]
    if len(pairs) == 1:
        (pair,) = pairs
        loose = [pull for pull in pulls if pull not in (pair.first, pair.second)]
        yield replace(pair, loose=tuple((pull, ways[pull.id]) for pull in loose))


def _even(measured: Survey, pair: Hoist) -> bool:
    """Whether as many strands pull at the one end as at the other."""
    return _strands(measured, pair.first) == _strands(measured, pair.second)


def _strands(measured: Survey, pull: Element) -> int:
    return strand_count(measured.system.force(pull.forces[0]).magnitude)


def is_placed(measured: Survey, hoist: Hoist) -> bool:
    """Whether the places of its particles are one from the other as its rope runs."""
    start, end = (measured.places[pull.at] for pull in (hoist.first, hoist.second))
    along = (end - start) / hoist.ways[0]
    return along.real > 0 and abs(along.imag) < _ALONG * along.real


def apart(hoist: Hoist, blocks: Mapping[str, Block], *, placed: bool = False) -> complex:
    """The step (pt) from the first particle of a rope to the second, where nothing else sets it.

    placed: beyond that from the place of the one to that of the other, which are known.
    """
    one, other = hoist.ways
    if hoist.hauled:
        held = blocks.get(hoist.second.body)
        run = 0.0 if placed else _hauled_run(one)
        return off_block(one) + one * run - (held.grip(other) if held else 0j)
    if hoist.tackle:
        return 0j if placed else one * _BLOCKS
    first, second = blocks.get(hoist.first.body), blocks.get(hoist.second.body)
    if hoist.alike:
        widths = (block.half.real if block else 0.0 for block in (first, second))
        return -1j * one * max(sum(widths) + 10.0, 2 * WHEEL)
    near = first.reach(one) if first else 0.0
    far = second.reach(other) if second else 0.0
    side = hoist.turn * 1j
    touch = one * (near + _RUN)
    leave = touch + side * one * WHEEL - side * -other * WHEEL
    return leave - other * (_DROP + far)


def course(hoist: Hoist, start: Spot, end: Spot) -> Course:
    """The run of a rope between the places it is fixed at."""
    one, other = hoist.ways
    if hoist.alike:
        across = ((end - start) / one).imag
        if abs(across) < 2.0 * mechanical.PIN:
            end, across = end - 1j * one * (_BESIDE + across), -_BESIDE
        over = max(dot(start, one), dot(end, one)) + _OVER
        touch = start + one * (over - dot(start, one))
        leave = end + one * (over - dot(end, one))
        return Course(start, end, (touch + leave) / 2, abs(across) / 2, (touch, leave))
    side, away = hoist.turn * 1j, -other
    # The centre is at one radius from both lines: start + a one + ... = end - b away + ...
    gap = end - start - side * WHEEL * (one - away)
    run = (gap.conjugate() * away).imag / (one.conjugate() * away).imag
    touch = start + one * run
    centre = touch + side * one * WHEEL
    return Course(start, end, centre, WHEEL, (touch, centre - side * away * WHEEL))


def drawn(hoist: Hoist, run: Course) -> tuple[Shape, ...]:
    """The rope of a hoist and its pulley."""
    one, other = run.touching
    begin, stop = bearing(one - run.centre), bearing(other - run.centre)
    sweep = (stop - begin) % 360.0
    across = ((run.end - run.start) / hoist.ways[0]).imag
    if across < 0 if hoist.alike else hoist.turn < 0:
        sweep -= 360.0
    wheel = mechanical.pulley(run.centre, run.radius - 0.4, Tag(What.PULLEY, hoist.first.id))
    return (
        *wheel,
        Path(((run.start, one),), MEDIUM, Tag(What.ROPE, hoist.first.id)),
        Arc(run.centre, run.radius, begin, sweep, MEDIUM, Tag(What.ROPE, hoist.first.id)),
        Path(((run.end, other),), MEDIUM, Tag(What.ROPE, hoist.second.id)),
    )


def tackle(hoist: Hoist, counts: tuple[int, int], ends: tuple[Spot, Spot]) -> tuple[Shape, ...]:
    """The strands between two pulley blocks, and the free end of the one with more of them."""
    one, _ = hoist.ways
    lower, upper = ends[0] + one * WHEEL * 0.3, ends[1] - one * WHEEL * 0.3
    tag = Tag(What.ROPE, hoist.first.id)
    both = mechanical.strands(lower, upper, min(counts), tag)
    if counts[0] == counts[1]:
        return both
    begin, way = (ends[0], one) if counts[0] > counts[1] else (ends[1], -one)
    return *both, *free_end(begin, way, Tag(What.ROPE, hoist.second.id))


def off_block(way: complex) -> complex:
    """The step (pt) from a block's middle to where the end of its rope leaves it in a direction: on
    the side that the rope leans to.
    """
    side = 1j if way.real * way.imag < 0 else -1j
    return way * side * WHEEL


def _hauled_run(way: complex) -> float:
    """How long the end of a tackle's rope is drawn: far enough to the side of what hangs there."""
    low, high = _HAULED
    return min(max(_ASIDE / max(abs(way.real), 0.01), low), high)


def free_end(block: Spot, way: complex, tag: Tag) -> tuple[Shape, ...]:
    """An end of a tackle's rope that leaves the side of a block."""
    begin = block + way * -1j * WHEEL
    return (line(begin, begin + way * (0.6 * _BLOCKS), MEDIUM, tag),)


def strand_count(magnitude: Expression) -> int:
    """How many strands of a rope pull: the number its tension is multiplied by."""
    match magnitude:
        case Product((Number(value, None), _)) if 1 < value <= 6 and value == int(value):
            return int(value)
        case _:
            return 1
