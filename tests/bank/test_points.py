"""Points become links from the origin, whichever way they are written."""

from __future__ import annotations

import tomllib
from decimal import Decimal

import pytest

from probgen.bank.points import MOST_POINTS, read_point, read_points
from probgen.bank.quantity import read_givens
from probgen.bank.scope import Scope
from probgen.input.fault import Faults, InputError
from probgen.input.table import Table
from probgen.quantities.expression import evaluate
from probgen.statics.system import Point

VALUES = {"L": 2.0, "h": 0.5, "theta": 30.0, "g": 9.8}
GIVENS = """
L = { name = "length", choices = [2.0], unit = "m" }
h = { name = "height", choices = [0.5], unit = "m" }
theta = { name = "slope", choices = [30], unit = "deg" }
"""


def scope() -> Scope:
    found = Scope()
    read_givens(Table(tomllib.loads(GIVENS, parse_float=Decimal), "given", Faults("")), found)
    return found


def points(text: str) -> tuple[dict[str, Point], Faults]:
    faults = Faults("own.toml")
    content = tomllib.loads(text, parse_float=Decimal)
    return read_points(Table(content, "points", faults), scope()), faults


def links(text: str, name: str = "B") -> list[tuple[float, float]]:
    """Length and direction of each link to a point, for the values above."""
    found, faults = points(text)
    assert faults.found == []
    return [
        (float(evaluate(link.length, VALUES)), float(evaluate(link.direction, VALUES)))
        for link in found[name].links
    ]


ORIGIN = "A = [0, 0]\n"
PLACED = [
    ('B = ["L", "h"]', [(2.0, 0.0), (0.5, 90.0)]),
    ('B = ["-L", 0]', [(2.0, 180.0)]),
    ('B = ["-0.25 m", "-h"]', [(0.25, 180.0), (0.5, 270.0)]),
    ('B = ["L", 0]', [(2.0, 0.0)]),
    ("B = [0, 0]", []),
    ('B = { from = "A", distance = "L", direction = "theta" }', [(2.0, 30.0)]),
    ('B = { from = "C", distance = "h", direction = 90 }\nC = ["L", 0]',
     [(2.0, 0.0), (0.5, 90.0)]),
    ('B = { from = "A", distance = "h", toward = "C" }\nC = ["L", 0]', [(0.5, 0.0)]),
    ('B = { midpoint = ["A", "C"] }\nC = ["L", 0]', [(1.0, 0.0)]),
]  # fmt: skip


@pytest.mark.parametrize(("written", "expected"), PLACED, ids=[text for text, _ in PLACED])
def test_a_point_is_reached_by_links(written: str, expected: list[tuple[float, float]]) -> None:
    found = links(ORIGIN + written)
    assert len(found) == len(expected)
    for own, wanted in zip(found, expected, strict=True):
        assert own == pytest.approx(wanted)


REFUSED = [
    ("b = [0, 0]", "points.b"),
    ("ABCDEF = [0, 0]", "points.ABCDEF"),
    ("B = [0]", "points.B"),
    ("B = [0, 0, 0]", "points.B"),
    ('B = "L"', "points.B"),
    ('B = ["theta", 0]', "points.B[0]"),
    ('B = [0, "theta"]', "points.B[1]"),
    ('B = { from = "A", distance = "L", toward = "A" }', "points.B.toward"),
    ('B = { from = "C", distance = "L", direction = 0 }', "points.B.from"),
    ('B = { from = "A", distance = "L", direction = 0, side = 1 }', "points.B.side"),
    ('B = { from = "C", distance = "L", direction = 0 }\n'
     'C = { from = "B", distance = "L", direction = 0 }', "points.C"),
]  # fmt: skip


@pytest.mark.parametrize(("written", "field"), REFUSED, ids=[text for text, _ in REFUSED])
def test_what_is_no_point_is_refused_once(written: str, field: str) -> None:
    _, faults = points(ORIGIN + written)
    assert [fault.field for fault in faults.found] == [field]


@pytest.mark.parametrize("name", ["B", "B1", "B_1", "Bab", "B'", "B_12'"])
def test_names_of_points(name: str) -> None:
    _, faults = points(f'"{name}" = [0, 0]')
    assert faults.found == []


def test_so_many_points_and_no_more() -> None:
    many = [f"P_{n} = [0, 0]" for n in range(MOST_POINTS + 1)]
    assert len(points("\n".join(many[:-1]))[0]) == MOST_POINTS
    with pytest.raises(InputError, match=f"at most {MOST_POINTS}"):
        points("\n".join(many))


def test_a_point_is_named() -> None:
    faults = Faults("own.toml")
    known = {"A": Point("A", ()), "C": Point("C", ())}
    assert read_point(Table({"at": "C"}, "weight[0]", faults), "at", known) == "C"
    assert faults.found == []
    assert read_point(Table({"at": "D"}, "weight[0]", faults), "at", known) == ""
    assert [fault.field for fault in faults.found] == ["weight[0].at"]
