"""A record comes from a colleague: it is data, and never a program or a path."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any, get_origin, get_type_hints

import pytest
from click.testing import CliRunner

from probgen.bank.bank import default_bank
from probgen.cli import main
from probgen.course.exam import Exam
from probgen.course.record import Assignment, Record, read_record, write_record
from probgen.course.record_schema import BOUNDS
from probgen.course.roster import Student
from probgen.course.setfile import Assigned, ProblemSet
from probgen.draws.draw import draw
from probgen.input.fault import InputError
from probgen.sheets.house import House
from probgen.sheets.style import HouseStyle

STUDENTS = (Student("Zoë", "007", "A"), Student("李 明", "8"))


def record() -> Record:
    template = default_bank().read("forearm-load")
    draws = tuple(draw(template, "spring", student.id) for student in STUDENTS)
    return Record(
        seed="spring",
        set=ProblemSet("Mechanics", "Week 3", "class.csv", (Assigned("forearm-load", 8),)),
        students=STUDENTS,
        codes=("ABCD-EFGH", "JKMN-PQRS"),
        assignments=(Assignment(template.id, template.source, draws),),
        house=House(HouseStyle(logo=b"\x89PNG\x00", logo_kind=".png", text="sans")),
    )


DATA: dict[str, Any] = json.loads(write_record(record()))


def set_at(*place: str | int, to: object) -> Callable[[Any], Any]:
    def change(data: Any) -> Any:
        inner = data
        for step in place[:-1]:
            inner = inner[step]
        inner[place[-1]] = to
        return data

    return change


VALUES = ("problems", 0, "values")
GIVEN = next(iter(DATA["problems"][0]["values"]))
OTHER = default_bank().read("seesaw-two-riders").source
ATTACKS: dict[str, Callable[[Any], Any]] = {
    "a list": lambda _: [],
    "nothing": lambda _: None,
    "a number": lambda _: 10**30,
    "the kind of a logo is a path": set_at("style", "logo_kind", to="/../../evil.tex"),
    "the kind of a logo is TeX": set_at("style", "logo_kind", to=".tex"),
    "a logo that is none": set_at("style", "logo", to="cGxhaW4="),
    "a logo that is no base 64": set_at("style", "logo", to="%%%"),
    "a style of another type": set_at("style", to="plain"),
    "a colour that is TeX": set_at("style", "colour", to="\\input{x}"),
    "a huge logo height": set_at("style", "logo_height", to=10**15),
    "true for a number": set_at("style", "logo_height", to=True),
    "an unknown field": set_at("style", "script", to="x"),
    "a billion spare papers": set_at("set", "exam", to={"versions": 2, "spare": 10**9}),
    "versions without end": set_at("set", "exam", to={"versions": 10**9}),
    "an exam without versions": set_at("set", "exam", to={"versions": 2}),
    "room without end": set_at("set", "working", to=1e300),
    "figures without end": set_at("set", "convention", "figures", to=10**6),
    "g in words": set_at("set", "convention", "gravity", to="strong"),
    "g of many digits": set_at("set", "convention", "gravity", to="9." + "8" * 10_000),
    "g = 0": set_at("set", "convention", "gravity", to="0"),
    "unknown units": set_at("set", "convention", "units", to="cubits"),
    "units as a list": set_at("set", "convention", "units", to=["SI"]),
    "no problems": set_at("problems", to=[]),
    "a problem more": lambda data: {**data, "problems": data["problems"] * 2},
    "problems in a text": set_at("problems", to="forearm-load"),
    "no students": set_at("students", to=[]),
    "students as numbers": set_at("students", to=[1, 2]),
    "a student without a name": set_at("students", 0, "name", to=" "),
    "a name without end": set_at("students", 0, "name", to="W" * 100_000),
    "a name that commands a terminal": set_at("students", 0, "name", to="A\x1b]0;x\x07"),
    "a seed that does": set_at("seed", to="\x9b31m"),
    "a name of another type": set_at("students", 0, "name", to={"first": "Zoë"}),
    "an id twice": set_at("students", 0, "id", to="8"),
    "no code": set_at("students", 0, "code", to=""),
    "a code twice": set_at("students", 0, "code", to="JKMN-PQRS"),
    "a code that is a path": set_at("students", 0, "code", to="../../x"),
    "one value less": set_at(*VALUES, GIVEN, "drawn", to=["1.0"]),
    "one value more": set_at(*VALUES, GIVEN, "drawn", to=["1.0"] * 3),
    "values as numbers": set_at(*VALUES, GIVEN, "drawn", to=[1.0, 2.0]),
    "huge values": set_at(*VALUES, GIVEN, "drawn", to=["1e999999", "1e999999"]),
    "not a number": set_at(*VALUES, GIVEN, "drawn", to=["NaN", "NaN"]),
    "no unit": set_at(*VALUES, GIVEN, "unit", to="furlong"),
    "another unit": set_at(*VALUES, GIVEN, "unit", to="deg"),
    "a quantity less": lambda data: (data["problems"][0]["values"].pop(GIVEN), data)[1],
    "digits nobody draws": set_at(*VALUES, GIVEN, "drawn", to=["0.123", "0.123"]),
    "another template": set_at("problems", 0, "template", to="shelf"),
    "another revision": set_at("problems", 0, "revision", to=999),
    "no template": set_at("problems", 0, "source", to="x = 1"),
    "another template's text": set_at("problems", 0, "source", to=OTHER),
    "a format to come": set_at("format", to=2),
    "a format in words": set_at("format", to="1"),
    "layouts in a list": set_at("layouts", to=["sheet.tex.j2"]),
    "a layout of another type": set_at("layouts", to={"sheet.tex.j2": 3}),
    "layouts nobody vouched for": set_at("layouts", to={"sheet.tex.j2": "\\input{/etc/passwd}"}),
}


def build(text: str, folder: Path, *options: str) -> tuple[int, str]:
    path = folder / "record.json"
    path.write_text(text, encoding="utf-8")
    out = str(folder / "out")
    result = CliRunner().invoke(main, ["build", str(path), "--out", out, "--quiet", *options])
    if result.exception and not isinstance(result.exception, SystemExit):
        raise result.exception
    return result.exit_code, result.output


@pytest.mark.parametrize("attack", ATTACKS.values(), ids=ATTACKS)
def test_a_record_that_is_wrong_is_one_message(
    attack: Callable[[Any], Any], tmp_path: Path
) -> None:
    code, message = build(json.dumps(attack(json.loads(json.dumps(DATA)))), tmp_path)
    assert code == 1
    assert "record.json" in message
    assert not (tmp_path / "out").exists()
    for inside in ("Traceback", "<class", "Decimal(", "KeyError", "Error:"):
        assert inside not in message


def test_deep_and_endless_records(tmp_path: Path) -> None:
    for text in ("[" * 200_000, '{"format": 1' + "0" * 100_000 + "}", '{"a": "\\ud800"}', "\x00"):
        code, message = build(text, tmp_path)
        assert code == 1, text[:20]
        assert "Traceback" not in message


def test_layouts_of_a_record_are_asked_about(tmp_path: Path) -> None:
    house = House(layouts=(("sheet.tex.j2", "x"),))
    code, message = build(write_record(replace(record(), house=house)), tmp_path)
    assert code == 1
    assert "sheet.tex.j2" in message
    assert "--trust-layouts" in message
    assert "--layouts" in message


def test_an_exam_has_a_code_for_each_version(tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    whole = replace(record(), set=replace(record().set, exam=Exam(2)))
    path.write_text(write_record(whole), encoding="utf-8")
    assert read_record(path).codes == whole.codes
    path.write_text(write_record(whole).replace('"B": ', '"C": '), encoding="utf-8")
    with pytest.raises(InputError, match="A, B"):
        read_record(path)


def test_every_list_and_table_of_a_record_has_a_bound() -> None:
    for owner, bounds in BOUNDS.items():
        for name, hint in get_type_hints(owner).items():
            if get_origin(hint) in (list, tuple, dict):
                assert bounds[name].form in (list, dict), f"{owner.__name__}.{name}"
