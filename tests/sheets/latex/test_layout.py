"""Layouts: what they print is escaped, and a department's mistakes are told by file and line."""

import re
from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pytest

from probgen.figures.freebody import lettering, notes
from probgen.figures.measured import proportion
from probgen.figures.paper.scene import MEDIUM, composed, line
from probgen.figures.paper.type_metrics import SIZE
from probgen.figures.writers.latex import latex_picture
from probgen.input.fault import InputError
from probgen.sheets.document import Header, Key, Part, Problem, Sheet, Solution
from probgen.sheets.house import House, read_layouts
from probgen.sheets.latex.layout import LayoutError, Layouts
from probgen.sheets.style import HouseStyle
from probgen.wording.block import Picture, Section, Text
from tests.figures.seen import tag

HEADER = Header("Physics & Co", "Set 1", "Ada \\end{document}", "007", "K7-1")
FIGURE = composed([line(0j, 20 + 9j, MEDIUM, tag("cable:T"))])
PROBLEM = Problem(1, "Shelf", (Text("50 %"),), (Part("a", (Text("T"),), "N"),), FIGURE, 10)
BARE = replace(PROBLEM, figure=None)
SHEET = Sheet(HEADER, (), ("Take care_",), (PROBLEM, BARE))

PRINTED = {
    "typed text": ("<< sheet.header.student_name >>", r"Ada \textbackslash{}end\{document\}"),
    "joined text": ("<< 'a_' ~ sheet.header.code >>", r"a\_K7{-}1"),
    "a number": ("<< sheet.points >>", "20"),
    "inlines": ("<< sheet.problems[0].statement >>", r"50 \%"),
    "a figure": ("<< sheet.problems[0].figure >>", latex_picture(FIGURE)),
    "a figure, or none": ("<< sheet.problems[0].figure | picture >>", latex_picture(FIGURE)),
    "a figure as layouts once printed it": (
        "<< sheet.problems[0].figure | latex >>", latex_picture(FIGURE),
    ),
    "no figure": ("<< sheet.problems[1].figure | picture >>", ""),
    "no figure as once": ("<< sheet.problems[1].figure | latex >>", ""),
    "LaTeX": ("<< '$x$' | latex >>", "$x$"),
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


LOOP = "<% for a in range(9999) %>"
END = "<% endfor %>"
ENDLESS = {
    "loops in loops": LOOP * 3 + END * 3,
    "itself behind much else": f"{LOOP}x{END}<% include 'sheet.tex.j2' %>",
}


@pytest.mark.parametrize("layout", ENDLESS.values(), ids=ENDLESS)
def test_a_layout_without_end_is_told(
    layout: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("probgen.sheets.latex.layout._SECONDS", 0.1)
    with pytest.raises(LayoutError, match=r"sheet\.tex\.j2") as caught:
        print_with(layout, tmp_path)
    assert "takes longer" in caught.value.faults[0].found


def test_a_folder_replaces_only_the_layouts_it_has(tmp_path: Path) -> None:
    (tmp_path / "sheet.tex.j2").write_text("own", encoding="utf-8")
    layouts = Layouts(own(tmp_path))
    assert layouts.sheet(SHEET) == "own"
    assert layouts.preamble("a4") == Layouts().preamble("a4")


def test_figures_have_colours_where_the_house_wants_them() -> None:
    coloured = Layouts(House(HouseStyle(figures="colour"))).sheet(SHEET)
    assert latex_picture(FIGURE, colour=True) in coloured
    assert r"\color[rgb]" in coloured
    assert r"\color[rgb]" not in Layouts().sheet(SHEET)


def test_a_picture_that_is_missing() -> None:
    section = Section("Forces", (Picture("free-body", "beam"),))
    solution = Solution(1, "Shelf", (), None, (section,), (), 10)
    with pytest.raises(InputError, match="line"):
        Layouts().key(Key(HEADER, (solution,)))


def test_the_paper_is_chosen() -> None:
    assert "letterpaper" in Layouts().preamble()
    assert "a4paper" in Layouts().preamble("a4")


ROWS = [
    (HEADER, 2),  # name and id, then version and points
    (replace(HEADER, code="", section="B"), 2),
    (replace(HEADER, code=""), 1),  # points beside the id
]


@pytest.mark.parametrize(("header", "rows"), ROWS)
def test_points_stand_beside_the_id_where_nothing_else_does(header: Header, rows: int) -> None:
    printed = Layouts().sheet(replace(SHEET, header=header))
    head = printed[printed.index(r"\fieldrow") : printed.index(r"\rulebelow")]
    assert head.count(r"\fieldrow") == rows
    assert head.count("Points") == 1


def test_letters_and_notes_keep_their_size_where_figures_of_a_key_are_smaller() -> None:
    """Every factor by which its pages may have them smaller, of the least print but subscripts."""
    makeup = files("probgen.sheets.latex").joinpath("layouts/makeup.tex.j2")
    factors = re.findall(r"\\tryway\{([.\d]+)\}", makeup.read_text(encoding="utf-8"))
    assert len(factors) > 5
    (least,) = re.findall(r"\\leastdiagram\{([.\d]+)\}", makeup.read_text(encoding="utf-8"))
    assert min(map(float, factors)) * min(SIZE, proportion._SMALL) >= 6.5
    assert float(least) * min(notes._SMALL, lettering._SMALL) >= 6.5
