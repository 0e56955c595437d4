"""Magnitude and direction of a force from its components."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.quantities.expression import Call, Name, Number, Quotient, evaluate
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.rounding import round_figures
from probgen.quantities.unit import ANGLE, DEGREE, FORCE
from probgen.statics.system import Element, Find, Form
from probgen.wording.block import Display, Row
from probgen.wording.facts.ending import ForceActs, OneComponent, ResultantHeading, ResultantIs
from probgen.wording.passage import Part, Passage, sentences
from probgen.wording.sentence import letter
from probgen.working.digits import Digits
from probgen.working.direction import direction_of, quarter_of
from probgen.working.fact import Fact


def resultant_passages(digits: Digits) -> Iterator[Passage]:
    """A passage for each force asked by magnitude and direction."""
    for find in digits.case.system.finds:
        if find.form is Form.MAGNITUDE_AND_DIRECTION:
            yield _resultant(digits, find)


def _resultant(digits: Digits, find: Find) -> Passage:
    case = digits.case
    element = case.system.element(find.quantity)
    force = letter(element.symbol)
    x, y = (case.system.variables[f"{find.quantity}.{axis}"].as_name for axis in "xy")
    if quarter_of(case.values[f"{find.quantity}.direction"]) is None:
        first: Part = Display((*_magnitude(digits, find, element, x, y), *_angle(digits, x, y)))
    else:
        level = case.values[y.id] == 0.0
        zero, other = (y, x) if level else (x, y)
        first = sentences(OneComponent(force, zero, other, level))
    return Passage(ResultantHeading(force), (first, sentences(_outcome(digits, find, element))))


def _magnitude(digits: Digits, find: Find, element: Element, x: Name, y: Name) -> Iterator[Row]:
    size = digits.case.values[f"{find.quantity}.magnitude"]
    root = Call("hypot", (x, y))
    line = digits.line(root, size, FORCE)
    yield Row((letter(element.symbol),), "=", (root, Relation("="), line.printed))
    final = digits.rounded(size, digits.unit_of(x.id))
    carried = line.result
    ending: Formula = (final,) if carried == final else (carried, Relation("→"), final)
    yield Row((), "=", ending)


def _angle(digits: Digits, x: Name, y: Name) -> Iterator[Row]:
    """phi = arctan(|R_y| / |R_x|), the steepness of the force."""
    sizes = [Call("abs", (part,)) for part in (y, x)]
    if digits.convention.direction == "vertical":
        sizes.reverse()
    slope = Call("atan", (Quotient(*sizes),))
    value = float(evaluate(slope, digits.case.values))
    guard = digits.line(slope, value, ANGLE).guard
    printed = Call("atan", (Quotient(*(_size(digits, part, guard) for part in sizes)),))
    final = round_figures(value, digits.convention.figures, digits.convention.rounding)
    yield Row((_letter_of_angle(digits),), "=", (slope,))
    yield Row((), "=", (printed, Relation("="), Number(final, DEGREE)))


def _letter_of_angle(digits: Digits) -> Name:
    """phi, or another letter where the problem has one of its own by that name."""
    taken = {variable.symbol for variable in digits.case.system.variables.values()}
    letter = next(each for each in ("phi", "psi", "omega", "delta") if each not in taken)
    return Name(letter, letter)


def _size(digits: Digits, part: Call, guard: int) -> Number:
    inner = part.arguments[0]
    assert isinstance(inner, Name)
    number = digits.shown(inner.id, guard)
    return Number(abs(number.value), number.unit)


def _outcome(digits: Digits, find: Find, element: Element) -> Fact:
    case = digits.case
    way = direction_of(case.values[f"{find.quantity}.direction"], digits.convention)
    unit = digits.unit_of(f"{find.quantity}.x")
    size = digits.rounded(case.values[f"{find.quantity}.magnitude"], unit)
    if element.kind == "resultant":
        return ResultantIs(letter(element.symbol), size, way)
    return ForceActs(element.id, element.body, size, way)
