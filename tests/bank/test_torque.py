"""The torque of forces about a point, and the place of their resultant, beside x F_y - y F_x."""

from __future__ import annotations

import math

import pytest

from probgen.bank.labels import Coined, Reason, Sort
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.input.fault import InputError
from probgen.quantities.expression import evaluate
from probgen.quantities.printing import plain
from probgen.statics.system import Find, Form
from tests.situations import HEAD

FRAME = (
    HEAD
    + """
[given]
a = { name = "distance of B", choices = [0.5, 1.0], unit = "m" }
b = { name = "distance of C", choices = [1.5, 2.0], unit = "m" }
P = { name = "first load", choices = [300], unit = "N" }
Q = { name = "second load", choices = [500], unit = "N" }
M = { name = "couple", choices = [80], unit = "N*m" }
theta = { name = "slope", choices = [30], unit = "deg" }
[points]
A = [0, 0]
B = ["a", 0]
C = ["b", 0]
H = ["b", "0.4 m"]
[body.beam]
along = ["A", "C"]
[[force]]
at = "B"
direction = 270
magnitude = "P"
[[force]]
at = "H"
direction = "270 + theta"
magnitude = "Q"
[[couple]]
at = "B"
moment = "-M"
symbol = "C_0"
name = "motor"
"""
)
VALUES = {"a": 0.8, "b": 1.7, "P": 300.0, "Q": 500.0, "M": 80.0, "theta": 30.0, "C_0": -80.0}
PLACES = {"A": (0.0, 0.0), "B": (0.8, 0.0), "C": (1.7, 0.0), "H": (1.7, 0.4)}
FORCES = {
    "P": ("B", 0.0, -300.0),
    "Q": ("H", 500.0 * math.sin(math.radians(30)), -500.0 * math.cos(math.radians(30))),
}


def asked(*lines: str) -> Template:
    return read_template("\n".join((FRAME, "[[find]]", *lines)), "own.toml")


def value(template: Template, id: str) -> float:
    (size,) = (d.expression for d in template.system.definitions if d.variable == id)
    return float(evaluate(size, VALUES))


def turning(about: str, names: str) -> float:
    """Newton metres, counter-clockwise, from coordinates."""
    found = -80.0 if "C_0" in names else 0.0
    x, y = PLACES[about]
    for at, fx, fy in (FORCES[name] for name in names.split() if name in FORCES):
        found += (PLACES[at][0] - x) * fy - (PLACES[at][1] - y) * fx
    return found


def listed(names: str) -> str:
    return str(names.split()).replace("'", '"')


@pytest.mark.parametrize("about", ["A", "B", "C", "H"])
@pytest.mark.parametrize("names", ["P Q", "P Q C_0", "Q"])
def test_a_torque_about_a_point(about: str, names: str) -> None:
    template = asked(f"torque = {listed(names)}", f'about = "{about}"', 'symbol = "M_O"')
    assert value(template, "M_O") == pytest.approx(turning(about, names), abs=1e-9)
    assert template.system.finds == (Find("M_O", Form.VALUE),)
    assert template.labels.quantities["M_O"].name == Coined(Sort.TORQUE, at=about)
    assert template.labels.reasons["M_O"] is Reason.TORQUE


def test_arms_are_written_the_way_round_that_is_positive() -> None:
    template = asked('torque = ["P"]', 'about = "C"', 'symbol = "M_C"', 'unit = "kN*m"')
    (size,) = (d.expression for d in template.system.definitions if d.variable == "M_C")
    assert plain(size) == "P (b − a)"  # C lies to the right of B in all draws
    assert template.system.variables["M_C"].unit.name == "kN*m"


RESULTANT = ('symbol = "R"', 'name = "resultant"', 'place = "d"')


@pytest.mark.parametrize("origin", ["A", "B", "H"])
@pytest.mark.parametrize("names", ["P Q", "P Q C_0", "Q"])
@pytest.mark.parametrize(("along", "turn"), [("", 0.0), ('along = ["C", "H"]', 90.0)])
def test_a_resultant_does_where_it_acts_what_they_all_do(
    origin: str, names: str, along: str, turn: float
) -> None:
    template = asked(f"resultant = {listed(names)}", *RESULTANT, f'from = "{origin}"', along)
    assert [find.quantity for find in template.system.finds] == ["R", "d"]
    distance, way = value(template, "d"), math.radians(turn)
    held = [FORCES[name] for name in names.split() if name in FORCES]
    fx, fy = sum(force[1] for force in held), sum(force[2] for force in held)
    turned = distance * (math.cos(way) * fy - math.sin(way) * fx)
    assert turned == pytest.approx(turning(origin, names))
    named = template.labels.quantities["d"].name
    assert isinstance(named, Coined)
    assert named.line == (("C", "H") if along else ())


FAULTS = [
    (('torque = ["V"]', 'about = "A"', 'symbol = "M_O"'), "find[0].torque[0]"),
    (('torque = ["P"]', 'about = "Z"', 'symbol = "M_O"'), "find[0].about"),
    (('torque = ["P"]', 'about = "A"', 'symbol = "M_O"', 'unit = "N"'), "find[0].unit"),
    (('resultant = ["P", "C_0"]', 'symbol = "R"', 'name = "r"'), "find[0].resultant[1]"),
    (('resultant = ["P"]', *RESULTANT, 'from = "Z"'), "find[0].from"),
    (('resultant = ["P"]', *RESULTANT, 'from = "A"', 'unit = "kg"'), "find[0].unit"),
    (('resultant = ["P"]', *RESULTANT, 'from = "A"', 'along = ["C", "H"]'), "find[0].place"),
]


@pytest.mark.parametrize(("lines", "field"), FAULTS)
def test_what_has_no_torque_or_no_place(lines: tuple[str, ...], field: str) -> None:
    with pytest.raises(InputError) as refused:
        asked(*lines)
    assert [fault.field for fault in refused.value.faults] == [field]


def test_equal_forces_with_one_letter_all_count() -> None:
    twice = FRAME.replace(
        "[[couple]]", '[[force]]\nat = "C"\ndirection = 270\nmagnitude = "P"\n[[couple]]'
    )
    lines = ("[[find]]", 'torque = ["P"]', 'about = "A"', 'symbol = "M_O"')
    template = read_template("\n".join((twice, *lines)), "own.toml")
    assert value(template, "M_O") == pytest.approx(-300.0 * (0.8 + 1.7))
