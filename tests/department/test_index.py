"""A bank's files listed by a database that is never the truth."""

import sqlite3
from datetime import date
from pathlib import Path

import pytest

from probgen.bank.bank import read_file
from probgen.bank.bank_folder import read_bank_folder
from probgen.bank.uses import Use, note_uses
from probgen.department import index
from probgen.department.index import Listed, entries_of
from tests.banks import make_bank, put, template_text


@pytest.fixture
def bank(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(index, "cache_folder", lambda kind: tmp_path)
    return make_bank(tmp_path / "bank")


def listed(bank: Path) -> Listed:
    return entries_of(read_bank_folder(bank))


def use(template: str, day: date, students: int = 10, facility: float | None = None) -> Use:
    marked = 0 if facility is None else students
    return Use(
        day, "M", f"Week {day.day}", "homework", template, 1, "ab", students, marked, facility
    )


def read_files(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Notes which templates are read from now on."""
    read: list[str] = []

    def noted(path: Path) -> object:
        read.append(path.parent.name)
        return read_file(path)

    monkeypatch.setattr(index, "read_file", noted)
    return read


def test_what_did_not_change_is_read_once(bank: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    first = listed(bank)
    assert [each.id for each in first.entries] == ["forearm-load", "seesaw-two-riders"]
    read = read_files(monkeypatch)
    assert listed(bank) == first
    assert read == []
    put(bank, "forearm-load", 2, template_text("forearm-load", 2, level="5"))
    assert [(each.revision, each.level) for each in listed(bank).entries] == [(2, 5), (1, 1)]
    assert read == ["forearm-load"]
    put(bank, "seesaw-two-riders", 1, template_text("seesaw-two-riders", level="44"))
    spoilt = listed(bank)
    assert [each.id for each in spoilt.entries] == ["forearm-load"]
    assert [fault.field for fault in spoilt.faults] == ["level"]
    assert listed(bank).faults == spoilt.faults


def test_uses_are_added_up_and_follow_their_files(bank: Path) -> None:
    note_uses(bank, [use("forearm-load", date(2027, 1, 2), 10, 0.5),
                     use("forearm-load", date(2027, 1, 9), 30, 0.9),
                     use("forearm-load", date(2027, 1, 16), 60)])  # fmt: skip
    forearm, seesaw = listed(bank).entries
    assert (forearm.times, forearm.students, forearm.last) == (3, 100, date(2027, 1, 16))
    assert forearm.facility == pytest.approx((5 + 27) / 40)
    assert (seesaw.times, seesaw.last, seesaw.facility) == (0, None, None)
    for path in (bank / "uses").iterdir():
        path.unlink()
    assert listed(bank).entries[0].times == 0


def test_a_spoilt_database_costs_time_alone(bank: Path, tmp_path: Path) -> None:
    first = listed(bank)
    (database,) = tmp_path.glob("*.sqlite")
    database.write_bytes(b"no database at all" * 100)
    assert listed(bank) == first
    assert listed(bank) == first
    with sqlite3.connect(database) as kept:
        kept.execute("update form set said = 'of another release'")
        kept.execute("update template set entry = '{}'")
    assert listed(bank) == first
