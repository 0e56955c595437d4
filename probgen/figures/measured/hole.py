"""Where a hole is: how far its centre is from the corners of its plate, where that is given.

The centre's coordinates are often sums, which say no length by themselves.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import Final

from probgen.figures.measured.survey import Span, Survey, again, is_told
from probgen.quantities.unit import LENGTH
from probgen.statics.shape import Outline
from probgen.statics.system import Element, Kind, Role

_SHAKEN: Final = 0.017  # of a length, by which the first is changed to see what depends on it
_SAME: Final = 1e-9  # metres


def hole_lengths(measured: Survey, found: Collection[str]) -> Iterator[Span]:
    """The given lengths from a corner of a plate to the centre of a round hole in it, level and
    upright, each once.

    found: the lengths that are seen elsewhere.
    """
    holes = [
        each
        for each in measured.system.elements
        if each.kind is Kind.HOLE and each.shape and each.shape.outline is Outline.CIRCLE
    ]
    lengths = [
        id
        for id, variable in measured.system.variables.items()
        if variable.dimension == LENGTH and variable.role in (Role.GIVEN, Role.DERIVED)
    ]
    missing = [id for id in lengths if id not in found and is_told(measured, id)]
    if not holes or not missing:
        return
    # What only happens to be as long is so no more where every length is another.
    shaken = {id: measured.values[id] * (1 + _SHAKEN * n) for n, id in enumerate(lengths, 1)}
    other = again(measured, shaken)
    for id in missing:
        spans = (span for hole in holes for span in _from_corners(measured, other, hole, id))
        yield from (span for span in [next(spans, None)] if span)


def _from_corners(measured: Survey, other: Survey, hole: Element, id: str) -> Iterator[Span]:
    """Where a length is seen from a corner to the centre of a hole, from the nearest corner first;
    other: the same system with all lengths changed.
    """
    assert hole.shape is not None  # as it is a hole
    (name,) = hole.shape.points
    centre = measured.places[name]
    corners = dict.fromkeys(measured.system.body(hole.body).outline)
    for corner in sorted(corners, key=lambda each: abs(measured.places[each] - centre)):
        at = measured.places[corner]
        ways = ((each.places[name] - each.places[corner], each.values[id])
                for each in (measured, other))  # fmt: skip
        (way, length), (changed, second) = ways
        if abs(abs(way.real) - length) < _SAME and abs(abs(changed.real) - second) < _SAME:
            yield Span(id, at, complex(centre.real, at.imag))
        if abs(abs(way.imag) - length) < _SAME and abs(abs(changed.imag) - second) < _SAME:
            yield Span(id, at, complex(at.real, centre.imag))
