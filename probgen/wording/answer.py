"""Answers: what was asked, in full precision and as printed."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.printing import plain
from probgen.quantities.unit import DEGREE
from probgen.statics.plan import limits_asked
from probgen.statics.solution import GOVERNING
from probgen.statics.system import Find, Form, Limit
from probgen.wording.direction import worded
from probgen.wording.limit import governing, holds, verdict_words
from probgen.working.case import Case
from probgen.working.convention import Convention
from probgen.working.digits import Digits


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
        found += _asked(digits, find)
    return tuple(found)


def _asked(digits: Digits, find: Find) -> list[Answer]:
    match find.form:
        case Form.VALUE:
            return [_value(digits, find.quantity)]
        case Form.LARGEST | Form.SMALLEST:
            return [_value(digits, find.quantity), _first_limit(digits, find)]
        case Form.HOLDS:
            limits = limits_asked(digits.case.system, find)
            return [_verdict(digits, limit) for limit in limits]
        case Form.COMPONENTS | Form.MAGNITUDE_AND_DIRECTION:
            return _force(digits, find)


def _first_limit(digits: Digits, find: Find) -> Answer:
    """Which limit comes first; its value is its place among the limits."""
    place = digits.case.values[GOVERNING]
    words = governing(digits.case).name
    return Answer(f"{find.quantity}.limit", place, "", words, "what happens first")


def _verdict(digits: Digits, limit: Limit) -> Answer:
    """Yes or no; its value is 1 or 0."""
    kept = 1.0 if holds(digits.case, limit) else 0.0
    return Answer(limit.id, kept, "", verdict_words(digits, limit), "does it hold")


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
