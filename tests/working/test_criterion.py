"""What points are given for, and how it parts into what is set up and what comes out."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import Name
from probgen.working.criteria import criteria
from probgen.working.criterion import (
    BalanceWritten,
    ConditionWritten,
    Criterion,
    FoundFromBalance,
    FoundFromCondition,
    Judged,
    QuantityFound,
    halves,
)
from probgen.working.fact import Fact
from tests.working.test_scheme import USUAL, problem

N = Name("N", "N")


@pytest.mark.parametrize(
    ("kind", "what", "set_up"),
    [
        ("force", FoundFromBalance(N, "y", Judged.UNIT), BalanceWritten("y")),
        ("condition", FoundFromCondition(N, (N,), Judged.UNIT), ConditionWritten((N,))),
    ],
)
def test_what_is_found_from_an_equation_is_the_equation_and_a_number(
    kind: str, what: Fact, set_up: Fact
) -> None:
    two = halves(Criterion(kind, what, "N"))
    assert two is not None
    method, number = two
    assert (method.what, method.quantity) == (set_up, "")
    assert (number.kind, number.what) == ("result", QuantityFound(N, Judged.UNIT))


def test_a_number_has_no_halves() -> None:
    assert halves(Criterion("result", QuantityFound(N, Judged.UNIT), "N")) is None


def test_an_answer_told_apart_from_its_balance_is_still_asked() -> None:
    found = [each for each in criteria(problem("forearm-load").plan, USUAL) if halves(each)]
    told = problem("table-pulley-sand")
    found += [each for each in criteria(told.plan, USUAL) if halves(each)]
    for each in found:
        assert [half.asked for half in halves(each) or ()] == [False, each.asked]
    assert {each.asked for each in found} == {True, False}
