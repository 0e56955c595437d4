"""The telling of situations of our own, as lines of text."""

from __future__ import annotations

from probgen.problem.problem import tell_steps
from probgen.problem.single import work_single
from probgen.quantities.printing import plain
from probgen.wording.block import Block, Display, Itemize, Paragraph
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention
from tests.situations import worked


def lines_of(block: Block) -> list[str]:
    """Sentences, items, and rows of equations with one space around their relation."""
    match block:
        case Paragraph(inlines):
            return [plain_text(inlines)]
        case Itemize(items):
            return [plain_text(item) for item in items]
        case Display(rows):
            return [f"{plain(row.left)} {row.relation} {plain(row.right)}".strip() for row in rows]
        case _:
            return []


def told(text: str, convention: Convention | None = None) -> list[str]:
    """Every line of the working of a template's text, headings with a mark in front."""
    problem, own = worked(text, convention)
    return [
        line
        for section in tell_steps(problem, own)
        for line in (f"# {section.title}", *(x for b in section.blocks for x in lines_of(b)))
    ]


def told_of(name: str, convention: Convention | None = None, draw: int = 1) -> list[str]:
    """The same of one of a supplied template's draws, the first unless said."""
    single = work_single(name, draw, None, convention)
    return [
        line
        for section in tell_steps(single.problem, single.worked)
        for line in (f"# {section.title}", *(x for b in section.blocks for x in lines_of(b)))
    ]
