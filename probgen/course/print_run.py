"""How the papers of a class come off the printer: their order, their covers, what is printed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, cast, get_args

from probgen.input.table import Table

Order = Literal["roster", "seat"]


@dataclass(frozen=True, slots=True)
class PrintRun:
    """How the joined PDFs are made for a printer.

    order: of the papers, as the class list has the students, or by their seats.
    duplex: each paper begins on a right-hand page, so that both sides can be printed.
    cover: a page before the papers that tells what they are.
    answers: a table of everybody's answers, to print.
    """

    order: Order = "roster"
    duplex: bool = True
    cover: bool = False
    answers: bool = False


def read_print_run(table: Table) -> PrintRun:
    """The print run of an assignment file's [print]; notes its faults.  Closes the table."""
    usual = PrintRun()
    found = PrintRun(
        order=cast(Order, table.word("order", get_args(Order), usual.order)),
        duplex=table.flag("duplex", usual.duplex),
        cover=table.flag("cover", usual.cover),
        answers=table.flag("answers", usual.answers),
    )
    table.close()
    return found
