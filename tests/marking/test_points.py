"""What a finding earns, and how a problem's points are shared among its answers."""

from __future__ import annotations

from decimal import Decimal

import pytest

from probgen.marking.asked import asked_of
from probgen.marking.finding import Finding
from probgen.marking.points import Policy, points_of
from tests.marking.test_asked import FIRST, IN_PARTS, NUMBERS, ONE_LIMIT
from tests.situations import HOLDS, SLIDES, STAYED_SHELF, TIPS, cabinet, worked


def test_what_nobody_could_read_has_no_points_yet_and_never_none_silently() -> None:
    assert Policy().earned(Finding.UNREAD, 8) is None
    assert Policy().earned(Finding.EMPTY, 8) == 0
    assert Policy().earned(Finding.CARRIED, 7) == 7
    assert Policy({Finding.UNIT: Decimal("0.25")}).earned(Finding.UNIT, 8) == 2


SHARED = [
    # T has a torque balance (7), its numbers (3) and the result (2), each part a balance and its
    # result (1 + 1); 4 of the diagram among 12, 2 and 2 are 3, 1/2 and 1/2
    (IN_PARTS, 20, {"T": 15, "R.x": 3, "R.y": 2}),
    # T 5 + 2 + 2; the size two balances with their results and its own 2; the direction 1; of the
    # diagram's 4 nine, six and one sixteenth
    (STAYED_SHELF, 20, {"T": 11, "R.magnitude": 8, "R.direction": 1}),
    # what leads to the limits stands before both, and whether they are kept is asked at the end
    (cabinet("60", **NUMBERS) + SLIDES + TIPS + HOLDS, 10, {"slides": 5, "tips": 5}),
    (FIRST, 10, {"P": 9, "P.limit": 1}),
    (ONE_LIMIT, 10, {"P": 10}),
    # one mark for each, and one for the diagram, which goes to the first of equals
    (STAYED_SHELF, 3, {"T": 2, "R.magnitude": 1, "R.direction": 0}),
]


@pytest.mark.parametrize(("text", "points", "expected"), SHARED)
def test_what_leads_to_an_answer_counts_with_it(
    text: str, points: int, expected: dict[str, int]
) -> None:
    problem, own = worked(text)
    assert points_of(problem, asked_of(problem, own), points) == expected
