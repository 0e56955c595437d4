"""Which slips a typed number is put down to, and which not: what may be chance has no name."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from probgen.marking.asked import Asked
from probgen.marking.judged import ways_for
from probgen.marking.naming import MOST, Sought, WrongWay, fitting, named
from probgen.marking.stated import Blank, Reading
from probgen.mistakes.variant import Misstep
from probgen.problem.problem import Problem, Worked
from probgen.quantities.expression import Name
from probgen.quantities.unit import DEGREE, UNITS
from probgen.working.result import ResultKind
from tests.situations import STAYED_SHELF, worked

SIZE = Asked("T", ResultKind.QUANTITY, Blank(UNITS["N"]), 190.6, 186.7, 194.4, "191 N")
WAY = Asked("R.direction", ResultKind.DIRECTION, Blank(DEGREE, "axis"), 30.0, 29.0, 31.0, "30")


@cache
def shelf() -> tuple[Problem, Worked]:
    return worked(STAYED_SHELF)


def slip(id: str, only_if: str = "") -> Misstep:
    condition = Name(only_if, only_if) if only_if else None
    return Misstep(id, shelf()[0].plan, only_if=condition)


def names(
    typed: float,
    half: float,
    values: Sequence[float],
    asked: Asked = SIZE,
    ways: Sequence[WrongWay] = (),
    in_key: Sequence[int] = (),
) -> list[str]:
    """The slips named; unless other ways are meant, each value's is its place.

    in_key: places of those that the paper's key tells of.
    """
    own = tuple(ways) or tuple(WrongWay((slip(str(place)),)) for place in range(len(values)))
    sought = Sought(Reading(typed, typed, half, figures=(3, 3)), asked, shelf()[1].case)
    (fit,) = fitting([sought], np.array(values, float).reshape(-1, 1), own)
    told = [own[place].keys for place in in_key]
    return ["+".join(own[place].ids) for place in named(fit, own, told)]


NEAR = [
    (245.0, 0.5, [245.0], ["0"]), (245.0, 0.5, [245.5, 244.5], ["0", "1"]),  # either way
    (245.0, 0.5, [245.51, 244.49], []), (-245.0, 0.5, [-245.0], []),  # no cable pushes
   
    (245.0, 0.5, [300.0, np.nan, 245.2], ["2"]), (245.0, 0.5, [], []),
    (194.6, 0.5, [194.3, 194.7], ["1"]),  # what earns full marks is no slip
    (245.0, 0.0, [245.0, 245.1], ["0"]),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "half", "values", "expected"), NEAR)
def test_a_slip_is_met_within_half_a_unit_of_the_last_figure(
    typed: float, half: float, values: list[float], expected: list[str]
) -> None:
    assert names(typed, half, values) == expected


def spaced(count: int, middle: float = 200.0) -> list[float]:
    """So many numbers that nothing at 245 can be taken for, all apart."""
    return [middle + place for place in range(count)]


# A random number within a factor 3 either way meets 245 +- 0.5 once in 245 x 2 ln 3 = 538 times,
# 200 +- 0.5 once in 439: behind one near 200 it is chance 0.42 times in 100, behind two 0.64.
CHANCE = [
    (0.5, [*spaced(1), 245.0], ["1"]),
    (0.5, [*spaced(2), 245.0], []),
    (0.5, [245.0, *spaced(20)], ["0"]),  # those behind it are no likelier
    (0.05, [*spaced(20), 245.0], ["20"]),
    (0.5, [*spaced(20, 2000.0), 245.0], ["20"]),  # far away, none is met for another
    (0.5, [*spaced(20, 20.0), 245.0], ["20"]),
    (0.5, [*[200.0] * 20, 245.0], ["20"]),  # many ways to one number are one
    (0.5, [*[np.nan] * 20, 245.0], ["20"]),
    (1.25, [245.0], ["0"]), (2.5, [245.0], []), (25.0, [245.0], []),  # "2e2" may be anything
]  # fmt: skip


@pytest.mark.parametrize(("half", "values", "expected"), CHANCE)
def test_what_may_be_chance_has_no_name(
    half: float, values: list[float], expected: list[str]
) -> None:
    assert names(245.0, half, values) == expected


def test_what_the_key_tells_of_is_named_with_all_that_leads_there() -> None:
    values = [*spaced(2), 245.0, 245.1]
    assert names(245.0, 0.5, values) == names(245.0, 0.5, values, in_key=[0]) == []
    assert names(245.0, 0.5, values, in_key=[2]) == ["2", "3"]
    many = [*spaced(2), *[245.0] * (MOST + 1)]
    assert names(245.0, 0.5, many, in_key=[3, 5]) == ["3", "5"]  # too many else


def test_a_nought_is_the_slip_that_leaves_none_of_a_component() -> None:
    assert names(0.0, 0.5, [245.0, 0.0], replace(SIZE, id="R.y")) == ["1"]


# Of all directions one in 900 is met within a fifth of a degree: there is room for four.
AROUND = [
    ([100.0], ["0"]), ([100.2], ["0"]), ([100.3], []), ([460.0], ["0"]), ([-260.1], ["0"]),
    ([280.0], []), ([10.0, 200.0, 300.0, 100.0], ["3"]), ([10.0, 50.0, 200.0, 300.0, 100.0], []),
    ([10.0, 10.0, 10.0, 10.0, 100.0], ["4"]),
]  # fmt: skip


@pytest.mark.parametrize(("values", "expected"), AROUND)
def test_directions_are_compared_around_the_circle(
    values: list[float], expected: list[str]
) -> None:
    assert names(100.0, 0.2, values, WAY) == expected
    assert names(359.9, 0.2, [0.1], WAY) == ["0"]


def test_a_slip_that_nobody_makes_with_these_values_is_not_named() -> None:
    for only_if, expected in (("L", ["a"]), ("", ["a"]), ("R.y", [])):  # 1.20 m, and -4.90 N
        assert names(245.0, 0.5, [245.0], ways=[WrongWay((slip("a", only_if),))]) == expected
    both = WrongWay((slip("a"), slip("b", "R.y")))
    assert names(245.0, 0.5, [245.0], ways=[both]) == []


def test_two_slips_say_nothing_where_one_of_them_alone_does() -> None:
    one, other, both = (slip("a"),), (slip("b"),), (slip("a"), slip("c"))
    ways = [WrongWay(each) for each in (one, both, other, (both[1], both[0]))]
    assert names(245.0, 0.05, [245.0] * 4, ways=ways) == ["a", "b"]
    assert names(245.0, 0.05, [300.0, 245.0, 300.0, 245.0], ways=ways) == ["a+c"]


def test_where_one_of_the_likeliest_leads_there_all_that_do_are_named() -> None:
    assert names(245.0, 0.5, [245.0, *spaced(20), 245.2]) == ["0", "21"]
    ways = [WrongWay((replace(slip("a"), parts={"W": Name(letter, letter)}),)) for letter in "VW"]
    assert names(245.0, 0.5, [245.0, 245.1], ways=ways) == ["a", "a"]  # of one kind, on others


def test_what_comes_out_of_too_many_ways_has_no_name() -> None:
    assert len(names(245.0, 0.05, [245.0] * MOST)) == MOST
    assert names(245.0, 0.05, [245.0] * (MOST + 1)) == []


def test_ways_are_single_slips_and_then_pairs_the_likeliest_first() -> None:
    problem, _ = shelf()
    (own,) = problem.missteps
    ways = ways_for(problem)
    assert [way.slips for way in ways[: len(own)]] == [(each,) for each in own]
    pairs = ways[len(own) :]
    assert pairs
    rank: dict[str, int] = {}
    for place, each in enumerate(own):
        rank.setdefault(each.slip, place)
    places = [tuple(rank[id] for id in way.ids) for way in pairs]
    assert all(first < second for first, second in places)  # each two once, and never one twice
    assert [sum(each) for each in places] == sorted(sum(each) for each in places)
    assert all(way.plan is way.slips[1].plan for way in pairs)
