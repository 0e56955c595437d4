"""Assignment files: what is read, and what each mistake gets."""

from dataclasses import fields, replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from probgen.build.example import demo_assignment
from probgen.course.assignment import (
    Assigned,
    ProblemSet,
    SectionDue,
    day_of,
    day_printed,
    parse_assignment,
    read_assignment,
)
from probgen.course.exam import Exam
from probgen.course.print_run import PrintRun
from probgen.input.fault import InputError
from probgen.quantities.unit import SI, US_CUSTOMARY
from probgen.working.convention import Convention
from probgen.working.shares import Share

SMALLEST = """
course = "Mechanics I"
title = "Week 3"
roster = "roster.csv"
[[problem]]
template = "forearm-load"
points = 10
"""

USUAL = ProblemSet("Mechanics I", "Week 3", "roster.csv", (Assigned("forearm-load", 10),))


@pytest.mark.parametrize("day", [date(2026, 12, 11), date(2028, 2, 29)])
def test_a_day_is_read_as_it_is_printed(day: date) -> None:
    assert day_of(day_printed(day)) == day


@pytest.mark.parametrize("due", ["", "5 May", "Friday, 5 p.m.", "31 February 2027", "5 May in 3"])
def test_other_texts_are_no_day(due: str) -> None:
    assert day_of(due) is None


def test_what_is_left_out_is_usual() -> None:
    assert parse_assignment(SMALLEST, "assignment.toml") == USUAL


def test_the_usual_set_is_what_the_readme_says() -> None:
    """Defaults that a course finds on its pages when it asks for nothing else."""
    usual = parse_assignment(SMALLEST, "assignment.toml")
    assert (usual.due, usual.seed, usual.banks, usual.paper) == ("", "", (), "letter")
    assert (usual.working, usual.room) == (5.0, "free")
    assert (usual.formulas, usual.caution, usual.origins) == (False, True, False)
    assert (usual.style, usual.layouts, usual.exam) == ("", "", None)
    run, method = usual.run, usual.convention
    assert (run.order, run.duplex, run.cover, run.answers) == ("roster", True, False, False)
    assert (method.torque, method.positive) == ("angle", "counter-clockwise")
    assert (method.axes, method.turning) == ("simplest", "torque")
    assert (method.gravity, method.figures, method.rounding) == ("9.80", 3, "half up")
    assert (method.direction, method.units, method.tolerance) == ("horizontal", SI, 0.02)


def test_the_demonstration_says_what_is_usual() -> None:
    demonstration = parse_assignment(demo_assignment(), "assignment.toml")
    assert demonstration.convention == Convention()
    assert demonstration.run == PrintRun()


HEAD = {
    "due = 2026-03-09": {"due": "9 March 2026"},
    'due = "Monday, at noon"': {"due": "Monday, at noon"},
    'seed = "sixteen letters."': {"seed": "sixteen letters."},
    'due_in = { A = 2026-03-09, B = "at noon" }': {
        "due_in": (SectionDue("A", "9 March 2026"), SectionDue("B", "at noon")),
    },
    'bank = "first-term"': {"banks": ("first-term",)},
    'bank = ["one", "two"]': {"banks": ("one", "two")},
    'paper = "a4"': {"paper": "a4"},
    "working = 4.5": {"working": 4.5},
    "caution = false": {"caution": False},
    "origins = true": {"origins": True},
    'working_style = "grid"': {"room": "grid"},
    "formulas = true": {"formulas": True},
    'style = "house/style.toml"': {"style": "house/style.toml"},
    'layouts = "house"': {"layouts": "house"},
    'print = { order = "seat" }': {"run": PrintRun(order="seat")},
    "print = { duplex = false, pile_cover = true }": {"run": PrintRun(duplex=False, cover=True)},
    "print.answers = true": {"run": PrintRun(answers=True)},
    'avoid = ["../week-*/", "exam"]': {"avoid": ("../week-*/", "exam")},
    'avoid = ["e"]\nagain = ["x"]\nexam.versions = 3': {
        "avoid": ("e",),
        "again": ("x",),
        "exam": Exam(3),
    },
    "exam.versions = 3": {"exam": Exam(3)},
    "exam = { versions = 4, row = 12, spare = 6 }": {"exam": Exam(4, 12, 6)},
    'exam = { versions = 2, cover = false, notes = ["Take care."] }': {
        "exam": Exam(2, cover=False, notes=("Take care.",))
    },
}


@pytest.mark.parametrize(("line", "change"), HEAD.items())
def test_each_field_of_the_set(line: str, change: dict[str, Any]) -> None:
    assert parse_assignment(line + SMALLEST, "assignment.toml") == replace(USUAL, **change)


OF_A_PROBLEM = {
    'pivot = "A"': Assigned("forearm-load", 10, "A"),
    'sections = [" B", "A", "B"]': Assigned("forearm-load", 10, sections=("B", "A")),
    "parts = [9, 1]": Assigned("forearm-load", 10, parts=(9, 1)),
    "marks = { torques = 6, results = 4 }": Assigned(
        "forearm-load", 10, marks=(Share("torques", 6), Share("results", 4))
    ),
    "marks = { diagrams = 10 }": Assigned("forearm-load", 10, marks=(Share("diagrams", 10),)),
}


@pytest.mark.parametrize(("line", "problem"), OF_A_PROBLEM.items())
def test_each_field_of_a_problem(line: str, problem: Assigned) -> None:
    found = parse_assignment(f"{SMALLEST}{line}\n", "assignment.toml")
    assert found.problems == (problem,)


METHOD = {
    "torque": ('"arm"', "arm"),
    "positive": ('"clockwise"', "clockwise"),
    "axes": ('"level"', "level"),
    "gravity": ("9.810", "9.810"),
    "figures": ("4", 4),
    "rounding": ('"half even"', "half even"),
    "direction": ('"axis"', "axis"),
    "turning": ('"moment"', "moment"),
    "units": ('"US customary"', US_CUSTOMARY),
    "tolerance": ("0.05", 0.05),
    "order": ('"forces first"', "forces first"),
    "pivot": ('"support"', "support"),
    "trusses": ('"sections"', "sections"),
}


CALLED = {"turning": "torque_word", "figures": "significant_figures"}


@pytest.mark.parametrize("name", [field.name for field in fields(Convention)])
def test_each_choice_of_the_method_reaches_the_convention(name: str) -> None:
    written, value = METHOD[name]
    choice: Any = {name: value}
    told = CALLED.get(name, name)
    found = parse_assignment(f"{SMALLEST}[method]\n{told} = {written}\n", "assignment.toml")
    assert found.convention == Convention(**choice)
    assert found.convention != Convention()


FORMER = {
    'room = "grid"': ('working_style = "grid"', "room"),
    "print.cover = true": ("print.pile_cover = true", "print.cover"),
    'method.turning = "moment"': ('method.torque_word = "moment"', "method.turning"),
    "method.figures = 4": ("method.significant_figures = 4", "method.figures"),
}


@pytest.mark.parametrize(("former", "now", "field"), [(k, *v) for k, v in FORMER.items()])
def test_words_of_an_earlier_release_are_read_with_a_remark(
    former: str, now: str, field: str
) -> None:
    remarks: list[str] = []
    found = parse_assignment(f"{former}\n{SMALLEST}", "a.toml", remarks)
    assert found == parse_assignment(f"{now}\n{SMALLEST}", "a.toml")
    assert found != USUAL
    (remark,) = remarks
    assert remark.startswith(f"a.toml: {field}: is called ")
    with pytest.raises(InputError) as caught:
        parse_assignment(f"{former}\n{now}\n{SMALLEST}", "a.toml")
    assert [fault.field for fault in caught.value.faults] == [field]


def test_the_former_name_of_the_file_is_remarked_on(tmp_path: Path) -> None:
    for name, told in (("set.toml", 1), ("assignment.toml", 0), ("week-5.toml", 0)):
        remarks: list[str] = []
        (tmp_path / name).write_text(SMALLEST)
        assert read_assignment(tmp_path / name, remarks) == USUAL
        assert len(remarks) == told


FAULTY = {
    "misspelt field": ('corse = "x"' + SMALLEST, ["corse"], "course"),
    "unknown field": ("watermark = 1" + SMALLEST, ["watermark"], "field"),
    "missing fields": ("", ["course", "title", "roster", "problem"], "add course"),
    "not TOML": ("course = Mechanics", ["line 1"], "TOML"),
    "empty text": (SMALLEST.replace("Week 3", "  "), ["title"], "text"),
    "number for text": ("seed = 4" + SMALLEST, ["seed"], "quotes"),
    "unknown paper": ('paper = "A4"' + SMALLEST, ["paper"], "one of letter, a4"),
    "unknown torque": (
        SMALLEST + '[method]\ntorque = "leverarm"',
        ["method.torque"],
        "angle, arm, components",
    ),
    "unknown method field": (
        SMALLEST + "[method]\ngravitation = 1",
        ["method.gravitation"],
        "field",
    ),
    "gravity nan": (SMALLEST + "[method]\ngravity = nan", ["method.gravity"], "number"),
    "gravity as words": (SMALLEST + '[method]\ngravity = "strong"', ["method.gravity"], "number"),
    "figures": (
        SMALLEST + "[method]\nsignificant_figures = 2.5",
        ["method.significant_figures"],
        "whole",
    ),
    "points": (SMALLEST.replace("10", "true"), ["problem[0].points"], "whole"),
    "method no section": ('method = "arm"' + SMALLEST, ["method"], "[method]"),
    "twice the same": (
        SMALLEST + '[[problem]]\ntemplate = "forearm-load"\npoints = 5',
        ["problem[1].template"],
        "once",
    ),
    "unknown order": ('print.order = "random"' + SMALLEST, ["print.order"], "roster, seat"),
    "unknown print field": ("print.copies = 2" + SMALLEST, ["print.copies"], "field"),
    "too many versions": ("exam.versions = 40" + SMALLEST, ["exam.versions"], "1 to 26"),
    "an exam without versions": ("exam.row = 3" + SMALLEST, ["exam.versions"], "whole"),
    "a row of none": ("exam = { versions = 2, row = 0 }" + SMALLEST, ["exam.row"], "1 to"),
    "notes in one text": (
        'exam = { versions = 2, notes = "Hush." }' + SMALLEST,
        ["exam.notes"],
        "list",
    ),
    "again in homework": ('avoid = ["x"]\nagain = ["y"]' + SMALLEST, ["again"], "any template"),
    "again and nothing avoided": (
        'again = ["y"]\nexam.versions = 2' + SMALLEST,
        ["again"],
        "beside avoid",
    ),
    "one text to avoid": ('avoid = "../week-*/"' + SMALLEST, ["avoid"], "list"),
    "a section without a name": (
        SMALLEST + 'sections = ["A", " "]',
        ["problem[0].sections[1]"],
        "leave sections out",
    ),
    "part of a point": (SMALLEST + "parts = [9.5, 0.5]", ["problem[0].parts"], "whole points"),
    "no point": (SMALLEST + "parts = [10, 0]", ["problem[0].parts"], "1 or more"),
    "parts of another sum": (SMALLEST + "parts = [4, 5]", ["problem[0].parts"], "a sum of 10"),
    "marks of another sum": (SMALLEST + "marks.results = 9", ["problem[0].marks"], "a sum of 10"),
    "parts and marks": (
        SMALLEST + "parts = [10]\nmarks.results = 10",
        ["problem[0].marks"],
        "beside parts",
    ),
    "marks of no kind": (
        SMALLEST + "marks = { results = 10, beauty = 1 }",
        ["problem[0].marks.beauty"],
        "field",
    ),
    "more marks than points": (
        SMALLEST + "marks.results = 11",
        ["problem[0].marks.results"],
        "1 to 10",
    ),
    "points missing": (
        SMALLEST.replace("points = 10", "parts = [4, 5]"),
        ["problem[0].points"],
        "add points",
    ),
    "a seed that is guessed": ('seed = "fifteen letters"' + SMALLEST, ["seed"], "at least 16"),
    "a seed without end": (f'seed = "{"x" * 3000}"' + SMALLEST, ["seed"], "at most 1000"),
    "a section without a day": ('due_in = { A = "" }' + SMALLEST, ["due_in.A"], "day of all"),
    "a section's day as a number": ("due_in = { A = 7 }" + SMALLEST, ["due_in.A"], ""),
    "an exam for sections": (
        'exam.versions = 2\ndue_in.B = "noon"' + SMALLEST + 'sections = ["A"]',
        ["problem[0].sections", "due_in.B"],
        "all who sit an exam",
    ),
    "all at once": (
        'due = 7\npaper = "b5"\nworking = -1\ncaution = "no"\nx = 1' + SMALLEST,
        ["due", "paper", "working", "caution", "x"],
        "",
    ),
}


@pytest.mark.parametrize(("text", "places", "words"), FAULTY.values(), ids=FAULTY)
def test_faults_name_field_and_mend(text: str, places: list[str], words: str) -> None:
    with pytest.raises(InputError) as caught:
        parse_assignment(text, "assignment.toml")
    assert [fault.field for fault in caught.value.faults] == places
    assert words in str(caught.value)
    assert all(fault.file == "assignment.toml" for fault in caught.value.faults)


# A field with what its smallest and largest value are, and what is just beyond them.
BOUNDS = {
    "points = {}": (["1", "1000"], ["0", "1001"]),
    "working = {}": (["0", "20"], ["-0.01", "20.01"]),
    "method.gravity = {}": (["9.7", "9.9"], ["9.69", "9.91", "10", "32.2"]),
    "method.significant_figures = {}": (["2", "6"], ["1", "7"]),
    "method.tolerance = {}": (["0", "0.5"], ["-0.001", "0.501"]),
    "exam = {{ versions = {} }}": (["1", "26"], ["0", "27"]),
    "exam = {{ versions = 2, row = {} }}": (["1", "1000"], ["0", "1001"]),
    "exam = {{ versions = 2, spare = {} }}": (["0", "1000"], ["-1", "1001"]),
}


@pytest.mark.parametrize(("line", "inside", "beyond"), [(k, *v) for k, v in BOUNDS.items()])
def test_numbers_are_taken_up_to_their_bounds(
    line: str, inside: list[str], beyond: list[str]
) -> None:
    for value in inside + beyond:
        written = line.format(value)
        own = line.startswith("points")
        text = SMALLEST.replace("points = 10", written) if own else f"{written}\n{SMALLEST}"
        if value in inside:
            parse_assignment(text, "assignment.toml")
            continue
        with pytest.raises(InputError) as caught:
            parse_assignment(text, "assignment.toml")
        assert len(caught.value.faults) == 1


@pytest.mark.parametrize(
    ("g", "kept"), [("31.82", False), ("31.83", True), ("32.48", True), ("9.8", False)]
)
def test_g_in_us_customary_is_in_feet(g: str, kept: bool) -> None:
    text = SMALLEST + f'[method]\nunits = "US customary"\ngravity = {g}\n'
    if kept:
        assert parse_assignment(text, "assignment.toml").convention.gravity == g
        return
    with pytest.raises(InputError) as caught:
        parse_assignment(text, "assignment.toml")
    (fault,) = caught.value.faults
    assert (fault.field, fault.mend[:20]) == ("method.gravity", "write gravity = 32.2")


def test_an_assignment_file_must_exist_and_be_text(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="no such file"):
        read_assignment(tmp_path / "assignment.toml")
    with pytest.raises(InputError, match="a folder"):
        read_assignment(tmp_path)
    (tmp_path / "assignment.toml").write_bytes(b'course = "\xe9"')
    with pytest.raises(InputError, match="UTF-8"):
        read_assignment(tmp_path / "assignment.toml")
