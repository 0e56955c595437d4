"""Facts about what acts inside a body, as it is drawn along it."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.expression import Number
from probgen.statics.internal_forces import Inside
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class DiagramHeading(Fact):
    """drawn: which of the three."""

    drawn: tuple[Inside, ...]


@dataclass(frozen=True, slots=True)
class DiagramRead(Fact):
    """How each of the three changes along a body, and which way it is drawn."""

    body: str
    drawn: tuple[Inside, ...]


@dataclass(frozen=True, slots=True)
class LargestInside(Fact):
    """The largest of a kind, up or down, and where.

    at: the point it is at, "" where there is none; distance: from the point `start` otherwise.
    level: whether it is where the shear force passes through zero.
    """

    of: Inside
    value: Number
    at: str
    distance: Number
    start: str
    level: bool


@dataclass(frozen=True, slots=True)
class InsideShown(Fact):
    """A diagram for those who cannot see it: the values of each, in the order of x."""

    body: str
    values: tuple[tuple[Inside, tuple[Number, ...]], ...]
