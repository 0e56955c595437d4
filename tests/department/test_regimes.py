"""Answers that are of another regime in some draws."""

from dataclasses import replace

import pytest

from probgen.bank.bank import default_bank
from probgen.department.doubt import Doubt, DoubtKind
from probgen.department.regimes import regime, regimes
from probgen.problem.problem import Worked, shown_values
from tests.department.worked import EITHER_SIDE, worked

CASES = [
    ("beam-stay-cable", "R.direction", "above the horizontal", "below the horizontal"),
    ("cabinet-slide-or-tip", "P.limit", "the cabinet slides", "the cabinet tips"),
    ("ladder-holds", "slips", "yes, with", "no, "),
]


def drawn(id: str) -> tuple[Worked, ...]:
    return worked(id, *(EITHER_SIDE if id == "beam-stay-cable" else ()))[1]


def found(id: str, varying: frozenset[str] = frozenset()) -> list[Doubt]:
    return list(regimes(drawn(id), varying))


@pytest.mark.parametrize(("id", "about", "one", "other"), CASES)
def test_another_side_another_limit_and_no_for_yes(
    id: str, about: str, one: str, other: str
) -> None:
    (doubt,) = found(id)
    assert (doubt.kind, doubt.about) == (DoubtKind.REGIME, about)
    assert {one in part or other in part for part in doubt.told.split(" or ")} == {True}
    own = drawn(id)
    answers = [next(a for a in each.answers if a.id == about) for each in own]
    kinds = [regime(each) for each in answers]
    fewer = min(set(kinds), key=kinds.count)
    assert doubt.share == kinds.count(fewer) / len(own)
    assert doubt.draw == shown_values(own[kinds.index(fewer)].draw)


@pytest.mark.parametrize("id", ["forearm-load", "tiptoe-achilles", "table-pulley-sand"])
def test_one_regime_is_no_doubt(id: str) -> None:
    assert found(id) == []


def test_a_sign_that_changes() -> None:
    answer = worked("forearm-load")[1][0].answers[0]
    other = replace(answer, value=-answer.value)
    assert regime(answer) != regime(other)


@pytest.mark.parametrize(("id", "about", "one", "other"), CASES)
def test_what_the_template_says_may_vary(id: str, about: str, one: str, other: str) -> None:
    assert found(id, frozenset({about.partition(".")[0], "slips"})) == []


@pytest.mark.proof
@pytest.mark.parametrize("id", default_bank().files)
def test_supplied_templates_say_what_may_vary(id: str) -> None:
    problem, own = worked(id)
    assert list(regimes(own, problem.template.varying)) == []
