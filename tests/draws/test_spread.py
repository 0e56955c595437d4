"""A class is spread: answers fill their range, neighbours lie apart, who comes later moves nobody.

The hook's answer here is m g L, which may be off by 2 %: with lengths to 30 m it has 4130 sets.
"""

from collections.abc import Callable, Mapping
from itertools import pairwise

import numpy as np
import pytest
from numpy.typing import NDArray

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.draws import spread as module
from probgen.draws.class_draws import class_draws
from probgen.draws.classroom import SAFE, Choice, Classroom, in_a_row
from probgen.draws.draw import Draw, values_of
from probgen.draws.nearness import Answers, apart, copying
from probgen.draws.requirement import stacked
from probgen.draws.sample import candidates, sample
from probgen.draws.spread import OFFERED, Look, Looked, Spread

LOOKED_AT: list[int] = []


def look(values: Mapping[str, NDArray[np.float64]]) -> Looked:
    LOOKED_AT.append(len(values["m"]))
    torque = (values["m"] * 9.8 * values["L"])[:, None]
    return Looked(values["L"] > 0.6, Answers(torque, 0.02 * torque, (False,)))


def spread_of(template: Template, seed: str, students: list[str], look: Look = look) -> Spread:
    probes = look(sample(template, 1000).values)
    classroom = Classroom(in_a_row(students).beside, probes.answers.rows(probes.fit))
    return Spread(template, seed, classroom, look)


def names(count: int) -> list[str]:
    return [f"student-{place}" for place in range(count)]


def drawn(template: Template, seed: str, count: int) -> dict[str, Draw]:
    return spread_of(template, seed, names(count)).settle(names(count), (), {})


def answers_of(draws: Mapping[str, Draw]) -> Answers:
    return look(stacked(list(draws.values()))).answers


@pytest.fixture
def wide(hook: Callable[..., Template]) -> Template:
    """Without the ratio, which is worked out exactly and takes most of the time."""
    lines = hook("30.00").source.splitlines(keepends=True)
    return read_template("".join(each for each in lines if not each.startswith("q = ")), "wide")


@pytest.mark.parametrize("seed", "stu")
def test_answers_fill_their_range_and_no_part_is_crowded(wide: Template, seed: str) -> None:
    """Of 50 students each of ten parts of the range has two or more, and none has many."""
    probes = look(sample(wide, 1000).values)
    ends = probes.answers.values[probes.fit]

    def parts(draws: Mapping[str, Draw]) -> NDArray[np.int64]:
        return np.histogram(answers_of(draws).values, 10, (ends.min(), ends.max()))[0]

    spread = parts(drawn(wide, seed, 50))
    assert spread.min() >= 2
    assert spread.max() <= 8
    unspread = class_draws(wide, seed, names(50)).draws
    by_themselves = parts(dict(zip(names(50), unspread, strict=True)))
    assert by_themselves.min() < 2
    assert by_themselves.max() > 10


@pytest.mark.parametrize("students", [40, 160])
def test_fewer_pairs_could_copy_than_without(wide: Template, students: int) -> None:
    shares = {"spread": 0.0, "unspread": 0.0}
    for seed in "abc":
        unspread = class_draws(wide, seed, names(students)).draws
        own = dict(zip(names(students), unspread, strict=True))
        shares["unspread"] += copying(answers_of(own)).share
        shares["spread"] += copying(answers_of(drawn(wide, seed, students))).share
    assert shares["spread"] < 0.6 * shares["unspread"]


@pytest.mark.parametrize("seed", "abc")
def test_neighbours_lie_apart(wide: Template, seed: str) -> None:
    own = answers_of(drawn(wide, seed, 300))
    steps = [apart(own.rows([a]), own.rows([b]))[0, 0] for a, b in pairwise(range(300))]
    assert min(steps) >= SAFE


def test_who_comes_later_changes_nothing_for_those_before(wide: Template) -> None:
    few, many = drawn(wide, "s", 150), drawn(wide, "s", 290)
    assert {student: many[student] for student in few} == few


def test_the_same_seed_gives_the_same_class_and_another_another(wide: Template) -> None:
    assert drawn(wide, "s", 40) == drawn(wide, "s", 40)
    one, other = drawn(wide, "s", 40), drawn(wide, "t", 40)
    assert sum(one[each] == other[each] for each in names(40)) < 4


def test_numbers_are_fit_of_one_owner_not_taken_and_not_barred(
    hook: Callable[..., Template],
) -> None:
    """The short hook has 28 sets that are fit."""
    template = hook()
    every = [values_of(template, each) for each in class_draws(template, "s", names(28)).draws]
    spread = spread_of(template, "s", names(20))
    found = spread.settle(names(20), every[:10], {"student-0": every[10:27]})
    sets = [values_of(template, each) for each in found.values()]
    assert len(set(sets)) == len(sets) >= 15
    assert set(sets) <= set(every[10:])
    assert found.keys() <= set(names(20))
    assert sets[0] == every[27] or "student-0" not in found


def test_who_is_offered_nothing_free_is_left_out(hook: Callable[..., Template]) -> None:
    template = hook()
    every = [values_of(template, each) for each in class_draws(template, "s", names(28)).draws]
    assert spread_of(template, "s", names(3)).settle(names(3), every, {}) == {}


def test_who_has_numbers_is_kept_away_from(wide: Template) -> None:
    """Somebody new sits between two who have theirs."""
    for seed in "abcdefgh":
        own = drawn(wide, "s", 3)
        spread = spread_of(wide, seed, names(3))
        there = {"student-0": own["student-0"], "student-2": own["student-2"]}
        spread.seat(there)
        new = spread.settle(["student-1"], (), {})
        assert apart(answers_of(new), answers_of(there)).min() >= SAFE


def test_numbers_that_are_fit_no_more_are_not_counted(wide: Template) -> None:
    spread = spread_of(wide, "s", names(2))
    made = map(sample(wide, 900).draw, range(900))
    unfit = next(own for own in made if float(own.values["L"].value) < 0.6)
    offered = answers_of({"the same": unfit, "another": drawn(wide, "s", 1)["student-0"]})
    spread.seat({"student-0": unfit})
    assert spread.classroom.choose("student-1", offered).place == 0
    spread.classroom.seat("student-0", offered.rows([0]))
    assert spread.classroom.choose("student-1", offered).place == 1


OFFERS = {
    "the first that is safe": ([1, SAFE, SAFE], 1),
    "else the farthest": ([1, 0, 2, 1], 2),
    "of equals the first": ([1, 1, 0, 1], 0),
}


@pytest.mark.parametrize(("steps", "turn"), OFFERS.values(), ids=OFFERS)
def test_offers_are_made_until_one_is_safe_from_neighbours(
    wide: Template, monkeypatch: pytest.MonkeyPatch, steps: list[int], turn: int
) -> None:
    """One set of numbers a turn, as far from neighbours as the steps say."""
    monkeypatch.setattr(module, "OFFERED", 1)
    told = iter(steps)
    monkeypatch.setattr(Classroom, "choose", lambda *_: Choice(0, next(told)))
    spread = spread_of(wide, "s", ["ada"])
    LOOKED_AT.clear()
    found = spread.settle(["ada"], (), {})
    assert found == {"ada": candidates(wide, "s", ["ada"], 1, turn).draw(0)}
    assert len(LOOKED_AT) == (turn + 1 if SAFE in steps else len(steps))


def test_a_large_class_is_looked_at_in_parts(wide: Template) -> None:
    spread = spread_of(wide, "s", names(600))
    LOOKED_AT.clear()
    assert len(spread.settle(names(600), (), {})) == 600
    assert max(LOOKED_AT) == module._AT_ONCE * OFFERED < 600 * OFFERED


def test_few_draws_that_are_fit_are_looked_for_longer(wide: Template) -> None:
    """One in some 60: of 16 offered most students have none."""

    def seldom(values: Mapping[str, NDArray[np.float64]]) -> Looked:
        looked = look(values)
        return Looked((values["L"] * 20 % 59 < 0.5) & (values["m"] > 0), looked.answers)

    found = spread_of(wide, "s", names(60), seldom).settle(names(60), (), {})
    assert 20 < len(found) < 60
