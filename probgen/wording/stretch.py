"""Shear force and bending moment told along a body as expressions, stretch by stretch."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from probgen.quantities.expression import (
    ZERO,
    Expression,
    Name,
    Number,
    Power,
    names_in,
    positive_first,
    times,
    total,
)
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.rounding import in_full, round_figures
from probgen.quantities.unit import LENGTH
from probgen.statics.internal_forces import Inside, InternalForces
from probgen.statics.stretch import Side, Stretch, stretches
from probgen.statics.system import Kind
from probgen.wording.block import Display, Row
from probgen.wording.facts.diagram import (
    ExpressionsTaken,
    ValuesFollow,
)
from probgen.wording.inside import unit_of
from probgen.wording.passage import Part, sentences
from probgen.working.bodies_used import bodies_used, ids_of
from probgen.working.digits import Digits

SHEAR: Final = Name("?V", "V")
MOMENT: Final = Name("?M", "M")
_LETTERS: Final = ("x", "s", "z", "u")
"""For the distance of a section: the first that no quantity has."""
_NONE: Final = 1e-9
"""Of the largest value along a body: none."""


def stretches_told(
    digits: Digits, found: InternalForces, complete: Mapping[str, float]
) -> Iterator[Part]:
    """V and M on each stretch, by letters and by numbers; none where they cannot be written.

    complete: values of everything, coherent, also of forces the working did not need.
    """
    x, system = place_letter(digits), digits.case.system
    side, written = told_from(digits, found.body, x)
    if not written:
        return
    length = digits.units.unit_of(LENGTH)
    units = (length, unit_of(digits, Inside.SHEAR), unit_of(digits, Inside.MOMENT))
    start = system.body(found.body).outline[0]
    opening = ExpressionsTaken(x, start, side is Side.BEYOND, *units)
    values = tuple(
        (system.variables[id].as_name, digits.rounded(complete[id], digits.unit_of(id)))
        for id in untold(digits, found.body, written)
    )
    follow = (ValuesFollow(values),) if values else ()
    yield sentences(opening, *follow)
    yield Display(tuple(row for each in written for row in _rows(digits, found, each, x)))


def place_letter(digits: Digits) -> Name:
    """The letter for the distance of a section."""
    taken = {label.symbol for label in digits.case.labels.quantities.values()}
    return Name("?x", next((each for each in _LETTERS if each not in taken), "x"))


def told_from(digits: Digits, body: str, x: Name) -> tuple[Side, tuple[Stretch, ...]]:
    """The stretches of a body, written by the side whose forces are known from the working.

    Where both are it is the side before the section.
    """
    system, values = digits.case.system.uncut, digits.case.values
    sides = [(side, stretches(system, values, body, x, side)) for side in Side]
    return min(sides, key=lambda each: len(untold(digits, body, each[1])))


def untold(digits: Digits, body: str, written: Sequence[Stretch]) -> list[str]:
    """The quantities in them that a key has not told of before."""
    held = frozenset[str]().union(
        *(names_in(each) for stretch in written for each in (stretch.shear, stretch.moment))
    )
    system = digits.case.system
    told = {name for name in held if name in digits.case.values or name not in system.variables}
    if body not in ids_of(bodies_used(digits.case.plan)):
        spread = (e for e in system.elements if e.kind is Kind.DISTRIBUTED and e.body == body)
        told -= {id for element in spread for id in element.forces}
    return sorted(held - told)


def _rows(digits: Digits, found: InternalForces, stretch: Stretch, x: Name) -> Iterator[Row]:
    """V and M of a stretch one below the other, behind what x may be."""
    less, middle = Relation("<"), (stretch.low + stretch.high) / 2.0  # at the ends V may jump
    left: Formula = (stretch.start, less, x, less, stretch.end, Relation(":"))
    for of, letter, written in (
        (Inside.SHEAR, SHEAR, positive_first(stretch.shear)),
        (Inside.MOMENT, MOMENT, stretch.moment),
    ):
        numbers = polynomial(digits, found, of, middle, x)
        again = () if numbers == written else (Relation("="), numbers)
        yield Row((*left, letter), "=", (written, *again))
        left = ()


def polynomial(digits: Digits, found: InternalForces, of: Inside, at: float, x: Name) -> Expression:
    """One of the three around a place (m), as numbers times powers of x, in the working's units.

    A figure more than the course's is kept, for they are taken from one another.
    """
    piece = next(each for each in found.pieces if each.start <= at <= each.end)
    length, unit = digits.units.unit_of(LENGTH).factor, unit_of(digits, of).factor
    reach, size = found.length / length, found.size(of) / unit
    terms: list[tuple[int, Expression]] = []
    for power, coefficient in enumerate(piece.curve(of)):
        number = coefficient * length**power / unit
        if abs(number) * reach**power > _NONE * size:
            sign = 1 if number > 0.0 else -1
            factor = (Power(x, power),) if power > 1 else (x,)[:power]
            terms.append((sign, times(_short(digits, abs(number)), *factor)))
    return total(*terms) if terms else ZERO


def _short(digits: Digits, value: float) -> Number:
    """A number without unit, to a figure more than the course's where that says more."""
    own = digits.convention
    short, full = (
        round_figures(value, own.figures + more, own.rounding).normalize() for more in (0, 1)
    )
    return Number(in_full(short if short == full else full))
