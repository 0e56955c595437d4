"""Facts of a pile of papers, for the one who prints and deals them out."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.working.direction import Direction
from probgen.working.fact import Fact
from probgen.working.result import LimitNamed
from probgen.working.verdict import Verdict


@dataclass(frozen=True, slots=True)
class DirectionListed(Fact):
    """A direction in a narrow column, under a head that says what it is."""

    direction: Direction


@dataclass(frozen=True, slots=True)
class AnswerInTable(Fact):
    """An answer in words among a key's answers: its side, or how much is left, is on one line."""

    answer: Direction | LimitNamed | Verdict


@dataclass(frozen=True, slots=True)
class ProblemsCounted(Fact):
    problems: int
    points: int


@dataclass(frozen=True, slots=True)
class SolutionsInside(Fact):
    """A pile that no student may see."""


@dataclass(frozen=True, slots=True)
class PileOrder(Fact):
    by_seat: bool


@dataclass(frozen=True, slots=True)
class BothSides(Fact):
    """Papers to be printed on both sides, each from a right-hand page on."""


@dataclass(frozen=True, slots=True)
class DealtRowByRow(Fact):
    """How to deal papers so that no neighbours have one version: in the order of the seats."""


@dataclass(frozen=True, slots=True)
class DealtByList(Fact):
    """The same: each seat gets what the list of versions names."""


@dataclass(frozen=True, slots=True)
class DealtByRows(Fact):
    """The same: so many to a row."""

    row: int


@dataclass(frozen=True, slots=True)
class DealtInOrder(Fact):
    """The same, for those who sit beside each other."""


@dataclass(frozen=True, slots=True)
class SpareLast(Fact):
    spare: int


@dataclass(frozen=True, slots=True)
class Corrected(Fact):
    """What a paper has otherwise than the one before it; day: "2027-03-12"."""

    day: str
    what: str


@dataclass(frozen=True, slots=True)
class Released(Fact):
    """When students may have solutions; due: the date as it is printed, "" for none."""

    due: str
    exam: bool


@dataclass(frozen=True, slots=True)
class LargePrint(Fact):
    """Who has large print; names as the class list has them."""

    names: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class NeedsTold(Fact):
    """Who needs what besides: pairs of a name and a need, as the class list has them."""

    told: tuple[tuple[str, str], ...]
