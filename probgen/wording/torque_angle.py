"""The angle between a force and its arm, as it lies and folded into 0 to 180 degrees."""

from __future__ import annotations

from decimal import Decimal

from probgen.quantities.expression import ZERO, Call, Expression, Name, evaluate, names_in
from probgen.quantities.formula import (
    Balance,
    Difference,
    Formula,
    Integral,
    Relation,
    Words,
)
from probgen.quantities.printed_sum import tidied
from probgen.statics.equation import Term, read_off
from probgen.statics.geometry import angle_of, way
from probgen.statics.system import Force
from probgen.wording.numbers import by_lengths, degrees_shown
from probgen.working.digits import Digits


def partly_along(digits: Digits, pivot: str, term: Term) -> bool:
    """Whether the lever arm is read off, and no angle told."""
    system = digits.case.system
    return read_off(system.points, pivot, system.force(term.source), term)


def square_line(digits: Digits, pivot: str, force: Force) -> tuple[str, ...]:
    """From the pivot to where a force acts, if that slants and the force is at right angles to it.

    That is not plain to see from coordinates or a lever arm; of a level or upright line it is.
    """
    links = way(digits.case.system.points, pivot, force.point)
    if len(links) != 1:
        return ()
    slant = float(evaluate(links[0].direction, digits.case.values)) % 90.0
    between = angle_of(force.direction).minus(angle_of(links[0].direction))
    square = not between.multiples and abs(between.constant) % 180 == 90
    return (pivot, force.point) if square and not _close(slant) else ()


def _close(slant: float) -> bool:
    return min(slant, 90.0 - slant) < 1e-9


def angle_between(digits: Digits, term: Term, known: frozenset[str]) -> tuple[Formula, Formula]:
    """The angle between a force and its arm, and what its sine is: sin 140° = sin 40°.

    Nothing and what the sine is where lengths give that and no angle is worked with.
    """
    assert term.link is not None
    assert term.length is not None
    force = digits.case.system.force(term.source)
    between = angle_of(force.direction).minus(angle_of(term.link.direction))
    turned = float(evaluate(between.expression, digits.case.values))
    turned += 180.0 if float(evaluate(term.link.length, digits.case.values)) < 0 else 0.0
    folded = abs((turned + 180.0) % 360.0 - 180.0)
    letters = _folded(digits, between.expression, turned, folded)
    if not names_in(between.expression) <= known:
        return _angle_sought(letters, term)
    shown = degrees_shown(digits, folded, between.expression)
    slope = by_lengths(digits, between.expression, shown)
    angle: Formula = (shown,)
    if slope is not None and abs(turned - folded) < 1e-9:
        angle = slope
    elif isinstance(letters, Name):
        angle = (letters, Relation("="), shown)
    elif letters is not None:
        printed = tidied(digits.put_in(letters))
        shown = degrees_shown(digits, float(evaluate(printed, {})), between.expression)
        angle = (letters, Relation("="), printed, Relation("="), shown)
    sine, ratio = Call("sin", (shown,)), digits.put_in(term.ratio)
    if ratio == sine:
        return angle, ()
    if angle == (shown,) and names_in(between.expression):  # of lengths, as its sine is
        return (), (term.ratio, Relation("="), ratio)
    if slope is None:
        return angle, (sine, Relation("="), ratio)
    return angle, (sine, Relation("="), term.ratio, Relation("="), ratio)  # of which sides


def _angle_sought(angle: Expression | None, term: Term) -> tuple[Formula, Formula]:
    """An angle without a value yet: only its letters."""
    if angle is None:
        return (term.ratio,), ()
    sine = Call("sin", (angle,))
    return (angle,), () if sine == term.ratio else (sine, Relation("="), term.ratio)


def _folded(digits: Digits, between: Expression, turned: float, folded: float) -> Expression | None:
    """The angle between in symbols, folded into 0 to 180 degrees; None when it has no names."""
    angle = angle_of(between)
    if not angle.multiples or not all(isinstance(part, Name) for part, _ in angle.multiples):
        return None
    sign = 1 if abs((turned - folded + 180.0) % 360.0 - 180.0) < 1e-9 else -1
    if sign < 0:
        angle = angle_of(ZERO).minus(angle)
    value = float(evaluate(angle.expression, digits.case.values))
    angle = angle.turned(Decimal(360 * round((folded - value) / 360.0)))
    expression = angle.expression
    exact = abs(float(evaluate(expression, digits.case.values)) - folded) <= 1e-6
    return expression if exact else None


def angle_to_arm(digits: Digits, term: Term) -> Expression | None:
    """The angle in letters, or its exact number of degrees.

    None where a number is rounded, or lengths tell the angle: nobody writes sin(arctan(h/d)).
    """
    found, _ = angle_between(digits, term, frozenset(digits.case.values))
    if not found:
        return None
    angle = found[0]
    if isinstance(angle, Relation | Balance | Words | Integral | Difference | str | Call):
        return None
    sine, values = Call("sin", (angle,)), digits.case.values
    exact_enough = abs(float(evaluate(sine, values)) - float(evaluate(term.ratio, values))) < 1e-9
    return angle if exact_enough else None
