"""What free-body diagrams show, and how long the arrows of all of them are in proportion."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain
from typing import Final, Literal

from probgen.bank.labels import Labels
from probgen.figures.freebody.arrows import particle_radius
from probgen.figures.freebody.corner import Frame
from probgen.figures.freebody.lengths import Lengths
from probgen.figures.freebody.solids import Solid
from probgen.figures.measured.survey import Survey
from probgen.figures.measured.vector import ArrowScale, Vector, pair_marks, resultant
from probgen.statics.system import Body
from probgen.working.fact import Tell

_LEAST_LARGEST: Final = 0.6  # of the largest force, the largest in a diagram that is to scale

Sense = Literal["counter-clockwise", "clockwise"]

Joints = Mapping[Vector, tuple[Vector, ...]]
"""The forces of joints that are drawn whole, and the components of each."""


@dataclass(frozen=True, slots=True)
class Shown:
    """What a diagram shows.

    solids: what is drawn of the body; parted: with the components of slanting forces; distorted:
    its lengths are not to scale.
    """

    measured: Survey
    body: Body
    solids: tuple[Solid, ...]
    forces: tuple[Vector, ...]
    lengths: Lengths
    frame: Frame
    pivot: str
    tell: Tell
    positive: Sense
    parted: bool
    distorted: bool

    @property
    def faced(self) -> bool:
        """Whether wedges or blocks on them are drawn, whose faces the forces are at, in pt."""
        return any(each.shape for each in self.solids)

    @property
    def marks(self) -> dict[str, int]:
        """How many strokes mark each force as one of a pair, by its id."""
        return pair_marks(self.measured.system)


@dataclass(frozen=True, slots=True)
class Sized:
    """The forces a diagram has arrows of, and how long these are.

    radius: of a particle's ring, pt, the same in all the diagrams of a key.
    """

    single: tuple[Vector, ...]
    joints: Joints
    lengths: ArrowScale
    radius: float


def in_proportion(shown: Sequence[Shown], share: float) -> tuple[Sized, ...]:
    """The arrows of several diagrams to one scale, by which action and reaction are of one length.

    share: how long they are, of their usual length.
    """
    joints = [_joints(each) for each in shown]
    lengths = _scale(shown, joints, share)
    # A joint's force is drawn whole where its components can be seen beside it.
    joints = [
        {whole: legs for whole, legs in each.items() if lengths.shows_legs(whole, legs)}
        for each in joints
    ]
    lengths = _scale(shown, joints, share)
    arrows = [(_singles(each, own), own) for each, own in zip(shown, joints, strict=True)]
    particles = [len(each.body.outline) < 2 and not each.faced for each in shown]
    radius = max(
        (
            particle_radius((*a, *b))
            for (a, b), small in zip(arrows, particles, strict=True)
            if small
        ),
        default=particle_radius(()),
    )
    return tuple(Sized(single, own, lengths, radius) for single, own in arrows)


def _scale(shown: Sequence[Shown], joints: Sequence[Joints], share: float) -> ArrowScale:
    """The one scale for all that is shown, some of it as the forces of joints; not a linear one if
    all the arrows of a diagram would be short by it.
    """
    drawn = [(*_singles(each, own), *own) for each, own in zip(shown, joints, strict=True)]
    parted = [
        vector
        for each, own in zip(shown, joints, strict=True)
        for vector in _singles(each, own)
        if each.parted and vector.slants
    ]
    lengths = ArrowScale.of(chain(*drawn), parted, share)
    most = [max((vector.size for vector in own), default=lengths.largest) for own in drawn]
    seen = all(size >= _LEAST_LARGEST * lengths.largest for size in most)
    return replace(lengths, linear=lengths.linear and seen)


def _joints(shown: Shown) -> Joints:
    """The force of each joint that acts as its two components are assumed, and these."""
    marks, found = shown.marks, dict[str, list[Vector]]()
    for vector in shown.forces:
        if vector.part.is_component and vector.id not in marks:
            found.setdefault(vector.element, []).append(vector)
    labels: Labels = shown.measured.labels
    return {
        resultant(labels.whole(id), legs): tuple(legs)
        for id, legs in found.items()
        if len(legs) == 2 and all(leg.sign > 0 for leg in legs)
    }


def _singles(shown: Shown, joints: Joints) -> tuple[Vector, ...]:
    """The forces that are not drawn as the components of a joint's."""
    legs = {leg.id for each in joints.values() for leg in each}
    return tuple(vector for vector in shown.forces if vector.id not in legs)
