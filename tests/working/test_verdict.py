"""Limits judged.  By hand, the cabinet: mu N = 147 N, tipping at 153.1 N (pushed at 0.80 m)."""

from __future__ import annotations

import pytest

from probgen.quantities.printing import plain
from probgen.quantities.unit import FORCE, LENGTH
from probgen.statics.state import utmost_finds
from probgen.working.convention import Convention
from probgen.working.result import ResultKind
from probgen.working.verdict import at_limit, governing, side_dimension, verdict_on
from tests.situations import HOLDS, SLIDES, TIPS, cabinet, finding, worked

LEAST = '[[limit]]\nid = "least"\nthat = "N >= 500 N"\nname = "it stands too lightly"\n'


def text(push: str = "", height: str = "0.80") -> str:
    return cabinet(push, m="50.0", b="0.50", h=height, mu="0.30")


JUDGED = [
    ("slides", "120", True, "27.0 N", True),
    ("slides", "160", False, "13.0 N", True),
    ("slides", "147.0", True, "0 N", True),  # just reached is kept
    ("least", "120", False, "10.0 N", False),
    ("tips", "150", True, "0.00510 m", True),  # x = 0.25 m + 150 N x 0.80 m/490 N
]


@pytest.mark.parametrize(("limit", "push", "kept", "margin", "most"), JUDGED)
def test_whether_a_limit_is_kept_and_by_how_much(
    limit: str, push: str, kept: bool, margin: str, most: bool
) -> None:
    _, own = worked(text(push) + SLIDES + TIPS + LEAST + HOLDS)
    judged = next(each for each in own.case.system.limits if each.id == limit)
    verdict = verdict_on(own.digits, judged)
    assert (verdict.kept, verdict.most) == (kept, most)
    if push == "147.0":
        assert abs(verdict.margin.value) < 1e-9
    else:
        assert float(verdict.margin.value) == pytest.approx(float(margin.split()[0]), rel=1e-3)
        assert plain(verdict.margin).endswith(margin.split()[1])


@pytest.mark.parametrize(("push", "value"), [("120", 1.0), ("160", 0.0)])
def test_a_program_reads_one_for_a_limit_that_is_kept_and_else_none(
    push: str, value: float
) -> None:
    _, own = worked(text(push) + SLIDES + HOLDS)
    (answer,) = [each for each in own.answers if each.kind is ResultKind.VERDICT]
    assert (answer.id, answer.value) == ("slides", value)


def test_the_margin_has_the_course_s_figures() -> None:
    _, own = worked(text("120") + SLIDES + HOLDS, Convention(figures=4))
    (limit,) = own.case.system.limits
    assert plain(verdict_on(own.digits, limit).margin) == "27.00 N"


@pytest.mark.parametrize(("height", "first"), [("0.80", "slides"), ("1.00", "tips")])
def test_the_limit_reached_first_governs(height: str, first: str) -> None:
    _, own = worked(text(height=height) + SLIDES + TIPS + finding("P", "largest"))
    assert governing(own.case, utmost_finds(own.case.system)[0]).id == first


def test_the_same_data_at_each_limit() -> None:
    """147 N where it slides; 490 N x 0.50 m/(2 x 0.80 m) = 153.1 N where it tips, with x = b."""
    _, own = worked(text() + SLIDES + TIPS + finding("P", "largest"))
    slides, tips = (at_limit(own.digits, branch) for branch in own.case.plan.branches)
    assert slides.case.values["P"] == pytest.approx(147.0)
    assert tips.case.values["P"] == pytest.approx(153.125)
    assert tips.case.values["x"] == pytest.approx(0.50)
    assert slides.case.values["m"] == tips.case.values["m"] == 50.0
    assert slides.convention is own.digits.convention


def test_a_side_has_a_dimension() -> None:
    _, own = worked(text("120") + SLIDES + TIPS + HOLDS)
    slides, tips = own.case.system.limits
    assert side_dimension(own.case, slides.right) == FORCE
    assert side_dimension(own.case, tips.left) == LENGTH
