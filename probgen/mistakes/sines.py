"""Sine and cosine exchanged: of forces that are worked in the same way, or throughout."""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Hashable, Iterator, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Final

from probgen.mistakes.oblique import letters_of, oblique_forces, spoilt_of
from probgen.mistakes.variant import (
    Change,
    Misstep,
    Part,
    on_terms,
    rewritten,
    turned,
    with_sign_of,
)
from probgen.quantities.expression import (
    UNITY,
    Call,
    Expression,
    Power,
    number,
    total,
)
from probgen.quantities.unit import DEGREE, UnitSystem
from probgen.statics.equation import Equation, Term, torque_balance
from probgen.statics.geometry import angle_of
from probgen.statics.plan import Plan
from probgen.statics.system import Force, Link, System

_QUARTER: Final = 90  # degrees


def sin_cos_swap(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Of one force in its torque, of one force throughout, of all forces.

    Who exchanges them does so for all forces whose part is worked in the same way.
    """
    oblique = letters_of(oblique_forces(plan))
    tries = [("torque", "torque", each) for each in _alike(plan, oblique, _ratios_in_torques)]
    tilted = {letter: ids for letter, ids in oblique.items() if _tilted(plan, ids)}
    tries += [("one", "", each) for each in _alike(plan, tilted, _functions)]
    for kind_of_way, kind, own in tries:
        sources = tuple(id for letter in own for id in oblique[letter])
        changed = rewritten(plan, _exchanged(plan.system, kind, sources))
        spoilt = spoilt_of(plan, sources) if kind else set(sources)
        named = tuple(letter for letter in own if spoilt & set(oblique[letter])) or own
        if changed:
            several = len(named) > 1
            name = "torques" if several and kind else kind_of_way
            told: dict[str, Part] = {"F": named if several else named[0]}
            yield Misstep("sin_cos_swap", changed, name, told)
    changed = rewritten(plan, _exchanged_throughout(plan.system)) if len(oblique) > 1 else None
    if changed:
        yield Misstep("sin_cos_swap", changed, "all", {"F": ""})


def _alike(
    plan: Plan, oblique: Mapping[Expression, tuple[str, ...]], worked: Callable[..., Hashable]
) -> list[tuple[Expression, ...]]:
    """The letters of oblique forces, those together whose terms are worked in the same way.

    worked: what is the same of a force and its terms with their balances.
    """
    forces = {force.id: force for force in plan.system.forces}
    equations = dict.fromkeys(each for step in plan.steps for each in step.equations)
    groups: dict[Hashable, list[Expression]] = {}
    for letter, ids in oblique.items():
        terms = [(e, t) for e in equations for t in e.terms if t.source in ids]
        groups.setdefault(worked(forces[ids[0]], terms), []).append(letter)
    return [tuple(group) for group in groups.values()]


def _ratios_in_torques(force: Force, terms: Sequence[tuple[Equation, Term]]) -> Hashable:
    """The ratios in balances of torques, of level and upright forces together."""
    way = UNITY if angle_of(force.direction).along_axis else force.direction
    ratios = frozenset(t.ratio for e, t in terms if e.kind == "torque")
    return (way, ratios) if ratios - {UNITY} else force.id


def _functions(force: Force, terms: Sequence[tuple[Equation, Term]]) -> Hashable:
    """Which function of an angle each balance has, whatever the angle, of forces of one kind."""
    return force.kind, frozenset((e, _function(t.ratio)) for e, t in terms)


def _function(ratio: Expression) -> Hashable:
    if isinstance(ratio, Call) and ratio.function in ("sin", "cos"):
        return ratio.function
    return ratio


def _tilted(plan: Plan, sources: Collection[str]) -> bool:
    """Whether some forces have parts of their own, and not only arms that are worked out."""
    parts = {
        t.source
        for s in plan.steps
        for t in s.equation.terms
        if s.equation.kind == "force" and t.ratio != UNITY
    }
    forces = (force for force in plan.system.forces if force.id in sources)
    return any(f.id in parts or not angle_of(f.direction).along_axis for f in forces)


def _exchanged(system: System, kind: str, sources: tuple[str, ...]) -> Change:
    """Sine and cosine exchanged in the terms of some forces.

    Who writes torques with components exchanges those of the force, wherever it acts.
    """
    usual = on_terms(_other_function, kind, sources)

    def change(equation: Equation) -> Equation:
        if equation.kind != "torque" or equation.method.torque != "components":
            return usual(equation)
        for id in {term.source: None for term in equation.terms if term.source in sources}:
            equation = _with_parts_exchanged(system, id, equation)
        return equation

    return change


def _exchanged_throughout(system: System) -> Change:
    """Every sine and cosine exchanged, with components those of where forces act too."""
    usual, elsewhere = on_terms(_other_function), _all_mirrored(system)

    def change(equation: Equation) -> Equation:
        if equation.kind != "torque" or equation.method.torque != "components":
            return usual(equation)
        if elsewhere is None:
            return equation
        again = torque_balance(elsewhere, equation.bodies, equation.about, equation.method)
        own = {term.source for term in equation.terms}
        return replace(equation, terms=tuple(t for t in again.terms if t.source in own))

    return change


def _all_mirrored(system: System) -> System | None:
    """The system with all components exchanged, of forces and of places; None if some cannot be."""
    ways = [force.direction for force in system.forces]
    ways += [link.direction for point in system.points.values() for link in point.links]
    other = {each: _mirrored(each) for each in ways if not angle_of(each).along_axis}
    kept: dict[Expression, Expression] = {a: b for a, b in other.items() if b is not None}
    if len(kept) < len(other):
        return None

    def put(link: Link) -> Link:
        return replace(link, direction=kept.get(link.direction, link.direction))

    return replace(
        system,
        points={id: replace(p, links=tuple(map(put, p.links))) for id, p in system.points.items()},
        forces=tuple(
            replace(each, direction=kept.get(each.direction, each.direction))
            for each in system.forces
        ),
    )


def _with_parts_exchanged(system: System, id: str, equation: Equation) -> Equation:
    """The equation with the components of one force exchanged.

    A force along an axis has one only: what is exchanged then is where it acts.
    """
    own = [term for term in equation.terms if term.source == id]
    force = next((force for force in system.forces if force.id == id), None)
    if (
        force is None
        or angle_of(force.direction).along_axis
        or all(term.link and angle_of(term.link.direction).along_axis for term in own)
    ):
        return on_terms(_other_function, "torque", (id,))(equation)
    other = _mirrored(force.direction)
    return turned(system, force, other)(equation) if other else equation


def _mirrored(direction: Expression) -> Expression | None:
    """The direction (degrees) with the components of one exchanged and their signs kept.

    c + a has those of c + 90 - a, where c is along an axis; None where it is no such sum.
    """
    angle = angle_of(direction)
    factors = [factor for _, factor in angle.multiples] or [Decimal(1)]
    below = math.floor(angle.constant / _QUARTER) * _QUARTER
    axis = angle.constant if angle.multiples else below
    if axis % _QUARTER or [abs(factor) for factor in factors] != [1]:
        return None
    both = number(int(2 * axis + _QUARTER * factors[0]), DEGREE)
    return total((1, both), (-1, direction))


def _other_function(term: Term) -> Term:
    """The ratio sqrt(1 - ratio^2): cosine for sine, sine for cosine, also where lengths give it."""
    if term.ratio == UNITY:
        return term
    other = Call("sqrt", (total((1, UNITY), (-1, Power(term.ratio, 2))),))
    return replace(term, ratio=with_sign_of(term.ratio, other))
