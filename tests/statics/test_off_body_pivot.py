"""Points where two lines of action meet, beside the intersections numpy works out."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.quantities.expression import Value, evaluate
from probgen.statics.balances import candidates
from probgen.statics.method import Method
from probgen.statics.numeric_equations import coordinates
from probgen.statics.off_body_pivot import with_meeting_points
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from probgen.statics.system import System

HEAD = """
id = "own"
revision = 1
title = "Own"
family = "beams"
level = 3
goals = ["own"]
statement = "Own."
[given]
L = { name = "length", choices = [2.0, 2.5], unit = "m" }
m = { name = "mass", choices = [40, 60], unit = "kg" }
theta = { name = "angle", choices = [50, 65], unit = "deg" }
F = { name = "load", choices = [100, 150], unit = "N" }
"""
PLATFORM = """
[points]
A = [0, 0]
B = ["L", 0]
C = ["0.8*L", 0]
[body.platform]
along = ["A", "B"]
[[weight]]
uniform = true
mass = "m"
"""
VALUES = {
    "L": np.array([2.0, 2.5, 2.0]),
    "m": np.array([60.0, 40.0, 50.0]),
    "theta": np.array([62.0, 65.0, 60.0]),
    "F": np.array([100.0, 150.0, 120.0]),
    "g": np.full(3, 9.8),
}


def cable(at: str, direction: str | int, symbol: str) -> str:
    way = f'"{direction}"' if isinstance(direction, str) else direction
    return f'[[cable]]\nat = "{at}"\ndirection = {way}\nsymbol = "{symbol}"\n'


def finds(*symbols: str) -> str:
    return "".join(f'[[find]]\nquantity = "{symbol}"\n' for symbol in symbols)


def system_of(text: str) -> System:
    return read_template(HEAD + text, "own.toml").system


THREE = PLATFORM + cable("A", "180 - theta", "T_1") + cable("B", 60, "T_2") + cable("C", 80, "T_3")


def meetings(system: System) -> dict[str, tuple[np.ndarray, np.ndarray]]:
    """Coordinates of the points added."""
    found = coordinates(with_meeting_points(system), VALUES)
    return {name: place for name, place in found.items() if name not in system.points}


def crossing(system: System, one: str, other: str) -> np.ndarray:
    """Where two forces' lines meet, by numpy: p + s u = q + t v, shape (draws, 2)."""
    places = coordinates(system, VALUES)
    found = []
    for draw in range(3):
        known = {name: value[draw] for name, value in VALUES.items()}
        rows, starts = [], []
        for id in (one, other):
            force = system.force(id)
            turned = np.radians(float(np.asarray(evaluate(force.direction, known))))
            rows.append([np.cos(turned), np.sin(turned)])
            starts.append([float(np.broadcast_to(c, 3)[draw]) for c in places[force.point]])
        (u, v), (p, q) = np.array(rows), np.array(starts)
        s, _ = np.linalg.solve(np.stack([u, -v], axis=1), q - p)
        found.append(p + s * u)
    return np.array(found)


@pytest.mark.parametrize(("one", "other"), [("T_1", "T_2"), ("T_1", "T_3"), ("T_2", "T_3")])
def test_each_two_oblique_cables_meet_in_a_point(one: str, other: str) -> None:
    system = system_of(THREE + finds("T_1"))
    wanted = crossing(system, one, other)
    gaps = [
        np.abs(np.stack(np.broadcast_arrays(*place), axis=-1) - wanted).max()
        for place in meetings(system).values()
    ]
    assert min(gaps) < 1e-9
    assert len(gaps) == 3


def test_parallel_lines_and_forces_at_one_point_add_none() -> None:
    parallel = PLATFORM + cable("A", 90, "T_1") + cable("B", 90, "T_2") + finds("T_1")
    assert meetings(system_of(parallel)) == {}
    together = PLATFORM + cable("A", 90, "T_1") + cable("A", 60, "T_2") + finds("T_1")
    assert meetings(system_of(together)) == {}


def test_a_meeting_at_a_point_of_the_body_adds_none() -> None:
    """A cable at B that runs along the platform meets the other where that one acts."""
    level = PLATFORM + cable("A", 60, "T_1") + cable("B", 0, "T_2") + finds("T_1")
    assert meetings(system_of(level)) == {}


def test_known_forces_have_no_meeting_points() -> None:
    known = PLATFORM + cable("A", 60, "T_1") + cable("B", 90, "T_2") + finds("T_1")
    push = '[[force]]\nat = "C"\ndirection = 200\nmagnitude = "F"\n'
    assert len(meetings(system_of(known + push))) == len(meetings(system_of(known))) == 1


def test_a_letter_of_the_author_is_not_taken() -> None:
    taken = THREE.replace("C = [", 'S = ["L/4", "0.2 m"]\nC = [') + finds("T_1")
    system = system_of(taken)
    assert "S" in system.points
    assert with_meeting_points(system).points["S"] == system.points["S"]
    assert len(meetings(system)) == 3


def test_a_particle_needs_none() -> None:
    knot = '[body.knot]\nparticle = true\n[[weight]]\nmass = "m"\n'
    cords = "".join(
        f'[[cable]]\ndirection = {way}\nsymbol = "{symbol}"\n'
        for way, symbol in ((30, "T_1"), (140, "T_2"))
    )
    system = system_of(knot + cords + finds("T_1"))
    assert with_meeting_points(system).points == system.points


def test_three_cables_are_found_one_at_a_time() -> None:
    """Each about the point where the other two meet, as far as that is needed."""
    system = system_of(THREE + finds("T_1", "T_2", "T_3"))
    plan = find_plan(system, VALUES)
    assert not any(step.partners for step in plan.steps)
    first = plan.steps[0]
    assert first.equation.kind == "torque"
    assert first.equation.about not in system.points
    assert first.equation.about in plan.system.points
    assert len(first.removed) == 2


def test_so_they_are_as_numpy_solves_them_at_once() -> None:
    """Columns: (cos, sin, torque about A) of each cable; right side: the weight."""
    plan = find_plan(system_of(THREE + finds("T_1", "T_2", "T_3")), VALUES)
    solved = solve(plan, VALUES)
    assert prove(plan, solved).holds.all()
    for draw in range(3):
        length, weight = VALUES["L"][draw], VALUES["m"][draw] * 9.8
        ways = np.radians([180.0 - VALUES["theta"][draw], 60.0, 80.0])
        arms = np.array([0.0, length, 0.8 * length])
        matrix = np.array([np.cos(ways), np.sin(ways), arms * np.sin(ways)])
        wanted = np.linalg.solve(matrix, [0.0, weight, weight * length / 2.0])
        found = [float(np.asarray(solved[f"T_{place}"])[draw]) for place in (1, 2, 3)]
        assert found == pytest.approx(wanted, rel=1e-9)


def test_points_no_step_uses_are_left_out() -> None:
    """A hinge settles the rest at once: nothing off the body is named."""
    hinged = PLATFORM + '[[hinge]]\nat = "A"\nsymbol = "R"\n' + cable("B", 60, "T") + finds("T")
    system = system_of(hinged)
    assert find_plan(system, VALUES).system.points == system.points


def test_one_draw_alone_has_the_same_points() -> None:
    system = with_meeting_points(system_of(THREE + finds("T_1")))
    alone: dict[str, Value] = {name: value[1] for name, value in VALUES.items()}
    single, batch = coordinates(system, alone), coordinates(system, VALUES)
    for name, (x, y) in single.items():
        assert float(x) == pytest.approx(float(np.broadcast_to(batch[name][0], 3)[1]))
        assert float(y) == pytest.approx(float(np.broadcast_to(batch[name][1], 3)[1]))


def test_a_point_of_the_author_is_no_meeting_point_whatever_its_letter() -> None:
    """Q, where nothing acts, is no pivot; called S it was taken for a meeting point."""
    aside = PLATFORM.replace("[points]\n", '[points]\nQ = ["L/3", "L/2"]\n')
    text = aside + cable("A", 90, "T_1") + cable("B", 90, "T_2") + finds("T_1", "T_2")
    systems = [system_of(text), system_of(text.replace("Q = [", "S = ["))]
    pivots = [{e.about for e in candidates(each, (), Method())} for each in systems]
    assert pivots[0] == pivots[1]
    assert not {"Q", "S"} & pivots[0]
    first, second = (find_plan(each, VALUES) for each in systems)
    assert first.steps == second.steps
