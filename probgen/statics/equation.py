"""Equilibrium equations in symbols: sums of forces along an axis, of torques about a pivot.

A balance is written for one body or for several taken as one; forces between bodies of such a
group cancel in pairs and do not appear.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from enum import Enum, auto
from typing import Final

import numpy as np

from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Call,
    Expression,
    Lump,
    Name,
    Quotient,
    Sum,
    Value,
    evaluate,
    names_in,
    negative,
    number,
    positive_first,
    times,
    total,
)
from probgen.quantities.factors import factors_of, terms_of
from probgen.quantities.like_terms import collected_sum
from probgen.statics.geometry import angle_of, cosine, inclined, sine, way
from probgen.statics.legs import with_legs
from probgen.statics.method import Method
from probgen.statics.system import Condition, Couple, Force, Link, Point, System
from probgen.statics.taken_as_one import acting_on, turning_on


class Lie(Enum):
    """How an axis lies."""

    LEVEL = auto()
    UPRIGHT = auto()
    ALONG_SURFACE = auto()
    SQUARE_TO_SURFACE = auto()
    SQUARE_TO_MEMBER = auto()
    ALONG_BODY = auto()
    SQUARE_TO_BODY = auto()


@dataclass(frozen=True, slots=True)
class Axis:
    """A direction forces are summed along: its label and its degrees counter-clockwise from +x.

    element: the member of a truss it is square to, or what has the surface where several surfaces
    touch, else ""; body: the straight body it is along or square to, "" for none.
    """

    label: str
    direction: Expression
    lie: Lie
    element: str = ""
    body: str = ""

    @property
    def along(self) -> bool:
        """Along a surface or a straight body, and not square to it."""
        return self.lie in (Lie.ALONG_SURFACE, Lie.ALONG_BODY)

    @property
    def square(self) -> bool:
        """Square to a surface or a straight body."""
        return self.lie in (Lie.SQUARE_TO_SURFACE, Lie.SQUARE_TO_BODY)

    @property
    def tilted(self) -> bool:
        """Along or square to a surface, a member or a body, and not x or y."""
        return self.lie not in (Lie.LEVEL, Lie.UPRIGHT)


X: Final = Axis("x", number(0), Lie.LEVEL)
Y: Final = Axis("y", number(90), Lie.UPRIGHT)


@dataclass(frozen=True, slots=True)
class Term:
    """One term of a balance: sign * magnitude * (length) * ratio.

    source: id of the force or couple it comes from.
    length: metres from the pivot along `link` to the point of application; None in a force balance.
    link: None where the way has several of that sine, whose lengths are counted together.
    ratio: the sine or cosine that makes it a component, or a perpendicular part; 1 when square-on.
    """

    source: str
    sign: int
    magnitude: Expression
    ratio: Expression = UNITY
    length: Expression | None = None
    link: Link | None = None

    def expression(self, method: Method) -> Expression:
        """The term without its sign, put together the course's way."""
        if self.length is None:
            return times(self.magnitude, self.ratio)
        if method.torque == "components":
            return times(Lump(self.length), self.magnitude, self.ratio)
        if method.torque == "arm" and self.ratio != UNITY:
            return times(self.magnitude, Lump(times(self.length, self.ratio)))
        return times(self.magnitude, Lump(self.length), self.ratio)


@dataclass(frozen=True, slots=True)
class Equation:
    """Sum of the terms = 0.

    kind: "force", "torque" or "condition"; bodies: whose balance it is (none for a condition).
    about: the axis's label, the pivot's point, or the condition's id; axis: of a force balance.
    silent: ids of forces on the bodies that do not appear, in the order they act.
    inner: ids of forces that cancel because both bodies of their pair are taken together.
    """

    kind: str
    bodies: tuple[str, ...]
    about: str
    terms: tuple[Term, ...]
    method: Method
    silent: tuple[str, ...] = ()
    inner: tuple[str, ...] = ()
    axis: Axis | None = None

    @property
    def body(self) -> str:
        """The one body, "" for a condition; the first of a group."""
        return self.bodies[0] if self.bodies else ""

    @property
    def expression(self) -> Expression:
        return total(*((term.sign, term.expression(self.method)) for term in self.terms))


def _signed(expression: Expression) -> tuple[int, Expression]:
    if isinstance(expression, Sum) and len(expression.terms) == 1:
        return expression.terms[0]
    return 1, expression


def force_balance(system: System, bodies: tuple[str, ...], axis: Axis, method: Method) -> Equation:
    """Sum of force components along an axis, in newtons."""
    terms: list[Term] = []
    silent: list[str] = []
    outer, between = acting_on(system, bodies)
    inner = tuple(force.id for force in between)
    along = angle_of(axis.direction)
    for force in outer:
        towards = angle_of(force.direction)
        sign, ratio = _signed(sine(towards) if axis == Y else cosine(towards.minus(along)))
        if ratio == ZERO:
            silent.append(force.id)
            continue
        terms.append(Term(force.id, sign, force.magnitude, ratio))
    return Equation(
        "force", bodies, axis.label, tuple(terms), method, tuple(silent), inner, axis=axis
    )


def torque_balance(system: System, bodies: tuple[str, ...], pivot: str, method: Method) -> Equation:
    """Sum of torques about a point, in newton metres, the method's rotation positive.

    A force F in direction phi at the end of a link (l, delta) turns with F l sin(phi - delta)
    counter-clockwise; a way of several links gives one term each.
    """
    turn = 1 if method.positive == "counter-clockwise" else -1
    terms: list[Term] = []
    silent: list[str] = []
    outer, between = acting_on(system, bodies)
    inner = tuple(force.id for force in between)
    for force in outer:
        found = list(_turning(system, force, pivot, turn))
        terms += found
        if not found:
            silent.append(force.id)
    terms += [_couple_term(couple, turn) for couple in turning_on(system, bodies)]
    return Equation("torque", bodies, pivot, tuple(terms), method, tuple(silent), inner)


def _turning(system: System, force: Force, pivot: str, turn: int) -> Iterator[Term]:
    return turning(system.points, force, pivot, turn)


def turning(points: Mapping[str, Point], force: Force, pivot: str, turn: int) -> Iterator[Term]:
    """The terms of a force in a torque balance about a point; turn: 1 counter-clockwise, or -1."""
    direction = angle_of(force.direction)
    alike: dict[Expression, list[tuple[int, Link]]] = {}
    steps = inclined(way(points, pivot, force.point), direction)
    for link in with_legs(steps, direction):
        sign, ratio = _signed(sine(direction.minus(angle_of(link.direction))))
        if ratio != ZERO:
            alike.setdefault(ratio, []).append((turn * sign, link))
    for ratio, links in alike.items():
        yield from _reaching(force, ratio, links)


def _reaching(force: Force, ratio: Expression, links: list[tuple[int, Link]]) -> Iterator[Term]:
    """The torque of a force over links with one sine, counted together: F (2 L) cos t."""
    if len(links) == 1:
        ((sign, link),) = links
        yield Term(force.id, sign, force.magnitude, ratio, link.length, link)
        return
    reach = collected_sum(*((sign, link.length) for sign, link in links))
    if reach != ZERO:
        back = all(sign < 0 for sign, _ in terms_of(reach))
        length = negative(reach) if back else reach
        yield Term(force.id, -1 if back else 1, force.magnitude, ratio, length)


def read_off(points: Mapping[str, Point], pivot: str, force: Force, term: Term) -> bool:
    """Whether a lever arm is read off, and is no part of a straight line from the pivot: for a part
    of the way runs along the force, or several parts of it lie alike to it.
    """
    links = inclined(way(points, pivot, force.point), angle_of(force.direction))
    return len(links) > 1 and (term.link is None or term.link in links)


def _couple_term(couple: Couple, turn: int) -> Term:
    sign, moment = _signed(couple.moment)
    return Term(couple.id, turn * sign, moment)


def condition_equation(condition: Condition, method: Method) -> Equation:
    """left - right = 0 as an equation of the plan."""
    terms = (Term("", 1, condition.left), Term("", -1, condition.right))
    return Equation("condition", (), condition.id, terms, method)


def oriented(equation: Equation, values: Mapping[str, Value]) -> Equation:
    """The equation with lever arms and sines written the way round that makes them positive.

    An arm such as d - L/2 that is negative for all the values becomes L/2 - d, and sin(a - b)
    becomes sin(b - a), the term's sign turned with it.  What holds a quantity without a value, or
    changes its sign, stays as it is.
    """
    terms = (_oriented_ratio(_oriented_arm(term, values), values) for term in equation.terms)
    return replace(equation, terms=tuple(terms))


def _oriented_arm(term: Term, values: Mapping[str, Value]) -> Term:
    if term.length is None or isinstance(term.length, Name):  # x left of its origin stays x
        return term
    if not _negative(term.length, values):
        return term
    return replace(term, sign=-term.sign, length=other_way(term.length))


def other_way(length: Expression) -> Expression:
    """A length counted the other way: (L - d)/2 for (d - L)/2."""
    match length:
        case Quotient(Sum() as top, bottom):
            return Quotient(positive_first(negative(top)), bottom)
        case _:
            return positive_first(negative(length))


def _oriented_ratio(term: Term, values: Mapping[str, Value]) -> Term:
    match term.ratio:
        case Call("sin", (Sum() as angle,)) if _negative(term.ratio, values):
            turned = Call("sin", (positive_first(negative(angle)),))
            return replace(term, sign=-term.sign, ratio=turned)
        case Call("cos", (Sum() as angle,)) if _negative(angle, values):
            return replace(term, ratio=Call("cos", (positive_first(negative(angle)),)))
        case _:
            return term


def read_positively(value: Expression, values: Mapping[str, Value]) -> Expression:
    """A value written without needless minus signs, as far as the values are known.

    What is below a line is positive: a/(c - b) for -a/(b - c); and so is a difference behind a
    minus sign: W (sin a - mu cos a) for -W (mu cos a - sin a).
    """
    match value:
        case Quotient(top, Sum() as bottom) if _negative(bottom, values):
            return read_positively(_turned(top, bottom), values)
        case Sum(((-1, Quotient(top, Sum() as bottom)),)) if _negative(bottom, values):
            return read_positively(_turned(negative(top), bottom), values)
        case Sum(((-1, Quotient(top, bottom)),)):
            turned = _difference_turned(top, values)
            return Quotient(turned, bottom) if turned else value
        case Sum(((-1, term),)):
            return _difference_turned(term, values) or value
        case _:
            return value


def _difference_turned(product: Expression, values: Mapping[str, Value]) -> Expression | None:
    """A product with its one negative difference turned round."""
    factors = factors_of(product)
    below = [each for each in factors if isinstance(each, Sum) and _negative(each, values)]
    if len(below) != 1 or len(factors) < 2:
        return None
    turned = positive_first(negative(below[0]))
    return times(*(turned if each is below[0] else each for each in factors))


def _turned(top: Expression, bottom: Expression) -> Expression:
    above, below = (positive_first(negative(part)) for part in (top, bottom))
    if isinstance(above, Sum) and len(above.terms) == 1:
        return negative(Quotient(above.terms[0][1], below))
    return Quotient(above, below)


def _negative(expression: Expression, values: Mapping[str, Value]) -> bool:
    """Whether it is known, and negative for all the values."""
    if not names_in(expression) <= values.keys():
        return False
    return bool(np.all(np.asarray(evaluate(expression, values)) < 0.0))


def pruned(equation: Equation, absent: frozenset[str]) -> Equation:
    """The equation without forces whose unknown size turns out not to matter in it.

    Such a force has terms that cancel for all values, because its line passes through the pivot.
    """
    idle = [term.source for term in equation.terms if names_in(term.magnitude) & absent]
    if not idle or equation.kind == "condition":
        return equation
    kept = tuple(term for term in equation.terms if term.source not in idle)
    silent = (*equation.silent, *dict.fromkeys(idle))
    return replace(equation, terms=kept, silent=silent)
