"""Shear force and bending moment as expressions, valued and held against what is integrated."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.quantities.expression import Name, evaluate
from probgen.quantities.printing import plain
from probgen.statics.cross_check import solve_all, with_definitions
from probgen.statics.internal_forces import Inside, internal_forces
from probgen.statics.stretch import Side, Stretch, stretches
from tests.bank.test_section import (
    BEAM,
    BUILT_IN,
    LOAD,
    MIRRORED,
    ON_TWO,
    SLOPING,
    TURNED,
    read,
    spread,
)

FIND = '[[find]]\nquantity = "R"\nas = "components"\n'
EVEN = spread("A", "B", '"w"', '"w"')
DOWN = LOAD.replace("300", "270")
X = Name("?x", "x")
VALUES = {"L": 6.0, "a": 1.5, "d": 2.5, "F": 900.0, "w": 120.0, "g": 9.8}


def cut(text: str, side: Side) -> tuple[Stretch, ...]:
    """The stretches of a beam whose forces are found by the solver that needs no plan."""
    system = read(text + FIND).system
    given = {id: np.array([value]) for id, value in VALUES.items()}
    found = solve_all(system, given, np.ones((1, len(system.unknowns))))
    known = VALUES | {id: float(found[0, at]) for at, id in enumerate(system.unknowns)}
    values = {id: float(np.asarray(v).flat[0]) for id, v in with_definitions(system, known).items()}
    written = stretches(system, values, "beam", X, side)
    inside = internal_forces(system, values, "beam")
    assert [each.low for each in written] == pytest.approx([each.start for each in inside.pieces])
    for stretch in written:
        for share in (0.2, 0.7):
            x = stretch.low + share * (stretch.high - stretch.low)
            for of, expression in ((Inside.SHEAR, stretch.shear), (Inside.MOMENT, stretch.moment)):
                there = float(evaluate(expression, {**values, "?x": x}))
                assert there == pytest.approx(inside.at(x, of), abs=1e-9 * inside.size(of))
    return written


LOADED = [
    BEAM + ON_TWO + DOWN,
    BEAM + ON_TWO + LOAD + EVEN,
    BEAM + ON_TWO + TURNED + EVEN,
    BEAM + ON_TWO + LOAD + spread("A", "C", '"w"', "0"),
    BEAM + ON_TWO + spread("E", "C", '"w"', '"2*w"'),
    BEAM + BUILT_IN + LOAD + spread("B", "A", "0", '"w"'),
    SLOPING + ON_TWO + LOAD.replace("300", '"25 - 90"'),
    MIRRORED + ON_TWO + DOWN + EVEN,
]


@pytest.mark.parametrize("side", Side)
@pytest.mark.parametrize("text", LOADED)
def test_both_sides_give_what_acts_there(text: str, side: Side) -> None:
    assert len(cut(text, side)) > 1


WRITTEN = [
    (DOWN, Side.BEFORE, [("R_y", "R_y x"), ("R_y - F", "R_y x - F (x - a)")]),
    (DOWN, Side.BEYOND, [("-S + F", "S (L - x) - F (a - x)"), ("-S", "S (L - x)")]),
    (EVEN, Side.BEFORE, [("R_y - w x", "R_y x - w x²/2")]),
    (EVEN, Side.BEYOND, [("-S + w (L - x)", "S (L - x) - w (L - x)²/2")]),
    (
        spread("A", "B", "0", '"w"'),
        Side.BEFORE,
        [("R_y - w x²/(2 L)", "R_y x - w x³/(6 L)")],
    ),
    (
        spread("A", "B", '"w"', "0"),
        Side.BEFORE,
        [("R_y - w x + w x²/(2 L)", "R_y x - w x²/2 + w x³/(6 L)")],
    ),
    (
        spread("A", "C", '"w"', '"w"'),
        Side.BEFORE,
        [("R_y - w x", "R_y x - w x²/2"), ("R_y - Q", "R_y x - Q (x - a/2)")],
    ),
    (
        spread("C", "B", '"w"', '"w"'),
        Side.BEFORE,
        [("R_y", "R_y x"), ("R_y - w (x - a)", "R_y x - w (x - a)²/2")],
    ),
    (TURNED, Side.BEFORE, [("R_y", "R_y x"), ("R_y", "R_y x - C_0")]),
]


@pytest.mark.parametrize(("load", "side", "expected"), WRITTEN)
def test_they_are_written_as_by_hand(
    load: str, side: Side, expected: list[tuple[str, str]]
) -> None:
    written = cut(BEAM + ON_TWO + load, side)
    told = [(plain(each.shear), plain(each.moment)) for each in written]
    assert [tuple(part.replace("−", "-") for part in each) for each in told] == expected


CURVED = EVEN.replace('start = "w"\nend = "w"', 'intensity = "w*(x/L)^2"')


FROM_B = CURVED.replace('from = "A"\nto = "B"', 'from = "B"\nto = "A"')
PART = spread("C", "B", '"w"', '"w"').replace(
    'start = "w"\nend = "w"', 'intensity = "w*(1 - (x/L)^2)"'
)
BY_FORMULA = [CURVED, FROM_B, PART, CURVED + DOWN]


@pytest.mark.parametrize("side", Side)
@pytest.mark.parametrize("load", BY_FORMULA)
def test_a_load_by_a_formula_is_integrated_on_both_sides(load: str, side: Side) -> None:
    assert cut(BEAM + ON_TWO + load, side)


def test_a_load_by_a_formula_is_written_as_by_hand() -> None:
    (written,) = cut(BEAM + ON_TWO + CURVED, Side.BEFORE)
    told = plain(written.shear), plain(written.moment)
    assert told == ("R_y − w x³/(3 L²)", "R_y x − w x⁴/(12 L²)")


@pytest.mark.parametrize("wrong", [{"L": -6.0}, {"a": 6.5}, {"a": -0.5}])
def test_what_is_beyond_the_ends_is_not_written(wrong: dict[str, float]) -> None:
    system = read(BEAM + ON_TWO + DOWN + FIND).system
    values = VALUES | {"R.x": 0.0, "R.y": 1.0, "S": 1.0} | wrong
    assert stretches(system, values, "beam", X, Side.BEFORE) == ()


@pytest.mark.parametrize("load", [DOWN.replace('at = "C"', 'at = "H"'), EVEN.replace('"A"', '"H"')])
def test_what_acts_beside_the_axis_is_not_written(load: str) -> None:
    text = BEAM.replace("[body.beam]", 'H = ["a", "0.2 m"]\n[body.beam]')
    system = read(text + ON_TWO + load + FIND).system
    values = VALUES | {"R.x": 0.0, "R.y": 1.0, "S": 1.0}
    assert stretches(system, values, "beam", X, Side.BEFORE) == ()
