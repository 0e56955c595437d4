"""Whether a template is as hard as its level says, by the steps that its solution takes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from probgen.department.doubt import Doubt, DoubtKind
from probgen.problem.problem import Problem
from probgen.working.criteria import criteria

STEPS: Final = {1: (1, 7), 2: (3, 10), 3: (3, 12), 4: (6, 16), 5: (8, 99)}
"""The fewest and the most that a level has: a judgement, by what the supplied templates take."""


def demand(problem: Problem) -> Iterator[Doubt]:
    """A doubt where a level has fewer steps or more; steps are what points are given for."""
    steps = len(tuple(criteria(problem.plan, problem.convention)))
    least, most = STEPS[problem.template.level]
    if not least <= steps <= most:
        told = f"level {problem.template.level}"
        yield Doubt(DoubtKind.LEVEL, told=f"{told} has {least} to {most}", count=steps)
