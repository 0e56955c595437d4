"""Templates in two systems of units: `us = { ... }` and what is refused without it."""

import re
from decimal import Decimal
from typing import Any

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.customary import systems_of
from probgen.bank.reading import read_template
from probgen.bank.template import Derived, Given
from probgen.input.fault import InputError
from probgen.input.toml import parse_toml
from probgen.quantities.symbol import unmarked
from probgen.quantities.unit import FORCE, MASS, SI, US_CUSTOMARY, UnitSystem
from tests.bank.conftest import SHELF as TEMPLATE

BANK = default_bank()
OWN = sorted(BANK.files)


def in_both(text: str) -> str:
    """The tests' own template, with US ranges for each of its givens and derived quantities."""
    text, count = re.subn(
        r'^(\w+ = \{.*unit = "m".*?) \}$',
        r'\1, us = { from = 3, to = 5, step = 0.5, unit = "ft" } }',
        text,
        flags=re.M,
    )
    assert count
    return text


@pytest.mark.parametrize("id", OWN)
def test_every_supplied_template_is_given_in_us_units_too(id: str) -> None:
    template = BANK.read(id, US_CUSTOMARY)
    assert template.units == US_CUSTOMARY
    stated: list[Given | Derived] = [*template.givens, *template.derived]
    for each in stated:
        assert US_CUSTOMARY.speaks(each.unit), each.id
        assert each.unit.dimension != MASS, f"{each.id}: weights are given in lbf"
    assert "g" not in template.system.names_used
    assert not any(unit.name in ("slug", "lb") for unit in _units(template))


@pytest.mark.parametrize("id", OWN)
def test_si_students_get_what_they_would_without_the_us_ranges(id: str) -> None:
    source = BANK.files[id].read_text(encoding="utf-8")
    si, table = BANK.read(id), parse_toml(source, id)
    for given in si.givens:
        row = table["given"][given.id]
        low, high = (
            min(row.get("choices", [row.get("from")])),
            max(row.get("choices", [row.get("to")])),
        )
        assert (given.choices[0], given.choices[-1]) == (Decimal(low), Decimal(high))
        assert given.unit.name == row["unit"]
        label = si.labels.quantities[given.id]
        name = row["name"].replace("{{ ", "").replace(" }}", "")
        assert unmarked(str(label.name)) == name
        assert unmarked(label.symbol) == row.get("symbol", given.id)


@pytest.mark.parametrize("id", OWN)
def test_both_ranges_are_of_one_size(id: str) -> None:
    """The middle of the US range is within a fifth of the middle of the SI one."""
    si, us = BANK.read(id), BANK.read(id, US_CUSTOMARY)
    for own, other in zip(si.givens, us.givens, strict=True):
        sizes = [
            float(each.choices[0] + each.choices[-1]) / 2 * each.unit.factor
            for each in (own, other)
        ]
        if own.unit.dimension == MASS and other.unit.dimension == FORCE:
            sizes[0] *= 9.80
        assert sizes[0] == pytest.approx(sizes[1], rel=0.2), own.id


def test_a_template_in_si_alone_is_refused_by_name_with_the_mend() -> None:
    with pytest.raises(InputError) as caught:
        read_template(TEMPLATE, "shelf.toml", US_CUSTOMARY)
    (fault,) = caught.value.faults
    assert "shelf" in str(fault.found)
    assert "US customary" in fault.expected
    assert "us = {" in fault.mend


def test_what_is_said_for_us_customary_leaves_si_alone() -> None:
    assert read_template(in_both(TEMPLATE), "t.toml").givens == (
        read_template(TEMPLATE, "t.toml").givens
    )


def test_entries_for_us_customary_must_be_a_table() -> None:
    text = TEMPLATE.replace('unit = "m" }', 'unit = "m", us = "ft" }', 1)
    with pytest.raises(InputError) as caught:
        read_template(text, "t.toml")
    assert any(".us" in fault.field for fault in caught.value.faults)


@pytest.mark.parametrize("units", [SI, US_CUSTOMARY])
def test_what_is_of_the_whole_file_is_not_taken_for_an_entry_of_a_table(units: UnitSystem) -> None:
    """After [points] TOML reads `us.points` as points.us.points: a point called "points"."""
    text = in_both(TEMPLATE).replace("[points]", '[points]\nus.points = { A = [0, "1 ft"] }', 1)
    with pytest.raises(InputError) as caught:
        read_template(text, "t.toml", units)
    (fault,) = (each for each in caught.value.faults if each.field.startswith("points"))
    assert (fault.field, fault.expected) == (
        "points.us.points", "us.points before the first table of the file"
    )  # fmt: skip
    assert "an entry of points" in fault.mend


def test_which_systems_a_template_is_written_for() -> None:
    assert systems_of({"given": {"L": {"unit": "m"}}}) == (SI,)
    assert systems_of({"find": [{"us": {"unit": "in"}}]}) == (SI, US_CUSTOMARY)


def _units(template: Any) -> list[Any]:
    return [variable.unit for id, variable in template.system.variables.items() if id != "g"]
