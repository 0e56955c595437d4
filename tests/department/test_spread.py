"""Spreads: the values of draws that are fit for use, and no others."""

from functools import cache

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.department.spread import Spread, Spreads, spreads
from probgen.draws.sample import sample
from probgen.problem.problem import Problem, fit, prepare, work
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention

DRAWS = 120


@cache
def problem_of(id: str) -> Problem:
    return prepare(default_bank().read(id), Convention())


@cache
def found_of(id: str) -> Spreads:
    return spreads(problem_of(id), DRAWS)


def answer(id: str, symbol: str) -> Spread:
    return next(each for each in found_of(id).answers if plain_text(each.symbol) == symbol)


def test_draws_that_a_requirement_drops_do_not_count() -> None:
    problem = problem_of("diving-board")
    made = sample(problem.template, DRAWS)
    held = fit(problem, [made.draw(place) for place in range(len(made))])
    assert found_of("diving-board").draws == sum(held) < DRAWS


def test_every_given_has_its_whole_range() -> None:
    template = problem_of("forearm-load").template
    found = found_of("forearm-load").given
    assert [plain_text(each.symbol) for each in found][:2] == ["m_b", "d_b"]
    assert found[0].name == "mass of the bag"
    for spread, given in zip(found, template.givens, strict=True):
        assert spread.histogram is not None
        ends = spread.histogram.low, spread.histogram.high
        assert [end.split("°")[0].split()[0] for end in ends] == [
            str(given.choices[0]),
            str(given.choices[-1]),
        ]


def test_answers_lie_between_the_least_and_the_greatest_that_is_printed() -> None:
    problem = problem_of("forearm-load")
    made = sample(problem.template, DRAWS)
    worked = work(problem, [made.draw(place) for place in range(len(made))])
    pulls = sorted((own.answers[0].value, own.answers[0].printed) for own in worked)
    histogram = answer("forearm-load", "B").histogram
    assert histogram is not None
    assert (histogram.low, histogram.high) == (pulls[0][1], pulls[-1][1])
    assert [plain_text(each.symbol) for each in found_of("forearm-load").answers] == [
        "B",
        "J",
        "direction of J",
    ]


def test_one_draw_is_a_spread_too() -> None:
    found = spreads(problem_of("forearm-load"), 1)
    assert found.draws == 1
    assert next(plain_text(each.symbol) for each in found.answers) == "B"


def test_where_no_draw_fits_there_is_none() -> None:
    """The diver stands as far out as may be, as in one draw of fifteen."""
    text = default_bank().read("diving-board").source
    assert "diver_at <= length - 0.1 m" in text
    far = read_template(text.replace("diver_at <= length - 0.1 m", "diver_at >= 4.8 m"), "far")
    assert spreads(prepare(far, Convention()), 3) == Spreads(0, (), ())


@pytest.mark.parametrize("id", ["cabinet-slide-or-tip", "ladder-holds"])
def test_answers_in_words_are_counted(id: str) -> None:
    told = [each for each in found_of(id).answers if each.words]
    assert told
    for spread in told:
        assert spread.histogram is None
        counts = [count for _, count in spread.words]
        assert sum(counts) == found_of(id).draws
        assert counts == sorted(counts, reverse=True)
