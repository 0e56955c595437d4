"""A class's draws of a template, worked for a test."""

from functools import cache

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.draws.sample import sample
from probgen.problem.problem import Problem, Worked, fit, prepare, work
from probgen.working.convention import Convention

DRAWS = 80
EITHER_SIDE = ("from = 1.90, to = 2.35", "from = 0.60, to = 2.35")
"""A change of beam-stay-cable, after which its load hangs on either side of the cable."""


@cache
def worked(id: str, old: str = "", new: str = "") -> tuple[Problem, tuple[Worked, ...]]:
    """The draws of a supplied template that are fit for use; old, new: what is changed in it."""
    text = default_bank().read(id).source
    assert old in text
    problem = prepare(read_template(text.replace(old, new), id), Convention())
    made = sample(problem.template, DRAWS)
    draws = [made.draw(place) for place in range(len(made))]
    held = [draw for draw, fits in zip(draws, fit(problem, draws), strict=True) if fits]
    return problem, tuple(work(problem, held))
