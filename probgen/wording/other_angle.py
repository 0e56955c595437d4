"""Why half a turn, or a whole one, is added to what an arc function gives."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from probgen.quantities.angle_sum import with_angle_apart
from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Name,
    Number,
    Root,
    evaluate,
    number,
    times,
    total,
)
from probgen.quantities.factors import terms_of
from probgen.quantities.rounding import exact
from probgen.quantities.unit import DEGREE, PLAIN
from probgen.statics.angle_pair import angle_pair
from probgen.statics.span import span_of
from probgen.statics.step import Step
from probgen.wording.block import Display, Row
from probgen.wording.facts.angle import (
    AngleQuadrant,
    AnglesTakenApart,
    FoundByTrying,
    Function,
    OtherAngle,
)
from probgen.wording.passage import Part, sentences
from probgen.working.digits import Digits
from probgen.working.fact import Fact

_DIRECT: Final[dict[str, Function]] = {"asin": "sin", "acos": "cos", "atan": "tan"}
_TURNS: Final = (180, 360)
_NONE: Final = 1e-9  # of a force, the part along an axis that counts as none


def angle_part(digits: Digits, step: Step, before: tuple[Row, ...] = ()) -> Iterator[Part]:
    """What tells which of several angles a step finds; nothing where the arc function gives it.

    Of a value that no formula gives: how it is found.

    before: rows of the same step that lead to the angle's sine, cosine or tangent.
    """
    if isinstance(step.expression, Root):
        yield from (Display(before),) if before else ()
        yield sentences(_tried(digits, step, step.expression))
        return
    found = _turned(step.expression)
    if found is None:
        return
    function, half, whole = found
    variable = digits.case.system.variables[step.unknown]
    arcs = [term for _, term in terms_of(step.expression) if isinstance(term, Call)]
    rows = before
    apart = len(arcs) > 1 or of_a_turned_angle(variable.as_name, step.expression) is not None
    if not apart:  # else a row of the working says so
        rows = (*rows, Row((Call(function, (variable.as_name,)),), "=", arcs[0].arguments))
    if rows:
        yield Display(rows)
    told: Fact | None = _by_signs(digits, step, whole)
    if told is None:
        low, high = (_degrees(end) for end in span_of(variable))
        told = OtherAngle(variable.as_name, function, (low, high), half, whole)
    yield sentences(told)


def _tried(digits: Digits, step: Step, root: Root) -> Fact:
    """Between which values a root that no formula gives was looked for."""
    variable = digits.case.system.variables[step.unknown]
    unit = None if variable.dimension == PLAIN else variable.unit
    low, high = (Number(exact(end / variable.unit.factor), unit) for end in (root.low, root.high))
    return FoundByTrying(variable.as_name, (low, high))


def apart_part(digits: Digits, step: Step, balance: Expression) -> Iterator[Part]:
    """A balance with sine and cosine of the angle alone, where it is solved by an arc function."""
    arcs = (term for _, term in terms_of(step.expression) if isinstance(term, Call))
    apart = with_angle_apart(balance, step.unknown)
    if apart != balance and any(term.function in _DIRECT for term in arcs):
        yield sentences(AnglesTakenApart(digits.case.system.variables[step.unknown].as_name))
        yield Display((Row((apart,), "=", (ZERO,)),))


def _turned(value: Expression) -> tuple[Function, bool, bool] | None:
    """Of which function an angle is another one, and whether by half a turn, by a whole one."""
    arcs = [(sign, term) for sign, term in terms_of(value) if isinstance(term, Call)]
    function = next((_DIRECT[t.function] for _, t in arcs if t.function in _DIRECT), None)
    sizes = {abs(t.value) for _, t in terms_of(value) if isinstance(t, Number)}
    half = 180 in sizes or (function == "cos" and arcs[0][0] < 0)
    return (function, half, 360 in sizes) if function and (half or 360 in sizes) else None


def of_a_turned_angle(angle: Name, value: Expression) -> Row | None:
    """cos(x - y) = C before x = y - arccos C; None where an angle is no other one so turned."""
    terms = terms_of(value)
    arcs = [term for _, term in terms if isinstance(term, Call) and term.function in _DIRECT]
    shifts = [(-s, t) for s, t in terms if t not in arcs and not isinstance(t, Number)]
    numbers = [(-s, t) for s, t in terms if isinstance(t, Number) and t.value not in _TURNS]
    if len(arcs) != 1 or not shifts + numbers or any(isinstance(t, Call) for _, t in shifts):
        return None
    turned = Call(_DIRECT[arcs[0].function], (total((1, angle), *shifts, *numbers),))
    return Row((turned,), "=", arcs[0].arguments)


def _by_signs(digits: Digits, step: Step, whole: bool) -> AngleQuadrant | None:
    """The quadrant from the signs of two balances, where one was divided by the other."""
    if step.divided is None:
        return None
    cosines, sines = (equation.expression for equation in step.divided)
    pair, angle = angle_pair(cosines, sines, step.unknown), digits.case.values[step.unknown]
    letter = digits.case.system.variables[step.unknown].as_name
    turns = math.radians(angle)
    if pair is None or min(abs(math.cos(turns)), abs(math.sin(turns))) < _NONE:
        return None
    along, across = (times(pair.size, Call(each, (letter,))) for each in ("cos", "sin"))
    known = digits.case.values
    positive = (float(evaluate(along, known)) > 0.0, float(evaluate(across, known)) > 0.0)
    low = 90 * math.floor(angle / 90.0)
    between = (number(low, DEGREE), number(low + 90, DEGREE))
    return AngleQuadrant(letter, along, across, positive, between, whole)


def _degrees(value: float) -> Number:
    return Number(exact(value), DEGREE)
