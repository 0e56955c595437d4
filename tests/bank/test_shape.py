"""Weights by their shapes: sizes and centroids beside sums over small pieces, and mistakes."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from probgen.bank.labels import Reason
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.input.fault import Fault, InputError
from probgen.quantities.expression import evaluate
from probgen.quantities.printing import plain
from probgen.statics.numeric_equations import coordinates
from probgen.statics.system import Kind, System
from tests.situations import HEAD

PLATE = """
[given]
b = { name = "length", choices = [1.6], unit = "m" }
h = { name = "height", choices = [0.9], unit = "m" }
r = { name = "radius", choices = [0.25], unit = "m" }
w = { name = "weight of the sheet", choices = [300], unit = "N/m^2" }
q = { name = "weight of the bar", choices = [12], unit = "N/m" }
[points]
O = [0, 0]
A = [0, "h"]
B = ["b", "h"]
D = ["b", 0]
E = ["b/2", "h/4"]
Q = ["b/3", "h/2"]
[body.plate]
along = ["O", "A", "B", "D", "O"]
[[cable]]
at = "A"
direction = 90
symbol = "S"
[[cable]]
at = "B"
direction = 90
symbol = "T"
[[find]]
quantity = "T"
"""
VALUES = {"b": 1.6, "h": 0.9, "r": 0.25, "w": 300.0, "q": 12.0}
PIECES = 1200


def part(shape: str, each: str = 'per_area = "w"', symbol: str = "W_1", more: str = "") -> str:
    return f'\n[[weight]]\n{shape}\n{each}\nsymbol = "{symbol}"\nof = "part {symbol[-1]}"\n{more}\n'


def read(text: str) -> Template:
    return read_template(HEAD + text, "trial.toml")


def place(system: System) -> complex:
    """Of the first weight."""
    x, y = coordinates(system, VALUES)[system.element("W_1").at]
    return complex(float(x), float(y))


Inside = Callable[[np.ndarray, np.ndarray], np.ndarray]


def summed(inside: Inside) -> tuple[float, complex]:
    """Area and centroid of what is inside, as a sum of small squares over 3 m by 3 m."""
    step = 3.0 / PIECES
    x, y = np.meshgrid(*(np.arange(PIECES) * step + step / 2 - 0.5 for _ in "xy"))
    held = inside(x, y)
    return held.sum() * step**2, complex(x[held].mean(), y[held].mean())


def corner(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Right-angled at D: D (1.6, 0), O (0, 0), B (1.6, 0.9)."""
    return (x < 1.6) & (y > 0.0) & (y < 0.9 * x / 1.6)


def slanted(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """O, D and E (0.8, 0.225): below both of its upper sides."""
    return (y > 0.0) & (y < 0.225 * x / 0.8) & (y < 0.225 * (1.6 - x) / 0.8)


AREAS: list[tuple[str, Inside]] = [
    ('rectangle = ["O", "B"]', lambda x, y: (x > 0) & (x < 1.6) & (y > 0) & (y < 0.9)),
    ('rectangle = ["B", "O"]', lambda x, y: (x > 0) & (x < 1.6) & (y > 0) & (y < 0.9)),
    ('rectangle = ["A", "D"]', lambda x, y: (x > 0) & (x < 1.6) & (y > 0) & (y < 0.9)),
    ('triangle = ["D", "O", "B"]', corner),
    ('triangle = ["D", "B", "O"]', corner),
    ('triangle = ["O", "D", "B"]', corner),  # its right angle second
    ('triangle = ["E", "O", "D"]', slanted),
    ('circle = "Q"\nradius = "r"', lambda x, y: np.hypot(x - 1.6 / 3, y - 0.45) < 0.25),
    (
        'half_circle = "Q"\nradius = "r"\nfacing = "right"',
        lambda x, y: (np.hypot(x - 1.6 / 3, y - 0.45) < 0.25) & (x > 1.6 / 3),
    ),
    (
        'half_circle = "Q"\nradius = "r/2"\nfacing = "down"',
        lambda x, y: (np.hypot(x - 1.6 / 3, y - 0.45) < 0.125) & (y < 0.45),
    ),
]


@pytest.mark.parametrize(("shape", "inside"), AREAS, ids=[shape for shape, _ in AREAS])
def test_an_area_and_its_centroid_are_the_sums_of_small_squares(shape: str, inside: Inside) -> None:
    system = read(PLATE + part(shape)).system
    area, centroid = summed(inside)
    (size,) = (each.expression for each in system.definitions if each.variable == "W_1")
    assert float(evaluate(size, VALUES)) == pytest.approx(300.0 * area, rel=6e-3)
    assert abs(place(system) - centroid) < 2e-3


TURN = np.linspace(-np.pi / 2, np.pi / 2, 20_001)
WIRES = [
    ('wire = ["O", "D"]', np.linspace(0.0, 1.6, 20_001) + 0j),
    ('wire = ["B", "D"]', 1.6 + np.linspace(0.9, 0.0, 20_001) * 1j),
    ('wire = ["O", "B"]', np.linspace(0.0, 1.0, 20_001) * (1.6 + 0.9j)),
    ('half_ring = "Q"\nradius = "r"\nfacing = "right"', 1.6 / 3 + 0.45j + 0.25 * np.exp(1j * TURN)),
    ('half_ring = "Q"\nradius = "r"', 1.6 / 3 + 0.45j + 0.25j * np.exp(1j * TURN)),
]


@pytest.mark.parametrize(("shape", "run"), WIRES, ids=[shape for shape, _ in WIRES])
def test_a_length_and_its_centroid_are_those_of_short_pieces(shape: str, run: np.ndarray) -> None:
    system = read(PLATE + part(shape, 'per_length = "q"')).system
    lengths, middles = np.abs(np.diff(run)), (run[1:] + run[:-1]) / 2
    (size,) = (each.expression for each in system.definitions if each.variable == "W_1")
    assert float(evaluate(size, VALUES)) == pytest.approx(12.0 * lengths.sum(), rel=1e-6)
    assert abs(place(system) - np.average(middles, weights=lengths)) < 1e-6


WRITTEN = [
    ('rectangle = ["O", "B"]', "w h b", "b/2"),
    ('triangle = ["D", "O", "B"]', "w b h/2", "2 b/3"),
    ('circle = "E"\nradius = "r"', "w π r²", "b/2"),
    ('half_circle = "D"\nradius = "r"\nfacing = "right"', "w π r²/2", "b + 4 r/(3 π)"),
    ('half_circle = "D"\nradius = "h/2"\nfacing = "left"', "w π (h/2)²/2", "b − 2 h/(3 π)"),
]


@pytest.mark.parametrize(("shape", "size", "across"), WRITTEN)
def test_they_are_written_as_a_teacher_would(shape: str, size: str, across: str) -> None:
    text = PLATE + part(shape) + part('circle = "Q"\nradius = "r"', symbol="W_2")
    system = read(text + '[[find]]\ncentre_of_mass = ["W_1", "W_2"]').system
    written = {each.variable: plain(each.expression) for each in system.definitions}
    assert written["W_1"] == size
    assert written["x_G"].startswith(f"(W_1 ({across}) +")


def test_a_hole_counts_upward_and_is_taken_off() -> None:
    hole = part('circle = "Q"\nradius = "r"', symbol="W_2", more="hole = true")
    find = '[[find]]\ncentre_of_mass = ["W_1", "W_2"]'
    read_ = read(PLATE + part('rectangle = ["O", "B"]') + hole + find)
    force = read_.system.force("W_2")
    assert (force.kind, plain(force.direction)) == (Kind.HOLE, "90")
    written = {each.variable: plain(each.expression) for each in read_.system.definitions}
    assert written["x_G"] == "(W_1 (b/2) − W_2 (b/3))/(W_1 − W_2)"
    assert written["y_G"] == "h/2"  # all parts have that in common
    assert read_.labels.reasons["x_G"] is Reason.CENTRE_WITH_HOLES
    assert read_.labels.reasons["y_G"] is Reason.CENTRE_SHARED


def test_one_weight_s_centre_is_no_shared_one() -> None:
    find = '[[find]]\ncentre_of_mass = ["W_1"]'
    labels = read(PLATE + part('rectangle = ["O", "B"]') + find).labels
    assert labels.reasons["x_G"] is Reason.CENTRE_OF_MASS


def fault(text: str) -> Fault:
    with pytest.raises(InputError) as caught:
        read(text)
    (found,) = caught.value.faults
    return found


MISTAKES = [
    (part('rectangle = ["O", "X"]'), "weight[0].rectangle[1]"),
    (part('rectangle = ["O"]'), "weight[0].rectangle"),
    (part('rectangle = ["O", "B", "O"]'), "weight[0].rectangle"),
    (part('triangle = ["O", "A", "A"]'), "weight[0].triangle"),
    (part('rectangle = ["O", "D"]'), "weight[0].rectangle"),  # no height
    (part('circle = "Q"'), "weight[0].radius"),
    (part('circle = "Q"\nradius = "h*h"'), "weight[0].radius"),
    (part('half_circle = "Q"\nradius = "r"\nfacing = "north"'), "weight[0].facing"),
    (part('circle = "X"\nradius = "r"'), "weight[0].circle"),
    (part('circle = "Q"\nradius = "r"\nwire = ["O", "A"]'), "weight[0].wire"),
    (part('wire = ["O", "A"]'), "weight[0].per_area"),  # which is told of what is flat
    (part('wire = ["O", "A"]', ""), "weight[0].per_length"),
    (part('circle = "Q"\nradius = "r"', ""), "weight[0].per_area"),
    (part('circle = "Q"\nradius = "r"', 'per_length = "q"'), "weight[0].per_length"),
    (part('rectangle = ["O", "B"]', 'per_area = "q"'), "weight[0].per_area"),
]


@pytest.mark.parametrize(("entry", "field"), MISTAKES)
def test_each_mistake_is_one_fault(entry: str, field: str) -> None:
    assert fault(PLATE + entry).field == field


def test_corners_in_one_line_bound_nothing() -> None:
    text = PLATE.replace('E = ["b/2", "h/4"]', 'E = ["b/2", 0]')
    assert fault(text + part('triangle = ["O", "E", "D"]')).field == "weight[0].triangle"


def test_a_side_that_may_turn_over_is_required_to_be_positive() -> None:
    text = PLATE.replace('Q = ["b/3", "h/2"]', 'Q = ["b - r*4", "h"]').replace(
        "choices = [0.25]", "choices = [0.25, 0.45]"
    )
    required = read(text + part('rectangle = ["O", "Q"]')).requirements
    assert [plain(each.left) for each in required if "length" in str(each.because)] == ["b − r 4"]


def test_sides_between_sums_are_collected() -> None:
    text = PLATE.replace('Q = ["b/3", "h/2"]', 'Q = ["b + r", "h"]')
    system = read(text + part('rectangle = ["D", "Q"]')).system
    written = {each.variable: plain(each.expression) for each in system.definitions}
    assert written["W_1"] == "w h r"


def test_a_centre_of_mass_leaves_no_hole_out() -> None:
    hole = part('circle = "Q"\nradius = "r"', symbol="W_2", more="hole = true")
    find = '[[find]]\ncentre_of_mass = ["W_1"]'
    found = fault(PLATE + part('rectangle = ["O", "B"]') + hole + find)
    assert (found.field, found.expected) == (
        "find[1].centre_of_mass",
        "what is cut out as well: W_2",
    )
