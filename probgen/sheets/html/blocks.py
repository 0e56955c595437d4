"""Inlines and blocks written as HTML; formulas are presentation MathML."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from markupsafe import Markup, escape

from probgen.quantities.formula import Formula, Piece, Relation
from probgen.quantities.printing import mathml
from probgen.sheets.spacing import paragraphs, tied
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

Draw = Callable[[Picture], Markup]
"""The HTML of the figure whose place a block is."""

_MAY_BREAK = Markup("<wbr>")
_TIE = Markup('<span class="tie"> </span>')  # some fonts have an odd space for U+00A0
_NEW_PARAGRAPH = Markup('<span class="paragraph"></span>')


def write_inlines(inlines: tuple[Inline, ...]) -> Markup:
    """Running text; a blank line in a text begins a new paragraph."""
    return Markup("").join(_inline(inline) for inline in tied(inlines))


def _inline(inline: Inline) -> Markup:
    match inline:
        case Text(text):
            shown = (escape(part).replace("\u00a0", _TIE) for part in paragraphs(text))
            return _NEW_PARAGRAPH.join(shown)
        case Math(formula):
            return _MAY_BREAK.join(_math(part, display=False) for part in _parts(formula))


def write_formula(formula: Formula) -> Markup:
    """A formula set apart; lines may break before its relations."""
    return _MAY_BREAK.join(_math(part, display=True) for part in _parts(formula))


def write_blocks(blocks: Iterable[Block], draw: Draw) -> Markup:
    """Blocks one below the other."""
    return Markup("\n").join(_block(block, draw) for block in blocks)


def write_step(section: Section, draw: Draw) -> Markup:
    """The blocks of a step; its pictures come first, to hang beside all of it."""
    hung = [block for block in section.blocks if isinstance(block, Picture)]
    flowing = [block for block in section.blocks if not isinstance(block, Picture)]
    return write_blocks([*hung, *flowing], draw)


def _block(block: Block, draw: Draw) -> Markup:
    match block:
        case Paragraph(inlines):
            return Markup("<p>{}</p>").format(write_inlines(inlines))
        case Display(rows):
            lines = Markup("\n").join(_row(row) for row in rows)
            return Markup('<div class="equations">\n{}\n</div>').format(lines)
        case Itemize(items):
            listed = (Markup("<li>{}</li>").format(write_inlines(item)) for item in items)
            return Markup("<ul>\n{}\n</ul>").format(Markup("\n").join(listed))
        case Picture():
            return draw(block)


def _row(row: Row) -> Markup:
    """The left side, and beside it the relation with all that follows."""
    relation: Formula = (Relation(row.relation),) if row.relation else ()
    left = _math(row.left, display=True) if row.left else Markup("")
    right = write_formula((*relation, *row.right))
    return Markup('<div class="left">{}</div><div class="right">{}</div>').format(left, right)


def _parts(formula: Formula) -> Iterator[Formula]:
    """A formula cut before its relations; a comma stays with what it follows."""
    part: list[Piece] = []
    for piece in formula:
        if isinstance(piece, Relation) and piece.sign != "," and part:
            yield tuple(part)
            part = []
        part.append(piece)
    yield tuple(part)


def _math(formula: Formula, display: bool) -> Markup:
    # mathml escapes what it is given: nothing but its elements is left.
    return Markup("<math>{}</math>").format(Markup(mathml(formula, display=display)))
