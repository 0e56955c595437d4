"""Loads by a formula integrated, against quadrature."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import quad

from probgen.quantities.expression import Name, evaluate
from probgen.quantities.parser import parse
from probgen.statics.intensity import curve_of, moments
from probgen.statics.numeric_equations import size_at
from probgen.statics.system import Intensity, Link, Spread

NAMES = {id: Name(id, id) for id in ("w_0", "w_1", "L", "d", "x")}
VALUES = {"w_0": 120.0, "w_1": 45.0, "L": 3.2, "d": 0.7}
CASES = [
    ("w_0*(x/L)^2", "0", "L"),
    ("w_1 + (w_0 - w_1)*(1 - x/L)^3", "0", "L"),
    ("w_0*x/L*(1 - x/L)", "d", "L"),
    ("w_0*((x + d)/L)^5 + w_1", "0", "L - d"),
]


def intensity(load: str, low: str, high: str) -> Intensity:
    load_, low_, high_ = (parse(text, NAMES) for text in (load, low, high))
    return Intensity(load_, NAMES["x"], Name("w", "w"), "A", low_, high_, Name("xbar", "xbar"))


@pytest.mark.parametrize(("load", "low", "high"), CASES)
def test_its_force_and_its_torque(load: str, low: str, high: str) -> None:
    own = intensity(load, low, high)
    ends = [float(evaluate(end, VALUES)) for end in (own.low, own.high)]

    def size(x: float) -> float:
        return float(evaluate(own.load, {**VALUES, "x": x}))

    force, turning = moments(own)
    assert evaluate(force.expression, VALUES) == pytest.approx(quad(size, *ends)[0])
    torque = quad(lambda x: x * size(x), *ends)[0]
    assert evaluate(turning.expression, VALUES) == pytest.approx(torque)


def test_its_size_along_a_line() -> None:
    own = intensity("w_0*(x/L)^2", "d", "L")
    line = Link(parse("L - d", NAMES), parse("0", NAMES))
    first, last = (curve_of(own).at(end).expression for end in (own.low, own.high))
    lies = Spread("A", line, first, last, own)
    sizes = [float(np.asarray(size_at(lies, VALUES, part))) for part in (0.0, 0.4, 1.0)]
    assert sizes == pytest.approx([120 * (x / 3.2) ** 2 for x in (0.7, 1.7, 3.2)])
    ends = [float(evaluate(size, VALUES)) for size in (lies.first, lies.last)]
    assert ends == pytest.approx([sizes[0], sizes[-1]])


def test_another_function_is_refused() -> None:
    with pytest.raises(ValueError, match="no polynomial"):
        curve_of(intensity("w_0*sqrt(x/L)", "0", "L"))
