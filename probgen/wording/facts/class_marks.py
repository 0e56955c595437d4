"""Facts of a class that was marked, for its instructor.

Items are told as pairs of a problem's number and the id of what is asked.
"""

from __future__ import annotations

from dataclasses import dataclass

from probgen.mistakes.variant import Misstep
from probgen.working.convention import Turning
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class AlphaFound(Fact):
    """Cronbach's alpha of so many items on so many papers."""

    alpha: float
    items: int
    papers: int


@dataclass(frozen=True, slots=True)
class PapersLeftOut(Fact):
    """Papers with answers that a person has to decide yet, which sums are not told of."""

    papers: int


@dataclass(frozen=True, slots=True)
class ItemsHard(Fact):
    """Items that earn less than a part of their points, on average."""

    items: tuple[tuple[int, str], ...]
    part: float


@dataclass(frozen=True, slots=True)
class ItemAgainst(Fact):
    """An item that papers do worse on which are good otherwise."""

    problem: int
    answer: str
    correlation: float


@dataclass(frozen=True, slots=True)
class VersionsAlike(Fact):
    """Versions that differ by no more than chance; least: points that would likely be seen."""

    versions: tuple[str, ...]
    p: float
    least: float


@dataclass(frozen=True, slots=True)
class VersionsDiffer(Fact):
    """Versions that differ by more than chance; apart: points between the means of two."""

    versions: tuple[str, ...]
    p: float
    hardest: str
    easiest: str
    apart: float


@dataclass(frozen=True, slots=True)
class ItemEasierOn(Fact):
    """An item that is easier or harder on one version, for papers as good otherwise.

    ratio: of the odds of full marks, low to high by 95 %; comparisons: how many were made.
    """

    version: str
    problem: int
    answer: str
    ratio: float
    low: float
    high: float
    large: bool
    comparisons: int


@dataclass(frozen=True, slots=True)
class ValueMatters(Fact):
    """Points of a problem that go with the value of a given."""

    problem: int
    given: str
    correlation: float
    p: float


@dataclass(frozen=True, slots=True)
class SlipCounted(Fact):
    """A slip, or two together, in one problem, and how many papers have it."""

    slips: tuple[Misstep, ...]
    turning: Turning
    problem: int
    papers: int


@dataclass(frozen=True, slots=True)
class StepCounted(Fact):
    """A step of one problem's key, and how many papers part from the key there."""

    step: Fact
    problem: int
    papers: int
