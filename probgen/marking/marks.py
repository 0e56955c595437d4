"""Marks of a class as rows: a row an answer, and what a person has to look at."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache
from typing import Final, NamedTuple

from probgen.draws.draw import Draw
from probgen.marking.finding import Finding
from probgen.marking.form import Paper
from probgen.marking.judged import Judged
from probgen.marking.told import facts_of, likeness
from probgen.problem.problem import Problem
from probgen.wording.answer import Answer

Key = tuple[str, str, str]
"""Whose answer it is: the student's id, the problem's number, the answer's id."""
Changed = Mapping[Key, Decimal]
"""Points that a person has given by hand."""


class Given(NamedTuple):
    """Points that a person gave by hand, and what was typed where they gave them."""

    points: str
    typed: str


class Answered(NamedTuple):
    """One problem of a paper: its place in the set, from 1, its numbers, its answers as judged.

    right: the answers as its key prints them.
    """

    place: int
    problem: Problem
    draw: Draw
    right: tuple[Answer, ...]
    answers: tuple[Judged, ...]


@dataclass(frozen=True, slots=True)
class Marked:
    """One paper judged."""

    paper: Paper
    problems: tuple[Answered, ...]


class Row(NamedTuple):
    """One answer: verdict, points it earns by rule, points changed by hand, points that count.

    given, given_for: points by hand for what was typed before, which is another answer by now.
    """

    code: str
    id: str
    name: str
    problem: str
    answer: str
    typed: str
    right: str
    verdict: str
    explained: str
    figures: str
    points: str
    changed: str
    counts: str
    of: str
    given: str = ""
    given_for: str = ""

    @property
    def key(self) -> Key:
        return self.id, self.problem, self.answer


HEADINGS: Final = Row._fields
NUMBERS: Final = ("problem", "points", "changed", "counts", "of", "given")


def rows(
    marked: Iterable[Marked], changed: Changed, outdated: Mapping[Key, Given] | None = None
) -> Iterator[Row]:
    """A row for each answer of each paper.

    outdated: points that were given by hand to other answers; those rows count nothing yet.
    """
    told: dict[Hashable, str] = {}
    for each in marked:
        for answered in each.problems:
            for answer in answered.answers:
                alike = answered.place, likeness(answer)
                if alike not in told:
                    told[alike] = _told(answered.problem, answer)
                row = _row(each.paper, answered, answer, changed, told[alike])
                given = (outdated or {}).get(row.key)
                yield row._replace(counts="", given=given[0], given_for=given[1]) if given else row


def _told(problem: Problem, own: Judged) -> str:
    return " ".join(problem.tell(fact) for fact in facts_of(problem, own))


def _row(paper: Paper, at: Answered, own: Judged, changed: Changed, told: str) -> Row:
    number, page = str(at.place), at.problem.language.page
    by_hand = changed.get((paper.id, number, own.asked.id))
    counts = own.points if by_hand is None else by_hand
    figures = str(own.stated.only.figures[1]) if own.few_figures and own.stated.only else ""
    return Row(
        paper.code, paper.id, paper.name, number, own.asked.id, own.stated.text, own.asked.printed,
        dict(page.verdicts)[own.finding], told, figures,
        points_shown(own.points), points_shown(by_hand), points_shown(counts), str(own.most),
    )  # fmt: skip


@lru_cache(1000)
def points_shown(points: Decimal | None) -> str:
    """Points without zeros at their end; nothing for none yet."""
    return "" if points is None else f"{points.normalize():f}"


def to_look_at(found: Iterable[Row], marked: Iterable[Marked]) -> Iterator[Row]:
    """What a person has to decide, and has not yet."""
    open_ones = {
        (each.paper.id, str(at.place), own.asked.id)
        for each in marked
        for at in each.problems
        for own in at.answers
        if own.most and (own.finding is Finding.UNREAD or own.impossible)
    }
    return (row for row in found if (row.key in open_ones or row.given) and not row.changed)
