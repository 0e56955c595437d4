"""Answers: what was asked, in full precision and as printed."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.printing import plain
from probgen.quantities.unit import DEGREE
from probgen.statics.system import Find, Form
from probgen.wording.case import Case
from probgen.wording.convention import Convention
from probgen.wording.digits import Digits
from probgen.wording.direction import worded


@dataclass(frozen=True, slots=True)
class Answer:
    """One asked quantity.

    id: the unknown's id, or "R.magnitude", "R.direction", "R.x", "R.y" of a two-component force.
    value: full precision in `unit` (a unit's name, "" for a plain number).
    printed: rounded, with its unit or in words; angle_from_x: of a direction, degrees
    counter-clockwise from +x.
    symbol: the printed letter it stands for; asked: False for components told beside an answer.
    """

    id: str
    value: float
    unit: str
    printed: str
    symbol: str
    angle_from_x: float | None = None
    asked: bool = True


def answers(case: Case, convention: Convention) -> tuple[Answer, ...]:
    """Everything asked, in the order asked; components stand beside a magnitude and direction."""
    digits = Digits(case, convention)
    found: list[Answer] = []
    for find in case.system.finds:
        if find.form is Form.VALUE:
            found.append(_value(digits, find.quantity))
        else:
            found += _force(digits, find)
    return tuple(found)


def _value(digits: Digits, id: str, asked: bool = True) -> Answer:
    variable = digits.case.system.variables[id]
    unit = digits.unit_of(id)
    value = digits.case.values[id] / unit.factor
    name = "" if unit.name == "1" else unit.name
    return Answer(id, value, name, plain(digits.final(id)), variable.symbol, None, asked)


def _force(digits: Digits, find: Find) -> list[Answer]:
    whole = find.form is Form.MAGNITUDE_AND_DIRECTION
    parts = [_value(digits, f"{find.quantity}.{axis}", not whole) for axis in "xy"]
    if not whole:
        return parts
    case, convention = digits.case, digits.convention
    symbol = case.system.element(find.quantity).symbol
    unit = digits.unit_of(f"{find.quantity}.x")
    size = case.values[f"{find.quantity}.magnitude"]
    way = worded(case.values[f"{find.quantity}.direction"], convention)
    magnitude = Answer(
        f"{find.quantity}.magnitude",
        size / unit.factor,
        unit.name,
        plain(digits.rounded(size, unit)),
        symbol,
    )
    direction = Answer(
        f"{find.quantity}.direction",
        way.angle,
        DEGREE.name,
        way.words,
        f"direction of {symbol}",
        way.from_x,
    )
    return [magnitude, direction, *parts]
