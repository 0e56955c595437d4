"""Random beams under loads by a formula, against quadrature and sums of moments by hand.

Reactions come from the integrals of w dx and x w dx (scipy's quad) of the load as Python evaluates
the text; shear force and bending moment from those integrals up to a section.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from random import Random

import numpy as np
import pytest
from scipy.integrate import quad

from probgen.bank.reading import read_template
from probgen.statics.cross_check import solve_all, with_definitions
from probgen.statics.internal_forces import Inside, internal_forces, unbalanced
from probgen.statics.plan import find_plan
from probgen.statics.proof import TOLERANCE, prove
from probgen.statics.solution import solve
from tests.situations import HEAD

AGREEMENT = 1e-8
"""Largest difference, relative to the largest of its kind."""
BEAMS, QUICK = 120, 20
CASES = [
    pytest.param(seed, marks=[] if seed < QUICK else [pytest.mark.proof]) for seed in range(BEAMS)
]
SHAPES = (
    "w_0*(x/{l})^{n}",
    "w_0*(1 - (x/{l})^{n})",
    "w_1 + (w_0 - w_1)*(x/{l})^{n}",
    "4*w_0*x/{l}*(1 - x/{l})",
    "w_0*(1 - x/{l})^{n} + w_1*(x/{l})^2",
    "w_0*(x + b)/({l} + b)",
)


@dataclass(frozen=True)
class Beam:
    """A beam from A to B that is held at A and at S, under a load along a stretch of it.

    load: newtons per metre at a distance along the stretch (m), which begins at `start` and runs
    to the right (way 1) or to the left (-1).
    """

    text: str
    values: dict[str, float]
    load: Callable[[float], float]
    start: float
    way: int
    reach: float

    def down_to(self, x: float) -> tuple[float, float]:
        """How much of the load lies left of a place, and its torque about A, clockwise."""
        ends = sorted((self.start, self.start + self.way * self.reach))
        last = min(max(x, ends[0]), ends[1])

        def size(place: float) -> float:
            return self.load((place - self.start) * self.way)

        return quad(size, ends[0], last)[0], quad(lambda p: p * size(p), ends[0], last)[0]


def beam(seed: int) -> Beam:
    random = Random(f"formula {seed}")
    length = round(random.uniform(2.0, 6.0), 3)
    values = {
        "L": length,
        "a": round(random.uniform(0.1, 0.4) * length, 3),
        "d": round(random.uniform(0.45, 0.55) * length, 3),
        "b": round(random.uniform(0.6, 0.95) * length, 3),
        "w_0": round(random.uniform(60, 200), 1),
        "w_1": round(random.uniform(10, 60), 1),
    }
    ends = random.choice([("A", "B"), ("B", "A"), ("C", "B"), ("B", "C"), ("A", "E"), ("E", "C")])
    places = {"A": 0.0, "B": length, "C": values["a"], "E": values["b"]}
    along = {frozenset("AB"): "L", frozenset("BC"): "(L - a)", frozenset("AE"): "b",
             frozenset("CE"): "(b - a)"}[frozenset(ends)]  # fmt: skip
    shape = random.choice(SHAPES).format(l=along, n=random.randint(1, 4))
    holds = random.choice(["ends", "inside", "built in"])
    code = compile(shape.replace("^", "**"), "load", "eval")

    def load(x: float) -> float:
        return float(eval(code, {}, {**values, "x": x}))

    start, end = (places[name] for name in ends)
    way = 1 if end > start else -1
    return Beam(_text(values, ends, shape, holds), values, load, start, way, abs(end - start))


def _text(values: dict[str, float], ends: tuple[str, str], shape: str, holds: str) -> str:
    units = {"w_0": "N/m", "w_1": "N/m"}
    givens = "".join(
        f'{id} = {{ name = "{id}", choices = [{value}], unit = "{units.get(id, "m")}" }}\n'
        for id, value in values.items()
    )
    held = {
        "ends": ("B", '[[hinge]]\nat = "A"\nsymbol = "R"\n[[roller]]\nat = "B"\nsymbol = "S"\n'),
        "inside": ("E", '[[hinge]]\nat = "A"\nsymbol = "R"\n[[roller]]\nat = "E"\nsymbol = "S"\n'),
        "built in": ("", '[[fixed]]\nat = "A"\nsymbol = "R"\ncouple = "S"\n'),
    }[holds][1]
    return f"""{HEAD}
[given]
{givens}
[points]
A = [0, 0]
C = ["a", 0]
D = ["d", 0]
E = ["b", 0]
B = ["L", 0]
[body.beam]
along = ["A", "B"]
{held}
[[distributed]]
from = "{ends[0]}"
to = "{ends[1]}"
intensity = "{shape}"
symbol = "W"
[[section]]
at = "D"
[[diagram]]
[[find]]
quantity = "S"
[[find]]
quantity = "V_D"
[[find]]
quantity = "M_D"
"""


@pytest.mark.parametrize("seed", CASES)
def test_reactions_and_what_acts_inside(seed: int) -> None:
    own = beam(seed)
    system = read_template(own.text, "random.toml").system
    given = {id: np.array([value]) for id, value in (own.values | {"g": 9.8}).items()}
    plan = find_plan(system, given)
    solved = solve(plan, given)
    proof = prove(plan, solved)
    found = {id: float(np.asarray(value).flat[0]) for id, value in solved.items()}
    assert proof.max_residual[0] < TOLERANCE
    assert proof.second_solver_difference[0] < TOLERANCE
    whole, turning = own.down_to(own.values["L"])
    assert found["W"] == pytest.approx(whole, rel=AGREEMENT)
    # Held at A, and by S: a couple there, or a push at another place.
    built_in = "[[fixed]]" in own.text
    at = own.values["L" if 'at = "B"\nsymbol = "S"' in own.text else "b"]
    couple, support = (turning, 0.0) if built_in else (0.0, turning / at)
    assert found["S"] == pytest.approx(couple or support, rel=AGREEMENT)

    def inside(x: float) -> tuple[float, float]:
        left, torque = own.down_to(x)
        beyond = support if x > at else 0.0
        shear = whole - support - left + beyond
        return shear, (whole - support) * x - (left * x - torque) - couple + beyond * (x - at)

    shear, moment = inside(own.values["d"])
    size = max(abs(whole), 1e-9)
    assert abs(found["V_D"] - shear) < AGREEMENT * size
    assert abs(found["M_D"] - moment) < AGREEMENT * size * own.values["L"]
    found_all = solve_all(system, given, np.ones((1, len(system.unknowns))))
    known = {id: float(value[0]) for id, value in given.items()}
    known |= {id: float(found_all[0, at]) for at, id in enumerate(system.unknowns)}
    along = internal_forces(system.uncut, with_definitions(system, known), "beam")
    assert along.residual < AGREEMENT
    for share in (0.05, 0.3, 0.52, 0.77, 0.98):
        x = share * own.values["L"]
        shear, moment = inside(x)
        assert abs(along.at(x, Inside.SHEAR) - shear) < AGREEMENT * size
        assert abs(along.at(x, Inside.MOMENT) - moment) < AGREEMENT * size * own.values["L"]
        assert unbalanced(along, x) < AGREEMENT
