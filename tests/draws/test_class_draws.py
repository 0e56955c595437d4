from collections.abc import Callable, Sequence
from decimal import Decimal

import pytest

from probgen.bank.template import Template
from probgen.draws.class_draws import ClassDraws, NoDrawError, _Spread, class_draws
from probgen.draws.draw import Draw


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
    spread = _Spread(hook(), "seed", lambda draws: [True] * len(draws), fit)
    assert spread._free(taken) is free
