"""Results: what was asked, in full precision and as it is to be printed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from probgen.quantities.expression import Number
from probgen.quantities.unit import DEGREE
from probgen.statics.plan import limits_asked
from probgen.statics.solution import GOVERNING
from probgen.statics.system import Find, Form, Limit
from probgen.working.digits import Digits
from probgen.working.direction import Direction, direction_of
from probgen.working.fact import Fact
from probgen.working.verdict import Verdict, governing, holds, verdict_on


class ResultKind(StrEnum):
    """What a result is."""

    QUANTITY = "quantity"
    MAGNITUDE = "magnitude"
    DIRECTION = "direction"
    LIMIT = "limit"  # the one reached first
    VERDICT = "verdict"  # whether a limit is kept


@dataclass(frozen=True, slots=True)
class LimitNamed(Fact):
    """A limit by what happens beyond it."""

    limit: str


@dataclass(frozen=True, slots=True)
class Result:
    """One asked quantity.

    id: the unknown's id, or "R.magnitude", "R.direction", "R.x", "R.y" of a two-component force.
    value: full precision in `unit` (a unit's name, "" for a plain number); of a limit its place
    among the limits, of a verdict 1 or 0.
    shown: what is printed; symbol: the printed letter of the quantity, of a direction that of its
    force, "" for a limit or a verdict.
    angle_from_x: of a direction, degrees counter-clockwise from +x.
    asked: False for components told beside an answer.
    """

    id: str
    kind: ResultKind
    value: float
    unit: str
    shown: Number | Direction | LimitNamed | Verdict
    symbol: str
    angle_from_x: float | None
    asked: bool

    @property
    def is_number(self) -> bool:
        """Whether it is a number, and not a limit's name or a yes or no."""
        return self.kind not in (ResultKind.LIMIT, ResultKind.VERDICT)


def results(digits: Digits) -> tuple[Result, ...]:
    """Everything asked, in the order asked; components stand beside a magnitude and direction."""
    return tuple(result for find in digits.case.system.finds for result in _asked(digits, find))


def _asked(digits: Digits, find: Find) -> Iterator[Result]:
    match find.form:
        case Form.VALUE:
            yield _value(digits, find.quantity)
        case Form.LARGEST | Form.SMALLEST:
            yield _value(digits, find.quantity)
            yield _first_limit(digits, find)
        case Form.HOLDS:
            for limit in limits_asked(digits.case.system, find):
                yield _verdict(digits, limit)
        case Form.COMPONENTS:
            yield from _components(digits, find, asked=True)
        case Form.MAGNITUDE_AND_DIRECTION:
            yield from _force(digits, find)


def _first_limit(digits: Digits, find: Find) -> Result:
    place = digits.case.values[GOVERNING]
    named = LimitNamed(governing(digits.case).id)
    return Result(f"{find.quantity}.limit", ResultKind.LIMIT, place, "", named, "", None, True)


def _verdict(digits: Digits, limit: Limit) -> Result:
    kept = 1.0 if holds(digits.case, limit) else 0.0
    verdict = verdict_on(digits, limit)
    return Result(limit.id, ResultKind.VERDICT, kept, "", verdict, "", None, True)


def _value(digits: Digits, id: str, asked: bool = True) -> Result:
    variable = digits.case.system.variables[id]
    unit = digits.unit_of(id)
    value, final = digits.case.values[id] / unit.factor, digits.final(id)
    name = "" if unit.name == "1" else unit.name
    return Result(id, ResultKind.QUANTITY, value, name, final, variable.symbol, None, asked)


def _components(digits: Digits, find: Find, asked: bool) -> Iterator[Result]:
    for axis in "xy":
        yield _value(digits, f"{find.quantity}.{axis}", asked)


def _force(digits: Digits, find: Find) -> Iterator[Result]:
    """Magnitude and direction, and the components they are made of."""
    case, owner = digits.case, find.quantity
    symbol = case.system.element(owner).symbol
    unit = digits.unit_of(f"{owner}.x")
    size = case.values[f"{owner}.magnitude"]
    yield Result(
        f"{owner}.magnitude",
        ResultKind.MAGNITUDE,
        size / unit.factor,
        unit.name,
        digits.rounded(size, unit),
        symbol,
        None,
        True,
    )
    way = direction_of(case.values[f"{owner}.direction"], digits.convention)
    yield Result(
        f"{owner}.direction",
        ResultKind.DIRECTION,
        way.angle,
        DEGREE.name,
        way,
        symbol,
        way.from_x,
        True,
    )
    yield from _components(digits, find, asked=False)
