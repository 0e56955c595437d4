"""Figures in facts: what each shows, for those who cannot see it, and what is printed in it."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.expression import Name
from probgen.statics.system import Kind
from probgen.working.direction import Way
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class Acting(Fact):
    """What acts on a body, and at which point; at: "" where the body has no extent."""

    element: str
    kind: Kind
    at: str


@dataclass(frozen=True, slots=True)
class BodyShown(Fact):
    """A body of a situation, what holds it and what loads it."""

    body: str
    holds: tuple[Acting, ...]
    loads: tuple[Acting, ...]


@dataclass(frozen=True, slots=True)
class SituationShown(Fact):
    bodies: tuple[BodyShown, ...]


@dataclass(frozen=True, slots=True)
class ForceShown(Fact):
    """An arrow of a free-body diagram; at: "" where the body has no extent."""

    letter: Name
    at: str
    way: Way


@dataclass(frozen=True, slots=True)
class DiagramShown(Fact):
    """bodies: the body, or those taken as one."""

    bodies: tuple[str, ...]
    forces: tuple[ForceShown, ...]


@dataclass(frozen=True, slots=True)
class BodyNamed(Fact):
    """Whose free-body diagram one of several is; bodies: as in `DiagramShown`."""

    bodies: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ScaleNoted(Fact):
    """Which sizes of a figure are to scale; arrows: None where there are none to be compared.

    turned: whether a force acts the opposite way to its arrow, which is then as long, and no more.
    """

    lengths: bool
    arrows: bool | None = None
    turned: bool = False


@dataclass(frozen=True, slots=True)
class NorthMarked(Fact):
    """Where north is, of what is seen from above."""


@dataclass(frozen=True, slots=True)
class PairsNoted(Fact):
    """What strokes across arrows mark: action and reaction."""
