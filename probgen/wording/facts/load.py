"""Facts about a load that is spread by a formula."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.expression import Expression, Name
from probgen.quantities.formula import Formula
from probgen.working.convention import Turning
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class LoadHeading(Fact):
    """The resultant of what a load is exerted by; part: as in `LoadIntegrated`."""

    element: str
    part: str = ""


@dataclass(frozen=True, slots=True)
class LoadIntegrated(Fact):
    """What the resultant of a load is, and where it acts.

    load: its size at a distance `along` from `origin`, with its letter; letter: that alone.
    part: the piece of a body on which a stretch of it lies, from one distance to another; "" where
    all of it is meant.
    """

    load: Formula
    letter: Name
    along: Name
    origin: str
    resultant: Name
    centroid: Name
    turning: Turning
    part: str = ""
    stretch: tuple[Expression, Expression] | None = None
