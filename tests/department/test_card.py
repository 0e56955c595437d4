"""A card says what a sheet and a key say of the same draw."""

from dataclasses import replace
from datetime import date
from functools import cache

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.bank.uses import Use
from probgen.department.card import Card, card_of
from probgen.input.fault import InputError
from probgen.problem.report import as_data
from probgen.problem.single import work_single
from probgen.wording.sentence import plain_text
from tests.banks import template_text


@cache
def card() -> Card:
    return card_of(default_bank().read("forearm-load"))


def test_draws_are_those_that_work_shows() -> None:
    assert [drawn.number for drawn in card().draws] == [1, 2, 3, 4, 5, 6]
    for drawn in card().draws[1:3]:
        data = as_data(work_single("forearm-load", drawn.number))
        (pull, *_) = data["answers"]
        assert plain_text(drawn.answers[0]) == f"B: {pull['printed']}"
        value = data["values"]["load_mass"]["value"]
        assert plain_text(drawn.values[0]) == f"m_b = {value:.1f} kg"


def test_the_sheet_and_the_working_are_of_the_first_draw() -> None:
    assert card().sheet.figure == card().draws[0].figure
    printed = [plain_text(answer.printed) for answer in card().solution.answers]
    assert f"B: {printed[0]}" == plain_text(card().draws[0].answers[0])
    assert card().solution.slips
    assert card().findings.proved > 0


def test_what_is_known_of_its_uses() -> None:
    first = Use(date(2027, 9, 3), "Mechanics", "Week 2", "homework", "forearm-load", 1, "ab12", 90)
    early = replace(first, assignment="Week 1", day=date(2026, 9, 1), marked=30, facility=0.5)
    later = replace(first, assignment="Test", day=date(2027, 12, 1), marked=10, facility=0.9)
    assert (card().last_set, card().facility) == (None, None)
    known = replace(card(), uses=(first, early, later))
    assert known.last_set == date(2027, 12, 1)
    assert known.facility == pytest.approx(0.6)


def test_what_cannot_be_worked_is_told() -> None:
    text = template_text("forearm-load").replace('at = "E"\nsymbol', 'at = "M"\nsymbol')
    with pytest.raises(InputError):
        card_of(read_template(text, "own.toml"))
