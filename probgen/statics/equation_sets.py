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

from probgen.quantities.expression import UNITY
from probgen.statics.equation import Equation, Lie
from probgen.statics.search import COST, TOGETHER, Field, Move, moves_from

_MOST_TOGETHER: Final = 3
_STEP: Final = 10.0
_AT_ONCE: Final = 3.0
"""A step that says of an unknown force, alone along an axis, that it is zero."""
_ANOTHER_BODY: Final = 3.0
"""What it costs to draw a further free body."""
_FORCE: Final = 0.2
"""And each force on it."""
_FOUND: Final = 0.3
"""What it costs to use an earlier result, which may be wrong."""
_ASKEW: Final = 12.0
"""What it costs to sum forces square to a member, unless that leaves one alone."""

_TERM: Final = 0.1
"""What each term of an equation costs, lest an arm be taken apart where another pivot needs one."""
_SLANT: Final = 0.15
"""And a sine or cosine in it."""

_Moves = frozenset[Move]


def cheap_moves(field: Field, wanted: int) -> list[Move] | None:
    """Moves after which all wanted unknowns (bits) are known; None for no way.

    The wanted are reached one after the other, the nearest first; what is known by then is free.
    What is seen to be zero comes first.
    """
    done: list[Move] = []
    first: list[Move] = []
    known, idle = 0, 0
    while wanted & ~known:
        chosen = _Sets(field, known, frozenset((*first, *done)), idle=idle).nearest(wanted & ~known)
        if chosen is None:
            return None
        for move in _in_order(field, known, chosen):
            known |= _given(move)
            if _finds_idle(field, move, idle):
                first.append(move)
                idle |= _given(move)
            else:
                done.append(move)
    return [*first, *done]


@dataclass(slots=True)
class _Sets:
    """The sets found from what is known; done: the moves made before, which cost nothing.

    sets: by unknown the moves that lead to it; prices: of the moves met so far; idle: the unknowns
    (bits) that are seen to be zero.
    """

    field: Field
    known: int
    done: _Moves
    sets: dict[int, _Moves] = filled(default_factory=dict)
    prices: dict[Move, float] = filled(default_factory=dict)
    idle: int = 0

    def nearest(self, wanted: int) -> _Moves | None:
        """The cheapest set that leads to one of the wanted; None for no way.

        Several equations are taken at once only where single ones lead no further.
        """
        for most in range(1, _MOST_TOGETHER + 1):
            while self._grown(most):
                for place in _bits(wanted):
                    if place in self.sets:
                        return self.sets[place]
        return None

    def _grown(self, most: int) -> bool:
        """Whether an unknown was added: of all that one move more leads to, the cheapest."""
        reached = self.known | sum(1 << place for place in self.sets)
        ways: list[tuple[float, Move, _Moves]] = []
        for move, _ in moves_from(self.field, reached, most):
            self.prices[move] = self._price(move)
            chosen = self._needed(move) | {move}
            ways.append((self._cost(chosen), move, chosen))
        if not ways:
            return False
        _, move, chosen = min(ways, key=lambda way: way[0])
        self.sets |= dict.fromkeys(move.unknowns, chosen)
        if _finds_idle(self.field, move, self.idle):
            self.idle |= _given(move)
        return True

    def _price(self, move: Move) -> float:
        """What a move costs by itself."""
        field, equations = self.field, [self.field.equations[index] for index in move.equations]
        at_once = _finds_idle(field, move, self.idle)
        cost = (_AT_ONCE if at_once else _STEP) + TOGETHER * (len(equations) - 1)
        cost += _FOUND * (_used(field, move) & ~self.idle).bit_count()
        for index, equation in zip(move.equations, equations, strict=True):
            cost += COST[equation.kind] + (field.surcharges[index] if field.surcharges else 0.0)
            cost += _TERM * len(equation.terms)
            cost += _SLANT * sum(term.ratio != UNITY for term in equation.terms)
        if any(map(_is_askew, equations)) and not self._alone(move):
            cost += _ASKEW
        return cost

    def _alone(self, move: Move) -> bool:
        """Whether a move's one equation holds one unknown, but for those that are zero."""
        (index, *others) = move.equations
        return not others and (self.field.holds[index] & ~self.idle).bit_count() == 1

    def _needed(self, move: Move) -> _Moves:
        """The moves that lead to what a move's equations hold beside what it gives."""
        return _Moves().union(
            *(self.sets[place] for place in _bits(_used(self.field, move) & ~self.known))
        )

    def _cost(self, moves: _Moves) -> float:
        drawn, known = _bodies(self.field, moves), _bodies(self.field, self.done)
        fresh = (forces for body, forces in drawn.items() if body not in known)
        diagrams = sum(_ANOTHER_BODY + _FORCE * forces for forces in fresh)
        return sum(self.prices[move] for move in moves) + diagrams


def _is_askew(equation: Equation) -> bool:
    """Whether forces are summed square to a member."""
    return equation.axis is not None and equation.axis.lie is Lie.SQUARE_TO_MEMBER


def _finds_idle(field: Field, move: Move, idle: int) -> bool:
    """Whether a move finds one unknown force alone along an axis, but for those that are zero."""
    (index, *others), (first, *rest) = move.equations, move.unknowns
    equation, held = field.equations[index], field.holds[index]
    alone = not others and not rest and held & ~idle == 1 << first
    return alone and equation.kind == "force" and len(equation.terms) == held.bit_count()


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


def _bodies(field: Field, moves: Iterable[Move]) -> dict[str, int]:
    """How many forces act on each body a balance is written of."""
    equations = (field.equations[index] for move in moves for index in move.equations)
    return {body: len(each.terms) + len(each.silent) for each in equations for body in each.bodies}


def _bits(mask: int) -> list[int]:
    return [place for place in range(mask.bit_length()) if mask >> place & 1]
