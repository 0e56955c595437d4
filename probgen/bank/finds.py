"""What a template asks: [[find]]."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from typing import Final

from probgen.bank.direction import component_sum, direction_between, plain_degrees, read_pair
from probgen.bank.labels import Coined, Label, Reason, Sort
from probgen.bank.largest_moment import read_largest_moment
from probgen.bank.points import read_point
from probgen.bank.quantity import read_unit
from probgen.bank.situation import Situation
from probgen.bank.statement import check_mentions
from probgen.bank.support import RIGHT, check_own, declare_components
from probgen.bank.torque import acting, crossing, torque_about
from probgen.input.fault import nearest, one_of
from probgen.input.table import Table
from probgen.quantities.expression import (
    ZERO,
    Expression,
    Product,
    Quotient,
    Sum,
    is_number,
    times,
    total,
)
from probgen.quantities.symbol import italic
from probgen.quantities.unit import LENGTH, METRE, NEWTON_METRE, ONE, Unit
from probgen.statics.geometry import way
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Element, Find, Form, Kind, Link, Point, Role

_TWO_PARTS: Final = (Form.MAGNITUDE_AND_DIRECTION, Form.COMPONENTS)
_TOLD_BY: Final = ("quantity", "as", "symbol")
"""The keys that say what a find asks."""
_UTMOST: Final = (Form.LARGEST, Form.SMALLEST)


def read_finds(top: Table, situation: Situation) -> tuple[Find, ...]:
    """Every [[find]]; what is to be worked out from other quantities is declared on the way."""
    rows = top.tables("find")
    if not rows and not top.faulty("find"):
        top.fault("find", None, "at least one thing to find", 'add [[find]] and quantity = "T"')
    finds: list[Find] = []
    for row in rows:
        reader = next((_WORKED_OUT[key] for key in _WORKED_OUT if row.has(key)), _read_find)
        asked = reader(row, situation)
        if set(asked) & set(finds) and not any(map(row.faulty, _TOLD_BY)):
            found = row.content.get("quantity")
            row.fault("quantity", found, "something that is not asked yet", "leave one of them out")
        finds += asked
        if row.flag("varies"):
            situation.varying.update(find.quantity for find in asked)
        row.close()
    return tuple(finds)


def _read_find(row: Table, situation: Situation) -> list[Find]:
    if row.content.get("as") == Form.HOLDS.value:
        return [_read_holds(row, situation)]
    scope = situation.scope
    pairs = [e.id for e in situation.elements if Quantity(e.id).x in scope.variables]
    single = [v.id for v in scope.variables.values() if v.role in (Role.UNKNOWN, Role.DEFINED)]
    known = [*single, *pairs]
    quantity = row.text("quantity", expected=one_of(known))
    if quantity and quantity not in known and (scope.whole or quantity in scope.variables):
        row.fault("quantity", quantity, one_of(known), nearest(quantity, known))
    forces = [force for force in situation.forces if force.element == quantity]
    forms: Sequence[Form] = list(Form)
    if quantity in known:
        whole = _TWO_PARTS if forces else ()
        forms = _TWO_PARTS if quantity in pairs else (Form.VALUE, *_UTMOST, *whole)
    form = _read_form(row, forms)
    if form in _UTMOST:
        _require_limits(row, situation)
    if row.has("unit"):
        _print_in(row, situation, quantity)
    if form in _TWO_PARTS and forces and Quantity(quantity).x not in scope.variables:
        declare_components(row, situation, quantity, forces, situation.named[quantity].name)
    return [_asked(row, situation, Find(quantity, form))]


def _print_in(row: Table, situation: Situation, quantity: str) -> None:
    """The unit an answer is printed in, for a two-component force that of its components."""
    unit, scope = read_unit(row), situation.scope
    ids = [id for id in (quantity, *Quantity(quantity).components) if id in scope.variables]
    for id in ids:
        variable = scope.variables[id]
        if unit.dimension == variable.dimension:
            scope.variables[id] = replace(variable, unit=unit)
        elif not row.faulty("unit"):
            row.fault("unit", unit.name, f"a unit of {variable.dimension.noun}")


def _asked(row: Table, situation: Situation, find: Find) -> Find:
    """The find; the author's own words for it, if any, are kept beside it."""
    wording = row.text("wording", "")
    known, quantities = situation.names_to_tell, situation.scope.variables
    check_mentions(row, "wording", wording, known, quantities, filters=("quantity",))
    if wording:
        situation.wordings.setdefault(find, wording)
    return find


def _read_form(row: Table, forms: Sequence[Form]) -> Form:
    return Form(row.word("as", [form.value for form in forms], forms[0].value))


def _read_resultant(row: Table, situation: Situation) -> list[Find]:
    """Several forces taken together: the force that does what they do, as far as it pushes."""
    names = row.texts("resultant", required=True)
    ids = [force.id for force in situation.forces]
    if row.has("place"):  # a couple moves the line of action
        ids += [couple.id for couple in situation.couples]
    _require_known(row, situation, "resultant", names, ids)
    forces, _ = acting(situation, names)
    name = row.text("name", expected='what exerts it, such as "two heads"')
    symbol = situation.symbol(row)
    check_own(row, situation, symbol)
    form = _read_form(row, _TWO_PARTS)
    if forces:
        body, at = forces[0].body, forces[0].point
        situation.place(row, Element(symbol, Kind.RESULTANT, body, at), Label(symbol, name))
        declare_components(row, situation, symbol, forces, name)
    asked = [_asked(row, situation, Find(symbol, form))]
    return [*asked, *_read_crossing(row, situation, names, name)] if row.has("place") else asked


def _read_crossing(
    row: Table, situation: Situation, names: Sequence[str], of: str
) -> Iterator[Find]:
    """Where a resultant acts: how far from a point its line of action crosses a line."""
    letter = situation.symbol(row, "place")
    origin = read_point(row, "from", situation.points)
    along: Expression = RIGHT
    pair = read_pair(row, "along", situation.points) if row.has("along") else None
    if pair:
        along = direction_between(*pair, situation.scope)
    if not origin:
        return
    distance = crossing(situation, origin, along, *acting(situation, names))
    if distance is None:
        expected = "forces with a part square to the line along which the place is counted"
        row.fault("place", letter, expected, 'write along = ["A", "B"], or leave place out')
        return
    named = Coined(Sort.CROSSING, of, origin, tuple(point.id for point in pair or ()))
    situation.defined(row, letter, distance, _length_unit(row), named)
    situation.reasons[letter] = Reason.SAME_TORQUE
    yield Find(letter, Form.VALUE)


def _read_torque(row: Table, situation: Situation) -> list[Find]:
    """The torque of forces and couples about a point."""
    names = row.texts("torque", required=True)
    about = read_point(row, "about", situation.points)
    ids = [force.id for force in situation.forces]
    ids += [couple.id for couple in situation.couples]
    _require_known(row, situation, "torque", names, ids)
    unit = read_unit(row) if row.has("unit") else NEWTON_METRE
    if unit.dimension != NEWTON_METRE.dimension and not row.faulty("unit"):
        row.fault("unit", unit.name, f"a unit of {NEWTON_METRE.dimension.noun}")
    symbol = situation.symbol(row)
    size = torque_about(situation, about, *acting(situation, names)) if about else ZERO
    named = row.text("name", "") or Coined(Sort.TORQUE, at=about)
    situation.defined(row, symbol, size, unit, named)
    situation.reasons[symbol] = row.text("because", "") or Reason.TORQUE
    return [_asked(row, situation, Find(symbol, Form.VALUE))]


def _require_known(
    row: Table, situation: Situation, key: str, names: Sequence[str], ids: Sequence[str]
) -> None:
    """Notes each name in a list that is none of the ids."""
    for place, name in enumerate(names):
        if name not in ids and situation.scope.whole:
            row.fault(f"{key}[{place}]", name, one_of(ids, "the forces "), nearest(name, ids))


def _length_unit(row: Table) -> Unit:
    """The unit a place is told in, metres unless said."""
    unit = read_unit(row) if row.has("unit") else METRE
    if unit.dimension != LENGTH and not row.faulty("unit"):
        row.fault("unit", unit.name, "a unit of length")
    return unit


def _read_holds(row: Table, situation: Situation) -> Find:
    """Whether a limit is kept, or all of them where none is named."""
    row.expect("as")
    _require_limits(row, situation)
    known = [limit.id for limit in situation.limits]
    quantity = row.word("quantity", known, "") if situation.limits else row.text("quantity", "")
    return _asked(row, situation, Find(quantity, Form.HOLDS))


def _require_limits(row: Table, situation: Situation) -> None:
    if not situation.limits and situation.scope.whole:
        mend = 'add [[limit]] with that = "T <= 900 N" and name = "the cable breaks"'
        row.fault("as", row.content["as"], "a limit that can be reached", mend)


def _read_ratio(row: Table, situation: Situation) -> list[Find]:
    return [_read_worked_out(row, situation, "ratio", ONE)]


def _read_value(row: Table, situation: Situation) -> list[Find]:
    return [_read_worked_out(row, situation, "value", read_unit(row))]


def _read_worked_out(row: Table, situation: Situation, key: str, unit: Unit) -> Find:
    """Something worked out from other quantities; it has a symbol and a name of its own."""
    expression: Expression = ZERO
    if not row.faulty("unit"):  # else there is nothing to hold the dimension against
        expression = situation.scope.expression(row, key, unit.dimension)
    name = row.text("name", expected='what it is in words, such as "share of the weight"')
    symbol = situation.symbol(row)
    situation.defined(row, symbol, expression, unit, name)
    if because := row.text("because", ""):
        situation.reasons[symbol] = because
    return _asked(row, situation, Find(symbol, Form.VALUE))


def _read_centre(row: Table, situation: Situation) -> list[Find]:
    """The coordinates of the centre of mass of several weights; a zero one is not asked."""
    names = row.texts("centre_of_mass")
    weights = [f.element for f in situation.forces if f.kind in (Kind.WEIGHT, Kind.HOLE)]
    known = [name for name in names if name in weights]
    for place, name in enumerate(names):
        if name not in weights and situation.scope.whole:
            expected = one_of(weights, "the weights ")
            row.fault(f"centre_of_mass[{place}]", name, expected, nearest(name, weights))
    _require_holes(row, situation, known)
    unit = _length_unit(row)
    letter = situation.symbol(row) if row.has("symbol") else "G"
    shares = _shares(situation, known)
    finds: list[Find] = []
    for axis, part, sort in (("x", "cos", Sort.CENTRE_X), ("y", "sin", Sort.CENTRE_Y)):
        centre = _balance_point(situation, known, shares, part)
        if is_number(centre, 0) and (axis == "x" or finds):
            continue
        id = f"{axis}_{letter}"
        symbol = f"{axis}_{italic(letter)}"  # the letter names a point, the centre of mass
        situation.defined(row, id, centre, unit, Coined(sort), symbol=symbol)
        situation.reasons[id] = _why(situation, known, centre)
        finds.append(_asked(row, situation, Find(id, Form.VALUE)))
    return finds


def _require_holes(row: Table, situation: Situation, known: Sequence[str]) -> None:
    """Whatever is cut out of a body counts with its parts."""
    bodies = {f.body for f in situation.forces if f.element in known and f.kind is Kind.WEIGHT}
    holes = [f.element for f in situation.forces if f.kind is Kind.HOLE and f.body in bodies]
    if left := [each for each in holes if each not in known]:
        expected = f"what is cut out as well: {', '.join(left)}"
        row.fault("centre_of_mass", list(known), expected)


def _why(situation: Situation, weights: Sequence[str], centre: Expression) -> Reason:
    """What is said of a coordinate of a centre of mass."""
    worked = isinstance(centre, Quotient) and isinstance(centre.bottom, Sum)
    if len(weights) > 1 and not worked:
        return Reason.CENTRE_SHARED
    holes = any(f.kind is Kind.HOLE for f in situation.forces if f.element in weights)
    return Reason.CENTRE_WITH_HOLES if holes else Reason.CENTRE_OF_MASS


def _shares(situation: Situation, weights: Sequence[str]) -> list[Expression]:
    """What weights count with: their masses where all are m g, else all of them their forces."""
    ids = [situation.scope.names[weight].id for weight in weights]
    masses = [mass for id in ids if (mass := _mass(situation, id)) is not None]
    if len(masses) == len(ids):
        return masses
    return [situation.scope.variables[id].as_name for id in ids]


def _mass(situation: Situation, weight: str) -> Expression | None:
    """The mass of a weight that is m g; None of one that is given as a force."""
    gravity = situation.scope.variables["g"].as_name
    for definition in situation.definitions:
        if definition.variable == weight and isinstance(definition.expression, Product):
            factors = definition.expression.factors
            if factors[-1] == gravity:
                return times(*factors[:-1])
    return None


def _balance_point(
    situation: Situation, weights: Sequence[str], shares: Sequence[Expression], part: str
) -> Expression:
    """sum(m x) / sum(m), with the coordinates along x ("cos") or y ("sin"); one that all share."""
    moments, counted, coordinates = [], [], []
    for weight, share in zip(weights, shares, strict=True):
        force = next(f for f in situation.forces if f.element == weight)
        sign = -1 if force.kind is Kind.HOLE else 1
        at = force.point
        links = way({"": Point("", ()), **situation.points}, "", at) if at else ()
        straight = [(1, Link(each.length, plain_degrees(each.direction))) for each in links]
        coordinate = component_sum(straight, part)
        coordinates.append(coordinate)
        moments.append((sign, times(share, coordinate)))
        counted.append((sign, share))
    if len(coordinates) > 1 and all(each == coordinates[0] for each in coordinates):
        return coordinates[0]
    top = total(*moments)
    return ZERO if is_number(top, 0) else Quotient(top, total(*counted))


_WORKED_OUT: Final[dict[str, Callable[[Table, Situation], list[Find]]]] = {
    "ratio": _read_ratio,
    "value": _read_value,
    "centre_of_mass": _read_centre,
    "resultant": _read_resultant,
    "torque": _read_torque,
    "largest_moment": read_largest_moment,
}
