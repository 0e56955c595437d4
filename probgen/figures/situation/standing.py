"""The person about a pelvis: on the leg of its joint, with the arm that leans on a stick."""

from __future__ import annotations

from probgen.bank.depiction import Look, Scenery, Source
from probgen.figures.paper.scene import Shape, Spot
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts.standing import CUT, Body
from probgen.figures.situation.stage import Stage

_TAG = Tag(What.SCENERY)


def standing(stage: Stage) -> Body | None:
    """The body that stands about a pelvis; None where a template tells of none."""
    if stage.depicts.about.get("scenery") is not Scenery.STANDING:
        return None
    for joint in stage.system.elements:
        if stage.is_joint(joint) and stage.look(joint.body) is Look.PELVIS:
            outline = stage.system.body(joint.body).outline
            at, cm = stage.spot(joint.at), stage.scale / 100.0
            outer, inner = ((stage.spot(outline[end]) - at).real for end in (0, -1))
            return Body(at, cm, 1 if inner > 0 else -1, abs(outer) / cm, abs(inner) / cm)
    return None


def broken_off(stage: Stage, spot: Spot) -> Spot | None:
    """Where what reaches down to the ground below a spot is broken off, as the legs of somebody who
    stands there are; None where nobody stands.
    """
    body = standing(stage)
    return complex(spot.real, body.joint.imag - CUT * stage.scale) if body else None


def beside_chest(stage: Stage, id: str) -> tuple[tuple[Spot, float], ...]:
    """Where the label of a body may lie that somebody stands about, with the way from there: on
    the side of the chest where no arm is.
    """
    body = standing(stage)
    if body is None or stage.look(id) is not Look.PELVIS:
        return ()
    away = 180.0 if body.inner > 0 else 0.0
    return tuple((body.at(body.middle - body.chest, up), away) for up in (33.0, 30.0, 36.0))


def drawn(stage: Stage) -> tuple[Shape, ...]:
    """The body's outline, and its arm to a stick."""
    body = standing(stage)
    if body is None:
        return ()
    forces = stage.system.elements
    leant = [e for e in forces if stage.depicts.forces.get(e.id) is Source.STICK]
    arms = [shape for each in leant for shape in body.arm(stage.spot(each.at), _TAG)]
    return *body.outline(_TAG), *arms
