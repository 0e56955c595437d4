"""A rope with two upright parts that runs over pulleys under a ceiling, from body to body."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from probgen.figures.paper.scene import MEDIUM, Arc, Shape, Spot, apart, line
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import mechanical
from probgen.figures.parts.ground import Surface
from probgen.figures.situation.anchorage import anchored
from probgen.figures.situation.drawn_line import Line
from probgen.figures.situation.rope import WHEEL, pulls_of, turned
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element, Kind

_HANGER: Final = 12.0  # from a wheel to its ceiling, pt
_RUN: Final = 74.0  # from what a rope pulls at to a ceiling of its own, pt
_NARROWEST: Final = 6.0  # between two parts that can be told apart, pt
_WIDEST: Final = 24.0  # radius of one pulley between both parts, pt
_UPRIGHT: Final = 0.5  # degrees


def overhead(stage: Stage) -> Iterator[tuple[Element, Element]]:
    """The ropes that pull straight up at two bodies and nowhere else, side by side on paper, the
    left part first.
    """
    tied = {hoist.first.id for hoist in stage.hoists} | {hoist.second.id for hoist in stage.hoists}
    over, done = turned(stage.measured), set[str]()
    for element in stage.system.elements:
        if element.kind is not Kind.ROPE or element.id in done:
            continue
        pulls = pulls_of(stage.measured, element)
        done |= {pull.id for pull in pulls}
        ways = [stage.measured.direction_of(pull) for pull in pulls]
        upright = all(way is not None and apart(way, 90.0) < _UPRIGHT for way in ways)
        if len({pull.body for pull in pulls}) == len(pulls) == 2 and upright:
            one, other = sorted(pulls, key=lambda pull: stage.rest(pull).real)
            gap = stage.rest(other).real - stage.rest(one).real
            if gap > _NARROWEST and not {one.id, other.id} & (tied | over.keys()):
                yield one, other


def over_pulleys(
    stage: Stage, walls: list[Surface], pulls: tuple[Element, Element]
) -> Iterator[Line]:
    """The two parts of a rope, and between them a pulley as wide as they are apart, or two with a
    level part between them.
    """
    feet = tuple(stage.rest(pull) for pull in pulls)
    gap = feet[1].real - feet[0].real
    single = gap <= 2 * _WIDEST
    radius = gap / 2 if single else WHEEL
    level = _ceiling(stage, walls, pulls) - _HANGER - radius
    tops = [complex(foot.real, level) for foot in feet]
    centres = [tops[0] + radius, tops[1] - radius]
    tag = Tag(What.ROPE, pulls[0].id)
    for pull, foot, top in zip(pulls, feet, tops, strict=True):
        yield Line((line(foot, top, MEDIUM, Tag(What.ROPE, pull.id)),), pull.id, (foot, top))
    arcs = tuple(
        Arc(centre, radius, start, -90.0, MEDIUM, tag)
        for centre, start in zip(centres, (180.0, 90.0), strict=True)
    )
    rope, wheels = min(pull.id for pull in pulls), tuple[Shape, ...]()
    for centre in centres[:1] if single else centres:
        wheels += _wheel(walls, centre, radius, rope)
    high = [centre + 1j * radius for centre in centres]
    between = (line(high[0], high[1], MEDIUM, tag),) if not single else ()
    yield Line((*wheels, *arcs, *between))


def _wheel(walls: list[Surface], centre: Spot, radius: float, rope: str) -> tuple[Shape, ...]:
    """A pulley and what it hangs from."""
    tag, end = Tag(What.SUPPORT, rope), centre + 1j * (radius + _HANGER)
    held = line(centre, end, MEDIUM, tag), *anchored(walls, end, 90.0, tag)
    return *held, *mechanical.pulley(centre, radius - 0.4, Tag(What.PULLEY, rope))


def _ceiling(stage: Stage, walls: Sequence[Surface], pulls: Sequence[Element]) -> float:
    """How high (pt) the ceiling is: where the rope's parts are said to run to, or that which is
    there, or one of their own.
    """
    named = [stage.spot(pull.toward).imag for pull in pulls if stage.has_far_end(pull)]
    state = stage.state_at(stage.rest(pulls[0]))
    there = [
        wall.at.imag
        for wall in walls
        if abs(wall.normal % 360.0 - 270.0) < 1.0 and stage.state_at(wall.at) == state
    ]
    top = max(stage.rest(pull).imag for pull in pulls)
    return max(named or there, default=top + _RUN)
