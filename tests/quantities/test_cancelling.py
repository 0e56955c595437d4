"""Quotients cancelled as one does it by hand, without changing a value."""

from collections.abc import Iterator

import pytest

from probgen.quantities.cancelling import cancelled
from probgen.quantities.expression import (
    Call,
    Expression,
    Lump,
    Name,
    Power,
    Quotient,
    Sum,
    evaluate,
    negative,
    number,
    over,
    parts,
    times,
    total,
)
from probgen.quantities.printing import plain

W, P, L, D, H, A = (Name(n, n) for n in ("W", "P", "L", "d", "h", "a"))
COS, SIN = Call("cos", (A,)), Call("sin", (A,))
VALUES = {"W": 11.0, "P": 5.0, "L": 3.7, "d": 1.3, "h": 0.9, "a": 20.0}


def part(count: int, of: Expression, below: int = 1) -> Expression:
    """A lever arm that is printed as one number."""
    return Lump(over(times(number(count), of), number(below)))


SLANT = Lump(Call("hypot", (D, H)))
MEAN = Lump(over(times(L, total((1, D), (1, H))), times(number(3), D)))

CASES: list[tuple[Expression, str]] = [
    (Quotient(times(W, part(1, L, 2), COS), Lump(L)), "W cos a/2"),
    (Quotient(times(P, part(2, L)), part(3, L)), "2 P/3"),
    (Quotient(times(P, part(2, L)), part(4, L)), "P/2"),
    (Quotient(times(W, Lump(L), SIN), part(2, L)), "W sin a/2"),
    (Quotient(times(P, MEAN), Lump(L)), "P (d + h)/(3 d)"),
    (Quotient(total((1, times(W, part(3, L, 4))), (1, times(P, part(1, L, 4)))), Lump(L)),
     "(3 W + P)/4"),
    (Quotient(total((1, times(W, part(1, L, 2))), (-1, times(P, Lump(L)))), times(Lump(L), SIN)),
     "(W − 2 P)/(2 sin a)"),
    (Quotient(times(W, part(1, L, 2), Quotient(D, SLANT)), SLANT), "W (L/2) d/(d² + h²)"),
    (Quotient(times(W, Quotient(D, L)), times(Lump(L), SIN)), "W d/(L² sin a)"),
    (Quotient(times(W, Quotient(D, SLANT)), Quotient(H, SLANT)), "W d/h"),
    (negative(Quotient(times(W, part(1, L, 2)), Lump(L))), "−W/2"),
    (Quotient(Power(W, 2), times(number(2), W, P)), "W/(2 P)"),
    (Quotient(times(P, W), times(number(2), Power(W, 2))), "P/(2 W)"),
    (Quotient(times(W, Lump(times(Power(D, -1), L))), Lump(L)), "W/d"),
    (Quotient(times(W, L), Lump(times(Power(D, -1), L))), "W d"),
    (Quotient(times(W, Lump(times(number("0.8"), L))), Lump(L)), "0.8 W"),
    (Quotient(times(W, part(1, L, 2)), total(
        (1, times(part(1, L, 2), Quotient(H, SLANT))), (1, times(part(1, H, 2), Quotient(L, SLANT)))
    )), "W/(2 (h/√(d² + h²)))"),
]  # fmt: skip
KEPT: list[Expression] = [
    Quotient(total((1, times(W, part(1, L, 2))), (-1, times(P, Lump(D)))), Lump(L)),
    Quotient(times(W, part(1, L, 2)), Lump(D)),
    Quotient(times(W, Quotient(D, SLANT)), Lump(L)),
    times(W, part(1, L, 2)),
]


@pytest.mark.parametrize(("value", "written"), CASES)
def test_what_is_shared_is_left_out(value: Expression, written: str) -> None:
    found = cancelled(value)
    assert plain(found) == written
    assert evaluate(found, VALUES) == pytest.approx(float(evaluate(value, VALUES)))


def test_a_slant_that_is_left_stays_one_number_as_its_neighbours_do() -> None:
    """(P sin a) L cos a/s + W cos a sin a over L cos a: of the first, L and cos a are gone."""
    first = times(Lump(times(P, SIN)), Quotient(times(L, COS), SLANT))
    found = cancelled(Quotient(total((1, first), (1, times(W, L, COS, SIN))), times(L, COS)))
    assert isinstance(found, Sum)
    assert SLANT in list(_within(found))


def _within(expression: Expression) -> Iterator[Expression]:
    yield expression
    for each in parts(expression):
        yield from _within(each)


@pytest.mark.parametrize("value", KEPT)
def test_what_shares_nothing_stays_as_it_is_written(value: Expression) -> None:
    assert cancelled(value) is value
