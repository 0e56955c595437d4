"""Bars that are more than a bar: a trolley with its motor, the post of a road sign, a stone."""

from __future__ import annotations

from typing import Final

from probgen.bank.depiction import Look
from probgen.figures.measured.distributed import spread_of
from probgen.figures.paper.scene import Shape, Spot, heading
from probgen.figures.paper.tag import Tag
from probgen.figures.parts import mechanical, works
from probgen.figures.parts.axes import TURN
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Body, Element, Kind

_SHAFT: Final = 0.14  # from a motor's feet up to its shaft, m; common practice, no source
_ROUND: Final = 4.5  # from a motor's casing to the arrow of its couple, pt
_PLATE: Final = 3.4  # thickness of a sign's plate, pt


def built(stage: Stage, body: Body, tag: Tag) -> tuple[Shape, ...]:
    """The strokes of such a body, none of another."""
    ends = stage.spot(body.outline[0]), stage.spot(body.outline[-1])
    own = [element for element in stage.system.elements if element.body == body.id]
    half = stage.halves[body.id]
    match stage.look(body.id):
        case Look.TROLLEY:
            feet = [stage.spot(e.at) + 1j * half for e in own if e.kind is Kind.COUPLE][:1]
            motors = (works.motor(foot, _height(stage), tag) for foot in feet)
            return (*mechanical.bar(ends, half, tag), *(s for motor in motors for s in motor))
        case Look.SIGN_POST:
            return _sign_post(stage, own, ends, half, tag)
        case Look.STONE:
            raised = {e.at for e in stage.system.elements if stage.is_inner(e)}
            lifted = body.outline[0] in raised, body.outline[-1] in raised
            return (works.stone(ends, half, tag, lifted=lifted),)
    return ()


def couple_at(stage: Stage, element: Element) -> tuple[Spot, float]:
    """About where the arrow of a couple turns, and how far from there (pt): about a motor."""
    spot = stage.spot(element.at)
    if stage.look(element.body) is not Look.TROLLEY:
        return spot, TURN
    height = _height(stage)
    return spot + 1j * (stage.halves[element.body] + height), height * works.CASING + _ROUND


def _height(stage: Stage) -> float:
    return _SHAFT * stage.scale


def _sign_post(
    stage: Stage, own: list[Element], ends: tuple[Spot, Spot], half: float, tag: Tag
) -> tuple[Shape, ...]:
    """A post, and on the face a load is spread over the plate that this blows on."""
    shapes = mechanical.bar(ends, half - _PLATE, tag)
    for element in own:
        load = spread_of(stage.measured, element) if element.spread else None
        way = stage.measured.direction_of(element) if load else None
        if load and way is not None:
            face = -heading(way) * (half - _PLATE)
            low, high = (place * stage.scale + face for place in (load.start, load.end))
            shapes += works.sign_plate(low, high, -heading(way), _PLATE, tag)
    return shapes
