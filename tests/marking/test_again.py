"""Marking again: who changes, from what to what, and by how much."""

from __future__ import annotations

from decimal import Decimal

from probgen.marking.again import Moved, Stood, changes, moved
from probgen.marking.marks import Key
from tests.marking.test_marks import PAPERS, table


def stood(changed: dict[Key, Stood] | None = None) -> dict[Key, Stood]:
    before = {row.key: Stood(row.verdict, row.counts) for row in table(PAPERS)}
    return {**before, **(changed or {})}


def test_nothing_changes_where_all_is_marked_alike() -> None:
    assert list(changes(stood(), table(PAPERS))) == []
    assert moved([]) == Moved(0, Decimal(0), Decimal(0))


def test_whose_points_change_and_by_how_much() -> None:
    """The first paper's T was wrong before, the second's theta had 3 points; the third is open."""
    before = stood({
        ("1", "1", "T"): Stood("wrong", "0"),
        ("2", "2", "t"): Stood("a known slip", "3"),
        ("3", "1", "T"): Stood("right", "4"),
    })  # fmt: skip
    found = list(changes(before, table(PAPERS)))
    assert [(e.id, e.problem, e.answer, e.verdict_before, e.verdict, e.by) for e in found] == [
        ("1", "1", "T", "wrong", "right", "4"),
        ("2", "2", "t", "a known slip", "wrong", "-3"),
        ("3", "1", "T", "right", "to be read by a person", "-4"),
    ]
    assert moved(found) == Moved(3, Decimal(-4), Decimal(4))


def test_who_was_not_marked_before_does_not_change() -> None:
    assert list(changes({}, table(PAPERS))) == []
