"""Blocks as LaTeX."""

from dataclasses import replace
from decimal import Decimal

import pytest

from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.unit import NEWTON
from probgen.sheets.latex.blocks import write_blocks, write_inlines, write_rows, write_step
from probgen.wording.block import (
    Block,
    Display,
    Inline,
    Itemize,
    Math,
    Paragraph,
    Picture,
    Row,
    Section,
    Text,
)

T = Name("T", "T")
FORCE = Number(Decimal("12.0"), NEWTON)
TEXT = Paragraph((Text("Pull"),))
ROW = Row((T,), "=", (FORCE,))
N = r"12.0\,\mathrm{N}"
ROW_WRITTEN = r"\row{T}{=}{12.0\,\mathrm{N}}"

INLINES = {
    "text is escaped": ((Text("5 % & up"),), r"5 \% \& up"),
    "a letter keeps to its word": (
        (Text("The cable pulls at "), Math((T,))), r"The cable pulls at~${T}$",
    ),
    "a number and its unit": (
        (Text("4.00 m long, 25 N·m, 3 min, 2 in a row, 9.8 m/s²"),),
        r"4.00\,m long{,} 25\,N\ensuremath{\mathord{\cdot}}m{,} 3 min{,} 2 in a row{,} "
        r"9.8\,m/s\texttwosuperior{}",
    ),
    "a letter begins a sentence": ((Text("It is so. "), Math((T,))), "It is so. ${T}$"),
    "a letter and what is joined to it are one": (
        (Math((T,)), Text("-axis, so-called")), r"${T}$\mbox{-}axis{,} so{-}called"
    ),
    "a colon has room before a formula": ((Text("up: "), Math((T,))), r"up:\enskip ${T}$"),
    "blank lines part paragraphs": ((Text("one\n  \ntwo\nlines"),), r"one\par two lines"),
    "one relation holds together": (
        (Math((T, Relation("="), FORCE)),), r"${T = 12.0\,\mathrm{N}}$",
    ),
    "a chain may break before a relation": (
        (Math((T, Relation("="), T, Relation("="), FORCE)),),
        r"${T = T}$\link{= 12.0\,\mathrm{N}}",
    ),
}  # fmt: skip


def draw(picture: Picture) -> str:
    return {"situation": "FIGURE", "free-body": f"FORCES {picture.body}"}[picture.kind]


BLOCKS = {
    "a picture hangs beside what follows": (
        (TEXT, Picture("free-body", "shelf"), TEXT),
        "Pull\\par\n\\hangfigure{FORCES shelf}\nPull\\par",
    ),
    "a picture alone": ((Picture("situation"),), r"\hangfigure{FIGURE}"),
    "a list": ((Itemize(((Text("a"),), (Text("b"),))),), "\\listitem{a}\n\\listitem{b}"),
    "none": ((), ""),
}  # fmt: skip

WORKING = f"\\working{{%\n{ROW_WRITTEN}%\n}}"
STEPS = {
    "the heading runs into its text": (
        (TEXT, TEXT), "\\step{3}{Pull \\& push}{Pull}\n\\lastflow{Pull\\par}",
    ),
    "the heading stands over equations": (
        (Display((ROW,)), TEXT),
        f"\\stepover{{3}}{{Pull \\& push}}{{{WORKING}}}\n\\lastflow{{Pull\\par}}",
    ),
    "a picture hangs from the heading on": (
        (TEXT, Itemize(((Text("a"),),)), Picture("situation")),
        "\\hangfigure{FIGURE}\n\\step{3}{Pull \\& push}{Pull}\n"
        "\\listed\n\\lastflow{\\listitem{a}}",
    ),
    "two workings may share a line": (
        (TEXT, Display((ROW,)), Display((ROW,))),
        "\\step{3}{Pull \\& push}{Pull}\n\\bound\n"
        f"\\flow{{\\pair{{{WORKING}}}{{\\keepline{{{WORKING}}}}}}}",
    ),
    "a line that ends it stays with what is before it": (
        (TEXT, TEXT, Display((ROW,)), Display((ROW,)), Display((ROW,))),
        "\\step{3}{Pull \\& push}{Pull}\\withnext\n\\flow{Pull\\par}\n\\bound\n"
        f"\\flow{{\\pair{{{WORKING}}}{{{WORKING}}}}}\n\\linked\n\\flow{{\\keepline{{{WORKING}}}}}",
    ),
    "what is said of a result stays with it": (
        (TEXT, Display((ROW,)), replace(TEXT, bound=True)),
        f"\\step{{3}}{{Pull \\& push}}{{Pull}}\n\\bound\n\\flow{{{WORKING}}}\n"
        "\\bound\n\\lastflow{Pull\\par}",
    ),
    "nothing but a heading": ((), "\\stepover{3}{Pull \\& push}{}"),
}  # fmt: skip


@pytest.mark.parametrize(("inlines", "latex"), INLINES.values(), ids=INLINES)
def test_inlines(inlines: tuple[Inline, ...], latex: str) -> None:
    assert write_inlines(inlines) == latex


@pytest.mark.parametrize(("blocks", "latex"), BLOCKS.values(), ids=BLOCKS)
def test_blocks(blocks: tuple[Block, ...], latex: str) -> None:
    assert write_blocks(blocks, draw) == latex


@pytest.mark.parametrize(("blocks", "latex"), STEPS.values(), ids=STEPS)
def test_steps(blocks: tuple[Block, ...], latex: str) -> None:
    assert write_step(Section("Pull & push", blocks), 3, draw) == latex


def test_the_last_two_rows_may_share_a_line() -> None:
    rows = [Row((T,), "=", (FORCE,)), Row((), "=", (FORCE,)), Row((), "=", (FORCE,))]
    assert write_rows(rows).count(r"\lastrows{\row{}") == 1
    assert r"\lastrows" not in write_rows(rows[:2])


def test_a_row_without_left_side() -> None:
    assert r"\row{}{=}{12.0\,\mathrm{N}}" in write_rows([Row((), "=", (FORCE,))])


@pytest.mark.parametrize(
    ("right", "written"),
    [
        ((FORCE, Relation("≈"), FORCE), [f"{N} \\approx {N}"]),
        ((FORCE, Relation("="), FORCE), [N, N]),
        ((FORCE, Relation("="), FORCE, Relation("≈"), FORCE), [N, f"{N} \\approx {N}"]),
        ((FORCE, Relation(","), FORCE, Relation("="), FORCE), [f"{N} , {N} = {N}"]),
    ],
)
def test_a_chain_is_written_link_by_link(right: Formula, written: list[str]) -> None:
    """Where nothing but its relations parts it."""
    (first, *others) = written
    rows = rf"\row{{F}}{{=}}{{{first}}}" + "".join(rf"\row{{}}{{=}}{{{each}}}" for each in others)
    chain = rf"\chain{{{rows}}}" if others else rows
    assert write_rows([Row((Name("F", "F"),), "=", right)]) == f"\\working{{%\n{chain}%\n}}"


@pytest.mark.parametrize(("rows", "turns"), [(1, 0), (5, 0), (6, 3), (8, 5)])
def test_pages_turn_only_inside_long_workings(rows: int, turns: int) -> None:
    written = write_rows([ROW] * rows)
    assert written.count(r"\mayturn") == turns
    if turns:
        first, *_, last = written.split("\\mayturn%\n")
        assert first.count(r"\row") == 2
        assert last.count(r"\row") == 2


def test_letters_in_a_heading_are_formulas() -> None:
    heading = (Text("Size of "), Math((Name("R_B", "R_B"),)))
    written = write_step(Section("Size of R_B", (), heading), 3, draw)
    assert written == "\\stepover{3}{Size of~${R_{\\mathrm{B}}}$}{}"
