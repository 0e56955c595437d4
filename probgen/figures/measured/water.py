"""Water beside a distributed load: how high its surface stands, and the lengths that say so.

The pressure of water at rest grows evenly with the depth below its surface, where there is none: a
load that grows evenly down a face tells by its sizes at both ends where that is.  Heights are
metres in the ground frame.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from probgen.figures.measured.distributed import spread_of
from probgen.figures.measured.survey import Span, Survey, again, is_told
from probgen.quantities.expression import names_in
from probgen.quantities.unit import LENGTH
from probgen.statics.definition import names_behind
from probgen.statics.system import Element

_OTHER: Final = 1.07  # of a length, by which a depth grows that is that length
_SAME: Final = 1e-6  # of a depth


def surface_height(measured: Survey, load: Element) -> float | None:
    """How high the surface stands (m); None where a load does not grow evenly downward."""
    spread = spread_of(measured, load)
    if spread is None or len(spread.sizes) != 2:
        return None
    fall = spread.start.imag - spread.end.imag
    growth = spread.sizes[1] - spread.sizes[0]
    if growth * fall <= 0:
        return None
    return spread.start.imag + spread.sizes[0] * fall / growth


def depths(measured: Survey, load: Element) -> Iterator[Span]:
    """The lengths that are the depth of an end of the load below the surface, by their names.

    One that happens to be as long, the width of a gate, does not change with the depth.
    """
    own = _depths(measured, load)
    assert load.spread is not None  # as it is a distributed load
    for id in sorted(_lengths_in(measured, load)):
        longer = _depths(again(measured, {id: measured.values[id] * _OTHER}), load)
        for (end, depth), (_, other) in zip(own, longer, strict=False):
            length = measured.values[id]
            if abs(depth - length) < _SAME * length and abs(other / depth - _OTHER) < _SAME:
                yield Span(id, end + 1j * depth, end)


def _depths(measured: Survey, load: Element) -> list[tuple[complex, float]]:
    """Both ends of a load, each with its depth (m); none where no surface is known."""
    spread, surface = spread_of(measured, load), surface_height(measured, load)
    if spread is None or surface is None:
        return []
    return [(end, surface - end.imag) for end in (spread.start, spread.end)]


def _lengths_in(measured: Survey, load: Element) -> set[str]:
    """The lengths a student knows of that the sizes of a load are computed from."""
    assert load.spread is not None  # as it is a distributed load
    sizes = names_in(load.spread.first) | names_in(load.spread.last)
    held = names_behind(sizes, measured.system.definitions)
    variables = (measured.system.variables[id] for id in held)
    return {v.id for v in variables if v.dimension == LENGTH and is_told(measured, v.id)}
