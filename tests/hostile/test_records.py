"""A record comes from a colleague: it is data, and never a program or a path."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any, get_origin, get_type_hints

import pytest
from click.testing import CliRunner

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.cli import main
from probgen.course import record_schema
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.frozen import require_drawn_from
from probgen.course.issue import FrozenTemplate
from probgen.course.record import Record
from probgen.course.record_file import read_record, write_record
from probgen.course.record_schema import BOUNDS
from probgen.course.roster import Student
from probgen.draws.draw import draw
from probgen.input.fault import InputError
from probgen.input.schema import WrongError
from probgen.input.table import LONGEST_LIST
from probgen.sheets.house import House
from probgen.sheets.style import HouseStyle
from tests.draws.conftest import HOOK
from tests.records import Column, first_format, record_of
from tests.sheets.pictures import PNG

STUDENTS = (Student("Zoë", "007", "A"), Student("李 明", "8"))


SET = ProblemSet("Mechanics", "Week 3", "class.csv", (Assigned("forearm-load", 8),))
TEMPLATE = default_bank().read("forearm-load")
COLUMN = Column(
    TEMPLATE.id, TEMPLATE.source, [draw(TEMPLATE, "spring", each.id) for each in STUDENTS]
)
STYLE = House(HouseStyle(logo=PNG, logo_kind=".png", text="sans"))
CODES = ("ABCD-EFGH", "JKMN-PQRS")


def record(house: House = STYLE) -> Record:
    return record_of(SET, STUDENTS, CODES, [COLUMN], house)


FIRST: dict[str, Any] = first_format(SET, STUDENTS, CODES, COLUMN)
FIRST["style"] = json.loads(write_record(record()))["issues"][0]["style"]
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
GIVEN = next(iter(FIRST["problems"][0]["values"]))
OTHER = default_bank().read("seesaw-two-riders").source
FIRST_ATTACKS: dict[str, Callable[[Any], Any]] = {
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
    "a format to come": set_at("format", to=3),
    "another format": set_at("format", to=2),
    "a format in words": set_at("format", to="1"),
    "layouts in a list": set_at("layouts", to=["sheet.tex.j2"]),
    "a layout of another type": set_at("layouts", to={"sheet.tex.j2": 3}),
    "layouts nobody vouched for": set_at("layouts", to={"sheet.tex.j2": "\\input{/etc/passwd}"}),
}


ISSUE = ("issues", 0)
EDITION = ("printings", 0, "editions", 0)
TEXT = DATA["issues"][0]["templates"][0]["text"]
ATTACKS: dict[str, Callable[[Any], Any]] = {
    "a list": lambda _: [],
    "the kind of a logo is a path": set_at(*ISSUE, "style", "logo_kind", to="/../evil.tex"),
    "a logo that is none": set_at(*ISSUE, "style", "logo", to="cGxhaW4="),
    "an unknown field": set_at(*ISSUE, "script", to="x"),
    "versions without end": set_at(*ISSUE, "set", "exam", to={"versions": 10**9}),
    "an exam without versions": set_at(*ISSUE, "set", "exam", to={"versions": 2}),
    "figures without end": set_at(*ISSUE, "set", "method", "significant_figures", to=10**6),
    "no issues": set_at("issues", to=[]),
    "an issue more": lambda data: {**data, "issues": data["issues"] * 2},
    "no template": set_at(*ISSUE, "templates", to=[]),
    "a text that is not there": set_at(*ISSUE, "templates", 0, "text", to="0" * 32),
    "a layout that is not there": set_at(*ISSUE, "layouts", to={"sheet.tex.j2": "0" * 32}),
    "a text that is no digest": set_at(*ISSUE, "templates", 0, "text", to="../../x"),
    "no unit": set_at(*ISSUE, "templates", 0, "units", GIVEN, to="furlong"),
    "another unit": set_at(*ISSUE, "templates", 0, "units", GIVEN, to="deg"),
    "another template": set_at(*ISSUE, "templates", 0, "template", to="shelf"),
    "another template's text": set_at("texts", TEXT, to=OTHER),
    "a text without end": set_at("texts", TEXT, to="x" * 10**7),
    "an erratum without a day": set_at(*ISSUE, "erratum", to={"day": "soon", "what": "x"}),
    "no printings": set_at("printings", to=[]),
    "a printing of no issue": set_at("printings", 0, "issue", to=7),
    "a printing before all": set_at("printings", 0, "issue", to=-1),
    "a code twice": set_at(*EDITION, "code", to="JKMN-PQRS"),
    "a code that is a path": set_at(*EDITION, "code", to="../../x"),
    "what follows nothing": set_at(*EDITION, "follows", to="0000-0000"),
    "what follows a path": set_at(*EDITION, "follows", to="../x"),
    "nobody's paper": set_at(*EDITION, "owner", to="7"),
    "a paper without an owner": set_at(*EDITION, "owner", to=""),
    "versions of a paper without end": set_at(*EDITION, "version", to=10**9),
    "no values": set_at(*EDITION, "drawn", to=[]),
    "one value less": lambda data: (data["printings"][0]["editions"][0]["drawn"][0].pop(), data)[1],
    "values as numbers": set_at(*EDITION, "drawn", 0, 0, to=1.0),
    "huge values": set_at(*EDITION, "drawn", 0, 0, to="1e999999"),
    "digits nobody draws": set_at(*EDITION, "drawn", 0, 0, to="0.123"),
    "a secret in words": set_at("secret", to="hush"),
    "no digest": lambda data: {k: v for k, v in data.items() if k != "digest"},
    "a digest of another type": set_at("digest", to=5),
    "an id twice": set_at("students", 0, "id", to="8"),
    "a letter in a class": set_at("students", 0, "letter", to="B"),
    "layouts nobody vouched for": lambda data: set_at(*ISSUE, "layouts", to={
        "sheet.tex.j2": "e" * 32})(set_at("texts", "e" * 32, to="\\input{/etc/passwd}")(data)),
}  # fmt: skip


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
    """Also where the person says that it was edited, and is to be taken all the same."""
    text = json.dumps(attack(json.loads(json.dumps(DATA))))
    refused(text, tmp_path)
    refused(text, tmp_path, "--edited")


@pytest.mark.parametrize("attack", FIRST_ATTACKS.values(), ids=FIRST_ATTACKS)
def test_a_record_of_version_0_1_that_is_wrong_is_one_message(
    attack: Callable[[Any], Any], tmp_path: Path
) -> None:
    refused(json.dumps(attack(json.loads(json.dumps(FIRST)))), tmp_path)


def refused(text: str, folder: Path, *options: str) -> None:
    code, message = build(text, folder, *options)
    assert code == 1
    assert "record.json" in message
    assert not (folder / "out").exists()
    for inside in ("Traceback", "<class", "Decimal(", "KeyError", "Error:"):
        assert inside not in message


# Which field is at fault in each of the attacks that the record's own form gives away.
LISTED = f"problems[0].values[{GIVEN}]"
FIELDS = {
    "a list": "",
    "nothing": "",
    "a number": "",
    "the kind of a logo is a path": "style.logo_kind",
    "the kind of a logo is TeX": "style.logo_kind",
    "a logo that is none": "style.logo",
    "a logo that is no base 64": "style.logo",
    "a style of another type": "style",
    "a colour that is TeX": "style.colour",
    "a huge logo height": "style.logo_height",
    "true for a number": "style.logo_height",
    "an unknown field": "style.script",
    "a billion spare papers": "set.exam.spare",
    "versions without end": "set.exam.versions",
    "an exam without versions": "versions",
    "room without end": "set.working",
    "figures without end": "set.convention.figures",
    "g in words": "set.convention.gravity",
    "g of many digits": "set.convention.gravity",
    "g = 0": "set.convention.gravity",
    "unknown units": "set.convention.units",
    "units as a list": "set.convention.units",
    "no problems": "problems",
    "a problem more": "problems",
    "problems in a text": "problems",
    "no students": "students",
    "students as numbers": "students[0]",
    "a student without a name": "students[0].name",
    "a name of another type": "students[0].name",
    "an id twice": "students",
    "no code": "students",
    "a code twice": "students",
    "a code that is a path": "students",
    "one value less": f"problems[0].values.{GIVEN}",
    "one value more": f"problems[0].values.{GIVEN}",
    "values as numbers": f"{LISTED}.drawn[0]",
    "huge values": f"{LISTED}.drawn[0]",
    "not a number": f"{LISTED}.drawn[0]",
    "no unit": f"{LISTED}.unit",
    "a format to come": "format",
    "a format in words": "format",
    "layouts in a list": "layouts",
    "layouts of another type": "layouts[sheet.tex.j2]",
}
FIRST_ATTACKS["layouts of another type"] = FIRST_ATTACKS.pop("a layout of another type")


def faults_of(data: Any, folder: Path) -> list[str]:
    """The fields of a record that are at fault by its form."""
    path = folder / "record.json"
    path.write_text(json.dumps(data), encoding="utf-8")
    try:
        read_record(path)
    except InputError as error:
        return [fault.field for fault in error.faults]
    return []


def changed(change: Callable[[Any], Any]) -> Any:
    return change(json.loads(json.dumps(FIRST)))


@pytest.mark.parametrize(("attack", "field"), FIELDS.items(), ids=FIELDS)
def test_the_field_that_is_wrong_is_named(attack: str, field: str, tmp_path: Path) -> None:
    assert faults_of(changed(FIRST_ATTACKS[attack]), tmp_path)[0] == field


def test_a_format_of_another_release_is_one_fault_whatever_else_is_there(tmp_path: Path) -> None:
    other = {**DATA, "format": 3, "classes": 7, "students": "all"}
    assert faults_of(other, tmp_path) == ["format"]


# Which quantity or text is at fault where the record does not go with its template.
STRANGE = {
    "another unit": "values",
    "a quantity less": "values",
    "digits nobody draws": f"values.{GIVEN}.drawn[0]",
    "another template": "source",
    "another revision": "source",
    "another template's text": "source",
}


def drawn_faults(data: Any, folder: Path) -> list[str]:
    path = folder / "record.json"
    path.write_text(json.dumps(data), encoding="utf-8")
    whole = read_record(path)
    (frozen,) = whole.issue.templates
    template = read_template(frozen.source, "source")
    draws = [edition.draws[0] for edition in whole.current]
    try:
        require_drawn_from(template, frozen, draws, "source")
    except InputError as error:
        return [fault.field for fault in error.faults]
    return []


@pytest.mark.parametrize(("attack", "field"), STRANGE.items(), ids=STRANGE)
def test_draws_that_the_template_does_not_give(attack: str, field: str, tmp_path: Path) -> None:
    assert drawn_faults(changed(FIRST_ATTACKS[attack]), tmp_path)[0] == field
    assert drawn_faults(FIRST, tmp_path) == []


def test_a_derived_quantity_follows_from_the_givens() -> None:
    template = read_template(HOOK.format(longest="0.80", relation=">"), "hook.toml")
    draws = tuple(draw(template, "spring", student.id) for student in STUDENTS)
    frozen = FrozenTemplate(template.id, template.revision, template.source)
    require_drawn_from(template, frozen, draws, "source")
    name = template.derived[0].id
    one = draws[1].values[name]
    wrong = replace(one, value=one.value + 1)
    moved = replace(draws[1], values={**draws[1].values, name: wrong})
    with pytest.raises(InputError) as caught:
        require_drawn_from(template, frozen, (draws[0], moved), "source")
    assert [fault.field for fault in caught.value.faults] == [f"values.{name}.drawn[1]"]


def test_deep_and_endless_records(tmp_path: Path) -> None:
    for text in ("[" * 200_000, '{"format": 1' + "0" * 100_000 + "}", '{"a": "\\ud800"}', "\x00"):
        code, message = build(text, tmp_path)
        assert code == 1, text[:20]
        assert "Traceback" not in message


def test_layouts_of_a_record_are_asked_about(tmp_path: Path) -> None:
    house = House(layouts=(("sheet.tex.j2", "x"),))
    code, message = build(write_record(record(house)), tmp_path)
    assert code == 1
    assert "sheet.tex.j2" in message
    assert "--trust-layouts" in message
    assert "--layouts" in message


def test_an_exam_has_a_code_for_each_version(tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    text = json.dumps(first_format(replace(SET, exam=Exam(2)), STUDENTS, CODES, COLUMN))
    path.write_text(text, encoding="utf-8")
    assert [version.code for version in read_record(path).versions] == list(CODES)
    path.write_text(text.replace('"B": ', '"C": '), encoding="utf-8")
    with pytest.raises(InputError, match="A, B"):
        read_record(path)


def test_every_list_and_table_of_a_record_has_a_bound() -> None:
    for owner, bounds in BOUNDS.items():
        for name, hint in get_type_hints(owner).items():
            if get_origin(hint) in (list, tuple, dict):
                assert bounds[name].form in (list, dict), f"{owner.__name__}.{name}"


@pytest.mark.parametrize(
    ("most", "more"),
    [("0." + "3" * 28, "0." + "3" * 29), ("1E+15", "1E+16"), ("1E-15", "1E-16")],
)
def test_numbers_have_a_bound(most: str, more: str) -> None:
    assert record_schema._digits(most) == Decimal(most)
    with pytest.raises(WrongError):
        record_schema._digits(more)


@pytest.mark.parametrize(
    ("read", "most"),
    [(record_schema._long(5), "12345"), (record_schema._banks, ["a"] * LONGEST_LIST)],
    ids=["text", "list"],
)
def test_texts_and_lists_have_a_bound(read: Callable[[Any], object], most: Any) -> None:
    read(most)
    with pytest.raises(WrongError):
        read(most + most[:1])


@pytest.mark.parametrize(
    ("text", "is_one"), [("0.01", True), ("0.009", False), ("100", True), ("100.1", False)]
)
def test_gravity_is_that_of_some_planet(text: str, is_one: bool) -> None:
    assert record_schema._is_gravity(text) == is_one
