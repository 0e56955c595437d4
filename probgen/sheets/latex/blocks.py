"""Inlines and blocks written as LaTeX, with the few commands the preamble layout defines."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cache
from itertools import pairwise
from typing import Final

from probgen.quantities.formula import Formula, Relation
from probgen.quantities.printing import latex, latex_in_line, latex_in_lines
from probgen.sheets.latex.escape import escape
from probgen.sheets.spacing import paragraphs, tied, with_end
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

Flowing = Paragraph | Itemize | Display
Draw = Callable[[Picture], str]
"""The LaTeX of the figure whose place a block is."""

_UNBROKEN_ROWS: Final = 5  # a display of more rows may go over to the next page in its middle

_SHORT: Final = 80
"""A formula of fewer characters fits the narrowest column, in large print too."""


def write_inlines(inlines: tuple[Inline, ...]) -> str:
    """Running text; a blank line in a text begins a new paragraph.

    A letter stays on the line of the word before it ("at A") and of what a hyphen joins to it
    ("x-axis"), and fractions stand on the line too, so that all lines are as far apart.
    """
    shown = tied(inlines)
    before, following = (None, *shown[:-1]), (*shown[1:], None)
    return "".join([_inline(*each) for each in zip(before, shown, following, strict=False)])


def _inline(before: Inline | None, inline: Inline, then: Inline | None) -> str:
    """before, then: what stands beside it; a colon before a formula, which may begin with a sign,
    has room.
    """
    match inline:
        case Text(text):
            if isinstance(before, Math) and text.startswith("-"):
                text = "\N{NON-BREAKING HYPHEN}" + text[1:]
            written = r"\par ".join([escape(part) for part in paragraphs(text)])
            leads_on = isinstance(then, Math) and written.endswith(": ")
            return rf"{written[:-1]}\enskip " if leads_on else written
        case Math(formula):
            return _formula(formula)


def _formula(formula: Formula) -> str:
    r"""A formula in a line, never torn apart; a chain of several relations may be before the second
    and further ones, where `\link` stands.
    """
    starts = [place for place, piece in enumerate(formula) if isinstance(piece, Relation)]
    parts = [formula[start:end] for start, end in pairwise([0, *starts[1:], len(formula)])]
    first, *links = [latex_in_line(part) for part in parts]
    return "".join([f"${{{first}}}$", *(rf"\link{{{link}}}" for link in links)])


def write_step(section: Section, number: int, draw: Draw) -> str:
    r"""One step of a working; its pictures hang at its right, its text flows down beside them.

    The heading runs into a first paragraph and stands over anything else.  A first paragraph stays
    with the text that leads on to an equation.  What goes on from the equations or the text before
    it, or leads on from there, is bound to it; equations after others are linked to them, and
    the items of a list to the text before it.
    """
    hung = [_hang(block, draw) for block in section.blocks if isinstance(block, Picture)]
    flowing = [block for block in section.blocks if not isinstance(block, Picture)]
    title = write_inlines(section.heading) if section.heading else escape(section.title)
    head = f"{{{number}}}{{{title}}}"
    match flowing:
        case [Paragraph(inlines), *rest]:
            first = rf"\step{head}{{{write_inlines(inlines)}}}"
            if _leads_on(rest):
                first += r"\withnext"
        case [*all_]:
            first = rf"\stepover{head}{{{write_blocks(all_[:1], draw)}}}"
            rest = all_[1:]
    flows = list(_flows(rest, flowing[:1]))
    if rest and not isinstance(rest[-1], Display):
        flows[-1] = flows[-1].replace(r"\flow", r"\lastflow", 1)
    return "\n".join([*hung, first, *flows])


def _leads_on(blocks: Sequence[Flowing]) -> bool:
    """Whether a text leads on to an equation."""
    match blocks:
        case [Paragraph(), Display(), *_]:
            return True
        case _:
            return False


def _hang(picture: Picture, draw: Draw) -> str:
    return rf"\hangfigure{{{draw(picture)}}}"


def _flows(blocks: Sequence[Flowing], before: Sequence[Flowing]) -> Iterator[str]:
    """Blocks that may stand beside a figure; equations that follow each other may share a line.

    The last ones never stand in one line at the head of a page.
    """
    place = 0
    while place < len(blocks):
        block = blocks[place]
        last = [*before, *blocks[:place]][-1]
        if _is_bound(last, block):
            yield r"\bound"
        elif isinstance(last, Display | Itemize) and isinstance(block, Display):
            yield r"\linked"
        following = blocks[place + 1] if place + 1 < len(blocks) else None
        if isinstance(block, Display) and isinstance(following, Display):
            second = write_rows(following.rows)
            if place + 2 == len(blocks):
                second = rf"\keepline{{{second}}}"
            yield rf"\flow{{\pair{{{write_rows(block.rows)}}}{{{second}}}}}"
            place += 2
        elif isinstance(block, Display) and following is None:
            yield rf"\flow{{\keepline{{{write_rows(block.rows)}}}}}"
            place += 1
        else:
            for number, part in enumerate(_parts(block)):
                if isinstance(block, Itemize) and (number or isinstance(last, Paragraph)):
                    yield r"\listed"
                yield rf"\flow{{{part}}}"
            place += 1


def _is_bound(before: Flowing, block: Flowing) -> bool:
    """Whether a page should not turn between two blocks: before equations that a text leads on to,
    before a text that goes on from equations."""
    match before, block:
        case (Paragraph(), Display()):
            return True
        case (Display(), Paragraph(bound=bound)):
            return bound
        case _:
            return False


def write_blocks(blocks: Iterable[Block], draw: Draw) -> str:
    """Blocks one below the other, pictures hanging beside what follows them."""
    written: list[str] = []
    for block in blocks:
        if isinstance(block, Picture):
            written.append(_hang(block, draw))
        else:
            written += _parts(block)
    return "\n".join(written)


def _parts(block: Flowing) -> list[str]:
    match block:
        case Paragraph(inlines):
            return [write_inlines(inlines) + r"\par"]
        case Display(rows):
            return [write_rows(rows)]
        case Itemize(items):
            return [rf"\listitem{{{write_inlines(with_end(item))}}}" for item in items]


def write_formulas(formulas: Iterable[Formula]) -> str:
    """Formulas side by side or, where they are too wide, one below the other; for math mode."""
    return r",\penalty0\qquad ".join(f"{{{latex(formula)}}}" for formula in formulas)


def write_rows(rows: Sequence[Row]) -> str:
    r"""Equations aligned at their relations, each with room to break its right side.

    `\working` goes through its rows twice, first to find the widest left side.  Pages may turn
    only inside long workings, never at their first or last two rows, nor between two forms of the
    equation they begin with: `\mayturn` lets them do so before the line that its row follows.
    """
    lines: list[str] = []
    first = 2 + (len(rows) > 1 and not rows[1].left)
    for place, row in enumerate(rows):
        if len(rows) > _UNBROKEN_ROWS and first <= place <= len(rows) - 2:
            lines.append(r"\mayturn")
        links = [_row(link) for link in _links(row)]
        lines.append(links[0] if len(links) == 1 else rf"\chain{{{''.join(links)}}}")
    if len(rows) > 1 and not any(row.left for row in rows[-2:]):
        lines[-2:] = [rf"\lastrows{{{lines[-2]}{lines[-1]}}}"]
    body = "%\n".join(lines)
    return f"\\working{{%\n{body}%\n}}"


def _row(row: Row) -> str:
    return rf"\row{{{latex(row.left)}}}{{{_relation(row.relation)}}}{{{_right(row.right)}}}"


def _right(formula: Formula) -> str:
    """A right side and, where a fraction may be wider than a line, how it is broken then."""
    written = latex(formula)
    if len(written) < _SHORT or r"\dfrac" not in written:
        return written
    return rf"\orbroken{{{written}}}{{{latex_in_lines(formula)}}}"


def _links(row: Row) -> Iterator[Row]:
    """A chain of equations link by link: a line of one that is too wide begins with a relation."""
    signs = [piece.sign for piece in row.right if isinstance(piece, Relation)]
    starts = [place for place, piece in enumerate(row.right) if piece == Relation("=")]
    if not starts or not {"=", "≈"}.issuperset(signs):
        yield row
        return
    yield Row(row.left, row.relation, row.right[: starts[0]])
    for start, end in pairwise([*starts, len(row.right)]):
        yield Row((), "=", row.right[start + 1 : end])


@cache  # of the few signs there are
def _relation(sign: str) -> str:
    return latex((Relation(sign),)) if sign else ""
