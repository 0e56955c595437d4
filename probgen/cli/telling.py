"""A worked problem shown in a terminal, and as JSON."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from rich.console import Console
from rich.text import Text as Styled

from probgen.problem.problem import tell_steps
from probgen.problem.single import Single
from probgen.quantities.expression import Number
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.printing import latex, plain, symbol_plain
from probgen.quantities.unit import ANGLE
from probgen.wording.answer import Answer
from probgen.wording.block import (
    Block,
    Display,
    Inline,
    Itemize,
    Math,
    Paragraph,
    Row,
    Section,
)
from probgen.wording.statement import tell_find, tell_statement

_INDENT = "    "


def as_data(single: Single) -> dict[str, Any]:
    """The worked problem as one JSON object (its shape is a contract; see DEVELOPERS.md)."""
    template, worked = single.problem.template, single.worked
    return {
        "template": template.id,
        "revision": template.revision,
        "values": {
            name: {"value": float(number.value), "unit": number.unit.name if number.unit else "1"}
            for name, number in worked.draw.values.items()
        },
        "answers": [_answer_as_data(answer) for answer in worked.answers],
        "steps": [_step_as_data(section) for section in tell_steps(single.problem, worked)],
        "proof": {
            "max_residual": worked.residual,
            "second_solver_difference": worked.difference,
        },
    }


def _answer_as_data(answer: Answer) -> dict[str, Any]:
    data: dict[str, Any] = {
        "id": answer.id,
        "value": answer.value,
        "unit": answer.unit,
        "printed": answer.printed,
    }
    if answer.angle_from_x is not None:
        data["angle_from_x"] = answer.angle_from_x
    return data


def _step_as_data(section: Section) -> dict[str, Any]:
    return {
        "title": section.title,
        "text": "\n".join(line for block in section.blocks for line in _text_lines(block)),
        "equations": [
            latex(_equation(row))
            for block in section.blocks
            if isinstance(block, Display)
            for row in block.rows
        ],
    }


def show(single: Single, console: Console) -> None:
    """Prints statement, givens, each step, answers and proof."""
    template, worked = single.problem.template, single.worked
    case = worked.case
    console.print(Styled(template.title, style="bold"))
    console.print(Styled(plain_text(tell_statement(template, worked.draw))), end="\n\n")
    _print_table(console, [_given(single, name, n) for name, n in worked.draw.values.items()])
    console.print()
    for find in case.system.finds:
        console.print(Styled("Find " + plain_text(tell_find(case.system, find)) + "."))
    for number, section in enumerate(tell_steps(single.problem, worked), start=1):
        console.print()
        console.print(Styled(f"{number} {section.title}", style="bold"))
        for block in section.blocks:
            _print_block(console, block)
    console.print()
    console.print(Styled("Answers", style="bold"))
    _print_table(console, [(a.id, f"= {a.printed}") for a in worked.answers])
    console.print()
    console.print(
        f"Proof: largest residual {worked.residual:.1e}, "
        f"second solver differs by {worked.difference:.1e} (relative)."
    )


def plain_text(inlines: Iterable[Inline]) -> str:
    """Running text without mark-up, on one line."""
    words = (plain(i.formula) if isinstance(i, Math) else i.text for i in inlines)
    return " ".join("".join(words).split(" ")).replace("\n", " ").strip()


def _given(single: Single, name: str, number: Number) -> tuple[str, str, str]:
    variable = single.worked.case.system.variables[name]
    turned = variable.dimension == ANGLE and variable.measured
    told = f"{variable.name}, {variable.measured}" if turned else variable.name
    return name, f"{symbol_plain(variable.symbol)} = {plain(number)}", told


def _print_table(console: Console, rows: Sequence[tuple[str, ...]]) -> None:
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    for row in rows:
        cells = (cell.ljust(width) for cell, width in zip(row, widths, strict=True))
        console.print(Styled(_INDENT + "  ".join(cells).rstrip()), soft_wrap=True)


def _print_block(console: Console, block: Block) -> None:
    if isinstance(block, Display):
        width = max((len(plain(row.left)) for row in block.rows), default=0)
        for row in block.rows:
            left = plain(row.left).rjust(width) if row.left else " " * width
            line = f"{_INDENT}{left} {row.relation} {plain(row.right)}"
            console.print(Styled(line), soft_wrap=True)
    for line in _text_lines(block):
        console.print(Styled(line))


def _text_lines(block: Block) -> list[str]:
    match block:
        case Paragraph(inlines):
            return [plain_text(inlines)]
        case Itemize(items):
            return [f"- {plain_text(item)}" for item in items]
        case _:
            return []


def _equation(row: Row) -> Formula:
    middle = (Relation(row.relation),) if row.relation else ()
    return (*row.left, *middle, *row.right)
