"""Solutions for a class from its record: a PDF for each student, and all in one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import closing
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Final

from probgen.build.folder import Delivery, delivered, recover
from probgen.build.joined_pdfs import PAPERS_A_VOLUME
from probgen.build.progress import Report
from probgen.build.workers import Crew, ended_like_interrupts
from probgen.course.assignment import day_of
from probgen.course.frozen import frozen_problems
from probgen.course.record import Record, require_no_layouts
from probgen.course.record_file import read_record
from probgen.course.section import sections_of
from probgen.course.typed_texts import judge_typed
from probgen.course.version import Version
from probgen.input.fault import Fault, Faults, InputError
from probgen.input.file import write_beside
from probgen.input.outside import OutsideError
from probgen.input.remedy import OwnNote
from probgen.papers.solutions import PrintedSolutions, print_solutions
from probgen.papers.typesetter import SOLUTIONS, typesetter_of
from probgen.press.split import Leaves, join
from probgen.sheets.latex.remark import remarks_on_text

_AT_A_TIME: Final = 20
"""Papers in one run of TeX."""


@dataclass(frozen=True, slots=True)
class Solutions:
    """Finished solutions.

    folder: where they are; count: of papers; together: all in one, in several volumes of a large
    class.  lost: the papers without, and why.  remarks: on what of the note no page shows; kept:
    where what was there before is, if it is.
    """

    folder: Path
    count: int
    together: tuple[Path, ...]
    lost: tuple[tuple[str, str], ...]
    remarks: tuple[str, ...] = ()
    kept: Path | None = None


def build_solutions(
    path: Path, out: Path, crew: Crew, report: Report, note: str = "", trusted: bool = False
) -> Solutions:
    """The solutions of everybody in a record, into a folder that holds nothing else.

    note: a line in place of the usual one, that they were released after the due date; trusted: use
    the layouts that the record carries.
    Raises InputError for a record that is none, layouts that nobody vouches for, a note that no
    page can show, or a due date that is still to come where there is none; OutsideError or OSError
    when something outside fails, and then nothing has changed.
    """
    recover(out)
    record = read_record(path)
    _judge_note(record, str(path), note)
    if not trusted:
        require_no_layouts(record, str(path))
    problems = frozen_problems(record.issue, record.current, str(path))
    typesetter = typesetter_of(record.set, record.house)
    typesetter.require_tex()
    for problem in problems:
        problem.settle()
    versions = record.versions
    tasks = [
        (place, chunk, record.set, problems, typesetter, note)
        for place, chunk in enumerate(_chunks(versions))
    ]
    how = Delivery()
    with ended_like_interrupts(), delivered(out, how) as working:
        working.record.unlink()  # it is no business of students
        done = 0
        printed: dict[int, PrintedSolutions] = {}
        with closing(crew.each(print_placed, tasks, len(tasks))) as results:
            for place, each in results:
                printed[place] = each
                done += len(tasks[place][1])
                report(SOLUTIONS, done, len(versions))
                for name, pdf, _ in each.pdfs:
                    write_beside(working.whole / f"{name}.pdf", pdf)
        lost = tuple(loss for place in sorted(printed) for loss in printed[place].lost)
        if len(lost) == len(versions):
            mend = "look at the layouts and the texts of the assignment"
            raise OutsideError(f"no solutions could be printed: {lost[0][1]}", mend)
        names = _join(printed, working.whole, record.set.title, record.set.run.duplex)
    folder = out if out.exists() else out.resolve()
    together = tuple(folder / name for name in names)
    remarks = tuple(remarks_on_text(note))
    return Solutions(folder, len(versions) - len(lost), together, lost, remarks, how.kept)


def _judge_note(record: Record, where: str, note: str) -> None:
    """Raises InputError where the pages would say nothing, or what is not so yet."""
    if not note:
        _require_past(record, where, date.today())
        return
    faults = Faults(where)
    judge_typed(note, "note", faults)
    faults.settle()


def _require_past(record: Record, where: str, today: date) -> None:
    """Raises InputError where a page would say that a day is past which lies ahead."""
    ahead = [
        (day, due)
        for due in record.set.dues_of(sections_of(record))
        if (day := day_of(due)) and day > today
    ]
    if ahead:
        expected = "a due date that is past: the solutions say that they were released after it"
        fault = Fault(where, "due", max(ahead)[1], expected, "wait until then", OwnNote())
        raise InputError([fault])


def print_placed(
    place: int, versions: Sequence[Version], *others: object
) -> tuple[int, PrintedSolutions]:
    """A chunk printed, with its place in the class: chunks get done in any order."""
    return place, print_solutions(versions, *others)  # type: ignore[arg-type]


def _chunks(versions: Sequence[Version]) -> Iterator[Sequence[Version]]:
    for start in range(0, len(versions), _AT_A_TIME):
        yield versions[start : start + _AT_A_TIME]


def _join(
    printed: dict[int, PrintedSolutions], folder: Path, title: str, duplex: bool
) -> list[str]:
    """Writes all in one, or several volumes; gives their names."""
    leaves = [leaf for place in sorted(printed) for leaf in _leaves(printed[place])]
    starts = range(0, len(leaves), PAPERS_A_VOLUME)
    names = [
        f"all-{SOLUTIONS}{f'-{n:02}' if len(starts) > 1 else ''}.pdf"
        for n in range(1, len(starts) + 1)
    ]
    for name, start in zip(names, starts, strict=True):
        volume = leaves[start : start + PAPERS_A_VOLUME]
        join(volume, folder / name, title, duplex=duplex)
    return names


def _leaves(printed: PrintedSolutions) -> Iterator[Leaves]:
    first = 0
    for _, _, pages in printed.pdfs:
        yield Leaves(printed.together, first, pages)
        first += pages
