"""Those at work in a situation, beside the arrows of what they push with: a worker who holds
something up from below, a boot that blocks a foot; and what their pushes pass through.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from probgen.bank.depiction import Source
from probgen.figures.paper.scene import Shape, Spot, apart, heading
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import mechanical, person, rod, works
from probgen.figures.parts.ground import Surface
from probgen.figures.parts.load import PERSON, SHORTEST, TALLEST
from probgen.figures.situation.contact import touching
from probgen.figures.situation.fixture import FACE
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element, Kind

_BOOT: Final = 0.32  # length of a boot, m
_THROUGH: Final = {Source.PEDAL: 3.0, Source.VALVE: works.SPINDLE}  # what is between, pt
_STRIDE: Final = 0.2  # of a worker's height, that the ground reaches beyond both sides of them
_ELBOW: Final = 0.3  # the same of one who bears something, whose arm is out
_LEAST: Final = 0.3  # sine of a bar's slope at least, for where a boot meets it


def at_work(stage: Stage, element: Element) -> tuple[Shape, ...]:
    """Who pushes with a force, nothing where a template tells of nobody."""
    told, tag = stage.depicts.forces.get(element.id), Tag(What.LOAD, element.id)
    way = stage.measured.direction_of(element)
    if way is None:
        return ()
    if told is Source.PEDAL:
        pad = stage.spot(element.at) - heading(way) * reach_of(stage, element)
        return (mechanical.pad(pad, heading(way), tag),)
    if told is Source.VALVE:
        pins = (e for e in stage.system.elements if e.kind is Kind.HINGE and e.body == element.body)
        pin = next((stage.spot(e.at) for e in pins), None)
        under = stage.spot(element.at) - 1j * stage.halves[element.body]
        return works.valve(under, pin, tag)
    if told is Source.BEARER:
        feet = _below_shoulder(stage, element)
        return person.bearing(feet, _stature(stage), 1, tag)
    if told is Source.HOLDER:
        return rod.pulling_hand(stage.spot(element.at), _from_beside(stage, element), tag)
    if told not in (Source.LIFTER, Source.BOOT):
        return ()
    spot, facing = stage.spot(element.at), 1 if heading(way).real >= 0.0 else -1
    if told is Source.LIFTER:
        return person.lifting(_feet(stage, element), spot, facing, tag)
    length = min(max(_BOOT * stage.scale, 9.0), 16.0)
    return person.boot(_toe(stage, element, facing), length, facing, tag)


def _from_beside(stage: Stage, element: Element) -> complex:
    """The unit step from a hand that holds a body up at its end to the elbow: out and down."""
    outline = [stage.spot(name) for name in stage.system.body(element.body).outline]
    middle = sum(outline, 0j) / len(outline)
    return heading(-40.0 if stage.spot(element.at).real > middle.real else -140.0)


def reach_of(stage: Stage, element: Element) -> float:
    """How far short of a body's axis the arrow of a force ends, as it acts through a pad or a
    spindle, pt; 0 where it acts on the body itself.
    """
    through = _THROUGH.get(stage.depicts.forces.get(element.id, Source.ARROW), 0.0)
    return through and through + stage.halves[element.body]


_ON_FEET: Final = (Source.LIFTER, Source.BEARER)


def underfoot(stage: Stage) -> list[Surface]:
    """The ground under those who hold something up."""
    found = []
    for element in stage.system.elements:
        told = stage.depicts.forces.get(element.id)
        known = told in _ON_FEET and stage.measured.direction_of(element) is not None
        match told if known else None:
            case Source.LIFTER:
                feet = _feet(stage, element)
                reach = _STRIDE * (stage.spot(element.at) - feet).imag / person.LIFTED
            case Source.BEARER:
                feet, reach = _below_shoulder(stage, element), _ELBOW * _stature(stage)
            case _:
                continue
        run = max(FACE, reach)
        found.append(Surface(feet, 90.0, run, run))
    return found


def _stature(stage: Stage) -> float:
    """How tall somebody is drawn who bears something, pt: to scale where that is not tiny."""
    return min(max(PERSON * stage.scale, SHORTEST), TALLEST)


def _below_shoulder(stage: Stage, element: Element) -> Spot:
    """Where somebody stands on whose shoulder a body lies at an element's point."""
    shoulder = stage.spot(element.at) - 1j * stage.halves[element.body]
    return shoulder - 1j * person.SHOULDER * _stature(stage)


def _toe(stage: Stage, element: Element, facing: int) -> Spot:
    """Where a boot meets a body's foot: on the ground there, clear of the body's edge."""
    spot, ways = stage.spot(element.at), stage.ways(element)
    rise = max(abs(ways[0].imag) / abs(ways[0]), _LEAST) if ways else 1.0
    floors = [e for e in _grounds(stage) if e.at == element.at and e.body == element.body]
    cut = any(stage.cut(floor, stage.normal(floor)) for floor in floors)
    half = stage.halves[element.body]
    below = max((stage.depth(floor, stage.normal(floor)) for floor in floors), default=0.0)
    return spot - facing * (half / rise if cut else half * rise) - 1j * below


def _grounds(stage: Stage) -> Iterator[Element]:
    """What is level ground under a body."""
    for element in stage.system.elements:
        rests = element.kind in (Kind.CONTACT, Kind.ROUGH) and not stage.is_inner(element)
        if rests and apart(stage.normal(element), 90.0) < 1.0:
            yield element


def _feet(stage: Stage, element: Element) -> Spot:
    """Where somebody stands who holds a body up at an element's point: on the ground that it
    touches, or on one of their own.
    """
    hands, way = stage.spot(element.at), stage.measured.direction_of(element)
    levels = [
        face.at.imag
        for other in _grounds(stage)
        for face in touching(stage, other).surfaces
        if apart(face.normal, 90.0) < 1.0 and face.at.imag < hands.imag
    ]
    reach = hands.imag - min(levels) if levels else PERSON * person.LIFTED * stage.scale
    aside = person.AHEAD * reach / person.LIFTED
    back = -1 if way is not None and heading(way).real >= 0.0 else 1
    return hands + complex(back * aside, -reach)
