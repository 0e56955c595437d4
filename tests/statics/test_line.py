"""Lines worked one after the other, beside sums done in the head."""

import numpy as np
import pytest

from probgen.quantities.expression import Expression, Name, Value, number, over, times, total
from probgen.statics.line import Line, needed, worked

A, B, C = (Name(id, id) for id in "abc")
LINES = (
    Line("b", times(number(2), A)),
    Line("c", total((1, A), (1, B))),
    Line("d", over(C, total((1, B), (-1, number(8))))),
)


@pytest.mark.parametrize(
    ("stated", "found"),
    [
        ({}, {"a": 3.0, "b": 6.0, "c": 9.0, "d": -4.5}),
        ({"a": 5.0}, {"a": 5.0, "b": 10.0, "c": 15.0, "d": 7.5}),
        ({"b": 10.0}, {"a": 3.0, "b": 10.0, "c": 13.0, "d": 6.5}),
        ({"c": 1.0}, {"a": 3.0, "b": 6.0, "c": 1.0, "d": -0.5}),
        ({"d": 7.0}, {"a": 3.0, "b": 6.0, "c": 9.0, "d": 7.0}),
        ({"b": 4.0, "c": 2.0}, {"a": 3.0, "b": 4.0, "c": 2.0, "d": -0.5}),
        ({"b": 8.0}, {"a": 3.0, "b": 8.0, "c": 11.0, "d": np.inf}),  # 11 / 0
        ({"elsewhere": 8.0}, {"a": 3.0, "b": 6.0, "c": 9.0, "d": -4.5}),
    ],
)
def test_what_is_stated_stands_and_later_lines_go_on_with_it(
    stated: dict[str, float], found: dict[str, float]
) -> None:
    assert worked(LINES, {"a": 3.0}, stated) == found


@pytest.mark.parametrize(
    ("ids", "stated", "expected"),
    [
        ("b", "", "b"),
        ("c", "", "bc"),
        ("d", "", "bcd"),
        ("d", "c", "bcd"),  # of b alone there is more than c
        ("c", "c", "c"),
        ("cb", "c", "bc"),
        ("d", "cb", "bcd"),
        ("d", "d", "d"),
        ("a", "", ""),
        ("", "", ""),
    ],
)
def test_lines_that_nothing_needs_are_left_out(ids: str, stated: str, expected: str) -> None:
    found = needed(LINES, [*ids], [*stated])
    assert "".join(line.id for line in found) == expected
    values = {each: np.float64(place) for place, each in enumerate(stated)}
    every, some = (worked(lines, {"a": 3.0}, values) for lines in (LINES, found))
    assert {id: every[id] for id in ids} == {id: some[id] for id in ids}


def test_what_is_carried_goes_on_and_what_was_found_is_told() -> None:
    """b = 2 x 1.3 = 2.6, carried as 3: c = 1.3 + 3 = 4.3, carried as 4: d = 4/(3 - 8)."""
    found = worked(LINES, {"a": 1.3}, carry=_whole)
    assert found == pytest.approx({"a": 1.3, "b": 2.6, "c": 4.3, "d": -0.8})


def test_what_is_stated_is_carried_as_it_is_stated() -> None:
    """b = 2.6 stated: c = 3.9, not 4.3."""
    assert worked(LINES, {"a": 1.3}, {"b": 2.6}, _whole)["c"] == pytest.approx(3.9)


def _whole(value: Value) -> Value:
    whole: Value = np.round(value)
    return whole


def test_a_line_may_be_stated_anew_at_the_end() -> None:
    last: Expression = times(number(10), C)
    assert worked((*LINES, Line("b", last)), {"a": 3.0})["b"] == 90.0
