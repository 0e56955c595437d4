"""Ids that a spreadsheet has spoilt are refused or remarked on."""

import pytest

from probgen.course.student_id import complaint_of, complaint_of_text, lost_zeros

SPOILT = [
    ("2.026E+07", False), ("2,026E+07", False), ("1E+15", False), ("#N/A", False), ("??", False),
    ("#REF!", False), ("########", False), ("-", False), ("n/a", False), ("None", False),
    ("1.5", True), ("-7", True), ("1234567890123456", True), ("\u200b", False),
]  # fmt: skip
SOUND = [
    ("0071", False), ("S1001", False), ("ada.quill", False), ("12E4", False), ("1.5", False),
    ("1234567890123456", False), ("20260071", True), ("7", True), ("A-7/3", False), ("李", False),
]  # fmt: skip


@pytest.mark.parametrize(("id", "number"), SPOILT)
def test_spoilt_ids_have_a_mend(id: str, number: bool) -> None:
    complaint = complaint_of(id, number)
    assert complaint is not None
    assert all(complaint)


@pytest.mark.parametrize(("id", "number"), SOUND)
def test_ids_of_every_kind_are_taken(id: str, number: bool) -> None:
    assert complaint_of(id, number) is None


def test_names_that_are_none() -> None:
    names = ("Ada", "X Æ", "??", "#NAME?", "N/A", "\u202e\u0301")
    assert [name for name in names if complaint_of_text(name, "a name")] == [*names[2:]]


@pytest.mark.parametrize(
    ("ids", "lost"),
    [
        (["0071234", "0071235", "71236"], "71236: "),
        (["1", "2", "10", "100"], ""),
        (["1071234", "1071235", "71236", "7", "8", "9", "1"], ""),
        (["1071234", "1071235", "1071236", "1", "12", "123", "1234"], ""),  # most are no mishap
        (["1071234", "1071235", "1071236", "1", "12", "123"], "1, 12, 123: "),
        (["1234567", "1234568", "1234569", "12345670", "12345671"], ""),
        (["S1", "S22", "A"], ""),
    ],
)
def test_fewer_digits_than_the_others(ids: list[str], lost: str) -> None:
    told = lost_zeros(dict.fromkeys(ids, False))
    assert told.startswith(lost) if lost else told == ""


def test_numbers_of_a_workbook_are_suspected_sooner() -> None:
    assert lost_zeros({"2071": True, "71": True}).startswith("71: ")
    ids = ["1071234", "1071235", "1071236", "1", "12", "123", "1234"]
    assert lost_zeros(dict.fromkeys(ids, True)).startswith("1, 12, 123, ...: ")
