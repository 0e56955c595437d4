"""A record printed into its folder: chunk by chunk, kept as they are done, whole at the end."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import replace
from math import ceil
from pathlib import Path
from typing import Final, NamedTuple

from probgen.build.chunk_store import ChunkStore
from probgen.build.folder import MISSING, Delivery, delivered
from probgen.build.joined_pdfs import Piles
from probgen.build.progress import Report
from probgen.build.workers import Crew, ended_like_interrupts
from probgen.course.assignment import ProblemSet
from probgen.course.edition import Edition
from probgen.course.record import Record
from probgen.course.record_file import chunk_id, read_record, write_record
from probgen.course.version import name_of_files, version_of
from probgen.input.fault import InputError
from probgen.input.file import naming
from probgen.input.outside import OutsideError
from probgen.papers.chunk import Chunk, Loss, PrintedChunk, print_chunk
from probgen.papers.typesetter import Kind, Typesetter, typesetter_of
from probgen.problem.problem import Problem

_MOST: Final = 25
"""Versions in one chunk of a large class: a killed build loses no more of each worker's time."""
_LEAST: Final = 6
"""Versions in one chunk of a small class: fewer cost more in starting TeX than cores can save."""
_AT_ONCE: Final = 4
"""Chunks come in a multiple of so many, all of one size, so that the cores are done together."""


class Shortfall(NamedTuple):
    """What of a class is missing, and what should be looked at before it is handed out."""

    losses: tuple[Loss, ...]
    remarks: tuple[str, ...]


def deliver(
    record: Record,
    problems: tuple[Problem, ...],
    out: Path,
    crew: Crew,
    report: Report,
    how: Delivery,
) -> Shortfall:
    """Everything a record makes, into its folder; gives what of it is not as it should be.

    Papers that an earlier build of the folder has printed are taken from there.
    Raises as `print_chunk` and `delivered` do, with a note on what is done and how to go on; then
    nothing in `out` has changed.
    """
    how.record = write_record(record)
    with ended_like_interrupts(), delivered(out, how) as working:
        _require_readable(working.record)
        chunks = chunks_of(record)
        store = ChunkStore(working, chunks)
        with _told_how_far(store, chunks, _stage(record)):
            _print_chunks(record, problems, chunks, store, crew, report, out)
            beside = Piles(record, problems, store, working.whole).write(report)
            losses, remarks = store.losses, (*store.remarks, *beside)
            _tell_losses(working.whole / MISSING, losses, len(record.versions))
            store.require_whole()
            how.marks = store.marks
    return Shortfall(losses, remarks)


def _require_readable(path: Path) -> None:
    """Raises InputError where nobody could go on from a record: its papers would be lost."""
    try:
        read_record(path)
    except InputError as error:
        mend = "change it in what you have typed; nothing is printed yet"
        told = (replace(each, file="the record of this build", mend=mend) for each in error.faults)
        raise InputError(told) from None


def chunks_of(record: Record) -> tuple[Chunk, ...]:
    """The printings cut into chunks that have papers of the class as it is.

    What is in a chunk follows from its printing alone: nothing that comes later changes it.
    """
    now = {id(edition) for edition in record.current}
    chunks = []
    for printing in record.printings:
        issue = record.issues[printing.issue]
        exam = issue.set.exam is not None
        for editions in _slices(printing.editions):
            wanted = frozenset(name_of_files(each, exam) for each in editions if id(each) in now)
            if wanted:
                versions = tuple(version_of(edition, exam) for edition in editions)
                chunks.append(Chunk(versions, wanted, chunk_id(issue, editions)))
    return tuple(chunks)


def _slices(editions: Sequence[Edition]) -> Iterator[Sequence[Edition]]:
    """Parts of a size that follows from the number of all alone."""
    rounds = ceil(len(editions) / (_AT_ONCE * _MOST))
    size = max(_LEAST, ceil(len(editions) / (_AT_ONCE * rounds)))
    for start in range(0, len(editions), size):
        yield editions[start : start + size]


def print_placed(
    place: int,
    chunk: Chunk,
    problem_set: ProblemSet,
    problems: tuple[Problem, ...],
    typesetter: Typesetter,
) -> tuple[int, PrintedChunk]:
    """A chunk printed, with its place in the class: chunks get done in any order."""
    return place, print_chunk(chunk, problem_set, problems, typesetter)


def _print_chunks(
    record: Record,
    problems: tuple[Problem, ...],
    chunks: Sequence[Chunk],
    store: ChunkStore,
    crew: Crew,
    report: Report,
    earlier: Path,
) -> None:
    """Prints every chunk that is not kept yet, nor was by an earlier build."""
    places = range(len(chunks))
    waiting = [place for place in places if not (store.has(place) or store.adopt(place, earlier))]
    total = sum(len(chunk.wanted) for chunk in chunks)
    done = total - sum(len(chunks[place].wanted) for place in waiting)
    stage = _stage(record)
    report(stage, done, total)
    typesetter = typesetter_of(record.set, record.house)
    for problem in problems if waiting else ():
        problem.settle()
    tasks = ((place, chunks[place], record.set, problems, typesetter) for place in waiting)
    with closing(crew.each(print_placed, tasks, len(waiting))) as results:
        for place, printed in results:
            store.keep(place, printed)
            done += len(chunks[place].wanted)
            report(stage, done, total)


def _stage(record: Record) -> str:
    """What chunks are counted in."""
    return "versions" if record.set.exam else "students"


@contextmanager
def _told_how_far(store: ChunkStore, chunks: Sequence[Chunk], stage: str) -> Iterator[None]:
    """Puts a note on whatever stops a build: what is done, and how to go on."""
    try:
        yield
    except BaseException as stop:
        total = sum(len(chunk.wanted) for chunk in chunks)
        done = sum(len(chunk.wanted) for i, chunk in enumerate(chunks) if store.has(i))
        if done:
            stop.add_note(
                f"{done} of {total} {stage} are printed and kept; "
                "the same command goes on from there"
            )
        raise


def _tell_losses(path: Path, losses: Sequence[Loss], sheets: int) -> None:
    """Writes the list of what is missing.  Raises OutsideError when no sheet is there."""
    lost = [loss for loss in losses if loss.kind is Kind.SHEETS]
    if len(lost) == sheets:
        mend = "look at the layouts and at the texts of the assignment file"
        raise OutsideError(f"no sheet could be printed: {lost[0]}", mend)
    if losses:
        with naming(path):
            path.write_text("".join(f"{loss}\n" for loss in losses), encoding="utf-8")
