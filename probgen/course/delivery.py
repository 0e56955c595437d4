"""A record printed into its folder: chunk by chunk, kept as they are done, whole at the end."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import closing, contextmanager
from itertools import product
from math import ceil
from pathlib import Path
from typing import Final

from probgen.course.answers import write_answers
from probgen.course.crew import Crew
from probgen.course.folder import MISSING, delivered, file_names
from probgen.course.kept import Kept
from probgen.course.printing import Chunk, Kind, Loss, PrintedChunk, print_chunk
from probgen.course.problem import Problem
from probgen.course.record import Record, write_record
from probgen.course.setfile import ProblemSet
from probgen.press.outside import OutsideError
from probgen.press.split import join

Report = Callable[[str, int, int], None]
"""Told of a stage, what of it is done, and its whole: ("students", 12, 300)."""

VOLUME: Final = 500
"""Students in one PDF of a large class: a printer and a reader must hold it in memory."""
_MOST: Final = 25
"""Students in one chunk of a large class: a killed build loses no more of each worker's time."""
_LEAST: Final = 6
"""Students in one chunk of a small class: fewer cost more in starting TeX than cores can save."""
_AT_ONCE: Final = 4
"""Chunks come in a multiple of so many, all of one size, so that the cores are done together."""


def deliver(
    record: Record,
    problems: tuple[Problem, ...],
    out: Path,
    crew: Crew,
    report: Report,
    inputs: Sequence[Path],
) -> tuple[Loss, ...]:
    """Everything a record makes, into its folder; gives what of it could not be made.

    Raises as `print_chunk` and `delivered` do, with a note on what is done and how to go on; then
    nothing in `out` has changed.
    """
    with delivered(out, write_record(record), inputs) as working:
        kept = Kept(working)
        chunks = chunks_of(record)
        with _told_how_far(kept, chunks):
            _print_chunks(record.set, problems, chunks, kept, crew, report)
            places = range(len(chunks))
            _join_volumes(kept, record, len(chunks), working.whole, report)
            write_answers(working.whole / "answers.csv", kept.rows(places))
            losses = kept.losses(places)
            _tell_losses(working.whole / MISSING, losses, len(Kind) * len(record.students))
    return losses


def chunks_of(record: Record) -> tuple[Chunk, ...]:
    """The class cut into chunks, which follow from its size alone."""
    students = len(record.students)
    rounds = ceil(students / (_AT_ONCE * _MOST))
    size = max(_LEAST, ceil(students / (_AT_ONCE * rounds)))
    names = file_names(record.students)
    parts = (slice(start, start + size) for start in range(0, students, size))
    return tuple(
        Chunk(
            record.students[part],
            record.codes[part],
            names[part],
            tuple(assignment.draws[part] for assignment in record.assignments),
        )
        for part in parts
    )


def print_placed(
    place: int, chunk: Chunk, problem_set: ProblemSet, problems: tuple[Problem, ...]
) -> tuple[int, PrintedChunk]:
    """A chunk printed, with its place in the class: chunks get done in any order."""
    return place, print_chunk(chunk, problem_set, problems)


def _join_volumes(
    kept: Kept, record: Record, chunks: int, folder: Path, report: Report
) -> None:
    """Everybody's sheets in one PDF, and all keys; in several of `VOLUME` for a large class."""
    starts = range(0, chunks, max(1, VOLUME // _MOST))
    for done, (kind, start) in enumerate(product(Kind, starts)):
        report("all in one", done, len(Kind) * len(starts))
        places = range(start, min(start + starts.step, chunks))
        if parts := kept.together(kind, places):
            ending = f"-{1 + start // starts.step:02}" if len(starts) > 1 else ""
            path = folder / f"all-{kind}{ending}.pdf"
            path.write_bytes(join(parts, record.set.title))


def _print_chunks(
    problem_set: ProblemSet,
    problems: tuple[Problem, ...],
    chunks: Sequence[Chunk],
    kept: Kept,
    crew: Crew,
    report: Report,
) -> None:
    """Prints every chunk that is not kept yet."""
    waiting = [place for place in range(len(chunks)) if not kept.has(place)]
    total = sum(len(chunk.students) for chunk in chunks)
    done = total - sum(len(chunks[place].students) for place in waiting)
    report("students", done, total)
    tasks = ((place, chunks[place], problem_set, problems) for place in waiting)
    with closing(crew.each(print_placed, tasks)) as results:
        for place, printed in results:
            kept.keep(place, printed)
            done += len(chunks[place].students)
            report("students", done, total)


@contextmanager
def _told_how_far(kept: Kept, chunks: Sequence[Chunk]) -> Iterator[None]:
    """Puts a note on whatever stops a build: what is done, and how to go on."""
    try:
        yield
    except BaseException as stop:
        total = sum(len(chunk.students) for chunk in chunks)
        done = sum(len(chunk.students) for i, chunk in enumerate(chunks) if kept.has(i))
        if done:
            stop.add_note(
                f"{done} of {total} students are printed and kept; "
                "the same command goes on from there"
            )
        raise


def _tell_losses(path: Path, losses: Sequence[Loss], documents: int) -> None:
    """Writes the list of what is missing.  Raises OutsideError when that is everything."""
    if len(losses) == documents:
        mend = "look at the layouts and at the texts of the set file"
        raise OutsideError(f"nothing could be printed: {losses[0]}", mend)
    if losses:
        path.write_text("".join(f"{loss}\n" for loss in losses), encoding="utf-8")
