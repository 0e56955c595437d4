"""Histograms: bars counted from values, ends as printed, directions kept together."""

import numpy as np
import pytest

from probgen.department.histogram import (
    BARS,
    HEIGHT,
    WIDTH,
    Histogram,
    of_choices,
    of_numbers,
    turned,
)


def test_a_bar_a_choice_also_for_those_that_are_never_taken() -> None:
    found = of_choices(np.array([0, 2, 2, 2, 2]), ["1 m", "2 m", "3 m", "4 m"])
    assert found == Histogram((0.25, 0.0, 1.0, 0.0), "1 m", "4 m")


def test_choices_that_share_a_bar_are_no_higher_for_it() -> None:
    count = 2 * BARS + 1  # three to a bar, and one bar is left with what is over
    found = of_choices(np.arange(count), [f"{place} m" for place in range(count)])
    assert set(found.heights) == {1.0}
    assert len(found.heights) == -(-count // 3)
    assert (found.low, found.high) == ("0 m", f"{count - 1} m")


def test_numbers_lie_between_the_least_and_the_greatest() -> None:
    values = np.array([7.0, 1.0, 1.2, 4.0, 7.0])
    found = of_numbers(values, ["7 N", "1 N", "1.2 N", "4 N", "7.0 N"])
    assert (found.low, found.high) == ("1 N", "7 N")
    assert len(found.heights) == 4
    assert found.heights == (1.0, 0.0, 0.5, 1.0)


@pytest.mark.parametrize("values", [[5.0], [5.0, 5.0]])
def test_one_value_is_one_bar(values: list[float]) -> None:
    found = of_numbers(np.array(values), ["5 N"] * len(values))
    assert found == Histogram((1.0,), "5 N", "5 N")


@pytest.mark.parametrize(
    ("angles", "lying"),
    [
        ([170.0, -170.0, 175.0], [170.0, 190.0, 175.0]),
        ([-10.0, 10.0], [350.0, 370.0]),
        ([40.0, 50.0, 45.0], [40.0, 50.0, 45.0]),
        ([90.0], [90.0]),
    ],
)
def test_directions_are_cut_where_none_lies(angles: list[float], lying: list[float]) -> None:
    assert turned(np.array(angles)).tolist() == lying


def test_the_outline_fills_its_box() -> None:
    path = Histogram((0.5, 1.0), "1", "2").outline
    assert path == f"M0 {HEIGHT:g}V{HEIGHT / 2:g}H{WIDTH / 2:g}V0H{WIDTH:g}V{HEIGHT:g}Z"
