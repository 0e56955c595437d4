"""What a situation shows, at whatever scale."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from probgen.bank.depiction import Depictions, Fluid
from probgen.figures.measured.flat import flat_of
from probgen.figures.measured.hole import hole_lengths
from probgen.figures.measured.opening import Opening
from probgen.figures.measured.survey import Span, Survey, spans
from probgen.figures.measured.water import depths
from probgen.figures.paper.scale import POINTLIKE
from probgen.figures.parts.load import largest_scale
from probgen.quantities.expression import Number
from probgen.working.fact import Tell

_TINY: Final = 70.0  # the least that is drawn smaller for the sake of people on it, pt


def told_lengths(measured: Survey, depicts: Depictions) -> tuple[Span, ...]:
    """The lengths a situation tells: those between points, the depths of water, and those from the
    corners of a plate to the holes in it.
    """
    waters = (
        each for each in measured.system.elements if depicts.fluids.get(each.id) is Fluid.WATER
    )
    below = (span for water in waters for span in depths(measured, water))
    found = {span.id: span for span in (*below, *spans(measured))}
    return *found.values(), *hole_lengths(measured, found)


@dataclass(frozen=True, slots=True)
class Shown:
    """named: the points to be lettered; untold: the forces that are to have no letter.

    spans, openings: the lengths and angles to be told; distorted: it is not to scale; terse: its
    lengths are told by their numbers alone; sections: the bodies that are cut, and where.
    """

    measured: Survey
    depicts: Depictions
    givens: Mapping[str, Number]
    tell: Tell
    named: frozenset[str]
    untold: frozenset[str]
    distorted: bool
    spans: tuple[Span, ...]
    openings: tuple[Opening, ...]
    terse: bool = False
    sections: tuple[tuple[str, str], ...] = ()

    @property
    def largest_scale(self) -> float:
        """Up to which scale (pt for each metre) it is drawn: that which lets people keep their
        proportion to what carries them, unless that would be tiny.
        """
        most = largest_scale(self.depicts.loads.values())
        return most if max(self.core.real, self.core.imag) * most >= _TINY else math.inf

    @property
    def core(self) -> complex:
        """Width and height (m) of what grows with the scale; a thin one is a little wide."""
        system = self.measured.system
        places = [place for body in system.bodies for place in self.measured.outline(body)]
        for element in system.elements:
            places += [self.measured.places[name] for name in (element.at, element.toward) if name]
        for flat in filter(None, (flat_of(self.measured, body) for body in system.bodies)):
            places += [place for run in (*flat.parts, *flat.wires) for place in run]
        places += [end for span in self.spans for end in (span.start, span.end)]
        width = max(p.real for p in places) - min(p.real for p in places)
        height = max(p.imag for p in places) - min(p.imag for p in places)
        least = 0.3 * max(width, height, POINTLIKE)
        return complex(max(width, least), max(height, least))
