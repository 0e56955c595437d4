"""Facts and passages as short texts, so that what is told can be written down by hand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

from probgen.quantities.formula import Balance, Relation, Words
from probgen.quantities.printing import plain
from probgen.wording.block import Display, Picture, Row
from probgen.wording.facts.torque import Placed
from probgen.wording.passage import Passage
from probgen.working.fact import Fact


def shown(what: Any) -> str:
    """A fact as "Name(field, ...)" without what is as usual; formulas as text, "-" for none."""
    match what:
        case Row(left, relation, right):
            return f"{plain(left)} {relation} {plain(right)}".strip()
        case Relation() | Words() | Balance():
            return plain((what,))
        case Fact() | Placed() if is_dataclass(what):
            said = [(getattr(what, field.name), field.default) for field in fields(what)]
            parts = [shown(value) for value, usual in said if value != usual]
            return f"{type(what).__name__}({', '.join(parts)})"
        case tuple():
            return " ".join(shown(each) for each in what) if what else "-"
        case None | str() | bool() | int() | float():
            return str(what)
        case _ if is_dataclass(what):
            return plain((what,))  # type: ignore[arg-type]
    raise TypeError(what)


def lines(passage: Passage) -> list[str]:
    """A passage's heading, and below it what is said, a fact or an equation a line."""
    return [shown(passage.heading), *_below(passage)]


def _below(passage: Passage) -> Iterator[str]:
    for part in passage.parts:
        match part:
            case Display(rows):
                yield from map(shown, rows)
            case Picture(kind, body):
                yield f"Picture({kind}, {body})"
            case _:
                yield from map(shown, part.facts)
