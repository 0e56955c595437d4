"""Slips that numbers hide."""

import pytest

from probgen.department import slips_apart as module
from probgen.department.doubt import Doubt, DoubtKind
from probgen.department.slips_apart import confused, passing
from probgen.mistakes.comparison import class_slips
from probgen.mistakes.unnoticed import unnoticed
from probgen.problem.problem import shown_values
from tests.department.worked import worked

ASKED = '[[find]]\nquantity = "F"\n'
WHOLE = (
    "well-windlass",
    ASKED,
    f'{ASKED}\n[[find]]\nquantity = "R"\nas = "magnitude and direction"\n',
)
UPRIGHT = "forearm-load", "from = 12, to = 25", "from = 5, to = 20"


def by_slip(*changed: str) -> dict[str, Doubt]:
    return {each.about: each for each in passing(*worked(*changed))}


def test_one_that_earns_full_marks_is_told_once_in_words_and_rounding_is_none() -> None:
    problem, own = worked(*WHOLE)
    found = list(passing(problem, own))
    doubt = by_slip(*WHOLE)["component_only"]
    assert (doubt.share, doubt.kind) == (28 / 30, DoubtKind.PASSING)  # of thirty draws
    assert doubt.told == "R_y alone given as R"
    assert "early_rounding" not in by_slip(*WHOLE)
    assert len({each.about for each in found}) == len(found)


def test_the_draw_told_lets_the_slip_pass() -> None:
    problem, own = worked(*UPRIGHT)
    doubt = by_slip(*UPRIGHT)["no_angle"]
    place = [shown_values(each.draw) for each in own].index(doubt.draw)
    alone = unnoticed([own[place].digits], problem.missteps)
    assert "no_angle" in {each.misstep.slip for each in alone}
    before = unnoticed([each.digits for each in own[:place]], problem.missteps)
    assert "no_angle" not in {each.misstep.slip for each in before}


def test_one_that_few_draws_let_pass_is_no_doubt(monkeypatch: pytest.MonkeyPatch) -> None:
    """One in fifty of its draws, or so."""
    assert list(passing(*worked("ring-three-ropes"))) == []
    monkeypatch.setattr(module, "MOST_PASSING", 0.01)
    assert list(passing(*worked("ring-three-ropes")))


def test_two_that_most_draws_have_within_one_tolerance() -> None:
    problem, own = worked("arm-held-out")
    (doubt,) = confused(problem, own)
    assert (doubt.kind, doubt.about) == (DoubtKind.CONFUSED, "no_angle, sin_cos_swap")
    assert doubt.told.startswith("D: ")
    assert "; or sine and cosine exchanged" in doubt.told
    assert 0.5 < doubt.share < 1.0
    place = [shown_values(each.draw) for each in own].index(doubt.draw)
    (found,) = class_slips([own[place].digits], problem.missteps)
    one, other = (next(s for s in found if s.answer == "D" and s.id == id)
                  for id in ("no_angle", "sin_cos_swap"))  # fmt: skip
    assert 0.0 < abs(one.value - other.value) <= min(one.half, other.half)


def test_few_such_draws_are_no_doubt(monkeypatch: pytest.MonkeyPatch) -> None:
    assert list(confused(*worked("leg-raise-cuff"))) == []
    monkeypatch.setattr(module, "MOST_CONFUSED", 0.1)
    assert list(confused(*worked("leg-raise-cuff")))
