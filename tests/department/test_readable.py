"""Numbers that read well, and others."""

from decimal import Decimal

import pytest

from probgen.department.doubt import Doubt, DoubtKind
from probgen.department.readable import badly_read, is_of_a_size, reads_well
from probgen.quantities.expression import Number
from probgen.quantities.unit import METRE
from tests.department.worked import worked


@pytest.mark.parametrize("typed", ["0.80", "2.35", "12.5", "1250", "0.012", "-3.5", "0", "9999"])
def test_few_digits_and_a_fitting_unit(typed: str) -> None:
    assert reads_well(Number(Decimal(typed), METRE))


@pytest.mark.parametrize("typed", ["12345", "1.2345", "0.008", "12000", "-0.00950"])
def test_many_digits_small_fractions_and_many_places(typed: str) -> None:
    assert not reads_well(Number(Decimal(typed), METRE))


@pytest.mark.parametrize(("typed", "well"), [("9.99E+3", True), ("1.00E+4", False), ("0.01", True)])
def test_sizes(typed: str, well: bool) -> None:
    assert is_of_a_size(Decimal(typed)) == well


def doubts(id: str, old: str = "", new: str = "") -> list[Doubt]:
    return list(badly_read(worked(id, old, new)[1]))


def test_supplied_numbers_read_well() -> None:
    assert doubts("forearm-load") == []
    assert doubts("gate-two-hinges") == []


def test_one_that_does_not_is_told_with_its_draw() -> None:
    (doubt,) = doubts(
        "forearm-load",
        "from = 1.0, to = 8.0, step = 0.5, unit",
        "from = 1.0125, to = 8.0125, step = 0.5, unit",
    )
    assert (doubt.kind, doubt.about, doubt.share) == (DoubtKind.READING, "load_mass", 1.0)
    assert f"load_mass = {doubt.told}" in doubt.draw.replace("\u00a0", " ")
