"""A part of a class printed: its problems worked, told and drawn, its sheets and keys set.

One chunk is one task for one process.  Its size never depends on the number of processes, since
the bytes of a PDF depend on the documents it shared a TeX run with.
"""

from __future__ import annotations

import traceback
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain
from pathlib import Path
from typing import Final, NamedTuple

from probgen.course.assignment import ProblemSet
from probgen.course.version import Version
from probgen.input.fault import InputError
from probgen.mistakes.comparison import class_slips
from probgen.papers.answers import Row, answer_rows
from probgen.papers.page import Copy, copy_of
from probgen.papers.typesetter import Kind, Typesetter
from probgen.press.batch import Batch, Document
from probgen.problem.problem import Problem, work
from probgen.sheets.latex.layout import LayoutError

_LOOKED_INTO: Final = 3
"""Losses of a chunk of which each problem is printed alone, to see which is at fault."""


@dataclass(frozen=True, slots=True)
class Chunk:
    """Some papers that were made at one time, in their order, also of those who have left.

    id: a digest of all that they are made from; wanted: the names of those that somebody has now.
    """

    versions: tuple[Version, ...]
    wanted: frozenset[str]
    id: str = ""


class Loss(NamedTuple):
    """A document that could not be printed, and why.

    name: of its file; student: whose it is; problem, template: the one at fault, 0 and "" when no
    problem fails on its own; words: of TeX, or of the telling.
    """

    kind: Kind
    name: str
    student: str
    problem: int
    template: str
    words: str

    @property
    def document(self) -> str:
        """Its path in the class's folder."""
        return f"{self.kind}/{self.name}.pdf"

    def __str__(self) -> str:
        where = f", problem {self.problem} ({self.template})" if self.problem else ""
        return f"{self.document}: {self.student}{where}\n    {self.words}"


@dataclass(frozen=True, slots=True)
class PrintedChunk:
    """The PDFs of a chunk, by file name and all together, its answers, and what was lost.

    remarks: what should be looked at before it is handed out, with student and problem, each with
    the path of its document.
    """

    pdfs: Mapping[Kind, tuple[tuple[str, bytes], ...]]
    together: Mapping[Kind, bytes]
    rows: tuple[Row, ...]
    losses: tuple[Loss, ...]
    remarks: tuple[tuple[str, str], ...] = ()


def print_chunk(
    chunk: Chunk, problem_set: ProblemSet, problems: tuple[Problem, ...], typesetter: Typesetter
) -> PrintedChunk:
    """The sheets and keys of a chunk, as PDF.

    Raises InputError when a solution fails its proof or a layout cannot be used, OutsideError when
    TeX is not there.
    """
    copies = copies_of(chunk.versions, problem_set, problems)
    written = {kind: _written(kind, copies, typesetter) for kind in Kind}
    batch = typesetter.print([each for documents, _ in written.values() for each in documents])
    rows = chain.from_iterable(
        answer_rows(copy.version, copy.worked) for copy in copies if not copy.version.repeats
    )
    losses = chain.from_iterable(
        _lost(kind, batch, refused, copies, typesetter) for kind, (_, refused) in written.items()
    )
    return PrintedChunk(
        {kind: tuple((p.name, p.pdf) for p in batch.printed if p.pile == kind) for kind in Kind},
        {kind: batch.together.get(kind, b"") for kind in Kind},
        tuple(rows),
        tuple(losses),
        tuple(_remarks(batch, copies)),
    )


def _remarks(batch: Batch, copies: Sequence[Copy]) -> Iterator[tuple[str, str]]:
    """What TeX could set, but not as it should be."""
    owners = {copy.version.name: copy.version.owner for copy in copies}
    for printed in batch.printed:
        for blemish in printed.blemishes:
            where = f", problem {blemish.place}" if blemish.place else ""
            owner = owners[printed.name]
            yield f"{printed.pile}/{printed.name}.pdf", f"{owner}{where}: {blemish.words}"


def copies_of(
    versions: Sequence[Version], problem_set: ProblemSet, problems: tuple[Problem, ...]
) -> tuple[Copy, ...]:
    """The papers worked, with what goes wrong in them.

    Raises InputError when a solution fails its proof.
    """
    rows = zip(*(version.draws for version in versions), strict=True)
    columns = [work(problem, draws) for problem, draws in zip(problems, rows, strict=True)]
    slips = [
        class_slips([own.digits for own in column], problem.missteps)
        for problem, column in zip(problems, columns, strict=True)
    ]
    rows = zip(versions, zip(*columns, strict=True), zip(*slips, strict=True), strict=True)
    return tuple(
        copy_of(problem_set, version, problems, own, wrong) for version, own, wrong in rows
    )


def _of_kind(kind: Kind, copies: Sequence[Copy]) -> tuple[Copy, ...]:
    """The copies that a document of this kind is made of."""
    return tuple(copy for copy in copies if kind is Kind.SHEETS or not copy.version.repeats)


def _written(
    kind: Kind, copies: Sequence[Copy], typesetter: Typesetter
) -> tuple[list[Document], dict[str, str]]:
    """One kind of document for each copy, and those that cannot be told, by name."""
    documents: list[Document] = []
    refused: dict[str, str] = {}
    for copy in _of_kind(kind, copies):
        try:
            documents.append(typesetter.document(kind, copy))
        except LayoutError:  # it would cost every page
            raise
        except Exception as error:  # whatever it is, it costs this page and no other
            refused[copy.version.name] = _said(error)
    return documents, refused


def _said(error: Exception) -> str:
    """Why a page cannot be written; where the program itself is at fault, where that is."""
    if isinstance(error, InputError):
        return str(error)
    place = traceback.extract_tb(error.__traceback__)[-1]
    return f"a defect of probgen, at line {place.lineno} of {Path(place.filename).name}: report it"


def _lost(
    kind: Kind,
    batch: Batch,
    refused: Mapping[str, str],
    copies: Sequence[Copy],
    typesetter: Typesetter,
) -> Iterator[Loss]:
    """What of one kind was lost, and why: for the first few, which problem is at fault."""
    failures = (failure for failure in batch.failures if failure.pile == kind)
    words = {**refused, **{each.name: f"TeX: {each.complaint}" for each in failures}}
    lost = [copy for copy in _of_kind(kind, copies) if copy.version.name in words]
    for place, copy in enumerate(lost):
        told = words[copy.version.name]
        if place < _LOOKED_INTO:
            yield _loss(kind, copy, told, typesetter)
        else:
            yield Loss(kind, copy.version.name, copy.version.owner, 0, "", told)


def _loss(kind: Kind, copy: Copy, words: str, typesetter: Typesetter) -> Loss:
    """Why a document was lost: its first problem that fails also when it is printed alone."""
    name, owner = copy.version.name, copy.version.owner
    for number, alone in enumerate(_problem_by_problem(copy), start=1):
        if told := _complaint(kind, alone, typesetter):
            return Loss(kind, name, owner, number, alone.problems[0].template.id, told)
    return Loss(kind, name, owner, 0, "", words)


def _complaint(kind: Kind, copy: Copy, typesetter: Typesetter) -> str:
    """What is said when a copy is printed on its own; empty when it can be."""
    try:
        document = typesetter.document(kind, copy)
    except Exception as error:
        return _said(error)
    batch = typesetter.print([document])
    return next((f"TeX: {failure.complaint}" for failure in batch.failures), "")


def _problem_by_problem(copy: Copy) -> Iterator[Copy]:
    """The copy cut into copies of one problem each."""
    rows = zip(copy.problem_set.problems, copy.problems, copy.worked, copy.slips, strict=True)
    for assigned, problem, own, wrong in rows:
        alone = replace(copy.problem_set, problems=(assigned,))
        yield replace(copy, problem_set=alone, problems=(problem,), worked=(own,), slips=(wrong,))
