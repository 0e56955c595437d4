"""Results kept for the very same things."""

import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from decimal import Decimal

import pytest

from probgen.quantities.expression import Number
from probgen.quantities.recent import kept

FOUR, FOUR_EXACT, FIVE = (Number(Decimal(digits)) for digits in ("4.0", "4.00", "5"))


def watched(most: int) -> tuple[list[str], Callable[[Number, str], str]]:
    """A function that is kept, and what it was really worked for."""
    worked: list[str] = []

    @kept(most)
    def work(of: Number, word: str) -> str:
        worked.append(f"{word} {of.value}")
        return worked[-1]

    return worked, work


def test_worked_once_for_a_thing_and_its_words() -> None:
    worked, work = watched(2)
    said = [work(FOUR, "a"), work(FOUR, "b"), work(FIVE, "a"), work(FOUR, "a")]
    assert said == ["a 4.0", "b 4.0", "a 5", "a 4.0"]
    assert worked == said[:3]


def test_equal_numbers_are_told_apart() -> None:
    _, work = watched(2)
    assert FOUR == FOUR_EXACT
    assert [work(FOUR, "a"), work(FOUR_EXACT, "a")] == ["a 4.0", "a 4.00"]


def test_what_was_asked_for_least_lately_is_let_go() -> None:
    worked, work = watched(2)
    for thing in (FOUR, FIVE, FOUR, FOUR_EXACT, FOUR, FIVE):
        work(thing, "a")
    assert worked == ["a 4.0", "a 5", "a 4.00", "a 5"]


def test_threads_do_not_disturb_one_another() -> None:
    things = [[number] for number in range(8)]
    tries = 20000

    @kept(2)
    def work(of: list[int]) -> int:
        return of[0]

    def work_all(worker: int) -> bool:
        asked = [things[(worker + 1) * step % 8] for step in range(tries)]
        return all(work(thing) == thing[0] for thing in asked)

    usual = sys.getswitchinterval()
    sys.setswitchinterval(1e-6)
    try:
        with ThreadPoolExecutor(6) as pool:
            assert all(pool.map(work_all, range(6)))
    finally:
        sys.setswitchinterval(usual)


def test_what_fails_is_not_kept() -> None:
    tries: list[Number] = []

    @kept(1)
    def work(of: Number) -> int:
        tries.append(of)
        return 1 // (len(tries) - 1)

    with pytest.raises(ZeroDivisionError):
        work(FOUR)
    assert [work(FOUR), work(FOUR)] == [1, 1]
    assert len(tries) == 2
