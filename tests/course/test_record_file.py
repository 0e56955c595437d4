"""A record's file: what was handed out can be read back, whole or not at all."""

import json
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from probgen.course.assignment import Assigned, BankNames, ProblemSet
from probgen.course.edition import Edition, Printing
from probgen.course.exam import Exam
from probgen.course.issue import Erratum, Issue, canonical, digest_of
from probgen.course.numbers_had import Had
from probgen.course.print_run import PrintRun
from probgen.course.record import Record
from probgen.course.record_file import read_record, write_record
from probgen.course.roster import Student
from probgen.course.rule import Chosen, Rule
from probgen.draws.draw import Draw
from probgen.draws.nearness import Copying
from probgen.input.fault import InputError
from probgen.input.table import LONGEST_LIST
from probgen.quantities.expression import Number
from probgen.quantities.unit import DEGREE, METRE, ONE, US_CUSTOMARY
from probgen.sheets.house import House
from probgen.sheets.logo import LARGEST_LOGO
from probgen.sheets.style import HouseStyle
from probgen.working.convention import Convention
from probgen.working.shares import Share
from tests.records import Column, record_of
from tests.sheets.pictures import PNG


def draw_of(length: str) -> Draw:
    values = {
        "L": Number(Decimal(length), METRE),
        "theta": Number(Decimal("40"), DEGREE),
        "n": Number(Decimal("0.50"), ONE),
    }
    return Draw("shelf", 2, values)


SET = ProblemSet(
    "Mechanics",
    "Week 3",
    "class.csv",
    (Assigned("shelf", 8),),
    paper="a4",
    convention=Convention(torque="arm", gravity="32.17", units=US_CUSTOMARY),
)
CLASS = (Student("Zoë", "007", "A"), Student("李 明", "8"))
CODES = ("ABCDE-FGHJK", "MNPQR-STWXY")
COLUMN = Column("shelf", 'id = "shelf"\n', (draw_of("1.20"), draw_of("1.30")))
HOUSE = House(
    HouseStyle(text="sans", colour="#102030", logo=PNG, logo_kind=".png"),
    (("sheet.tex.j2", "<< sheet.points >>"),),
    "record.json: layouts",
)


def class_of(problem_set: ProblemSet = SET, students: tuple[Student, ...] = CLASS) -> Record:
    return record_of(problem_set, students, CODES, [COLUMN])


def corrected(record: Record) -> Record:
    """The same with a second issue, a changed id, and somebody who has left."""
    erratum = Erratum("2027-03-12", "the shelf's length")
    issue = replace(record.issue, erratum=erratum)
    first, second = record.editions
    later = replace(first, code="00000-00000", errata=(erratum,), follows=first.code, version=2)
    moved = replace(second, code="11111-11111", owner="88", follows=second.code)
    printings = (*record.printings, Printing(0, (moved,)), Printing(1, (later,)))
    issues = (*record.issues, issue)
    return replace(record, issues=issues, printings=printings, students=CLASS[:1])


EXAM = class_of(replace(SET, exam=Exam(2, 5, 1, notes=("Hush.",))))
RECORDS = {
    "each their own": class_of(),
    "seats, print run": class_of(
        replace(SET, run=PrintRun("seat", duplex=False, answers=True)),
        (Student("Zoë", "007", seat="B7", large=True, numbers_of="6"), CLASS[1]),
    ),
    "an exam": EXAM,
    "an exam in large print": class_of(
        replace(SET, exam=Exam(2)), (replace(CLASS[0], large=True, version="B"), CLASS[1])
    ),
    "a house": record_of(SET, CLASS, CODES, [COLUMN], HOUSE),
    "corrected": corrected(class_of()),
    "told who could copy": replace(class_of(), copying=(Copying(2, 0.125, 1),)),
}


@pytest.mark.parametrize("record", RECORDS.values(), ids=RECORDS)
def test_a_record_is_read_back_as_it_was(record: Record, tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    path.write_text(write_record(record), encoding="utf-8")
    assert read_record(path) == record
    assert write_record(read_record(path)) == write_record(record)


def test_printed_digits_and_texts_are_kept_each_text_once() -> None:
    data = json.loads(write_record(RECORDS["corrected"]))
    assert [each["drawn"] for p in data["printings"] for each in p["editions"]][:2] == [
        [["1.20", "40", "0.50"]], [["1.30", "40", "0.50"]],
    ]  # fmt: skip
    assert list(data["texts"].values()) == ['id = "shelf"\n']
    assert {issue["templates"][0]["text"] for issue in data["issues"]} == set(data["texts"])


def test_a_record_that_was_edited_is_refused_unless_it_is_wanted_so(tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    path.write_text(write_record(class_of()).replace('"1.20"', '"1.50"'), encoding="utf-8")
    with pytest.raises(InputError, match="edited since"):
        read_record(path)
    first = read_record(path, edited=True).editions[0].draws[0]
    assert first.values["L"].value == Decimal("1.50")


def test_a_record_laid_out_by_another_program_is_the_same(tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    path.write_text(json.dumps(json.loads(write_record(EXAM)), indent=4), encoding="utf-8")
    assert read_record(path) == EXAM


def test_a_record_may_say_that_it_has_no_layouts_of_its_own(tmp_path: Path) -> None:
    data = json.loads(write_record(EXAM))
    for issue in data["issues"]:
        assert "layouts" not in issue
        issue["layouts"] = {}
    path = tmp_path / "record.json"
    path.write_text(json.dumps(data), encoding="utf-8")
    assert read_record(path, edited=True) == EXAM


def test_a_set_has_the_words_of_assignment_files_and_former_ones_are_read(tmp_path: Path) -> None:
    """Records were written in other words once, and have the digest of those."""
    record = class_of(replace(SET, banks=BankNames(("statics-2027.1",))))
    content = json.loads(write_record(record))
    said = content["issues"][0]["set"]
    assert (said["print"]["pile_cover"], said["method"]["significant_figures"]) == (False, 3)
    assert (said["method"]["torque_word"], said["working_style"]) == ("torque", "free")
    method, run = said.pop("method"), said.pop("print")
    said |= {"convention": method, "run": run, "room": said.pop("working_style")}
    method |= {"turning": method.pop("torque_word"), "figures": method.pop("significant_figures")}
    run |= {"cover": run.pop("pile_cover")}
    assert said["bank"] == ["statics-2027.1"]
    said["bank"] = "statics-2027.1"
    content["digest"] = digest_of(canonical({k: v for k, v in content.items() if k != "digest"}))
    path = tmp_path / "record.json"
    path.write_text(json.dumps(content), encoding="utf-8")
    assert read_record(path) == record


def test_what_was_drawn_around_has_a_value_for_each_unit(tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    record = replace(class_of(), avoided=(Had("007", draw_of("1.40")), Had("", draw_of("1.50"))))
    path.write_text(write_record(record), encoding="utf-8")
    assert read_record(path) == record
    content = json.loads(path.read_text(encoding="utf-8"))
    content["avoided"][0]["had"][1]["drawn"].pop()
    path.write_text(json.dumps(content), encoding="utf-8")
    with pytest.raises(InputError) as refused:
        read_record(path, edited=True)
    (fault,) = refused.value.faults
    assert (fault.field, fault.found) == ("avoided[0].had[1].drawn", "2")


@pytest.mark.parametrize(
    ("name", "value", "field"),
    [("template", "sign", "copying"), ("share", 1.5, "copying[0].share")],
)
def test_who_could_copy_is_told_of_each_problem(
    name: str, value: object, field: str, tmp_path: Path
) -> None:
    path = tmp_path / "record.json"
    content = json.loads(write_record(RECORDS["told who could copy"]))
    assert content["copying"] == [{"template": "shelf", "papers": 2, "share": 0.125, "exposed": 1}]
    content["copying"][0][name] = value
    path.write_text(json.dumps(content), encoding="utf-8")
    with pytest.raises(InputError) as refused:
        read_record(path, edited=True)
    assert [fault.field for fault in refused.value.faults] == [field]


def own(**changes: Any) -> ProblemSet:
    """The set with another problem."""
    return replace(SET, problems=(Assigned("shelf", **{"points": 8, **changes}),))


def printed(**changes: Any) -> Record:
    """The class with another first edition."""
    record = class_of()
    first, second = record.editions
    return replace(record, printings=(Printing(0, (replace(first, **changes), second)),))


def drawn(revision: int) -> Record:
    draws = [replace(draw, revision=revision) for draw in COLUMN.draws]
    return record_of(SET, CLASS, CODES, [COLUMN._replace(draws=draws)])


LISTS = [0, LONGEST_LIST], [LONGEST_LIST + 1]
# What makes a record of a value; the least and the most it may be, what is just beyond them.
EDGES: dict[str, tuple[Callable[[Any], Record], list[Any], list[Any]]] = {
    "working": (lambda v: class_of(replace(SET, working=v)), [0.0, 20.0], [-0.1, 20.1]),
    "points": (lambda v: class_of(own(points=v)), [1, 1000], [0, 1001]),
    "marks": (lambda v: class_of(own(marks=(Share("torques", v),))), [1, 1000], [0, 1001]),
    "figures": (lambda v: class_of(method(figures=v)), [2, 6], [1, 7]),
    "tolerance": (lambda v: class_of(method(tolerance=v)), [0.0, 0.5], [-0.01, 0.51]),
    "row": (lambda v: class_of(replace(SET, exam=Exam(2, v))), [0, 1000], [-1, 1001]),
    "spare": (lambda v: class_of(replace(SET, exam=Exam(2, 5, v))), [0, 1000], [-1, 1001]),
    "logo": (lambda v: record_of(SET, CLASS, CODES, [COLUMN], House(HouseStyle(logo_height=v))),
             [5, 40], [4, 41]),
    "revision": (drawn, [1, 1_000_000], [0, 1_000_001]),
    "version": (lambda v: printed(version=v), [1, 1000], [1001]),
    "parts": (lambda v: class_of(own(parts=(1,) * v)), *LISTS),
    "sections": (lambda v: class_of(own(sections=("A",) * v)), *LISTS),
    "banks": (lambda v: class_of(replace(SET, banks=BankNames(("e",) * v))), *LISTS),
    "avoid": (lambda v: class_of(replace(SET, avoid=("e",) * v)), *LISTS),
    "rules": (lambda v: class_of(own(chosen=Chosen(Rule("limbs", ("a",) * v), 3))), *LISTS),
    "count": (lambda v: class_of(own(chosen=Chosen(Rule(count=v), 3))), [1, 200], [0, 201]),
    "notes": (lambda v: class_of(replace(SET, exam=Exam(2, notes=("n",) * v))), *LISTS),
}  # fmt: skip


def method(**changes: Any) -> ProblemSet:
    return replace(SET, convention=replace(SET.convention, **changes))


@pytest.mark.parametrize(("made", "inside", "beyond"), EDGES.values(), ids=EDGES)
def test_a_record_holds_all_that_an_assignment_may_say_and_no_more(
    made: Callable[[Any], Record], inside: list[Any], beyond: list[Any], tmp_path: Path
) -> None:
    path = tmp_path / "record.json"
    for value in inside:
        path.write_text(write_record(made(value)), encoding="utf-8")
        assert read_record(path) == made(value)
    for value in beyond:
        path.write_text(write_record(made(value)), encoding="utf-8")
        with pytest.raises(InputError) as refused:
            read_record(path)
        assert len(refused.value.faults) == 1


def test_the_largest_logo_is_recorded(tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    for size, kept in ((LARGEST_LOGO, True), (LARGEST_LOGO + 6, False)):
        style = HouseStyle(logo=PNG.ljust(size, b"0"), logo_kind=".png")
        record = record_of(SET, CLASS, CODES, [COLUMN], House(style))
        path.write_text(write_record(record), encoding="utf-8")
        if kept:
            assert read_record(path) == record
            continue
        with pytest.raises(InputError, match="a picture of at most"):
            read_record(path)


def test_a_set_has_as_many_problems_as_an_assignment(tmp_path: Path) -> None:
    columns = [COLUMN._replace(template_id=f"s{n}", source=f"{n}") for n in range(LONGEST_LIST)]
    long = replace(SET, problems=tuple(Assigned(each.template_id, 1) for each in columns))
    path = tmp_path / "record.json"
    path.write_text(write_record(record_of(long, CLASS, CODES, columns)), encoding="utf-8")
    assert len(read_record(path).set.problems) == LONGEST_LIST


BROKEN: dict[str, Callable[[str], str]] = {
    "not JSON": lambda text: text[:-20],
    "another format": lambda text: text.replace('"format": 2', '"format": 3'),
    "no seed": lambda text: text.replace('"seed"', '"sead"', 1),
    "a draw too few": lambda text: text.replace('"1.20", ', ""),
    "a list": lambda text: "[]",
    "no unit": lambda text: text.replace('"L": "m"', '"L": "furlong"'),
    "a value in words": lambda text: text.replace('"1.20"', '"long"'),
}


@pytest.mark.parametrize("broken", BROKEN.values(), ids=BROKEN)
def test_a_broken_record_is_refused(broken: Callable[[str], str], tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    spoilt = broken(write_record(class_of()))
    assert spoilt != write_record(class_of())
    path.write_text(spoilt, encoding="utf-8")
    with pytest.raises(InputError, match=r"record\.json") as refused:
        read_record(path, edited=True)
    assert "edited since" not in str(refused.value)


@pytest.mark.parametrize("text", ['{"a": 1}', "[]", "3"])
def test_what_is_no_record_at_all_gets_one_message(text: str, tmp_path: Path) -> None:
    (tmp_path / "record.json").write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as refused:
        read_record(tmp_path / "record.json")
    (fault,) = refused.value.faults
    assert (fault.expected, fault.found) == ("a record", "a JSON file that is no record")


def one(*changes: Edition, students: tuple[Student, ...] = CLASS) -> Record:
    """The class with one printing more."""
    record = class_of()
    return replace(record, printings=(*record.printings, Printing(0, changes)), students=students)


ISSUE = json.loads(write_record(class_of()))["issues"][0]
ZOE, MING = class_of().editions
WRONG: dict[str, tuple[Record, str]] = {
    "a code for two papers": (one(replace(MING, code=ZOE.code)), "a code of its own"),
    "a code again with other numbers": (
        one(replace(ZOE, draws=MING.draws)), "a code of its own"),
    "what follows nothing": (one(replace(ZOE, code="0", follows="9")), "an earlier edition"),
    "somebody without a paper": (
        one(replace(ZOE, code="0"), students=(*CLASS, Student("New", "9"))), "issue for 9"),
    "somebody without a version": (replace(EXAM, letters=("A", "")), "a version's letter"),
    "somebody with a paper of an earlier issue": (
        replace(corrected(class_of()), students=CLASS), "last issue for 8"),
    "whose paper another has now": (
        one(replace(ZOE, code="0", owner="77", follows=ZOE.code)), "a paper that 007 has now"),
    "an id twice": (one(replace(ZOE, code="0"), students=(*CLASS, CLASS[0])), "each student"),
    "an issue nobody has": (
        replace(class_of(), printings=(Printing(1, (ZOE, MING)),),
                issues=class_of().issues * 2), "papers printed under each"),
}  # fmt: skip


@pytest.mark.parametrize(("record", "said"), WRONG.values(), ids=WRONG)
def test_what_does_not_fit_together_is_refused(
    record: Record, said: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "record.json"
    monkeypatch.setattr("probgen.course.record_file._issue_as_data", _any_issue)
    path.write_text(write_record(record), encoding="utf-8")
    with pytest.raises(InputError, match=said):
        read_record(path)


def _any_issue(record: Record, place: int, texts: dict[str, str]) -> dict[str, Any]:
    """An issue as data, whether or not anything was printed under it."""
    found: Issue = record.issues[place]
    units = {"L": "m", "theta": "deg", "n": "1"}
    texts["d" * 32] = found.templates[0].source
    template = {**ISSUE["templates"][0], "text": "d" * 32, "units": units}
    return {**ISSUE, "templates": [template]}
