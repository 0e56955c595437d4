from collections.abc import Callable
from itertools import count
from math import gcd

import pytest

from probgen.bank.template import Template
from probgen.draws.draw import FREE_ATTEMPTS, Draw, draw
from probgen.draws.keyed_choice import keyed_choice


def numbers(each: Draw) -> dict[str, str]:
    return {id: str(number.value) for id, number in each.values.items()}


def test_the_same_key_gives_the_same_numbers(hook: Callable[..., Template]) -> None:
    assert draw(hook(), "s", "ann") == draw(hook(), "s", "ann")


@pytest.mark.parametrize("other", [("t", "ann"), ("s", "bob"), ("s", "ann", 1)])
def test_another_key_gives_other_numbers(
    hook: Callable[..., Template], other: tuple[int | str, ...] | tuple[str, ...]
) -> None:
    wide = hook("500.00")
    assert draw(wide, "s", "ann") != draw(wide, *other)


def test_numbers_keep_the_digits_of_the_template(hook: Callable[..., Template]) -> None:
    for student in range(20):
        drawn = numbers(draw(hook(), "s", str(student)))
        assert len(drawn["L"].split(".")[1]) == 2
        assert len(drawn["m"].split(".")[1]) == 1
        assert len(drawn["d"].split(".")[1]) == 2


def test_a_given_is_drawn_alike_whatever_else_is_drawn(hook: Callable[..., Template]) -> None:
    masses = {numbers(draw(template, "s", "ann"))["m"] for template in (hook(), hook("3.00"))}
    assert len(masses) == 1


def test_derived_quantities_are_what_is_printed(hook: Callable[..., Template]) -> None:
    each = next(
        d
        for d in (draw(hook(), "s", str(i)) for i in range(99))
        if str(d.values["L"].value) == "0.75"
    )
    assert str(each.values["d"].value) == "0.38"  # 0.375, half up
    assert each.coherent()["d"] == 0.38


def test_coherent_values_are_in_metres(hook: Callable[..., Template]) -> None:
    each = draw(hook(), "s", "ann")
    assert each.coherent()["L"] == pytest.approx(float(each.values["L"].value))
    assert set(each.coherent()) == {"L", "m", "d", "q"}


def test_late_attempts_take_every_set_of_numbers_once(hook: Callable[..., Template]) -> None:
    template = hook()
    walk = [
        tuple(numbers(draw(template, "s", "ann", FREE_ATTEMPTS + step)).values())
        for step in range(template.room)
    ]
    assert len(set(walk)) == template.room == 49
    other = tuple(numbers(draw(template, "s", "bob", FREE_ATTEMPTS)).values())
    assert walk[0] != other


def test_the_walk_is_the_one_that_released_numbers_come_from(
    hook: Callable[..., Template],
) -> None:
    """Worked again: from a keyed place, in strides prime to the room.

    Another walk would do as well, but would give every student other numbers.
    """
    template = hook()
    for student in ("ann", "bob", "cid", "dee"):
        key = ("s", student, template.id, template.revision)
        place = keyed_choice(template.room, *key, "walk")
        stride = keyed_choice(template.room, *key, "stride") + 1
        stride = next(each for each in count(stride) if gcd(each, template.room) == 1)
        for step in range(3):
            left = (place + step * stride) % template.room
            expected = []
            for given in template.givens:
                expected.append(str(given.choices[left % len(given.choices)]))
                left //= len(given.choices)
            found = draw(template, "s", student, FREE_ATTEMPTS + step)
            assert [str(found.values[given.id].value) for given in template.givens] == expected
