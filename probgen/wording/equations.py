"""One step of the plan as lines of equations: balance, isolated, numbers put in, result."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Final

from probgen.quantities.dimension import dimension_of
from probgen.quantities.expression import (
    ZERO,
    Call,
    Expression,
    Name,
    Number,
    Quotient,
    Root,
    Sum,
    evaluate,
    names_in,
    negative,
    number,
    over,
    times,
    total,
)
from probgen.quantities.factors import terms_of
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.multiplier import Multiplied, multiplied
from probgen.quantities.rounding import last_place, round_figures
from probgen.quantities.unit import UNITS, Dimension
from probgen.statics.equation import Equation
from probgen.statics.step import Step
from probgen.wording.block import Display, Row
from probgen.wording.facts.angle import DividedByCosine
from probgen.wording.other_angle import angle_part, apart_part, of_a_turned_angle
from probgen.wording.passage import Part, sentences
from probgen.wording.summed import balance_of
from probgen.wording.torque_forms import written_out
from probgen.working.digits import Digits
from probgen.working.line import HALF, USUAL_GUARD, Line, line_of
from probgen.working.multiple import same_amount


def working(digits: Digits, step: Step) -> Iterator[Part]:
    """The lines of one step, ending at its rounded result.

    Where several angles solve the equation, what tells which it is stands between them.
    """
    rows = tuple(_balance(digits, step))
    apart = tuple(apart_part(digits, step, step.equation.expression))
    told = tuple(angle_part(digits, step, () if apart else rows))
    if not apart and not told:
        told = tuple(_divided_part(digits, step, rows))
    if not apart and not told:
        yield Display((*rows, *_result_rows(digits, step)))
        return
    if apart:
        yield Display(rows)
    yield from (*apart, *told)
    yield Display(tuple(_result_rows(digits, step)))


def _divided_part(digits: Digits, step: Step, rows: tuple[Row, ...]) -> Iterator[Part]:
    """The balance, and by what it is divided, where sine and cosine leave a tangent."""
    match step.expression:
        case Call("atan", (Quotient(top, bottom),)):
            angle = digits.case.system.variables[step.unknown].as_name
        case _:
            return
    balance = step.equation.expression
    gone = names_in(balance) - names_in(step.expression) - {step.unknown}
    letters = (digits.case.system.variables[id].as_name for id in sorted(gone))
    divisor = times(*letters, Call("cos", (angle,)))
    left = total((1, times(bottom, Call("tan", (angle,)))), (-1, top))
    factors = tuple(over(number(multiple), divisor) for multiple in _MULTIPLES)
    done = multiplied(balance, left, factors)
    if done in [Multiplied(factor, None) for factor in factors]:
        yield Display(rows)
        yield sentences(DividedByCosine(divisor, angle))


_MULTIPLES: Final = (1, 2, 3, 4, 6)
"""By which an equation may be multiplied so that no fraction is left: that is not told."""


def _balance(digits: Digits, step: Step) -> Iterator[Row]:
    """The equation a step starts from; none where it already says what the unknown is."""
    equation = step.equation
    if says(equation, step.unknown):
        return
    row = balance_row(digits, equation)
    first = written_out(digits, equation) if equation.kind == "torque" else None
    if first is None or first == equation.expression:
        yield row
    else:
        yield Row(row.left, "=", (first,))
        yield Row((), "=", row.right)


def says(equation: Equation, unknown: str) -> bool:
    """Whether it is a condition that reads unknown = what is known."""
    if equation.kind != "condition":
        return False
    left, right = (term.magnitude for term in equation.terms)
    return isinstance(left, Name) and left.id == unknown and unknown not in names_in(right)


def balance_row(digits: Digits, equation: Equation) -> Row:
    """Sum of ... = 0, or the condition as stated."""
    if equation.kind == "condition":
        left, right = equation.terms
        return Row((left.magnitude,), "=", (right.magnitude,))
    balance: Formula = (counted(equation), Relation("="), ZERO)
    return Row((balance_of(digits, equation),), "=", balance)


def counted(equation: Equation) -> Expression:
    """Its sum; forces along an axis that are alike in size and sign counted: 2 T for T + T."""
    if equation.kind != "force":
        return equation.expression
    terms = ((term.sign, term.expression(equation.method)) for term in equation.terms)
    return total(
        *(
            (sign, term if often == 1 else times(number(often), term))
            for (sign, term), often in Counter(terms).items()
        )
    )


def _result_rows(digits: Digits, step: Step) -> Iterator[Row]:
    name = digits.case.system.variables[step.unknown].as_name
    yield from rows_of(digits, name, step.expression, step.unknown)


def rows_of(digits: Digits, left: Name, expression: Expression, id: str) -> Iterator[Row]:
    """left = expression = numbers put in = carried result, about the final result."""
    variable = digits.case.system.variables[id]
    value = digits.case.values[id]
    line = line_of(digits, expression, value, variable.dimension, id)
    ending = Row((left,), "=", _ending(digits, id, line.result))
    if digits.final(id).unit is UNITS["turn"]:  # after radians, without its degrees
        ending = Row((left,), "≈", (digits.final(id),))
    if expression == ZERO or isinstance(expression, Number | Root):
        yield ending
        return
    yield from _one_sine(left, expression)
    if (turned := of_a_turned_angle(left, expression)) is not None:
        yield turned
    if isinstance(expression, Call) and expression.function in _DIRECT:
        yield Row((Call(_DIRECT[expression.function], (left,)),), "=", expression.arguments)
    yield Row((left,), "=", (expression,))
    if not lone_number(line.printed):
        yield Row((), "=", (line.printed,))
    between = worked_between(digits, line)
    if between is not None:
        yield Row((), "=", (between,))
    yield replace(ending, left=())


def _one_sine(left: Name, expression: Expression) -> Iterator[Row]:
    """W sin x - Q cos x = P with its left side as one sine, before x = arcsin ... + arctan ..."""
    terms = expression.terms if isinstance(expression, Sum) else ()
    for _, term in terms:
        match term:
            case Call("asin", (ratio,)):
                sign, ratio = _split_sign(ratio)
                shifts = [(-s, t) for s, t in terms if isinstance(t, Call) and t is not term]
                if isinstance(ratio, Quotient) and shifts:
                    sine = Call("sin", (total((1, left), *shifts),))
                    right = ratio.top if sign > 0 else negative(ratio.top)
                    yield Row((times(ratio.bottom, sine),), "=", (right,))


def _split_sign(expression: Expression) -> tuple[int, Expression]:
    if isinstance(expression, Sum) and len(expression.terms) == 1:
        return expression.terms[0]
    return 1, expression


def lone_number(printed: Expression) -> bool:
    """A number, or one with a minus sign: the next line would only repeat it."""
    if isinstance(printed, Sum) and len(printed.terms) == 1:
        return isinstance(printed.terms[0][1], Number)
    return isinstance(printed, Number) or (
        isinstance(printed, Call) and printed.function == "abs" and lone_number(*printed.arguments)
    )


def _ending(digits: Digits, id: str, carried: Number) -> Formula:
    """The carried value and, where it is an answer and has more digits, the rounded one."""
    return rounded_off(carried, digits.final(id)) if digits.ends_rounded(id) else (carried,)


def rounded_off(carried: Number, final: Number) -> Formula:
    """A carried value and the same rounded, which stands alone where nothing differs or is left."""
    alike = carried.unit in (final.unit, None) and carried.value == final.value
    if alike or not (carried.value or final.value):
        return (final,)
    return (carried, Relation("=" if same_amount(carried, final) else "≈"), final)


def worked_between(digits: Digits, line: Line) -> Expression | None:
    """A quotient with its top and bottom worked out, where either was more than one number.

    So are the sides of an angle or of a right triangle.  Its digits, as many on both sides, give
    the printed result; None where a few of them do not.
    """
    printed, result = line.printed, line.result
    near = float(last_place(result.value)) * (result.unit.factor if result.unit else 1.0)
    for guard in digits.guards.attempts(USUAL_GUARD, most_raised=0):
        worked = _parts_worked(digits, printed, guard)
        if worked == printed:
            break
        if abs(float(evaluate(worked, {})) - float(evaluate(result, {}))) <= HALF * near:
            digits.guards.end_line()
            return worked
    digits.guards.leave_line()
    return None


def _parts_worked(digits: Digits, printed: Expression, guard: int) -> Expression:
    match printed:
        case Quotient(top, bottom):
            sides = _one(digits, top, guard), _one(digits, bottom, guard)
            return Quotient(*sides) if all(map(lone_number, sides)) else printed
        case Sum(((sign, Quotient() as term),)):
            return total((sign, _parts_worked(digits, term, guard)))
        case Call("hypot", sides):
            return Call("hypot", tuple(_one(digits, side, guard) for side in sides))
        case Call("atan", (Quotient() as tangent,)):
            return Call("atan", (_parts_worked(digits, tangent, guard),))
        case Call("deg", (Quotient() as turned,)):  # a quotient of numbers is an angle in radians
            figures = digits.convention.figures + 1 + guard  # a digit more than in degrees
            return Number(round_figures(float(evaluate(turned, {})), figures), UNITS["rad"])
        case _:
            return printed


def _one(digits: Digits, printed: Expression, guard: int) -> Expression:
    if lone_number(printed):
        return printed
    dimension = dimension_of(printed, _NO_NAMES)
    if digits.units.unit_of(dimension).dimension != dimension:
        return printed  # kg m, say, has no unit of its own
    value = float(evaluate(printed, {}))
    terms = [abs(float(evaluate(term, {}))) for _, term in terms_of(printed)]
    if abs(value) < _DUST * max(terms):  # only rounding of floats keeps it from zero
        value = 0.0
    return digits.carried(value, dimension, guard)


_DIRECT = {"asin": "sin", "acos": "cos", "atan": "tan"}
_NO_NAMES: Mapping[str, Dimension] = {}
_DUST = 1e-13  # of the largest term
