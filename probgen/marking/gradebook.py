"""Marks of papers as a gradebook takes them: a row a paper, headings as the department has them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import Final

from probgen.marking.form import Paper
from probgen.marking.marks import Row, points_shown

_TEXTS: Final = ("code", "id", "name", "section")
_SUMS: Final = ("sum", "percent", "open")
_PROBLEM: Final = re.compile(r"problem ([1-9]\d{0,2})")

Columns = Sequence[tuple[str, str]]
"""Headings, each with what stands below it: one of `SOURCES`, "problem 2", or "" for nothing."""
SOURCES: Final = (*_TEXTS, *_SUMS)


def is_source(text: str, problems: int) -> bool:
    """Whether a column can hold this, where a set has so many problems."""
    match = _PROBLEM.fullmatch(text)
    return text in ("", *SOURCES) or (match is not None and int(match[1]) <= problems)


@dataclass(frozen=True, slots=True)
class Total:
    """One paper's points: of each problem it has, by its place in the set from 1.

    most: of all of them; still_open: answers that a person has to decide yet.
    """

    paper: Paper
    problems: Mapping[int, Decimal]
    most: int
    still_open: int

    @property
    def points(self) -> Decimal:
        return sum(self.problems.values(), Decimal(0))

    def cell(self, source: str) -> str:
        """What stands in a column."""
        match source:
            case "code" | "id" | "name" | "section":
                return str(getattr(self.paper, source))
            case "sum":
                return points_shown(self.points)
            case "percent":
                part = 100 * self.points / self.most
                return points_shown(part.quantize(Decimal("0.1"), ROUND_HALF_UP))
            case "open":
                return str(self.still_open)
            case "":
                return ""
            case _:
                return points_shown(self.problems.get(int(source.removeprefix("problem "))))


def totals(papers: Iterable[Paper], found: Iterable[Row]) -> Iterator[Total]:
    """The points of those papers of which there are rows, in the papers' order."""
    own: dict[str, list[Row]] = {}
    for row in found:
        own.setdefault(row.id, []).append(row)
    for paper in papers:
        if answers := own.get(paper.id):
            problems: dict[int, Decimal] = {}
            for row in answers:
                place = int(row.problem)
                problems[place] = problems.get(place, Decimal(0)) + Decimal(row.counts or 0)
            most = sum(int(row.of) for row in answers)
            yield Total(paper, problems, most, sum(not row.counts for row in answers))


def usual_columns(points: Sequence[int]) -> Columns:
    """The columns of a table of marks, where nobody has chosen others; points: of each problem."""
    return (
        *((name, name) for name in ("code", "id", "name")),
        *((f"problem {n} of {most}", f"problem {n}") for n, most in enumerate(points, start=1)),
        (f"sum of {sum(points)}", "sum"),
        ("still open", "open"),
    )


def gradebook(papers: Iterable[Total], columns: Columns) -> tuple[list[str], list[list[str]]]:
    """The headings, and a row a paper."""
    heads = [heading for heading, _ in columns]
    return heads, [[each.cell(source) for _, source in columns] for each in papers]


def numbered(columns: Columns) -> list[str]:
    """The headings of the columns that hold numbers."""
    return [heading for heading, source in columns if source not in ("", *_TEXTS)]
