"""The records in folders, and which papers of them have which codes."""

from pathlib import Path

import pytest

from probgen.course.archive import record_at, records_beside, records_in
from probgen.course.edition import content_of
from probgen.course.record_file import write_record
from probgen.course.secret import find_secret, write_secret
from probgen.input.fault import InputError
from tests.terms import begun, class_of


def put(folder: Path, **changes: str) -> Path:
    folder.mkdir(parents=True)
    path = folder / "record.json"
    path.write_text(write_record(begun(class_of(2), **changes)), encoding="utf-8")
    return path


def test_records_in_and_below_a_folder_but_not_in_hidden_ones(tmp_path: Path) -> None:
    first, second = put(tmp_path / "a"), put(tmp_path / "b" / "c")
    put(tmp_path / ".d.part")
    assert list(records_in(tmp_path)) == [first, second]
    assert list(records_in(first)) == [first]
    assert list(records_in(tmp_path / "a")) == [first]
    assert list(records_in(tmp_path / "nowhere")) == []


def test_the_one_record_of_a_folder_is_meant_and_of_several_none(tmp_path: Path) -> None:
    first = put(tmp_path / "week-1" / "output")
    for place in (first, first.parent, first.parent.parent, tmp_path):
        assert record_at(place) == first
    second = put(tmp_path / "week-2")
    assert record_at(second.parent) == second
    with pytest.raises(InputError, match="found     2 records"):
        record_at(tmp_path)
    for place in (tmp_path / "nowhere", tmp_path / "nowhere" / "record.json"):
        assert record_at(place) == place


def test_a_folder_with_a_record_of_its_own_has_that_also_where_others_are_below(
    tmp_path: Path,
) -> None:
    own = put(tmp_path / "week-1")
    put(tmp_path / "week-1" / "old")
    assert record_at(own.parent) == own


@pytest.mark.parametrize("course", [True, False], ids=["in a course", "side by side"])
def test_what_stands_beside(course: bool, tmp_path: Path) -> None:
    put(tmp_path / "week-1")
    put(tmp_path / "week-2", title="Week 2")
    if course:
        write_secret(tmp_path)
    beside = records_beside(tmp_path / "week-1", find_secret(tmp_path))
    own, other = begun(class_of(2)), begun(class_of(2), title="Week 2")
    assert {beside.content(edition.code) for edition in own.editions} == {""}
    assert [beside.content(edition.code) for edition in other.editions] == [
        content_of(other.issue, edition) for edition in other.editions
    ]


def test_what_cannot_be_read_holds_nothing(tmp_path: Path) -> None:
    path = put(tmp_path / "week-2")
    code = begun(class_of(2)).editions[0].code
    path.write_text(path.read_text(encoding="utf-8")[:-50], encoding="utf-8")
    assert records_beside(tmp_path / "week-1", None).content(code) == ""
