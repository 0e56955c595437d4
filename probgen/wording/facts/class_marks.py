"""Facts of a class that was marked, for its instructor."""

from __future__ import annotations

from dataclasses import dataclass, field

from probgen.mistakes.variant import Misstep
from probgen.wording.nouns import NO_NOUNS, Nouns
from probgen.working.convention import Turning
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class ItemAsked(Fact):
    """One thing asked, by its problem's number and its id.

    nouns: of that problem, where what is said of a whole class concerns several.
    """

    problem: int
    answer: str
    nouns: Nouns = field(default=NO_NOUNS, compare=False, repr=False)


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

    items: tuple[ItemAsked, ...]
    part: float


@dataclass(frozen=True, slots=True)
class ItemAgainst(Fact):
    """An item that papers do worse on which are good otherwise."""

    item: ItemAsked
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
    item: ItemAsked
    ratio: float
    low: float
    high: float
    large: bool
    comparisons: int


@dataclass(frozen=True, slots=True)
class ValueMatters(Fact):
    """Points of a problem that go with the value of a given; nouns: of the problem."""

    problem: int
    given: str
    correlation: float
    p: float
    nouns: Nouns = field(default=NO_NOUNS, compare=False, repr=False)


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
