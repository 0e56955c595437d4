"""The bones about the hip joint of a body drawn as a pelvis, and where its muscle ends on them."""

from __future__ import annotations

from probgen.bank.depiction import Look, Scenery
from probgen.figures.paper.scene import Spot, heading
from probgen.figures.parts.hip import TROCHANTER, Hip
from probgen.figures.situation.stage import Stage
from probgen.statics.system import Kind


def hip_of(stage: Stage, body: str) -> Hip | None:
    """The hip that a body is; None where a template asks for none."""
    if stage.depicts.about.get("scenery") is not Scenery.HIP_BONES:
        return None
    for hinge in stage.system.elements:
        if hinge.kind is Kind.HINGE and hinge.body == body and stage.look(body) is Look.PELVIS:
            outline, cm = stage.system.body(body).outline, stage.scale / 100.0
            outer, inner = (stage.spot(outline[end]) - stage.spot(hinge.at) for end in (0, -1))
            side = 1 if inner.real > 0 else -1
            return Hip(stage.spot(hinge.at), cm, side, abs(outer.real) / cm, abs(inner.real) / cm)
    return None


def muscle_end(stage: Stage, body: str) -> Spot | None:
    """Where a muscle that pulls a hip's pelvis down ends on the thigh bone."""
    hip = hip_of(stage, body)
    for muscle in stage.system.elements if hip else ():
        way = stage.measured.direction_of(muscle) if muscle.kind is Kind.MUSCLE else None
        if hip and muscle.body == body and way is not None and heading(way).imag < -0.1:
            start, unit = stage.spot(muscle.at), heading(way)
            fall = start.imag - hip.at(0.0, -TROCHANTER).imag
            return start - unit * fall / unit.imag
    return None
