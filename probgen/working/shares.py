"""How a course shares the points of a problem itself: among its parts, or among kinds of steps."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from probgen.statics.plan import Plan
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Form
from probgen.working.criterion import Criterion, FoundAtFirstLimit
from probgen.working.needed import needed_for

GROUPS: Final = {
    "diagrams": ("diagram", "drawing"),
    "torques": ("torque",),
    "forces": ("force", "balance"),
    "conditions": ("condition", "reached", "formula", "integral", "resultant", "limit"),
    "algebra": ("elimination", "substitution"),
    "results": ("result", "magnitude", "direction"),
}
"""What a course calls the kinds of criteria that it shares points among."""


@dataclass(frozen=True, slots=True)
class Share:
    """Points for one of the `GROUPS`."""

    group: str
    points: int


@dataclass(frozen=True, slots=True)
class Shares:
    """parts: points of each thing asked, in order; marks: of kinds of steps, what is not named
    getting none.  At most one of them; both empty leave it to `scheme.WEIGHTS`.
    """

    parts: tuple[int, ...] = ()
    marks: tuple[Share, ...] = ()

    def complaints(self, points: int) -> Iterator[tuple[str, str]]:
        """The field of each sum that is not the problem's points, and the sum as it is."""
        for field, own in (("parts", self.parts), ("marks", [each.points for each in self.marks])):
            if own and sum(own) != points:
                yield field, f"{' + '.join(map(str, own))} = {sum(own)}"


USUAL: Final = Shares()


def of_group(found: Iterable[Criterion], group: str) -> tuple[Criterion, ...]:
    """The criteria of a group, in their order."""
    return tuple(each for each in found if each.kind in GROUPS[group])


def by_part(plan: Plan, found: Sequence[Criterion]) -> tuple[tuple[Criterion, ...], ...]:
    """The criteria of each thing asked: what leads to it and to nothing asked before.

    Equations and diagrams go with the next result; a part for which nothing is left has none.
    """
    finds = plan.system.finds
    needed = [needed_for(plan, find) for find in finds]
    limited = iter(_limited(plan))
    places = [
        next(limited) if each.kind == "limit" else _place(plan, each, needed) for each in found
    ]
    following = len(finds) - 1
    for at in reversed(range(len(found))):
        place = places[at]
        following = following if place is None else place
        places[at] = following
    rows = list(zip(found, places, strict=True))
    return tuple(tuple(each for each, place in rows if place == part) for part in range(len(finds)))


def _limited(plan: Plan) -> Iterator[int]:
    """The places of the parts that ask of limits, in the order of what is marked of them."""
    finds = plan.system.finds
    utmost = [find for find in finds if len(plan.branches_to(find)) > 1]
    holding = [find for find in finds if find.form is Form.HOLDS]
    yield from map(finds.index, (*utmost, *holding))


def _place(plan: Plan, criterion: Criterion, needed: Sequence[frozenset[str]]) -> int | None:
    """The place of the part a criterion is for, None where what follows it tells.

    What is found at the first limit is for the part that asks for it, for another limit may need it
    on the way there.
    """
    if not criterion.quantity:
        return None
    if isinstance(criterion.what, FoundAtFirstLimit):
        asked = ((f.quantity, *Quantity(f.quantity).components) for f in plan.system.finds)
        return next(at for at, ids in enumerate(asked) if criterion.quantity in ids)
    return next((at for at, ids in enumerate(needed) if criterion.quantity in ids), None)
