"""A line of a situation as it is drawn."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.figures.paper.scene import Shape, Spot


@dataclass(frozen=True, slots=True)
class Line:
    """A line as drawn.

    element: its id, "" for what is no line itself, such as a pulley; ends: from where to where it
    runs, None where that tells nothing; posted: whether a post is to stand at its far end.
    """

    shapes: tuple[Shape, ...]
    element: str = ""
    ends: tuple[Spot, Spot] | None = None
    posted: bool = False
