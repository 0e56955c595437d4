"""The page of formulas: expressions, in the course's words, and true."""

from collections.abc import Iterator
from math import cos, hypot, isclose, radians, sin
from typing import Any

import pytest

from probgen.quantities.expression import Name, evaluate, names_in
from probgen.quantities.formula import (
    Balance,
    Difference,
    Formula,
    Integral,
    Piece,
    Relation,
    Words,
)
from probgen.quantities.printing import plain
from probgen.sheets.document import Formulas
from probgen.sheets.formula_page import formula_page
from probgen.wording.sentence import plain_text

# A force F at r from the pivot, at phi to the line there, and a triangle with sides 3, 5, 7:
# worked by hand, with the torque as the cross product of r and F.
TURN, PLACE = 70.0, 25.0
X, Y = 2.0 * cos(radians(PLACE)), 2.0 * sin(radians(PLACE))
F_X, F_Y = 10.0 * cos(radians(PLACE + TURN)), 10.0 * sin(radians(PLACE + TURN))
TORQUE = X * F_Y - Y * F_X
VALUES = {
    "r": 2.0, "F": 10.0, "phi": TURN, "r_⊥": 2.0 * sin(radians(TURN)), "x": X, "y": Y,
    "F_x": F_X, "F_y": F_Y, "theta": PLACE + TURN, "tau": TORQUE,
    "a": 3.0, "b": 5.0, "c": 7.0, "alpha": 21.7867893, "beta": 38.2132107, "gamma": 120.0,
}  # fmt: skip


def formulas_of(page: Formulas) -> Iterator[Formula]:
    for group in page.groups:
        for row in group.rows:
            yield from row.formulas


def sides(formula: Formula) -> list[float]:
    parts = [piece for piece in formula if not isinstance(piece, Relation)]
    return [float(evaluate(part, VALUES)) for part in parts]  # type: ignore[arg-type]


def checkable(page: Formulas) -> list[Formula]:
    """The formulas of what has a value above; balances have none."""
    return [
        formula
        for formula in formulas_of(page)
        if all(isinstance(p, Relation) or _has_value(p) for p in formula)
    ]


def _has_value(piece: Piece) -> bool:
    return (
        not isinstance(piece, Relation | Words | Balance | Integral | Difference)
        and names_in(piece) <= VALUES.keys()
    )


def test_what_stands_there_is_true() -> None:
    assert isclose(hypot(F_X, F_Y), 10.0)
    formulas = checkable(formula_page())
    assert len(formulas) == 9
    for formula in formulas:
        first, *others = sides(formula)
        assert all(isclose(first, other, rel_tol=1e-6) for other in others), plain(formula)


def test_what_a_force_is_stands_first() -> None:
    firsts = [f[0] for f in formulas_of(formula_page()) if isinstance(f[0], Name)]
    assert [first.id for first in firsts][-5:] == ["W", "f", "F", "W", "x_cm"]


def test_clockwise_torques_have_the_other_sign() -> None:
    pages = formula_page(clockwise=False), formula_page(clockwise=True)
    plus, minus = (
        next(f for f in formulas_of(page) if "τ = " in plain(f) and "F_y" in plain(f))
        for page in pages
    )
    assert sides(minus)[1] == pytest.approx(-sides(plus)[1])


@pytest.mark.parametrize(("word", "clockwise"), [("torque", False), ("moment", True)])
def test_the_words_are_the_course_s(word: Any, clockwise: bool) -> None:
    page = formula_page(word, clockwise)
    rows = [plain_text(row.words) for group in page.groups for row in group.rows]
    titles = [plain_text(group.title) for group in page.groups]
    assert f"no net {word}, about any point" in rows
    assert titles[1].startswith(f"{word.capitalize()} of a force F")
    sense = "clockwise" if clockwise else "counter-clockwise"
    assert f"by components, {sense} positive" in rows
