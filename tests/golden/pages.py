"""The ten pages that are kept as pictures: their documents, and the PDFs they are printed to."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from io import BytesIO
from pathlib import Path
from typing import Any

from PIL import Image, ImageDraw

from probgen.bank.bank import read_file
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.mistakes.comparison import class_slips
from probgen.papers.page import Copy, key_of, sheet_of
from probgen.press.batch import Document, Printed, print_batch
from probgen.press.engine import engine, engine_version
from probgen.problem.problem import draw_class, prepare, work
from probgen.quantities.expression import Number
from probgen.sheets.document import AnswerRow, AnswerTable, Cover, Header, Key, Sheet
from probgen.sheets.formula_page import formula_page
from probgen.sheets.house import House
from probgen.sheets.latex.layout import Layouts
from probgen.sheets.style import HouseStyle
from probgen.wording.block import Math
from probgen.wording.facts.papers import DirectionListed
from probgen.wording.sentence import Inlines
from probgen.working.convention import Convention
from probgen.working.direction import Direction

TEMPLATES = Path(__file__).parent / "templates"
PICTURES = Path(__file__).parent / "pictures"
IDS = ("forearm-load", "beam-stay-cable", "ladder-smooth-wall", "stepladder-tie")
SEED = "golden pages"
STUDENTS = tuple(f"2031-{n:02}" for n in range(1, 13))


@dataclass(frozen=True, slots=True)
class Kept:
    """A page that is kept: which one of which document, from 0, or -1 for the last."""

    name: str
    document: str
    page: int


KEPT = (
    Kept("sheet-first", "sheet", 0),
    Kept("sheet-last", "sheet", -1),
    Kept("sheet-ruled", "ruled", 0),
    Kept("sheet-large", "large", 1),
    Kept("sheet-house", "house", 0),  # squared room, colour, a logo, sans serif, A4
    Kept("formulas", "formulas", -1),
    Kept("key-first", "key", 0),
    Kept("key-last", "key", -1),
    Kept("cover", "cover", 0),
    Kept("answers", "answers", 0),
)


def tex_live() -> str:
    """The TeX that is installed, by its release: "TeX Live 2022", "" for another distribution."""
    banner = engine_version(engine())
    found = re.search(r"TeX Live \d{4}", banner)
    return found[0] if found else ""


def printed() -> dict[str, tuple[bytes, int]]:
    """The PDF that each page that is kept is in, and which page of it, from 0; by name."""
    house = HouseStyle("sans", "sans", "#7A1F2B", "Département de physique", _logo(), ".png", 14)
    batch = print_batch(tuple(_documents(house)), files=house.files)
    assert batch.failures == ()
    documents = {each.name: each for each in batch.printed}
    return {kept.name: _page(documents[kept.document], kept.page) for kept in KEPT}


def _page(document: Printed, page: int) -> tuple[bytes, int]:
    return document.pdf, page % document.pages


def _documents(style: HouseStyle) -> Iterator[Document]:
    copies = _copies()
    sheet, key = sheet_of(copies[0]), key_of(copies[0])
    usual, house = Layouts(), Layouts(House(style))
    plain, coloured = usual.preamble(), house.preamble("a4")
    yield Document("sheet", "Sheet", usual.sheet(sheet), plain)
    yield Document("ruled", "Ruled", usual.sheet(_with_room(sheet, "lines")), plain)
    yield Document("large", "Large", usual.sheet(sheet), usual.preamble(large=True))
    yield Document("house", "House", house.sheet(_with_room(sheet, "grid")), coloured)
    short = replace(sheet, problems=sheet.problems[:1], formulas=formula_page())
    yield Document("formulas", "Formulas", usual.sheet(short), plain)
    yield Document("key", "Key", usual.key(key), plain)
    yield Document("cover", "Cover", usual.cover(_cover(sheet.header)), plain)
    yield Document("answers", "Answers", usual.answer_table(_table(key, copies)), plain)


def _copies() -> tuple[Copy, ...]:
    """A small class's copies of one set."""
    problems = tuple(prepare(read_file(TEMPLATES / f"{id}.toml"), Convention()) for id in IDS)
    columns = [work(each, draw_class(each, SEED, STUDENTS).draws) for each in problems]
    slips = [
        class_slips([own.digits for own in column], problem.missteps)
        for problem, column in zip(problems, columns, strict=True)
    ]
    assigned = tuple(Assigned(id, 10) for id in IDS)
    course, title = "Physique 101 – Mechanics", "Bodies at rest"
    problem_set = ProblemSet(course, title, "", assigned, due="7 March", working=2.0)
    rows = zip(STUDENTS, zip(*columns, strict=True), zip(*slips, strict=True), strict=True)
    return tuple(
        Copy(problem_set, _version(place, id), problems, own, wrong)
        for place, (id, own, wrong) in enumerate(rows)
    )


def _version(place: int, id: str) -> Version:
    student = Student("Åsa Dvořáková-Nguyễn", id, "B")
    return Version(f"H4QX-{place:02}", id, student)


def _with_room(sheet: Sheet, room: Any) -> Sheet:
    problems = (replace(problem, room=room) for problem in sheet.problems)
    return replace(sheet, problems=tuple(problems))


def _cover(header: Header) -> Cover:
    return Cover(
        replace(header, student_name="", student_id="", code="", version="C"),
        facts=(("Time", "90 minutes"),),
        notes=("Write your name on every page.", "Show your working: points are given for steps."),
        scores=(("1", 10), ("2", 10), ("3", 10), ("4", 10)),
    )


def _table(key: Key, copies: Sequence[Copy]) -> AnswerTable:
    columns = tuple(
        (solution.title, tuple(answer.label for answer in solution.answers))
        for solution in key.solutions
    )
    rows = tuple(
        AnswerRow((copy.version.student.id, copy.version.code), tuple(_cells(copy)))
        for copy in copies
        if copy.version.student
    )
    header = replace(key.header, student_name="", student_id="", code="")
    return AnswerTable(header, ("Id", "Version"), columns, rows, "Answers")


def _cells(copy: Copy) -> Iterator[Inlines]:
    """Numbers, and directions in short, as a build has them in its table."""
    for problem, own in zip(copy.problems, copy.worked, strict=True):
        for answer in own.answers:
            if isinstance(answer.shown, Direction):
                yield problem.language.say(DirectionListed(answer.shown), problem.nouns)
            else:
                assert isinstance(answer.shown, Number)
                yield (Math((answer.shown,)),)


def _logo() -> bytes:
    """A mark of our own: a ring on a beam."""
    logo = Image.new("L", (240, 160), 255)
    pen = ImageDraw.Draw(logo)
    pen.ellipse((70, 10, 170, 110), outline=0, width=18)
    pen.rectangle((10, 112, 230, 134), fill=0)
    written = BytesIO()
    logo.save(written, "PNG")
    return written.getvalue()
