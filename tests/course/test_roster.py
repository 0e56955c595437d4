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
    "cells to spare": b"name,id\nAda Quill,0071,,\nBea Ostrander,0072,,,\n",
    "remarks": b'# the class, as of May\nname,id\n# "late"\nAda Quill,0071\nBea Ostrander,0072\n',
    "two names": b"Last name,First name,id\nQuill,Ada,0071\nOstrander,Bea,0072\n",
    "other columns": b"#,id,room,Student name\n1,0071,B,Ada Quill\n2,0072,C,Bea Ostrander\n",
    "spaces": b" name , id \n  Ada   Quill , 0071\nBea Ostrander, 0072 \n",
}


@pytest.mark.parametrize("content", SAME_CLASS.values(), ids=SAME_CLASS)
def test_one_class_in_many_dresses(content: bytes, tmp_path: Path) -> None:
    path = tmp_path / "class.csv"
    path.write_bytes(content)
    assert read_roster(path).students == (ADA, BEA)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16"])
def test_letters_survive_the_encoding(encoding: str, tmp_path: Path) -> None:
    path = tmp_path / "class.csv"
    path.write_bytes("name;id\nZoë Müller-Åström;7\n".encode(encoding))
    assert read_roster(path).students[0].name == "Zoë Müller-Åström"


def test_quoted_commas_and_optional_columns() -> None:
    text = 'Student,ID,Section,E-mail\n"Quill, Ada ""Addie""",1,"Mon, 9 am",ada@school.example\n'
    (student,) = parse_roster(text, "class.csv").students
    assert student == Student('Ada "Addie" Quill', "1", "Mon, 9 am")


def test_headings_that_are_none_are_shown_as_they_stand() -> None:
    with pytest.raises(InputError) as caught:
        parse_roster("who,,id,\nAda,,1,\n", "class.csv")
    (fault,) = caught.value.faults
    assert (fault.found, fault.expected[:14]) == ('"who, id"', "a heading Name")


def test_seats_and_large_print() -> None:
    text = "name,id,Seat,Large print\nAda,1,B7,x\nBea,2,B 8,\nCid,3,,NO\n"
    ada, bea, cid = parse_roster(text, "class.csv").students
    assert [student.seat for student in (ada, bea, cid)] == ["B7", "B 8", ""]
    assert [student.large for student in (ada, bea, cid)] == [True, False, False]


IDS, NAMES = ([f"line {n}, {what}" for n in (2, 3, 4)] for what in ("id", "name"))
FAULTY = {
    "large print": ("name,id,large print\nAda,1,perhaps\n", ["line 2, large print"]),
    "nothing": ("", [""]),
    "headings only": ("name,id\n", [""]),
    "no headings": ("Ada Quill,0071\nBea Ostrander,0072\n", ["line 1", "line 1"]),
    "rounded id": ("name,id\nAda,2.026E+07\nBea,2,026E+07\n", ["line 2, id", "line 3"]),
    "errors for ids": ("name,id\nAda,#N/A\nBea,#REF!\nCid,####\n", IDS),
    "marks for ids": ("name,id\nAda,??\nBea,n/a\nCid,TBD\n", IDS),
    "marks for names": ("name,id\n??,1\n#NAME?,2\n-,3\n", NAMES),
    "lost letters": ("name,id\n?? ??,1\nM?ller,2\nM\ufffdller,3\n", NAMES),
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


LEFT_OUT = {
    "points possible": "name,id\nPoints Possible,\nAda Quill,0071\n",
    "average": "name,id\nAda Quill,0071\nClass average:,\n",
    "average for an id": "name,id\nAda Quill,0071\n,Mean\n",
    "neither name nor id": "name,id,week 1\nAda Quill,0071,9\n,,8.5\n",
    "commented out": "name,id\nAda Quill,0071\n# Bea Ostrander,0072\n",
    "above the headings": "Mechanics 101,,\nExported 9 March,,\nname,id\nAda Quill,0071\n",
}


@pytest.mark.parametrize("text", LEFT_OUT.values(), ids=LEFT_OUT)
def test_what_is_no_student_is_left_out_with_a_remark(text: str) -> None:
    listed = parse_roster(text, "class.csv")
    assert listed.students == (ADA,)
    (remark,) = listed.remarks
    assert remark.startswith("class.csv: line ")


def test_people_may_be_called_like_rows() -> None:
    text = "name,id\nMax,17\nMin Total,18\nMedian,19\n"
    assert len(parse_roster(text, "class.csv").students) == 3


def test_remarks_above_the_headings_are_for_the_reader_alone() -> None:
    assert parse_roster("# the class\nname,id\nAda Quill,0071\n", "class.csv").remarks == ()


def test_turned_names_are_remarked_on_once() -> None:
    text = 'name,id\n"Quill, Ada",1\n"Ostrander, Bea",2\nCid Last,3\n"Dee Ray, Jr.",4\n'
    listed = parse_roster(text, "class.csv")
    assert [student.name for student in listed.students] == [
        "Ada Quill", "Bea Ostrander", "Cid Last", "Dee Ray, Jr.",
    ]  # fmt: skip
    said = 'class.csv: "Quill, Ada" is printed as Ada Quill, and so '
    assert listed.remarks == (f'{said}is "Ostrander, Bea"',)
    rows = "".join(f'"Quill, {name}",{name}\n' for name in ("Ada", "Bo", "Cy", "Di", "Ed", "Flo"))
    (remark,) = parse_roster(f"name,id\n{rows}", "class.csv").remarks
    assert remark == f'{said}are "Quill, Bo", "Quill, Cy", "Quill, Di" and 2 more'


def test_needs_are_told() -> None:
    text = (
        "name,id,Large print,Extra time,Accommodations (office)\n"
        "Ada,1,18 pt,25%,\nBea,2,,,\nCid,3,no,0,Large-print paper; quiet room\nDee,4,,yes,none\n"
    )
    told = [(each.large, each.needs) for each in parse_roster(text, "class.csv").students]
    assert told == [
        (True, "extra time 25%"),
        (False, ""),
        (True, "Large-print paper; quiet room"),
        (False, "extra time"),
    ]


def test_of_several_columns_of_ids_one_is_named() -> None:
    listed = parse_roster("ID,Student ID,name\n9,0071,Ada Quill\n", "class.csv")
    assert listed.students == (ADA,)
    assert listed.remarks == ('class.csv: ids are taken from the column "Student ID", not from ID',)


def test_lost_zeros_are_remarked_on() -> None:
    text = "name,id\nAda,0071234\nBea,0071235\nCid,71236\n"
    (remark,) = parse_roster(text, "class.csv").remarks
    assert remark.startswith("class.csv: ids: 71236: fewer digits than the 7")


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="no such file"):
        read_roster(tmp_path / "class.csv")
