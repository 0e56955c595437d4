"""The resultant of a load by a formula told: the area under it, and where it acts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from probgen.quantities.expression import UNITY, Expression, Name, Quotient, times
from probgen.quantities.formula import Difference, Formula, Integral, Relation
from probgen.quantities.polynomial import polynomial
from probgen.statics.intensity import curve_of, moments
from probgen.statics.system import Body, Element, Intensity, System
from probgen.wording.block import Display, Row
from probgen.wording.equations import lone_number, rounded_off
from probgen.wording.facts.load import LoadHeading, LoadIntegrated
from probgen.wording.passage import Passage, sentences
from probgen.working.digits import Digits

_IS: Relation = Relation("=")


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
    told = {element.id for element in system.elements if element.body in {b.id for b in bodies}}
    for element in system.uncut.elements:
        spread = element.spread
        curve = spread.intensity if spread is not None else None
        if curve is not None and {element.id, curve.centroid.id} & asked - told:
            yield from _passage(digits, element)


def _passage(digits: Digits, element: Element) -> Iterator[Passage]:
    if element.spread is None or element.spread.intensity is None:
        return
    load, system = element.spread.intensity, digits.case.system
    resultant = system.variables[element.id].as_name
    rows = (*_area(digits, load, resultant), *_place(digits, load, resultant))
    divided = _divided(system, element)
    told = LoadIntegrated(
        (load.letter, _IS, load.load),
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
    plain = Integral(load.letter, *_limits(load))
    yield Row((resultant,), "=", (plain, _IS, Integral(load.load, *_limits(load))))
    force, _ = moments(load)
    risen = Difference(curve_of(load).antiderivative().expression, load.low, load.high)
    yield Row((), "=", (risen, _IS, force.expression))
    yield Row((), "=", _in_numbers(digits, resultant))


def _place(digits: Digits, load: Intensity, resultant: Name) -> Iterator[Row]:
    """xbar = 1/W times the integral of x w dx, worked out."""
    share = Quotient(UNITY, resultant)
    by_x = curve_of(load).times_letter()
    plain = Integral(times(load.along, load.letter), *_limits(load))
    written = Integral(by_x.expression, *_limits(load))
    yield Row((load.centroid,), "=", (share, plain, _IS, share, written))
    force, turning = moments(load)
    risen = Difference(by_x.antiderivative().expression, load.low, load.high)
    parted = polynomial(resultant, load.along)
    over = turning.over(parted) if parted is not None else None
    between: Formula = (_IS, over.expression) if over is not None and force.single else ()
    yield Row((), "=", (share, risen, *between))
    yield Row(
        (), "=", (_definition(digits, load.centroid), _IS, *_in_numbers(digits, load.centroid))
    )


def _limits(load: Intensity) -> tuple[Name, Expression, Expression]:
    return load.along, load.low, load.high


def _definition(digits: Digits, of: Name) -> Expression:
    definitions = digits.case.plan.definitions
    return next(each.expression for each in definitions if each.variable == of.id)


def _in_numbers(digits: Digits, of: Name) -> Formula:
    """Numbers put in, and the result; rounded where it is asked."""
    asked = any(find.quantity == of.id for find in digits.case.system.finds)
    variable = digits.case.system.variables[of.id]
    value = digits.case.values[of.id]
    line = digits.line(_definition(digits, of), value, variable.dimension, of.id if asked else "")
    shown: Formula = () if lone_number(line.printed) else (line.printed, _IS)
    ending = rounded_off(line.result, digits.final(of.id)) if asked else (line.result,)
    return (*shown, *ending)
