"""The points of a problem shared among its criteria.

Weights follow common practice, no source: setting a balance up is worth more than putting numbers
into it, and diagrams take a third of the points at most.  Points depend on the plan alone, so every
student of a template is marked alike.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum, auto
from itertools import pairwise
from string import ascii_lowercase
from typing import Final

from probgen.statics.plan import Plan
from probgen.working.alike import Work, alike_shares, misfit
from probgen.working.convention import Convention
from probgen.working.criteria import criteria
from probgen.working.criterion import Criterion, halves, solved
from probgen.working.fact import Fact
from probgen.working.shares import USUAL, Shares, by_part, of_group

WEIGHTS: Final = {
    "diagram": 2,
    "torque": 3,
    "balance": 2,
    "elimination": 1,
    "substitution": 1,
    "result": 1,
    "formula": 2,
    "integral": 2,
    "resultant": 1,
    "drawing": 3,
    "force": 1,
    "condition": 1,
    "reached": 1,
    "limit": 1,
    "magnitude": 1,
    "direction": 1,
}
"""What each kind of step is worth beside the others: common practice, no source."""


_BALANCES: Final = ("torque", "balance", "force")
_OPENINGS: Final = (
    *_BALANCES,
    "condition",
    "reached",
    "formula",
    "integral",
    "resultant",
    "limit",
    "magnitude",
    "drawing",
)
"""What begins another line of thought, so that it is no part of the mark before it."""
_ACCURACY: Final = ("result", "magnitude", "direction")


class Earned(StrEnum):
    """Whether points are for how something is worked, for its number, or for both."""

    METHOD = auto()
    ACCURACY = auto()
    BOTH = auto()


@dataclass(frozen=True, slots=True)
class Mark(Fact):
    """Points, and what they are given for: one criterion, or several where points are few.

    part: the letter of what is asked, where each part has points of its own.
    """

    criteria: tuple[Criterion, ...]
    points: int
    part: str = ""

    @property
    def kinds(self) -> tuple[str, ...]:
        return tuple(criterion.kind for criterion in self.criteria)

    @property
    def earned(self) -> Earned:
        """What the points are for: of a number that is not asked, and so has no range in the key
        that it could be judged by, how it is worked out."""
        accurate = {each.kind in _ACCURACY and each.asked for each in self.criteria}
        both = any(each.kind not in _ACCURACY and each.asked for each in self.criteria)
        if both or len(accurate) > 1:
            return Earned.BOTH
        return Earned.ACCURACY if accurate == {True} else Earned.METHOD

    @property
    def quantities(self) -> tuple[str, ...]:
        """The ids of the results it is given for."""
        return tuple(c.quantity for c in self.criteria if c.quantity)


def scheme(
    plan: Plan, convention: Convention, points: int, shares: Shares = USUAL
) -> tuple[Mark, ...]:
    """Whole points for every step, adding up to `points`; shares: the course's own.

    Diagrams have a third at most.  With fewer points than steps, neighbouring steps are marked as
    one; every balance keeps a mark of its own where there are points for all.  Raises ValueError
    when there is no point to give.
    """
    if points < 1:
        raise ValueError(f"{points} points: expected 1 or more")
    found = tuple(criteria(plan, convention))
    if shares.marks:
        found = for_groups(found, [each.group for each in shares.marks])
        rows = ((of_group(found, each.group), each.points) for each in shares.marks)
        return tuple(mark for own, part in rows for mark in _marks(own, part))
    if shares.parts:
        parts = zip(ascii_lowercase, by_part(plan, found), shares.parts, strict=False)
        return tuple(
            replace(mark, part=letter) for letter, own, part in parts for mark in _usual(own, part)
        )
    return _usual(found, points)


def for_groups(found: Iterable[Criterion], groups: Collection[str]) -> tuple[Criterion, ...]:
    """The criteria that kinds of steps are chosen among.

    Where results have points of their own, what comes out of a balance or a condition is one too.
    """
    if "results" not in groups:
        return tuple(found)
    return tuple(half for each in found for half in halves(each) or (each,))


def _usual(found: tuple[Criterion, ...], points: int) -> tuple[Mark, ...]:
    """All the points, of which those of diagrams have a third at most."""
    drawn = tuple(each for each in found if each.kind == "diagram")
    others = found[len(drawn) :]
    most = points // 3 if others else points
    if not drawn or not most:
        return _marks(found, points)
    usual, _ = shared(points, [_weight(drawn), _weight(others)])
    usual = min(max(usual, 1), most)
    alike = range(len(drawn), most + 1, len(drawn))
    ways = [
        (misfit(tuple(share for _, share in groups), tuple(_weight(each) for each, _ in groups)), n)
        for n in alike
        if (rest := _fair(others, points - n))
        for groups in [(*(((each,), n // len(drawn)) for each in drawn), *rest)]
    ]
    near = min(alike, key=lambda n: abs(n - usual), default=usual)
    for_diagrams = min(ways)[1] if ways else near
    own = _shared_out(_groupings(drawn), for_diagrams)
    return (*_all_marks(own), *_marks(others, points - for_diagrams))


Shared = tuple[tuple[tuple[Criterion, ...], int], ...]
"""Criteria that are marked as one, and their points."""


def _marks(found: tuple[Criterion, ...], points: int) -> tuple[Mark, ...]:
    """All the points for some criteria, shared by weight, and alike for like work if that goes."""
    return _all_marks(_fair(found, points) or _shared_out(_groupings(found), points))


def _all_marks(shared_out: Shared) -> tuple[Mark, ...]:
    return tuple(mark for group, share in shared_out for mark in _told_apart(group, share))


def _fair(found: tuple[Criterion, ...], points: int) -> Shared:
    """Like work marked alike, the criteria put together as the points ask for, or a step more or
    less; nothing where that does not go.
    """
    for groupings in (_groupings(found, alike=True), _groupings(found)):
        lengths = [len(groups) for groups in groupings]
        usual = _shared_out(groupings, points)
        at = lengths.index(len(usual)) if usual else 0
        places = [place for place in (at, at - 1, at + 1) if 0 <= place < len(groupings)]
        for place in sorted(places, key=lambda place: _answers_together(groupings[place])):
            groups = groupings[place]
            if _run_together(groups) > _run_together(groupings[at]):
                continue
            shares = alike_shares(points, tuple(_work(group) for group in groups))
            if shares is not None:
                return tuple(zip(groups, shares, strict=True))
    return ()


def _answers_together(groups: Sequence[tuple[Criterion, ...]]) -> int:
    """How many answers have no group of their own."""
    return sum(max(sum(each.asked for each in group) - 1, 0) for group in groups)


def _run_together(groups: Sequence[tuple[Criterion, ...]]) -> int:
    """How many lines of thought have no group of their own."""
    return sum(each.kind in _OPENINGS for group in groups for each in group[1:])


def _work(group: tuple[Criterion, ...]) -> Work:
    asked, number = any(each.asked for each in group), _last_apart(group) is not None
    sets_up = group[0].kind in _OPENINGS and group[0].kind not in _ACCURACY
    balance = any(each.kind in _BALANCES for each in group)
    return Work(_kinds(group), _weight(group), asked, sets_up, balance, number)


def _groupings(
    found: tuple[Criterion, ...], *, alike: bool = False
) -> list[list[tuple[Criterion, ...]]]:
    """The criteria each alone, then ever more neighbours put together.

    alike: whether with two of them all that are like them are.
    """
    groups: list[tuple[Criterion, ...]] = [(each,) for each in found]
    steps = [groups] if groups else []
    while len(groups) > 1:
        groups = _merged(groups, alike)
        steps.append(groups)
    return steps


def _shared_out(groupings: list[list[tuple[Criterion, ...]]], points: int) -> Shared:
    """By weight alone, the criteria put together until each has a point."""
    for groups in groupings:
        shares = shared(points, [_weight(group) for group in groups])
        if not all(shares) and len(groups) <= points and _all_apart(groups):
            shares = _at_least_one(shares)
        if all(shares):
            return tuple(zip(groups, shares, strict=True))
    return ()


def _told_apart(group: tuple[Criterion, ...], points: int) -> Iterator[Mark]:
    """One mark; with points enough one for the method, and one for its number."""
    two = _last_apart(group) if points > 1 else None
    if two is None:
        yield Mark(group, points)
        return
    method, number = two
    yield Mark(method, points - 1)
    yield Mark(number, 1)


def _last_apart(
    group: tuple[Criterion, ...],
) -> tuple[tuple[Criterion, ...], tuple[Criterion, ...]] | None:
    """How something is worked, and what comes out; of one balance what follows it."""
    if len(group) == 1:
        two = halves(group[0])
        return two and ((two[0],), (two[1],))
    written = [each.kind in _BALANCES for each in group]
    if written == [True, *[False] * (len(group) - 1)]:
        return group[:1], group[1:]
    return (group[:-1], group[-1:]) if group[-1].kind in _ACCURACY and not any(written) else None


def _all_apart(groups: Sequence[tuple[Criterion, ...]]) -> bool:
    """Whether no neighbours belong together."""
    return all(any(_apart(*pair)) for pair in pairwise(groups))


def _apart(one: tuple[Criterion, ...], other: tuple[Criterion, ...]) -> tuple[bool, bool, bool]:
    """Why neighbours should have marks of their own: two balances; two thoughts, or a law or a
    comparison and its number; two answers.

    A limit that is supposed to be reached is data for the balance after it, and no thought alone.
    """
    answers = sum(each.asked for each in (*one, *other))
    law = one[-1].kind in ("condition", "limit") and other[0].kind in _ACCURACY
    thought = other[0].kind in _OPENINGS and one[-1].kind != "reached"
    return _two_balances(one, other), law or thought, answers > 1


def _two_balances(one: tuple[Criterion, ...], other: tuple[Criterion, ...]) -> bool:
    return all(any(each.kind in _BALANCES for each in group) for group in (one, other))


def _at_least_one(shares: list[int]) -> list[int]:
    """Each a point, taken from those that have most."""
    shares = list(shares)
    while 0 in shares:
        shares[shares.index(max(shares))] -= 1
        shares[shares.index(0)] += 1
    return shares


def shared(points: int, weights: Sequence[int]) -> list[int]:
    """Whole points in proportion to the weights, by largest remainders; ties go to the first."""
    whole = sum(weights)
    shares = [points * weight // whole for weight in weights]
    rest = sorted(range(len(weights)), key=lambda i: -(points * weights[i] % whole))
    for place in rest[: points - sum(shares)]:
        shares[place] += 1
    return shares


def _weight(group: tuple[Criterion, ...]) -> int:
    return sum(map(_worth, group))


def _worth(criterion: Criterion) -> int:
    """An answer counts beside the balance or the condition that is solved for it."""
    answer = WEIGHTS["result"] if criterion.asked and solved(criterion) else 0
    return WEIGHTS[criterion.kind] + answer


def _merged(groups: list[tuple[Criterion, ...]], alike: bool) -> list[tuple[Criterion, ...]]:
    """Two neighbours made one that belong together, or least apart, of least weight.

    alike: and with them all neighbours like them that belong together.
    """

    def cost(place: int) -> tuple[bool, bool, bool, int, int]:
        one, other = groups[place], groups[place + 1]
        answers = all(each.asked and each.kind in _ACCURACY for each in (*one, *other))
        later = -place if answers else 0  # the one asked first keeps a mark of its own
        return *_apart(one, other), _weight(one) + _weight(other), later

    at = min(range(len(groups) - 1), key=cost)
    kinds = _kinds(groups[at]), _kinds(groups[at + 1])
    made: list[tuple[Criterion, ...]] = []
    place = 0
    while place < len(groups):
        pair = groups[place : place + 2]
        same = alike and len(pair) == 2 and (_kinds(pair[0]), _kinds(pair[1])) == kinds
        if place == at or (same and place + 1 != at and not any(_apart(*pair))):
            made.append(pair[0] + pair[1])
            place += 2
        else:
            made.append(pair[0])
            place += 1
    return made


def _kinds(group: tuple[Criterion, ...]) -> tuple[str, ...]:
    return tuple(each.kind for each in group)
