"""Facts of an answer that was marked."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.mistakes.variant import Misstep
from probgen.working.convention import Turning
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class SlipsFound(Fact):
    """The ways that lead to the number typed, each of one slip or of two together."""

    ways: tuple[tuple[Misstep, ...], ...]
    turning: Turning


@dataclass(frozen=True, slots=True)
class KeyPartsAt(Fact):
    """The step of the key that a wrong working parts from it at; step: what is marked there."""

    step: Fact


@dataclass(frozen=True, slots=True)
class FollowsFromOwn(Fact):
    """Right with the student's own earlier answers."""


@dataclass(frozen=True, slots=True)
class NothingFollows(Fact):
    """Nothing follows from the student's own earlier answers."""


@dataclass(frozen=True, slots=True)
class ReadingsCounted(Fact):
    """In how many ways what was typed can be read, if not in one; of a direction its side lacks."""

    count: int
    is_direction: bool = False


@dataclass(frozen=True, slots=True)
class FewFigures(Fact):
    """Significant figures typed, fewer than asked for."""

    typed: int
    asked: int


@dataclass(frozen=True, slots=True)
class PointsChanged(Fact):
    """Points that a person has given by hand."""
