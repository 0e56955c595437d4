"""A term played through: whatever is built, every paper ever handed out is found by its code.

What was handed out is read from the PDFs of the sheets, as a student reads it.
"""

from __future__ import annotations

import json
import re
from dataclasses import dataclass, field
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any, Final

import pdfplumber
import pytest

from tests.cli.conftest import FilesIn, Run
from tests.terms import lamp

SIGN: Final = lamp("A sign of", low="20.0", high="26.0").replace('id = "lamp"', 'id = "sign"')
RAIL: Final = lamp("A curtain of", low="7.0", high="9.0").replace('id = "lamp"', 'id = "curtain"')
STATED: Final = re.compile(r"A(lamp|lantern|sign|curtain)of([\d.]+)kghangsfromitsmiddleat([\d.]+)m")
CODE: Final = re.compile(r"[0-9A-Z]{5}-[0-9A-Z]{5}")

Numbers = tuple[tuple[str, str], ...]
"""The mass and the length of each problem, as printed."""


@dataclass
class Term:
    """A course in its folder, and every paper that was handed out in it, by its code."""

    run: Run
    folder: Path
    handed: dict[str, Numbers] = field(default_factory=dict)

    def enrol(self, **rows: str) -> None:
        """Writes the class list anew: a name and what it says of a former id, by id."""
        lines = [f"{row},{id}" if "," in row else f"{row},,{id}" for id, row in rows.items()]
        text = "\n".join(["name,numbers of,id", *lines]) + "\n"
        (self.folder / "roster.csv").write_text(text, encoding="utf-8")

    def assign(self, place: str, title: str, *problems: str, more: str = "") -> None:
        own = self.folder / place
        own.mkdir(exist_ok=True)
        entries = [f'[[problem]]\ntemplate = "{each}.toml"\npoints = 5\n' for each in problems]
        head = f'course = "Statics"\ntitle = "{title}"\nroster = "../roster.csv"\nworking = 0\n'
        text = head + more + "".join(entries)
        (own / "assignment.toml").write_text(text, encoding="utf-8")

    def build(self, place: str, *words: str) -> str:
        """Builds one, hands out what is new, and traces every paper there ever was."""
        done = self.run("build", self.folder / place / "assignment.toml", "--workers", 1, *words)
        assert done.exit_code == 0, done.output
        self.hand_out(place)
        self.trace_all()
        return str(done.output)

    def refused(self, place: str, *words: str) -> str:
        done = self.run("build", self.folder / place / "assignment.toml", *words)
        assert done.exit_code == 1, done.output
        self.trace_all()
        return str(done.output)

    def hand_out(self, place: str) -> dict[str, Numbers]:
        """The sheets of a folder as they are now; those handed out before say the same still."""
        sheets = sorted((self.folder / place / "output" / "sheets").glob("*.pdf"))
        now = dict(read(sheet.read_bytes()) for sheet in sheets)
        for code, numbers in now.items():
            assert self.handed.setdefault(code, numbers) == numbers
        return now

    def trace_all(self) -> None:
        for code, numbers in self.handed.items():
            paper = self.traced(code)
            assert paper["code"] == code
            traced = [each["values"] for each in paper["problems"]]
            assert numbers == tuple((_bare(v["m"]), _bare(v["L"])) for v in traced)

    def traced(self, code: str) -> dict[str, Any]:
        """The one paper of a code, as the course's records tell of it."""
        told = self.run("trace", code, self.folder, "--json")
        assert told.exit_code == 0, told.output
        (paper,) = json.loads(told.stdout)["papers"]
        return dict(paper)


def _bare(value: dict[str, str]) -> str:
    return value["printed"].split()[0]


@cache
def read(sheet: bytes) -> tuple[str, Numbers]:
    """The code and the numbers that stand on a sheet."""
    with pdfplumber.open(BytesIO(sheet)) as pdf:
        text = "".join("".join(page.extract_text().split()) for page in pdf.pages)
    (code,) = set(CODE.findall(text))
    return code, tuple((mass, length) for _, mass, length in STATED.findall(text))


CLASS: Final = {"1": "Ada Quill", "2": "Bo Reed", "3": "Cy Stone", "4": "Di Thorn"}
LATE: Final = {"5": "Eb Umber", "6": "Flo Vale"}


@pytest.fixture
def term(run: Run, tmp_path: Path) -> Term:
    assert run("new", "course").exit_code == 0
    folder = tmp_path / "course"
    for place in ("week-1", "week-2", "week-3", "exam", "make-up"):
        (folder / place).mkdir(exist_ok=True)
        (folder / place / "lamp.toml").write_text(lamp())
        (folder / place / "sign.toml").write_text(SIGN)
        (folder / place / "curtain.toml").write_text(RAIL)
    made = Term(run, folder)
    made.enrol(**CLASS)
    made.assign("week-1", "Week 1", "lamp", "sign")
    avoid = 'avoid = ["../*/"]\n'
    made.assign("week-2", "Week 2", "lamp", more=avoid)
    made.assign("week-3", "Week 3", "lamp", more=avoid)
    made.assign("exam", "Exam", "curtain", more=f"{avoid}exam = {{ versions = 4 }}\n")
    return made


def test_a_term(term: Term, files_in: FilesIn) -> None:
    term.build("week-1")
    term.enrol(**CLASS, **LATE)
    assert "2 added, 0 moved, 0 left" in term.build("week-1")
    term.build("week-2")
    assert len(term.handed) == 12

    # Student 3 drops; student 2 has another id; week 2 has a misprint.
    left = {id: name for id, name in {**CLASS, **LATE}.items() if id not in "23"}
    term.enrol(**left, **{"22": "Bo Reed,2"})
    assert "0 added, 0 moved, 1 left" in term.build("week-1")
    (term.folder / "week-2" / "lamp.toml").write_text(lamp("A lantern of"))
    assert "as handed out to" in term.refused("week-2")
    before = term.hand_out("week-2")
    told = term.build("week-2", "--correct", "the lamp is a lantern")
    assert "0 added, 0 moved, 1 left, 5 corrected" in told
    now = term.hand_out("week-2")
    assert set(now.values()) < set(before.values())
    assert not set(now) & set(before)
    assert len(term.handed) == 18

    lost = next(iter(term.hand_out("week-2")))
    (sheet,) = (term.folder / "week-2" / "output" / "sheets").glob(f"*{lost}.pdf")
    assert term.run("reprint", term.folder / "week-2", lost, "--out", "lost").exit_code == 0
    assert read((Path("lost") / sheet.name).read_bytes()) == read(sheet.read_bytes())

    assert "nobody has a paper here under the id 2" in term.build("week-3")
    lamps = first_lamps(term)
    assert len(set(lamps)) == len(lamps) == 17  # 6, 6 and 5 students, and no set twice

    exam_and_make_up(term)
    built = term.folder / "week-1" / "output"  # printed in three parts
    words = ("build", built / "record.json", "--out", "again", "--workers", 1)
    assert term.run(*words).exit_code == 0
    for kind in ("sheets", "keys"):
        assert files_in(Path("again") / kind) == files_in(built / kind)


def first_lamps(term: Term) -> list[tuple[str, str]]:
    """The numbers of the lamp on papers that took no other's place."""
    papers = map(term.traced, term.handed)
    first = [each for each in papers if not each["follows"]]
    return [term.handed[each["code"]][0] for each in first]


def exam_and_make_up(term: Term) -> None:
    term.build("exam")
    versions = term.hand_out("exam")
    assert len(set(versions.values())) == 4
    more = 'avoid = ["../*/"]\nexam = { versions = 1 }\n'
    term.assign("make-up", "Exam, made up", "curtain", more=more)
    term.enrol(**{"1": "Ada Quill"})
    assert "it was in Exam (../exam/output)" in term.refused("make-up")
    term.assign("make-up", "Exam, made up", "curtain", more='again = ["curtain"]\n' + more)
    term.build("make-up")
    (made_up,) = term.hand_out("make-up").values()
    assert made_up not in versions.values()
