"""A file named where one of another kind belongs."""

from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.input.file_kind import (
    ASSIGNMENT,
    BANK,
    TEMPLATE,
    kind_of,
    require_kind,
    require_no_table,
)
from probgen.input.remedy import BuildIt, WorkIt

KINDS = [
    ({"roster": "a.csv", "title": "W"}, ASSIGNMENT),
    ({"problem": [{}], "course": "M"}, ASSIGNMENT),
    ({"statement": "", "id": "x", "title": "W"}, TEMPLATE),
    ({"find": []}, TEMPLATE),
    ({"template": [], "title": "W"}, BANK),
    ({"title": "W"}, ""),
    ({"statement": "", "roster": ""}, ""),
    ({}, ""),
]


@pytest.mark.parametrize(("content", "kind"), KINDS)
def test_fields_tell_what_a_file_is(content: dict[str, object], kind: str) -> None:
    assert kind_of(content) == kind


def test_another_kind_is_refused_with_what_to_do_with_it() -> None:
    for content, wanted, said, remedy in (
        ({"roster": ""}, TEMPLATE, "an assignment file", BuildIt("x.toml")),
        ({"find": 1}, ASSIGNMENT, "a template", WorkIt("x.toml")),
        ({"template": 1}, ASSIGNMENT, "a bank", None),
    ):
        with pytest.raises(InputError) as caught:
            require_kind(content, wanted, "x.toml")
        (fault,) = caught.value.faults
        assert (fault.file, fault.field, fault.found) == ("x.toml", "", said)
        assert fault.remedy == remedy
        assert fault.mend == ("" if remedy else 'name it in an assignment file: bank = "x.toml"')


def test_what_may_be_meant_goes_on() -> None:
    require_kind({"roster": ""}, ASSIGNMENT, "x.toml")
    require_kind({"titel": "a slip"}, ASSIGNMENT, "x.toml")
    require_no_table(Path("week-5.toml"), ASSIGNMENT)


@pytest.mark.parametrize("name", ["class.csv", "class.XLSX", "class.ods"])
def test_a_class_list_is_named_in_an_assignment_file(name: str) -> None:
    with pytest.raises(InputError) as caught:
        require_no_table(Path("in") / name, ASSIGNMENT)
    (fault,) = caught.value.faults
    assert (fault.found, fault.expected) == ("a class list", "an assignment file")
    assert f'roster = "{name}"' in fault.mend
