"""How the papers of a class come off the printer: their order, their covers, an exam's versions."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal, cast, get_args

from probgen.input.table import Table

Order = Literal["roster", "seat"]
LETTERS: Final = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


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


@dataclass(frozen=True, slots=True)
class Exam:
    """Some versions of a set, in place of one for each student; nobody's name is on them.

    versions: how many, called A, B, C ...; row: seats in a row, where the class list has no seats,
    0 for one long row; spare: copies beyond one for each student.
    cover: each paper begins with a page to write the name on; notes: what it says, one by one.
    """

    versions: int
    row: int = 0
    spare: int = 0
    cover: bool = True
    notes: tuple[str, ...] = ()

    @property
    def letters(self) -> str:
        return LETTERS[: self.versions]


def read_print_run(table: Table) -> PrintRun:
    """The print run of a set file's [print]; notes its faults.  Closes the table."""
    usual = PrintRun()
    found = PrintRun(
        order=cast(Order, table.word("order", get_args(Order), usual.order)),
        duplex=table.flag("duplex") if table.has("duplex") else usual.duplex,
        cover=table.flag("cover"),
        answers=table.flag("answers"),
    )
    table.close()
    return found


def read_exam(table: Table) -> Exam:
    """The exam of a set file's [exam]; notes its faults.  Closes the table."""
    found = Exam(
        versions=table.whole("versions", 2, len(LETTERS)),
        row=table.whole("row", 1, 1000, 0),
        spare=table.whole("spare", 0, 1000, 0),
        cover=table.flag("cover") if table.has("cover") else True,
        notes=table.texts("notes"),
    )
    table.close()
    return found
