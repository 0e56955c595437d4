"""The largest bending moment in a straight body and its place, as things asked.

    [[find]]
    largest_moment = "beam"
    between = ["C", "B"]         the shear force passes through zero between these two points
    from = "A"                   the place is told by its distance from here

The section lies where the moment is largest, so that plan, solution and proof need to know no more:
between two points its distance is one more unknown, and no shear force is bared; `at = "C"` lays it
at a load, a support or an end, whose distance is known.  Which of these it is belongs to the
working, so it has to be the same in all draws: the proof refuses a draw in which the moment is
larger elsewhere (`statics.largest_moment`).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from probgen.bank.bounds import bounds, sign_of
from probgen.bank.direction import turned
from probgen.bank.labels import BodyNamed, Coined, Reason, Sort
from probgen.bank.points import read_point
from probgen.bank.scope import SYMBOL_EXPECTED, is_symbol
from probgen.bank.section import Cut, Part, axis_of, keep, part_left
from probgen.bank.situation import Situation
from probgen.input.fault import nearest, one_of
from probgen.input.table import Table
from probgen.quantities.expression import ZERO, Expression
from probgen.quantities.like_terms import collected_sum
from probgen.quantities.unit import METRE
from probgen.statics.system import Body, Find, Form, LargestMoment, Link

_BODY: Final = "largest_moment"
_SIDES: Final = ("before", "after")


@dataclass(frozen=True, slots=True)
class _Letters:
    moment: str
    place: str


def read_largest_moment(row: Table, situation: Situation) -> list[Find]:
    """The moment and its distance from a point, both asked; nothing after a fault."""
    known = [body.id for body in situation.bodies if not body.part_of]
    body = next((b for b in situation.bodies if b.id == row.word(_BODY, known)), None)
    letters = _Letters(
        _letter(row, situation, "symbol", "M_max"), _letter(row, situation, "place", "x_m")
    )
    at = read_point(row, "at", situation.points) if row.has("at") else ""
    between = row.texts("between") if row.has("between") else ()
    just = row.word("just", _SIDES) if row.has("just") else ""
    origin = read_point(row, "from", situation.points) if row.has("from") else ""
    if row.has("at") == row.has("between") and not row.faults.found:
        expected = "the place of the largest moment: at a point, or between two"
        row.fault("between", None, expected, 'write between = ["C", "B"], or at = "C"')
    _check_points(row, between, situation)
    if body is None or row.faults.found:
        situation.scope.whole = False
        return []
    made = _Place(row, situation, body, letters, origin or body.outline[0], just)
    laid = made.at(at) if at else made.between((between[0], between[1]))
    if laid is None or row.faults.found:
        situation.scope.whole = False
        return []
    situation.largest.append(laid)
    return [Find(laid.moment, Form.VALUE), Find(laid.place, Form.VALUE)]


def _letter(row: Table, situation: Situation, key: str, usual: str) -> str:
    """A letter of its own for what is asked."""
    symbol = row.text(key, usual)
    taken = situation.scope.symbols | situation.scope.variables.keys() | situation.points.keys()
    if not is_symbol(symbol):
        row.fault(key, symbol, SYMBOL_EXPECTED)
    elif symbol in taken:
        row.fault(key, symbol, "a symbol that nothing else has", f'write {key} = "..."')
    return symbol


def _check_points(row: Table, between: tuple[str, ...], situation: Situation) -> None:
    if row.has("between") and len(between) != 2 and not row.faulty("between"):
        row.fault("between", list(between), "two points, in their order along the body")
    for place, name in enumerate(between):
        if name not in situation.points:
            known = list(situation.points)
            expected = one_of(known, "the points ")
            row.fault(f"between[{place}]", name, expected, nearest(name, known))


@dataclass(frozen=True, slots=True)
class _Place:
    """Where the section through a body is laid, told from a point on it."""

    row: Table
    situation: Situation
    body: Body
    letters: _Letters
    origin: str
    just: str

    def at(self, point: str) -> LargestMoment | None:
        """At a point of the template: its distance is worked out from the data."""
        cut = self._cut(point)
        if cut is None:
            return None
        place, start = self._seen(cut, point, "at"), self._seen(cut, self.origin, "from")
        if place is None or start is None:
            return None
        cut = replace(cut, place=place)
        gap = collected_sum((1, place), (-1, start))
        sign = sign_of(gap, self.situation.scope.bounds)
        if gap == ZERO or not sign:
            expected = "a point on one side of the largest moment in all draws"
            self.row.fault("from", self.origin, expected)
            return None
        kept = self._kept(cut)
        if self.row.faults.found or kept is None:
            return None
        letters = {"axial": f"N_{point}", "shear": f"V_{point}"}
        self._keep(cut, kept, letters)
        far = gap if sign > 0 else collected_sum((1, start), (-1, place))
        self.situation.defined(self.row, self.letters.place, far, METRE, self._called)
        self.situation.reasons[self.letters.place] = Reason.LARGEST_MOMENT
        return self._found(point, ())

    def between(self, ends: tuple[str, str]) -> LargestMoment | None:
        """Between two points: its distance is one more unknown, and no shear force acts there."""
        cut = self._cut("")
        if cut is None:
            return None
        low, high = (self._seen(cut, end, "between") for end in ends)
        start = self._seen(cut, self.origin, "from")
        if low is None or high is None or start is None:
            return None
        way = self._way(low, high, start, ends)
        if not way:
            return None
        first, last = (low, high) if way > 0 else (high, low)
        letter = self._unknown(
            cut.length, *(collected_sum((way, end), (-way, start)) for end in (first, last))
        )
        direction = cut.along if way > 0 else turned(cut.along, 180)
        links = (*self.situation.points[self.origin].links, Link(letter, direction))
        at = self.situation.add_point("X", links)
        place = collected_sum((1, start), (way, letter))
        cut = replace(cut, at=at, place=place, stretch=(low, high))
        kept = part_left(cut, first=way > 0)  # so that its length is what is looked for
        if self.row.faults.found:
            return None
        if any(
            piece.first != piece.last and ZERO not in (piece.first, piece.last)
            for piece in kept.pieces
        ):
            expected = "a point on the side where the load is even, or begins with zero"
            mend = "count from the other end, or write the load as two, one even and one from zero"
            self.row.fault("from", self.origin, expected, mend)
            return None
        if not kept.pieces:
            expected = f"a stretch with a load spread along it: from {ends[0]} to {ends[1]} none is"
            self.row.fault("between", list(ends), expected, 'write at = "C" where a load acts at C')
            return None
        self._keep(cut, kept, {"axial": f"N_{at}"})
        return self._found(at, ends)

    def _way(
        self, low: Expression, high: Expression, start: Expression, ends: tuple[str, str]
    ) -> int:
        """1 where the distance counts along the body, -1 against it; 0 after a fault."""
        known = self.situation.scope.bounds
        order = collected_sum((1, high), (-1, low))
        if order == ZERO or sign_of(order, known) <= 0:
            expected = "two points in their order along the body in all draws"
            self.row.fault("between", list(ends), expected)
            return 0
        if sign_of(collected_sum((1, low), (-1, start)), known) > 0:
            return 1
        if sign_of(collected_sum((1, start), (-1, high)), known) > 0:
            return -1
        expected = f"a point that is not between {ends[0]} and {ends[1]} in any draw"
        self.row.fault("from", self.origin, expected)
        return 0

    @property
    def _called(self) -> Coined:
        return Coined(Sort.LARGEST_MOMENT_PLACE, at=self.origin)

    def _unknown(self, length: Expression, least: Expression, most: Expression) -> Expression:
        """The distance to the section: between those of the two points, and within the body.

        The curve of the shear force would be zero at other places too, beyond its stretch.
        """
        known = self.situation.scope.bounds
        low = max(0.0, bounds(least, known)[0])
        high = min(bounds(length, known)[1], bounds(most, known)[1])
        letter = self.situation.unknown(
            self.row, self.letters.place, METRE, self._called, nonnegative=True
        )
        variables = self.situation.scope.variables
        variables[letter.id] = replace(variables[letter.id], low=low, high=high)
        self.situation.scope.bounds[letter.id] = (low, high)
        return letter

    def _cut(self, at: str) -> Cut | None:
        axis = axis_of(self.situation, self.body)
        if axis is None:
            self.row.fault(_BODY, self.body.id, "a straight body along two points")
            return None
        on = (each.spread for each in self.situation.elements if each.body == self.body.id)
        if any(spread is not None and spread.intensity is not None for spread in on):
            expected = "a body whose loads run evenly from one end of theirs to the other"
            self.row.fault(_BODY, self.body.id, expected, "ask for a moment with [[section]]")
            return None
        of = axis.direction, ZERO, axis.length, self.just
        return Cut(self.row, self.situation, self.body, at, *of, body_key=_BODY)

    def _seen(self, cut: Cut, point: str, key: str) -> Expression | None:
        """How far along the body a point is."""
        place = cut.seen(point)
        if place is None:
            self.row.fault(key, point, f"a point on the axis of {self.body.id}")
        return place

    def _kept(self, cut: Cut) -> Part | None:
        """The part on which less acts, without what acts at the section itself."""
        known = self.situation.scope.bounds
        at_start, at_end = cut.place == ZERO, cut.place == cut.length
        beyond = collected_sum((1, cut.length), (-1, cut.place))
        if not all(sign_of(gap, known) > 0 for gap in (cut.place, beyond)):
            ends = f"{self.body.outline[0]} to {self.body.outline[-1]}"
            self.row.fault("at", cut.at, f"a point from {ends} in all draws")
            return None
        turned_there = any(
            couple.body == self.body.id and cut.seen(couple.point) == cut.place
            for couple in self.situation.couples
        )
        if turned_there and not (self.just or at_start or at_end):
            expected = f"a side of the couple that acts at {cut.at} itself"
            self.row.fault("just", None, expected, 'just = "before", or "after"')
            return None
        sides = [(first, just) for first, just in ((True, "before"), (False, "after"))]
        sides = [
            (first, self.just or just)
            for first, just in sides
            if not (at_start and first) and not (at_end and not first)
        ]
        parts = [part_left(replace(cut, just=just), first=first) for first, just in sides]
        return min(parts, key=lambda part: part.weight(self.situation))

    def _keep(self, cut: Cut, part: Part, letters: dict[str, str]) -> None:
        letters = letters | {"couple": self.letters.moment}
        keep(cut, part, letters, Coined(Sort.LARGEST_MOMENT, BodyNamed(self.body.id)))

    def _found(self, at: str, between: tuple[str, ...]) -> LargestMoment:
        letters = self.letters
        return LargestMoment(self.body.id, letters.moment, letters.place, self.origin, at, between)
