"""Muscles in a situation: from where they are fixed to their far end, or as far as they come over
their joint.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from probgen.bank.depiction import Hinge
from probgen.figures.paper.scene import HEAVY, Spot, heading, line
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import limb
from probgen.figures.situation.drawn_line import Line
from probgen.figures.situation.hip import muscle_end
from probgen.figures.situation.shape import beyond
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Element, Kind

_BONE: Final = 5.0  # from a bone's axis to what is fixed to it, pt


def muscle_of(stage: Stage, element: Element) -> Iterator[Line]:
    """A muscle to where it is fixed, or as far as it comes over its joint."""
    start, tag = stage.spot(element.at), Tag(What.MUSCLE, element.id)
    direction = stage.measured.direction_of(element)
    if stage.has_far_end(element):
        end = stage.spot(element.toward)
    elif direction is None:
        return
    else:
        knee = _knee(stage, element)
        if knee is not None and heading(direction).real * (knee - start).real > 0:
            yield _over_knee(stage, element, start, heading(direction), knee)
            return
        end = start + heading(direction) * _muscle_reach(stage, element, start, direction)
    yield Line(limb.muscle(start, end, tag), element.id, (start, end))


def _knee(stage: Stage, element: Element) -> Spot | None:
    """The knee that a muscle's body turns about, where it is one."""
    for hinge in stage.system.elements:
        own = hinge.kind == Kind.HINGE and hinge.body == element.body
        if own and stage.depicts.hinges.get(hinge.id) is Hinge.KNEE:
            return stage.spot(hinge.at)
    return None


def _over_knee(stage: Stage, element: Element, start: Spot, unit: complex, knee: Spot) -> Line:
    """The tendon below the knee, the kneecap it ends at, and the muscle along the thigh."""
    tag = Tag(What.MUSCLE, element.id)
    cap = start + unit * abs((knee - start).real / unit.real) * 0.86
    thigh = beyond(stage.look(element.body), Hinge.KNEE, 0.0)  # level
    origin = knee + 0.95 * thigh + (8j if cap.imag > knee.imag else -8j)
    tendon = line(start, cap, HEAVY, tag)
    shapes = (*limb.muscle(cap, origin, tag), tendon, *limb.patella(cap, unit, tag))
    return Line(shapes, element.id, (start, cap))


def _bone(stage: Stage, element: Element) -> tuple[Spot, complex] | None:
    """The elbow that a muscle's body turns about, and the way from it to where the bone beyond is
    broken off (pt).
    """
    for hinge in stage.system.elements:
        told, look = stage.depicts.hinges.get(hinge.id), stage.look(element.body)
        if hinge.kind is Kind.HINGE and hinge.body == element.body and told is Hinge.ELBOW:
            return stage.spot(hinge.at), beyond(look, told, stage.size(element.body))
    return None


def _along(start: Spot, unit: complex, joint: Spot, bone: complex) -> float | None:
    """How far (pt) a muscle goes to the bone, or beside it as far as that is drawn; a muscle that
    pulls has no corner.  None where it goes away from it.
    """
    place, step = (start - joint) / bone, unit / bone  # along the bone and across it, as 1 is long
    if step.real <= 0.0:
        return None
    if step.imag * place.imag < 0.0:
        met = (abs(place.imag) - _BONE / abs(bone)) / abs(step.imag)
        if met > 0.0 and place.real + met * step.real <= 1.0:
            return met
    return (1.0 - place.real) / step.real


def _muscle_reach(stage: Stage, element: Element, start: Spot, direction: float) -> float:
    """How long a muscle is drawn that runs to no named point, pt."""
    if end := muscle_end(stage, element.body):
        return abs(end - start)
    bone = _bone(stage, element)
    along = _along(start, heading(direction), *bone) if bone else None
    if along is not None:
        return along
    reach, unit = 0.55 * stage.size(element.body), heading(direction)
    for joint in filter(stage.is_joint, stage.system.elements):
        across = (stage.spot(joint.at) - start).real
        if across * unit.real > 0 and abs(unit.real) * reach > abs(across) - 4.0:
            reach = max((abs(across) - 4.0) / abs(unit.real), 16.0)
    return reach
