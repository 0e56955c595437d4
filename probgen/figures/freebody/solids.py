"""The outlines a free-body diagram shows: of one body, or of several taken as one, in place."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from probgen.bank.depiction import Look
from probgen.figures.freebody.faces import on_faces
from probgen.figures.freebody.outline import rim_of
from probgen.figures.measured.survey import Survey
from probgen.figures.measured.vector import Vector, vectors
from probgen.figures.measured.wedge import Faced, faced, partners, pressed
from probgen.figures.paper.scene import Spot
from probgen.figures.situation.shape import ROUND, corners_of
from probgen.statics.system import Body, Kind
from probgen.statics.taken_as_one import Whole, made_of

_PINNED: Final = (Kind.HINGE, Kind.LINK)


@dataclass(frozen=True, slots=True)
class Solid:
    """A body as it is drawn.

    shape: of a wedge or of a block on one; at: where its middle is then, pt.
    """

    body: Body
    look: Look
    shape: Faced | None = None
    at: Spot = 0j

    def corners(self, measured: Survey, scale: float) -> list[Spot]:
        """Those of a solid, none of a bar or of what is round; scale: pt for each metre."""
        if self.shape:
            return [self.at + corner for corner in self.shape.corners]
        return [place * scale for place in corners_of(measured, self.body, self.look)]

    def outline(self, measured: Survey, scale: float) -> list[Spot]:
        """The spots its axis runs through, or its corners back to the first."""
        corners = self.corners(measured, scale)
        axis = [place * scale for place in measured.outline(self.body)]
        return [*corners, corners[0]] if corners else axis

    def kept_clear(self, measured: Survey, scale: float) -> list[Spot]:
        """What axes are not to lie in; none of a bar."""
        rim = rim_of(measured, self.body, self.look, scale)
        return self.corners(measured, scale) or rim

    def slender(self, measured: Survey) -> bool:
        """Whether it is drawn as a bar."""
        return not self.corners(measured, 1.0) and self.look not in ROUND


def solids_of(
    measured: Survey, body: Body, looks: Mapping[str, Look], wedges: Collection[str]
) -> tuple[Solid, ...]:
    """A body as it is drawn, or each that is taken as one in it; particles that have no faces are
    drawn as one.

    looks: what bodies are drawn as in their situation; wedges: those drawn as wedges.
    """
    bodies = [measured.system.body(id) for id in made_of(body)]
    plain = [Solid(each, looks.get(each.id, Look.BEAM)) for each in bodies]
    shaped = [
        replace(
            s, shape=faced(measured, s.body, s.look, wedges) or pressed(measured, s.body, s.look)
        )
        for s in plain
    ]
    if all(each.shape for each in shaped):
        return _face_to_face(measured, shaped)
    if isinstance(body, Whole) and body.particle:
        return (Solid(body, Look.BEAM),)
    return tuple(plain) if isinstance(body, Whole) else tuple(shaped)


def _face_to_face(measured: Survey, shaped: Sequence[Solid]) -> tuple[Solid, ...]:
    """Wedges and what is cut to them, each against one that has its place."""
    placed = {shaped[0].body.id: shaped[0]}
    waiting = list(shaped[1:])
    while waiting:
        found = next((s for each in waiting if (s := _beside(measured, each, placed))), waiting[0])
        placed[found.body.id] = found
        waiting = [each for each in waiting if each.body.id != found.body.id]
    return tuple(placed[each.body.id] for each in shaped)


def _beside(measured: Survey, solid: Solid, placed: Mapping[str, Solid]) -> Solid | None:
    for id, other in partners(measured, solid.body).items():
        near = placed.get(other.body)
        if near and near.shape and solid.shape:
            there = near.at + near.shape.faces[other.id].at
            return replace(solid, at=there - solid.shape.faces[id].at)
    return None


def pins_within(measured: Survey, body: Body) -> list[tuple[str, complex]]:
    """The pins that join bodies taken as one, each by what it is on one of them; not of particles.

    Bodies joined so may turn about each other yet: the pin is what one sees of that.
    """
    if not isinstance(body, Whole) or body.particle:
        return []
    on = {each.id: each for each in measured.system.elements if each.body in body.made_of}
    pins = [each for each in on.values() if each.kind in _PINNED and each.of in on]
    return [(pin.of, measured.places[pin.at]) for pin in pins]


def forces_on(measured: Survey, body: Body, solids: Sequence[Solid]) -> tuple[Vector, ...]:
    """The forces on a body the way they are assumed to act, at its faces where it has some."""
    found = vectors(measured, body)
    system, faces = measured.system, {each.body.id: each for each in solids if each.shape}
    if not faces:
        return found
    own = [faces[system.force(each.id).body if len(faces) > 1 else body.id] for each in found]
    return tuple(
        replace(placed, at=solid.at + placed.at)
        for vector, solid in zip(found, own, strict=True)
        if solid.shape
        for placed in on_faces(system, [vector], solid.shape)
    )
