"""The colours of a figure drawn in colour, one for each kind of thing, and the tones of its faces.

A figure says nothing by colour alone: line weights, dashes and shapes tell the same, so that a
photocopy loses nothing.  The hues are those of M. Okabe and K. Ito, "Color Universal Design"
(2002, revised 2008), which colour-blind readers can tell apart.
"""

from __future__ import annotations

from typing import Final

from probgen.figures.paper.scene import Tone
from probgen.figures.paper.tag import Tag, What

Ink = tuple[float, float, float]
"""Red, green and blue, 0 to 1."""

BLACK: Final[Ink] = (0.0, 0.0, 0.0)
_BLUE: Final[Ink] = (0.0, 0.45, 0.70)
_VERMILION: Final[Ink] = (0.84, 0.37, 0.0)
_GREEN: Final[Ink] = (0.0, 0.62, 0.45)
_PURPLE: Final[Ink] = (0.80, 0.47, 0.65)
_GREY: Final[Ink] = (0.35, 0.35, 0.35)

_INKS: Final = {
    What.FORCE: _BLUE, What.COMPONENT: _BLUE, What.RECTANGLE: _BLUE, What.COUPLE: _PURPLE,
    What.DISTRIBUTED: _BLUE, What.MUSCLE: _VERMILION, What.CABLE: _GREEN, What.SPRING: _GREEN,
    What.DIMENSION: _GREY, What.ANGLE: _GREY, What.REFERENCE: _GREY, What.GROUND: _GREY,
    What.HATCH: _GREY, What.AXES: _GREY, What.SOIL: _GREY, What.PIVOT: _VERMILION,
}  # fmt: skip
"""What is shown -> its ink; all else is black."""


def ink_of(tag: Tag, colour: bool = True) -> Ink:
    """The ink of a shape by its tag; black where no colour is asked for."""
    return _INKS.get(tag.what, BLACK) if colour else BLACK


_GREYS: Final = {
    Tone.BODY: 0.9, Tone.PERSON: 0.78, Tone.SKIN: 0.96, Tone.GROUND: 0.82,
    Tone.WATER: 0.955, Tone.PAPER: 1.0,
}  # fmt: skip
_TINTS: Final[dict[Tone, Ink]] = {Tone.WATER: (0.80, 0.90, 0.97), Tone.GROUND: (0.88, 0.83, 0.76)}


def tint_of(tone: Tone, colour: bool = True) -> Ink:
    """What a tone is painted in: a grey, and a tint where colour is asked for."""
    grey = _GREYS[tone]
    return _TINTS.get(tone, (grey, grey, grey)) if colour else (grey, grey, grey)


def hexadecimal(ink: Ink) -> str:
    """An ink as SVG writes it, "#0073b3"."""
    return "#" + "".join(f"{round(255 * part):02x}" for part in ink)
