"""What pulls or pushes along a line in a situation: cables, ropes, springs, struts, muscles.

The faces lines are fixed to are a list, `walls`: one is lengthened where a line ends at it, and a
line that finds none gets a face of its own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from probgen.bank.depiction import TREES, Anchor, Look
from probgen.figures.measured.survey import pushes
from probgen.figures.paper.scene import (
    HEAVY,
    MEDIUM,
    Pen,
    Shape,
    Spot,
    bearing,
    heading,
    line,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import limb, mechanical, solid, vehicles
from probgen.figures.parts.chain import chain
from probgen.figures.parts.ground import Surface
from probgen.figures.situation import pulley
from probgen.figures.situation.anchorage import anchored, to_mast, wall_hit
from probgen.figures.situation.drawn_line import Line
from probgen.figures.situation.fixture import FACE
from probgen.figures.situation.muscle import muscle_of
from probgen.figures.situation.overhead import over_pulleys, overhead
from probgen.figures.situation.pulley import Hoist
from probgen.figures.situation.reeving import reeving_on
from probgen.figures.situation.rope import WHEEL, is_jointed, touching, turned
from probgen.figures.situation.stage import Stage
from probgen.figures.situation.strand import is_drawn_from, other_end
from probgen.figures.situation.waterworks import pump_of
from probgen.figures.situation.winch import winch_of
from probgen.statics.system import Element, Kind

_RUN: Final = 0.5  # how far a cable without a wall is followed, in lengths of its body
_STRUT: Final = 0.62  # and how long a gas strut is
_LINE: Final = 74.0  # length of a line from a particle, pt
_DRAWN: Final = 48.0  # of a line that moves with the particle it pulls, pt
_ASIDE: Final = 54.0  # how far to its side such a line ends at least, pt
_BESIDE: Final = 12.0  # from blocks to a pole beside them, pt
_LOOSE: Final = 2.2  # half the height of a sling, in halves of the thickness of its body
_THICK: Final = Pen(1.5)
_PINNED: Final = (Anchor.MACHINE, Anchor.GAS_STRUT)
_ACROSS: Final = 0.1  # least cosine of the way to a mast
_BELOW: Final = 16.0  # and to the ground it stands on
_UPRIGHT: Final = 0.9  # least sine of the way up to a pulley at a pole's top
_SHOWN: Final = {
    Kind.CABLE: What.CABLE,
    Kind.ROPE: What.ROPE,
    Kind.SPRING: What.SPRING,
    Kind.STRUT: What.STRUT,
}
"""The lines drawn as such, and what they show."""


def lines_of(stage: Stage, walls: list[Surface]) -> Iterator[Line]:
    """Every line once, in the order they are drawn; one between two bodies is told by both."""
    done: set[str] = set()
    for hoist in stage.hoists:
        done |= {*hoist.first.forces, *hoist.second.forces}
        yield _over(stage, walls, hoist)
        for pull, way in hoist.loose:
            done |= {*pull.forces}
            yield Line(pulley.free_end(stage.spot(pull.at), way, Tag(What.ROPE, pull.id)))
    for body in stage.system.bodies:
        if reeving := reeving_on(stage, body.id):
            done |= {*reeving.element.forces}
            walls.append(Surface(reeving.foot, 90.0, FACE, FACE))
            yield Line(reeving.shapes, reeving.element.id, reeving.ends)
        if pump := pump_of(stage, body.id):
            done |= {*pump.rod.forces}
            yield Line(pump.strokes, pump.rod.id, (pump.start, pump.head))
    high = tuple(overhead(stage))
    done |= {id for pulls in high for pull in pulls for id in pull.forces}
    ropes: dict[tuple[str, str], list[Element]] = {}
    for element in stage.system.elements:
        if not element.forces or done & set(element.forces):
            continue
        done |= {stage.system.force(id).pair for id in element.forces}
        if element.kind == Kind.ROPE:
            ropes.setdefault((element.body, element.at), []).append(element)
        elif element.kind in _SHOWN:
            yield from _single(stage, walls, element, stage.rest(element))
        elif element.kind == Kind.MUSCLE:
            yield from muscle_of(stage, element)
    for pulls in ropes.values():
        yield from _rope(stage, walls, pulls)
    for pair in high:  # under the ceiling that other lines have by now
        yield from over_pulleys(stage, walls, pair)


# Ropes


def _over(stage: Stage, walls: list[Surface], hoist: Hoist) -> Line:
    """A rope that ties two particles, over its pulley or between two pulley blocks."""
    pulls = (hoist.first, hoist.second)
    if hoist.hauled:
        ends = stage.rest(hoist.first), stage.rest(hoist.second)
        return Line((line(*ends, MEDIUM, Tag(What.ROPE, hoist.first.id)),), hoist.first.id, ends)
    if hoist.tackle:
        one, other = (_strands(stage, pull) for pull in pulls)
        ends = (stage.spot(pulls[0].at), stage.spot(pulls[1].at))
        return Line(pulley.tackle(hoist, (one, other), ends))
    run = stage.course(hoist)
    shapes = pulley.drawn(hoist, run)
    rests = {e.body for e in stage.system.elements if e.surface is not None}
    if hoist.alike or not rests & {hoist.first.body, hoist.second.body}:
        shapes += _hung(stage, walls, hoist, run)
    return Line(shapes, hoist.first.id, (run.start, run.touching[0]))


def _hung(
    stage: Stage, walls: list[Surface], hoist: Hoist, run: pulley.Course
) -> tuple[Shape, ...]:
    """What fixes a pulley to a ceiling or a wall of its own, or to the pole that is told."""
    whole, tag = sum(hoist.ways, 0j), Tag(What.SUPPORT, hoist.first.id)
    unit = whole / abs(whole)
    if stage.depicts.lines.get(hoist.first.id) is Anchor.POST and unit.imag > _UPRIGHT:
        return _on_pole(stage, walls, run.centre, tag)
    end = run.centre + unit * (run.radius + 12.0)
    return line(run.centre, end, MEDIUM, tag), *anchored(walls, end, bearing(unit), tag)


def _on_pole(stage: Stage, walls: list[Surface], pulley_at: Spot, tag: Tag) -> tuple[Shape, ...]:
    """An arm from a pulley to a pole beside all blocks, up from a ground below them."""
    spots = {id: stage.spot(stage.system.body(id).outline[0]) for id in stage.blocks}
    corners = [spot + complex(s * stage.blocks[id].half.real, -stage.blocks[id].half.imag)
               for id, spot in spots.items() for s in (-1, 1)]  # fmt: skip
    right = max((corner.real for corner in corners), default=pulley_at.real) + _BESIDE
    low = min((corner.imag for corner in corners), default=pulley_at.imag - _LINE) - _BELOW
    foot, top = complex(right, low), complex(right, pulley_at.imag)
    walls.append(Surface(foot, 90.0, FACE, FACE))
    return *solid.post(foot, top + 8j, tag), line(pulley_at, top, HEAVY, tag)


def _rope(stage: Stage, walls: list[Surface], pulls: Sequence[Element]) -> Iterator[Line]:
    """A rope's pulls at one point: over a pulley when it leaves that point two ways."""
    if stage.look(pulls[0].body) is Look.KNEECAP:
        ways = [stage.measured.direction_of(pull) for pull in pulls]
        known = [heading(way) for way in ways if way is not None]
        for pull, unit in zip(pulls, known, strict=False):
            yield _tendon(stage, pull, unit)
        return
    beside = turned(stage.measured)
    if pulls[0].id in beside:
        centre = stage.spot(pulls[0].at)
        yield Line(mechanical.pulley(centre, WHEEL, Tag(What.PULLEY, pulls[0].at)))
    for pull in pulls:
        side = beside.get(pull.id, 0j)
        start = stage.spot(pull.at) if side else stage.rest(pull)
        yield from _single(stage, walls, pull, start + side, side)


def _tendon(stage: Stage, pull: Element, unit: complex) -> Line:
    """A tendon from a kneecap; the upper one ends in its muscle."""
    start, tag = stage.spot(pull.at), Tag(What.ROPE, pull.id)
    if unit.imag > 0:
        shapes = limb.muscle(start, start + unit * 104.0, tag)
    else:
        shapes = (line(start, start + unit * 80.0, HEAVY, tag),)
    return Line(shapes, pull.id, (start, start + unit * 92.0))


def _strands(stage: Stage, element: Element) -> int:
    return pulley.strand_count(stage.system.force(element.forces[0]).magnitude)


# Lines that run straight from their point


def _single(
    stage: Stage, walls: list[Surface], element: Element, start: Spot, aside: complex = 0j
) -> Iterator[Line]:
    """One line from its start to where it is fixed; aside: its shift from the point it is at."""
    tied, way = _tied(stage, element), _way(stage, element)
    facing = other_end(stage, element)
    if facing:
        if not is_drawn_from(stage, facing, element):
            yield _stroked(stage, element, *_between(stage, element, facing, start, aside))
    elif tied is not None:
        yield _stroked(stage, element, start, tied + aside)
    elif stage.has_far_end(element):
        yield _up_to(stage, walls, element, start, aside, stage.spot(element.toward))
    elif way is not None:
        named = _named_end(stage, element, start - aside, way) if aside else None
        if named is None:
            yield _followed(stage, walls, element, start, way)
        else:
            yield _up_to(stage, walls, element, start, aside, named)


def _up_to(
    stage: Stage, walls: list[Surface], element: Element, start: Spot, aside: complex, end: Spot
) -> Line:
    """A line up to the named point it runs to; from a pulley it leaves the rim straight for it."""
    if aside:
        start = touching(start - aside, aside, end)
    stroke = _stroked(stage, element, start, end)
    inner = stage.is_inner(element)
    # What holds its far end is drawn over it.
    held = () if inner else _fastened(stage, walls, element, end, bearing(end - start))
    return Line((*stroke.shapes, *held), element.id, stroke.ends)


def _between(
    stage: Stage, one: Element, other: Element, start: Spot, aside: complex
) -> tuple[Spot, Spot]:
    """The ends of a rope's straight part: where it leaves a pulley, and what hangs beside its
    point with it.
    """
    theirs = turned(stage.measured).get(other.id, 0j)
    block, far = stage.blocks.get(one.body), stage.blocks.get(other.body)
    near = theirs if not aside and not (block and block.lift) else 0j
    beyond = theirs or (0j if far and far.lift else aside)
    return start + near, stage.rest(other) + beyond


def _followed(
    stage: Stage, walls: list[Surface], element: Element, start: Spot, way: float
) -> Line:
    """A line followed from its start until something holds it."""
    tag, unit = Tag(_SHOWN[element.kind], element.id), heading(way)
    winch = winch_of(stage, element)
    if winch:
        if winch.own:
            walls.append(Surface(winch.foot, winch.normal, FACE, FACE))
        drum = solid.winch(winch.axle, winch.foot, Tag(What.SUPPORT, element.id))
        return _stroked(stage, element, start, winch.end, drum)
    told = stage.depicts.lines.get(element.id)
    if told is Anchor.MAST and abs(unit.real) > _ACROSS:
        return _stroked(stage, element, start, *to_mast(stage, walls, element, start, unit))
    named = _named_end(stage, element, start, way)
    slides = stage.slides(element.body) and element.id not in stage.depicts.lines
    if slides and named is None and element.kind == Kind.CABLE:  # it goes with what it pulls
        end = start + unit * _DRAWN
        return _stroked(stage, element, start, end, limb.break_mark(end, way, 2.0, tag))
    free = named or told in _PINNED
    hit = None if free else wall_hit(stage, walls, start, way, element)
    if hit:
        end, held = hit
        return _stroked(stage, element, start, end, held)
    body = stage.system.body(element.body)
    share = _STRUT if told is Anchor.GAS_STRUT else _RUN
    run = _particle_run(way) if body.particle else max(share * stage.size(element.body), 34.0)
    end = named or start + unit * run
    if stage.measured.labels.plan and told is None:  # a floor or a ceiling is not seen from above
        return _stroked(stage, element, start, end, mechanical.peg(end, tag))
    if named is None and _to_post(stage, element):
        return _stroked(stage, element, start, end, posted=True)
    fixed = told in (Anchor.WALL, Anchor.POST, Anchor.CHAIN, *_PINNED, *TREES)
    if unit.imag > 0.01 or element.kind != Kind.CABLE or fixed:
        held = _fastened(stage, walls, element, end, way)
        return _stroked(stage, element, start, end, held)
    return _stroked(stage, element, start, end, limb.break_mark(end, way, 2.0, tag))


def _fastened(
    stage: Stage, walls: list[Surface], element: Element, end: Spot, way: float
) -> tuple[Shape, ...]:
    """What holds the far end of a line that runs in a direction: seen from above a peg."""
    told, tag = stage.depicts.lines.get(element.id), Tag(_SHOWN[element.kind], element.id)
    if stage.measured.labels.plan and told is None:
        return mechanical.peg(end, tag)
    if told in _PINNED:  # a strut has a pin at either end by itself
        return () if element.kind is Kind.STRUT else (mechanical.pin(end, tag),)
    return anchored(walls, end, way, tag, told)


def _stroked(
    stage: Stage, element: Element, start: Spot, end: Spot,
    held: tuple[Shape, ...] = (), *, posted: bool = False,
) -> Line:  # fmt: skip
    """A line's own strokes, after what holds its far end."""
    tag = Tag(_SHOWN[element.kind], element.id)
    count = _strands(stage, element)
    shapes: tuple[Shape, ...]
    if element.kind == Kind.SPRING:
        shapes = mechanical.spring(start, end, tag)
    elif element.kind == Kind.STRUT:
        gas = stage.depicts.lines.get(element.id) is Anchor.GAS_STRUT
        shapes = (vehicles.gas_strut if gas else mechanical.strut)(start, end, tag)
    elif stage.depicts.lines.get(element.id) is Anchor.CHAIN:
        shapes = chain(start, end, tag)
    elif count > 1:
        shapes = mechanical.strands(start, end, count, tag)
    else:
        thick = stage.depicts.lines.get(element.id) in (Anchor.TREE_THICK, Anchor.BAND)
        shapes = mechanical.cable(start, end, tag, _THICK if thick else MEDIUM)
    if stage.depicts.lines.get(element.id) is Anchor.SLING and (ways := stage.ways(element)):
        along, half = ways[0] / abs(ways[0]), _LOOSE * stage.halves[element.body]
        shapes += limb.band(stage.spot(element.at), along, half, tag)
    return Line((*held, *shapes), element.id, (start, end), posted)


# Where a line ends


def _way(stage: Stage, element: Element) -> float | None:
    """The direction a line leaves its point in (degrees): behind it when it pushes."""
    direction = stage.measured.direction_of(element)
    if direction is None:
        return None
    return (direction + 180.0) % 360.0 if pushes(element) else direction


def _tied(stage: Stage, element: Element) -> Spot | None:
    """Where a line between two bodies ends on the other one, if it runs that way on paper."""
    force = stage.system.force(element.forces[0])
    if not force.pair or not stage.measured.has(force.direction):
        return None
    back = stage.system.force(force.pair)
    unit = heading(stage.measured.number(force.direction)) * (-1 if pushes(element) else 1)
    end = stage.spot(back.point)
    block = stage.blocks.get(back.body)
    end -= unit * block.reach(unit) if block else 0j
    way = end - stage.rest(element)
    runs = abs(way) > 1.0 and abs((way / unit).imag) < 1.0
    return end if runs else None


def _named_end(stage: Stage, element: Element, start: Spot, way: float) -> Spot | None:
    """The point off every body that a line runs to, where the system has one."""
    system = stage.system
    loose = system.body(element.body).particle and not is_jointed(system, element.at)
    if element.kind not in (Kind.CABLE, Kind.ROPE) or loose:
        return None
    on_bodies = {name for body in system.bodies for name in body.outline}
    on_bodies |= {e.at for e in system.elements}
    for name in system.points:
        step = stage.spot(name) - start
        if name not in on_bodies and abs(step) > 1.0:
            along = step / heading(way)
            if along.real > 0 and abs(along.imag) < 0.5:
                return stage.spot(name)
    return None


def _particle_run(way: float) -> float:
    """How long a line from a particle is drawn: far enough to its side for a post to stand."""
    across = max(abs(heading(way).real), 0.1)
    return min(max(_LINE, _ASIDE / across), 1.5 * _LINE) if across > 0.2 else _LINE


def _to_post(stage: Stage, element: Element) -> bool:
    """Whether a cord ends at a post: one of two that leave a particle to both sides."""
    own = [e for e in stage.system.elements if e.body == element.body]
    if stage.depicts.lines.get(element.id) in (Anchor.WALL, Anchor.CEILING, *_PINNED):
        return False
    if not stage.system.body(element.body).particle or any(e.surface is not None for e in own):
        return False
    cords = [stage.measured.direction_of(e) for e in own if e.kind == Kind.CABLE]
    units = [heading(cord) for cord in cords if cord is not None]
    slanted = all(unit.imag > -0.05 and abs(unit.real) > 0.2 for unit in units)
    return len(units) == 2 and slanted and units[0].real * units[1].real < 0
