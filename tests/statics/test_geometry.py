"""Sines reduced as by hand; ways from point to point."""

import pickle
from decimal import Decimal

import numpy as np
import pytest

from probgen.quantities.expression import (
    Call,
    Expression,
    Lump,
    Name,
    evaluate,
    number,
    over,
    times,
    total,
)
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain
from probgen.quantities.unit import DEGREE
from probgen.statics.geometry import (
    angle_of,
    cosine,
    inclined,
    opposite,
    sine,
    way,
)
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
BACK = total((1, number(180)), (-1, TH))


def tangent(slope: Expression) -> Expression:
    return Call("tan", (slope,))


RUN, RISE = (times(L, part(angle_of(TH))) for part in (cosine, sine))
POINTS = {
    "O": Point("O", ()),
    "G": Point("G", (Link(over(L, number(2)), ZERO_DEG),)),
    "B": Point("B", (Link(L, ZERO_DEG),)),
    "C": Point("C", (Link(D, ZERO_DEG),)),
    "P": Point("P", (Link(D, ZERO_DEG), Link(L, UP))),
    "Q": Point("Q", (Link(D, ZERO_DEG), Link(L, UP), Link(D, number(180)))),
    "T": Point("T", (Link(L, TH),)),
    "S": Point("S", (Link(over(L, number(2)), TH),)),
    "F": Point("F", (Link(times(number(2), L, cosine(angle_of(TH))), ZERO_DEG),)),
    "H": Point("H", (Link(times(number(2), L, cosine(angle_of(TH))), ZERO_DEG), Link(D, BACK))),
    "V": Point("V", (Link(times(number(2), L, sine(angle_of(TH))), UP),)),
    "D": Point("D", (Link(total((1, RUN), (1, over(RISE, tangent(AL)))), ZERO_DEG),)),
    "E": Point("E", (Link(over(RISE, tangent(AL)), ZERO_DEG), Link(RISE, UP))),
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
    ("F", "T", [("L", "180° − θ")]),  # the other leg of an A, from its foot
    ("T", "F", [("L", "−θ")]),
    ("T", "H", [("L − d", "−θ")]),
    (
        "V",
        "T",
        [
            ("L", "−θ"),
        ],
    ),
    ("T", "D", [("L sin θ/(sin α)", "−α")]),  # a prop from its top, by the slopes of both
    ("D", "T", [("L sin θ/(sin α)", "180° − α")]),
    ("O", "E", [("L sin θ/(tan α)", "0"), ("L sin θ", "90°")]),  # written as two legs
]


@pytest.mark.parametrize(("start", "end", "links"), WAYS)
def test_ways_join_links_along_one_line(start: str, end: str, links: list[tuple[str, str]]) -> None:
    found = [(plain(link.length), plain(link.direction)) for link in way(POINTS, start, end)]
    assert found == links


SQUARE = Call("atan2", (L, D))
RIGHT_AND_UP = (Link(D, ZERO_DEG), Link(L, UP))
ON_A_SLOPE = (Link(D, ZERO_DEG), Link(times(D, tangent(TH)), UP))
INCLINED = [
    (RIGHT_AND_UP, total((1, SQUARE), (1, UP)), 1),
    (RIGHT_AND_UP, SQUARE, 1),
    (RIGHT_AND_UP, total((1, TH), (1, UP)), 2),
    (RIGHT_AND_UP[::-1], SQUARE, 2),
    (RIGHT_AND_UP[:1], SQUARE, 1),
    (ON_A_SLOPE, total((1, TH), (1, UP)), 1),
    (ON_A_SLOPE, AL, 2),
    ((*RIGHT_AND_UP, Link(Name("L", "L"), total((1, SQUARE), (1, number(180))))), SQUARE, 2),
]


@pytest.mark.parametrize(("links", "direction", "count"), INCLINED)
def test_a_way_is_one_step_where_the_direction_holds_its_slope(
    links: tuple[Link, ...], direction: Expression, count: int
) -> None:
    found = inclined(links, angle_of(direction))
    assert len(found) == count
    values = {"L": 1.3, "d": 0.5, "theta": 23.7, "alpha": 71.3}
    ends = []
    for way_ in (links, found):
        steps = [[float(evaluate(part, values)) for part in (x.length, x.direction)] for x in way_]
        ends.append(sum(size * np.exp(1j * np.radians(angle)) for size, angle in steps))
    assert ends[0] == pytest.approx(ends[1], rel=1e-12)


def test_a_side_downward_has_its_sign_in_front_of_its_share() -> None:
    angle = angle_of(Call("atan2", (total((-1, L), (-1, D)), total((-1, D), (1, L)))))
    assert plain(sine(angle)) == "−(L + d)/√((L − d)² + (L + d)²)"
    assert plain(cosine(angle)) == "(L − d)/√((L − d)² + (L + d)²)"


LENGTHS = [
    Call("atan2", (L, D)),
    Call("atan", (over(L, D),)),
    Call("asin", (over(D, L),)),
    Call("acos", (over(D, L),)),
]


@pytest.mark.parametrize("sign", [1, -1])
@pytest.mark.parametrize("quarters", range(-4, 5))
@pytest.mark.parametrize("angle", LENGTHS, ids=str)
def test_the_sine_of_an_angle_that_lengths_tell_has_no_angle_in_it(
    angle: Call, quarters: int, sign: int
) -> None:
    direction = angle_of(total((1, number(90 * quarters)), (sign, Lump(angle))))
    values = {"L": 1.3, "d": 0.5}
    degrees = np.radians(90 * quarters + sign * float(evaluate(angle, values)))
    for shown, wanted in ((sine(direction), np.sin(degrees)), (cosine(direction), np.cos(degrees))):
        assert float(evaluate(shown, values)) == pytest.approx(wanted, abs=1e-14)
        assert angle.function not in str(shown)


@pytest.mark.parametrize("slope", ["atan2", "atan"])
def test_sides_are_collected_before_they_are_shown(slope: str) -> None:
    rise, run = total((1, L), (1, L)), total((1, D), (1, L), (-1, L))
    own = angle_of(Call(slope, (rise, run) if slope == "atan2" else (over(rise, run),)))
    assert plain(sine(own)) == "2 L/√(d² + (2 L)²)"
    assert plain(cosine(own)) == "d/√(d² + (2 L)²)"


def test_degrees_are_degrees_also_in_a_copy_of_their_unit() -> None:
    """A plan that has been to another process holds units that are equal, not the same; there
    "90°" became "90.0°".
    """
    copied = pickle.loads(pickle.dumps(DEGREE))
    assert str(angle_of(number(90, copied)).constant) == "90"


OPPOSITE = [("0", 180.0), ("270", 90.0), ("180 - theta", 340.0), ("theta", 200.0)]


@pytest.mark.parametrize(("direction", "expected"), OPPOSITE)
def test_half_a_turn_on(direction: str, expected: float) -> None:
    turned = opposite(parse(direction, {"theta": Name("theta", "theta")}))
    found = float(np.ravel(evaluate(turned, {"theta": 20.0}))[0])
    assert found % 360.0 == pytest.approx(expected)
