"""Points in whole numbers, alike for like work.

By hand: two torque balances of weight 5 and two of forces of weight 1 are due 3.33 and 0.67 of
eight points: 3 + 3 + 1 + 1.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from probgen.working.alike import Work, alike_shares, misfit

WHOLE_TORQUE = Work(("torque", "substitution", "result"), 5, False, True, True, True)
TORQUE = Work(("torque",), 3, False, True, True, False)
FORCE = Work(("force",), 1, False, True, True, True)
ASKED = Work(("force",), 1, True, True, True, True)
BALANCE = Work(("balance",), 2, False, True, True, False)
CONDITION = Work(("condition",), 1, False, True, False, True)
ELIMINATION = Work(("elimination",), 1, False, False, False, False)
RESULT = Work(("result",), 1, False, False, False, False)
MAGNITUDE = Work(("magnitude",), 1, True, False, False, False)
DIRECTION = Work(("direction",), 1, True, False, False, False)

SHARED = [
    (8, (WHOLE_TORQUE, FORCE, WHOLE_TORQUE, FORCE), (3, 1, 3, 1)),
    (7, (WHOLE_TORQUE, WHOLE_TORQUE), None),  # an odd number of points for two like works
    (7, (BALANCE, BALANCE, ELIMINATION, RESULT, RESULT), (2, 2, 1, 1, 1)),
    (8, (FORCE, FORCE, MAGNITUDE, DIRECTION), (2, 2, 2, 2)),
    (3, (FORCE, ASKED), (1, 2)),  # what is asked has a point for its number
    (5, (FORCE, ASKED), None),  # 2 and 3: the balance itself would be worth more
    (7, (FORCE, CONDITION, FORCE), (3, 1, 3)),  # not 2, 3, 2: a balance is no less
    (5, (TORQUE, RESULT, RESULT), (3, 1, 1)),
    (5, (TORQUE, WHOLE_TORQUE), (2, 3)),  # of three points two are for the equation, as of two
    (1, (FORCE, FORCE), None),
]


@pytest.mark.parametrize(("points", "works", "shares"), SHARED)
def test_like_work_earns_alike(
    points: int, works: tuple[Work, ...], shares: tuple[int, ...] | None
) -> None:
    assert alike_shares(points, works) == shares


def test_how_far_points_are_from_their_due() -> None:
    assert misfit((3, 1), (1, 1)) == 2
    assert misfit((3, 3, 1, 1), (5, 5, 1, 1)) == Fraction(4, 9)
