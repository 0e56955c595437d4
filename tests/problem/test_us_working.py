"""Workings in US customary: no slug, no hidden conversion, data as they were given."""

import re

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.problem import Problem, draw_class, prepare, tell_steps, work
from probgen.quantities.printing import plain
from probgen.quantities.unit import US_CUSTOMARY
from probgen.working.convention import Convention

BANK = default_bank()
METHODS = [Convention(units=US_CUSTOMARY, torque=torque) for torque in ("angle", "arm")]
METRIC = re.compile(r"\d (?:slug|kg|k?N|[ckm]?m|N·m|m/s²)\b")


def problem(id: str, convention: Convention) -> Problem:
    return prepare(BANK.read(id, US_CUSTOMARY), convention)


def read(id: str, convention: Convention, draws: int) -> None:
    own = problem(id, convention)
    students = [f"US {number}" for number in range(draws)]
    for worked in work(own, draw_class(own, "customary", students).draws):
        assert worked.residual < 1e-9
        assert worked.difference < 1e-9
        told = " ".join(repr(section) for section in tell_steps(own, worked))
        assert "slug" not in told
        assert "'kg'" not in told
        assert "name='m'" not in told
        assert "name='N'" not in told
        for id_, number in worked.draw.values.items():
            assert plain(worked.digits.data(id_)) == plain(number), "given and shown alike"
        for answer in worked.answers:
            assert not METRIC.search(answer.printed)


@pytest.mark.one_in(4)
@pytest.mark.parametrize("id", sorted(BANK.files))
def test_a_us_working_holds_no_metric_unit_and_shows_data_as_given(id: str) -> None:
    read(id, METHODS[0], 2)


@pytest.mark.proof
@pytest.mark.parametrize("convention", METHODS, ids=["angle", "arm"])
@pytest.mark.parametrize("id", sorted(BANK.files))
def test_so_it_is_for_a_hundred_draws(id: str, convention: Convention) -> None:
    read(id, convention, 100)
