"""What an assistant holds beside the papers: covers, all answers, and who gets which version.

None of it is for students.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby

from probgen.course.exam import Exam, deal
from probgen.course.record import Record
from probgen.course.setfile import ProblemSet
from probgen.papers.answers import Row
from probgen.papers.page import Inlines, label
from probgen.problem.problem import Problem
from probgen.sheets.document import AnswerRow, AnswerTable, Cover, Header
from probgen.wording.block import Text
from probgen.working.result import targets


def sheets_cover(record: Record) -> Cover:
    """The page before everybody's sheets."""
    return Cover(_header(record.set), _facts(record), _notes(record))


def keys_cover(record: Record) -> Cover:
    """The page before all keys."""
    count = len({version.code for version in record.versions})
    facts = (("Keys", str(count)), *_facts(record)[1:])
    return Cover(_header(record.set), facts, ("Holds the solutions: not for students.",))


def answer_table(
    record: Record, problems: Sequence[Problem], rows: Iterable[Row]
) -> AnswerTable:
    """The answers of some versions, one to a row.

    rows: theirs, those of one version together.
    """
    columns: list[tuple[int, str]] = []
    heads: list[tuple[str, tuple[Inlines, ...]]] = []
    for number, problem in enumerate(problems, start=1):
        asked = [target for target in targets(problem.plan.system) if target.asked]
        columns += [(number, target.id) for target in asked]
        heads.append((problem.template.title, tuple(label(problem, target) for target in asked)))
    labels = ("Version", "Code") if record.set.exam else ("Name", "Id", "Code")
    return AnswerTable(
        _header(record.set),
        labels,
        tuple(heads),
        tuple(
            _answer_row(list(own), columns, bool(record.set.exam))
            for _, own in groupby(rows, lambda row: row.code)
        ),
    )


def version_list(record: Record, exam: Exam) -> AnswerTable:
    """The pile of an exam from top to bottom, and for whom each paper is."""
    rows = tuple(AnswerRow(row, ()) for row in pile_rows(record, exam))
    return AnswerTable(_header(record.set), PILE_HEADS, (), rows, mark="Versions")


PILE_HEADS = ("Paper", "Seat", "Name", "Id", "Version", "Print")


def pile_rows(record: Record, exam: Exam) -> list[tuple[str, ...]]:
    """The same as texts, a row for each paper."""
    rows: list[tuple[str, ...]] = []
    for place, (letter, student) in enumerate(deal(exam, record.students), start=1):
        own = (student.seat, student.name, student.id) if student else ("", "spare", "")
        rows.append((str(place), *own, letter, "large" if student and student.large else ""))
    return rows


def _answer_row(
    own: Sequence[Row], columns: Sequence[tuple[int, str]], exam: bool
) -> AnswerRow:
    first = own[0]
    labels = (first.version,) if exam else (first.name, first.id)
    printed = {(row.problem, row.answer): row.printed for row in own}
    cells = tuple((Text(printed.get(column, "")),) for column in columns)
    return AnswerRow((*labels, first.code), cells)


def _header(problem_set: ProblemSet) -> Header:
    return Header(problem_set.course, problem_set.title, "", "", "", due=problem_set.due)


def _facts(record: Record) -> tuple[tuple[str, str], ...]:
    exam, problems = record.set.exam, record.set.problems
    papers = len(record.students) + (exam.spare if exam else 0)
    points = sum(problem.points for problem in problems)
    facts = [("Papers", str(papers)), ("Problems", f"{len(problems)}, for {points} points")]
    if exam:
        facts.append(("Versions", ", ".join(exam.letters)))
    if record.set.due:
        facts.append(("Date" if exam else "Due", record.set.due))
    return tuple(facts)


def _notes(record: Record) -> tuple[str, ...]:
    run, exam = record.set.run, record.set.exam
    by_seat = run.order == "seat"
    notes = ["In the order of the seats." if by_seat else "In the order of the class list."]
    if run.duplex:
        notes.append("Print on both sides: each paper begins on a right-hand page.")
    if exam:
        notes.append(_dealing(record, exam))
        if exam.spare:
            notes.append(f"The last {exam.spare} are spare.")
    if large := [student.name for student in record.students if student.large]:
        notes.append(f"In large print: {', '.join(large)}.")
    return tuple(notes)


def _dealing(record: Record, exam: Exam) -> str:
    """How an exam's pile is dealt out, and what that is good for."""
    differ = "nobody then has the version of a neighbour."
    if all(student.seat for student in record.students):
        if record.set.run.order == "seat":
            return f"Deal them out in this order, row by row: {differ}"
        return f"Give each seat the version that the list of versions names: {differ}"
    if exam.row:
        return f"Deal them out in this order, {exam.row} to a row: {differ}"
    return "Deal them out in this order: nobody then has the version of whom they sit beside."
