"""Loads: where they act and how large they are, and what an author can get wrong."""

from collections.abc import Callable
from types import SimpleNamespace
from typing import cast

import numpy as np
import pytest

from probgen.bank.depiction import Thing
from probgen.bank.labels import BodyNamed
from probgen.bank.load import Spreading, _weight_symbols
from probgen.bank.reading import read_template
from probgen.bank.scope import Scope
from probgen.draws.class_draws import class_draws
from probgen.draws.requirement import requirements_hold
from probgen.input.fault import InputError
from probgen.quantities.expression import Name, Quotient, evaluate, names_in, number
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain
from probgen.quantities.unit import SI, US_CUSTOMARY
from probgen.statics.system import Find, Form, Kind, Link

L = Name("L", "L")

SPREADS = [
    ('load = "9 N/m"', "9 N/m*L", "L/2"),
    ('start = 0\nend = "9 N/m"', "(9 N/m)*L/2", "2*L/3"),
    ('start = "9 N/m"\nend = 0', "(9 N/m)*L/2", "L/3"),
    (
        'start = "4 N/m"\nend = "9 N/m"',
        "(4 N/m + 9 N/m)/2*L",
        "L*(4 N/m + 2*(9 N/m))/(3*(4 N/m + 9 N/m))",
    ),
    ('start = "9 N/m^2*L"\nend = 0', "(9 N/m^2)*L^2/2", "L/3"),  # water: the square of its depth
    ('pressure = "90 Pa"\nwidth = "2 m"', "90 Pa*(2 m)*L", "L/2"),
]


@pytest.mark.parametrize(("fields", "resultant", "reach"), SPREADS)
def test_a_spread_load_acts_at_its_centroid(
    shelf: str, fields: str, resultant: str, reach: str
) -> None:
    text = shelf + f'[[distributed]]\nfrom = "A"\nto = "B"\nsymbol = "W_q"\n{fields}'
    text = text.replace('B = { from = "C", distance = "L - d", direction = 0 }', 'B = ["L", 0]')
    read = read_template(text, "shelf.toml")
    system = read.system
    assert read.labels.elements["W_q"].symbol == "W_q"
    size = {d.variable: d.expression for d in system.definitions}["W_q"]
    assert size == parse(resultant, {"L": L})
    force = system.force("W_q")
    assert force.direction == number(270)
    assert system.points[force.point].links == (Link(parse(reach, {"L": L}), number(0)),)


RISING = [
    ("rho*g*d*b", "rho*g*(d + h)*b", "ρ g b ((2 d + h)/2) L", "L (3 d + 2 h)/(3 (2 d + h))"),
    ("b*h", "2*b*h", "3 b h L/2", "5 L/9"),
    ("b*h", "3*b*h", "2 b h L", "7 L/12"),
    ("d", "h", "((d + h)/2) L", "L (d + 2 h)/(3 (d + h))"),
]


@pytest.mark.parametrize(("start", "end", "whole", "centroid"), RISING)
def test_what_both_sizes_of_a_load_share_stands_once(
    start: str, end: str, whole: str, centroid: str
) -> None:
    letters = {"rho": "ρ"} | {each: each for each in ("g", "d", "h", "b")}
    names = {id: Name(id, symbol) for id, symbol in letters.items()}
    sizes = parse(start, names), parse(end, names)
    load = Spreading(*sizes)
    assert [plain(load.whole(L)), plain(load.centroid(L))] == [whole, centroid]
    values = {"rho": 3.0, "g": 2.0, "d": 5.0, "h": 7.0, "b": 1.5, "L": 4.0}
    first, last = (float(evaluate(size, values)) for size in sizes)
    assert evaluate(load.whole(L), values) == pytest.approx((first + last) / 2 * 4.0)
    reach = 4.0 * (first + 2 * last) / (3 * (first + last))
    assert evaluate(load.centroid(L), values) == pytest.approx(reach)


def test_a_load_spread_backwards_keeps_its_sense(shelf: str) -> None:
    text = shelf + '[[distributed]]\nfrom = "C"\nto = "A"\nsymbol = "W_q"\nload = "9 N/m"'
    system = read_template(text, "shelf.toml").system
    links = system.points[system.force("W_q").point].links
    assert links == (
        Link(Name("d", "d"), number(0)),
        Link(Quotient(Name("d", "d"), number(2)), number(180)),
    )


# P lies 2 m from A, beyond the shelf's end in every draw: what a load is spread over is a length.
@pytest.mark.parametrize(
    ("start", "end", "direction"), [("A", "P", 0), ("P", "A", 180), ("B", "P", 0), ("P", "B", 180)]
)
def test_a_length_that_is_surely_one_is_written_as_one(
    shelf: str, start: str, end: str, direction: int
) -> None:
    text = shelf.replace('B = { from = "C", distance = "L - d", direction = 0 }', 'B = ["L", 0]')
    text = text.replace('W = ["-L", "1.5 m"]', 'P = ["2 m", 0]')
    text += f'[[distributed]]\nfrom = "{start}"\nto = "{end}"\nsymbol = "W_q"\nload = "9 N/m"'
    read = read_template(text, "shelf.toml")
    assert [each.because for each in read.requirements] == ["a light cable"]
    values = {"L": 1.3}
    reach = 2.0 if "A" in start + end else 0.7
    (size,) = (d.expression for d in read.system.definitions if d.variable == "W_q")
    assert evaluate(size, values) == pytest.approx(9 * reach)
    link = read.system.points[read.system.force("W_q").point].links[-1]
    assert evaluate(link.length, values) == pytest.approx(reach / 2)
    assert evaluate(link.direction, values) == direction


def test_a_length_that_may_be_none_is_required_to_be_one(shelf: str) -> None:
    text = shelf + '[[distributed]]\nfrom = "C"\nto = "B"\nsymbol = "W_q"\nload = "9 N/m"'
    read = read_template(text, "shelf.toml")
    assert read.requirements[0].because == "a load is spread over a length"
    # From C at d to B at L: there is a length only where the shelf goes on beyond the cable.
    values = {"L": np.array([1.2, 1.0, 0.8]), "d": np.array([1.0, 1.0, 1.0])}
    held = requirements_hold(read, values, known_only=True)
    assert held.tolist() == [True, False, False]


def test_a_load_spread_over_no_length_is_never_drawn(shelf: str) -> None:
    """The statement, the draws and the rule together: d is now free to lie beyond the end."""
    text = shelf + '[[distributed]]\nfrom = "C"\nto = "B"\nsymbol = "W_q"\nload = "9 N/m"'
    text = text.replace('is = "0.85*L", round = 0.01', 'is = "2.4 m - L", round = 0.01')
    students = [f"s{i}" for i in range(40)]
    drawn = class_draws(read_template(text, "shelf.toml"), "seed", students)
    lengths = [float(each.values["L"].value) for each in drawn.draws]
    assert min(lengths) == 1.3  # of 0.80, 0.90 ... 1.60 m those over 2.4 m - L
    assert max(lengths) == 1.6


def test_a_load_along_a_line_between_coordinates(pair: str) -> None:
    entry = '[[distributed]]\nbody = "prop"\nfrom = "Q"\nto = "K"\nload = "9 N/m"\nsymbol = "F"'
    system = read_template(pair + entry, "pair.toml").system
    values = {"h": 3.0}
    (size,) = (d.expression for d in system.definitions if d.variable == "F")
    assert evaluate(size, values) == pytest.approx(9 * 3 * 2**0.5)
    link = system.points[system.force("F").point].links[-1]
    assert evaluate(link.length, values) == pytest.approx(1.5 * 2**0.5)
    assert evaluate(link.direction, values) == 135.0


def test_a_uniform_body_weighs_at_its_middle(shelf: str, spoilt: Callable[[str, str], str]) -> None:
    text = spoilt('at = "G"\nmass = "m"', 'uniform = true\nmass = "m"')
    system = read_template(text.replace("G = [", "E = ["), "shelf.toml").system
    assert system.force("W_s").point == "G"
    # B is L - d beyond C, which is d beyond A: the way is L, its middle L/2.
    assert system.points["G"].links == (Link(Quotient(L, number(2)), number(0)),)


# An entry added to the pair of bodies, and the one fault it must give.
def test_one_weight_may_act_on_two_bodies_in_either_system_of_units(pair: str) -> None:
    """As a mass before and after a change, which US customary gives as a weight."""
    text = pair.replace('unit = "kg"', 'unit = "kg", us = { unit = "lbf" }')
    text = text.replace('unit = "m" }', 'unit = "m", us = { unit = "ft" } }')
    text = text.replace('quantity = "W_r"', 'quantity = "N"')
    text += '[[roller]]\nbody = "post"\nat = "J"\nsymbol = "N"\n'
    text += '[[weight]]\nbody = "post"\nat = "K"\nmass = "m"\nsymbol = "W_p"'
    for units, sizes in ((SI, {"W_r", "W_p"}), (US_CUSTOMARY, {"m"})):
        system = read_template(text, "pair.toml", units).system
        acting = [system.force(system.element(id).forces[0]) for id in ("W_r", "W_p")]
        assert [force.body for force in acting] == ["ring", "post"]
        assert {id for force in acting for id in names_in(force.magnitude)} == sizes


SPOILT = [
    (
        '[[weight]]\nbody = "ring"\nother = "post"\nmass = "m"',
        "weight[1].other",
        "one of the fields",
    ),
    (
        '[[distributed]]\nbody = "post"\nfrom = "J"\nto = "J"\nload = "9 N/m"\nsymbol = "F"',
        "distributed[0].to",
        "another point than J",
    ),
    (
        '[[distributed]]\nbody = "post"\nfrom = "J"\nto = "K"\nsymbol = "F"',
        "distributed[0].load",
        "add load",
    ),
    (
        '[[distributed]]\nbody = "post"\nfrom = "J"\nto = "K"\nstart = 0\nsymbol = "F"',
        "distributed[0].end",
        "add end",
    ),
    (
        '[[distributed]]\nbody = "post"\nfrom = "J"\nto = "K"\npressure = "9 Pa"\nsymbol = "F"',
        "distributed[0].width",
        "add width",
    ),
    (
        '[[weight]]\nbody = "post"\nuniform = true\nat = "K"\nforce = "9 N"\nsymbol = "W"',
        "weight[1].uniform",
        "without `at`",
    ),
    (
        '[[weight]]\nbody = "ring"\nuniform = true\nforce = "9 N"\nsymbol = "W"',
        "weight[1].uniform",
        "a body along two points",
    ),
]


@pytest.mark.parametrize(("entry", "field", "words"), SPOILT, ids=[row[1] for row in SPOILT])
def test_each_mistake_is_one_fault(pair: str, entry: str, field: str, words: str) -> None:
    with pytest.raises(InputError) as caught:
        read_template(pair + entry, "pair.toml")
    (fault,) = caught.value.faults
    assert fault.field == field
    assert words in f"{fault.expected}\n{fault.mend}"


def test_a_force_of_unknown_size_and_direction_is_found_by_its_components(shelf: str) -> None:
    text = shelf + '[[force]]\nat = "B"\nsymbol = "P"\n'
    with pytest.raises(InputError) as refused:
        read_template(text, "shelf.toml")
    (fault,) = refused.value.faults
    assert (fault.field, fault.expected) == (
        "force[0].name", 'what exerts it, such as "mooring", or its direction'
    )  # fmt: skip
    text += 'name = "hand"\n[[find]]\nquantity = "P"\nas = "components"\n'
    system = read_template(text, "shelf.toml").system
    along, up = (system.force(id) for id in ("P.x", "P.y"))
    assert {along.kind, up.kind} == {Kind.FORCE}
    assert (along.direction, up.direction) == (number(0), number(90))
    assert system.element("P").forces == ("P.x", "P.y")
    assert not system.variables["P.x"].nonnegative
    assert system.finds[-1] == Find("P", Form.COMPONENTS)


def test_a_force_between_two_bodies_is_felt_by_both(pair: str) -> None:
    text = pair + '[[force]]\nbody = "ring"\nother = "post"\nat = "K"\ndirection = 0\nsymbol = "P"'
    read = read_template(text, "pair.toml")
    pushed, back = (read.system.force(id) for id in ("P", "P'"))
    assert (pushed.body, back.body, pushed.pair, back.pair) == ("ring", "post", "P'", "P")
    assert (back.point, back.magnitude) == ("K", pushed.magnitude)
    assert float(evaluate(back.direction, {})) == 180.0
    assert read.labels.elements["P"].name == BodyNamed("post")  # unless the author has a name
    assert read.labels.elements["P'"].name == BodyNamed("ring")


@pytest.mark.parametrize(("direction", "nonnegative"), [("t", True), ("theta", False)])
def test_a_force_whose_direction_is_found_is_not_below_zero(
    shelf: str, direction: str, nonnegative: bool
) -> None:
    text = shelf + '[unknown]\nt = { name = "turn", unit = "deg", from = 0, to = 360 }\n'
    text += f'[[force]]\nat = "B"\nsymbol = "P"\ndirection = "{direction}"\n'
    text += '[[condition]]\nthat = "t = theta"\nbecause = "so told"\n'
    assert read_template(text, "shelf.toml").system.variables["P"].nonnegative is nonnegative


@pytest.mark.parametrize(
    ("noun", "taken", "symbol"),
    [
        ("the trolley", "", "W_t"),
        ("the trolley", "W_t W_tr", "W_tro"),
        ("the trolley", "W_t W_tr W_tro W_trol W_troll", "W_trolle"),  # six letters at most
        ("the trolley", "W_t W_tr W_tro W_trol W_troll W_trolle", "W_1"),
        ("an ox", "W_o", "W_ox"),
        ("an ox", "W_o W_ox W_1", "W_2"),
        ("A 2nd box", "", "W_n"),
        ("9", "", "W_o"),
    ],
)
def test_a_weight_takes_letters_of_what_weighs_until_its_symbol_is_its_own(
    noun: str, taken: str, symbol: str
) -> None:
    scope = cast(Scope, SimpleNamespace(names=dict.fromkeys(taken.split()), symbols=taken.split()))
    assert _weight_symbols(noun, scope) == (symbol, symbol)


@pytest.mark.parametrize(
    ("noun", "names", "symbols", "id", "printed"),
    [
        ("lamp", "", "", "W_l", "W_la"),  # W_l would be read as W_1
        ("lantern", "W_l", "W_la", "W_la", "W_lan"),
        ("lamp", "", "W_la", "W_l", "W_lam"),
    ],
)
def test_a_small_l_is_never_printed_alone(
    noun: str, names: str, symbols: str, id: str, printed: str
) -> None:
    scope = SimpleNamespace(names=dict.fromkeys(names.split()), symbols=symbols.split())
    assert _weight_symbols(noun, cast(Scope, scope)) == (id, printed)


def test_what_is_uniform_is_drawn_as_its_centre_whatever_it_is_called(shelf: str) -> None:
    weight = '[[weight]]\nuniform = true\nforce = "90 N"\nof = "{}"\nsymbol = "W_q"\n'
    for noun in ("shelf", "plank"):
        loads = read_template(shelf + weight.format(noun), "shelf.toml").depicts.loads
        assert loads["W_q"].thing is Thing.CENTRE
    at_end = weight.replace("uniform = true", 'at = "B"').format("plank")
    assert "W_q" not in read_template(shelf + at_end, "shelf.toml").depicts.loads
