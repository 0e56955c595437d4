"""The body a free-body diagram is of, tinted, with no more of it than its shape."""

from __future__ import annotations

from typing import Final

from probgen.bank.depiction import Look
from probgen.figures.measured.flat import flat_of
from probgen.figures.measured.survey import Survey
from probgen.figures.measured.wedge import Faced
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import LIGHT, Path, Spot, Tone, circle, polygon
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import mechanical
from probgen.figures.parts.flat import flat
from probgen.figures.situation.shape import ROUND, arms_of, corners_of
from probgen.statics.system import Body

HALF: Final = 2.2
"""Half the thickness of a slender body, pt."""


_MEMBER: Final = 1.0  # of a member of a truss


def draw_body(
    field: Field, measured: Survey, body: Body, look: Look, scale: float, radius: float,
    shape: Faced | None = None,
) -> None:  # fmt: skip
    """A particle as a ring, a solid by its corners, a drum by its rims, all else as a bar.

    scale: pt for each metre; radius: of a particle's ring, pt; shape: of a wedge or of a block on
    one.
    """
    spots = [place * scale for place in measured.outline(body)]
    corners = [place * scale for place in corners_of(measured, body, look)]
    tag = Tag(What.BODY, body.id)
    made = flat_of(measured, body)
    if made:
        shown = made.scaled(scale)
        field.add(*flat(shown.parts, shown.holes, shown.wires, LIGHT, tag))
    elif shape:
        field.add(polygon(shape.corners, LIGHT, tag, tone=Tone.BODY))
    elif len(spots) < 2:
        field.add(circle(spots[0], radius, LIGHT, tag, tone=Tone.BODY))
    elif corners:
        field.add(polygon(corners, LIGHT, tag, tone=Tone.BODY))
    elif body.joints:
        field.add(*mechanical.truss(spots, _MEMBER, tag))
    elif look in ROUND:
        _draw_round(field, measured, body, look, scale)
    else:
        field.add(_bar(spots, tag))


def _draw_round(field: Field, measured: Survey, body: Body, look: Look, scale: float) -> None:
    """A drum by its rims, and the crank that turns it."""
    axle, radii, bars = arms_of(measured, body, look)
    centre, tag = measured.places[axle] * scale, Tag(What.BODY, body.id)
    for radius in radii:
        field.add(circle(centre, radius * scale, LIGHT, tag, tone=Tone.BODY))
    for name in bars:
        field.add(_bar([centre, measured.places[name] * scale], tag))


def _bar(spots: list[Spot], tag: Tag) -> Path:
    left, right = mechanical.rails(spots, HALF)
    return polygon((*left, *reversed(right)), LIGHT, tag, tone=Tone.BODY)
