"""Loads: weights, forces, couples, and loads spread along a line.

Directions are degrees counter-clockwise from +x, of the force on the body.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from probgen.bank.bounds import sign_of
from probgen.bank.depiction import Load, Manner, Thing
from probgen.bank.direction import legs, straight
from probgen.bank.intensity import declare_resultant, read_intensity, spread_along
from probgen.bank.labels import BodyNamed, ByKind, Called, Coined, Label, Sort
from probgen.bank.length import links_to_middle, part_of
from probgen.bank.line_elements import own_id, stated_size
from probgen.bank.points import read_point
from probgen.bank.scope import Scope
from probgen.bank.shape import read_shape, shape_fields
from probgen.bank.situation import Situation
from probgen.bank.support import components
from probgen.bank.template import Requirement
from probgen.input.table import Table
from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Name,
    Number,
    Product,
    Quotient,
    Sum,
    is_number,
    names_in,
    number,
    times,
    total,
)
from probgen.quantities.factors import shared_factors, with_powers, without_factors
from probgen.quantities.like_terms import collected, multiple
from probgen.quantities.unit import FORCE, LENGTH, MASS, NEWTON, NEWTON_METRE, PRESSURE, STIFFNESS
from probgen.statics.shape import Outline
from probgen.statics.system import Couple, Element, Force, Kind, Link, Role, Spread

RIGHT, UP, DOWN = number(0), number(90), number(270)


def force(row: Table, situation: Situation) -> None:
    """A force in a stated direction; without a magnitude it is to be found.

    Without a direction as well it is found by its components along x and y.
    Where its direction is to be found as well, that tells which way it acts: its size is none below
    zero.  The `other` of two bodies is what exerts it, and feels the opposite.
    """
    body = situation.body(row)
    at = situation.at(row, body)
    if not row.has("direction") and not row.has("magnitude"):
        _by_components(row, situation, body, at)
        return
    direction = situation.direction(row)
    name = situation.touched(row, ByKind.FORCE)
    called = Coined(Sort.APPLIED_FORCE, name)
    turns = any(
        situation.scope.variables[id].role is Role.UNKNOWN
        for id in names_in(direction) & situation.scope.variables.keys()
    )
    size, symbol = stated_size(row, situation, called, nonnegative=turns)
    id, of = own_id(row, situation, symbol, Kind.FORCE)
    element = Element(id, Kind.FORCE, body, at, (id,), of=of)
    acting = Force(id, body, at, size, direction, Kind.FORCE, id)
    back = situation.reaction(row, body, at, situation.named_or(row, BodyNamed(body)))
    situation.place(row, element, Label(symbol, name), [acting], back=back)


def _by_components(row: Table, situation: Situation, body: str, at: str) -> None:
    """A force that is found by its components; what exerts it has to be said."""
    symbol = situation.symbol(row)
    expected = 'what exerts it, such as "mooring", or its direction'
    usual = situation.touched(row, ByKind.FORCE)
    name = row.text("name", expected=expected) if usual is ByKind.FORCE else usual
    whole = Force("", body, at, RIGHT, RIGHT, Kind.FORCE, symbol)
    forces = components(row, situation, whole, name)
    element = Element(symbol, Kind.FORCE, body, at, tuple(each.id for each in forces))
    back = situation.reaction(row, body, at, situation.named_or(row, BodyNamed(body)))
    situation.place(row, element, Label(symbol, name), forces, back=back)


def couple(row: Table, situation: Situation) -> None:
    """A couple, counter-clockwise positive; without a moment it is to be found."""
    body = situation.body(row)
    at = situation.at(row, body)
    name = situation.named_or(row, ByKind.COUPLE)
    called = Coined(Sort.COUPLE, name)
    if row.has("moment"):
        symbol = situation.symbol(row) if row.has("symbol") else ""
        size = situation.known(row, "moment", symbol, NEWTON_METRE, called)
    else:
        size = situation.unknown(row, situation.symbol(row), NEWTON_METRE, called)
    id = size.id if isinstance(size, Name) else ""
    acting = Couple(id, body, at, size, id)
    situation.place(row, Element(id, Kind.COUPLE, body, at), Label(id, name), couples=[acting])


def weight(row: Table, situation: Situation) -> None:
    """A weight, from a mass (W = m g) or as a force; `of` is the noun of what weighs."""
    body = situation.body(row)
    if outlines := shape_fields(row):
        _weight_of_shape(row, situation, body, outlines)
        return
    at = _middle(row, situation, body) if row.flag("uniform") else situation.at(row, body)
    if row.has("mass") == row.has("force"):
        row.fault("mass", row.content.get("mass"), "either a mass or a force", 'mass = "m"')
        situation.scope.whole = False
        row.expect("of", "symbol", "force")
        return
    key = "mass" if row.has("mass") else "force"
    noun, own = _what_weighs(row, key, situation, body)
    name: Called = BodyNamed(body) if own else noun
    size, letter = _weight(row, situation, key, noun, name)
    letter = situation.next_id(letter, Kind.WEIGHT) if key == "force" and letter else letter
    id = size.id if isinstance(size, Name) else ""
    if any(force.id == id for force in situation.forces):  # it weighs on another body too
        id = letter
    printed = size.symbol if isinstance(size, Name) else ""
    if (own or row.flag("uniform")) and not situation.place_of(body):
        situation.shown[letter] = Load(Thing.CENTRE, Manner.HELD)
    element = Element(letter, Kind.WEIGHT, body, at, (id,), own=own)
    acting = Force(id, body, at, size, DOWN, Kind.WEIGHT, letter)
    situation.place(row, element, Label(printed, name), [acting])


def _weight_of_shape(
    row: Table, situation: Situation, body: str, outlines: Sequence[Outline]
) -> None:
    """That of a flat part or a wire; of a hole, what is missing, which counts upward."""
    shape, size, at = read_shape(row, situation, outlines[0])
    if len(outlines) > 1:
        row.fault(outlines[1], row.content[outlines[1]], f"one shape, as {outlines[0]} is there")
    hole = row.flag("hole")
    noun = row.text("of", expected='the noun of the part, such as "upright bar"')
    symbol = situation.symbol(row)
    situation.defined(row, symbol, size, NEWTON, Coined(Sort.WEIGHT, noun))
    kind = Kind.HOLE if hole else Kind.WEIGHT
    element = Element(symbol, kind, body, at, (symbol,), shape=shape)
    direction = UP if hole else DOWN
    acting = Force(symbol, body, at, Name(symbol, symbol), direction, kind, symbol)
    situation.place(row, element, Label(symbol, noun), [acting])


def _weight(
    row: Table, situation: Situation, key: str, noun: str, name: Called
) -> tuple[Expression, str]:
    """A weight's size, and the name it goes by in the file.

    noun: for its symbol where the author gives none; name: of what weighs.
    """
    called = Coined(Sort.WEIGHT, name)
    symbol = situation.symbol(row) if row.has("symbol") else ""
    if key == "force":
        size = situation.known(row, key, symbol, NEWTON, called)
        return size, size.id if isinstance(size, Name) else ""
    symbol, printed = (symbol, symbol) if symbol else _weight_symbols(noun, situation.scope)
    if isinstance(given := _given_weight(row, situation), Name):
        situation.scope.call(given.id, symbol)
        return given, symbol
    mass = situation.scope.expression(row, "mass", MASS)
    factors = mass.factors if isinstance(mass, Product) else (mass,)
    product = Product((*factors, situation.scope.variables["g"].as_name))
    return situation.defined(row, symbol, product, NEWTON, called, symbol=printed), symbol


def _given_weight(row: Table, situation: Situation) -> Name | None:
    """The quantity under `mass` where it is a weight, as in US customary; None for a mass."""
    name = situation.scope.names.get(str(row.content.get("mass")))
    variable = situation.scope.variables.get(name.id) if name else None
    return name if variable and variable.dimension == FORCE else None


def _middle(row: Table, situation: Situation, body: str) -> str:
    """The middle of a straight uniform body, a point made for it."""
    outline = next((each.outline for each in situation.bodies if each.id == body), ())
    known = [situation.points[name] for name in outline if name in situation.points]
    if row.has("at") or len(known) != 2:
        if len(known) == len(outline):
            expected = "a weight without `at`, on a body along two points"
            row.fault("uniform", True, expected, 'else say at = "..."')
        return ""
    return situation.add_point("G", links_to_middle(known[0], known[1]))


def _what_weighs(row: Table, key: str, situation: Situation, body: str) -> tuple[str, bool]:
    """The noun of what weighs, and whether that is the body itself.

    Where `of` does not say it, a given's name does that is written "tree mass" or "mass of the
    tree", a shorthand of templates in English; nothing that says otherwise is the body's own.
    """
    own = situation.nouns.get(body, "load")
    noun = row.text("of", "") or _lent(row.content.get(key), situation.scope) or own
    return noun, _bare(noun) == _bare(own)


def _lent(text: object, scope: Scope) -> str:
    """The noun within a mass's name, "" where there is none."""
    label = scope.labels.get(text) if isinstance(text, str) else None
    named = label.name if label and isinstance(label.name, str) else ""
    found = re.fullmatch(r"(?:mass|weight) of (.+)|(.+) (?:mass|weight)", named)
    return (found[1] or found[2]) if found else ""


def _bare(noun: str) -> str:
    return re.sub(r"^(the|a|an) ", "", noun.lower())


def _weight_symbols(noun: str, scope: Scope) -> tuple[str, str]:
    """W with the first letter of what weighs, or with more of it where that is taken.

    As it is called in the file and as it is printed, where a small L would be read as a 1.
    """
    letters = re.sub(r"[^a-z]", "", _bare(noun)) or "o"
    lengths = range(1, min(len(letters), 6) + 1)
    symbols = [*(f"W_{letters[:n]}" for n in lengths), *(f"W_{n}" for n in range(1, 100))]
    id = next(symbol for symbol in symbols if symbol not in scope.names)
    clear = (symbol for symbol in symbols if symbol != "W_l" and symbol not in scope.symbols)
    return id, next(clear)


@dataclass(frozen=True, slots=True)
class Spreading:
    """A load per length (N/m) that runs evenly from one size to another over a length."""

    start: Expression
    end: Expression

    def whole(self, length: Expression) -> Expression:
        """The resultant: w l, of a triangle w l/2; where w grows with l, with its square.

        What both sizes share stands before their mean: k ((2 d + l)/2) l.
        """
        if self.start == self.end:
            return with_powers(times(self.start, length))
        shared, (start, end) = self._apart()
        sides = total((1, start), (1, end))
        if shared and isinstance(sides := collected(sides), Number):  # w and 3 w
            return multiple(with_powers(times(*shared, length)), Fraction(sides.value) / 2)
        if isinstance(sides, Sum) and len(sides.terms) > 1:
            return times(*shared, Quotient(sides, number(2)), length)
        return Quotient(with_powers(times(sides, length)), number(2))

    def centroid(self, length: Expression) -> Expression:
        """How far from the start the resultant acts: l (a + 2 b) / (3 (a + b))."""
        if self.start == self.end:
            return part_of(length, Fraction(1, 2))
        if is_number(self.end, 0):
            return part_of(length, Fraction(1, 3))
        if is_number(self.start, 0):
            return part_of(length, Fraction(2, 3))
        shared, (start, end) = self._apart()
        moment = total((1, start), (1, times(number(2), end)))
        whole: Expression = Sum(((1, start), (1, end)))
        if shared:
            moment, whole = collected(moment), collected(whole)
        if isinstance(moment, Number) and isinstance(whole, Number):  # of w and 2 w, 5 and 3
            return part_of(length, Fraction(moment.value) / (3 * Fraction(whole.value)))
        return Quotient(times(length, moment), times(number(3), whole))

    def _apart(self) -> tuple[list[Expression], tuple[Expression, Expression]]:
        """The factors both sizes share, but for plain numbers, and what is left of each."""
        sizes = (self.start, self.end)
        shared = [] if ZERO in sizes else shared_factors(sizes)
        shared = [factor for factor in shared if not isinstance(factor, Number)]
        start, end = (without_factors(size, shared) for size in sizes)
        return shared, (start, end)


def distributed(row: Table, situation: Situation) -> None:
    """A load spread along the straight line from one point to another: its resultant.

    load: N/m all along; start and end: where it grows or shrinks evenly; intensity: by a formula in
    x; or pressure (Pa) and width (m), for wind on a face.  It acts straight down unless `direction`
    says otherwise.
    """
    body = situation.body(row)
    direction = situation.direction(row, DOWN)
    name = situation.named_or(row, ByKind.LOAD)
    if row.has("intensity"):
        lies, resultant, reach = _by_formula(row, situation, name)
    else:
        lies, resultant, reach = _evenly(row, situation, name)
    start, symbol = situation.points.get(lies.start), resultant.id
    at = situation.add_point("Q", (*(start.links if start else ()), reach))
    kind = Kind.DISTRIBUTED
    element = Element(symbol, kind, body, at, (symbol,), spread=lies)
    acting = Force(symbol, body, at, resultant, direction, kind, symbol)
    situation.place(row, element, Label(symbol, name), [acting])


def _evenly(row: Table, situation: Situation, name: Called) -> tuple[Spread, Name, Link]:
    """Where a load lies that runs evenly, its resultant, and how far that is from its start."""
    spread = _read_spread(row, situation.scope)
    line = _line(row, situation)
    size = spread.whole(line.length)
    symbol = situation.symbol(row)
    resultant = situation.defined(row, symbol, size, NEWTON, Coined(Sort.RESULTANT, name))
    start = str(row.content.get("from"))
    lies = Spread(start if start in situation.points else "", line, spread.start, spread.end)
    return lies, resultant, Link(spread.centroid(line.length), line.direction)


def _by_formula(row: Table, situation: Situation, name: Called) -> tuple[Spread, Name, Link]:
    """The same of one by a formula."""
    line = _line(row, situation)
    load = read_intensity(row, situation, line, name)
    symbol = situation.symbol(row)
    if load is None or not symbol:
        situation.scope.whole = False
        return Spread("", line, ZERO, ZERO), Name(symbol, symbol), Link(ZERO, line.direction)
    resultant, load = declare_resultant(row, situation, symbol, name, load)
    reach = Link(load.centroid, line.direction)
    return spread_along(load.origin, line, load), resultant, reach


def _read_spread(row: Table, scope: Scope) -> Spreading:
    if row.has("pressure"):
        pressure = scope.expression(row, "pressure", PRESSURE)
        load = times(pressure, scope.expression(row, "width", LENGTH))
        return Spreading(load, load)
    if row.has("start") or row.has("end"):
        start, end = (scope.expression(row, key, STIFFNESS) for key in ("start", "end"))
        return Spreading(start, end)
    load = scope.expression(row, "load", STIFFNESS)
    return Spreading(load, load)


def _line(row: Table, situation: Situation) -> Link:
    """The straight line a load is spread along; its length must not come out negative."""
    ends = [read_point(row, key, situation.points) for key in ("from", "to")]
    if not all(ends):
        return Link(ZERO, ZERO)
    start, end = (situation.points[each] for each in ends)
    line = straight(start, end)
    if line is None:
        across, up = legs(start, end)
        if across == up == ZERO:
            row.fault("to", ends[1], f"another point than {ends[0]}")
        return Link(Call("hypot", (across, up)), Call("atan2", (up, across)))
    sign = sign_of(line.length, situation.scope.bounds)
    if sign < 0:
        return Link(total((-1, line.length)), total((1, line.direction), (1, number(180))))
    if not sign:
        reason = "a load is spread over a length"
        situation.requirements.append(Requirement(line.length, ">", ZERO, reason))
    return line
