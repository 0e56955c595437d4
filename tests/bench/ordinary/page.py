r"""Sheets and keys as a department would write their LaTeX today: stock packages, a file each.

Figures are drawn with TikZ, numbers with their units are set by siunitx, equations by amsmath; what
is said, and every number, is that of the documents.  Nothing is measured and nothing is made up:
TeX breaks pages where it likes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Final

from probgen.figures.paper.scene import Scene
from probgen.quantities.formula import Formula, Relation
from probgen.sheets.document import (
    Answer,
    Given,
    Header,
    Key,
    Mark,
    Part,
    Problem,
    Sheet,
    Solution,
    picture_name,
)
from probgen.sheets.latex.escape import escape
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
from probgen.wording.english import ENGLISH
from tests.bench.ordinary.formula import formula_of
from tests.bench.ordinary.picture import picture_of

PREAMBLE: Final = Path(__file__).with_name("preamble.tex").read_text(encoding="utf-8")
_WORDS: Final = ENGLISH.page
_LINE: Final = r"\rule{26mm}{0.4pt}"

Inlines = tuple[Inline, ...]


class OrdinaryPages:
    """A writer of documents (`probgen.sheets.writer`), each a whole file."""

    def sheet(self, sheet: Sheet) -> str:
        """One student's problems."""
        return _file(
            _head(sheet.header, sheet.points, ""),
            _text(sheet.preface),
            *(_problem(problem) for problem in sheet.problems),
            rf"{{\footnotesize {escape(' '.join(sheet.cautions))}\par}}",
        )

    def key(self, key: Key) -> str:
        """Their worked solutions."""
        return _file(
            _head(key.header, key.points, _WORDS.key),
            _text(key.preface),
            *(_solution(solution) for solution in key.solutions),
        )


def _file(*parts: str) -> str:
    body = "\n\n".join(part for part in parts if part)
    return f"{PREAMBLE}\\begin{{document}}\n{body}\n\\end{{document}}\n"


def _head(header: Header, points: int, mark: str) -> str:
    named = (
        (_WORDS.name, header.student_name), (_WORDS.id, header.student_id),
        (_WORDS.version, header.code), (_WORDS.points_head, str(points)),
    )  # fmt: skip
    told = r"\qquad ".join(rf"\textbf{{{escape(name)}:}} {escape(of)}" for name, of in named)
    titles = escape(f"{header.course} {header.title} {mark}")
    return rf"\begin{{center}}\Large {titles}\end{{center}}" + f"\n{told}"


def _problem(problem: Problem) -> str:
    parts = "\n".join(_part(part) for part in problem.parts)
    return "\n\n".join(
        (
            _title(problem.number, problem.title, problem.points),
            _text(problem.statement),
            _figure(problem.figure),
            f"\\begin{{itemize}}\n{parts}\n\\end{{itemize}}",
            rf"\vspace{{{problem.space}mm}}",
        )
    )


def _part(part: Part) -> str:
    label = f"({part.label})" if part.label else ""
    answers = [rf"{_LINE}\,{escape(part.unit)}"] if not part.blanks else []
    for blank in part.blanks:
        choices = " ".join(_text(choice) for choice in blank.choices)
        line = rf"{_LINE}\,{escape(blank.unit)}" if blank.written else ""
        answers.append(f"{_text(blank.label)} {line} {choices}")
    return rf"\item[{label}] {_text(part.asked)} \\ " + r"\quad ".join(answers)


def _solution(solution: Solution) -> str:
    pictures = solution.pictures
    return "\n\n".join(
        (
            _title(solution.number, solution.title, solution.points),
            _text(solution.statement),
            _figure(solution.figure),
            _table("ll", map(_given, solution.given)),
            "; ".join(map(_text, solution.asked)),
            *(_section(section, pictures) for section in solution.sections),
            _table("ll", map(_answer, solution.answers)),
            _table("p{100mm}r", map(_mark, solution.scheme)),
            _text(solution.other_routes),
            _blocks(solution.slips, pictures),
        )
    )


def _given(given: Given) -> tuple[str, ...]:
    return _text(given.symbol), _text(given.value), _text(given.name)


def _answer(answer: Answer) -> tuple[str, ...]:
    return _text(answer.label), _text(answer.printed), _text(answer.full_marks)


def _mark(mark: Mark) -> tuple[str, ...]:
    return _text(mark.words), str(mark.points)


def _title(number: int, title: str, points: int) -> str:
    return rf"\section*{{{number} {escape(title)} ({points} {_WORDS.points})}}"


def _section(section: Section, pictures: Mapping[str, Scene]) -> str:
    return f"\\subsection*{{{escape(section.title)}}}\n\n{_blocks(section.blocks, pictures)}"


def _blocks(blocks: Iterable[Block], pictures: Mapping[str, Scene]) -> str:
    return "\n\n".join(_block(block, pictures) for block in blocks)


def _block(block: Block, pictures: Mapping[str, Scene]) -> str:
    match block:
        case Paragraph(inlines):
            return _text(inlines)
        case Display(rows):
            return "\\begin{align*}\n" + "\\\\\n".join(map(_row, rows)) + "\n\\end{align*}"
        case Itemize(items):
            listed = "\n".join(rf"\item {_text(item)}" for item in items)
            return f"\\begin{{itemize}}\n{listed}\n\\end{{itemize}}"
        case Picture():
            return _figure(pictures[picture_name(block)])


def _row(row: Row) -> str:
    """Each further relation on a line of its own, as it is typed where lines are not measured."""
    relation: Formula = (Relation(row.relation),) if row.relation else ()
    lines = [formula_of(part) for part in _parts((*relation, *row.right))]
    return formula_of(row.left) + "\\\\\n".join(f" & {line}" for line in lines)


def _parts(formula: Formula) -> Iterator[Formula]:
    starts = [at for at, piece in enumerate(formula) if isinstance(piece, Relation) and at]
    starts = [at for at in starts if formula[at] != Relation(",")]
    for start, end in zip([0, *starts], [*starts, len(formula)], strict=True):
        yield formula[start:end]


def _figure(scene: Scene | None) -> str:
    if scene is None:
        return ""
    return f"\\begin{{center}}\n{picture_of(scene)}\n\\end{{center}}"


def _table(columns: str, rows: Iterable[tuple[str, ...]]) -> str:
    lines = " \\\\\n".join(" & ".join(row) for row in rows)
    if not lines:
        return ""
    return (
        f"\\begin{{tabular}}{{{columns}l}}\n\\toprule\n{lines} \\\\\n\\bottomrule\n\\end{{tabular}}"
    )


def _text(inlines: Inlines) -> str:
    return "".join(map(_inline, inlines))


def _inline(inline: Inline) -> str:
    match inline:
        case Text(text):
            return "\n\n".join(escape(part) for part in text.split("\n\n"))
        case Math(formula):
            return f"${formula_of(formula)}$"
