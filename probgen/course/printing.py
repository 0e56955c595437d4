"""A part of a class printed: its problems worked, told and drawn, its sheets or its keys set.

One chunk is one task for one process.  Its size never depends on the number of processes, since
the bytes of a PDF depend on the documents it shared a TeX run with.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from itertools import chain
from typing import Final

from probgen.course.answers import Row, answer_rows
from probgen.course.page import Copy, key_of, sheet_of
from probgen.course.problem import Problem, work
from probgen.course.roster import Student
from probgen.course.setfile import Assigned, ProblemSet
from probgen.course.single import Single
from probgen.draws.draw import Draw
from probgen.press.batch import Batch, Document, print_batch
from probgen.press.outside import OutsideError
from probgen.press.preformat import format_for
from probgen.sheets.document import Paper
from probgen.sheets.layout import Layouts

CHUNK: Final = 50
"""Students in one chunk."""
_POINTS: Final = 10  # of a problem printed on its own


class Kind(StrEnum):
    """What is printed for each student, by the name of its folder."""

    SHEETS = "sheets"
    KEYS = "keys"


@dataclass(frozen=True, slots=True)
class Chunk:
    """Some students of a class with all that is theirs, in roster order.

    draws: for each problem, one draw a student; names: their files' names.
    """

    students: tuple[Student, ...]
    codes: tuple[str, ...]
    names: tuple[str, ...]
    draws: tuple[tuple[Draw, ...], ...]


@dataclass(frozen=True, slots=True)
class PrintedChunk:
    """The PDFs of a chunk, by file name and all together, and its answers (with the keys)."""

    kind: Kind
    pdfs: tuple[tuple[str, bytes], ...]
    together: bytes
    rows: tuple[Row, ...]


def require_tex(paper: Paper) -> None:
    """Raises OutsideError when TeX is missing or lacks a package, before anything is worked."""
    format_for(Layouts().preamble(paper))


def print_chunk(
    kind: Kind, chunk: Chunk, problem_set: ProblemSet, problems: tuple[Problem, ...]
) -> PrintedChunk:
    """The sheets or the keys of a chunk, as PDF.

    Raises InputError when a solution fails its proof, OutsideError when TeX fails.
    """
    columns = [work(problem, draws) for problem, draws in zip(problems, chunk.draws, strict=True)]
    copies = [
        Copy(problem_set, student, code, problems, own)
        for student, code, own in zip(
            chunk.students, chunk.codes, zip(*columns, strict=True), strict=True
        )
    ]
    layouts = Layouts()
    documents = [
        Document(name, f"{problem_set.title}: {copy.student.name}", _write(kind, copy, layouts))
        for name, copy in zip(chunk.names, copies, strict=True)
    ]
    batch = print_batch(documents, layouts.preamble(problem_set.paper))
    _require_whole(batch)
    pdfs = tuple((printed.name, printed.pdf) for printed in batch.printed)
    rows = chain.from_iterable(answer_rows(c.student, c.code, c.worked) for c in copies)
    return PrintedChunk(kind, pdfs, batch.together, tuple(rows) if kind is Kind.KEYS else ())


def print_single(single: Single, paper: Paper = "letter") -> bytes:
    """The sheet and then the key of one problem worked on its own, as one PDF.

    Raises OutsideError when TeX fails.
    """
    template = single.problem.template
    problem_set = ProblemSet("", template.title, "", (Assigned(template.id, _POINTS),))
    copy = Copy(problem_set, Student("", ""), "", (single.problem,), (single.worked,))
    layouts = Layouts()
    documents = [Document(kind, template.title, _write(kind, copy, layouts)) for kind in Kind]
    batch = print_batch(documents, layouts.preamble(paper))
    _require_whole(batch)
    return batch.together


def _write(kind: Kind, copy: Copy, layouts: Layouts) -> str:
    """One student's sheet or key as LaTeX."""
    if kind is Kind.SHEETS:
        return layouts.sheet(sheet_of(copy))
    return layouts.key(key_of(copy))


def _require_whole(batch: Batch) -> None:
    if batch.failures:
        told = "; ".join(f"{failure.name}: {failure.complaint}" for failure in batch.failures)
        mend = "look at the texts these pages hold; nothing was written"
        raise OutsideError(f"TeX could not set {told}", mend)
