"""Marks of a class as rows: a row an answer, a row a paper, and what a person has to look at."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final, NamedTuple

from probgen.marking.finding import Finding
from probgen.marking.form import Paper
from probgen.marking.judged import Judged
from probgen.problem.problem import Problem, Worked
from probgen.statics.quantity_id import Quantity
from probgen.wording.slip import tell_wrong

Key = tuple[str, str, str]
"""Whose answer it is: the student's id, the problem's number, the answer's id."""
Changed = Mapping[Key, Decimal]
"""Points that a person has given by hand."""


@dataclass(frozen=True, slots=True)
class Marked:
    """One paper judged: for each problem how it was worked, and its answers."""

    paper: Paper
    problems: tuple[tuple[Problem, Worked, tuple[Judged, ...]], ...]


class Row(NamedTuple):
    """One answer: verdict, points it earns by rule, points changed by hand, points that count."""

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

    @property
    def key(self) -> Key:
        return self.id, self.problem, self.answer


HEADINGS: Final = Row._fields
NUMBERS: Final = ("problem", "points", "changed", "counts", "of")


def rows(marked: Iterable[Marked], changed: Changed) -> Iterator[Row]:
    """A row for each answer of each paper."""
    for each in marked:
        for number, (problem, own, answers) in enumerate(each.problems, start=1):
            for answer in answers:
                yield _row(each.paper, str(number), (problem, own), answer, changed)


def _row(
    paper: Paper, number: str, told: tuple[Problem, Worked], own: Judged, changed: Changed
) -> Row:
    problem, worked = told
    by_hand = changed.get((paper.id, number, own.asked.id))
    counts = own.points if by_hand is None else by_hand
    return Row(
        paper.code, paper.id, paper.name, number, own.asked.id, own.stated.text, own.asked.printed,
        dict(problem.language.page.verdicts)[own.finding], _explained(problem, worked, own),
        _figures(problem, own), _points(own.points), _points(by_hand), _points(counts),
        str(own.most),
    )  # fmt: skip


def _points(points: Decimal | None) -> str:
    return "" if points is None else f"{points.normalize():f}"


def _explained(problem: Problem, worked: Worked, own: Judged) -> str:
    """The slips in the key's words, and what stands in the way of carrying forward."""
    only, words = own.stated.only, dict(problem.language.page.verdicts)
    told = []
    if only is not None and own.slips:
        of = worked.case.system.asked.get(own.asked.id, Quantity(own.asked.id))
        for way in own.slips:
            fact = tell_wrong(of, only.value, way.slips, worked.digits)
            told.append(problem.tell(fact))
    if own.impossible:
        told.append(words["impossible"])
    if own.finding is Finding.UNREAD:
        told.append(f"{len(own.stated.readings)} {words['readings']}")
    return " or ".join(told)


def _figures(problem: Problem, own: Judged) -> str:
    """Significant figures, where fewer were typed than the course asks for."""
    only = own.stated.only
    if only is None or not only.figures[1]:
        return ""
    few = only.figures[1] < problem.convention.figures
    return str(only.figures[1]) if few else ""


def to_look_at(found: Iterable[Row], marked: Iterable[Marked]) -> Iterator[Row]:
    """What a person has to decide, and has not yet."""
    open_ones = {
        (each.paper.id, str(number), own.asked.id)
        for each in marked
        for number, (_, _, answers) in enumerate(each.problems, start=1)
        for own in answers
        if own.finding is Finding.UNREAD or own.impossible
    }
    return (row for row in found if row.key in open_ones and not row.changed)


def summary(found: Sequence[Row], points: Sequence[int]) -> tuple[list[str], list[list[str]]]:
    """A row a paper: points of each problem, their sum, and how many answers are still open.

    points: of each problem.
    """
    heads = ["code", "id", "name"]
    heads += [f"problem {n} of {most}" for n, most in enumerate(points, start=1)]
    papers: dict[tuple[str, str, str], list[Row]] = {}
    for row in found:
        papers.setdefault((row.code, row.id, row.name), []).append(row)
    table = []
    for own, answers in papers.items():
        sums = [
            sum(
                (Decimal(r.counts) for r in answers if r.problem == str(n) and r.counts), Decimal(0)
            )
            for n in range(1, len(points) + 1)
        ]
        still = sum(not row.counts for row in answers)
        table.append([*own, *map(_points, sums), _points(sum(sums, Decimal(0))), str(still)])
    return [*heads, f"sum of {sum(points)}", "still open"], table
