"""Angles as a sentence shows them."""

from __future__ import annotations

from decimal import Decimal

from probgen.quantities.expression import Call, Expression, Name, Number, Quotient, evaluate
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.printed_sum import tidied
from probgen.quantities.rounding import exact
from probgen.quantities.unit import ANGLE, DEGREE
from probgen.statics.geometry import Angle
from probgen.working.digits import Digits
from probgen.working.line import line_of


def degrees_shown(digits: Digits, value: float, expression: Expression) -> Number:
    """An angle made of given ones, without zeros it does not need; a given one as it was given."""
    if isinstance(expression, Name) and digits.is_data(expression.id):
        return digits.data(expression.id)
    short = exact(value)
    few = len(short.normalize().as_tuple().digits) <= digits.convention.figures
    return (
        Number(short.quantize(Decimal(1)), DEGREE)
        if few and short == int(short)
        else digits.carried(value, ANGLE)
    )


def by_lengths(digits: Digits, expression: Expression, shown: Number) -> Formula | None:
    """arctan(h/d), with numbers, and its value: an acute angle that two lengths tell; else None."""
    match expression:
        case Call("atan2", (rise, run)):
            values = digits.case.values
            if min(float(evaluate(each, values)) for each in (rise, run)) > 0.0:
                slope = Call("atan", (Quotient(rise, run),))
                worked = line_of(digits, slope, float(evaluate(slope, values)), ANGLE)
                return (slope, Relation("="), worked.printed, Relation("="), shown)
    return None


def angle_worked(digits: Digits, angle: Angle) -> Formula:
    """An angle in letters where they are letters, with numbers, and its value."""
    expression = angle.expression
    shown = degrees_shown(digits, float(evaluate(expression, digits.case.values)), expression)
    found = by_lengths(digits, expression, shown)
    if found is not None:
        return found
    if not angle.multiples or not all(isinstance(part, Name) for part, _ in angle.multiples):
        return (shown,)
    if isinstance(expression, Name):
        return (expression, Relation("="), shown)
    printed = tidied(digits.put_in(expression))  # and what these add up to
    added = degrees_shown(digits, float(evaluate(printed, {})), expression)
    shown_once = () if printed == added else (printed, Relation("="))
    return (expression, Relation("="), *shown_once, added)
