"""A worked problem as data and as plain text: what programs read, and what a terminal shows."""

from __future__ import annotations

from typing import Any

from probgen.problem.problem import tell_steps
from probgen.problem.single import Single
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.printing import latex
from probgen.wording.answer import Answer
from probgen.wording.block import Block, Display, Itemize, Paragraph, Row, Section
from probgen.wording.sentence import plain_text


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


def plain_lines(block: Block) -> list[str]:
    """The running text of a block, a line for each paragraph or item; equations are left out."""
    match block:
        case Paragraph(inlines):
            return [plain_text(inlines)]
        case Itemize(items):
            return [f"- {plain_text(item)}" for item in items]
        case _:
            return []


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
        "text": "\n".join(line for block in section.blocks for line in plain_lines(block)),
        "equations": [
            latex(_equation(row))
            for block in section.blocks
            if isinstance(block, Display)
            for row in block.rows
        ],
    }


def _equation(row: Row) -> Formula:
    middle = (Relation(row.relation),) if row.relation else ()
    return (*row.left, *middle, *row.right)
