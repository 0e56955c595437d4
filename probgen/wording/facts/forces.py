"""Facts of the forces on a body."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.expression import Expression, Name
from probgen.statics.system import Kind
from probgen.working.direction import Way
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class ForcesHeading(Fact):
    body: str


@dataclass(frozen=True, slots=True)
class ForcesCounted(Fact):
    """How many forces and couples act on a body; each follows as a fact of its own."""

    body: str
    forces: int
    couples: int


@dataclass(frozen=True, slots=True)
class JointForce(Fact):
    """A force unknown in size and direction, by its components and which way each is taken.

    point: where it acts, "" on a particle.
    """

    element: str
    letter: Name
    parts: tuple[tuple[Expression, Way], ...]
    point: str


@dataclass(frozen=True, slots=True)
class JointReaction(Fact):
    """The same force on the second of two bodies; other: the first."""

    element: str
    other: str
    parts: tuple[tuple[Expression, Way], ...]
    point: str


@dataclass(frozen=True, slots=True)
class ForceNamed(Fact):
    """One force; part: as in `statics.system.Force`; point: where it acts, "" on a particle."""

    element: str
    kind: Kind
    part: str
    letter: Expression
    point: str
    way: Way


@dataclass(frozen=True, slots=True)
class CoupleNamed(Fact):
    couple: str
    moment: Expression


@dataclass(frozen=True, slots=True)
class SignsOpen(Fact):
    """Quantities that may come out negative, which then means the opposite way."""

    letters: tuple[Expression, ...]
