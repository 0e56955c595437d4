"""A part of a class printed: its problems worked, told and drawn, its sheets and keys set.

One chunk is one task for one process.  Its size never depends on the number of processes, since
the bytes of a PDF depend on the documents it shared a TeX run with.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cache
from itertools import chain
from typing import Final, NamedTuple

from probgen.bank.fault import InputError
from probgen.course.answers import Row, answer_rows
from probgen.course.page import Copy, key_of, sheet_of
from probgen.course.problem import Problem, work
from probgen.course.roster import Student
from probgen.course.setfile import Assigned, ProblemSet
from probgen.course.single import Single
from probgen.draws.draw import Draw
from probgen.press.batch import Batch, Document, print_batch
from probgen.press.engine import engine, engine_version
from probgen.press.outside import OutsideError
from probgen.press.preformat import format_for
from probgen.sheets.document import Paper
from probgen.sheets.layout import Layouts
from probgen.wording.slip import class_slips

_OLDEST: Final = 17
"""The first pdfTeX 1.40.x that can leave the clock and random ids out of a PDF (its NEWS file)."""
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


class Loss(NamedTuple):
    """A document that could not be printed, and why.

    document: its path in the class's folder; problem, template: the one at fault, 0 and "" when
    no problem fails on its own; words: of TeX, or of the telling.
    """

    document: str
    student: str
    problem: int
    template: str
    words: str

    def __str__(self) -> str:
        where = f", problem {self.problem} ({self.template})" if self.problem else ""
        return f"{self.document}: {self.student}{where}\n    {self.words}"


@dataclass(frozen=True, slots=True)
class PrintedChunk:
    """The PDFs of a chunk, by file name and all together, its answers, and what was lost."""

    pdfs: Mapping[Kind, tuple[tuple[str, bytes], ...]]
    together: Mapping[Kind, bytes]
    rows: tuple[Row, ...]
    losses: tuple[Loss, ...]


def require_tex(paper: Paper) -> None:
    """Raises OutsideError when TeX is missing, too old or lacks a package."""
    banner = engine_version(engine())
    release = re.search(r"-1\.40\.(\d+)", banner)
    if release and int(release[1]) < _OLDEST:
        found = banner.partition(")")[0]
        raise OutsideError(f"TeX is too old: {found})", "install TeX Live 2016 or a later one")
    format_for(_preamble(paper))


def print_chunk(
    chunk: Chunk, problem_set: ProblemSet, problems: tuple[Problem, ...]
) -> PrintedChunk:
    """The sheets and keys of a chunk, as PDF.

    Raises InputError when a solution fails its proof, InputError or OutsideError when not one
    sheet or key of several can be printed, OutsideError when TeX is not there.
    """
    copies = _copies(chunk, problem_set, problems)
    printed = {kind: _print(kind, copies, chunk.names) for kind in Kind}
    rows = chain.from_iterable(answer_rows(c.student, c.code, c.worked) for c in copies)
    losses = chain.from_iterable(losses for _, losses in printed.values())
    batches = {kind: batch for kind, (batch, _) in printed.items()}
    return PrintedChunk(
        {kind: tuple((p.name, p.pdf) for p in batch.printed) for kind, batch in batches.items()},
        {kind: batch.together for kind, batch in batches.items()},
        tuple(rows),
        tuple(losses),
    )


def print_single(single: Single, paper: Paper = "letter") -> bytes:
    """The sheet and then the key of one problem worked on its own, as one PDF.

    Raises OutsideError when TeX fails.
    """
    template = single.problem.template
    problem_set = ProblemSet("", template.title, "", (Assigned(template.id, _POINTS),))
    wrong = class_slips([single.worked.case], single.problem.convention)
    copy = Copy(problem_set, Student("", ""), "", (single.problem,), (single.worked,), wrong)
    documents = [Document(kind, template.title, _write(kind, copy)) for kind in Kind]
    batch = print_batch(documents, _preamble(paper))
    if batch.failures:
        told = "; ".join(f"{failure.name}: {failure.complaint}" for failure in batch.failures)
        mend = "look at the texts of the template; nothing was written"
        raise OutsideError(f"TeX could not set {told}", mend)
    return batch.together


@cache
def _layouts() -> Layouts:
    return Layouts()


@cache
def _preamble(paper: Paper) -> str:
    return _layouts().preamble(paper)


def _copies(
    chunk: Chunk, problem_set: ProblemSet, problems: tuple[Problem, ...]
) -> tuple[Copy, ...]:
    columns = [work(problem, draws) for problem, draws in zip(problems, chunk.draws, strict=True)]
    slips = [
        class_slips([own.case for own in column], problem_set.convention) for column in columns
    ]
    rows = zip(
        chunk.students,
        chunk.codes,
        zip(*columns, strict=True),
        zip(*slips, strict=True),
        strict=True,
    )
    return tuple(
        Copy(problem_set, student, code, problems, own, wrong) for student, code, own, wrong in rows
    )


def _print(
    kind: Kind, copies: Sequence[Copy], names: Sequence[str]
) -> tuple[Batch, tuple[Loss, ...]]:
    """One kind of document for each copy, and what of it was lost."""
    preamble = _preamble(copies[0].problem_set.paper)
    documents: list[Document] = []
    refused: dict[str, InputError] = {}
    for name, copy in zip(names, copies, strict=True):
        try:
            documents.append(_document(name, kind, copy))
        except InputError as error:
            refused[name] = error
    if len(refused) == len(copies) > 1:
        raise refused[names[0]]
    batch = print_batch(documents, preamble)
    if not batch.printed and len(copies) > 1:
        mend = "look at the layouts and at the texts of the set file"
        raise OutsideError(f"TeX could set none of the {kind}: {batch.failures[0].complaint}", mend)
    words = {name: str(error) for name, error in refused.items()}
    words |= {failure.name: f"TeX: {failure.complaint}" for failure in batch.failures}
    lost = (pair for pair in zip(names, copies, strict=True) if pair[0] in words)
    return batch, tuple(_loss(kind, name, copy, words[name]) for name, copy in lost)


def _document(name: str, kind: Kind, copy: Copy) -> Document:
    return Document(name, f"{copy.problem_set.title}: {copy.student.name}", _write(kind, copy))


def _write(kind: Kind, copy: Copy) -> str:
    """One student's sheet or key as LaTeX."""
    if kind is Kind.SHEETS:
        return _layouts().sheet(sheet_of(copy))
    return _layouts().key(key_of(copy))


def _loss(kind: Kind, name: str, copy: Copy, words: str) -> Loss:
    """Why a document was lost: its first problem that fails also when it is printed alone."""
    student = f"{copy.student.name} ({copy.student.id})"
    for number, alone in enumerate(_problem_by_problem(copy), start=1):
        if told := _complaint(kind, alone):
            template = alone.problems[0].template.id
            return Loss(f"{kind}/{name}.pdf", student, number, template, told)
    return Loss(f"{kind}/{name}.pdf", student, 0, "", words)


def _complaint(kind: Kind, copy: Copy) -> str:
    """What is said when a copy is printed on its own; empty when it can be."""
    try:
        document = _document("alone", kind, copy)
    except InputError as error:
        return str(error)
    batch = print_batch([document], _preamble(copy.problem_set.paper))
    return next((f"TeX: {failure.complaint}" for failure in batch.failures), "")


def _problem_by_problem(copy: Copy) -> Iterator[Copy]:
    """The copy cut into copies of one problem each."""
    rows = zip(copy.problem_set.problems, copy.problems, copy.worked, copy.slips, strict=True)
    for assigned, problem, own, wrong in rows:
        alone = replace(copy.problem_set, problems=(assigned,))
        yield replace(copy, problem_set=alone, problems=(problem,), worked=(own,), slips=(wrong,))
