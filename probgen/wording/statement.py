"""The statement told to one student: the author's text with the drawn quantities in it."""

from __future__ import annotations

from collections.abc import Mapping

from probgen.bank.statement import Mention, statement_pieces
from probgen.bank.template import Template
from probgen.draws.draw import Draw
from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Relation
from probgen.quantities.unit import FORCE
from probgen.wording.block import Inline, Math, Text


def tell_statement(template: Template, draw: Draw) -> tuple[Inline, ...]:
    """The statement as running text with formulas.

    A quantity that is drawn prints with its value and unit, any other as its symbol, a point as its
    letter.
    """
    labels = template.labels
    symbols = {id: label.symbol for id, label in labels.quantities.items()}
    symbols |= {id: label.symbol for id, label in labels.elements.items() if id}
    symbols |= {name: name for name in template.system.points}
    return tuple(
        _told(template, piece)
        if isinstance(piece, str) or piece.filter == "quantity"
        else _mentioned(piece, symbols, draw.values)
        for piece in statement_pieces(template.statement)
    )


def _told(template: Template, piece: str | Mention) -> Text:
    """The author's own text, and the word for what a quantity is: a force given is a weight."""
    if isinstance(piece, str):
        return Text(piece)
    dimension = template.system.variables[piece.id].dimension
    return Text("weight" if dimension == FORCE else dimension.noun)


def _mentioned(mention: Mention, symbols: Mapping[str, str], values: Mapping[str, Number]) -> Math:
    name, number = Name(mention.id, symbols[mention.id]), values.get(mention.id)
    if number is None or mention.filter == "symbol":
        return Math((name,))
    return Math((name, Relation("="), number) if mention.filter else (number,))
