import pytest

from probgen.draws.draw import FREE_ATTEMPTS, draw


def numbers(each):
    return {id: str(number.value) for id, number in each.values.items()}


def test_the_same_key_gives_the_same_numbers(hook):
    assert draw(hook(), "s", "ann") == draw(hook(), "s", "ann")


@pytest.mark.parametrize("other", [("t", "ann"), ("s", "bob"), ("s", "ann", 1)])
def test_another_key_gives_other_numbers(hook, other):
    wide = hook("500.00")
    assert draw(wide, "s", "ann") != draw(wide, *other)


def test_numbers_keep_the_digits_of_the_template(hook):
    for student in range(20):
        drawn = numbers(draw(hook(), "s", str(student)))
        assert len(drawn["L"].split(".")[1]) == 2
        assert len(drawn["m"].split(".")[1]) == 1
        assert len(drawn["d"].split(".")[1]) == 2


def test_a_given_is_drawn_alike_whatever_else_is_drawn(hook):
    masses = {
        numbers(draw(template, "s", "ann"))["m"] for template in (hook(), hook("3.00"))
    }
    assert len(masses) == 1


def test_derived_quantities_are_what_is_printed(hook):
    each = next(
        d
        for d in (draw(hook(), "s", str(i)) for i in range(99))
        if str(d.values["L"].value) == "0.75"
    )
    assert str(each.values["d"].value) == "0.38"  # 0.375, half up
    assert each.coherent()["d"] == 0.38


def test_coherent_values_are_in_metres(hook):
    each = draw(hook(), "s", "ann")
    assert each.coherent()["L"] == pytest.approx(float(each.values["L"].value))
    assert set(each.coherent()) == {"L", "m", "d", "q"}


def test_late_attempts_take_every_set_of_numbers_once(hook):
    template = hook()
    walk = [
        tuple(numbers(draw(template, "s", "ann", FREE_ATTEMPTS + step)).values())
        for step in range(template.room)
    ]
    assert len(set(walk)) == template.room == 49
    other = tuple(numbers(draw(template, "s", "bob", FREE_ATTEMPTS)).values())
    assert walk[0] != other
