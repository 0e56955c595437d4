"""A draw taken over by another revision of its template."""

from collections.abc import Callable

import pytest

from probgen.bank.template import Template
from probgen.draws.draw import draw
from probgen.draws.kept import kept_draw


def test_the_same_numbers_under_the_new_revision(hook: Callable[..., Template]) -> None:
    own = draw(hook("30.00"), "s", "ada")
    kept = kept_draw(hook("40.00"), own)
    assert kept is not None
    assert kept.values == own.values


def test_numbers_that_are_drawn_no_more_are_not_kept(hook: Callable[..., Template]) -> None:
    wide, narrow = hook("30.00"), hook("0.80")
    given = next(each for each in wide.givens if each not in narrow.givens)
    own = [draw(wide, "s", str(n)) for n in range(20)]
    choices = next(each for each in narrow.givens if each.id == given.id).choices
    outside = [each for each in own if each.values[given.id].value not in choices]
    assert outside
    assert {kept_draw(narrow, each) for each in outside} == {None}


@pytest.mark.parametrize("lost", [0, 1])
def test_a_given_that_is_new_keeps_nothing(lost: int, hook: Callable[..., Template]) -> None:
    template = hook()
    own = draw(template, "s", "ada")
    values = {id: n for place, (id, n) in enumerate(own.values.items()) if place != lost}
    assert kept_draw(template, type(own)(own.template_id, 1, values)) is None
