"""The resultant of a load by a formula told: the area under it, and where it acts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from probgen.quantities.expression import UNITY, Expression, Name, Quotient, Sum, parts, times
from probgen.quantities.formula import Difference, Integral, Relation
from probgen.quantities.polynomial import Polynomial
from probgen.statics.intensity import curve_of, moments
from probgen.statics.system import Body, Element, Intensity, System
from probgen.wording.block import Display, Row
from probgen.wording.equations import lone_number, rounded_off, worked_between
from probgen.wording.facts.load import LoadHeading, LoadIntegrated
from probgen.wording.passage import Passage, sentences
from probgen.working.bodies_used import ids_of
from probgen.working.digits import Digits
from probgen.working.line import line_of


def integrated(system: System) -> frozenset[str]:
    """The resultants of loads by a formula, and the distances they act at, by their ids."""
    loads = [(e, e.spread.intensity) for e in system.elements if e.spread is not None]
    found = ((element.id, load.centroid.id) for element, load in loads if load is not None)
    return frozenset(id for pair in found for id in pair)


def load_passages(digits: Digits, body: Body, before: Sequence[Body]) -> Iterator[Passage]:
    """A passage for each load by a formula on a body that was not told on a body before."""
    elements = digits.case.system.elements
    told = {each.id for each in elements if any(each.body == one.id for one in before)}
    for element in elements:
        if element.body == body.id and element.id not in told:
            yield from _passage(digits, element)


def loads_asked(digits: Digits, bodies: Sequence[Body]) -> Iterator[Passage]:
    """The same of loads that are asked for, on bodies whose forces the working does not need."""
    system = digits.case.system
    asked = {find.quantity for find in system.finds}
    used = ids_of(bodies)
    told = {element.id for element in system.elements if element.body in used}
    for element in system.uncut.elements:
        curve = element.spread.intensity if element.spread is not None else None
        if curve is not None and element.id not in told and asked & {element.id, curve.centroid.id}:
            yield from _passage(digits, element)


def _passage(digits: Digits, element: Element) -> Iterator[Passage]:
    if element.spread is None or element.spread.intensity is None:
        return
    load, system = element.spread.intensity, digits.case.system
    resultant = system.variables[element.id].as_name
    rows = (*_area(digits, load, resultant), *_place(digits, load, resultant))
    divided = _divided(system, element)
    told = LoadIntegrated(
        (load.letter, Relation("="), load.load),
        load.letter,
        load.along,
        load.origin,
        resultant,
        load.centroid,
        digits.convention.turning,
        element.body if divided else "",
        (load.low, load.high) if divided else None,
    )
    heading = LoadHeading(element.id, told.part)
    yield Passage(heading, (sentences(told), Display(rows)))


def _divided(system: System, element: Element) -> bool:
    """Whether it is a stretch of a load that a section divides, and has a letter of its own."""
    whole = {each.id for each in system.uncut.elements}
    return element.id not in whole


def _area(digits: Digits, load: Intensity, resultant: Name) -> Iterator[Row]:
    """W = integral of w dx, worked out."""
    yield Row((resultant,), "=", (Integral(load.letter, *_limits(load)),))
    yield Row((), "=", (Integral(load.load, *_limits(load)),))
    yield Row((), "=", (_risen(curve_of(load), load),))
    yield Row((), "=", (_definition(digits, resultant),))
    yield from _in_numbers(digits, resultant)


def _place(digits: Digits, load: Intensity, resultant: Name) -> Iterator[Row]:
    """xbar = 1/W times the integral of x w dx, worked out."""
    share, by_x = Quotient(UNITY, resultant), curve_of(load).times_letter()
    plain = Integral(times(load.along, load.letter), *_limits(load))
    yield Row((load.centroid,), "=", (share, plain))
    yield Row((), "=", (share, Integral(by_x.expression, *_limits(load))))
    yield Row((), "=", (share, _risen(by_x, load)))
    force, turning = moments(load)
    if force.single:  # else that is where its definition stops
        yield Row((), "=", (turning.over_name(resultant).factored,))
    yield Row((), "=", (_definition(digits, load.centroid),))
    yield from _in_numbers(digits, load.centroid)


def _risen(curve: Polynomial, load: Intensity) -> Difference:
    return Difference(curve.antiderivative().expression, load.low, load.high)


def _limits(load: Intensity) -> tuple[Name, Expression, Expression]:
    return load.along, load.low, load.high


def _definition(digits: Digits, of: Name) -> Expression:
    definitions = digits.case.plan.definitions
    return next(each.expression for each in definitions if each.variable == of.id)


def _in_numbers(digits: Digits, of: Name) -> Iterator[Row]:
    """Numbers put in, and the result; rounded where it is asked."""
    asked = any(find.quantity == of.id for find in digits.case.system.finds)
    variable = digits.case.system.variables[of.id]
    value = digits.case.values[of.id]
    line = line_of(
        digits, _definition(digits, of), value, variable.dimension, of.id if asked else ""
    )
    if not lone_number(line.printed):
        yield Row((), "=", (line.printed,))
    between = worked_between(digits, line)
    if between is not None and _sums(line.printed):
        yield Row((), "=", (between,))
    yield Row((), "=", rounded_off(line.result, digits.final(of.id)) if asked else (line.result,))


def _sums(printed: Expression) -> bool:
    """Whether there is more in it than a product of numbers."""
    return isinstance(printed, Sum) or any(map(_sums, parts(printed)))
