"""Records: what was built can be read back, whole or not at all."""

import json
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.print_run import PrintRun
from probgen.course.record import Assignment, Record, read_record, write_record
from probgen.course.roster import Student
from probgen.draws.draw import Draw
from probgen.input.fault import InputError
from probgen.quantities.expression import Number
from probgen.quantities.unit import DEGREE, METRE, ONE, US_CUSTOMARY
from probgen.sheets.house import House
from probgen.sheets.style import HouseStyle
from probgen.working.convention import Convention


def draw_of(length: str) -> Draw:
    values = {
        "L": Number(Decimal(length), METRE),
        "theta": Number(Decimal("40"), DEGREE),
        "n": Number(Decimal("0.50"), ONE),
    }
    return Draw("shelf", 2, values)


RECORD = Record(
    seed="spring",
    set=ProblemSet(
        "Mechanics",
        "Week 3",
        "class.csv",
        (Assigned("shelf", 8),),
        paper="a4",
        convention=Convention(torque="arm", gravity="32.17", units=US_CUSTOMARY),
    ),
    students=(Student("Zoë", "007", "A"), Student("李 明", "8")),
    codes=("ABCD-EFGH", "JKMN-PQRS"),
    assignments=(Assignment("shelf", 'id = "shelf"\n', (draw_of("1.20"), draw_of("1.30"))),),
)


HOUSE = House(
    HouseStyle(text="sans", colour="#102030", logo=b"\x89PNG\x00", logo_kind=".png"),
    (("sheet.tex.j2", "<< sheet.points >>"),),
    "record.json: layouts",
)
RECORDS = {
    "each their own": RECORD,
    "seats, print run": replace(
        RECORD,
        set=replace(RECORD.set, run=PrintRun("seat", duplex=False, answers=True)),
        students=(Student("Zoë", "007", seat="B7", large=True), Student("李 明", "8")),
    ),
    "an exam": replace(RECORD, set=replace(RECORD.set, exam=Exam(2, 5, 1, notes=("Hush.",)))),
    "a house": replace(RECORD, house=HOUSE),
}


@pytest.mark.parametrize("record", RECORDS.values(), ids=RECORDS)
def test_a_record_is_read_back_as_it_was(record: Record, tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    path.write_text(write_record(record), encoding="utf-8")
    found = read_record(path)
    assert replace(found, house=replace(found.house, folder=record.house.folder)) == record
    assert write_record(found) == write_record(record)


def test_a_version_for_each_student_or_an_exams_few() -> None:
    assert [version.owner for version in RECORD.versions] == ["Zoë (007)", "李 明 (8)"]
    assert [version.owner for version in RECORDS["an exam"].versions] == ["version A", "version B"]


def test_printed_digits_are_kept() -> None:
    (problem,) = json.loads(write_record(RECORD))["problems"]
    assert problem["values"]["L"] == {"unit": "m", "drawn": ["1.20", "1.30"]}
    assert problem["source"] == 'id = "shelf"\n'


def test_an_address_in_a_record_of_version_0_1_is_left_there(tmp_path: Path) -> None:
    content = json.loads(write_record(RECORD))
    for student in content["students"]:
        student["email"] = "z@school.example"
    (tmp_path / "old.json").write_text(json.dumps(content), encoding="utf-8")
    assert read_record(tmp_path / "old.json").students == RECORD.students


BROKEN = {
    "not JSON": lambda text: text[:-20],
    "another format": lambda text: text.replace('"format": 1', '"format": 2'),
    "no seed": lambda text: text.replace('"seed"', '"sead"', 1),
    "a draw too few": lambda text: text.replace('"1.20",', ""),
    "a list": lambda text: "[]",
    "no unit": lambda text: text.replace('"unit": "m"', '"unit": "furlong"'),
    "a value in words": lambda text: text.replace('"1.20"', '"long"'),
}


@pytest.mark.parametrize("broken", BROKEN.values(), ids=BROKEN)
def test_a_broken_record_is_refused(broken: Callable[[str], str], tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    path.write_text(broken(write_record(RECORD)), encoding="utf-8")
    with pytest.raises(InputError, match=r"record\.json"):
        read_record(path)
