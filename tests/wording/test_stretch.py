"""Expressions told along a body: whose letters they hold, and numbers that give what acts there."""

from __future__ import annotations

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.problem import Worked, draw_class, prepare, work
from probgen.quantities.expression import Expression, Name, evaluate
from probgen.quantities.printing import plain
from probgen.quantities.unit import FORCE, LENGTH, TORQUE, US_CUSTOMARY
from probgen.statics.internal_forces import Inside
from probgen.statics.stretch import Side
from probgen.wording.block import Display, Row
from probgen.wording.facts.diagram import ExpressionsTaken, ValuesFollow
from probgen.wording.passage import Sentences
from probgen.wording.stretch import place_letter, stretches_told, told_from
from probgen.working.convention import Convention
from probgen.working.fact import Fact
from tests.bank.test_section import BUILT_IN, ON_TWO, spread
from tests.wording.test_diagram import ASKED, DOWN, EVEN, ONE, worked

ROLLER = '[[find]]\nquantity = "S"\n[[diagram]]\n'
TWO_LOADS = DOWN + EVEN
HANGING = ON_TWO.replace('at = "B"', 'at = "E"')


def told(text: str) -> tuple[list[Fact], list[Row]]:
    _, own = worked(text)
    (found,) = own.inside
    parts = list(stretches_told(own.digits, found, own.complete))
    facts = [fact for part in parts if isinstance(part, Sentences) for fact in part.facts]
    return facts, [row for part in parts if isinstance(part, Display) for row in part.rows]


CASES = [
    # what is asked of the beam; which part is kept; what had not been found
    (ON_TWO + TWO_LOADS + ROLLER, True, []),
    (ON_TWO + TWO_LOADS + ASKED, False, []),
    (HANGING + TWO_LOADS + ASKED, False, ["S"]),
    (BUILT_IN + TWO_LOADS + ASKED, False, []),
    (ON_TWO + spread("A", "C", '"w"', "0") + ROLLER, True, []),
]


@pytest.mark.parametrize(("text", "beyond", "missing"), CASES)
def test_they_hold_what_the_working_found(text: str, beyond: bool, missing: list[str]) -> None:
    (taken, *others), _ = told(ONE + text)
    assert isinstance(taken, ExpressionsTaken)
    assert taken.beyond == beyond
    follow = [
        str(n.symbol) for each in others if isinstance(each, ValuesFollow) for n, _ in each.values
    ]
    assert follow == missing


@pytest.mark.parametrize("text", [text for text, *_ in CASES])
def test_the_numbers_give_what_acts_there(text: str) -> None:
    _, own = worked(ONE + text)
    numbers_are_those_found(own, "beam")


def test_so_they_do_in_feet_and_pounds() -> None:
    problem = prepare(
        default_bank().read("footbridge-inside", US_CUSTOMARY), Convention(units=US_CUSTOMARY)
    )
    (own,) = work(problem, draw_class(problem, "feet", ["one"]).draws)
    (body,) = problem.plan.system.diagrams
    numbers_are_those_found(own, body)


def numbers_are_those_found(own: Worked, body: str) -> None:
    """Coherent units are of SI; what is written is in those of the course."""
    (found,) = own.inside
    units = own.digits.units
    metres = units.unit_of(LENGTH).factor
    factors = units.unit_of(FORCE).factor, units.unit_of(TORQUE).factor
    parts = stretches_told(own.digits, found, own.complete)
    rows = [row for part in parts if isinstance(part, Display) for row in part.rows]
    letters = [row.left[-1] for row in rows]
    assert [str(each.symbol) for each in letters if isinstance(each, Name)] == ["V", "M"] * (
        len(rows) // 2
    )
    _, written = told_from(own.digits, body, place_letter(own.digits))
    for place, row in enumerate(rows):
        stretch, of = written[place // 2], (Inside.SHEAR, Inside.MOMENT)[place % 2]
        for share in (0.0, 0.5, 1.0):
            x = stretch.low + share * (stretch.high - stretch.low)
            value = row.right[-1]
            assert isinstance(value, Expression)
            at = found.at(x, of, before=share == 1.0)
            told = float(evaluate(value, {"?x": x / metres})) * factors[place % 2]
            assert told == pytest.approx(at, abs=2e-3 * found.size(of))


def test_lines_are_written_as_a_table() -> None:
    _, rows = told(ONE + ON_TWO + TWO_LOADS + ROLLER)
    written = [(plain(row.left), plain(row.right)) for row in rows]
    assert written == [
        ("0 < x < a : V", "F + w (L − x) − S = 1035 − 120 x"),
        ("M", "S (L − x) − F (a − x) − w (L − x)²/2 = 1035 x − 60 x²"),
        ("a < x < L : V", "w (L − x) − S = 135 − 120 x"),
        ("M", "S (L − x) − w (L − x)²/2 = 1350 + 135 x − 60 x²"),
    ]


def test_another_letter_where_x_is_taken() -> None:
    text = (ONE + ON_TWO + TWO_LOADS + ROLLER).replace("a = { name", 'a = { symbol = "x", name')
    _, own = worked(text)
    assert place_letter(own.digits).symbol == "s"


def test_no_expressions_of_what_acts_beside_the_axis() -> None:
    text = ONE.replace("[body.beam]", 'H = ["a", "0.2 m"]\n[body.beam]')
    _, own = worked(text + ON_TWO + DOWN.replace('at = "C"', 'at = "H"') + ROLLER)
    assert told_from(own.digits, "beam", place_letter(own.digits))[1] == ()
    assert Side.BEFORE is told_from(own.digits, "beam", place_letter(own.digits))[0]
    (found,) = own.inside
    assert list(stretches_told(own.digits, found, own.complete)) == []
