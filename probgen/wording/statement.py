"""The statement told to one student: the author's text with the drawn quantities in it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from probgen.bank.statement import Mention, statement_pieces
from probgen.bank.template import Template
from probgen.draws.draw import Draw
from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Formula, Relation
from probgen.statics.system import System
from probgen.wording.block import Inline, Math, Text
from probgen.wording.facts.asked import KindOfQuantity
from probgen.wording.language import Language
from probgen.wording.nouns import NO_NOUNS, Nouns

_NONE: Final[Mapping[str, Number]] = {}


def tell_statement(template: Template, draw: Draw, language: Language) -> tuple[Inline, ...]:
    """The statement as running text with formulas.

    A quantity that is drawn prints with its value and unit, any other as its symbol, a point as its
    letter, a load by a formula the formula where that is asked for.
    """
    nouns = Nouns(template.system, template.labels)
    return tell_text(template.statement, nouns, language, draw.values)


def tell_text(
    text: str, nouns: Nouns, language: Language, values: Mapping[str, Number] = _NONE
) -> tuple[Inline, ...]:
    """An author's text as running text with formulas; what has no value prints as its symbol."""
    labels = nouns.labels
    symbols = {id: label.symbol for id, label in labels.quantities.items()}
    symbols |= {id: label.symbol for id, label in labels.elements.items() if id}
    symbols |= {name: name for name in nouns.system.points}
    inlines: list[Inline] = []
    for piece in statement_pieces(text):
        if isinstance(piece, str):
            inlines.append(Text(piece))
        elif piece.filter == "quantity":
            dimension = nouns.system.variables[piece.id].dimension
            inlines += language.say(KindOfQuantity(dimension), NO_NOUNS)
        elif piece.filter == "formula":
            inlines.append(Math(_formula(nouns.system, piece.id)))
        else:
            inlines.append(_mentioned(piece, symbols, values))
    return tuple(inlines)


def _formula(system: System, id: str) -> Formula:
    """The size of a load along x."""
    spread = system.element(id).spread
    if spread is None or spread.intensity is None:
        raise ValueError(f"{id} is no load by a formula")
    return (spread.intensity.letter, Relation("="), spread.intensity.load)


def _mentioned(mention: Mention, symbols: Mapping[str, str], values: Mapping[str, Number]) -> Math:
    name, number = Name(mention.id, symbols[mention.id]), values.get(mention.id)
    if number is None or mention.filter == "symbol":
        return Math((name,))
    return Math((name, Relation("="), number) if mention.filter else (number,))
