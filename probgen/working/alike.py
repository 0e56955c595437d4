"""Points shared so that like work earns alike, as far as whole points go."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import ceil, floor
from typing import Final


@dataclass(frozen=True, slots=True)
class Work:
    """What a mark would be given for.

    kinds: as in `scheme.WEIGHTS`; weight: of all of them; asked: whether it gives an answer.
    sets_up: whether it begins a line of thought; balance: whether that is one of forces or torques.
    number: whether of several points the last is for what comes out.
    """

    kinds: tuple[str, ...]
    weight: int
    asked: bool
    sets_up: bool
    balance: bool
    number: bool

    def method(self, points: int) -> int:
        """How many of its points are for its method, where it has one."""
        return points - 1 if self.number and points > 1 else points


@cache
def alike_shares(points: int, works: tuple[Work, ...]) -> tuple[int, ...] | None:
    """Whole points for each, in proportion to the weights as nearly as goes, alike for like work,
    and never fewer for more work; None where whole points do not go so.

    What gives an answer may have one point more, for its number.
    """
    classes = tuple(dict.fromkeys(works))
    counts = tuple(works.count(each) for each in classes)
    whole = sum(each.weight for each in works)
    due = tuple(Fraction(points * each.weight, whole) for each in classes)
    found = min(
        _ways(points, classes, counts, due, ()),
        key=lambda way: _misfit(way, counts, due),
        default=None,
    )
    return None if found is None else tuple(found[classes.index(each)] for each in works)


def misfit(shares: tuple[int, ...], weights: tuple[int, ...]) -> Fraction:
    """How far points are from being in proportion to the weights: the sum of squares."""
    points, whole = sum(shares), sum(weights)
    due = tuple(Fraction(points * weight, whole) for weight in weights)
    return _misfit(shares, (1,) * len(shares), due)


def _misfit(
    shares: tuple[int, ...], counts: tuple[int, ...], due: tuple[Fraction, ...]
) -> Fraction:
    rows = zip(shares, counts, due, strict=True)
    return sum((count * (share - fair) ** 2 for share, count, fair in rows), Fraction(0))


def _ways(
    points: int,
    classes: tuple[Work, ...],
    counts: tuple[int, ...],
    due: tuple[Fraction, ...],
    chosen: tuple[int, ...],
) -> Iterator[tuple[int, ...]]:
    """The points of one work of each class, in their order, that make up all the points."""
    place = len(chosen)
    if place == len(classes):
        if points == 0:
            yield chosen
        return
    least = sum(counts[place + 1 :])
    near = floor(due[place])
    most = near + 2 if classes[place].sets_up else max(1, ceil(due[place]))
    for share in range(max(1, near - 1), most + 1):
        left = points - share * counts[place]
        others = zip(classes[:place], chosen, strict=True)
        if left >= least and all(_fair(classes[place], share, *other) for other in others):
            yield from _ways(left, classes, counts, due, (*chosen, share))


def _fair(one: Work, share: int, other: Work, its: int) -> bool:
    """Whether two works with these points are treated alike."""
    if one.weight == other.weight and _like(one.kinds) == _like(other.kinds):
        asked = {one.asked: share, other.asked: its}
        more = len(asked) == 2 and (asked[False], asked[True]) == (1, 2)
        return share == its or more
    if one.sets_up and other.sets_up and _like(one.kinds[:1]) == _like(other.kinds[:1]):
        return one.method(share) == other.method(its)
    if _rank(one) == _rank(other):
        return True
    if _rank(one) < _rank(other):
        one, share, other, its = other, its, one, share
    if not other.sets_up:
        return share >= its
    alone = one.weight == other.weight and share < its
    return one.method(share) >= other.method(its) and not alone


def _rank(work: Work) -> tuple[int, bool, bool]:
    """Of more weight first, then balances, then what begins a line of thought."""
    return work.weight, work.balance, work.sets_up


_ALIKE: Final = {"direction": "magnitude", "force": "balance"}


def _like(kinds: tuple[str, ...]) -> tuple[str, ...]:
    """Kinds of which none is more work than the other: a magnitude and a direction, forces that
    balance whether or not they give something at once.
    """
    return tuple(_ALIKE.get(each, each) for each in kinds)
