"""The fingerprint of a system: the same for the same physics, whatever its parts are called.

Ids, words, letters, the order of entries and terms, and how numbers are typed (90, 90.0) leave it
as it is; so do points and outlines that only a figure shows.  Any other equation, sign, point,
support or question changes it.  It is found by colour refinement (Weisfeiler and Leman): parts
take the colour of what is said of them, again and again, until no two more are told apart.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from hashlib import blake2b
from typing import NamedTuple

from probgen.quantities.expression import (
    Call,
    Expression,
    Lump,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)
from probgen.statics.system import Element, Link, System


class Part(NamedTuple):
    """A part of a system by its id; sort: "quantity", "point", "body", "force", "element"."""

    sort: str
    id: str


class AnyOrder(NamedTuple):
    """Statements whose order says nothing."""

    items: tuple[Statement, ...]


Statement = str | Part | AnyOrder | tuple["Statement", ...]
Colours = Mapping[Part, str]


def fingerprint(system: System) -> str:
    """The physics of a system as 32 hexadecimal digits."""
    said = tuple(_statements(system))
    places: dict[Part, list[Statement]] = defaultdict(list)
    for statement in said:
        for part in set(_parts(statement)):
            places[part].append(statement)
    colours: Colours = {part: part.sort for part in places}
    told_apart = 0
    while len(set(colours.values())) > told_apart:
        told_apart = len(set(colours.values()))
        colours = {
            part: _digest([colours[part], *sorted(_written(s, colours, part) for s in where)])
            for part, where in places.items()
        }
    return _digest(sorted(_written(statement, colours) for statement in said))


def _digest(lines: Iterable[str]) -> str:
    return blake2b("\n".join(lines).encode(), digest_size=16).hexdigest()


def _parts(statement: Statement) -> Iterator[Part]:
    match statement:
        case Part():
            yield statement
        case AnyOrder(items):
            for each in items:
                yield from _parts(each)
        case tuple():
            for each in statement:
                yield from _parts(each)


def _written(statement: Statement, colours: Colours, about: Part | None = None) -> str:
    """A statement with colours in the places of parts; `about` is the part it is read for."""
    match statement:
        case str():
            return statement
        case Part():
            return "*" if statement == about else f"<{colours[statement]}>"
        case AnyOrder(items):
            return "{" + ",".join(sorted(_written(each, colours, about) for each in items)) + "}"
        case _:
            return "(" + ",".join(_written(each, colours, about) for each in statement) + ")"


def _statements(system: System) -> Iterator[Statement]:
    """Everything the system says, one statement an entry."""
    for v in system.variables.values():
        bounds = (repr(v.low), repr(v.high), repr(v.nonnegative))
        yield ("quantity", _quantity(v.id), str(v.dimension), v.role.value, bounds)
        for side, bound in (("least", v.least), ("most", v.most)):
            if bound is not None:
                yield (side, _quantity(v.id), _expression(bound))
    for d in system.definitions:
        yield ("definition", _quantity(d.variable), _expression(d.expression))
    for name in _points_used(system):
        yield ("point", Part("point", name), _links(system.points[name].links))
    for body in system.bodies:
        yield ("body", Part("body", body.id), repr(body.particle))
    yield from _actions(system)
    for element in system.elements:
        yield _element(element)
    for c in system.conditions:
        yield ("condition", AnyOrder((_expression(c.left), _expression(c.right))))
    for limit in system.limits:
        yield ("limit", _expression(limit.left), limit.relation, _expression(limit.right))
    for find in system.finds:
        asked = find.quantity
        whole = _quantity(asked) if asked in system.variables else Part("element", asked)
        yield ("find", whole, find.form.value)
    for drawn in system.to_draw:
        yield ("to draw", Part("body", drawn))
    if system.pivot:
        yield ("pivot", Part("point", system.pivot))
    for member in system.members:
        ends = AnyOrder((Part("point", member.start), Part("point", member.end)))
        yield ("member", Part("body", member.body), ends, _expression(member.force))
    if system.by:
        yield ("by", system.by)


def _actions(system: System) -> Iterator[Statement]:
    """The forces and couples."""
    for f in system.forces:
        pair: Statement = Part("force", f.pair) if f.pair else ""
        line = (Part("point", f.point), _expression(f.magnitude), _expression(f.direction))
        source = (f.kind.value, Part("element", f.element), f.part, Part("body", f.body))
        yield ("force", Part("force", f.id), line, source, pair)
    for c in system.couples:
        pair = Part("force", c.pair) if c.pair else ""
        bearer = (Part("body", c.body), Part("element", c.element))
        yield ("couple", Part("force", c.id), _expression(c.moment), bearer, pair)


def _element(element: Element) -> Statement:
    spread = element.spread
    laid: Statement = ""
    if spread is not None:
        sizes = (_expression(spread.first), _expression(spread.last))
        laid = (Part("point", spread.start), _links((spread.line,)), sizes)
        if (curve := spread.intensity) is not None:
            ends = (_expression(curve.low), _expression(curve.high))
            laid = (*laid, Part("point", curve.origin), _expression(curve.load), ends)
    surface = "" if element.surface is None else _expression(element.surface)
    forces = AnyOrder(tuple(Part("force", id) for id in element.forces))
    flags = (repr(element.compressed), repr(element.own))
    return (
        "element",
        Part("element", element.id),
        str(element.kind),
        Part("body", element.body),
        forces,
        surface,
        laid,
        flags,
    )


def _points_used(system: System) -> list[str]:
    """The points that forces, spread loads and the pivot are at, and the joints of members."""
    joints = (name for member in system.members for name in (member.start, member.end))
    starts = (element.spread.start for element in system.elements if element.spread)
    used = (*(force.point for force in system.forces), *starts, *joints, system.pivot)
    return [name for name in dict.fromkeys(used) if name]


def _links(links: tuple[Link, ...]) -> Statement:
    """A way in the plane: its steps may be taken in any order."""
    return AnyOrder(tuple((_expression(e.length), _expression(e.direction)) for e in links))


def _quantity(id: str) -> Part:
    return Part("quantity", id)


def _expression(expression: Expression) -> Statement:
    match expression:
        case Number(value, unit):
            size, measure = (Fraction(1), "") if unit is None else (unit.size, str(unit.dimension))
            return ("number", str(Fraction(value) * size), measure)
        case Name(id):
            return _quantity(id)
        case Sum(terms):
            return ("sum", AnyOrder(tuple((str(sign), _expression(e)) for sign, e in terms)))
        case Product(factors):
            return ("product", AnyOrder(tuple(_expression(factor) for factor in factors)))
        case Quotient(top, bottom):
            return ("quotient", _expression(top), _expression(bottom))
        case Power(base, exponent):
            return ("power", _expression(base), str(exponent))
        case Call(function, arguments):
            return (function, tuple(_expression(argument) for argument in arguments))
        case Lump(inner):
            return _expression(inner)
        case Root(balance, name, low, high):
            return ("root", _expression(balance), _quantity(name), repr(low), repr(high))
