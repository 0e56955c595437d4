"""Ways in English: left, right, up and down, or by the compass where all is seen from above."""

from __future__ import annotations

from typing import Final

from probgen.quantities.printing import plain
from probgen.wording.english.names import X, Y
from probgen.wording.nouns import Nouns
from probgen.working.direction import Direction, Way

_ENDS: Final = ("right", "up", "left", "down")
_STRAIGHT: Final = ("to the right", "straight up", "to the left", "straight down")
_PARTS: Final = ("to the right", "upward", "to the left", "downward")
_COMPASS: Final = ("to the east", "to the north", "to the west", "to the south")


def toward(way: Way, nouns: Nouns) -> str:
    """ "straight down", "up and to the left"; "toward the north and west".

    Of a quarter alone nothing is said of halfway: "to the north-west" would be at 45 degrees.
    """
    if way.quarter is not None:
        return (_COMPASS if nouns.labels.plan else _STRAIGHT)[way.quarter]
    if nouns.labels.plan:
        return f"toward the {upright(way, nouns)} and {side(way, nouns)}"
    return f"{upright(way, nouns)} and to the {side(way, nouns)}"


def part(quarter: int, nouns: Nouns) -> str:
    """Along an axis: "upward"; "to the north".  quarter: as of a `Way`."""
    return (_COMPASS if nouns.labels.plan else _PARTS)[quarter % 4]


def side(way: Way, nouns: Nouns) -> str:
    """ "right"; "east"."""
    return ends_of_axes(nouns)["right" if way.right else "left"]


def upright(way: Way, nouns: Nouns) -> str:
    """ "up"; "north"."""
    return ends_of_axes(nouns)["up" if way.up else "down"]


def ends_of_axes(nouns: Nouns) -> dict[str, str]:
    """What the ends of the axes are called, by their names in the frame: "up" is "north"."""
    own = ("east", "north", "west", "south")
    return dict(zip(_ENDS, own if nouns.labels.plan else _ENDS, strict=True))


def lies_along(level: bool, nouns: Nouns) -> str:
    """Of a force with one component, along x if level: "horizontal"; "along x"."""
    if nouns.labels.plan:
        return f"along {X if level else Y}"
    return "horizontal" if level else "vertical"


def from_level(way: Way, nouns: Nouns) -> str:
    """What an angle from x is measured by: "above the horizontal"; "north of east"."""
    if nouns.labels.plan:
        return f"{upright(way, nouns)} of {side(way, nouns)}"
    return f"{'above' if way.up else 'below'} the horizontal"


def from_plumb(way: Way, nouns: Nouns) -> str:
    """And an angle from y: "from the upward vertical"; "east of north"."""
    if nouns.labels.plan:
        return f"{side(way, nouns)} of {upright(way, nouns)}"
    return f"from the {'upward' if way.up else 'downward'} vertical"


def beside(way: Way, nouns: Nouns, space: str = " ") -> str:
    """ ", to the right" after such an angle; nothing where it says the side itself.

    space: what is between the words for the side.
    """
    return "" if nouns.labels.plan else f", to{space}the{space}{side(way, nouns)}"


def direction(told: Direction, nouns: Nouns, space: str = " ") -> str:
    """ "12.3° above the horizontal, to the right"; "12.3° north of east".

    space: as in `beside`.
    """
    way, shown = told.way, plain(told.shown)
    if told.reference == "axis":
        return f"{shown} counter-clockwise from +{X}"
    if way.quarter is not None:
        return toward(way, nouns)
    where = from_plumb if told.reference == "vertical" else from_level
    return f"{shown} {where(way, nouns)}{beside(way, nouns, space)}"


def direction_in_short(told: Direction, nouns: Nouns) -> str:
    """ "12.3° above, right"; "12.3° from up, right"; "12.3° from +x"; "12.3° north of east"."""
    way, shown = told.way, plain(told.shown)
    if told.reference == "axis":
        return f"{shown} from +{X}"
    if way.quarter is not None or nouns.labels.plan:
        return direction(told, nouns)
    if told.reference == "vertical":
        return f"{shown} from {upright(way, nouns)}, {side(way, nouns)}"
    return f"{shown} {'above' if way.up else 'below'}, {side(way, nouns)}"
