"""What pulls or pushes along a line in a situation: cables, ropes, springs, struts, muscles."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from probgen.figures.measured.survey import pushes
from probgen.figures.paper.scene import (
    HEAVY,
    MEDIUM,
    REFERENCE,
    Spot,
    bearing,
    circle,
    dot,
    heading,
    line,
)
from probgen.figures.parts import limb, mechanical
from probgen.figures.parts.ground import Surface
from probgen.figures.situation import pulley
from probgen.statics.system import Element, Kind

if TYPE_CHECKING:
    from probgen.figures.situation.support import Supports

_REACH: Final = 16.5  # a wall this near a line's end holds it, pt
_FACE: Final = 14.0  # how far a face reaches beyond what it holds, pt
_RISE: Final = 1.0  # the highest a cable is followed to its wall, in lengths of its body
_BROKEN: Final = 0.6  # how high one that rises further is drawn
_RUN: Final = 0.5  # how far a cable without a wall is followed, in lengths of its body
_LINE: Final = 62.0  # length of a line from a particle, pt
_ASIDE: Final = 42.0  # how far to its side such a line ends at least, pt
_SHORTEST: Final = 46.0  # how near a ceiling may be to it, along a cord, pt
_FARTHEST: Final = 110.0  # how far a wall may be from a particle it holds, pt
_PULLEY: Final = 9.0  # radius of a pulley, pt
_DRAWN: Final = (Kind.CABLE, Kind.ROPE, Kind.SPRING, Kind.STRUT)


def draw_lines(supports: Supports) -> None:
    """Draw every line once; one between two bodies is told by the forces of both."""
    system = supports.measured.system
    done = {id for each in supports.hoists for id in _over(supports, each)}
    ropes: dict[tuple[str, str], list[Element]] = {}
    for element in system.elements:
        if not element.forces or done & set(element.forces):
            continue
        done |= {system.force(id).pair for id in element.forces}
        if element.kind == Kind.ROPE:
            ropes.setdefault((element.body, element.at), []).append(element)
        elif element.kind in _DRAWN:
            _draw(supports, element, supports.rest(element))
        elif element.kind == Kind.MUSCLE:
            _muscle(supports, element)
    for pulls in ropes.values():
        _rope(supports, pulls)


def _over(supports: Supports, each: pulley.Hoist) -> tuple[str, ...]:
    """Draw a rope that ties two particles; the ids of its forces."""
    pulls = (each.first, each.second)
    if each.tackle:
        counts = [_strands(supports, pull) for pull in pulls]
        ends = (supports.spot(pulls[0].at), supports.spot(pulls[1].at))
        supports.field.add(*pulley.tackle(each, (counts[0], counts[1]), ends))
    else:
        run = supports.course(each)
        supports.field.add(*pulley.drawn(each, run, each.first.id))
        supports.lines[each.first.id] = (run.start, run.touching[0])
        rests = {e.body for e in supports.measured.system.elements if e.surface is not None}
        if each.alike or not rests & {each.first.body, each.second.body}:
            _hang(supports, each, run)
    return (*each.first.forces, *each.second.forces)


def _hang(supports: Supports, each: pulley.Hoist, run: pulley.Course) -> None:
    """Fix a pulley to a ceiling or a wall of its own."""
    whole = sum(each.ways, 0j)
    unit = whole / abs(whole)
    end = run.centre + unit * (run.radius + 12.0)
    supports.field.add(line(run.centre, end, MEDIUM, f"support:{each.first.id}"))
    _anchor(supports, end, bearing(unit), f"support:{each.first.id}")


def _rope(supports: Supports, pulls: Sequence[Element]) -> None:
    """A rope's pulls at one point: over a pulley when it leaves that point two ways."""
    ways = [supports.measured.direction_of(pull) for pull in pulls]
    known = [heading(way) for way in ways if way is not None]
    if supports.is_kneecap(pulls[0].body):
        for pull, unit in zip(pulls, known, strict=False):
            _tendon(supports, pull, unit)
        return
    turned = sum(known, 0j)
    if len(known) != 2 or abs(turned) < 0.2:
        for pull in pulls:
            _draw(supports, pull, supports.rest(pull))
        return
    centre = supports.spot(pulls[0].at)
    supports.field.add(*mechanical.pulley(centre, _PULLEY, f"pulley:{pulls[0].at}"))
    for side, (pull, unit) in zip((1, -1), zip(pulls, known, strict=True), strict=True):
        leaves = unit * 1j
        across = dot(leaves, turned)
        if abs(across) < 0.05:
            leaves *= side  # both parts run the same way, one on either side
        elif across > 0:
            leaves = -leaves  # the rope lies on the wheel's far side
        _draw(supports, pull, centre + leaves * _PULLEY, leaves * _PULLEY)


def _tendon(supports: Supports, pull: Element, unit: complex) -> None:
    """A tendon from a kneecap; the upper one ends in its muscle."""
    start = supports.spot(pull.at)
    if unit.imag > 0:
        shapes = limb.muscle(start, start + unit * 104.0, f"rope:{pull.id}")
    else:
        shapes = (line(start, start + unit * 80.0, HEAVY, f"rope:{pull.id}"),)
    supports.field.add(*shapes)
    supports.lines[pull.id] = (start, start + unit * 92.0)


def _draw(supports: Supports, element: Element, start: Spot, aside: complex = 0j) -> None:
    """One line from its start to where it is fixed; aside: its shift from the point it is at."""
    tag = f"{element.kind}:{element.id}"
    way = _way(supports, element)
    tied = _tied(supports, element)
    if tied is not None:
        _stroke(supports, element, start, tied + aside, tag)
        return
    if _has_far_end(supports, element):
        end = supports.spot(element.toward) + aside
        _stroke(supports, element, start, end, tag)
        if not supports.inner(element):
            _anchor(supports, end, bearing(end - start), tag)
        return
    if way is None:
        return
    fixed = _named_end(supports, element, start, way)
    hit = None if fixed else _wall_hit(supports, start, way, element)
    body = supports.measured.system.body(element.body)
    run = _particle_run(way) if body.particle else max(_RUN * supports.size(element.body), 34.0)
    end = fixed or hit or start + heading(way) * run
    if hit is None:
        if fixed is None and _to_post(supports, element, way):
            supports.posts.append(end)
        elif heading(way).imag > 0.01 or element.kind != Kind.CABLE or _is_fixed(supports, element):
            _anchor(supports, end, way, tag)
        else:
            supports.field.add(*limb.break_mark(end, way, 2.0, tag))
    _stroke(supports, element, start, end, tag)


def _named_end(supports: Supports, element: Element, start: Spot, way: float) -> Spot | None:
    """The point off every body that a line runs to, where the system has one."""
    system = supports.measured.system
    if element.kind != Kind.CABLE or system.body(element.body).particle:
        return None
    on_bodies = {name for body in system.bodies for name in body.outline}
    on_bodies |= {e.at for e in system.elements}
    for name in system.points:
        step = supports.spot(name) - start
        if name not in on_bodies and abs(step) > 1.0:
            along = step / heading(way)
            if along.real > 0 and abs(along.imag) < 0.5:
                return supports.spot(name)
    return None


def _particle_run(way: float) -> float:
    """How long a line from a particle is drawn: far enough to its side for a post to stand."""
    across = max(abs(heading(way).real), 0.1)
    return min(max(_LINE, _ASIDE / across), 1.5 * _LINE) if across > 0.2 else _LINE


def _is_fixed(supports: Supports, element: Element) -> bool:
    """Whether words say what a line's far end is fixed to."""
    words = f"{element.name} {supports.depicts.get(element.id, '')}".lower().split()
    return any(word in ("wall", "post", "hook", "tree", "pole", "bollard") for word in words)


def _to_post(supports: Supports, element: Element, way: float) -> bool:
    """Whether a cord ends at a post: one of two that leave a particle to both sides."""
    system = supports.measured.system
    own = [e for e in system.elements if e.body == element.body]
    shown = f"{element.name} {supports.depicts.get(element.id, '')}".lower()
    if any(word in shown for word in ("ceiling", "beam", "wall", "roof")):
        return False
    if not system.body(element.body).particle or any(e.surface is not None for e in own):
        return False
    cords = [supports.measured.direction_of(e) for e in own if e.kind == Kind.CABLE]
    units = [heading(cord) for cord in cords if cord is not None]
    slanted = all(unit.imag > -0.05 and abs(unit.real) > 0.2 for unit in units)
    return len(units) == 2 and slanted and units[0].real * units[1].real < 0


def _tied(supports: Supports, element: Element) -> Spot | None:
    """Where a line between two bodies ends on the other one, if it runs that way on paper."""
    system = supports.measured.system
    force = system.force(element.forces[0])
    if not force.pair or not supports.measured.has(force.direction):
        return None
    back = system.force(force.pair)
    unit = heading(supports.measured.number(force.direction))
    end = supports.spot(back.point)
    block = supports.blocks.get(back.body)
    end -= unit * block.reach(unit) if block else 0j
    way = end - supports.rest(element)
    runs = abs(way) > 1.0 and abs((way / unit).imag) < 1.0
    return end if runs else None


def _stroke(supports: Supports, element: Element, start: Spot, end: Spot, tag: str) -> None:
    supports.lines[element.id] = (start, end)
    if element.kind == Kind.SPRING:
        shapes = mechanical.spring(start, end, tag)
    elif element.kind == Kind.STRUT:
        shapes = mechanical.strut(start, end, tag)
    else:
        count = _strands(supports, element)
        shapes = (
            mechanical.strands(start, end, count, tag)
            if count > 1
            else mechanical.cable(start, end, tag)
        )
    supports.field.add(*shapes)


def _strands(supports: Supports, element: Element) -> int:
    return pulley.strand_count(supports.measured.system.force(element.forces[0]).magnitude)


def _way(supports: Supports, element: Element) -> float | None:
    """The direction a line leaves its point in (degrees): behind it when it pushes."""
    direction = supports.measured.direction_of(element)
    if direction is None:
        return None
    return (direction + 180.0) % 360.0 if pushes(supports.measured.system, element) else direction


def _has_far_end(supports: Supports, element: Element) -> bool:
    """Whether the point a line runs toward is named, and another than its own."""
    if not element.toward:
        return False
    return abs(supports.spot(element.toward) - supports.spot(element.at)) > 1.0


def _wall_hit(supports: Supports, start: Spot, direction: float, element: Element) -> Spot | None:
    """Where a line meets a wall; one that would rise too high is drawn broken off."""
    unit = heading(direction)
    body = supports.measured.system.body(element.body)
    for place, surface in enumerate(supports.surfaces):
        closing = dot(unit, heading(surface.normal))
        if closing > -0.05 or 60.0 < surface.normal < 120.0:
            continue  # it runs away from this face, or down to the ground
        if surface.height(start) <= 0:
            continue
        reach = -surface.height(start) / closing
        if body.particle and reach > _FARTHEST:
            continue
        if body.particle and surface.normal == 270.0 and reach < _SHORTEST:
            continue  # a steep cord beside one that rises little has a ceiling of its own
        size, rise = supports.size(element.body), abs(unit.imag) * reach
        if rise > _RISE * size:
            end = start + unit * reach * _BROKEN * size / rise
            more = end + unit * 13.0
            supports.field.add(line(end, more, REFERENCE, f"beyond:{element.id}"))
            return end
        supports.surfaces[place] = surface.covering(start + unit * reach, _FACE)
        return start + unit * reach
    return None


def _anchor(supports: Supports, end: Spot, direction: float, tag: str) -> None:
    """Fix a line's far end to a wall nearby, or to a ceiling or wall of its own."""
    for place, surface in enumerate(supports.surfaces):
        if abs(surface.height(end)) <= _REACH:
            face = end - heading(surface.normal) * surface.height(end)
            supports.surfaces[place] = surface.covering(face, _FACE)
            if abs(face - end) > 0.5:
                supports.field.add(line(face, end, MEDIUM, tag), circle(end, 1.5, MEDIUM, tag))
            return
    # A line that rises ends at a ceiling, unless it is nearly level.
    level = abs(heading(direction).imag) < 0.3
    normal = round((direction + 180.0) / (180.0 if level else 90.0)) * (180.0 if level else 90.0)
    if not level and heading(direction).imag > 0:
        normal = 270.0
    supports.surfaces.append(Surface(end, normal % 360.0, _FACE, _FACE))


def _muscle(supports: Supports, element: Element) -> None:
    start, tag = supports.spot(element.at), f"muscle:{element.id}"
    if _has_far_end(supports, element):
        supports.lines[element.id] = (start, supports.spot(element.toward))
        supports.field.add(*limb.muscle(start, supports.spot(element.toward), tag))
        return
    direction = supports.measured.direction_of(element)
    if direction is None:
        return
    reach = 0.55 * supports.size(element.body)
    unit = heading(direction)
    joints = [e for e in supports.measured.system.elements if e.kind == Kind.HINGE]
    for joint in joints:  # it ends where it comes over the joint
        across = (supports.spot(joint.at) - start).real
        if across * unit.real > 0 and abs(unit.real) * reach > abs(across) - 4.0:
            reach = max((abs(across) - 4.0) / abs(unit.real), 16.0)
    supports.lines[element.id] = (start, start + unit * reach)
    supports.field.add(*limb.muscle(start, start + unit * reach, tag))
