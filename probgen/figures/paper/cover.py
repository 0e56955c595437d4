"""What hides a fine line that would run behind it: bodies and people, whose inside is tinted."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import Final

from probgen.figures.paper.scene import Arrow, Label, Path, Shape, Spot, Tone, runs

_OPAQUE: Final = (Tone.BODY, Tone.PERSON, Tone.PAPER)
_SEAM: Final = 1e-6  # between the ends of an outline that is closed, pt


def behind(shapes: Iterable[Shape], start: Spot, end: Spot) -> Iterator[tuple[float, float]]:
    """From where to where (pt from its start) a straight piece lies within opaque shapes.

    An open path that is tinted is as broad as its pen; it hides what crosses its middle line.
    """
    length = abs(end - start)
    unit = (end - start) / length
    for shape in shapes:
        if isinstance(shape, Label | Arrow) or shape.tone not in _OPAQUE:
            continue
        for run in runs(shape):
            turned = [(spot - start) / unit for spot in run]
            if isinstance(shape, Path) and not shape.closed and run[0] != run[-1]:
                half = shape.pen.weight / 2
                spans = [(at - half, at + half) for at in _meets(turned)]
            else:
                seamless = turned[:-1] if abs(run[-1] - run[0]) < _SEAM else turned
                met = sorted(_meets([*seamless, turned[0]]))
                spans = list(zip(met[::2], met[1::2], strict=False))
            yield from ((max(a, 0.0), min(b, length)) for a, b in spans if b > 0.0 and a < length)


def _meets(run: Sequence[Spot]) -> Iterator[float]:
    """Where a run of straight pieces crosses the level through the origin, each corner once."""
    for a, b in pairwise(run):
        if (a.imag > 0.0) != (b.imag > 0.0):
            yield a.real - a.imag * (b.real - a.real) / (b.imag - a.imag)
