"""The body a free-body diagram is of, tinted, with no more of it than its shape."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from operator import itemgetter
from typing import Final

from probgen.bank.depiction import Look
from probgen.figures.measured.flat import flat_of
from probgen.figures.measured.survey import Survey
from probgen.figures.measured.wedge import Faced
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    LIGHT,
    REFERENCE,
    Path,
    Spot,
    Tone,
    circle,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import mechanical
from probgen.figures.parts.flat import flat
from probgen.figures.situation.shape import ROUND, arms_of, corners_of
from probgen.statics.system import Body

HALF: Final = 2.2
"""Half the thickness of a slender body, pt."""


_MEMBER: Final = 1.0  # of a member of a truss
_OFF: Final = 3.0  # from a bar's axis to a point that is no longer on it, pt


def draw_body(
    field: Field, measured: Survey, body: Body, look: Look, scale: float, radius: float,
    shape: Faced | None = None, at: Spot = 0j, points: Sequence[Spot] = (),
) -> None:  # fmt: skip
    """A particle as a ring, a solid by its corners, a drum by its rims, all else as a bar.

    scale: pt for each metre; radius: of a particle's ring, pt; shape: of a wedge or of a block on
    one, whose middle is at a spot; points: where forces act, which a bar reaches by a dashed line
    where they are off it.
    """
    spots = [place * scale for place in measured.outline(body)]
    corners = [place * scale for place in corners_of(measured, body, look)]
    tag = Tag(What.BODY, body.id)
    made = flat_of(measured, body)
    if made:
        shown = made.scaled(scale)
        field.add(*flat(shown.parts, shown.holes, shown.wires, LIGHT, tag))
    elif shape:
        field.add(polygon([at + corner for corner in shape.corners], LIGHT, tag, tone=Tone.BODY))
    elif len(spots) < 2:
        field.add(circle(spots[0], radius, LIGHT, tag, tone=Tone.BODY))
    elif corners:
        field.add(polygon(corners, LIGHT, tag, tone=Tone.BODY))
    elif body.joints:
        field.add(*mechanical.truss(spots, _MEMBER, tag))
    elif look in ROUND:
        _draw_round(field, measured, body, look, scale)
    else:
        field.add(_bar(spots, tag), *_ties(spots, points, body.id))


def _draw_round(field: Field, measured: Survey, body: Body, look: Look, scale: float) -> None:
    """A drum by its rims, and the crank that turns it."""
    axle, radii, bars = arms_of(measured, body, look)
    centre, tag = measured.places[axle] * scale, Tag(What.BODY, body.id)
    for radius in radii:
        field.add(circle(centre, radius * scale, LIGHT, tag, tone=Tone.BODY))
    for name in bars:
        field.add(_bar([centre, measured.places[name] * scale], tag))


def rim_of(measured: Survey, body: Body, look: Look, scale: float) -> list[Spot]:
    """Spots about a drum; none for any other body."""
    if look not in ROUND or len(body.outline) < 2:
        return []
    axle, radii, _ = arms_of(measured, body, look)
    reach = max(radii, default=0.0) * scale
    return [measured.places[axle] * scale + reach * heading(turn) for turn in range(0, 360, 15)]


def _bar(spots: list[Spot], tag: Tag) -> Path:
    left, right = mechanical.rails(spots, HALF)
    return polygon((*left, *reversed(right)), LIGHT, tag, tone=Tone.BODY)


def _ties(spots: list[Spot], points: Sequence[Spot], body: str) -> Iterator[Path]:
    """From a bar to each point off it: what acts there acts on the body, by what is not drawn."""
    for point in dict.fromkeys(points):
        feet = [_foot(point, *piece) for piece in pairwise(spots)]
        off, foot = min(((abs(point - each), each) for each in feet), key=itemgetter(0))
        if off > _OFF:
            yield line(foot, point, REFERENCE, Tag(What.REFERENCE, body))


def _foot(point: Spot, start: Spot, end: Spot) -> Spot:
    """The spot of a straight piece that is nearest to a point."""
    way = end - start
    share = ((point - start) / way).real if way else 0.0
    return start + way * min(max(share, 0.0), 1.0)
