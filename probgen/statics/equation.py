"""Equilibrium equations in symbols: sums of forces along an axis, of torques about a pivot."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np

from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Expression,
    Lump,
    Sum,
    Value,
    evaluate,
    names_in,
    negative,
    positive_first,
    times,
    total,
)
from probgen.statics.geometry import angle_of, cosine, sine, way
from probgen.statics.method import Method
from probgen.statics.system import Condition, Couple, Force, Link, System


@dataclass(frozen=True, slots=True)
class Term:
    """One term of a balance: sign * magnitude * (length) * ratio.

    source: id of the force or couple it comes from.
    length: metres from the pivot along `link` to the point of application; None in a force balance.
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

    kind: "force", "torque" or "condition"; body: whose balance it is ("" for a condition).
    about: axis "x" or "y", the pivot's point, or the condition's id.
    silent: ids of forces on the body that do not appear, in the order they act.
    reason: why a condition holds, in words; "" for a balance.
    """

    kind: str
    body: str
    about: str
    terms: tuple[Term, ...]
    method: Method
    silent: tuple[str, ...] = ()
    reason: str = ""

    @property
    def expression(self) -> Expression:
        return total(*((term.sign, term.expression(self.method)) for term in self.terms))


def _signed(expression: Expression) -> tuple[int, Expression]:
    if isinstance(expression, Sum) and len(expression.terms) == 1:
        return expression.terms[0]
    return 1, expression


def force_balance(system: System, body: str, axis: str, method: Method) -> Equation:
    """Sum of force components along "x" or "y", in newtons."""
    part = cosine if axis == "x" else sine
    terms: list[Term] = []
    silent: list[str] = []
    for force in _on(system, body):
        sign, ratio = _signed(part(angle_of(force.direction)))
        if ratio == ZERO:
            silent.append(force.id)
            continue
        terms.append(Term(force.id, sign, force.magnitude, ratio))
    return Equation("force", body, axis, tuple(terms), method, tuple(silent))


def torque_balance(system: System, body: str, pivot: str, method: Method) -> Equation:
    """Sum of torques about a point, in newton metres, the method's rotation positive.

    A force F in direction phi at the end of a link (l, delta) turns with F l sin(phi - delta)
    counter-clockwise; a way of several links gives one term each.
    """
    turn = 1 if method.positive == "counter-clockwise" else -1
    terms: list[Term] = []
    silent: list[str] = []
    for force in _on(system, body):
        found = list(_turning(system, force, pivot, turn))
        terms += found
        if not found:
            silent.append(force.id)
    for couple in system.couples:
        if couple.body == body:
            terms.append(_couple_term(couple, turn))
    return Equation("torque", body, pivot, tuple(terms), method, tuple(silent))


def _turning(system: System, force: Force, pivot: str, turn: int) -> Iterator[Term]:
    direction = angle_of(force.direction)
    for link in way(system.points, pivot, force.point):
        sign, ratio = _signed(sine(direction.minus(angle_of(link.direction))))
        if ratio != ZERO:
            yield Term(force.id, turn * sign, force.magnitude, ratio, link.length, link)


def _couple_term(couple: Couple, turn: int) -> Term:
    sign, moment = _signed(couple.moment)
    return Term(couple.id, turn * sign, moment)


def _on(system: System, body: str) -> Iterator[Force]:
    return (force for force in system.forces if force.body == body)


def condition_equation(condition: Condition, method: Method) -> Equation:
    """left - right = 0 as an equation of the plan."""
    terms = (Term("", 1, condition.left), Term("", -1, condition.right))
    return Equation("condition", "", condition.id, terms, method, (), condition.reason)


def oriented(equation: Equation, values: Mapping[str, Value]) -> Equation:
    """The equation with each lever arm written the way round that makes it positive.

    An arm such as d - L/2 that is negative for all the values becomes L/2 - d, its term's sign
    turned with it.  Arms that hold a quantity without a value, or change sign, stay as they are.
    """
    return replace(equation, terms=tuple(_oriented(term, values) for term in equation.terms))


def _oriented(term: Term, values: Mapping[str, Value]) -> Term:
    if term.length is None or not names_in(term.length) <= values.keys():
        return term
    if not np.all(np.asarray(evaluate(term.length, values)) < 0.0):
        return term
    return replace(term, sign=-term.sign, length=positive_first(negative(term.length)))
