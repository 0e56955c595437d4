"""Directions the way problems state them, as degrees counter-clockwise from +x.

An author writes an expression, or a table in one of these forms:

    { from = "up", turn = "theta", to = "left" }          from the vertical, toward the left
    { along = ["A", "B"], turn = "theta" }                from the way A to B, counter-clockwise
    { square_to = ["A", "B"], side = "left" }             square to it, on the left of who walks it
    { rise = "h", run = "L" }                             by two lengths, up and to the right;
                                                          of a slope of 4 in 3 by two numbers
    { bearing = "beta" }                                  by compass: clockwise from +y, the north
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Final

from probgen.bank.bounds import sign_of
from probgen.bank.scope import Scope
from probgen.input.table import Table
from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Number,
    Quotient,
    Sum,
    is_number,
    negative,
    number,
    positive_first,
    times,
    total,
)
from probgen.quantities.like_terms import collected
from probgen.quantities.unit import ANGLE, DEGREE, LENGTH
from probgen.statics.geometry import angle_of, cosine, sine, way
from probgen.statics.slope import slope_of
from probgen.statics.system import Link, Point

WAYS: Final = {"right": 0, "up": 90, "left": 180, "down": 270}
_FORMS: Final = ("from", "along", "square_to", "rise", "bearing")


def read_direction(row: Table, key: str, scope: Scope, points: Mapping[str, Point]) -> Expression:
    """The direction under `key`; a stand-in after a fault."""
    typed = row.content[key] if row.has(key) else None
    if isinstance(typed, str) and typed.strip().lower() in WAYS:
        angle = WAYS[typed.strip().lower()]
        expected = "an angle in degrees, counter-clockwise from +x"
        row.fault(key, typed, expected, f"write {key} = {angle}")
        return number(angle)
    if not isinstance(typed, dict):
        return scope.expression(row, key, ANGLE)
    table = row.table(key)
    forms = [form for form in _FORMS if table.has(form)]
    if len(forms) != 1:
        found = ", ".join(table.content) or "nothing"
        row.fault(key, found, f"one of {', '.join(_FORMS)} in a direction's table")
        return ZERO
    direction = _read_form(table, forms[0], scope, points)
    table.close()
    return direction


def _read_form(table: Table, form: str, scope: Scope, points: Mapping[str, Point]) -> Expression:
    match form:
        case "from":
            return _from_axis(table, scope)
        case "along":
            return joined(_along_points(table, form, scope, points), 1, _turn(table, scope))
        case "square_to":
            side = table.word("side", ("left", "right"))
            along = _along_points(table, form, scope, points)
            return turned(along, -90 if side == "right" else 90)
        case "rise":
            if all(type(table.content.get(each)) in (int, Decimal) for each in ("rise", "run")):
                return _by_numbers(table)
            lengths = (scope.expression(table, each, LENGTH) for each in ("rise", "run"))
            return Call("atan2", tuple(lengths))
        case _:
            return joined(number(90), -1, scope.expression(table, form, ANGLE))


def _by_numbers(table: Table) -> Expression:
    """A slope of 4 in 3, to whichever side."""
    rise, run = (Decimal(table.value(each, "a number", True)) for each in ("rise", "run"))
    if not run:
        if not rise:
            table.fault("rise", rise, "a slope: a rise or a run other than 0")
        return number(90 if rise > 0 else 270)
    start = number(0 if run > 0 else 180)
    slope = Call("atan", (Quotient(number(abs(rise)), number(abs(run))),))
    return joined(start, 1 if rise * run > 0 else -1, slope) if rise else start


def _from_axis(table: Table, scope: Scope) -> Expression:
    start = WAYS.get(table.word("from", tuple(WAYS)), 0)
    if not table.has("turn"):
        return number(start)
    square = [word for word, degrees in WAYS.items() if (degrees - start) % 180]
    end = WAYS.get(table.word("to", square), start + 90)
    sign = 1 if (end - start) % 360 == 90 else -1
    return joined(number(start), sign, scope.expression(table, "turn", ANGLE))


def _turn(table: Table, scope: Scope) -> Expression:
    return scope.expression(table, "turn", ANGLE) if table.has("turn") else ZERO


def _along_points(table: Table, key: str, scope: Scope, points: Mapping[str, Point]) -> Expression:
    pair = read_pair(table, key, points)
    return direction_between(*pair, scope) if pair else ZERO


def read_pair(table: Table, key: str, points: Mapping[str, Point]) -> tuple[Point, Point] | None:
    """Two different points, written ["A", "B"]; None after a fault."""
    names = table.texts(key, required=True)
    known = [points[name] for name in names if name in points]
    if len(names) != 2 or len(known) != 2 or names[0] == names[1]:
        if not table.faulty(key):
            expected = f"two of the points {', '.join(points)}"
            table.fault(key, list(names), expected, f'{key} = ["A", "B"]')
        return None
    return known[0], known[1]


def direction_between(start: Point, end: Point, scope: Scope) -> Expression:
    """The direction from one point toward another.

    It is that of the one line the way between them follows, where there is one; else it is
    computed from the coordinates.
    """
    line = straight(start, end)
    sign = sign_of(line.length, scope.bounds) if line else 0
    if line and sign:
        return line.direction if sign > 0 else turned(line.direction, 180)
    across, up = (collected(leg) for leg in legs(start, end))
    return _by_quadrant(across, up, scope) or Call("atan2", (up, across))


def _by_quadrant(across: Expression, up: Expression, scope: Scope) -> Expression | None:
    """180 + atan2(h, L) for a way to the left and down; None where its quadrant is not known.

    A way that neither rises nor falls is level: 0 or 180.
    """
    right, above = sign_of(across, scope.bounds), sign_of(up, scope.bounds)
    if up == ZERO and right:
        return number(0 if right > 0 else 180)
    if across == ZERO and above:
        return number(90 if above > 0 else 270)
    if not right or not above:
        return None
    run = across if right > 0 else negative(across)
    rise = up if above > 0 else negative(up)
    slope = slope_of(positive_first(run), positive_first(rise))
    if right > 0 and above > 0:
        return slope
    return joined(number(0 if right > 0 else 180), right * above, slope)


def legs(start: Point, end: Point) -> tuple[Expression, Expression]:
    """How far one point is to the right of another, and how far above it."""
    shared = 0
    while start.links[shared : shared + 1] == end.links[shared : shared + 1] != ():
        shared += 1
    steps = [(-1, link) for link in start.links[shared:]]
    steps += [(1, link) for link in end.links[shared:]]
    return component_sum(steps, "cos"), component_sum(steps, "sin")


def straight(start: Point, end: Point) -> Link | None:
    """The one link from a point to another; None when the way has bends, or no length."""
    links = way({"0": start, "1": end}, "0", "1")
    return Link(links[0].length, plain_degrees(links[0].direction)) if len(links) == 1 else None


def turned(direction: Expression, degrees: int) -> Expression:
    """A direction turned counter-clockwise by whole degrees."""
    return joined(direction, 1, number(degrees))


def joined(start: Expression, sign: int, turn: Expression) -> Expression:
    """start + sign * turn, its plain numbers taken together, from 0 up to 360."""
    both = total((1, start), (sign, turn))
    terms = both.terms if isinstance(both, Sum) else ((1, both),)
    degrees = (s * t.value for s, t in terms if isinstance(t, Number) and _degrees(t))
    constant = sum(degrees, Decimal(0)) % 360
    constant += 360 if constant < 0 else 0
    named = [(s, t) for s, t in terms if not (isinstance(t, Number) and _degrees(t))]
    if not constant or not named:
        return total(*named) if named else Number(+constant)
    return Sum(((1, Number(constant)), *named))


def _degrees(value: Number) -> bool:
    return value.unit is None or value.unit == DEGREE


def plain_degrees(direction: Expression) -> Expression:
    """A direction with its degrees as plain numbers."""
    return joined(direction, 1, ZERO)


def component_sum(steps: Sequence[tuple[int, Link]], function: str) -> Expression:
    """The sum of the links' components: "cos" for x, "sin" for y."""
    terms = [(sign, _component(link, function)) for sign, link in steps]
    signed = [(sign * turn, part) for sign, (turn, part) in terms if not is_number(part, 0)]
    if not signed:
        return ZERO
    return signed[0][1] if len(signed) == 1 and signed[0][0] > 0 else Sum(tuple(signed))


_QUARTERS: Final[dict[Expression, tuple[int, int]]] = {
    number(0): (1, 0),
    number(90): (0, 1),
    number(180): (-1, 0),
    number(270): (0, -1),
}


def _component(link: Link, function: str) -> tuple[int, Expression]:
    """A sign and a length: one component of a link, exact along the axes."""
    quarter = _QUARTERS.get(link.direction)
    if quarter is None:
        part = (sine if function == "sin" else cosine)(angle_of(link.direction))
        size = times(link.length, part)
        match size:
            case Sum(((sign, inner),)):
                return sign, inner
        return 1, size
    turn = quarter[function == "sin"]
    return (turn, link.length) if turn else (1, ZERO)
