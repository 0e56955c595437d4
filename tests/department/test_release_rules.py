"""What keeps a release from being made."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from probgen.bank.bank_folder import read_bank_folder
from probgen.department.next_release import next_release, write_release
from probgen.input.fault import Fault
from tests.banks import make_ready, put, put_ready, ready_text, review

ARM, SEESAW = "forearm-load", "seesaw-two-riders"


def faults(bank: Path, name: str = "statics-2027.2", day: int = 15) -> tuple[Fault, ...]:
    on = date(2027, 8, day)
    return next_release(read_bank_folder(bank), name, "A. Keeper", on, draws=20).faults


@pytest.fixture
def bank(tmp_path: Path) -> Path:
    """A bank with a release made of it."""
    bank = make_ready(tmp_path)
    on = date(2027, 8, 15)
    write_release(next_release(read_bank_folder(bank), "statics-2027.1", "A.", on, draws=20))
    return bank


NAMES = ["statics-2027.1", "Statics", "../x", "a b", "", "a..b", "x" * 61, "con.", "-a"]


@pytest.mark.parametrize("name", NAMES)
def test_names_that_are_none_or_taken(bank: Path, name: str) -> None:
    (fault,) = faults(bank, name)
    assert fault.field == "release"


def test_a_day_before_the_release_before(bank: Path) -> None:
    (fault,) = faults(bank, day=14)
    assert (fault.field, fault.found) == ("date", "2027-08-14")


def edited(bank: Path) -> None:
    put_ready(bank, ARM, 1, ready_text(ARM, direction='"90 - muscle_angle"'))


def edited_before_the_newest(bank: Path) -> None:
    put_ready(bank, ARM, 2, ready_text(ARM, 2, level="5"))
    edited(bank)


def taken_away(bank: Path) -> None:
    (bank / "templates" / ARM / "r1.toml").unlink()
    text = (bank / "reviews.csv").read_text("utf-8").splitlines(keepends=True)
    (bank / "reviews.csv").write_text("".join(row for row in text if ARM not in row), "utf-8")


def counted_up(bank: Path) -> None:
    put_ready(bank, ARM, 2)


def counted_up_for_a_comment(bank: Path) -> None:
    put_ready(bank, ARM, 2, "# looked at\n" + ready_text(ARM, 2))


def gap(bank: Path) -> None:
    put_ready(bank, ARM, 3, ready_text(ARM, 3, level="5"))


def goal(bank: Path) -> None:
    put_ready(bank, ARM, 2, ready_text(ARM, 2, goals='["direction of a farce"]'))


def unapproved(bank: Path) -> None:
    review(bank, ARM, 1, "changes wanted", date="2027-09-01")
    put(bank, ARM, 2, ready_text(ARM, 2, level="5"))
    review(bank, ARM, 2)
    on = date(2027, 8, 15)
    write_release(next_release(read_bank_folder(bank), "statics-2027.3", "A.", on, draws=20))
    review(bank, ARM, 1, date="2027-09-02")
    review(bank, ARM, 2, "changes wanted", date="2027-09-02")


def failing(bank: Path) -> None:
    text = ready_text(ARM, 2, direction='"270 + muscle_angle"')  # it would have to push
    put_ready(bank, ARM, 2, text)


def two_of_one_number(bank: Path) -> None:
    put(bank, ARM, 4, ready_text(ARM, 3))


def half_merged(bank: Path) -> None:
    put_ready(bank, ARM, 2, "<<<<<<< mine\n" + ready_text(ARM, 2))


CASES: list[tuple[Callable[[Path], None], str, str, str]] = [
    (edited, "", "a text edited since", "write what is new as r2"),
    (edited_before_the_newest, "", "a text edited since", "write what is new as r3"),
    (taken_away, f"{ARM} r1", "no file", "withdrawn by a review"),
    (counted_up, "", "a revision that says what r1 says", "r1 is released again"),
    (counted_up_for_a_comment, "", "a revision that says what r1 says", "r1 is released again"),
    (gap, f"{ARM} r2", "no file", "number those after it anew"),
    (goal, "goals[0]", '"direction of a farce"', 'did you mean "direction of a force"?'),
    (unapproved, ARM, "r1, the newest that is approved", "have a later one approved, r3 if"),
    (two_of_one_number, "revision", "3", "take the file that is meant"),
    (half_merged, "line 1", "<<<<<<<", "keep what is right of the two sides"),
]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case[0].__name__)
def test_one_fault_with_its_mend(
    bank: Path, case: tuple[Callable[[Path], None], str, str, str]
) -> None:
    spoil, field, found, mend = case
    spoil(bank)
    (fault,) = faults(bank)
    assert (fault.field, fault.found) == (field, found)
    assert mend in fault.mend


def test_draws_that_fail_are_shown_in_every_system_of_units(bank: Path) -> None:
    failing(bank)
    found = faults(bank)
    assert {"kg", "lbf"} <= {word.strip(",") for fault in found for word in fault.found.split()}
    assert {fault.expected for fault in found} == {"a solution that passes its proof"}


def test_a_template_may_come_with_a_later_revision_as_its_first(bank: Path) -> None:
    put_ready(bank, "tiptoe-achilles", 3)
    assert faults(bank) == ()


def test_a_fault_of_a_file_that_is_old_and_new_is_told_once(bank: Path) -> None:
    put_ready(bank, ARM, 1, "<<<<<<< mine\n" + ready_text(ARM))
    found = [(fault.field, fault.found) for fault in faults(bank)]
    assert sorted(found) == [("", "a text edited since"), ("line 1", "<<<<<<<")]


def test_what_is_approved_again_after_all_is_released(bank: Path) -> None:
    counted_up(bank)
    review(bank, ARM, 2, "changes wanted", date="2027-09-01")
    assert faults(bank) == ()
