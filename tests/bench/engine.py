"""The statics engine beside numpy's solver on the same systems, and the time to find a plan."""

import numpy as np
from line import at_most, seconds

from probgen.bank.bank import default_bank
from probgen.bank.template import Template
from probgen.course.problem import Problem, coherent_values, draw_class, prepare
from probgen.draws.draw import Draw
from probgen.statics.assembly import assemble
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from probgen.wording.convention import Convention

_DRAWS = 20_000
_DIFFERENT = 200
_TIMES = 5
_UNKNOWNS = 3


def bench() -> None:
    bank = default_bank()
    templates = [bank.read(id) for id in bank.files]
    slowest = max(seconds(lambda t=t: prepare(t, Convention())) for t in templates)
    at_most("plan-of-the-worst-template", slowest, 0.3, "s")
    _bench_draws(next(t for t in templates if _is_typical(t)))
