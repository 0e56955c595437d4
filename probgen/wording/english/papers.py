"""A pile of papers, in English."""

from __future__ import annotations

from typing import Final

from probgen.wording.block import Text
from probgen.wording.english.ending import yes_or_no
from probgen.wording.english.saying import say
from probgen.wording.english.ways import direction, direction_in_short
from probgen.wording.facts.papers import (
    AnswerInTable,
    BothSides,
    Corrected,
    DealtByList,
    DealtByRows,
    DealtInOrder,
    DealtRowByRow,
    DirectionListed,
    LargePrint,
    NeedsTold,
    PileOrder,
    ProblemsCounted,
    Released,
    SolutionsInside,
    SpareLast,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines
from probgen.working.direction import Direction
from probgen.working.verdict import Verdict

_NO_BREAK: Final = "\u00a0"


@say.register
def direction_listed(fact: DirectionListed, nouns: Nouns) -> Inlines:
    return (Text(direction_in_short(fact.direction, nouns)),)


@say.register
def answer_in_table(fact: AnswerInTable, nouns: Nouns) -> Inlines:
    match fact.answer:
        case Direction() as told:
            return (Text(direction(told, nouns, _NO_BREAK)),)
        case Verdict() as told:
            first, margin = yes_or_no(told)
            return (Text(f"{first}, {margin.replace(' ', _NO_BREAK)}"),)
        case limit:
            return say(limit, nouns)


@say.register
def problems_counted(fact: ProblemsCounted, nouns: Nouns) -> Inlines:
    return (Text(f"{fact.problems}, for {fact.points} points"),)


@say.register
def solutions_inside(fact: SolutionsInside, nouns: Nouns) -> Inlines:
    return (Text("Holds the solutions: not for students."),)


@say.register
def pile_order(fact: PileOrder, nouns: Nouns) -> Inlines:
    order = "the seats" if fact.by_seat else "the class list"
    return (Text(f"In the order of {order}."),)


@say.register
def both_sides(fact: BothSides, nouns: Nouns) -> Inlines:
    return (Text("Print on both sides: each paper begins on a right-hand page."),)


_DIFFER = "nobody then has the version of a neighbour."


@say.register
def dealt_row_by_row(fact: DealtRowByRow, nouns: Nouns) -> Inlines:
    return (Text(f"Deal them out in this order, row by row: {_DIFFER}"),)


@say.register
def dealt_by_list(fact: DealtByList, nouns: Nouns) -> Inlines:
    return (Text(f"Give each seat the version that the list of versions names: {_DIFFER}"),)


@say.register
def dealt_by_rows(fact: DealtByRows, nouns: Nouns) -> Inlines:
    return (Text(f"Deal them out in this order, {fact.row} to a row: {_DIFFER}"),)


@say.register
def dealt_in_order(fact: DealtInOrder, nouns: Nouns) -> Inlines:
    told = "Deal them out in this order: nobody then has the version of whom they sit beside."
    return (Text(told),)


@say.register
def spare_last(fact: SpareLast, nouns: Nouns) -> Inlines:
    last = "one is" if fact.spare == 1 else f"{fact.spare} are"
    return (Text(f"The last {last} spare."),)


_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip


@say.register
def corrected(fact: Corrected, nouns: Nouns) -> Inlines:
    _, month, day = fact.day.split("-")
    return (Text(f"Corrected {int(day)} {_MONTHS[int(month) - 1]}: {fact.what}."),)


@say.register
def released(fact: Released, nouns: Nouns) -> Inlines:
    when = "the exam" if fact.exam else "the due date"
    return (Text(f"Released after {when}{f', {fact.due}' if fact.due else ''}."),)


@say.register
def large_print(fact: LargePrint, nouns: Nouns) -> Inlines:
    return (Text(f"In large print: {', '.join(fact.names)}."),)


@say.register
def needs_told(fact: NeedsTold, nouns: Nouns) -> Inlines:
    return (Text(f"Needs: {', '.join(f'{name} ({need})' for name, need in fact.told)}."),)
