"""Sine and cosine exchanged: for all that is worked in the same way."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import Name
from tests.mistakes import supplied


def named(id: str, slip: str, way: str) -> list[tuple[str, ...]]:
    """The letters each misstep of a way is told of."""
    letters = []
    for own in supplied.problem(id).missteps:
        for each in own:
            if (each.slip, each.way) == (slip, way):
                told = each.parts["F"]
                every = told if isinstance(told, tuple) else (told,)
                letters.append(tuple(e.id for e in every if isinstance(e, Name)))
    return letters


@pytest.mark.parametrize(
    ("id", "way", "letters"),
    [
        ("ladder-holds", "torques", ("W_L", "W_p")),
        ("feeder-cord-strength", "one", ("T_1", "T_2")),
        ("lantern-two-cords", "one", ("T_1", "T_2")),
    ],
)
def test_is_made_for_all_alike(id: str, way: str, letters: tuple[str, ...]) -> None:
    found = named(id, "sin_cos_swap", way)
    assert letters in found
    assert not any((letter,) in found for letter in letters)
    assert not named(id, "sin_cos_swap", "torque")


def test_what_acts_in_another_balance_is_not_named() -> None:
    """A pull or a push on a sled, in two states of it."""
    assert set(named("sled-push-or-pull", "sin_cos_swap", "one")) >= {("Q",), ("P",)}


def test_forces_of_balances_in_which_a_common_ratio_cancels_are_not_named() -> None:
    """About A all arms of the climbing triangle have cos theta; about C that of f_B has not."""
    (found,) = set(named("climbing-triangle", "sin_cos_swap", "torques"))
    assert found == ("N_B", "W_2")
