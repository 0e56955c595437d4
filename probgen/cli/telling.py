"""A worked problem shown in a terminal."""

from __future__ import annotations

from rich.console import Console

from probgen.cli.columns import line, show_columns
from probgen.papers.blanks import label
from probgen.problem.problem import tell_steps
from probgen.problem.report import plain_lines
from probgen.problem.single import Single
from probgen.quantities.expression import Number
from probgen.quantities.printing import plain, symbol_plain
from probgen.quantities.symbol import unmarked
from probgen.quantities.unit import ANGLE
from probgen.wording.answer import Answer
from probgen.wording.block import Block, Display
from probgen.wording.find import tell_find
from probgen.wording.sentence import plain_text
from probgen.wording.statement import tell_statement
from probgen.working.result import ResultKind

_INDENT = 4


def show(single: Single, console: Console) -> None:
    """Prints statement, givens, each step, answers and proof; nothing where no step can be told."""
    problem, worked = single.problem, single.worked
    told = tell_steps(problem, worked)
    template, case = problem.template, worked.case
    statement = tell_statement(template, worked.draw, problem.language)
    console.print(line(template.title, "bold"))
    console.print(line(plain_text(statement)), end="\n\n")
    givens = [_given(single, name, n) for name, n in worked.draw.values.items()]
    show_columns(console, givens, indent=_INDENT)
    console.print()
    for find in case.system.finds:
        asked = plain_text(tell_find(find, problem.nouns, problem.language))
        console.print(line(f"Find {asked}."))
    for number, section in enumerate(told, start=1):
        console.print()
        console.print(line(f"{number} {section.title}", "bold"))
        for block in section.blocks:
            _show_block(console, block)
    console.print()
    console.print(line("Answers", "bold"))
    answers = [(_called(single, answer), f"= {answer.printed}") for answer in worked.answers]
    show_columns(console, answers, indent=_INDENT)
    console.print()
    console.print(
        f"Proof: largest residual {worked.residual:.1e}, "
        f"second solver differs by {worked.difference:.1e} (relative)."
    )


def _called(single: Single, answer: Answer) -> str:
    """The id of an answer; of a verdict the question that its yes or no answers."""
    if answer.kind is ResultKind.VERDICT:
        return plain_text(label(single.problem, answer))
    return answer.id


def _given(single: Single, name: str, number: Number) -> tuple[str, str, str]:
    case = single.worked.case
    label, angle = case.labels.quantities[name], case.system.variables[name].dimension == ANGLE
    called = unmarked(single.problem.nouns.given(name))
    told = f"{called}, {label.measured}" if angle and label.measured else called
    return name, f"{symbol_plain(label.symbol)} = {plain(number)}", told


def _show_block(console: Console, block: Block) -> None:
    if isinstance(block, Display):
        width = max((len(plain(row.left)) for row in block.rows), default=0)
        for row in block.rows:
            left = plain(row.left).rjust(width) if row.left else " " * width
            formula = f"{' ' * _INDENT}{left} {row.relation} {plain(row.right)}"
            console.print(line(formula), soft_wrap=True)
    for text in plain_lines(block):
        console.print(line(text))
