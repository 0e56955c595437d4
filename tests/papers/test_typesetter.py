"""What a class gets, as documents for the press: whose each is, how it is set, in which pile."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import pytest

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.print_run import PrintRun
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.input.outside import OutsideError
from probgen.papers import typesetter as module
from probgen.papers.page import Copy
from probgen.papers.typesetter import Kind, Typesetter, typesetter_of
from probgen.sheets.document import AnswerTable, Cover, Header
from probgen.sheets.house import USUAL, House
from probgen.sheets.style import HouseStyle
from probgen.wording.block import Text
from tests.papers.test_page import BEAM, copy_with

COPY, LARGE = copy_with([BEAM]), copy_with([BEAM], large=True)


def anonymous() -> Copy:
    """An exam's copy, which names nobody."""
    version = Version("CODE", "version-b", Student("", ""), letter="B")
    return Copy(COPY.problem_set, version, COPY.problems, COPY.worked)


def test_each_document_lies_in_its_pile_and_bears_its_owners_name() -> None:
    setter = Typesetter()
    for kind, pile in ((Kind.SHEETS, "sheets"), (Kind.KEYS, "keys")):
        document = setter.document(kind, COPY)
        assert (document.name, document.title, document.pile) == ("01-ada-1", "W: Ada, CODE", pile)
    assert setter.document(Kind.KEYS, anonymous()).title == "W: version B, CODE"
    sheet, key = (setter.document(kind, COPY).body for kind in (Kind.SHEETS, Kind.KEYS))
    assert "Solution" not in sheet
    assert key != sheet


def test_only_sheets_are_printed_large() -> None:
    setter = Typesetter()
    usual = setter.document(Kind.SHEETS, COPY).preamble
    assert setter.document(Kind.SHEETS, LARGE).preamble != usual
    assert setter.document(Kind.KEYS, LARGE).preamble == usual
    assert setter.document(Kind.KEYS, COPY).preamble == usual


def test_covers_and_tables_are_set_each_in_its_layout() -> None:
    header = Header(
        course="M", title="W", student_name="", student_id="", code="", section="", due="",
        version="",
    )  # fmt: skip
    cover = Cover(header, notes=("Hush now.",))
    table = AnswerTable(header, ("Id",), (("Beam", ((Text("T"),),)),), (), "All answers")
    setter = Typesetter()
    page, listed = (setter.page("sheets", "cover", each) for each in (cover, table))
    assert (page.name, page.title, page.pile) == ("cover", "W", "sheets")
    assert "Hush now." in page.body
    assert "All answers" in listed.body
    assert "All answers" not in page.body


def test_a_set_says_paper_sides_and_house() -> None:
    house = House(HouseStyle(text="sans"))
    problem_set = ProblemSet("M", "W", "class.csv", (Assigned(BEAM, 1),), paper="a4")
    assert typesetter_of(problem_set, house) == Typesetter("a4", house)
    simplex = ProblemSet("M", "W", "c", (Assigned(BEAM, 1),), run=PrintRun(duplex=False))
    assert typesetter_of(simplex, USUAL) == Typesetter("letter", USUAL)
    letter, a4 = Typesetter("letter"), Typesetter("a4")
    assert letter.document(Kind.KEYS, COPY).preamble != a4.document(Kind.KEYS, COPY).preamble


def test_sides_and_files_go_to_the_press(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[tuple[Sequence[Any], dict[str, Any]]] = []
    monkeypatch.setattr(module, "print_batch", lambda docs, **how: asked.append((docs, how)))
    house = House(HouseStyle(logo=b"logo", logo_kind=".png"))
    Typesetter(house=house).print(["one"])  # type: ignore[list-item]
    assert asked == [(["one"], {"files": house.style.files})]
    assert house.style.files


BANNERS = {
    "pdfTeX 3.14159265-2.6-1.40.16 (TeX Live 2015)": False,
    "pdfTeX 3.14159265-2.6-1.40.17 (TeX Live 2016)": True,
    "pdfTeX 3.141592653-2.6-1.40.24 (TeX Live 2022)": True,
    "pdfTeX of another kind": True,  # nobody knows, so it is tried
}


@pytest.mark.parametrize(("banner", "fit"), BANNERS.items())
def test_tex_must_be_new_enough_and_hold_what_pages_need(
    monkeypatch: pytest.MonkeyPatch, banner: str, fit: bool
) -> None:
    """1.40.17 is the first that can leave the clock out of a PDF (NEWS of pdfTeX)."""
    tried: list[str] = []
    monkeypatch.setattr(module, "engine", lambda: "pdftex")
    monkeypatch.setattr(module, "engine_version", lambda program: banner)
    monkeypatch.setattr(module, "format_for", tried.append)
    setter = Typesetter()
    if not fit:
        with pytest.raises(OutsideError, match="too old"):
            setter.require_tex()
        assert tried == []
        return
    setter.require_tex()
    assert tried == [setter.document(Kind.KEYS, COPY).preamble]
