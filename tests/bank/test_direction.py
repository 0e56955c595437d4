"""Directions in every form an author may write, valued on a draw."""

from collections.abc import Callable

import pytest

from probgen.bank.reading import read_template
from probgen.input.fault import InputError
from probgen.quantities.expression import Call, Expression, Name, Sum, evaluate, number
from probgen.quantities.parser import parse

THETA = Name("theta", "theta")
VALUES = {"L": 1.2, "d": 1.02, "theta": 25.0}


def direction(shelf: str, written: str) -> Expression:
    entry = f'[[force]]\nat = "B"\nsymbol = "F"\ndirection = {written}\n'
    return read_template(shelf + entry, "shelf.toml").system.force("F").direction


WRITTEN = [
    ('"theta"', "theta"),
    ("-30", "-30"),
    ('{ from = "up", turn = "theta", to = "left" }', "90 + theta"),
    ('{ from = "up", turn = "theta", to = "right" }', "90 - theta"),
    ('{ from = "right", turn = "theta", to = "up" }', "theta"),
    ('{ from = "right", turn = "theta", to = "down" }', "-theta"),
    ('{ from = "left", turn = "theta", to = "up" }', "180 - theta"),
    ('{ from = "down", turn = 20, to = "left" }', "250"),
    ('{ from = "down", turn = "90 - theta", to = "right" }', "-theta"),
    ('{ from = "left" }', "180"),
    ('{ along = ["A", "B"] }', "0"),
    ('{ along = ["B", "A"], turn = "theta" }', "180 + theta"),
    ('{ along = ["A", "C"], turn = "-theta" }', "-theta"),
    ('{ square_to = ["A", "B"], side = "left" }', "90"),
    ('{ square_to = ["B", "A"], side = "left" }', "270"),
    ('{ square_to = ["A", "B"], side = "right" }', "270"),
    ('{ rise = "d", run = "-L" }', "atan2(d, -L)"),
    ("{ rise = 4, run = 3 }", "atan(4/3)"),
    ("{ rise = -4, run = 3 }", "-atan(4/3)"),
    ("{ rise = 5, run = -12 }", "180 - atan(5/12)"),
    ("{ rise = -2.5, run = -6 }", "180 + atan(2.5/6)"),
    ("{ rise = 0, run = -2 }", "180"),
    ("{ rise = -1, run = 0 }", "270"),
    ('{ bearing = "theta" }', "90 - theta"),
    ("{ bearing = 250 }", "200"),
]


@pytest.mark.parametrize(("written", "expected"), WRITTEN, ids=[row[0] for row in WRITTEN])
def test_each_form_gives_plain_degrees(shelf: str, written: str, expected: str) -> None:
    scope = {id: Name(id, id) for id in VALUES}
    assert direction(shelf, written) == parse(expected, scope)


def test_a_direction_between_points_off_one_line_is_computed(shelf: str) -> None:
    found = direction(shelf, '{ square_to = ["A", "W"], side = "right" }')
    assert evaluate(found, VALUES) == pytest.approx(
        evaluate(parse("atan2(1.5, -1.2)", {}), {}) - 90
    )


def test_a_way_with_a_bend_is_computed_from_its_oblique_parts(
    spoilt: Callable[[str, str], str],
) -> None:
    """From B = (1.2, 0) to G, which lies 0.6 from A at 25 degrees: (-0.656215, 0.253571)."""
    text = spoilt('["L/2", "0"]', '{ from = "A", distance = "L/2", direction = "theta" }')
    there = direction(text, '{ along = ["B", "G"] }')
    back = direction(text, '{ along = ["G", "B"] }')
    assert evaluate(there, VALUES) == pytest.approx(158.8729, abs=1e-3)
    assert evaluate(back, VALUES) == pytest.approx(158.8729 - 180, abs=1e-3)


def test_a_way_that_does_not_rise_is_level(spoilt: Callable[[str, str], str]) -> None:
    text = spoilt('["L/2", "0"]', '["L/2", "1.5 m"]')  # as high as W, by another way
    assert direction(text, '{ along = ["W", "G"] }') == number(0)
    assert direction(text, '{ along = ["G", "W"] }') == number(180)


def test_a_way_that_only_rises_is_upright(spoilt: Callable[[str, str], str]) -> None:
    text = spoilt('["L/2", "0"]', '["-L", "2 m"]')
    assert direction(text, '{ along = ["W", "G"] }') == number(90)


def test_a_way_whose_sense_is_in_doubt_is_computed(spoilt: Callable[[str, str], str]) -> None:
    text = spoilt('["L/2", "0"]', '["L - 1 m", 0]')  # left or right of A, as L is drawn
    found = direction(text, '{ along = ["A", "G"] }')
    assert isinstance(found, Call)
    assert [evaluate(found, {"L": length}) for length in (0.8, 1.4)] == [180.0, 0.0]


def test_a_turned_member_keeps_its_angle(spoilt: Callable[[str, str], str]) -> None:
    text = spoilt('["L/2", "0"]', '{ from = "A", distance = "L/2", direction = "theta" }')
    turned = direction(text, '{ square_to = ["A", "G"], side = "left" }')
    assert turned == Sum(((1, number(90)), (1, THETA)))


SPOILT = [
    ("{}", "direction", "one of from, along"),
    ('{ from = "up", bearing = 3 }', "direction", "one of from, along"),
    ('{ from = "upward" }', "direction.from", "one of right, up, left, down"),
    ('{ from = "up", turn = "theta", to = "down" }', "direction.to", "one of right, left"),
    ('{ from = "up", turn = "theta" }', "direction.to", "add to = ..."),
    ('{ from = "up", turn = "L", to = "left" }', "direction.turn", "where an angle is needed"),
    ('{ from = "up", trun = 3 }', "direction.trun", 'did you mean "turn"?'),
    ('{ along = ["A"] }', "direction.along", "two of the points"),
    ('{ along = ["A", "A"] }', "direction.along", "two of the points"),
    ('{ along = ["A", "Z"] }', "direction.along", "two of the points A, C"),
    ('{ square_to = ["A", "B"] }', "direction.side", "add side"),
    ('{ square_to = ["A", "B"], side = "up" }', "direction.side", "one of left, right"),
    ('{ rise = "L" }', "direction.run", "add run"),
    ("{ rise = 0, run = 0 }", "direction.rise", "other than 0"),
    ('{ rise = "L", run = "theta" }', "direction.run", "where a length is needed"),
    ('{ bearing = "L" }', "direction.bearing", "where an angle is needed"),
    ("[1, 2]", "direction", "write it in quotes"),
    ('"down"', "direction", "write direction = 270"),
    ('"Left"', "direction", "write direction = 180"),
]


@pytest.mark.parametrize(("written", "field", "words"), SPOILT, ids=[row[0] for row in SPOILT])
def test_each_mistake_is_one_fault(shelf: str, written: str, field: str, words: str) -> None:
    with pytest.raises(InputError) as caught:
        direction(shelf, written)
    (fault,) = caught.value.faults
    assert fault.field == f"force[0].{field}"
    assert words in f"{fault.expected}\n{fault.mend}"
