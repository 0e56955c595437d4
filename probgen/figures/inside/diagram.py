"""Axial force, shear force and bending moment drawn to scale along a level body, below it.

Each has its own zero line, as long as the body and right below it, positive values upward.  Dashed
lines lead down from where a curve begins, jumps or ends, and from every section that is asked.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, groupby
from typing import Final

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around, beside, set_in
from probgen.figures.paper.scene import (
    BARE,
    LIGHT,
    MEDIUM,
    REFERENCE,
    Box,
    Label,
    Path,
    Scene,
    Shape,
    Spot,
    Tone,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts.mechanical import bar
from probgen.quantities.expression import Name, Number
from probgen.statics.internal_forces import Inside, InternalForces, Piece, Place

_HEIGHT: Final = 32.0  # from the lowest to the highest value of a curve, pt
_GAP: Final = 12.0  # above and below it, for its values, pt
_PARTS: Final = 16  # straight pieces that a bent piece of a curve is drawn with
_NONE: Final = 1e-6  # of the largest value: none
_WIDTH: Final = 190.0  # of a bare bar, pt
_HALF: Final = 3.0  # half its thickness, pt
_HEAD: Final = 9.0  # from the end of a zero line to what its curve is called, pt
_FREE: Final = 1.5  # about a value that stands on a dashed line, pt
_MEASURES: Final = (What.DIMENSION, What.REFERENCE, What.ANGLE, What.LEADER, What.NOTE)


@dataclass(frozen=True, slots=True)
class Row:
    """One of the three as it is to be drawn: its letter, its unit, and its values."""

    of: Inside
    letter: Name
    unit: str
    printed: Callable[[float], Number]


def diagram(
    found: InternalForces,
    above: Scene | None,
    start: Spot,
    rows: tuple[Row, ...],
    words: str,
    asked: tuple[float, ...] = (),
) -> Scene:
    """The rows below the body's own figure; those of shear and moment are among them.

    above: the situation, of which measures are left out; None for a bare bar.
    start: where the body begins on it.  words: what is shown, for readers who cannot see.
    asked: the places of sections, from the body's first point (m).
    """
    field = Field()
    if above is None:
        start, scale = 0j, _WIDTH / found.length
        field.add(*bar((start, start + _WIDTH), _HALF, Tag(What.BODY, found.body)))
    else:
        scale = above.scale
        field.add(*_without_measures(above))
    top = field.box.bottom
    drawn = [
        _Drawn(row, found, asked, start.real, scale, top - place * (_HEIGHT + 2 * _GAP))
        for place, row in enumerate(rows)
    ]
    ends = (x for piece in found.pieces for x in (piece.start, piece.end))
    marks = dict.fromkeys((*ends, *asked))
    bottom = drawn[-1].level(drawn[-1].low)
    guides = [(start.real + mark * scale, top - 1.0, bottom) for mark in marks]
    for each in drawn:
        field.add(*each.strokes())
    by = {each.row.of: each for each in drawn}
    for place in found.turning_points(Inside.MOMENT):
        if place.x not in marks:  # where the shear force passes through zero
            most = by[Inside.MOMENT].spot(place.x, place.value)
            guides.append((most.real, by[Inside.SHEAR].spot(place.x).imag, most.imag))
    for each in drawn:
        each.letter(field)
    field.add(*_guides(guides, field.boxes))
    return Scene(tuple(field.shapes), field.box, scale, words)


def _guides(guides: Sequence[tuple[float, float, float]], labels: Sequence[Box]) -> Iterator[Path]:
    """Dashed lines at x from y down to y, pt, with the values that stand on them left free."""
    for x, top, bottom in guides:
        on = [box.grown(_FREE) for box in labels if box.left - _FREE < x < box.right + _FREE]
        pieces: list[tuple[Spot, Spot]] = []
        for box in sorted(on, key=lambda box: -box.top):
            if bottom < box.top and box.bottom < top:
                pieces.append((complex(x, top), complex(x, box.top)))
                top = box.bottom
        pieces.append((complex(x, top), complex(x, bottom)))
        kept = tuple((one, other) for one, other in pieces if one.imag - other.imag > _FREE)
        yield Path(kept, REFERENCE)


def _without_measures(scene: Scene) -> Iterator[Shape]:
    """What a figure shows without its dimension lines and angles, and their labels."""
    measured = {shape.tag.of for shape in scene.shapes if shape.tag.what in _MEASURES}
    for shape in scene.shapes:
        told = isinstance(shape, Label) and shape.tag.what is What.LABEL
        if shape.tag.what not in _MEASURES and not (told and shape.tag.of in measured):
            yield shape


class _Drawn:
    """A row on paper: its zero line, and its curve at the scale that fills its height."""

    def __init__(
        self,
        row: Row,
        found: InternalForces,
        asked: tuple[float, ...],
        left: float,
        scale: float,
        top: float,
    ) -> None:
        self.row, self.found, self.asked, self.left, self.scale = row, found, asked, left, scale
        self.tag = Tag(What.DIAGRAM, row.of)
        values = [place.value for place in found.turning_points(row.of)]
        high, self.low = max(0.0, *values), min(0.0, *values)
        self.size = max(high, -self.low)
        self.rise = _HEIGHT / ((high - self.low) or 1.0)
        self.zero = top - _GAP - high * self.rise

    def level(self, value: float) -> float:
        return self.zero + value * self.rise

    def spot(self, x: float, value: float = 0.0) -> Spot:
        return complex(self.left + x * self.scale, self.level(value))

    def strokes(self) -> Iterator[Shape]:
        """The area between the curve and the zero line, that line, and the curve."""
        for piece in self.found.pieces:
            under = [self.spot(piece.start), *self._run(piece), self.spot(piece.end)]
            yield polygon(under, BARE, self.tag, tone=Tone.BODY)
        end = self.found.length
        yield line(self.spot(0.0), self.spot(end), LIGHT, self.tag)
        runs = [spot for piece in self.found.pieces for spot in self._run(piece)]
        yield Path(((self.spot(0.0), *runs, self.spot(end)),), MEDIUM, self.tag)

    def _run(self, piece: Piece) -> list[Spot]:
        """The curve along one piece."""
        parts = _PARTS if len(piece.curve(self.row.of)) > 2 else 1
        step = (piece.end - piece.start) / parts
        marks = [piece.start + step * place for place in range(parts + 1)]
        return [self.spot(x, piece.value(self.row.of, x)) for x in marks]

    def letter(self, field: Field) -> None:
        """What it is called, and its values where it jumps, bends or turns."""
        told, tag = f"({self.row.unit})", Tag(What.LABEL, self.row.of)
        unit = set_in(told, beside(told, self.spot(0.0), 180.0, _HEAD), tag)
        end = complex(unit.box.left, unit.box.centre.imag)
        field.add(unit, set_in(self.row.letter, beside(self.row.letter, end, 180.0, 3.0), tag))
        told_at = list(self._told())
        for x, value, side in told_at:
            spot = self.spot(x, value)
            away = 90.0 if value > 0.0 else -90.0
            text, tag = self.row.printed(value), Tag(What.LABEL, f"{self.row.of}:{x}")
            others = [self.spot(other).real for other, _, _ in told_at if other != x]
            boxes = [
                box
                for box in around(text, [(spot, away * (1.0 - side / 2)), (spot, -away)])
                if _beside(box, spot, side)
            ]
            own = (box for box in boxes if _nearest(box, spot, others))
            field.place(text, chain(own, boxes), tag)

    def _told(self) -> Iterator[tuple[float, float, int]]:
        """The places of the values that are told, and on which side of a jump (-1, 1), or neither.

        Of a value that stays, the middle of its stretch.
        """
        stretches = self._stretches()
        for before, same, after in zip(
            [None, *stretches], stretches, [*stretches[1:], None], strict=False
        ):
            x, side = (same[0].x + same[-1].x) / 2, 0
            if same[0].x == same[-1].x:
                jumped, jumps = before and before[-1].x == x, after and after[0].x == x
                side = 1 if jumped else -1 if jumps else 0
            yield x, same[0].value, side
        for x in self.asked:
            value = self.found.at(x, self.row.of)
            printed = self.row.printed(value)
            told = (s for s in stretches if self.row.printed(s[0].value) == printed)
            if not self._is_none(value) and not any(s[0].x <= x <= s[-1].x for s in told):
                yield x, value, 0

    def _stretches(self) -> list[list[Place]]:
        """The turning points that are not zero, those together that are printed alike."""
        places = self.found.turning_points(self.row.of)
        some = [place for place in places if not self._is_none(place.value)]
        alike = groupby(some, key=lambda place: self.row.printed(place.value))
        return [list(same) for _, same in alike]

    def _is_none(self, value: float) -> bool:
        return abs(value) <= _NONE * self.size


def _beside(box: Box, spot: Spot, side: int) -> bool:
    """Whether a value stands on the side of a jump that it belongs to."""
    return side == 0 or (box.left >= spot.real if side > 0 else box.right <= spot.real)


def _nearest(box: Box, spot: Spot, others: Sequence[float]) -> bool:
    """Whether a value stands above or below its own place rather than another's."""
    middle = box.centre.real
    return all(abs(middle - spot.real) < abs(middle - other) for other in others)
