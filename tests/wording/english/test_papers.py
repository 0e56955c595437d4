"""What is said of a pile of papers, word by word."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.quantities.expression import number
from probgen.quantities.unit import NEWTON
from probgen.wording.block import Text
from probgen.wording.english import ENGLISH
from probgen.wording.facts.papers import (
    AnswerInTable,
    Corrected,
    DealtByList,
    DealtByRows,
    DealtInOrder,
    DealtRowByRow,
    LargePrint,
    NeedsTold,
    PileOrder,
    ProblemsCounted,
    Released,
    SpareLast,
)
from probgen.wording.nouns import NO_NOUNS
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention
from probgen.working.direction import Direction, direction_of
from probgen.working.fact import Fact
from probgen.working.verdict import Verdict

SAID: list[tuple[Fact, str]] = [
    (ProblemsCounted(3, 24), "3, for 24 points"),
    (PileOrder(by_seat=True), "In the order of the seats."),
    (PileOrder(by_seat=False), "In the order of the class list."),
    (DealtByRows(12), "Deal them out in this order, 12 to a row: nobody then has the version of "
     "a neighbour."),
    (DealtRowByRow(), "Deal them out in this order, row by row: nobody then has the version of "
     "a neighbour."),
    (DealtByList(), "Give each seat the version that the list of versions names: nobody then has "
     "the version of a neighbour."),
    (DealtInOrder(), "Deal them out in this order: nobody then has the version of whom they sit "
     "beside."),
    (SpareLast(4), "The last 4 are spare."),
    (SpareLast(1), "The last one is spare."),
    (Corrected("2027-03-09", "the mass"), "Corrected 9 March: the mass."),
    (Corrected("2027-12-31", "the mass"), "Corrected 31 December: the mass."),
    (Corrected("2027-01-01", "the mass"), "Corrected 1 January: the mass."),
    (Released("", exam=False), "Released after the due date."),
    (Released("9 March", exam=False), "Released after the due date, 9 March."),
    (Released("9 March", exam=True), "Released after the exam, 9 March."),
    (LargePrint(("Ada", "Bea")), "In large print: Ada, Bea."),
    (NeedsTold((("Ada", "a quiet room"), ("Bea", "time and a half"))),
     "Needs: Ada (a quiet room), Bea (time and a half)."),
]  # fmt: skip


STEEP = direction_of(60.0, Convention())
SPARE = Verdict(kept=True, most=True, margin=number(12, NEWTON))
IN_TABLE = [
    (STEEP, "60.0° above the horizontal, to_the_right"),
    (SPARE, "yes, with_12_N_to_spare"),
    (replace(SPARE, kept=False), "no, 12_N_too_much"),
]


@pytest.mark.parametrize(("answer", "said"), IN_TABLE)
def test_what_stays_on_one_line_among_a_keys_answers(
    answer: Direction | Verdict, said: str
) -> None:
    (text,) = ENGLISH.say(AnswerInTable(answer), NO_NOUNS)
    assert isinstance(text, Text)
    assert text.text.replace("\u00a0", "_") == said


@pytest.mark.parametrize(("fact", "said"), SAID)
def test_what_is_said_of_a_pile(fact: Fact, said: str) -> None:
    assert plain_text(ENGLISH.say(fact, NO_NOUNS)) == said
