"""Rows of marks: verdicts in words, what explains them, what a person has to look at, sums."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal

import pytest

from probgen.marking.asked import asked_of
from probgen.marking.form import Paper, Place
from probgen.marking.judged import judged
from probgen.marking.marks import Answered, Key, Marked, Row, rows, to_look_at
from probgen.marking.policy import Policy
from tests.situations import HUNG_ASIDE, worked


def marked(*papers: tuple[str, str]) -> tuple[Marked, ...]:
    """Papers with T (4 points) and theta (6 points) as typed, the same problem twice."""
    problem, own = worked(HUNG_ASIDE)
    asked = asked_of(problem, own)
    told = [
        {each.id: {Place.NUMBER: text} for each, text in zip(asked, typed, strict=True)}
        for typed in papers
    ]
    found = judged(problem, [own] * len(papers), told, 10, Policy())
    return tuple(
        Marked(
            Paper(f"code-{n}", str(n), f"Student {n}", str(n)),
            tuple(Answered(place, problem, own.draw, own.answers, answers) for place in (1, 2)),
        )
        for n, answers in enumerate(found, start=1)
    )


def table(papers: Sequence[Marked], changed: Mapping[Key, Decimal] | None = None) -> list[Row]:
    return list(rows(papers, changed or {}))


PAPERS = marked(("19.6", "30"), ("9.0", "40"), ("a", "30.04 kg"), ("1,234", "3e1"))


FEW = "It has two significant figures; 3 are asked for."


def test_a_row_for_each_answer_of_each_problem() -> None:
    found = table(PAPERS)
    assert [row.key for row in found[:4]] == [
        ("1", "1", "T"), ("1", "1", "t"), ("1", "2", "T"), ("1", "2", "t"),
    ]  # fmt: skip
    assert len(found) == 16
    assert found[1] == Row(
        "code-1", "1", "Student 1", "1", "t", "30", "30.0°", "right", FEW, "2", "6", "", "6", "6"
    )


BALANCE = "T from the balance on the counterweight along y (unit)"
STEP = f"Compare with the key from here on: {BALANCE}."
NOTHING = "Nothing follows from the earlier answers as they stand."
EXPLAINED = [
    (0, "T", "right", "", ""),
    (0, "t", "right", FEW, "2"),  # "30" shows two figures of three
    (1, "T", "wrong", f"{STEP} {FEW}", "2"),
    (1, "t", "wrong", f"{NOTHING} {FEW}", "2"),
    (2, "T", "to be read by a person", "It could not be read.", ""),
    (2, "t", "unit wrong", "", ""),
    (3, "T", "to be read by a person", "It can be read in 2 ways.", ""),
    (3, "t", "right", "It has one significant figure; 3 are asked for.", "1"),
]


@pytest.mark.parametrize(("paper", "answer", "verdict", "explained", "figures"), EXPLAINED)
def test_what_is_told_of_an_answer(
    paper: int, answer: str, verdict: str, explained: str, figures: str
) -> None:
    row = next(row for row in table(PAPERS[paper : paper + 1]) if row.answer == answer)
    assert (row.verdict, row.explained, row.figures) == (verdict, explained, figures)


def test_a_slip_is_told_as_the_key_tells_it() -> None:
    (row, *_) = table(marked(("2.00", "30")))  # M instead of M g
    assert row.verdict == "a known slip"
    assert "mass" in row.explained


def test_points_changed_by_hand_count_in_the_place_of_the_others() -> None:
    found = table(PAPERS, {("3", "1", "T"): Decimal("1.50"), ("1", "2", "T"): Decimal(0)})
    counts = {row.key: (row.points, row.changed, row.counts) for row in found}
    assert counts["3", "1", "T"] == ("", "1.5", "1.5")
    assert counts["3", "2", "T"] == ("", "", "")
    assert counts["1", "2", "T"] == ("4", "0", "0")
    assert counts["1", "1", "T"] == ("4", "", "4")


def test_a_person_looks_at_what_is_unread_or_follows_from_nothing_until_it_is_decided() -> None:
    open_ones = [("2", "t"), ("3", "T"), ("4", "T")]
    looked = [row.key for row in to_look_at(table(PAPERS), PAPERS)]
    assert looked == [(id, n, answer) for id, answer in open_ones for n in "12"]
    found = table(PAPERS, {("2", "1", "t"): Decimal(6)})
    assert [row.key for row in to_look_at(found, PAPERS)] == looked[1:]
