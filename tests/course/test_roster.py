"""Class lists as spreadsheets and gradebooks export them."""

from pathlib import Path

import pytest

from probgen.course.roster import Student, parse_roster, read_roster
from probgen.input.fault import InputError

ADA = Student("Ada Quill", "0071")
BEA = Student("Bea Ostrander", "0072")

SAME_CLASS = {
    "plain": b"name,id\nAda Quill,0071\nBea Ostrander,0072\n",
    "byte order mark": b"\xef\xbb\xbfname,id\nAda Quill,0071\nBea Ostrander,0072\n",
    "semicolons": b"Name;Student ID\r\nAda Quill;0071\r\nBea Ostrander;0072\r\n",
    "tabs": b"NAME\tID\nAda Quill\t0071\nBea Ostrander\t0072",
    "old line ends": b"name,id\rAda Quill,0071\rBea Ostrander,0072\r",
    "named separator": b"sep=;\nname;id\nAda Quill;0071\nBea Ostrander;0072\n",
    "utf-16": "name\tid\nAda Quill\t0071\nBea Ostrander\t0072\n".encode("utf-16"),
    "empty lines": b"\n,,\nname,id,\n,,\nAda Quill,0071,\n\n\nBea Ostrander,0072,\n,,\n",
    "remarks": b'# the class, as of May\nname,id\n# "late"\nAda Quill,0071\nBea Ostrander,0072\n',
    "two names": b"Last name,First name,id\nQuill,Ada,0071\nOstrander,Bea,0072\n",
    "other columns": b"#,id,room,Student name\n1,0071,B,Ada Quill\n2,0072,C,Bea Ostrander\n",
    "spaces": b" name , id \n  Ada   Quill , 0071\nBea Ostrander, 0072 \n",
}


@pytest.mark.parametrize("content", SAME_CLASS.values(), ids=SAME_CLASS)
def test_one_class_in_many_dresses(content: bytes, tmp_path: Path) -> None:
    path = tmp_path / "class.csv"
    path.write_bytes(content)
    assert read_roster(path) == (ADA, BEA)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16"])
def test_letters_survive_the_encoding(encoding: str, tmp_path: Path) -> None:
    path = tmp_path / "class.csv"
    path.write_bytes("name;id\nZoë Müller-Åström;7\n".encode(encoding))
    assert read_roster(path)[0].name == "Zoë Müller-Åström"


def test_quoted_commas_and_optional_columns() -> None:
    text = 'Student,ID,Section,E-mail\n"Quill, Ada ""Addie""",1,"Mon, 9 am",ada@school.example\n'
    (student,) = parse_roster(text, "class.csv")
    assert student == Student('Quill, Ada "Addie"', "1", "Mon, 9 am")


def test_seats_and_large_print() -> None:
    text = "name,id,Seat,Large print\nAda,1,B7,x\nBea,2,B 8,\nCid,3,,NO\n"
    ada, bea, cid = parse_roster(text, "class.csv")
    assert [student.seat for student in (ada, bea, cid)] == ["B7", "B 8", ""]
    assert [student.large for student in (ada, bea, cid)] == [True, False, False]


FAULTY = {
    "large print": ("name,id,large print\nAda,1,18 pt\n", ["line 2, large print"]),
    "nothing": ("", [""]),
    "headings only": ("name,id\n", [""]),
    "no headings": ("Ada Quill,0071\nBea Ostrander,0072\n", ["line 1", "line 1"]),
    "no id column": ("name,section\nAda,1\n", ["line 1"]),
    "no name column": ("first name,id\nAda,1\n", ["line 1"]),
    "an id twice": ("name,id\nAda,1\n\nBea,1\n", ["line 4, id"]),
    "missing cells": ("name,id\n,1\nBea,\n", ["line 2, name", "line 3, id"]),
    "unquoted comma": ("name,id\nQuill, Ada,1\n", ["line 2"]),
    "open quotation mark": ('name,id\nAda,1\n"Bea,2\nCid,3\n', ["line 3"]),
    "all at once": ("name,id\n,1\nBea,1\n,3\n", ["line 2, name", "line 3, id", "line 4, name"]),
}


@pytest.mark.parametrize(("text", "fields"), FAULTY.values(), ids=FAULTY)
def test_faults_are_named_with_their_lines(text: str, fields: list[str]) -> None:
    with pytest.raises(InputError) as caught:
        parse_roster(text, "class.csv")
    assert [fault.field for fault in caught.value.faults] == fields
    assert {fault.file for fault in caught.value.faults} == {"class.csv"}
    assert all(fault.expected and fault.mend for fault in caught.value.faults)


@pytest.mark.parametrize("content", [b"PK\x03\x04\x00\x00workbook", b"\x00\x01\x02\x03"])
def test_a_workbook_is_no_class_list(content: bytes, tmp_path: Path) -> None:
    path = tmp_path / "class.xlsx"
    path.write_bytes(content)
    with pytest.raises(InputError, match="CSV"):
        read_roster(path)


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="no such file"):
        read_roster(tmp_path / "class.csv")
