"""The texts of a template that name quantities and points, and nothing else: its statement first.

`{{ L }}` prints a quantity with its value, an unknown or g as its symbol, a point as its letter;
`{{ L | symbol }}` prints the symbol alone and `{{ L | equation }}` both, "L = 1.20 m".
`{{ m | quantity }}` prints "mass", or "weight" where m is one in US customary, `{{ W | formula }}`
the formula of a load along x, "w = w_0 (x/L)^2", and `{{ x }}` that x.  The text is taken apart
here and never rendered by an engine of templates: nothing in it could run.  How something is asked
for is such a text as well, in which all names print as symbols.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from probgen.input.fault import nearest, one_of
from probgen.input.table import Table

LONGEST_STATEMENT: Final = 4000
FILTERS: Final = ("symbol", "equation", "quantity", "formula")
_FORMS: Final = "{{ name }}, {{ name | symbol }} or {{ name | equation }}"
_MENTION: Final = re.compile(r"\{\{\s*(\w+)\s*(?:\|\s*(\w+)\s*)?\}\}")
_BRACE: Final = re.compile(r"\{\{.*?\}\}|[{}]\S*", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Mention:
    """A name in a statement.

    filter: "" for the quantity's value, else one of `FILTERS`.
    """

    id: str
    filter: str = ""


@lru_cache(maxsize=256)
def statement_pieces(statement: str) -> tuple[str | Mention, ...]:
    """A statement as texts and mentions in turn, each run of white space as one space."""
    return tuple(_pieces(" ".join(statement.split())))


def told_ids(statement: str) -> frozenset[str]:
    """What a statement tells with its value; a symbol alone tells none."""
    mentions = (piece for piece in statement_pieces(statement) if isinstance(piece, Mention))
    return frozenset(each.id for each in mentions if each.filter in ("", "equation"))


def bare_letters(statement: str, points: Collection[str]) -> tuple[str, ...]:
    """The points whose letters a statement types as they are, so that no figure will have them."""
    pieces = statement_pieces(statement)
    texts = [piece for piece in pieces if isinstance(piece, str)]
    braced = {piece.id for piece in pieces if isinstance(piece, Mention)}
    letters = [id for id in points if id.isupper() and id not in braced]
    return tuple(id for id in letters if any(_stands_in(id, text) for text in texts))


def _stands_in(letter: str, text: str) -> bool:
    """Whether a letter is a word of a text; A before a small letter is an article."""
    word = rf"\b{letter}\b(?! [a-z])" if letter == "A" else rf"\b{letter}\b"
    return re.search(word, text) is not None


def check_statement(
    table: Table,
    key: str,
    known: Collection[str] | None,
    quantities: Collection[str] = (),
    formulas: Collection[str] = (),
) -> str:
    """The statement under `key`, its faults noted: braces that hold no name, unknown names.

    known: what may be named; None when that could not be found out.  quantities: what of that the
    filter `quantity` has a word for; formulas: what the filter `formula` has one for.
    """
    text = table.text(key, expected="the problem's text", most=LONGEST_STATEMENT)
    check_mentions(table, key, text, known, quantities, formulas)
    return text


def check_mentions(
    table: Table,
    key: str,
    text: str,
    known: Collection[str] | None,
    quantities: Collection[str],
    formulas: Collection[str] = (),
    filters: Sequence[str] = FILTERS,
) -> None:
    """Notes the faults of a text that was read under `key`.

    known, quantities, formulas: as for a statement.  filters: those that mean something in it.
    """
    for piece in statement_pieces(text):
        if isinstance(piece, str):
            _check_text(table, key, piece)
        elif piece.filter not in ("", *filters):
            mend = nearest(piece.filter, filters)
            table.fault(key, f"| {piece.filter}", one_of(filters, "the filters "), mend)
        elif known is not None and piece.id not in known:
            expected = one_of(sorted(known), "the names ")
            table.fault(key, f"{{{{ {piece.id} }}}}", expected, nearest(piece.id, known))
        elif known is not None and piece.filter == "quantity" and piece.id not in quantities:
            mend = f"write {{{{ {piece.id} }}}}"
            table.fault(key, f"{{{{ {piece.id} | quantity }}}}", "a quantity before it", mend)
        elif known is not None and piece.filter == "formula" and piece.id not in formulas:
            expected = "the symbol of a load with an intensity before it"
            mend = nearest(piece.id, formulas) or f"write {{{{ {piece.id} }}}}"
            table.fault(key, f"{{{{ {piece.id} | formula }}}}", expected, mend)


def _pieces(text: str) -> Iterator[str | Mention]:
    place = 0
    for found in _MENTION.finditer(text):
        if found.start() > place:
            yield text[place : found.start()]
        yield Mention(found[1], found[2] or "")
        place = found.end()
    if place < len(text):
        yield text[place:]


def _check_text(table: Table, key: str, text: str) -> None:
    """A brace in running text is a slip of somebody who meant to name something."""
    if brace := _BRACE.search(text):
        mend = f"write {_FORMS}; leave other braces out"
        table.fault(key, brace[0], "text with {{ names }} in it", mend)
