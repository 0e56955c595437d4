"""What is said of balances written by the horizontal part of a cable's tension."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from probgen.statics.equation import Equation
from probgen.statics.loaded_cable import knots_along
from probgen.statics.system import System
from probgen.wording.facts.level_part import LevelPartOf, LevelPartShared
from probgen.working.fact import Fact


def level_part(system: System, equations: Iterable[Equation]) -> Iterator[Fact]:
    """Why a tension's horizontal part stands in balances, and of which tension."""
    for equation in equations:
        for term in equation.terms:
            if not term.source or equation.kind == "torque":
                continue
            size = system.force(term.source).magnitude
            if equation.kind == "condition":
                yield LevelPartOf(equation.terms[0].magnitude, size)
            elif term.magnitude != size:
                yield LevelPartShared(term.magnitude, knots_along(system, term.source))
                return
