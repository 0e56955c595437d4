"""What students may see after the due date: the working of their own numbers, without marks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from probgen.course.assignment import ProblemSet
from probgen.course.version import Version
from probgen.input.fault import InputError
from probgen.papers.chunk import copies_of
from probgen.papers.typesetter import SOLUTIONS, Typesetter
from probgen.press.batch import Document
from probgen.press.split import pages_in
from probgen.problem.problem import Problem


@dataclass(frozen=True, slots=True)
class PrintedSolutions:
    """pdfs: by the names of the papers, each with its pages; together: all of them in one PDF.

    lost: the papers whose solutions could not be printed, and why.
    """

    pdfs: tuple[tuple[str, bytes, int], ...]
    together: bytes
    lost: tuple[tuple[str, str], ...]


def print_solutions(
    versions: Sequence[Version],
    problem_set: ProblemSet,
    problems: tuple[Problem, ...],
    typesetter: Typesetter,
    note: str,
) -> PrintedSolutions:
    """The solutions of some papers, as PDF; note: as `page.solutions_of` has it.

    Raises InputError when a solution fails its proof, OutsideError when TeX is not there.
    """
    documents: list[Document] = []
    lost: list[tuple[str, str]] = []
    for copy in copies_of(versions, problem_set, problems):
        try:
            documents.append(typesetter.solutions(copy, note))
        except InputError as error:
            lost.append((copy.version.name, str(error)))
    batch = typesetter.print(documents)
    lost += [(failure.name, f"TeX: {failure.complaint}") for failure in batch.failures]
    pdfs = tuple((each.name, each.pdf, pages_in(each.pdf)) for each in batch.printed)
    return PrintedSolutions(pdfs, batch.together.get(SOLUTIONS, b""), tuple(lost))
