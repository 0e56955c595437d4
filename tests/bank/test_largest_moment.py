"""[[find]] largest_moment: what is asked, where the section is laid, and what is refused."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.bank.labels import Coined, Sort
from probgen.quantities.printing import plain
from probgen.statics.plan import find_plan
from probgen.statics.solution import solve
from probgen.statics.system import Role, System
from tests.bank.test_section import (
    BEAM,
    BUILT_IN,
    LOAD,
    ON_TWO,
    TURNED,
    faults,
    read,
    spread,
)

EVEN = spread("A", "B", '"w"', '"w"')
DOWN = LOAD.replace("300", "270")
VALUES = {"L": 6.0, "a": 1.5, "d": 2.5, "F": 900.0, "w": 120.0, "g": 9.8}


def asked(*lines: str) -> str:
    return "\n".join(['[[find]]\nlargest_moment = "beam"', *lines, ""])


def solved(system: System) -> dict[str, float]:
    given = {id: np.array([value]) for id, value in VALUES.items()}
    found = solve(find_plan(system, given), given)
    return {id: float(np.asarray(value).flat[0]) for id, value in found.items()}


CASES = [
    # an even load on two supports: w L^2/8 in the middle
    (ON_TWO + EVEN, ('between = ["A", "B"]',), 540.0, 3.0),
    # a load at a point: F a b/L under it
    (ON_TWO + DOWN, ('at = "C"',), 1012.5, 1.5),
    (ON_TWO + DOWN, ('at = "C"', 'just = "before"'), 1012.5, 1.5),
    (ON_TWO + DOWN, ('at = "C"', 'just = "after"', 'from = "B"'), 1012.5, 4.5),
    # both: R = 1035 N, V from 855 N to -45 N under the load
    (ON_TWO + EVEN + DOWN, ('at = "C"',), 1035 * 1.5 - 60 * 1.5**2, 1.5),
    # a third of the load: R = 585 N, V = 0 where 585 - 300 - 120 x = 0
    (
        ON_TWO + EVEN + DOWN.replace('"F"', '"F/3"\nsymbol = "P"'),
        ('between = ["C", "B"]',),
        585 * 2.375 - 300 * 0.875 - 60 * 2.375**2,
        2.375,
    ),
    # built in: w L^2/2 at the wall, the upper side stretched
    (BUILT_IN + EVEN, ('at = "B"', 'from = "A"'), -2160.0, 6.0),
    # from nothing at A to w at B: V = R - w x^2/(2 L) is zero at L/sqrt 3, w L^2/(9 sqrt 3)
    (ON_TWO + spread("A", "B", "0", '"w"'), ('between = ["A", "B"]',), 277.128, 3.4641),
    # from nothing at C: R = 67.5 N, V = 0 where 67.5 - 120 (x - 1.5)^2/9 = 0
    (ON_TWO + spread("C", "B", "0", '"w"'), ('between = ["C", "B"]',), 202.5, 3.75),
    # from nothing at C to w at D: R = 38.333 N, V = 0 at 0.7993 m after C, its curve before C too
    (ON_TWO + spread("C", "D", "0", '"w"'), ('between = ["C", "D"]',), 77.927, 2.29931),
    # from w at A to nothing at B, told from where it begins with zero
    (
        ON_TWO + spread("A", "B", '"w"', "0"),
        ('between = ["A", "B"]', 'from = "B"'),
        277.128,
        3.4641,
    ),
]


@pytest.mark.parametrize(("text", "lines", "moment", "place"), CASES)
def test_the_moment_and_its_place(
    text: str, lines: tuple[str, ...], moment: float, place: float
) -> None:
    system = read(BEAM + text + asked(*lines)).system
    assert [find.quantity for find in system.finds] == ["M_max", "x_m"]
    found = solved(system)
    assert found["x_m"] == pytest.approx(place, rel=1e-5)
    assert found["M_max"] == pytest.approx(moment, rel=1e-5)


def test_between_two_points_no_shear_force_is_bared_and_the_place_is_unknown() -> None:
    template = read(BEAM + ON_TWO + EVEN + asked('between = ["A", "B"]'))
    system = template.system
    (largest,) = system.largest
    (part,) = (body for body in system.bodies if body.part_of)
    bared = next(element for element in system.elements if element.at == largest.at)
    assert (part.outline, bared.forces) == (("A", "X"), ("N_X",))
    place = system.variables["x_m"]
    assert (place.role, place.low, place.high) == (Role.UNKNOWN, 0.0, 7.0)
    assert largest.at not in system.uncut.points
    named = template.labels.quantities
    assert named["M_max"].name == Coined(Sort.LARGEST_MOMENT, named["M_max"].name.of)  # type: ignore[union-attr]
    assert named["x_m"].name == Coined(Sort.LARGEST_MOMENT_PLACE, at="A")


def test_at_a_point_the_place_follows_from_the_data() -> None:
    system = read(BEAM + ON_TWO + DOWN + asked('at = "C"')).system
    assert system.variables["x_m"].role is Role.DEFINED
    (part,) = (body for body in system.bodies if body.part_of)
    acting = {force.element for force in system.forces if force.body == part.id}
    assert (part.outline, acting) == (("C", "B"), {"S", "N_C"})  # the load is on neither side


def test_letters_may_be_chosen() -> None:
    system = read(
        BEAM + ON_TWO + EVEN + asked('between = ["A", "B"]', 'symbol = "M"', 'place = "s"')
    ).system
    assert [find.quantity for find in system.finds] == ["M", "s"]


CURVED = """
[[distributed]]
from = "A"
to = "B"
intensity = "w*(x/L)^2"
symbol = "Q"
"""
BENT = BEAM.replace('"A", "B"]\n', '"A", "C", "B"]\n')
WIDE = BEAM.replace("choices = [1.5]", "choices = [1.5, 3.0]")
FAULTY = [
    (BEAM + ON_TWO + EVEN + asked(), "at a point, or between two"),
    (BEAM + ON_TWO + EVEN + asked('at = "C"', 'between = ["C", "B"]'), "at a point, or between"),
    (BEAM + ON_TWO + EVEN + asked('between = ["C"]'), "two points, in their order"),
    (BEAM + ON_TWO + EVEN + asked('between = ["B", "C"]'), "in their order along the body"),
    (WIDE + ON_TWO + EVEN + asked('between = ["C", "D"]'), "in their order along the body"),
    (BEAM + ON_TWO + EVEN + asked('between = ["C", "Z"]'), "the points A"),
    (BEAM + ON_TWO + EVEN + DOWN + asked('between = ["A", "B"]'), "a stretch with F"),
    (BEAM + ON_TWO + DOWN + asked('between = ["C", "B"]'), "a load spread along it"),
    (BEAM + ON_TWO + EVEN + asked('between = ["C", "B"]', 'from = "D"'), "not between C and B"),
    (BEAM + ON_TWO + EVEN + asked('at = "C"', 'from = "C"'), "on one side of the largest"),
    (BEAM + ON_TWO + TURNED + asked('at = "C"'), "a side of the couple"),
    (BEAM + ON_TWO + CURVED + asked('between = ["A", "B"]'), "run evenly"),
    (
        BEAM + ON_TWO + spread("A", "B", '"w"', '"2*w"') + asked('between = ["A", "B"]'),
        "begins with zero",
    ),
    (BENT + ON_TWO + EVEN + asked('between = ["A", "B"]'), "a straight body"),
    (
        BEAM + ON_TWO + EVEN + asked('between = ["A", "B"]', 'symbol = "F"'),
        "a symbol that nothing else has",
    ),
    (
        BEAM.replace('C = ["a", 0]', 'C = ["a", "0.2 m"]') + ON_TWO + EVEN + asked('at = "C"'),
        "a point on the axis",
    ),
    (
        BEAM.replace('C = ["a", 0]', 'C = ["-a", 0]') + ON_TWO + EVEN + asked('at = "C"'),
        "a point from A to B",
    ),
    (
        BEAM
        + ON_TWO
        + '[[weight]]\nforce = "90 N"\nsymbol = "W"\nuniform = true\n'
        + asked('at = "D"'),
        "distributed",
    ),
]


@pytest.mark.parametrize(("text", "told"), FAULTY)
def test_faults_are_told(text: str, told: str) -> None:
    assert told in faults(text)


def test_a_place_that_is_a_root_is_written_under_one_root() -> None:
    text = BEAM + ON_TWO + spread("C", "B", "0", '"w"') + asked('between = ["C", "B"]')
    system = read(text).system
    given = {id: np.array([value]) for id, value in VALUES.items()}
    steps = {step.unknown: step.expression for step in find_plan(system, given).steps}
    assert plain(steps["x_m"]) == "a + √(2 Q_2 (L − a)/w)"
