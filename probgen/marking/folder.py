"""A class marked into a folder: the shell about the marking, which reads and writes."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from probgen.bank.uses import USES, write_uses
from probgen.build.tables import csv_content, workbook_content
from probgen.build.workers import Crew
from probgen.course.archive import records_beside
from probgen.course.frozen import frozen_problems
from probgen.course.record import Record
from probgen.course.record_file import read_record
from probgen.input.file import write_beside
from probgen.marking.again import HEADINGS as CHANGES
from probgen.marking.again import Moved, changes, moved
from probgen.marking.answers_file import read_answers
from probgen.marking.changed import read_earlier
from probgen.marking.chunk import mark, uncollected
from probgen.marking.class_page import Heading, class_page, notes, slip_lines, step_lines
from probgen.marking.class_report import ClassReport, class_report
from probgen.marking.finding import Finding
from probgen.marking.form import Paper, papers
from probgen.marking.form import columns as asked_columns
from probgen.marking.gradebook import gradebook, numbered, totals, usual_columns
from probgen.marking.marks import HEADINGS, NUMBERS, Row
from probgen.marking.policy import Policy
from probgen.marking.policy_file import read_policy
from probgen.marking.scores import scores
from probgen.marking.tally import together
from probgen.marking.use import uses_marked
from probgen.marking.written import note_own, require_place, take_own
from probgen.problem.problem import Problem
from probgen.sheets.document import FEEDBACK, Feedback

USUAL_CREW: Final = Crew()
ANSWERS: Final = "answer-marks"
LOOK_AT: Final = "look-at"
MARKS: Final = "marks"
STATISTICS: Final = "statistics"
SPREAD: Final = "spread"
CLASS: Final = "class"
AGAIN: Final = "changes"
"""The names of the files, without ending."""

ITEM_HEADINGS: Final = (
    "problem", "template", "answer", "papers", "facility", "discrimination",
    "correlation with the rest", "alpha without it",
)  # fmt: skip
SPREAD_HEADINGS: Final = ("problem", "by", "group", "papers", "mean", "deviation")


@dataclass(frozen=True, slots=True)
class Done:
    """What a marking has made.

    look_at: answers for a person; changed: marks changed by hand that count; remarks: on the
    reading of the answers; moved: what is not as an earlier marking had it, None for the first.
    stale: the folder of the pages that an earlier marking printed and this one did not.
    """

    folder: Path
    papers: int
    look_at: int
    changed: int
    rows: tuple[Row, ...]
    remarks: tuple[str, ...]
    moved: Moved | None = None
    stale: Path | None = None


def mark_class(
    path: Path,
    answers: Path,
    out: Path,
    rules: Path | None = None,
    feedback: bool = False,
    crew: Crew = USUAL_CREW,
) -> Done:
    """Marks a table of answers by a record; what was changed by hand in `out` stays.

    rules: a file with the department's own; feedback: print a page for each student too; crew: who
    does it, which changes nothing.
    Raises InputError with every fault of the answers or of the tables in `out`, and where others'
    files are in the way, before anything is written.
    """
    require_place(out)
    with uncollected():
        return _mark_class(path, answers, out, rules, feedback, crew)


def _mark_class(
    path: Path, answers: Path, out: Path, rules: Path | None, feedback: bool, crew: Crew
) -> Done:
    record, remarks = read_record(path), list[str]()
    policy = read_policy(rules, len(record.set.problems)) if rules else Policy()
    problems = frozen_problems(record.issue, record.current, str(path))
    asked = asked_columns(record, problems)
    typed = read_answers(answers, record, asked, remarks, lambda: codes_beside(path))
    ids = {student.id for student in record.students}
    earlier = read_earlier(out / ANSWERS, out / LOOK_AT, ids)
    listed = take_own(out, _names(out, record, feedback), begun=bool(earlier.rows))
    chunks = mark(record, problems, typed, policy, earlier.given, feedback, crew)
    remarks += _remarks_outdated(found := tuple(row for each in chunks for row in each.found))
    kept, open_yet = earlier.kept({row.paper.id for row in typed})
    look_at = (*(row for each in chunks for row in each.look_at), *open_yet)
    _write_answers(out, ANSWERS, (*found, *kept))
    _write_answers(out, LOOK_AT, look_at)
    again = tuple(changes(earlier.stood, found))
    if earlier.stood:
        _write(out, AGAIN, CHANGES, again)
    columns = policy.columns or usual_columns([each.points for each in record.set.problems])
    own = [row.paper for row in typed]
    sums = (*totals(own, found), *totals(papers(record), kept))
    remarks += _remarks_kept(answers, kept, ids, (out / FEEDBACK).exists() and feedback)
    _write(out, MARKS, *gradebook(sums, columns), numbered(columns))
    counted = together(each.tally for each in chunks)
    report = class_report(counted, scores(own, found), problems, record.is_exam)
    remarks += _report(out, record, report, problems)
    if feedback:
        pages = [page for each in chunks for page in each.pages]
        others = {row.id for row in kept}
        remarks += _feedback(out, record, dict(zip(own, pages, strict=True)), others, crew)
    note_own(out, _names(out, record, feedback), listed)
    by_hand = sum(bool(row.changed) for row in (*found, *kept))
    told = moved(again) if earlier.stood else None
    stale = out / FEEDBACK if not feedback and (out / FEEDBACK).exists() else None
    return Done(out, len(typed), len(look_at), by_hand, found, tuple(remarks), told, stale)


def _names(out: Path, record: Record, feedback: bool) -> Iterator[str]:
    """What a marking writes, and nobody is asked to write into."""
    yield from (f"{name}.csv" for name in (MARKS, STATISTICS, SPREAD, USES, AGAIN))
    yield from (f"{MARKS}.xlsx", f"{CLASS}.txt", f"{CLASS}.pdf")
    if feedback:
        from probgen.marking.feedback import name_of  # much, and seldom wanted

        yield from (f"{FEEDBACK}/{name_of(paper)}.pdf" for paper in papers(record))
        yield from (path.name for path in out.glob(f"all-{FEEDBACK}*.pdf"))
        yield f"new-{FEEDBACK}.pdf"


def _remarks_outdated(found: Sequence[Row]) -> Iterator[str]:
    """What is told of points that were given by hand to other answers."""
    for row in found:
        if row.given:
            where = f"{row.name or row.id}, {row.problem} {row.answer}"
            told = f'{row.given} points were given by hand for "{row.given_for}"'
            yield f'{where}: {told}, and "{row.typed}" is typed now: decide again in {LOOK_AT}.csv'


def _remarks_kept(
    answers: Path, kept: Sequence[Row], ids: Collection[str], printed: bool
) -> Iterator[str]:
    """What is told of papers that were marked before and are not in the table now.

    ids: of the class; printed: whether pages of an earlier marking may lie there.
    """
    if kept:
        count = len({row.id for row in kept})
        told = f"{answers}: papers marked before that have no row: {count}"
        pages = f", and their {FEEDBACK} is of that marking" if printed else ""
        yield f"{told}; their points stay, and count in no statistics{pages}"
    for id in dict.fromkeys(row.id for row in kept if row.changed and row.id not in ids):
        yield f"{ANSWERS}: points by hand of {id}, who is not in the class, count for nobody"


def codes_beside(path: Path) -> Mapping[str, Path]:
    """The records in the folders beside a record's own, by the codes in them."""
    return records_beside(path.parent, None).places


def _report(
    out: Path, record: Record, report: ClassReport, problems: Sequence[Problem]
) -> Iterator[str]:
    """Writes what the class's numbers say; yields remarks."""
    if not report.scores.papers:
        yield f"no paper is marked: there are no statistics, and no {CLASS}.pdf"
        return
    language = problems[0].language
    items = [
        (at.item.problem, record.set.problems[at.item.problem - 1].template, at.item.answer,
         at.papers, *map(_shown, at[3:7]), *(at.verdicts.get(each, 0) for each in Finding))
        for at in report.items
    ]  # fmt: skip
    heads = (*ITEM_HEADINGS, *(each.value for each in Finding))
    _write(out, STATISTICS, heads, items)
    spreads = [
        (each.place or "", each.by, each.group, each.papers, *map(_shown, each[4:]))
        for each in report.spreads
    ]
    _write(out, SPREAD, SPREAD_HEADINGS, spreads)
    lines = [*notes(report, language), "", language.page.commonest_slips]
    lines += [line for line, _ in slip_lines(report)]
    lines += ["", language.page.teach_again, *(line for line, _ in step_lines(report))]
    write_beside(out / f"{CLASS}.txt", "\n".join([*lines, ""]).encode())
    write_uses(out / f"{USES}.csv", uses_marked(record, report))
    heading = Heading(record.set.course, record.set.title, record.set.paper)
    try:
        page = class_page(report, heading, language)
    except ImportError:
        yield f"no {CLASS}.pdf: matplotlib is not installed (pip install 'probgen[plots]')"
    else:
        write_beside(out / f"{CLASS}.pdf", page)


def _feedback(
    out: Path, record: Record, pages: Mapping[Paper, Feedback], kept: Collection[str], crew: Crew
) -> Iterator[str]:
    """Prints a page for each student; yields what could not be printed.

    kept: the ids of those who are not marked now, and were before.
    """
    from probgen.marking.feedback import name_of  # much, and seldom wanted
    from probgen.marking.feedback_pages import print_feedback
    from probgen.papers.typesetter import typesetter_of

    needing = {student.id for student in record.students if student.large}
    large = {name_of(paper) for paper in pages if paper.id in needing}
    house = replace(record.house, layouts=())  # a record's layouts need somebody's word for them
    typesetter = typesetter_of(record.set, house)
    named = {name_of(paper): page for paper, page in pages.items()}
    title, duplex = record.set.title, record.set.run.duplex
    before = [name_of(paper) for paper in papers(record) if paper.id in kept]
    yield from print_feedback(named, out, typesetter, title, duplex, large, crew, before)


def _shown(value: float) -> str:
    """A statistic to three figures; nothing for what has no value."""
    return f"{value:.3f}" if math.isfinite(value) else ""


def _write_answers(out: Path, name: str, table: Sequence[Row]) -> None:
    """A table that a person may write into."""
    beside = (out / f"{name}.xlsx").exists()  # a person's own, which was read: no stale one
    _write(out, name, HEADINGS, table, NUMBERS if beside else None)


def _write(
    out: Path,
    name: str,
    heads: Sequence[str],
    table: Sequence[Sequence[object]],
    numbers: Sequence[str] | None = None,
) -> None:
    """A table as CSV, and as a workbook where it is told which columns hold numbers."""
    write_beside(out / f"{name}.csv", csv_content(heads, table))
    if numbers is not None:
        write_beside(out / f"{name}.xlsx", workbook_content(heads, table, numbers))
