"""The statement told to one student: the author's text with the drawn quantities in it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from jinja2 import TemplateError

from probgen.bank.statement import LONGEST_STATEMENT, StatementEnvironment
from probgen.bank.template import Template
from probgen.draws.draw import Draw
from probgen.input.fault import Fault, InputError
from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Formula, Relation
from probgen.wording.block import Inline, Math, Text

# Formulas pass through jinja2 as marks between two characters of Unicode's private use area, which
# no author's text may hold.
_OPEN, _CLOSE = "\ue000", "\ue001"
_MARK: Final = re.compile(rf"{_OPEN}(\w+):([^{_CLOSE}]*){_CLOSE}")


@dataclass(frozen=True, slots=True)
class _Mention:
    """A name in the statement: what it prints, alone or through a filter."""

    id: str

    def __str__(self) -> str:
        return self.marked("value")

    def marked(self, how: str) -> str:
        return f"{_OPEN}{how}:{self.id}{_CLOSE}"


def tell_statement(template: Template, draw: Draw) -> tuple[Inline, ...]:
    """The statement as running text with formulas.

    A quantity that is drawn prints with its value and unit, any other as its symbol, a point as its
    letter.  Raises InputError when the statement cannot be told.
    """
    system = template.system
    symbols = {v.id: v.symbol for v in system.variables.values()}
    symbols |= {element.id: element.symbol for element in system.elements if element.id}
    symbols |= {name: name for name in system.points}
    told = _rendered(template.statement, template.path, tuple(symbols))
    return _inlines(" ".join(told.split()), symbols, draw.values)


@lru_cache(maxsize=256)
def _rendered(statement: str, path: str, ids: tuple[str, ...]) -> str:
    """The statement with its mentions marked: the same for every draw."""
    environment = StatementEnvironment()
    environment.filters = {
        "symbol": lambda mention: mention.marked("symbol"),
        "equation": lambda mention: mention.marked("equation"),
    }
    clean = statement.translate({ord(_OPEN): None, ord(_CLOSE): None})
    try:
        text = environment.from_string(clean).render({id: _Mention(id) for id in ids})
    except (TemplateError, AttributeError, ValueError) as error:
        fault = Fault(path, "statement", str(error), "text with {{ names }} in it")
        raise InputError([fault]) from error
    if len(text) > 10 * LONGEST_STATEMENT:
        fault = Fault(path, "statement", f"{len(text)} characters", "a shorter text")
        raise InputError([fault])
    return text


def _inlines(
    text: str, symbols: Mapping[str, str], values: Mapping[str, Number]
) -> tuple[Inline, ...]:
    inlines: list[Inline] = []
    place = 0
    for mark in _MARK.finditer(text):
        if mark.start() > place:
            inlines.append(Text(text[place : mark.start()]))
        id = mark[2]
        inlines.append(Math(_formula(mark[1], Name(id, symbols[id]), values.get(id))))
        place = mark.end()
    if place < len(text):
        inlines.append(Text(text[place:]))
    return tuple(inlines)


def _formula(how: str, name: Name, number: Number | None) -> Formula:
    if number is None or how == "symbol":
        return (name,)
    return (number,) if how == "value" else (name, Relation("="), number)
