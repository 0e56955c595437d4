"""What stands on another body is drawn after it, and is known by that."""

from __future__ import annotations

from probgen.figures.situation.linked import carriers, level, upward
from tests.figures.sketches import STACK, read, surveyed


def test_what_stands_on_another_is_drawn_after_it() -> None:
    template, values, _ = read(STACK)
    measured = surveyed(template, values)
    assert [body.id for body in measured.system.bodies] == ["books", "box"]
    assert [body.id for body in upward(measured)] == ["box", "books"]


def test_how_many_bodies_are_under_one() -> None:
    template, values, _ = read(STACK)
    below = carriers(surveyed(template, values))
    assert below == {"books": "box"}
    assert (level("books", below), level("box", below)) == (1, 0)
