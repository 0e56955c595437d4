"""How the papers of a class come off the printer: their order, their covers, what is printed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, cast, get_args

from probgen.input.table import Table

Order = Literal["roster", "seat"]
Tables = Literal["csv", "xlsx"]


@dataclass(frozen=True, slots=True)
class PrintRun:
    """How the joined PDFs are made for a printer.

    order: of the papers, as the class list has the students, or by their seats.
    duplex: each paper begins on a right-hand page, so that both sides can be printed.
    pad_keys: keys do so too; else they follow one another without empty pages.
    by_section: piles and tables for each section of the class list, beside those of all.
    cover: a page before the papers that tells what they are ("pile_cover" in the file).
    answers: a table of everybody's answers, to print.
    tables: what the tables for a spreadsheet are besides CSV.
    """

    order: Order = "roster"
    duplex: bool = True
    cover: bool = False
    answers: bool = False
    tables: Tables = "csv"
    pad_keys: bool = True
    by_section: bool = False


def read_print_run(table: Table) -> PrintRun:
    """The print run of an assignment file's [print]; notes its faults.  Closes the table."""
    usual = PrintRun()
    table.rename(pile_cover="cover")
    found = PrintRun(
        order=cast(Order, table.word("order", get_args(Order), usual.order)),
        duplex=table.flag("duplex", usual.duplex),
        cover=table.flag("pile_cover", usual.cover),
        answers=table.flag("answers", usual.answers),
        tables=cast(Tables, table.word("tables", get_args(Tables), usual.tables)),
        pad_keys=table.flag("pad_keys", usual.pad_keys),
        by_section=table.flag("by_section", usual.by_section),
    )
    table.close()
    return found
