"""What was set from a bank."""

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from probgen.bank.uses import (
    HEADINGS,
    Use,
    by_template,
    facility_of,
    note_uses,
    read_uses,
)
from probgen.input.fault import InputError
from tests.banks import make_bank

FIRST = Use(date(2027, 9, 3), "Mechanics 1", "Week 2", "homework", "forearm-load", 1, "ab12", 120)
MARKED = replace(
    FIRST, students=118, marked=110, facility=0.625, slips=(("sign", 31), ("a + b", 2))
)


def test_what_is_noted_is_read_again(tmp_path: Path) -> None:
    other = replace(MARKED, template="seesaw-two-riders", course='=2+2, "x"', day=date(2026, 1, 5))
    note_uses(tmp_path, [MARKED, other])
    assert read_uses(tmp_path) == (replace(other, course=read_uses(tmp_path)[0].course), MARKED)
    names = [path.name for path in sorted((tmp_path / "uses").iterdir())]
    assert names == ["2-2-x.csv", "mechanics-1.csv"]
    assert "'=2+2" in (tmp_path / "uses/2-2-x.csv").read_text("utf-8")


def test_numbers_are_renewed_the_day_and_what_marking_found_stay(tmp_path: Path) -> None:
    note_uses(tmp_path, [FIRST])
    note_uses(tmp_path, [replace(MARKED, day=date(2027, 9, 20))])
    note_uses(tmp_path, [replace(FIRST, students=125, day=date(2027, 9, 28))])
    assert read_uses(tmp_path) == (replace(MARKED, students=125),)
    note_uses(tmp_path, [replace(FIRST, revision=2), replace(FIRST, day=date(2028, 9, 1))])
    assert len(by_template(read_uses(tmp_path))["forearm-load"]) == 3


def test_facility_of_several_is_by_their_papers() -> None:
    uses = [MARKED, replace(MARKED, facility=0.25, marked=10), FIRST]
    assert facility_of(uses) == pytest.approx((0.625 * 110 + 0.25 * 10) / 120)
    assert facility_of([FIRST]) is None


@pytest.mark.parametrize(
    ("old", "new", "field"),
    [
        ("2027-09-03", "3 September", "line 2, date"),
        ("2027-09-03", "2027-02-30", "line 2, date"),
        ("homework", "quiz", "line 2, kind"),
        (",118,", ",many,", "line 2, students"),
        ("0.625", "1.5", "line 2, facility"),
        ("sign: 31", "sign", "line 2, slips"),
        (",118,", ",", "line 2"),
        ("date,", "day,", "line 1"),
        ("2027-09-03", "<<<<<<< a\n2027-09-03", "line 2"),
    ],
)
def test_faults(tmp_path: Path, old: str, new: str, field: str) -> None:
    note_uses(tmp_path, [MARKED])
    (path,) = (tmp_path / "uses").iterdir()
    before = path.read_text("utf-8")
    assert old in before
    path.write_text(before.replace(old, new), "utf-8")
    with pytest.raises(InputError) as error:
        read_uses(tmp_path)
    assert [fault.field for fault in error.value.faults] == [field]
    assert isinstance(error.value.faults[0].expected, str)  # told in words
    with pytest.raises(InputError):
        note_uses(tmp_path, [FIRST])
    assert path.read_text("utf-8") == before.replace(old, new)


def test_a_bank_that_was_never_used(tmp_path: Path) -> None:
    assert read_uses(tmp_path) == ()
    assert len(HEADINGS) == 11


def test_uses_of_several_at_one_moment_are_all_there(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    uses = [replace(FIRST, assignment=f"Week {place}") for place in range(24)]
    with ThreadPoolExecutor(8) as pool:
        list(pool.map(lambda use: note_uses(bank, [use]), uses))
    assert set(read_uses(bank)) == set(uses)
