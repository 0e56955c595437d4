"""Cables with loads at their knots, beside numpy: in H, H y and H z all equations are linear.

A wire bears pots at B, C and D, at 1.0, 2.5 and 4.5 m of 5.5 m; C hangs h below the hooks.
"""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from probgen.quantities.printing import plain
from probgen.statics.derivation import _possible
from probgen.statics.loaded_cable import LoadedCable, knots_along, loaded_cable
from probgen.statics.method import Method
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from probgen.statics.system import System
from tests.situations import HEAD, system_of

GIVEN = """
[given]
u = { name = "weight at B", choices = [20, 30], unit = "N" }
v = { name = "weight at C", choices = [40, 50], unit = "N" }
w = { name = "weight at D", choices = [25, 35], unit = "N" }
h = { name = "sag", choices = [0.6, 0.8], unit = "m" }
r = { name = "reach", choices = [1.0], unit = "m" }
s = { name = "reach from B to C", choices = [1.5], unit = "m" }
t = { name = "reach from C to D", choices = [2.0], unit = "m" }
[unknown]
y = { name = "sag at B", unit = "m", from = 0, to = 2 }
z = { name = "sag at D", unit = "m", from = 0, to = 2 }
[points]
A = [0, 0]
B = ["r", "-y"]
C = ["r + s", "-h"]
D = ["r + s + t", "-z"]
E = ["2*r + s + t", 0]
"""
VALUES: dict[str, NDArray[np.float64]] = {
    "u": np.array([20.0, 30.0]),
    "v": np.array([40.0, 50.0]),
    "w": np.array([25.0, 35.0]),
    "h": np.array([0.6, 0.8]),
    "r": np.full(2, 1.0),
    "s": np.full(2, 1.5),
    "t": np.full(2, 2.0),
    "g": np.full(2, 9.8),
}


def knot(body: str, at: str, weight: str) -> str:
    return (
        f'[body.{body}]\nparticle = true\nalong = ["{at}"]\nname = "knot {at}"\n'
        f'[[weight]]\nbody = "{body}"\nforce = "{weight}"\n'
    )


def wire(body: str, toward: str, symbol: str, other: str = "") -> str:
    joins = f'other = "{other}"\n' if other else ""
    return (
        f'[[cable]]\nbody = "{body}"\n{joins}toward = "{toward}"\nsymbol = "{symbol}"\n'
        f'name = "wire {symbol}"\n'
    )


POTS = (
    knot("one", "B", "u") + knot("two", "C", "v") + knot("three", "D", "w")
    + wire("one", "A", "T_1") + wire("one", "C", "T_2", "two")
    + wire("two", "D", "T_3", "three") + wire("three", "E", "T_4")
)  # fmt: skip
FINDS = "".join(f'[[find]]\nquantity = "{id}"\n' for id in ("y", "z", "T_1", "T_3"))
THREE = HEAD + GIVEN + POTS + FINDS


def cable_of(system: System) -> LoadedCable | None:
    return loaded_cable(system, VALUES)


def by_numpy(at: int) -> dict[str, float]:
    """The sags and tensions of one draw."""
    u, v, w, h = (float(VALUES[name][at]) for name in "uvwh")
    rows = [  # H, H y, H z: rises over runs, up positive
        [-h / 1.5, 1.0 + 1.0 / 1.5, 0.0],
        [h / 1.5 + h / 2.0, -1.0 / 1.5, -1.0 / 2.0],
        [-h / 2.0, 0.0, 1.0 / 2.0 + 1.0],
    ]
    level, first, last = np.linalg.solve(np.array(rows), np.array([u, v, w]))
    y, z = first / level, last / level
    return {
        "y": y,
        "z": z,
        "T_1": level * float(np.hypot(1.0, y)),
        "T_3": level * float(np.hypot(2.0, h - z)) / 2.0,
    }


def test_three_knots_with_two_sags_sought_are_worked_and_proved() -> None:
    plan = find_plan(system_of(THREE), VALUES)
    found = solve(plan, VALUES)
    assert prove(plan, found).holds.all()
    for at in (0, 1):
        expected = by_numpy(at)
        got = {id: float(np.asarray(found[id])[at]) for id in expected}
        assert got == pytest.approx(expected, rel=1e-9)


def test_the_balances_hold_the_level_part_and_no_root() -> None:
    system = system_of(THREE)
    cable = cable_of(system)
    assert cable is not None
    written = [plain(each.expression) for each in cable.equations(system, Method())]
    assert "H (y/r) + H ((y − h)/s) − u" in written
    assert all("√" not in each for each in written if each.startswith("H (y"))
    assert knots_along(system, "T_1") == ("one", "two", "three")


def test_of_its_knots_no_balance_with_roots_is_tried_beside_them() -> None:
    """They say the same twice, and seem to be independent away from equilibrium."""
    system = system_of(THREE)
    cable = cable_of(system)
    assert cable is not None
    told = cable.told(system)
    tried = [*_possible(told, (cable.definition,), Method(), cable)]
    assert len(tried) == 6 + 4  # of one, two and three knots along y; the part of each stretch
    assert all("√" not in plain(each.expression) for each in tried if each.kind == "force")


def test_where_a_place_is_known_or_something_pulls_sideways_there_is_none() -> None:
    """By two balances of each knot where all places are given; a wind pulls one knot aside."""
    known = THREE.replace("[unknown]\n", "").replace("from = 0, to = 2", "choices = [0.4]")
    known = known.replace(FINDS, "")
    wind = '[[force]]\nbody = "two"\ndirection = 180\nmagnitude = "u"\nsymbol = "P"\n'
    assert cable_of(system_of(known + '[[find]]\nquantity = "T_1"\n')) is None
    assert cable_of(system_of(THREE.replace(FINDS, wind + FINDS))) is None


ALIKE = (
    THREE.replace('"-z"', '"-y"').replace("s + t", "2*s").replace('[[find]]\nquantity = "z"\n', "")
    .replace('z = { name = "sag at D", unit = "m", from = 0, to = 2 }', "")
    .replace('t = { name = "reach from C to D", choices = [2.0], unit = "m" }\n', "")
    .replace('force = "w"', 'force = "u"')
    .replace('w = { name = "weight at D", choices = [25, 35], unit = "N" }\n', "")
)  # fmt: skip


def test_two_halves_that_are_alike_hold_each_other() -> None:
    """One balance follows from the others: of the whole wire H (2 y/1.0 m) = 2 u + v, and at C
    2 H (h - y)/1.5 m = v, by hand.
    """
    values = {name: VALUES[name] for name in "uvhrsg"}
    found = solve(find_plan(system_of(ALIKE), values), values)
    for at in (0, 1):
        u, v, h = (float(VALUES[name][at]) for name in "uvh")
        y = h * (u + v / 2.0) / (u + v / 2.0 + 1.5 * v / 2.0)
        level = (u + v / 2.0) / y
        assert float(np.asarray(found["y"])[at]) == pytest.approx(y, rel=1e-9)
        assert float(np.asarray(found["T_3"])[at]) == pytest.approx(
            level * float(np.hypot(1.5, h - y)) / 1.5, rel=1e-9
        )
