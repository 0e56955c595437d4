"""A distributed load by a formula: intensity = "w_0*(x/L)^2", x from its first point along it.

Its resultant is the area under it, W = integral of w dx, at the distance xbar = (integral of x w
dx)/W, where it has the torque of the load; both are exact for polynomials.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import count
from random import Random
from typing import Final

import numpy as np

from probgen.bank.bounds import bounds
from probgen.bank.labels import Called, Coined, Label, Sort
from probgen.bank.situation import Situation
from probgen.input.table import Table
from probgen.quantities.expression import ZERO, Expression, Name, Quotient, Sum, evaluate, names_in
from probgen.quantities.polynomial import HIGHEST, polynomial
from probgen.quantities.unit import LENGTH, METRE, NEWTON, STIFFNESS
from probgen.statics.intensity import curve_of, moments
from probgen.statics.system import Intensity, Link, Role, Spread, Variable

ALONG: Final = Name("x", "x")
"""The distance along a load."""
_ALONG: Final = Label(ALONG.symbol, Coined(Sort.ALONG_LOAD))
_SIZES: Final = ("w", "q", "p")
"""What the size of a load at one place is called."""
_TRIED: Final = 24  # draws within the bounds of what is given
_PLACES: Final = 65  # along a load
_NONE: Final = 1e-6  # of its largest value
_KNOWN: Final = (Role.GIVEN, Role.DERIVED, Role.CONSTANT)


def read_intensity(row: Table, situation: Situation, line: Link, name: Called) -> Intensity | None:
    """The load by a formula along a line; None after a fault.

    The centroid is named where the resultant is declared.
    """
    scope = situation.scope
    text = row.content.get("intensity")
    before = len(row.faults.found)
    own = scope.labels.get(ALONG.id) == _ALONG
    if not own and (ALONG.id in scope.names or ALONG.symbol in scope.symbols):
        mend = "x is the distance along the load; rename the quantity x"
        row.fault("intensity", text, "a formula in x alone", mend)
        return None
    variable = Variable(ALONG, LENGTH, METRE, Role.DEFINED)
    inside = replace(scope, variables={**scope.variables, ALONG.id: variable})
    load = inside.expression(row, "intensity", STIFFNESS)
    read = polynomial(load, ALONG)
    held = (names_in(load) | names_in(line.length)) - {ALONG.id}
    open_ = [id for id in held if id in scope.variables and scope.variables[id].role not in _KNOWN]
    if len(row.faults.found) > before or not scope.whole:
        return None
    if read is None:
        expected = f"sums, products and whole powers of x, up to x^{HIGHEST}"
        row.fault("intensity", text, expected, "a sine or a root of x is not integrated")
    elif not read.degree:
        row.fault("intensity", text, "a formula in x", 'the same all along is load = "..."')
    elif open_:
        expected = "a formula and a length of given quantities alone"
        row.fault("intensity", text, expected, f"{', '.join(sorted(open_))} is to be found")
    elif _always_turns(situation, load, line):
        expected = "a load that is nowhere below zero along its length"
        row.fault("intensity", text, expected, "split it where it changes its sign")
    else:
        scope.labels[ALONG.id] = _ALONG
        letter = _free(situation, _letters())
        scope.labels[letter.id] = Label(letter.symbol, Coined(Sort.INTENSITY, name))
        start = str(row.content.get("from"))
        return Intensity(load, ALONG, letter, start, ZERO, line.length, ALONG)
    return None


def _always_turns(situation: Situation, load: Expression, line: Link) -> bool:
    """Whether the load is below zero somewhere, whatever is drawn."""
    known = situation.scope.bounds
    held = sorted((names_in(load) | names_in(line.length)) - {ALONG.id})
    chance = Random("turns")
    drawn = [{id: chance.uniform(*known[id]) for id in held} for _ in range(_TRIED)]
    for values in drawn:
        along = np.linspace(0.0, float(evaluate(line.length, values)), _PLACES)
        sizes = np.broadcast_to(evaluate(load, {**values, ALONG.id: along}), along.shape)
        if not sizes.min() < -_NONE * np.abs(sizes).max():
            return False
    return True


def declare_resultant(
    row: Table, situation: Situation, symbol: str, name: Called, load: Intensity
) -> tuple[Name, Intensity]:
    """Declares the resultant of a load between its ends, and the distance it acts at."""
    force, turning = moments(load)
    called = Coined(Sort.RESULTANT, name)
    resultant = situation.defined(row, symbol, force.factored, NEWTON, called)
    place = (turning.over(force) or turning.over_name(resultant)).factored
    if isinstance(place, Sum) and not force.single:
        place = Quotient(turning.expression, resultant)
    letter = _free(situation, _places())
    centroid = situation.defined(row, letter.id, place, METRE, Coined(Sort.CENTROID, name))
    known = situation.scope.bounds
    known[centroid.id] = bounds(load.low, known)[0], bounds(load.high, known)[1]
    return resultant, replace(load, centroid=centroid)


def spread_along(start: str, line: Link, load: Intensity) -> Spread:
    """The load as it lies, with its sizes at both ends."""
    first, last = (curve_of(load).at(place).expression for place in (load.low, load.high))
    return Spread(start, line, first, last, load)


def _free(situation: Situation, names: Iterator[str]) -> Name:
    """The first letter that nothing else has."""
    scope = situation.scope
    taken = scope.symbols | situation.letters | scope.names.keys() | situation.points.keys()
    free = next(name for name in names if name not in taken)
    return Name(free, free)


def _letters() -> Iterator[str]:
    yield from _SIZES
    yield from (f"w_{n}" for n in count(1))


def _places() -> Iterator[str]:
    yield "xbar"
    yield from (f"xbar_{n}" for n in count(1))
