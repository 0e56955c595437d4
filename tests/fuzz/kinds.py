"""What is fuzzed: for each kind of file the good ones, and what the program does with a spoilt one.

Everything up to TeX is done; TeX itself is not run.
"""

from __future__ import annotations

import json
import re
import shlex
from functools import cache
from importlib.resources import files
from pathlib import Path

from click.testing import CliRunner

from probgen.bank.bank import default_bank, read_file
from probgen.bank.bank_path import read_bank
from probgen.build.example import demo_assignment
from probgen.cli import main
from probgen.course.assignment import Assigned, ProblemSet, read_assignment
from probgen.course.edited import recoded
from probgen.course.edition import Edition
from probgen.course.frozen import frozen_problems
from probgen.course.inputs import read_inputs
from probgen.course.record_file import read_record, write_record
from probgen.course.roster import Student, read_roster
from probgen.course.version import Version, name_of_files
from probgen.draws.draw import draw
from probgen.figures.writers.svg import svg
from probgen.input.outside import OutsideError
from probgen.mistakes.comparison import class_slips
from probgen.papers.page import Copy
from probgen.papers.typesetter import Kind, Typesetter, typesetter_of
from probgen.problem.problem import Problem, draw_class, prepare, tell_steps, work
from probgen.problem.problem_figures import every_scene
from probgen.sheets.house import LAYOUTS, House
from probgen.sheets.style import HouseStyle, read_style
from probgen.working.convention import Convention
from tests.fuzz.departments import DEPARTMENTS
from tests.fuzz.marked import MARKED
from tests.fuzz.mutation import spoilt_json
from tests.fuzz.target import Target, written
from tests.records import Column, first_format, record_of
from tests.sheets.pictures import PNG

ROOT = Path(__file__).parents[2]
GUIDE = ROOT / "templates" / "README.md"
ASKED = '[[find]]\nvalue = "L"\nsymbol = "y"\nname = "a"\nunit = "m"\n'
BLOCKS = re.findall(r"^```toml\n(.*?)^```", GUIDE.read_text(encoding="utf-8"), re.M | re.S)


@cache
def _templates() -> tuple[bytes, ...]:
    return tuple(path.read_bytes() for path in sorted(default_bank().files.values()))


def _template(content: bytes, folder: Path) -> None:
    template = read_file(written(folder, "template.toml", content))
    _worked(prepare(template, Convention()))


def _worked(problem: Problem) -> None:
    """All that a handout needs, without TeX."""
    template = problem.template
    (made,) = draw_class(problem, "fuzz", ["1"]).draws
    (own,) = work(problem, [made])
    tell_steps(problem, own)
    for _, scene in every_scene(problem, own):
        svg(scene)
    chosen = ProblemSet("", template.title, "", (Assigned(template.id, 10),))
    version = Version("ABCD-EFGH", "zoe", Student("Zoë", "7"))
    copy = Copy(chosen, version, (problem,), (own,), class_slips([own.digits], problem.missteps))
    for kind in Kind:
        Typesetter().document(kind, copy)


def _guide() -> tuple[bytes, ...]:
    return tuple(_completed(block).encode() for block in BLOCKS[2:])


def _completed(block: str) -> str:
    before = [each for each in BLOCKS[:3] if not _tables(each) & _tables(block)]
    asked = [] if "[[find]]" in block else [ASKED]
    return "\n".join([*before, block, *asked])


def _tables(block: str) -> set[str]:
    return set(re.findall(r"^\[+(\w+)", block, re.M))


EXAM = """
course = "M"
title = "W"
roster = "class.csv"
paper = "a4"
working = 4.5
working_style = "grid"
due = 2026-03-09
[print]
order = "seat"
[exam]
versions = 3
row = 5
spare = 2
notes = ["Hush."]
[method]
gravity = 9.8
significant_figures = 4
tolerance = 0.05
torque = "arm"
[[problem]]
template = "forearm-load"
points = 10
pivot = "E"
"""


def _assignment_files() -> tuple[bytes, ...]:
    return demo_assignment().encode(), EXAM.encode()


CLASS = """Name,Student ID,Section,Seat,Large print
Zoë,s1,A,B7,yes
李 明,s2,B,A10,
O'Hara,s3,,A2,no
"""


def _assignment_file(content: bytes, folder: Path) -> None:
    written(folder, "class.csv", CLASS.encode())
    written(folder, "roster.csv", CLASS.encode())
    path = written(folder, "assignment.toml", content)
    read_inputs(read_assignment(path), path, None)


def _rosters() -> tuple[bytes, ...]:
    semicolons = CLASS.replace(",", ";").encode("utf-8-sig")
    return CLASS.encode(), semicolons, CLASS.replace("李", "x").replace("明", "y").encode("utf-16")


def _roster(content: bytes, folder: Path) -> None:
    students = read_roster(written(folder, "class.csv", content)).students
    for student in students:
        name_of_files(Edition("C", student.id, (), student.name), exam=False)


@cache
def _records() -> tuple[bytes, ...]:
    students = (Student("Zoë", "007", "A", "B7", True), Student("李 明", "8"))
    made = []
    for id in ("forearm-load", "seesaw-two-riders"):
        template = default_bank().read(id)
        draws = tuple(draw(template, "spring", student.id) for student in students)
        style = HouseStyle(logo=PNG, logo_kind=".png", colour="#102030")
        chosen = ProblemSet("Mechanics", "Week 3", "class.csv", (Assigned(id, 8),))
        column = Column(template.id, template.source, draws)
        codes = ("ABCD-EFGH", "JKMN-PQRS")
        made.append(write_record(record_of(chosen, students, codes, [column], House(style))))
        made.append(json.dumps(first_format(chosen, students, codes, column)))
    return tuple(text.encode() for text in made)


def _record(content: bytes, folder: Path) -> None:
    path = written(folder, "record.json", content)
    record = read_record(path, edited=True)
    problems = frozen_problems(record.issue, record.current, str(path))
    recoded(record)
    rows = zip(*(edition.draws for edition in record.current), strict=True)
    columns = [work(problem, draws) for problem, draws in zip(problems, rows, strict=True)]
    slips = tuple(
        class_slips([own.digits for own in column], p.missteps)[0]
        for p, column in zip(problems, columns, strict=True)
    )
    own = tuple(column[0] for column in columns)
    typesetter = typesetter_of(record.set, record.house)
    copy = Copy(record.set, record.versions[0], problems, own, slips)
    for kind in Kind:
        typesetter.document(kind, copy)


STYLE = (
    'text = "sans"\nheadings = "roman"\ncolour = "#1F3A5F"\nheader = "College"\nlogo = "logo.png"\n'
    'logo_height = 9\nfigures = "colour"\npaper = "a4"\n'
)


def _style(content: bytes, folder: Path) -> None:
    written(folder, "logo.png", PNG)
    style = read_style(written(folder, "style.toml", content))
    _documents(House(style))


def _layouts() -> tuple[bytes, ...]:
    room = files("probgen.sheets.latex") / "layouts"
    return tuple(name.encode() + b"\n" + (room / name).read_bytes() for name in LAYOUTS)


def _layout(content: bytes, folder: Path) -> None:
    name, _, text = content.partition(b"\n")
    shown = name.decode("utf-8", "replace")
    if shown not in LAYOUTS:
        return
    _documents(House(layouts=((shown, text.decode("utf-8", "replace")),), folder="own"))


@cache
def _usual() -> Copy:
    problem = prepare(default_bank().read("forearm-load"), Convention())
    (made,) = draw_class(problem, "fuzz", ["1"]).draws
    (own,) = work(problem, [made])
    chosen = ProblemSet("M", "W", "", (Assigned("forearm-load", 10),), formulas=True)
    version = Version("ABCD-EFGH", "zoe", Student("Zoë", "7"))
    return Copy(chosen, version, (problem,), (own,), class_slips([own.digits], problem.missteps))


def _documents(house: House) -> None:
    for kind in Kind:
        Typesetter(house=house).document(kind, _usual())


def _banks() -> tuple[bytes, ...]:
    return tuple(path.read_bytes() for path in sorted((ROOT / "banks").glob("*.toml")))


def _bank(content: bytes, folder: Path) -> None:
    bank = read_bank(written(folder, "bank.toml", content))
    bank.read(next(iter(bank.files)))


LINES = """
work forearm-load
work seesaw-two-riders --json --draw 3
work hip-one-leg --with weight_at=0.3
work crate-ramp-strap --with mass=20 --figures figures
work forearm-load --g 9.81 --json
work hip-one-leg --figures f
list
list --family beams --json
list --bank first-course
trace 007 week --slips
trace ABCD-EFGH week --json
form week --out form
new mechanics
build assignment.toml --out out --seed x
build record.json --trust-layouts
build record.json --edited
work template.toml
--version
""".strip().split("\n")


def _line(content: bytes, folder: Path) -> None:
    """A command line; what would run TeX or take long is left out."""
    try:
        words = shlex.split(content.decode("utf-8", "surrogateescape").replace("\0", ""))
    except ValueError:
        return
    if words[:1] in (["demo"], ["check"]) or {"--pdf", "--layouts", "--key"} & {*words}:
        return
    (folder / "week").mkdir(exist_ok=True)
    written(folder / "week", "record.json", _records()[0])
    result = CliRunner().invoke(main, words, prog_name="probgen")
    if result.exception and not isinstance(result.exception, SystemExit):
        raise result.exception
    if result.exit_code not in (0, 1, 2, 3):
        raise AssertionError(f"exit code {result.exit_code}")
    if result.exit_code:
        raise OutsideError(result.output, "")


TARGETS = {
    target.name: target
    for target in (
        Target("templates", _templates, _template),
        Target("guide", _guide, _template),
        Target("sets", _assignment_files, _assignment_file),
        Target("rosters", _rosters, _roster),
        Target("records", _records, _record, spoilt_json),
        Target("styles", lambda: (STYLE.encode(),), _style),
        Target("banks", _banks, _bank),
        Target("layouts", _layouts, _layout),
        Target("lines", lambda: tuple(line.encode() for line in LINES), _line),
        *MARKED,
        *DEPARTMENTS,
    )
}
