"""Points changed by hand, read back: which count, and what is told of those that are none."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.marking.changed import read_changed, read_earlier, same_text

HEADS = "id,problem,answer,changed,of"


def table(folder: Path, *rows: str, name: str = "marks.csv", heads: str = HEADS) -> Path:
    path = folder / name
    path.write_text("\n".join([heads, *rows]), encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("typed", "points"),
    [("7", "7"), ("2.5", "2.5"), ('"2,5"', "2.5"), ("0", "0"), ("8", "8"), ("7.50", "7.5")],
)
def test_points_are_numbers_from_none_to_all(tmp_path: Path, typed: str, points: str) -> None:
    path = table(tmp_path, "1,1,T,,8", f"2,1,T,{typed},8", "3,1,T,,8")
    assert read_changed([path]) == {("2", "1", "T"): Decimal(points)}


@pytest.mark.parametrize("typed", ["9", "8.01", "-1", "-0.5", "none", "nan", "inf", "1/2", "7 8"])
def test_what_is_no_number_of_points_is_told_with_its_place(tmp_path: Path, typed: str) -> None:
    path = table(tmp_path, "1,1,T,5,8", f"2,1,T,{typed},8")
    with pytest.raises(InputError) as raised:
        read_changed([path])
    (fault,) = raised.value.faults
    assert (fault.file, fault.field, fault.found) == (str(path), "line 3, changed", f'"{typed}"')
    assert fault.expected == "points from 0 to 8"


def test_an_answer_without_points_can_be_given_none(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="points from 0 to 0"):
        read_changed([table(tmp_path, "1,1,T,0.5,")])


def test_tables_that_are_not_there_change_nothing(tmp_path: Path) -> None:
    assert read_changed([tmp_path / "marks.csv"]) == {}
    assert read_changed([table(tmp_path)]) == {}


def test_two_tables_add_up_and_must_not_contradict_each_other(tmp_path: Path) -> None:
    first = table(tmp_path, "1,1,T,5,8", "1,2,T,3,8", "2,1,T,,8")
    other = table(tmp_path, "1,1,T,5.0,8", "2,1,T,4,8", name="look-at.csv")
    assert read_changed([first, other]) == {
        ("1", "1", "T"): 5, ("1", "2", "T"): 3, ("2", "1", "T"): 4,
    }  # fmt: skip
    table(tmp_path, "1,1,T,6,8", name="look-at.csv")
    with pytest.raises(InputError, match="5, as told before"):
        read_changed([first, other])


WHOLE = "id,problem,answer,points,changed,counts,of"


@pytest.mark.parametrize(
    ("first", "other", "counts"),
    [
        ("4,7,7", "4,7,7", "7"),
        ("4,,7", "4,7,7", ""),  # cleared in one, and the other has been written with it
        ("4,7,7", "4,,7", ""),
        ("4,,7", "4,6,7", "6"),  # cleared in one, and changed in the other
        ("4,,4", "4,7,4", "7"),  # typed into one alone
        (",,7", ",7,7", ""), (",,", ",7,", "7"),
        ("4,,7.0", '4,"7,0",7', ""),
    ],
)  # fmt: skip
def test_points_cleared_in_one_table_do_not_come_back_from_another(
    tmp_path: Path, first: str, other: str, counts: str
) -> None:
    """Points by rule, by hand, and that counted at the last marking."""
    paths = [
        table(tmp_path, f"1,1,T,{row},8", name=name, heads=WHOLE)
        for name, row in (("answer-marks.csv", first), ("look-at.csv", other))
    ]
    for each in (paths, paths[::-1]):
        assert read_changed(each) == ({("1", "1", "T"): Decimal(counts)} if counts else {})


def test_columns_may_stand_in_any_order_and_short_rows_end_empty(tmp_path: Path) -> None:
    path = table(tmp_path, "8,T,1,2,,7", "8,T,1,3", heads="of,answer,problem,id,remark,changed")
    assert read_changed([path]) == {("2", "1", "T"): 7}


def test_ids_get_back_the_zeros_that_a_spreadsheet_dropped(tmp_path: Path) -> None:
    """7 may be 07 or 007, and 8 is somebody itself."""
    table(tmp_path, "5,1,T,1,8", "7,1,T,2,8", "8,1,T,3,8", "9,1,T,4,8")
    ids = ["05", "07", "007", "8", "08"]
    found = read_earlier(tmp_path / "marks", tmp_path / "look-at", ids).changed
    assert [id for id, _, _ in found] == ["05", "7", "8", "9"]


@pytest.mark.parametrize("column", HEADS.split(","))
def test_a_missing_column_is_told(tmp_path: Path, column: str) -> None:
    path = table(tmp_path, "1,1,T,5,8", heads=HEADS.replace(column, "other"))
    with pytest.raises(InputError, match=f"the columns {column}"):
        read_changed([path])


@pytest.mark.parametrize(("head", "told"), [("comment", "comment"), ("", "without a heading")])
def test_a_column_of_a_person_s_own_is_not_lost(tmp_path: Path, head: str, told: str) -> None:
    empty = table(tmp_path, "1,1,T,5,8,", heads=f"{HEADS},{head}")
    assert len(read_changed([empty])) == 1
    written = table(tmp_path, "1,1,T,5,8,see me", "2,1,T,5,8,", heads=f"{HEADS},{head}")
    with pytest.raises(InputError, match=told):
        read_changed([written])


@pytest.mark.parametrize(
    ("before", "now", "same"),
    [
        ("0.49", "0.490", True), ("1234", "1,234", True), ("4.9", "4,9", True),
        ("4.9E+02", "490", True), ("9.9°  below", "9.9° below", True),
        ("490", "491", False), ("4.9", "49", False), ("490 N", "490 kN", False), ("", "0", False),
    ],
)  # fmt: skip
def test_what_a_spreadsheet_does_to_numbers_is_no_other_answer(
    before: str, now: str, same: bool
) -> None:
    assert same_text(before, now) is same
