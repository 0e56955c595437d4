"""For each unknown a cheap set of equations that leads to it, where orders are too many to try.

The exact search looks at sets of known quantities, of which a truss has thousands.  Here every
unknown keeps one set of moves: an equation and what its other unknowns need, shared moves counted
once.  Unknowns are settled from the cheapest on, as in Dijkstra's method.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from dataclasses import field as filled
from typing import Final

from probgen.statics.equation import Equation, Lie
from probgen.statics.search import MOST_TOGETHER, Field, Move, moves_from

_ANOTHER_BODY: Final = 3.0
"""What it costs to draw a further free body, where a step costs about ten."""
_ASKEW: Final = 1.5
"""What it costs to sum forces square to a member, unless that leaves one alone."""

_TERM: Final = 0.1
"""And each term of an equation, lest an arm be taken apart where another pivot needs only one."""

_Moves = frozenset[Move]


def cheap_moves(field: Field, wanted: int) -> list[Move] | None:
    """Moves after which all wanted unknowns (bits) are known; None for no way.

    The wanted are reached one after the other, the nearest first; what is known by then is free.
    """
    done: list[Move] = []
    known = 0
    while wanted & ~known:
        chosen = _Sets(field, known, frozenset(done)).nearest(wanted & ~known)
        if chosen is None:
            return None
        for move in _in_order(field, known, chosen):
            done.append(move)
            known |= _given(move)
    return done


@dataclass(slots=True)
class _Sets:
    """The sets found from what is known; done: the moves made before, which cost nothing.

    sets: by unknown the moves that lead to it; prices: of the moves met so far.
    """

    field: Field
    known: int
    done: _Moves
    sets: dict[int, _Moves] = filled(default_factory=dict)
    prices: dict[Move, float] = filled(default_factory=dict)

    def nearest(self, wanted: int) -> _Moves | None:
        """The cheapest set that leads to one of the wanted; None for no way.

        Several equations are taken at once only where single ones lead no further.
        """
        for most in range(1, MOST_TOGETHER + 1):
            while self._grown(most):
                for place in _bits(wanted):
                    if place in self.sets:
                        return self.sets[place]
        return None

    def _grown(self, most: int) -> bool:
        """Whether an unknown was added: of all that one move more leads to, the cheapest."""
        reached = self.known | sum(1 << place for place in self.sets)
        ways: list[tuple[float, Move, _Moves]] = []
        for move, price in moves_from(self.field, reached, most):
            equations = [self.field.equations[index] for index in move.equations]
            self.prices[move] = price + sum(map(_beside, equations))
            chosen = self._needed(move) | {move}
            ways.append((self._cost(chosen), move, chosen))
        if not ways:
            return False
        _, move, chosen = min(ways, key=lambda way: way[0])
        self.sets |= dict.fromkeys(move.unknowns, chosen)
        return True

    def _needed(self, move: Move) -> _Moves:
        """The moves that lead to what a move's equations hold beside what it gives."""
        return _Moves().union(
            *(self.sets[place] for place in _bits(_used(self.field, move) & ~self.known))
        )

    def _cost(self, moves: _Moves) -> float:
        fresh = _bodies(self.field, moves) - _bodies(self.field, self.done)
        return sum(self.prices[move] for move in moves) + _ANOTHER_BODY * len(fresh)


def _beside(equation: Equation) -> float:
    """What an equation costs beside its step."""
    cost = _TERM * len(equation.terms)
    if equation.axis is not None and equation.axis.lie is Lie.SQUARE_TO_MEMBER:
        cost += _ASKEW if len(equation.terms) > 1 else 0.0
    return cost


def _in_order(field: Field, known: int, moves: _Moves) -> Iterator[Move]:
    """The moves so that each comes after those it needs, else as the equations stand."""
    waiting = sorted(moves, key=lambda move: move.equations)
    while waiting:
        ready = next(move for move in waiting if not _used(field, move) & ~known)
        waiting.remove(ready)
        known |= _given(ready)
        yield ready


def _used(field: Field, move: Move) -> int:
    """What a move's equations hold (bits) beside what it gives."""
    held = 0
    for index in move.equations:
        held |= field.holds[index]
    return held & ~_given(move)


def _given(move: Move) -> int:
    return sum(1 << place for place in move.unknowns)


def _bodies(field: Field, moves: Iterable[Move]) -> set[str]:
    return {b for move in moves for index in move.equations for b in field.equations[index].bodies}


def _bits(mask: int) -> list[int]:
    return [place for place in range(mask.bit_length()) if mask >> place & 1]
