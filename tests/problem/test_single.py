"""One problem on its own: the Nth draw, or numbers set by hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.problem.single import work_single
from probgen.working.convention import Convention
from tests.situations import STAYED_SHELF


@pytest.fixture
def shelf(tmp_path: Path) -> str:
    """The shelf, whose load and cable may be chosen."""
    path = tmp_path / "own.toml"
    path.write_text(STAYED_SHELF.replace("[8.0]", "[8.0, 9.0, 10.0, 11.0, 12.0]"))
    return str(path)


def test_numbers_set_by_hand(shelf: str) -> None:
    """By hand: 190.58 N with 8.0 kg; with 10.0 kg (23.52 + 117.6) N m/(0.96 m sin 40°)."""
    for mass, tension in (("8.0 kg", 190.576), ("10.0 kg", 228.691)):
        single = work_single(shelf, stated={"M": mass})
        assert single.worked.case.values["T"] == pytest.approx(tension, abs=0.001)
        assert single.remarks == ()


def test_a_number_outside_the_range_is_worked_and_remarked(shelf: str) -> None:
    single = work_single(shelf, stated={"M": "20 kg"})
    assert single.worked.case.values["M"] == 20.0
    assert len(single.remarks) == 1


def test_draws_are_counted(shelf: str) -> None:
    drawn = [work_single(shelf, number).worked.case.values["M"] for number in range(1, 13)]
    assert drawn == [work_single(shelf, number).worked.case.values["M"] for number in range(1, 13)]
    assert len(set(drawn)) > 1


def test_the_course_s_convention_is_used(shelf: str) -> None:
    single = work_single(shelf, convention=Convention(figures=4), stated={"M": "8.0 kg"})
    assert single.worked.answers[0].printed == "190.6 N"


def test_what_is_stated_wrongly_is_named_by_where_it_was_stated(shelf: str) -> None:
    with pytest.raises(InputError) as caught:
        work_single(shelf, stated={"Q": "8 kg"}, values_from="--set")
    assert "--set" in str(caught.value)
    with pytest.raises(InputError) as caught:
        work_single("no-such-template", template_from="TEMPLATE")
    assert "TEMPLATE" in str(caught.value)
