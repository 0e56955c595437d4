"""The horizontal part of the tension along a cable that bears loads."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.expression import Expression
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class LevelPartShared(Fact):
    """Why the horizontal part of the tension is the same all along; knots: bodies it pulls."""

    level: Expression
    knots: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LevelPartOf(Fact):
    """That one tension has that horizontal part."""

    level: Expression
    tension: Expression
