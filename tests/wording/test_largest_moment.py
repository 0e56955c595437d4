"""Why a moment is largest where it is: which shear forces are told, and what other places."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import Number, evaluate
from probgen.quantities.printing import plain
from probgen.wording.block import Display
from probgen.wording.facts.diagram import (
    LargestHeld,
    ShearChanges,
    ShearKeepsSign,
    SmallerMoments,
)
from probgen.wording.key import tell
from probgen.wording.largest_moment import largest_passage
from probgen.wording.passage import Passage, Sentences
from probgen.working.fact import Fact
from tests.bank.test_largest_moment import DOWN, EVEN, asked
from tests.bank.test_section import BUILT_IN, ON_TWO, TURNED, spread
from tests.statics.test_largest_moment import HANGING, UPWARD
from tests.wording.test_diagram import ONE, worked

THIRD = DOWN.replace('"F"', '"F/3"\nsymbol = "P"')
PRESSED = ON_TWO.replace('symbol = "S"', 'symbol = "S"\ndirection = 270')
PUSHED = UPWARD.replace('"F"', '"300 N"\nsymbol = "P"')


def told(text: str) -> Passage:
    _, own = worked(text)
    (largest,) = own.case.system.largest
    (found,) = own.inside
    return largest_passage(own.digits, largest, found)


def facts(passage: Passage) -> list[Fact]:
    return [f for part in passage.parts if isinstance(part, Sentences) for f in part.facts]


def values(passage: Passage) -> list[float]:
    """What the shear forces come to, newtons."""
    rows = [row for part in passage.parts if isinstance(part, Display) for row in part.rows]
    ends = [row.right[-1] for row in rows]
    return [float(evaluate(end, {})) for end in ends if isinstance(end, Number)]


CASES = [
    # what is asked; shear forces told; of the fact that ends it, what it says
    (ON_TWO + EVEN + asked('between = ["A", "B"]'), [360, -360], (("A", "B"), "X", True)),
    (ON_TWO + EVEN + DOWN + asked('at = "C"'), [855, -45], ((), "C", True)),
    (HANGING + EVEN + THIRD + asked('between = ["C", "E"]'), [18, -402], (("C", "E"), "X", True)),
    (
        PRESSED + spread("A", "B", '"-w"', '"-w"') + asked('between = ["A", "B"]'),
        [-360, 360],
        (("A", "B"), "X", False),
    ),
]


@pytest.mark.parametrize(("text", "shear", "ending"), CASES)
def test_the_shear_force_is_told_on_both_sides(
    text: str, shear: list[float], ending: tuple[tuple[str, ...], str, bool]
) -> None:
    passage = told(ONE + text)
    assert values(passage) == pytest.approx(shear)
    (found,) = (fact for fact in facts(passage) if isinstance(fact, ShearChanges))
    assert (found.between, found.at, found.falls) == ending


def test_an_end_that_is_built_in() -> None:
    (keeps,) = facts(told(ONE + BUILT_IN + EVEN + asked('at = "B"')))[1:]
    assert keeps == ShearKeepsSign("beam", "B", "A", positive=False)
    held, others = facts(told(ONE + BUILT_IN + EVEN + PUSHED + asked('at = "B"')))[1:]
    assert held == LargestHeld("B", couple=False)
    assert isinstance(others, SmallerMoments)
    assert [(at, plain(far), plain(value)) for at, far, value in others.places] == [
        ("C", "1.50 m", "−135 N·m"),  # where the load pushes up
        ("", "2.50 m", "−75.0 N·m"),  # 300 N on 120 N/m
    ]


def test_a_couple() -> None:
    (held,) = facts(told(ONE + ON_TWO + TURNED + asked('at = "C"', 'just = "after"')))[1:]
    assert held == LargestHeld("C", couple=True)


def test_it_stands_before_the_forces_on_the_part() -> None:
    problem, own = worked(ONE + HANGING + EVEN + THIRD + asked('between = ["C", "E"]'))
    headings = [
        type(each.heading).__name__ for each in tell(own.digits, problem.unused, own.inside)
    ]
    place = headings.index("LargestHeading")
    assert headings[place + 1] == "ForcesHeading"
    without = [type(each.heading).__name__ for each in tell(own.digits, problem.unused)]
    assert without == headings[:place] + headings[place + 1 :]
