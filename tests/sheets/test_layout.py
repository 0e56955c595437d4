"""Layouts: what they print is escaped, and a department's mistakes are told by file and line."""

from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.sheets.document import Header, Part, Problem, Sheet
from probgen.sheets.house import House, read_layouts
from probgen.sheets.layout import Layouts
from probgen.wording.block import Text

HEADER = Header("Physics & Co", "Set 1", "Ada \\end{document}", "007", "K7-1")
PROBLEM = Problem(1, "Shelf", (Text("50 %"),), (Part("a", (Text("T"),), "N"),), r"\FIGURE{}", 10)
SHEET = Sheet(HEADER, (), ("Take care_",), (PROBLEM, PROBLEM))

PRINTED = {
    "typed text": ("<< sheet.header.student_name >>", r"Ada \textbackslash{}end\{document\}"),
    "joined text": ("<< 'a_' ~ sheet.header.code >>", r"a\_K7{-}1"),
    "a number": ("<< sheet.points >>", "20"),
    "inlines": ("<< sheet.problems[0].statement >>", r"50 \%"),
    "a figure": ("<< sheet.problems[0].figure | latex >>", r"\FIGURE{}"),
    "a figure not said to be one": (
        "<< sheet.problems[0].figure >>", r"\textbackslash{}FIGURE\{\}",
    ),
    "no inlines": ("<< sheet.preface >>", ""),
}  # fmt: skip

REFUSED = {
    "a name there is not": ("\n<< sheet.titel >>", "line 2", "titel"),
    "no layout language": ("<% for %>", "line 1", "Expected"),
    "a thing without print": ("\n\n<< sheet.header >>", "line 3", "a Header cannot be printed"),
    "a reach into Python": ("<< sheet.__class__.__mro__ >>", "line 1", "unsafe"),
    "a change of the sheet": ("<< sheet.cautions.__add__(('x',)) >>", "line 1", "unsafe"),
    "another file": ("<% include '/etc/hostname' %>", "line 1", "/etc/hostname"),
}


def own(folder: Path) -> House:
    return House(layouts=read_layouts(folder), folder=str(folder))


def print_with(layout: str, folder: Path) -> str:
    (folder / "sheet.tex.j2").write_text(layout, encoding="utf-8")
    return Layouts(own(folder)).sheet(SHEET)


@pytest.mark.parametrize(("layout", "latex"), PRINTED.values(), ids=PRINTED)
def test_printed(layout: str, latex: str, tmp_path: Path) -> None:
    assert print_with(layout, tmp_path) == latex


@pytest.mark.parametrize(("layout", "line", "found"), REFUSED.values(), ids=REFUSED)
def test_refused(layout: str, line: str, found: str, tmp_path: Path) -> None:
    with pytest.raises(InputError) as caught:
        print_with(layout, tmp_path)
    (fault,) = caught.value.faults
    assert fault.file == str(tmp_path / "sheet.tex.j2")
    assert fault.field == line
    assert found in fault.found


def test_a_folder_replaces_only_the_layouts_it_has(tmp_path: Path) -> None:
    (tmp_path / "sheet.tex.j2").write_text("own", encoding="utf-8")
    layouts = Layouts(own(tmp_path))
    assert layouts.sheet(SHEET) == "own"
    assert layouts.preamble("a4") == Layouts().preamble("a4")


def test_the_paper_is_chosen() -> None:
    assert "letterpaper" in Layouts().preamble()
    assert "a4paper" in Layouts().preamble("a4")
