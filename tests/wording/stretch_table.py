"""The table of shear forces and bending moments on a page, read back stretch by stretch."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from probgen.problem.problem import Worked
from probgen.quantities.printing import latex
from probgen.quantities.unit import FORCE, LENGTH, TORQUE
from probgen.statics.internal_forces import Inside
from probgen.wording.block import Block, Display, Row
from tests.wording.formula_reader import Reader, World

BEHIND = r":\quad"
"""Between a stretch and what is said of it."""
LETTERS = {"V": (Inside.SHEAR, FORCE), "M": (Inside.MOMENT, TORQUE)}
ROUNDED = 2e-3
"""Of the largest value: what numbers of four figures may leave of one another."""


@dataclass(frozen=True)
class Line:
    """What is said of one of the two on a stretch: its ends, its letter, and its formulas.

    along: the letter of the distance between the ends.
    """

    low: str
    along: str
    high: str
    letter: str
    formulas: tuple[str, ...]


def is_table(block: Block) -> bool:
    return isinstance(block, Display) and BEHIND in latex(block.rows[0].left)


def lines(rows: Sequence[Row]) -> Iterator[Line]:
    ends = ("", "", "")
    for row in rows:
        stretch, _, letter = latex(row.left).rpartition(BEHIND)
        if stretch:
            low, along, high = (part.strip() for part in stretch.split("<"))
            ends = low, along, high
        yield Line(*ends, letter.strip(), tuple(part for part in latex(row.right).split(" = ")))


def check_table(block: Display, own: Worked, names: World) -> int:
    """Every formula of a table is what acts inside the body there; how many there were."""
    (found,) = own.inside
    units, count = own.digits.units, 0
    metre = units.unit_of(LENGTH).factor
    for line in lines(block.rows):
        of, dimension = LETTERS[line.letter]
        low, high = (Reader(end, names).whole().value for end in (line.low, line.high))
        size = found.size(of)
        for share in (0.0, 0.4, 1.0):
            x = low + share * (high - low)
            there = found.at(x, of, before=share == 1.0)
            by_letters = {**names, line.along: (x, (1.0, 0.0, 0.0, 0.0))}
            first = Reader(line.formulas[0], by_letters).whole()
            assert abs(first.value - there) < 1e-9 * size, line
            assert first.value == 0.0 or first.kind == tuple(map(float, dimension)), line
            if len(line.formulas) > 1:
                in_units = {line.along: (x / metre, (0.0, 0.0, 0.0, 0.0))}
                second = Reader(line.formulas[1], in_units).whole()
                assert abs(second.value * units.unit_of(dimension).factor - there) < ROUNDED * size
            count += 1
    return count
