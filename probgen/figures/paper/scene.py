"""A scene: everything one figure shows, as plain shapes on paper.

Places on paper are complex numbers x + i y in printer's points (1/72.27 in), x to the right, y up;
so turning by an angle is multiplying by `heading(angle)`.  Angles are degrees counter-clockwise
from +x.  Every shape carries a `tag` telling what it stands for: a body, a force, a dimension.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum, auto
from itertools import pairwise
from typing import Final, NamedTuple

from probgen.figures.paper.tag import UNTAGGED, Tag, What
from probgen.quantities.expression import Expression, Name, Number

Spot = complex


@dataclass(frozen=True, slots=True)
class Stated:
    """A symbol and the number it stands for: d = 2.10 m."""

    symbol: Name
    number: Number


Text = Expression | Stated | str
"""What a label says, an expression on one line; a str is set upright as it is."""


class Tone(Enum):
    """What the inside of a shape is tinted as."""

    BODY = auto()
    PERSON = auto()
    GROUND = auto()
    WATER = auto()
    PAPER = auto()
    SKIN = auto()


@dataclass(frozen=True, slots=True)
class Pen:
    """Line weight in pt, the lengths of dash and gap in pt (0: unbroken), and rounded ends."""

    weight: float
    dash: float = 0.0
    gap: float = 0.0
    round: bool = False


HEAVY: Final = Pen(1.1)
MEDIUM: Final = Pen(0.8)
LIGHT: Final = Pen(0.5)
FINE: Final = Pen(0.35)
DASHED: Final = Pen(0.8, 2.6, 1.9)
REFERENCE: Final = Pen(0.35, 2.2, 2.0)
BARE: Final = Pen(0.0)
"""For a tone without an outline."""

_SHARES: Final = tuple((1.0 - i / 6, i / 6) for i in range(1, 7))  # along a curve's piece
_WEIGHTS: Final = tuple((s**3, 3 * s * s * t, 3 * s * t * t, t**3) for s, t in _SHARES)
_SMALL: Final = 4.0  # radius of an arc that a few straight pieces follow well enough, pt


@dataclass(frozen=True, slots=True)
class Path:
    """Straight strokes: each of `lines` is drawn through its spots in order.

    closed: each line returns to its first spot; filled: painted solid instead of stroked.
    tone: what its inside is tinted as under the strokes; of an open path, what these are
    painted as.
    """

    lines: tuple[tuple[Spot, ...], ...]
    pen: Pen
    tag: Tag = UNTAGGED
    closed: bool = False
    filled: bool = False
    tone: Tone | None = None


@dataclass(frozen=True, slots=True)
class Curve:
    """A run of cubic Bezier pieces (two controls and an end each) from `start`.

    tone: what its inside is tinted as, up to the straight line back to the start.
    """

    start: Spot
    pieces: tuple[tuple[Spot, Spot, Spot], ...]
    pen: Pen
    tag: Tag = UNTAGGED
    filled: bool = False
    tone: Tone | None = None


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of a circle, from `start` degrees through `sweep`, counter-clockwise positive."""

    centre: Spot
    radius: float
    start: float
    sweep: float
    pen: Pen
    tag: Tag = UNTAGGED
    filled: bool = False
    tone: Tone | None = None


@dataclass(frozen=True, slots=True)
class Arrow:
    """A straight arrow; `length` and `width` are those of its head, `both` puts one at each end."""

    tail: Spot
    head: Spot
    pen: Pen
    tag: Tag = UNTAGGED
    length: float = 6.0
    width: float = 4.2
    both: bool = False


class Box(NamedTuple):
    """An upright rectangle on paper, pt; a tuple, as figures make them by the thousand."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From bottom to top."""
        return self.top - self.bottom

    @property
    def centre(self) -> Spot:
        """The middle."""
        return complex((self.left + self.right) / 2, (self.bottom + self.top) / 2)

    def grown(self, margin: float) -> Box:
        """The box with a margin added on all sides."""
        return Box(self.left - margin, self.bottom - margin, self.right + margin, self.top + margin)

    def shifted(self, step: complex) -> Box:
        """The box elsewhere, by a step to the right and up."""
        across, upward = step.real, step.imag
        return Box(self.left + across, self.bottom + upward, self.right + across, self.top + upward)

    def gap(self, other: Box) -> float:
        """How far another box is away, pt; 0 where they touch."""
        across = max(self.left - other.right, other.left - self.right, 0.0)
        upward = max(self.bottom - other.top, other.bottom - self.top, 0.0)
        return math.hypot(across, upward)

    def away(self, spot: Spot) -> float:
        """How far a spot is away, pt; 0 within."""
        across = max(self.left - spot.real, spot.real - self.right, 0.0)
        return math.hypot(across, max(self.bottom - spot.imag, spot.imag - self.top, 0.0))

    def way_to(self, other: Box) -> complex:
        """The shortest step after which it touches another box, pt; 0 where it does already."""
        across = max(other.left - self.right, 0.0) - max(self.left - other.right, 0.0)
        upward = max(other.bottom - self.top, 0.0) - max(self.bottom - other.top, 0.0)
        return complex(across, upward)

    def scaled(self, by: float) -> Box:
        """The box so many times as large, and as far from the origin."""
        return Box(self.left * by, self.bottom * by, self.right * by, self.top * by)

    def nearest(self, spot: Spot) -> Spot:
        """The spot of the box nearest to another one."""
        return complex(
            min(max(spot.real, self.left), self.right), min(max(spot.imag, self.bottom), self.top)
        )

    def holds(self, other: Box) -> bool:
        """Whether all of another box is within this one."""
        level = self.left <= other.left and other.right <= self.right
        return level and self.bottom <= other.bottom and other.top <= self.top

    def overlaps(self, other: Box) -> bool:
        """Whether the two share any area."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.bottom < other.top
            and other.bottom < self.top
        )


@dataclass(frozen=True, slots=True)
class Label:
    """A symbol, a number with its unit, or plain words, set at `size` pt.

    spot: left end of the baseline; box: the rectangle the type fills.
    """

    spot: Spot
    text: Text
    size: float
    box: Box
    tag: Tag = UNTAGGED


Stroke = Path | Curve | Arc | Arrow
Shape = Stroke | Label
Segment = tuple[float, float, float, float]
"""A straight piece as x0, y0, x1, y1 (pt); floats, as these are compared by the thousand."""


@dataclass(frozen=True, slots=True)
class Scene:
    """A finished figure: its shapes, and the rectangle they all lie in.

    scale: points on paper for each metre drawn; words: what it shows, for readers who cannot see;
    strained: how many labels found no place near what they name.
    """

    shapes: tuple[Shape, ...]
    box: Box
    scale: float = 0.0
    words: str = ""
    strained: int = 0

    def showing(self, what: What, of: str | Tag | None = None) -> tuple[Shape, ...]:
        """The shapes of a kind; those of one thing alone where its id is given."""
        return tuple(s for s in self.shapes if s.tag.what is what and of in (None, s.tag.of))

    @property
    def labels(self) -> tuple[Label, ...]:
        """The labels alone."""
        return tuple(shape for shape in self.shapes if isinstance(shape, Label))


def heading(degrees: float) -> complex:
    """The unit step in a direction."""
    return cmath.rect(1.0, math.radians(degrees))


def bearing(step: complex) -> float:
    """The direction of a step, degrees from 0 up to 360."""
    return math.degrees(cmath.phase(step)) % 360.0


def apart(one: float, other: float) -> float:
    """The angle between two directions, 0 to 180 degrees."""
    return abs((one - other + 180.0) % 360.0 - 180.0)


def dot(one: complex, other: complex) -> float:
    """The scalar product of two steps."""
    return one.real * other.real + one.imag * other.imag


def circle(
    centre: Spot, radius: float, pen: Pen, tag: Tag = UNTAGGED, *, filled: bool = False,
    tone: Tone | None = None,
) -> Arc:  # fmt: skip
    """A whole circle."""
    return Arc(centre, radius, 0.0, 360.0, pen, tag, filled, tone)


def line(start: Spot, end: Spot, pen: Pen, tag: Tag = UNTAGGED) -> Path:
    """A single straight stroke."""
    return Path(((start, end),), pen, tag)


def polygon(
    corners: Iterable[Spot], pen: Pen, tag: Tag = UNTAGGED, *, filled: bool = False,
    tone: Tone | None = None,
) -> Path:  # fmt: skip
    """A closed outline."""
    return Path((tuple(corners),), pen, tag, closed=True, filled=filled, tone=tone)


def barbs(arrow: Arrow) -> tuple[tuple[Spot, ...], ...]:
    """The triangles of an arrow's heads: tip, left corner, right corner."""
    along = arrow.head - arrow.tail
    unit = along / abs(along)
    triangles = [_barb(arrow.head, unit, arrow)]
    if arrow.both:
        triangles.append(_barb(arrow.tail, -unit, arrow))
    return tuple(triangles)


def shaft(arrow: Arrow) -> tuple[Spot, Spot]:
    """The arrow's line, kept short of the tips so that they stay sharp."""
    cut = (arrow.head - arrow.tail) / abs(arrow.head - arrow.tail) * arrow.length * 0.8
    return (arrow.tail + cut if arrow.both else arrow.tail, arrow.head - cut)


def _barb(tip: Spot, unit: complex, arrow: Arrow) -> tuple[Spot, ...]:
    base = tip - unit * arrow.length
    side = unit * 1j * arrow.width / 2
    return (tip, base + side, base - side)


def runs(shape: Shape) -> Iterator[tuple[Spot, ...]]:
    """A shape as runs of spots joined by straight lines, curves flattened; none for a label."""
    match shape:
        case Path():
            for run in shape.lines:
                yield (*run, run[0]) if shape.closed else run
        case Curve():
            yield _flattened(shape)
        case Arc():
            yield _bent(shape)
        case Arrow():
            yield (shape.tail, shape.head)
            yield from barbs(shape)
        case Label():
            return


def _bent(arc: Arc) -> tuple[Spot, ...]:
    count = max(4, math.ceil(abs(arc.sweep) / (24.0 if arc.radius > _SMALL else 45.0)))
    reach, turn = arc.radius * heading(arc.start), heading(arc.sweep / count)
    spots = [arc.centre + reach]
    for _ in range(count):
        reach *= turn
        spots.append(arc.centre + reach)
    return tuple(spots)


def _flattened(curve: Curve) -> tuple[Spot, ...]:
    spots, at = [curve.start], curve.start
    for first, second, end in curve.pieces:
        spots += [a * at + b * first + c * second + d * end for a, b, c, d in _WEIGHTS]
        at = end
    return tuple(spots)


def segments(shape: Shape) -> list[Segment]:
    """The straight pieces of a shape (curves flattened), none for a label."""
    return [(a.real, a.imag, b.real, b.imag) for run in runs(shape) for a, b in pairwise(run)]


def box_around(spots: Sequence[Spot]) -> Box:
    """The rectangle around spots."""
    across, upward = [spot.real for spot in spots], [spot.imag for spot in spots]
    return Box(min(across), min(upward), max(across), max(upward))


def bounds(shapes: Iterable[Shape]) -> Box:
    """The rectangle around all shapes, half their line weight included."""
    xs: list[float] = []
    ys: list[float] = []
    for shape in shapes:
        if isinstance(shape, Label):
            xs += (shape.box.left, shape.box.right)
            ys += (shape.box.bottom, shape.box.top)
            continue
        half = shape.pen.weight / 2
        for run in runs(shape):
            across, upward = [spot.real for spot in run], [spot.imag for spot in run]
            xs += (min(across) - half, max(across) + half)
            ys += (min(upward) - half, max(upward) + half)
    return Box(min(xs), min(ys), max(xs), max(ys))


def composed(shapes: Iterable[Shape]) -> Scene:
    """The shapes as a scene."""
    whole = tuple(shapes)
    return Scene(whole, bounds(whole))
