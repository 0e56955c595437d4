"""A cable that bears loads at its knots: one horizontal part of the tension along all of it.

Where nothing but the cable pulls its knots sideways, every stretch pulls with the same horizontal
part H, and up or down with H times its rise over its run (the cable with concentrated loads of
textbooks).  Balances along y then hold H and the places of the knots, and no roots of lengths.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Name,
    Quotient,
    Sum,
    Value,
    evaluate,
    names_in,
    negative,
    over,
    positive_first,
    times,
)
from probgen.quantities.factors import terms_of
from probgen.quantities.unit import FORCE
from probgen.statics.balances import groups
from probgen.statics.equation import Equation, Term, Y, force_balance
from probgen.statics.geometry import angle_of, cosine, sine
from probgen.statics.method import Method
from probgen.statics.system import Definition, Force, Kind, Role, System, Variable

_LETTERS: Final = ("H", "H_0", "T_h")
_FEWEST: Final = 2
"""Knots: of one alone its two balances say all there is to say."""


@dataclass(frozen=True, slots=True)
class _Stretch:
    """A pull on a knot: cosine: of its slope, positive; sign, slope: its rise over its run."""

    pull: Force
    cosine: Expression
    sign: int
    slope: Expression


@dataclass(frozen=True, slots=True)
class LoadedCable:
    """level: the letter of the horizontal part; knots: the bodies along the cable."""

    level: Variable
    knots: tuple[str, ...]
    stretches: tuple[_Stretch, ...]

    @property
    def definition(self) -> Definition:
        """The level part by the first stretch."""
        return Definition(self.level.id, self._part(self.stretches[0]))

    def told(self, system: System) -> System:
        """The system with the level part among its quantities."""
        variables = {**system.variables, self.level.id: self.level}
        definitions = (*system.definitions, self.definition)
        return replace(system, variables=variables, definitions=definitions)

    def equations(self, system: System, method: Method) -> Iterator[Equation]:
        """Balances along y by the level part, and what it is of each stretch."""
        own = {stretch.pull.id: stretch for stretch in self.stretches}
        for bodies in groups(system):
            if set(bodies) <= set(self.knots):
                balance = force_balance(system, bodies, Y, method)
                terms = (self._by_level_part(term, own) for term in balance.terms)
                yield replace(balance, terms=tuple(terms))
        sizes = {stretch.pull.magnitude: stretch for stretch in reversed(self.stretches)}
        level = Term("", 1, self.level.as_name)
        for stretch in reversed(sizes.values()):
            part = Term(stretch.pull.id, -1, self._part(stretch))
            yield Equation("condition", (), self.level.id, (level, part), method)

    def _by_level_part(self, term: Term, own: Mapping[str, _Stretch]) -> Term:
        if term.source not in own:
            return term
        stretch = own[term.source]
        return Term(term.source, stretch.sign, self.level.as_name, stretch.slope)

    def _part(self, stretch: _Stretch) -> Expression:
        return times(stretch.pull.magnitude, stretch.cosine)


def loaded_cable(system: System, known: Mapping[str, Value]) -> LoadedCable | None:
    """The cable with several knots whose places are sought; None where there is none.

    known: values of what is given, which tell the way each stretch runs.
    """
    pulls = [force for force in system.forces if _on_a_knot(system, force)]
    for start in dict.fromkeys(force.body for force in pulls):
        knots = _joined(pulls, start)
        own = [force for force in pulls if force.body in knots]
        sought = {name for f in own for name in names_in(f.direction)} & set(system.unknowns)
        if len(knots) < _FEWEST or not sought or not _alone_sideways(system, knots, own):
            continue
        stretches = [_stretch(force, known) for force in own]
        found = tuple(each for each in stretches if each is not None)
        letters = [each for each in _LETTERS if each not in {*system.variables, *system.points}]
        if len(found) == len(own) and letters:
            name = Name(letters[0], letters[0])
            unit = system.variables[next(iter(names_in(own[0].magnitude)))].unit
            level = Variable(name, FORCE, unit, Role.DEFINED, nonnegative=True)
            return LoadedCable(level, knots, found)
    return None


def knots_along(system: System, pull: str) -> tuple[str, ...]:
    """The knots of the cable that a pull is of, by the pull's id."""
    pulls = [force for force in system.forces if _on_a_knot(system, force)]
    knots = _joined(pulls, system.force(pull).body)
    return tuple(body.id for body in system.bodies if body.id in knots)


def _on_a_knot(system: System, force: Force) -> bool:
    return force.kind is Kind.CABLE and system.body(force.body).particle


def _joined(pulls: Sequence[Force], start: str) -> tuple[str, ...]:
    """The knots that stretches lead to from one of them."""
    owner = {force.id: force.body for force in pulls}
    knots = [start]
    for knot in knots:
        ends = [owner[force.pair] for force in pulls if force.body == knot and force.pair in owner]
        ends += [force.body for force in pulls if owner.get(force.pair) == knot]
        knots += [end for end in dict.fromkeys(ends) if end not in knots]
    return tuple(knots)


def _alone_sideways(system: System, knots: Sequence[str], pulls: Sequence[Force]) -> bool:
    """Whether all else that acts on the knots is upright."""
    others = (f for f in system.forces if f.body in knots and f not in pulls)
    return all(cosine(angle_of(force.direction)) == ZERO for force in others)


def _stretch(pull: Force, known: Mapping[str, Value]) -> _Stretch | None:
    """Its slope, where the way it runs to the side is known and the same in all draws."""
    angle = angle_of(pull.direction)
    (_, run), (up, rise) = (terms_of(part)[0] for part in (cosine(angle), sine(angle)))
    run_itself = run.top if isinstance(run, Quotient) else run
    if not names_in(run_itself) <= known.keys():
        return None
    value = np.asarray(evaluate(run_itself, known))
    if not (np.all(value > 0.0) or np.all(value < 0.0)):
        return None
    if np.all(value < 0.0):
        run = _turned(run)
    return _Stretch(pull, run, up, _over(rise, run))


def _turned(run: Expression) -> Expression:
    match run:
        case Quotient(Sum() as top, bottom):
            return Quotient(positive_first(negative(top)), bottom)
        case _:
            return negative(run)


def _over(rise: Expression, run: Expression) -> Expression:
    """The tangent of a slope by its sine and cosine, or by its sides."""
    match rise, run:
        case Quotient(high, slant), Quotient(wide, other) if slant == other:
            return over(high, wide)
        case Call("sin", angle), Call("cos", same) if angle == same:
            return Call("tan", angle)
        case _:
            return over(rise, run)
