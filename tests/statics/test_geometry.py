"""Sines reduced as by hand; ways from point to point."""

import pickle
from decimal import Decimal

import numpy as np
import pytest

from probgen.quantities.expression import (
    Expression,
    Name,
    evaluate,
    number,
    over,
    times,
    total,
)
from probgen.quantities.printing import plain
from probgen.quantities.unit import DEGREE
from probgen.statics.geometry import angle_of, cosine, sine, way
from probgen.statics.system import Link, Point

TH, AL = Name("theta", "theta"), Name("alpha", "alpha")

REDUCED = [
    (number(0), "0", "1"),
    (number(90), "1", "0"),
    (number(-90), "−1", "0"),
    (number(210), "−sin 30°", "−cos 30°"),
    (TH, "sin θ", "cos θ"),
    (total((1, number(180)), (-1, TH)), "sin θ", "−cos θ"),
    (total((1, number(90)), (1, TH)), "cos θ", "−sin θ"),
    (total((-1, number(90)), (-1, TH)), "−cos θ", "−sin θ"),
    (total((1, number(270)), (1, TH)), "−cos θ", "sin θ"),
    (total((1, TH), (-1, AL)), "sin(θ − α)", "cos(θ − α)"),
    (total((1, number(180)), (1, TH), (-1, AL)), "−sin(θ − α)", "−cos(θ − α)"),
    (over(TH, number(2)), "sin(θ/2)", "cos(θ/2)"),
    (times(number(2), TH), "sin(2 θ)", "cos(2 θ)"),
]


@pytest.mark.parametrize(("direction", "sines", "cosines"), REDUCED)
def test_sines_and_cosines_are_reduced(direction: Expression, sines: str, cosines: str) -> None:
    assert plain(sine(angle_of(direction))) == sines
    assert plain(cosine(angle_of(direction))) == cosines


@pytest.mark.parametrize("constant", range(-360, 361, 15))
@pytest.mark.parametrize("multiple", ["1", "-1", "0.5", "-2"])
def test_reduction_never_changes_the_value(constant: int, multiple: str) -> None:
    direction = total((1, number(constant)), (1, times(number(multiple), TH)), (-1, AL))
    angle = angle_of(direction)
    values = {"theta": 23.7, "alpha": 71.3}
    degrees = np.radians(constant + float(multiple) * 23.7 - 71.3)
    assert float(evaluate(sine(angle), values)) == pytest.approx(np.sin(degrees), abs=1e-14)
    assert float(evaluate(cosine(angle), values)) == pytest.approx(np.cos(degrees), abs=1e-14)


PRINTED = [
    (total((1, TH), (1, number(30))), "30° + θ"),
    (total((-1, TH), (1, number(180))), "180° − θ"),
    (total((1, TH), (-1, number(30))), "θ − 30°"),
    (total((-1, TH), (-1, number(30))), "−30° − θ"),
    (total((-1, TH), (1, AL), (1, number(90))), "90° + α − θ"),
    (total((1, TH), (1, number(30)), (-1, number(30))), "θ"),
    (number(-45), "−45°"),
    (number(0), "0"),
]


@pytest.mark.parametrize(("direction", "printed"), PRINTED)
def test_an_angle_is_printed_with_what_is_added_first(direction: Expression, printed: str) -> None:
    assert plain(angle_of(direction).expression) == printed


def test_the_constant_of_an_angle_is_collected() -> None:
    angle = angle_of(total((1, number(180)), (-1, total((1, TH), (-1, number(30))))))
    assert angle.constant == Decimal(210)
    assert plain(angle.expression) == "210° − θ"


L, D = Name("L", "L"), Name("d", "d")
ZERO_DEG, UP = number(0), number(90)
POINTS = {
    "O": Point("O", ()),
    "G": Point("G", (Link(over(L, number(2)), ZERO_DEG),)),
    "B": Point("B", (Link(L, ZERO_DEG),)),
    "C": Point("C", (Link(D, ZERO_DEG),)),
    "P": Point("P", (Link(D, ZERO_DEG), Link(L, UP))),
    "Q": Point("Q", (Link(D, ZERO_DEG), Link(L, UP), Link(D, number(180)))),
    "T": Point("T", (Link(L, TH),)),
    "S": Point("S", (Link(over(L, number(2)), TH),)),
}
WAYS = [
    ("O", "B", [("L", "0")]),
    ("B", "O", [("L", "180°")]),
    ("G", "B", [("L/2", "0")]),
    ("B", "G", [("L/2", "180°")]),
    ("C", "G", [("L/2 − d", "0")]),
    ("B", "B", []),
    ("O", "P", [("d", "0"), ("L", "90°")]),
    ("C", "P", [("L", "90°")]),
    ("O", "Q", [("L", "90°")]),
    ("S", "T", [("L/2", "θ")]),
    ("T", "S", [("L/2", "180° + θ")]),
]


@pytest.mark.parametrize(("start", "end", "links"), WAYS)
def test_ways_join_links_along_one_line(start: str, end: str, links: list[tuple[str, str]]) -> None:
    found = [(plain(link.length), plain(link.direction)) for link in way(POINTS, start, end)]
    assert found == links


def test_degrees_are_degrees_also_in_a_copy_of_their_unit() -> None:
    """A plan that has been to another process holds units that are equal, not the same; there
    "90°" became "90.0°".
    """
    copied = pickle.loads(pickle.dumps(DEGREE))
    assert str(angle_of(number(90, copied)).constant) == "90"
