"""Pictures in LaTeX: read back from the PDF, their lines run as the values say."""

from __future__ import annotations

import math
import re
import shutil
import subprocess
from decimal import Decimal
from itertools import pairwise
from pathlib import Path

import pdfplumber
import pytest

from probgen.figures.paper.placement import centred, set_in
from probgen.figures.paper.scene import (
    BARE,
    DASHED,
    FINE,
    HEAVY,
    MEDIUM,
    Arc,
    Arrow,
    Box,
    Pen,
    Scene,
    Stated,
    Tone,
    apart,
    circle,
    composed,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.scene import Path as Strokes
from probgen.figures.paper.type_metrics import extent
from probgen.figures.writers.latex import dashes, latex_picture
from probgen.quantities.expression import Name, Number
from probgen.quantities.symbol import italic
from probgen.quantities.unit import METRE
from tests.figures.conftest import Case
from tests.figures.seen import tag

POINT = 72.0 / 72.27
"""PDF units in a printer's point."""


def typeset(scenes: list[Scene], folder: Path) -> list[list[tuple[complex, complex]]]:
    """The straight strokes on each page, one page a scene (printer's points, y up)."""
    if shutil.which("pdflatex") is None:
        pytest.skip("pdflatex is not installed")
    pages = "\\newpage\n".join(latex_picture(scene) for scene in scenes)
    source = (
        r"\documentclass{article}\usepackage[T1]{fontenc}\usepackage{lmodern,amsmath,pict2e}"
        r"\pagestyle{empty}\parindent0pt\begin{document}" + pages + r"\end{document}"
    )
    (folder / "a.tex").write_text(source, encoding="utf-8")
    subprocess.run(
        ["pdflatex", "-interaction=batchmode", "a.tex"],
        cwd=folder, check=True, capture_output=True,
    )  # fmt: skip
    with pdfplumber.open(folder / "a.pdf") as pdf:
        return [
            [
                (complex(*a) / POINT, complex(*b) / POINT)
                for stroke in (*page.lines, *page.curves)
                for a, b in pairwise(stroke["pts"])
            ]
            for page in pdf.pages
        ]


def slope(stroke: tuple[complex, complex]) -> float:
    """The direction of a stroke on the page (pdfplumber's y runs down), 0 up to 180 degrees."""
    way = (stroke[1] - stroke[0]).conjugate()
    return math.degrees(math.atan2(way.imag, way.real)) % 180.0


EXPECTED = {
    "beam": lambda v: 180.0 - v["cable_angle"],
    "ladder": lambda v: v["ladder_angle"],
    "forearm": lambda v: 90.0 + v["muscle_angle"],
}


def test_lines_in_the_pdf_have_the_drawn_angles(
    cases: dict[tuple[str, int], Case], tmp_path: Path
) -> None:
    chosen = [(name, cases[name, seed]) for name in EXPECTED for seed in range(4)]
    scenes = [case.situation() for _, case in chosen]
    for (name, case), strokes in zip(chosen, typeset(scenes, tmp_path), strict=True):
        angle = EXPECTED[name](case.values) % 180.0
        off = [min(apart(slope(s), angle), 180.0 - apart(slope(s), angle)) for s in strokes
               if abs(s[1] - s[0]) > 10.0]  # fmt: skip
        assert min(off) < 0.05, name


def test_labels_are_where_the_scene_has_them(
    cases: dict[tuple[str, int], Case], tmp_path: Path
) -> None:
    """The text of a label lies inside the box it was given, and the frame fits the drawing."""
    case = cases["beam", 3]
    scene = case.situation()
    strokes = typeset([scene], tmp_path)[0]
    with pdfplumber.open(tmp_path / "a.pdf") as pdf:
        characters = pdf.pages[0].chars
    left = min(min(a.real, b.real) for a, b in strokes)
    for label in scene.labels:
        near = [
            c for c in characters
            if label.box.left - 0.6 <= c["x0"] / POINT - left + scene.box.left
            and c["x1"] / POINT - left + scene.box.left <= label.box.right + 0.9
        ]  # fmt: skip
        assert near, str(label.tag)


def test_numbers_are_rounded_to_a_hundredth_of_a_point() -> None:
    text = latex_picture(composed([line(0j, complex(1 / 3, -1e-9), FINE)]))
    assert not re.search(r"\d\.\d{3}", text)
    assert "-0)" not in text
    assert "-0," not in text


def test_dashes_begin_and_end_the_line() -> None:
    pieces = list(dashes((0j, 50 + 0j), DASHED))
    assert pieces[0][0] == 0
    assert pieces[-1][1] == pytest.approx(50)
    gaps = [b[0] - a[1] for a, b in pairwise(pieces)]
    assert gaps == pytest.approx([DASHED.gap] * len(gaps))


def test_only_path_commands_of_pict2e_are_used() -> None:
    scene = composed(
        [line(0j, 9j, FINE), circle(0j, 3, HEAVY), Arc(0j, 5, 0, 200, DASHED),
         Arrow(0j, 20 * heading(30), HEAVY)]
    )  # fmt: skip
    commands = set(re.findall(r"\\([a-zA-Z]+)", latex_picture(scene)))
    assert commands <= {
        "begingroup", "setlength", "unitlength", "begin", "roundjoin", "linethickness", "moveto",
        "lineto", "curveto", "closepath", "strokepath", "fillpath", "end", "endgroup",
    }  # fmt: skip


def test_a_tone_is_painted_under_its_outline_and_ends_with_it() -> None:
    box = polygon((0j, 9 + 0j, 9 + 9j), MEDIUM, tag("body:box"), tone=Tone.BODY)
    written = latex_picture(composed([box, line(0j, 9 + 0j, MEDIUM, tag("cable:T"))]))
    tinted, _, after = written.partition(r"\closepath\strokepath")
    assert r"pIIe@linejoin\endcsname{ 1 j 0.9 g}" in tinted
    assert r"pIIe@stroke@op\endcsname{B}" in tinted
    assert r"\roundjoin\expandafter\def\csname pIIe@stroke@op\endcsname{S}" in after


def test_an_open_stroke_takes_its_tone_and_a_bare_face_no_outline() -> None:
    arm = Strokes(((0j, 9 + 0j),), Pen(4.0, round=True), tag("body:p"), tone=Tone.PERSON)
    assert r"{ 1 j 0.78 G}" in latex_picture(composed([arm]))
    soil = polygon((0j, 9 + 0j, 9 + 9j), BARE, tag("soil"), tone=Tone.GROUND)
    assert r"pIIe@stroke@op\endcsname{f}" in latex_picture(composed([soil]))


def test_a_symbol_stands_with_its_number() -> None:
    stated = Stated(Name("d", "d_c"), Number(Decimal("2.10"), METRE))
    box = centred(stated, 0j)
    written = latex_picture(composed([set_in(stated, box, tag("label:d"))]))
    assert r"$d_{\mathrm{c}} = 2.10\,\mathrm{m}$" in written


ROUND, FLAT = Pen(2.0, round=True), Pen(2.0)
DRAWN = [  # what is drawn, and its width, ink and cap on the page, one after the other
    (line(0j, 9j, FINE, tag("body:b")), FINE.weight, "", False),
    (line(0j, 9j, FINE, tag("cable:T")), FINE.weight, "0,0.62,0.45", False),
    (line(1j, 9j, ROUND, tag("cable:T")), 2.0, "0,0.62,0.45", True),
    (line(2j, 9j, FLAT, tag("cable:T")), 2.0, "0,0.62,0.45", False),
    (line(3j, 9j, FLAT, tag("body:b")), 2.0, "0,0,0", False),
    (line(4j, 9j, HEAVY, tag("force:F")), HEAVY.weight, "0,0.45,0.7", False),
]


@pytest.mark.parametrize("colour", [True, False])
def test_every_stroke_has_its_own_width_ink_and_cap(colour: bool) -> None:
    written = latex_picture(composed([shape for shape, *_ in DRAWN]), colour)
    width, ink, rounded, found = 0.0, "", False, []
    commands = r"\\linethickness\{([\d.]+)pt\}|\\color\[rgb\]\{([\d.,]+)\}|\\(roundcap|buttcap)"
    for match in re.finditer(commands + r"|\\(moveto)", written):
        width = float(match[1] or width)
        ink, rounded = match[2] or ink, match[3] == "roundcap" if match[3] else rounded
        if match[4]:
            found.append((width, ink, rounded))
    wanted = [(weight, shown if colour else "", cap) for _, weight, shown, cap in DRAWN]
    assert found == wanted


def test_a_width_is_set_where_it_changes() -> None:
    strokes = [line(0j, 10 + place * 1j, pen) for place, pen in enumerate((MEDIUM, DASHED, HEAVY))]
    widths = re.findall(r"\\linethickness\{([\d.]+)pt\}", latex_picture(composed(strokes)))
    assert all(one != other for one, other in pairwise(widths))
    assert len(widths) == len({MEDIUM.weight, DASHED.weight, HEAVY.weight})


def test_every_label_has_its_own_size_and_ink() -> None:
    labels = [
        set_in(Name("F", "F"), centred(Name("F", "F"), 0j, 11.0), tag("label:F"), 11.0),
        set_in(Name("d", "d"), centred(Name("d", "d"), 40j, 11.0), tag("dimension:d"), 11.0),
        set_in(Name("e", "e"), centred(Name("e", "e"), 80j, 8.0), tag("dimension:e"), 8.0),
    ]
    written = latex_picture(composed(labels), colour=True)
    parts = re.findall(r"\\(?:color|fontsize|put)[^\\%$]*\$?[a-zA-Z]?", written)
    heads = [part.partition("{")[0].partition("(")[0] for part in parts]
    assert heads == [r"\fontsize", r"\put", r"\color[rgb]", r"\fontsize", r"\put", r"\fontsize",
                     r"\put"]  # fmt: skip
    assert [part for part in parts if "fontsize" in part] == [
        r"\fontsize{11}{13.2}", r"\fontsize{11}{13.2}", r"\fontsize{8}{9.6}",
    ]  # fmt: skip
    assert r"\color" not in latex_picture(composed(labels))


def test_a_letter_among_words_is_italic_and_has_its_width() -> None:
    leg = f"leg {italic('BC')}"
    label = set_in(leg, Box(0.0, 0.0, 40.0, 7.0), tag("note:leg"), 8.0)
    assert "{leg $BC$}" in latex_picture(composed([label]))
    words, letters = extent("leg ", 8.0), extent("BC", 8.0)
    assert extent(leg, 8.0).width > words.width + letters.width  # as italic capitals are broader
