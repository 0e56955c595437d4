"""Cheap sets of equations beside the exact search, where that still can look at all orders."""

from __future__ import annotations

import pytest

from probgen.statics.equation_sets import cheap_moves
from probgen.statics.search import Field, Move, shortest
from tests.statics.test_search import condition, field

# Equations, how many unknowns there are, and which are wanted (bits).
SMALL = [
    (["a*x0 - b"], 1, 0b1),
    (["x0 + x1 - a", "a*x0 - b"], 2, 0b10),
    (["x0 + x1 - a", "a*x0 - b"], 2, 0b11),
    (["x0 - a", "x1 - x0", "x2 - x1", "x2 + x3 - b", "x3 - a*x0"], 4, 0b1000),
    (["x0 + x1 - a", "x0 - x1 - b"], 2, 0b01),
]


def spent(on: Field, moves: list[Move]) -> int:
    return len({index for move in moves for index in move.equations})


@pytest.mark.parametrize(("texts", "unknowns", "wanted"), SMALL)
def test_it_takes_no_more_equations_than_the_exact_search(
    texts: list[str], unknowns: int, wanted: int
) -> None:
    on = field(*map(condition, texts), unknowns=unknowns)
    exact, found = shortest(on, wanted), cheap_moves(on, wanted)
    assert exact is not None
    assert found is not None
    assert spent(on, found) == spent(on, exact)


def test_each_move_comes_after_those_it_needs() -> None:
    on = field(*map(condition, ["x2 - x1 - x0", "x1 - a*x0", "x0 - a"]), unknowns=3)
    moves = cheap_moves(on, 0b100)
    assert moves is not None
    assert [move.unknowns for move in moves] == [(0,), (1,), (2,)]


def test_what_is_shared_is_counted_once() -> None:
    """x3 through x1 and x2, which both need x0, takes four equations; x4's own way takes five."""
    texts = ["x0 - a", "x1 - a*x0", "x2 - b*x0", "x3 - x1 - x2"]
    texts += ["x5 - b", "x6 - a*x5", "x7 - b*x6", "x4 - x7 - a", "x3 - x4"]
    moves = cheap_moves(field(*map(condition, texts), unknowns=8), 0b1000)
    assert moves is not None
    assert sorted(move.unknowns for move in moves) == [(0,), (1,), (2,), (3,)]


def test_what_is_known_for_one_wanted_is_free_for_the_next() -> None:
    texts = ["x0 - a", "x1 - a*x0", "x2 - b*x1", "x3 - b", "x4 - x3 - a", "x2 - x4"]
    moves = cheap_moves(field(*map(condition, texts), unknowns=5), 0b00110)
    assert moves is not None
    assert [move.unknowns for move in moves] == [(0,), (1,), (2,)]


def test_a_further_free_body_costs_something() -> None:
    """Both ways take two equations; one stays with the body that is drawn already."""
    equations = [
        condition("x0 - a", "force", ("one",)),
        condition("x1 - a*x0", "force", ("other",)),
        condition("x1 - b*x0", "force", ("one",)),
    ]
    moves = cheap_moves(field(*equations, unknowns=2), 0b10)
    assert moves == [Move((0,), (0,)), Move((2,), (1,))]


def test_no_way() -> None:
    assert cheap_moves(field(condition("x0 + x1 - a")), 0b01) is None
