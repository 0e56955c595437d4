"""What hides a fine line that would run behind it: bodies and people, whose inside is tinted."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from probgen.figures.paper.scene import Arrow, Box, Label, Path, Shape, Spot, Tone, box_around, runs

_OPAQUE: Final = (Tone.BODY, Tone.PERSON, Tone.PAPER)
_SEAM: Final = 1e-6  # between the ends of an outline that is closed, pt
_NEAR: Final = 1.0  # about an outline, where it is looked at more closely, pt


@dataclass(frozen=True, slots=True)
class Cover:
    """The outline of an opaque shape.

    half: half the breadth of an open path, which hides what crosses its middle line; None of a
    closed one.  box: the rectangle around it, and a little more.
    """

    run: tuple[Spot, ...]
    half: float | None
    box: Box


def covers(shape: Shape) -> Iterator[Cover]:
    """The outlines of a shape that hides what is behind it.

    An open path that is tinted is as broad as its pen.
    """
    if isinstance(shape, Label | Arrow) or shape.tone not in _OPAQUE:
        return
    for run in runs(shape):
        if isinstance(shape, Path) and not shape.closed and run[0] != run[-1]:
            half = shape.pen.weight / 2
            yield Cover(run, half, box_around(run).grown(half + _NEAR))
        else:
            seamless = run[:-1] if abs(run[-1] - run[0]) < _SEAM else run
            yield Cover((*seamless, run[0]), None, box_around(run).grown(_NEAR))


def behind(opaque: Iterable[Cover], start: Spot, end: Spot) -> Iterator[tuple[float, float]]:
    """From where to where (pt from its start) a straight piece lies within opaque shapes."""
    length = abs(end - start)
    unit, room = (end - start) / length, box_around((start, end))
    for cover in opaque:
        if not room.overlaps(cover.box):
            continue
        met = list(_meets([(spot - start) / unit for spot in cover.run]))
        if cover.half is None:
            met.sort()
            spans = list(zip(met[::2], met[1::2], strict=False))
        else:
            spans = [(at - cover.half, at + cover.half) for at in met]
        yield from ((max(a, 0.0), min(b, length)) for a, b in spans if b > 0.0 and a < length)


def _meets(run: Sequence[Spot]) -> Iterator[float]:
    """Where a run of straight pieces crosses the level through the origin, each corner once."""
    for a, b in pairwise(run):
        if (a.imag > 0.0) != (b.imag > 0.0):
            yield a.real - a.imag * (b.real - a.real) / (b.imag - a.imag)
