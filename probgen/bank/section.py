"""A section asked by its place: [[section]], the part of a straight body that it leaves.

    [[section]]
    at = "C"             unknowns N_C, V_C and M_C

The body stays whole.  Beside it a part is described, from one of its ends to the section, with all
that acts there; the part on which less acts is kept.  x runs along the body's axis; where the part
before the section is kept, the axial force pulls along x, the shear force is 90 degrees clockwise
from it, the bending moment counter-clockwise; on the part beyond they are opposite.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import chain, count
from typing import Final

from probgen.bank.bounds import sign_of
from probgen.bank.direction import straight, turned
from probgen.bank.intensity import declare_resultant
from probgen.bank.labels import ByKind, Called, Coined, Label, Reason, Sort
from probgen.bank.load import Spreading
from probgen.bank.scope import is_symbol
from probgen.bank.situation import Situation
from probgen.bank.support import bared
from probgen.input.table import Table
from probgen.quantities.expression import (
    ZERO,
    Expression,
    Name,
    Power,
    Quotient,
    Sum,
    number,
    over,
    times,
    total,
)
from probgen.quantities.like_terms import collected_sum
from probgen.quantities.unit import NEWTON, UNITS
from probgen.statics.geometry import angle_of
from probgen.statics.intensity import curve_of
from probgen.statics.quantity_id import part_id
from probgen.statics.system import Body, Element, Force, Intensity, Kind, Link, Role, Spread

_LETTERS: Final = (("axial", "N"), ("shear", "V"), ("couple", "M"))
_SIDES: Final = ("before", "after")


@dataclass(frozen=True, slots=True)
class Cut:
    """A straight body and the section through it, places by their distance along it (m).

    just: on which side of the section lies what acts at its very place, "" where that is not said.
    stretch: two places between which it lies wherever that is, with nothing else there that acts at
    a point; None where its place is known.
    body_key: the field that names the body.
    """

    row: Table
    situation: Situation
    body: Body
    at: str
    along: Expression
    place: Expression
    length: Expression
    just: str
    stretch: tuple[Expression, Expression] | None = None
    body_key: str = "body"

    def seen(self, point: str) -> Expression | None:
        """How far along the axis a point is; None where it is not on it."""
        start = self.situation.points[self.body.outline[0]]
        if point == start.id or self.situation.points[point].links == start.links:
            return ZERO
        return _run(straight(start, self.situation.points[point]), self.along)

    def before(self, place: Expression | None, what: str) -> bool:
        """Whether a place lies before the section; a fault where that is in doubt."""
        if self.stretch is not None:
            return self._before_stretch(self.stretch, place, what)
        gap = None if place is None else collected_sum((1, self.place), (-1, place))
        if gap == ZERO:
            if not self.just and not self.row.faulty("just"):
                expected = f"a side of what acts at {self.at} itself, {what}"
                self.row.fault("just", None, expected, 'just = "before", or "after"')
            return self.just == "after"
        sign = sign_of(gap, self.situation.scope.bounds) if gap is not None else 0
        if not sign and not self.row.faulty("at"):
            found = "on its axis at all" if gap is None else "before or after it in all draws"
            mend = "narrow the ranges, or cut the body elsewhere"
            self.row.fault("at", self.at, f"a section with {what} {found}", mend)
        return sign > 0

    def _before_stretch(
        self, stretch: tuple[Expression, Expression], place: Expression | None, what: str
    ) -> bool:
        """Whether a place lies before or at the start of the stretch, not at or beyond its end."""
        for end, side in zip(stretch, (1, -1), strict=True):
            gap = None if place is None else collected_sum((side, end), (-side, place))
            if gap is not None and sign_of(gap, self.situation.scope.bounds) > 0:
                return side > 0
        if not self.row.faulty("between"):
            found = "on its axis at all" if place is None else "on one side of it in all draws"
            expected = f"a stretch with {what} {found}"
            self.row.fault("between", None, expected, "narrow the ranges, or name other points")
        return True


def section(row: Table, situation: Situation) -> None:
    """Describes the part that is kept, with what its section bares."""
    body = next((b for b in situation.bodies if b.id == situation.body(row)), None)
    at = situation.at(row, body.id) if body else ""
    letters = {key: _letter(row, situation, key, letter, at) for key, letter in _LETTERS}
    just = row.word("just", _SIDES, "") if row.has("just") else ""
    # Where something else could not be read, nobody knows on which side of the section it is.
    cut = _cut(row, situation, body, at, just) if body and not row.faults.found else None
    if cut is None:
        situation.scope.whole = False
        return
    parts = [part_left(cut, first=True), part_left(cut, first=False)]
    if row.faults.found:
        situation.scope.whole = False
        return
    kept = min(parts, key=lambda part: part.weight(situation))
    keep(cut, kept, letters)


def _letter(row: Table, situation: Situation, key: str, letter: str, at: str) -> str:
    if row.has(key):
        return situation.symbol(row, key)
    symbol = f"{letter}_{at}"
    if at and not is_symbol(symbol):
        row.fault(key, None, "a symbol", f'write {key} = "{letter}"')
        return ""
    return symbol


def _run(line: Link | None, along: Expression) -> Expression | None:
    """The length of a step along an axis, negative against it; None across it."""
    if line is None:
        return None
    turn = angle_of(line.direction).minus(angle_of(along))
    if turn.multiples or turn.constant % 180:
        return None
    return total((-1, line.length)) if turn.constant % 360 else line.length


def axis_of(situation: Situation, body: Body) -> Link | None:
    """From a straight body's first point to its last; None of any other body."""
    if len(body.outline) != 2 or body.particle or body.joints:
        return None
    first, last = (situation.points[name] for name in body.outline)
    return straight(first, last)


def _cut(row: Table, situation: Situation, body: Body, at: str, just: str) -> Cut | None:
    """The section with its place; None after a fault."""
    axis = axis_of(situation, body)
    if axis is None:
        row.fault("body", body.id, "a straight body along two points")
        return None
    cut = Cut(row, situation, body, at, axis.direction, ZERO, axis.length, just)
    place = cut.seen(at)
    inside = place is not None and all(
        sign_of(gap, situation.scope.bounds) > 0 and gap != ZERO
        for gap in (place, collected_sum((1, axis.length), (-1, place)))
    )
    if place is None or not inside:
        expected = f"a point between {body.outline[0]} and {body.outline[-1]} in all draws"
        row.fault("at", at, expected, "narrow the ranges, or cut the body elsewhere")
        return None
    return replace(cut, place=place)


@dataclass(frozen=True, slots=True)
class _Piece:
    """A load that the section divides: the stretch of it on one side, its share of the element.

    intensity: between the ends of that stretch, where it runs by a formula.
    """

    element: Element
    start: str
    line: Link
    first: Expression
    last: Expression
    intensity: Intensity | None = None


@dataclass(frozen=True, slots=True)
class Part:
    """One side of a section: what acts there as it is, and what of spread loads lies there."""

    outline: tuple[str, str]
    first: bool
    elements: tuple[Element, ...]
    pieces: tuple[_Piece, ...]

    def weight(self, situation: Situation) -> tuple[int, int]:
        """How much there is to know of it: unknowns first."""
        ids = {element.id for element in self.elements}
        forces = [force for force in situation.forces if force.element in ids]
        sizes = [force.magnitude for force in forces]
        sizes += [couple.moment for couple in situation.couples if couple.element in ids]
        variables = situation.scope.variables
        unknown = {
            size for size in sizes
            if not isinstance(size, Name) or variables[size.id].role is Role.UNKNOWN
        }  # fmt: skip
        return len(unknown), len(sizes) + len(self.pieces)


def part_left(cut: Cut, *, first: bool) -> Part:
    """The part before the section (first), or that beyond it; what is in doubt is a fault."""
    ends = cut.body.outline
    whole: list[Element] = []
    pieces: list[_Piece] = []
    for element in cut.situation.elements:
        if element.body != cut.body.id:
            continue
        if element.own:
            expected = "a body whose weight is told along it: a section leaves a part of it only"
            if not cut.row.faulty(cut.body_key):
                mend = "write its weight as a distributed load"
                cut.row.fault(cut.body_key, cut.body.id, expected, mend)
        elif element.spread is not None:
            piece = _divided(cut, element, element.spread, first=first)
            pieces += [piece] if isinstance(piece, _Piece) else []
            whole += [element] if piece is True else []
        elif cut.before(cut.seen(element.at), element.id) == first:
            whole.append(element)
    outline = (ends[0], cut.at) if first else (cut.at, ends[-1])
    return Part(outline, first, tuple(whole), tuple(pieces))


def _divided(cut: Cut, element: Element, spread: Spread, *, first: bool) -> _Piece | bool:
    """What of a spread load is on one side: all (True), nothing (False), or a piece of it."""
    start = cut.seen(spread.start)
    run = _run(spread.line, cut.along)
    if start is None or run is None:
        cut.before(None, element.id)
        return False
    ends = (start, collected_sum((1, start), (1, run)))
    sides = [_side(cut, end, element.id) for end in ends]
    side = 1 if first else -1
    if sides[0] * sides[1] >= 0:
        return (sides[0] or sides[1]) == side
    to_cut = collected_sum((1, cut.place), (-1, start))
    if sides[0] < 0:  # it begins beyond the section and runs back to it
        to_cut = collected_sum((1, start), (-1, cut.place))
    there = _size_at(spread, to_cut)
    curve = spread.intensity
    if sides[0] == side:
        line = Link(to_cut, spread.line.direction)
        near = curve and replace(curve, high=to_cut)
        return _Piece(element, spread.start, line, spread.first, there, near)
    rest = Link(collected_sum((1, spread.line.length), (-1, to_cut)), spread.line.direction)
    far = curve and replace(curve, low=to_cut)
    return _Piece(element, cut.at, rest, there, spread.last, far)


def _side(cut: Cut, place: Expression, what: str) -> int:
    """1 before the section, -1 beyond it, 0 at it."""
    if collected_sum((1, cut.place), (-1, place)) == ZERO:
        return 0
    return 1 if cut.before(place, what) else -1


def _size_at(spread: Spread, distance: Expression) -> Expression:
    """The load per length so far from its start: a + (b - a) x/l."""
    if spread.intensity is not None:
        return curve_of(spread.intensity).at(distance).expression
    if spread.first == spread.last:
        return spread.first
    rise = collected_sum((1, spread.last), (-1, spread.first))
    grown = Quotient(times(rise, distance), spread.line.length)
    return grown if spread.first == ZERO else Sum(((1, spread.first), (1, grown)))


def keep(cut: Cut, part: Part, letters: Mapping[str, str], named: Called | None = None) -> None:
    """Adds the part that is kept as a body, and everything on it.

    letters: of what is bared, named: what the couple is called, both as `bared` has them.
    """
    situation, body = cut.situation, Body(part_id(part.outline), part.outline, part_of=cut.body.id)
    situation.bodies += (body,)
    ids = {element.id for element in part.elements}
    situation.elements += [replace(each, body=body.id) for each in part.elements]
    own = cut.body.id
    situation.forces += [
        replace(force, body=body.id, pair="")
        for force in tuple(situation.forces)
        if force.element in ids and force.body == own
    ]
    situation.couples += [
        replace(couple, body=body.id, pair="")
        for couple in tuple(situation.couples)
        if couple.element in ids and couple.body == own
    ]
    for piece in part.pieces:
        _add_piece(cut, body.id, piece)
    axis = cut.along if part.first else turned(cut.along, 180)
    element, forces, couple = bared(cut.row, situation, body.id, cut.at, axis, letters, named)
    if not part.first:
        couple = replace(couple, moment=total((-1, couple.moment)))
    label = Label(letters["axial"], ByKind.PART_CUT_OFF)
    situation.place(cut.row, element, label, forces, [couple])


def _add_piece(cut: Cut, body: str, piece: _Piece) -> None:
    """The resultant of a piece of a spread load, with a letter and a point of its own."""
    situation, element = cut.situation, piece.element
    stem = element.id if "_" in element.id else f"{element.id}_"
    taken = situation.scope.symbols | situation.letters | situation.points.keys()
    letter = next(f"{stem}{n}" for n in count(1) if f"{stem}{n}" not in taken)
    name = situation.named[element.id].name
    if cut.stretch is not None:
        situation.reasons[letter] = Reason.LOAD_ON_PART
    piece = _named_at_cut(cut, piece, name)
    lies = Spread(piece.start, piece.line, piece.first, piece.last)
    if (curve := piece.intensity) is not None:
        size, curve = declare_resultant(cut.row, situation, letter, name, curve)
        lies = replace(lies, intensity=curve)
        start, reach = curve.origin, Link(curve.centroid, piece.line.direction)
    else:
        load = Spreading(piece.first, piece.last)
        called = Coined(Sort.RESULTANT, name)
        size = situation.defined(cut.row, letter, _whole(cut, piece, load), NEWTON, called)
        start, reach = piece.start, Link(load.centroid(piece.line.length), piece.line.direction)
    at = situation.add_point("Q", (*situation.points[start].links, reach))
    direction = next(f.direction for f in situation.forces if f.element == element.id)
    made = Element(letter, Kind.DISTRIBUTED, body, at, (letter,), spread=lies)
    acting = Force(letter, body, at, size, direction, Kind.DISTRIBUTED, letter)
    situation.place(cut.row, made, Label(letter, name), [acting])


def _named_at_cut(cut: Cut, piece: _Piece, name: Called) -> _Piece:
    """The piece of a load that is zero at neither end, with a letter for its size at the cut."""
    sizes = (piece.first, piece.last)
    if cut.stretch or piece.intensity or ZERO in sizes or piece.first == piece.last:
        return piece
    situation = cut.situation
    taken = situation.scope.symbols | situation.letters | situation.scope.variables.keys()
    letters = chain((f"{w}_{cut.at}" for w in "wqpk"), (f"w_{n}" for n in count(1)))
    letter = next(each for each in letters if each not in taken)
    called, begins = Coined(Sort.INTENSITY, name), piece.start == cut.at
    there = piece.first if begins else piece.last
    size = situation.defined(cut.row, letter, there, UNITS["N/m"], called)
    return replace(piece, first=size) if begins else replace(piece, last=size)


def _whole(cut: Cut, piece: _Piece, load: Spreading) -> Expression:
    """The resultant of a piece; w x^2/(2 l) of one that runs from zero over an unknown length."""
    spread = piece.element.spread
    if cut.stretch is None or spread is None or ZERO not in (piece.first, piece.last):
        return load.whole(piece.line.length)
    full = spread.last if piece.first == ZERO else spread.first
    return over(times(full, Power(piece.line.length, 2)), times(number(2), spread.line.length))
