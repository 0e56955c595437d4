"""Results kept for the plans used last."""

import gc
import weakref
from typing import Any

from probgen.wording import recent
from probgen.wording.recent import kept_by_plan


class Unhashable:
    """What is told apart by identity only, and cannot be hashed, as plans cannot."""

    __hash__ = None  # type: ignore[assignment]

    def __eq__(self, other: object) -> bool:
        return True


def plan() -> Any:
    return Unhashable()


def test_worked_once_for_a_plan_and_its_words() -> None:
    worked: list[tuple[Any, str]] = []

    @kept_by_plan
    def work(of: Any, word: str) -> int:
        worked.append((of, word))
        return len(worked)

    one, other = plan(), plan()
    assert [work(one, "a"), work(one, "b"), work(other, "a"), work(one, "a")] == [1, 2, 3, 1]
    assert [of is other for of, _ in worked] == [False, False, True]


def test_only_the_plans_used_last_are_held() -> None:
    work = kept_by_plan(id)
    plans = [plan() for _ in range(recent._PLANS + 1)]
    watched = [weakref.ref(each) for each in plans]
    for each in plans:
        assert work(each) == id(each)
        work(plans[0])
    del plans, each
    gc.collect()
    assert [place for place, held in enumerate(watched) if held() is None] == [1]
