"""Couples of unknown sense that are asked; in every course counter-clockwise is positive."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.quantities.expression import Name
from probgen.statics.system import Kind, System


def couples_asked(system: System) -> Iterator[Name]:
    """Their moments; at an author's own cut they have signs of their own."""
    asked = {find.quantity for find in system.finds}
    for couple in system.couples:
        cut = system.element(couple.element).kind is Kind.CUT
        if isinstance(couple.moment, Name) and couple.moment.id in asked and not cut:
            yield couple.moment
