"""Which figures a worked problem has, and what each may show."""

from __future__ import annotations

import pytest

from probgen.bank.reading import read_template
from probgen.input.fault import InputError
from probgen.problem.problem_figures import (
    asks_for_sizes,
    every_scene,
    free_body_scene,
    points_told,
    situation_scene,
)
from tests.situations import SLIDES, STAYED_SHELF, TWO_BEAMS, cabinet, finding, worked


def test_the_situation_and_each_body_alone() -> None:
    for text, bodies in ((STAYED_SHELF, ["shelf"]), (TWO_BEAMS, ["left", "right"])):
        names = [name for name, _ in every_scene(*worked(text))]
        assert names == ["situation", *(f"free-body-{body}" for body in bodies)]


@pytest.mark.parametrize(
    ("text", "asks"),
    [
        (STAYED_SHELF, False),
        (cabinet() + finding("x"), True),
        (cabinet("100") + finding("x"), True),
    ],
)
def test_a_length_that_is_sought_is_not_to_be_measured(text: str, asks: bool) -> None:
    assert asks_for_sizes(read_template(text, "own.toml")) is asks


def test_the_key_s_figure_has_what_was_sought_in_its_place() -> None:
    text = cabinet("100", m="50.0", b="0.50", h="0.80", mu="0.30") + SLIDES + finding("x")
    problem, own = worked(text)
    asked, answered = (situation_scene(problem, own, solved=solved) for solved in (False, True))
    assert asked != answered


def test_without_anything_sought_it_is_the_same_figure() -> None:
    problem, own = worked(STAYED_SHELF)
    asked, answered = (situation_scene(problem, own, solved=solved) for solved in (False, True))
    assert asked == answered


def test_points_that_the_statement_names_in_the_order_of_the_template() -> None:
    text = STAYED_SHELF.replace('"Own."', '"Of {{ C }} and {{ A }}, find {{ T }} and {{ L }}."')
    problem, _ = worked(text)
    assert points_told(problem.template) == ("A", "C")


def test_points_in_one_place_are_told_and_not_drawn() -> None:
    """A shelf of no length, as only numbers set by hand can make it."""
    problem, own = worked(STAYED_SHELF)
    own.case.values["L"] = own.case.values["d"] = 0.0  # type: ignore[index]
    with pytest.raises(InputError, match="values whose figure can be drawn"):
        situation_scene(problem, own, solved=False)


def test_a_body_alone_shows_the_pivot_of_the_working() -> None:
    problem, own = worked(STAYED_SHELF)
    elsewhere = worked('pivot = "B"\n' + STAYED_SHELF)
    assert free_body_scene(problem, own, "shelf") != free_body_scene(*elsewhere, "shelf")
