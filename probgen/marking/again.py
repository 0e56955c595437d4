"""Marking again: whose points change, and by how much."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from decimal import Decimal
from typing import Final, NamedTuple

from probgen.marking.marks import Key, Row, points_shown


class Stood(NamedTuple):
    """How an answer stood before: its verdict in words, and the points that counted."""

    verdict: str
    counts: str


class Change(NamedTuple):
    """One answer that has other points or another verdict than before; by: points, more or less."""

    code: str
    id: str
    name: str
    problem: str
    answer: str
    typed: str
    verdict_before: str
    verdict: str
    before: str
    counts: str
    by: str


HEADINGS: Final = Change._fields


def changes(before: Mapping[Key, Stood], found: Iterable[Row]) -> Iterator[Change]:
    """What is not as it was, of answers that were marked before; in the order of the papers.

    A function of both markings alone.  An answer that was open, or is, counts as none.
    """
    for row in found:
        stood = before.get(row.key)
        if stood is None or stood == (row.verdict, row.counts):
            continue
        by = Decimal(row.counts or 0) - Decimal(stood.counts or 0)
        yield Change(
            row.code, row.id, row.name, row.problem, row.answer, row.typed,
            stood.verdict, row.verdict, stood.counts, row.counts, points_shown(by),
        )  # fmt: skip


class Moved(NamedTuple):
    """What a second marking did: papers whose sum is another, and the most taken and given."""

    papers: int
    least: Decimal
    most: Decimal


def moved(changed: Iterable[Change]) -> Moved:
    """The papers whose points change, with the largest loss and the largest gain of one."""
    sums: dict[str, Decimal] = {}
    for each in changed:
        sums[each.id] = sums.get(each.id, Decimal(0)) + Decimal(each.by)
    apart = [by for by in sums.values() if by]
    return Moved(len(apart), min(apart, default=Decimal(0)), max(apart, default=Decimal(0)))
