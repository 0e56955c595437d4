from collections.abc import Callable, Sequence
from decimal import Decimal
from itertools import pairwise

import pytest

from probgen.bank.template import Template
from probgen.draws.class_draws import (
    ClassDraws,
    NoDrawError,
    NoneLeftError,
    _Attempts,
    class_draws,
)
from probgen.draws.draw import Draw, values_of
from probgen.draws.spread import Spread
from tests.draws.test_spread import spread_of


def sets(found: ClassDraws) -> list[tuple[str, ...]]:
    return [tuple(str(number.value) for number in each.values.values()) for each in found.draws]


def names(count: int) -> list[str]:
    return [f"student-{i}" for i in range(count)]


def test_nobody_gets_the_numbers_of_another(hook: Callable[..., Template]) -> None:
    # 7 masses and the 4 lengths above 0.60 m: just enough for 28.
    found = class_draws(hook(), "s", names(28))
    assert len(set(sets(found))) == 28
    assert found.remarks == ()
    assert all(float(each.values["L"].value) > 0.6 for each in found.draws)


def test_a_large_class_in_a_wide_room(hook: Callable[..., Template]) -> None:
    found = class_draws(hook("30.00"), "s", names(1000))
    assert len(set(sets(found))) == 1000


@pytest.mark.parametrize("count", [20, 28, 40])
def test_the_order_of_the_roster_changes_nothing(hook: Callable[..., Template], count: int) -> None:
    roster = names(count)
    forward = dict(zip(roster, sets(class_draws(hook(), "s", roster)), strict=True))
    turned = roster[::-1]
    backward = dict(zip(turned, sets(class_draws(hook(), "s", turned)), strict=True))
    assert forward == backward


def test_too_small_a_room_is_told_and_shared_evenly(hook: Callable[..., Template]) -> None:
    found = class_draws(hook(), "s", names(70))
    counts = [sets(found).count(each) for each in set(sets(found))]
    assert len(counts) == 28
    assert sorted(set(counts)) == [2, 3]
    (remark,) = found.remarks
    assert "28 different sets" in remark
    assert "42 of 70 students" in remark


@pytest.mark.parametrize("seed", "stuv")
def test_who_has_to_share_shares_with_no_neighbour(
    hook: Callable[..., Template], seed: str
) -> None:
    """Of 28 sets of numbers, for 70 students in a row."""
    template = hook()
    spread = spread_of(template, seed, names(70))
    found = class_draws(template, seed, names(70), spread=spread)
    own = sets(found)
    assert sorted({own.count(each) for each in own}) == [2, 3]
    assert "28 different sets" in found.remarks[0]
    assert [place for place, (one, other) in enumerate(pairwise(own)) if one == other] == []


def test_who_is_offered_nothing_gets_numbers_all_the_same_and_is_seated(
    hook: Callable[..., Template], monkeypatch: pytest.MonkeyPatch
) -> None:
    """So that those who come after sit apart from them too."""
    template = hook()
    spread = spread_of(template, "s", names(5))
    seated: dict[str, Draw] = {}
    monkeypatch.setattr(Spread, "settle", lambda *_: {})
    monkeypatch.setattr(Spread, "seat", lambda _, draws: seated.update(draws))
    found = class_draws(template, "s", names(5), spread=spread)
    assert found == class_draws(template, "s", names(5))
    assert seated == dict(zip(names(5), found.draws, strict=True))


# The hook has 28 sets of numbers.


def test_what_others_had_is_drawn_around_while_there_is_room(
    hook: Callable[..., Template],
) -> None:
    template = hook()
    first = class_draws(template, "s", names(20))
    had = [values_of(template, each) for each in first.draws]
    later = class_draws(template, "t", names(8), had=had)
    assert not set(sets(later)) & set(sets(first))
    assert later.remarks == ()
    more = class_draws(template, "t", names(11), had=had)
    assert len(set(sets(more))) == 11
    assert len(set(sets(more)) & set(sets(first))) == 3
    (remark,) = more.remarks
    assert "3 of 11 students have some that others had" in remark


def test_what_is_taken_is_given_again_after_what_was_had(hook: Callable[..., Template]) -> None:
    template = hook()
    every = [values_of(template, each) for each in class_draws(template, "s", names(28)).draws]
    found = class_draws(template, "t", names(12), taken=every[:20], had=every[20:])
    assert {values_of(template, each) for each in found.draws} >= set(every[20:])
    assert len(found.remarks) == 2


def test_nobody_gets_what_is_barred_also_where_numbers_are_shared(
    hook: Callable[..., Template],
) -> None:
    template = hook()
    every = [values_of(template, each) for each in class_draws(template, "s", names(28)).draws]
    barred = {"student-3": every[:27]}
    found = class_draws(template, "t", names(40), barred=barred)
    assert values_of(template, found.draws[3]) == every[27]


def test_who_is_barred_from_all_there_is_is_named(hook: Callable[..., Template]) -> None:
    template = hook()
    every = [values_of(template, each) for each in class_draws(template, "s", names(28)).draws]
    with pytest.raises(NoneLeftError) as none:
        class_draws(template, "t", names(5), barred={"student-1": every, "student-4": every})
    assert none.value.students == ("student-1", "student-4")


def test_refused_draws_are_drawn_again(hook: Callable[..., Template]) -> None:
    asked = []

    def light(draws: Sequence[Draw]) -> list[bool]:
        asked.append(len(draws))
        return [each.values["m"].value < 2 for each in draws]

    found = class_draws(hook("30.00"), "s", names(100), light)
    assert all(each.values["m"].value < 2 for each in found.draws)
    assert asked[0] > 90  # in batches: all first attempts together
    free = class_draws(hook("30.00"), "s", names(100))
    fit = [i for i, each in enumerate(free.draws) if each.values["m"].value < 2]
    kept = [i for i in fit if found.draws[i] == free.draws[i]]
    assert len(kept) >= 0.9 * len(fit) > 0  # those accepted at once stay as they were


def test_a_template_that_refuses_everything_is_told(hook: Callable[..., Template]) -> None:
    with pytest.raises(NoDrawError, match="hook: 81 draws of one student were all refused"):
        class_draws(hook(), "s", names(3), lambda draws: [False] * len(draws))


def test_a_student_twice_is_refused(hook: Callable[..., Template]) -> None:
    with pytest.raises(ValueError, match="twice"):
        class_draws(hook(), "s", ["a", "a"])


def test_an_empty_class(hook: Callable[..., Template]) -> None:
    assert class_draws(hook(), "s", []).draws == ()


ONE, TWO = (Decimal(1),), (Decimal(2),)


@pytest.mark.parametrize(
    ("fit", "taken", "free"),
    [
        ({}, [], False),
        ({ONE: True}, [], True),
        ({ONE: True}, [ONE], False),
        ({ONE: False}, [], False),
        ({ONE: True, TWO: False}, [ONE], False),
        ({ONE: True, TWO: True}, [ONE], True),
    ],
)
def test_free_is_what_is_fit_and_nobody_has(
    hook: Callable[..., Template],
    fit: dict[tuple[Decimal, ...], bool],
    taken: list[tuple[Decimal, ...]],
    free: bool,
) -> None:
    attempts = _Attempts(hook(), "seed", lambda draws: [True] * len(draws), fit)
    assert attempts._free(taken) is free
