"""Inlines and blocks written as LaTeX, with the few commands the preamble layout defines."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from probgen.quantities.expression import Name
from probgen.quantities.formula import Relation
from probgen.quantities.printing import latex
from probgen.sheets.document import picture_name
from probgen.sheets.escape import escape
from probgen.wording.block import (
    Block,
    Display,
    Inline,
    Itemize,
    Math,
    Paragraph,
    Picture,
    Row,
    Strong,
    Text,
)

_BLANK_LINE: Final = re.compile(r"\s*\n[^\S\n]*\n\s*")
_UNBROKEN_ROWS: Final = 5  # a display of more rows may go over to the next page in its middle


def write_inlines(inlines: Iterable[Inline]) -> str:
    """Running text; a blank line in a text begins a new paragraph.

    A letter stays on the line of the word before it ("at A").
    """
    written = ""
    for inline in inlines:
        if _is_letter(inline) and written.endswith(" "):
            written = written[:-1] + "~"
        written += _inline(inline)
    return written


def _is_letter(inline: Inline) -> bool:
    match inline:
        case Math((Name(),)):
            return True
        case _:
            return False


def _inline(inline: Inline) -> str:
    match inline:
        case Text(text):
            return r"\par ".join(escape(part) for part in _BLANK_LINE.split(text))
        case Strong(text):
            return rf"\emph{{{escape(text)}}}"
        case Math(formula):
            written = latex(formula, display=False)
            short = sum(isinstance(piece, Relation) for piece in formula) <= 1
            return f"${{{written}}}$" if short else f"${written}$"  # braces: never torn apart


def write_blocks(blocks: Sequence[Block], pictures: Mapping[str, str]) -> str:
    r"""Blocks one below the other, a picture beside all that leads up to it.

    pictures: LaTeX pictures by `picture_name`; KeyError when one is missing.
    `\beside` takes what stands beside a picture, the picture, and what would follow both.
    """
    written: list[str] = []
    for block in blocks:
        if isinstance(block, Picture):
            before = "\n".join(written)
            written = [rf"\beside{{{before}}}{{{pictures[picture_name(block)]}}}{{}}"]
        else:
            written.append(_block(block))
    return "\n".join(written)


def _block(block: Paragraph | Itemize | Display) -> str:
    match block:
        case Paragraph(inlines):
            return write_inlines(inlines) + r"\par"
        case Display(rows):
            return write_rows(rows)
        case Itemize(items):
            listed = "\n".join(rf"\item {write_inlines(item)}" for item in items)
            return f"\\begin{{itemize}}\n{listed}\n\\end{{itemize}}"


def write_rows(rows: Sequence[Row]) -> str:
    r"""Equations aligned at their relations, each with room to break its right side.

    `\working` goes through its rows twice, first to find the widest left side.  Pages may turn
    only inside long workings, never at their first or last two rows.
    """
    lines: list[str] = []
    for place, row in enumerate(rows):
        if len(rows) > _UNBROKEN_ROWS and 2 <= place <= len(rows) - 2:
            lines.append(r"\mayturn")
        lines.append(rf"\row{{{latex(row.left)}}}{{{_relation(row)}}}{{{latex(row.right)}}}")
    body = "%\n".join(lines)
    return f"\\working{{%\n{body}%\n}}"


def _relation(row: Row) -> str:
    return latex((Relation(row.relation),)) if row.relation else ""
