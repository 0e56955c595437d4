"""What an assistant holds beside the papers: covers, all answers, and who gets which version.

None of it is for students.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby
from typing import Final

from probgen.course.assignment import ProblemSet
from probgen.course.exam import Exam, deal
from probgen.course.record import Record
from probgen.course.roster import Student
from probgen.course.section import sections_of
from probgen.papers.answers import Row
from probgen.papers.blanks import Inlines, label
from probgen.problem.problem import Problem
from probgen.sheets.document import AnswerRow, AnswerTable, Cover, Header
from probgen.wording.block import Text
from probgen.wording.english import ENGLISH
from probgen.wording.facts.papers import (
    BothSides,
    DealtByList,
    DealtByRows,
    DealtInOrder,
    DealtRowByRow,
    DirectionListed,
    LargePrint,
    NeedsTold,
    PileOrder,
    ProblemsCounted,
    SolutionsInside,
    SpareLast,
)
from probgen.wording.language import Language
from probgen.wording.nouns import NO_NOUNS
from probgen.wording.page_words import PageWords
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention
from probgen.working.direction import direction_of
from probgen.working.fact import Fact
from probgen.working.result import targets


def sheets_cover(record: Record, section: str = "", language: Language = ENGLISH) -> Cover:
    """The page before everybody's sheets, or those of a section."""
    words = language.page
    papers = len(record.students) + (record.set.exam.spare if record.set.exam else 0)
    facts = ((words.papers, str(papers)), *_facts(record, language))
    return Cover(_header(record.set, section), facts, _said(_notes(record), language))


def keys_cover(record: Record, section: str = "", language: Language = ENGLISH) -> Cover:
    """The page before all keys, or those of a section."""
    count = len({version.code for version in record.versions})
    facts = ((language.page.keys, str(count)), *_facts(record, language))
    return Cover(_header(record.set, section), facts, _said([SolutionsInside()], language))


def answer_table(
    record: Record,
    problems: Sequence[Problem],
    rows: Iterable[Row],
    section: str = "",
    language: Language = ENGLISH,
) -> AnswerTable:
    """The answers of some versions, one to a row.

    rows: theirs, those of one version together.
    """
    words = language.page
    columns: list[tuple[int, str]] = []
    heads: list[tuple[str, tuple[Inlines, ...]]] = []
    for number, problem in enumerate(problems, start=1):
        told = targets(problem.plan, problem.template.labels)
        asked = [target for target in told if target.asked]
        columns += [(number, target.id) for target in asked]
        heads.append((problem.template.title, tuple(label(problem, target) for target in asked)))
    own = (words.version,) if record.is_exam else (words.name, words.id)
    return AnswerTable(
        _header(record.set, section),
        (*own, words.code),
        tuple(heads),
        tuple(
            _answer_row(list(own), columns, record, problems)
            for _, own in groupby(rows, lambda row: row.code)
        ),
        words.answers,
    )


def version_list(
    record: Record, exam: Exam, section: str = "", words: PageWords = ENGLISH.page
) -> AnswerTable:
    """The pile of an exam from top to bottom, and for whom each paper is."""
    rows = tuple(AnswerRow(row, ()) for row in pile_rows(record, exam, words))
    return AnswerTable(_header(record.set, section), pile_heads(words), (), rows, words.versions)


def pile_heads(words: PageWords = ENGLISH.page) -> tuple[str, ...]:
    """The heads of the columns of `pile_rows`."""
    return (words.paper, words.seat, words.name, words.id, words.version, words.needs, words.code)


def pile_rows(record: Record, exam: Exam, words: PageWords = ENGLISH.page) -> list[tuple[str, ...]]:
    """The same as texts, a row for each paper."""
    rows: list[tuple[str, ...]] = []
    codes = {version.letter: version.code for version in record.versions}
    pile = deal(exam, record.students, record.letters)
    for place, (letter, student) in enumerate(pile, start=1):
        own = (student.seat, student.name, student.id) if student else ("", words.spare, "")
        needs = _needs_of(student, words) if student else ""
        rows.append((str(place), *own, letter, needs, codes[letter]))
    return rows


def _needs_of(student: Student, words: PageWords = ENGLISH.page) -> str:
    """All that a student needs, for a column."""
    return "; ".join(filter(None, (words.large if student.large else "", student.needs)))


CODE_HEADS: Final = (
    "code", "name", "id", "version", "edition", "sheet", "key", "key_pile", "key_page",
    "section", "needs",
)  # fmt: skip
"""The heads of the columns of `code_rows`."""
CODE_NUMBERS: Final = ("edition", "key_page")
"""Those of numbers."""


def code_rows(
    record: Record, keys: Mapping[str, tuple[str, int]], up: str = ""
) -> Iterator[tuple[str | int, ...]]:
    """Which paper has which code and where its key is, a row for each edition there ever was.

    keys: the pile and the page, from 1, of the key to each paper of now, by the name of its files.
    up: the way from the table to the folder of the whole build.
    The files of editions that nobody has now are empty: their keys can be made again.
    """
    now = {(version.code, version.large): version for version in record.versions}
    needs = {student.id: _needs_of(student) for student in record.students}
    counts: dict[str, int] = {}
    for edition in record.editions:
        exam = record.is_exam
        if exam and edition.large:
            continue
        number = counts.get(edition.follows, 0) + 1
        counts.setdefault(edition.code, number)
        whose = ("", "", edition.owner) if exam else (edition.name, edition.owner, "")
        version = now.get((edition.code, edition.large))
        folders = (f"{up}sheets", f"{up}keys")
        files = [f"{folder}/{version.name}.pdf" if version else "" for folder in folders]
        pile, page = keys.get(version.name, ("", 0)) if version else ("", 0)
        place = (f"{pile}.pdf" if pile else "", page or "")
        own = (edition.section, needs.get(edition.owner, "") if version and not exam else "")
        yield (edition.code, *whose, counts[edition.code], *files, *place, *own)


def _answer_row(
    own: Sequence[Row],
    columns: Sequence[tuple[int, str]],
    record: Record,
    problems: Sequence[Problem],
) -> AnswerRow:
    first = own[0]
    labels = (first.version,) if record.is_exam else (first.name, first.id)
    shown = {
        (row.problem, row.answer): _cell(row, record.set.convention, problems[row.problem - 1])
        for row in own
    }
    cells = tuple(shown.get(column, ()) for column in columns)
    return AnswerRow((*labels, first.code), cells)


def _cell(row: Row, convention: Convention, problem: Problem) -> Inlines:
    """What is printed of an answer, a direction in short."""
    if not row.angle_from_x:
        return (Text(row.printed),)
    listed = DirectionListed(direction_of(float(row.angle_from_x), convention))
    return problem.language.say(listed, problem.nouns)


def _header(problem_set: ProblemSet, section: str) -> Header:
    own = problem_set
    return Header(own.course, own.title, "", "", "", section=section, due=own.due)


def _facts(record: Record, language: Language) -> Iterator[tuple[str, str]]:
    """What a cover counts beside its papers: a label and a text each."""
    words, exam, problems = language.page, record.set.exam, record.set.problems
    if not any(problem.sections for problem in problems) or len(sections_of(record)) == 1:
        counted = ProblemsCounted(len(problems), sum(problem.points for problem in problems))
        yield words.problems, plain_text(language.say(counted, NO_NOUNS))
    if exam:
        yield words.versions, ", ".join(exam.letters)
    if due := _due(record):
        yield words.date if exam else words.due, due


def _due(record: Record) -> str:
    """The day, and that of each section with another one."""
    sections, usual = sections_of(record), record.set.due
    days = {name: record.set.for_section(name).due for name in sections}
    if len(set(days.values())) == 1:
        return days[sections[0]]
    others = (f"{name}: {day}" for name, day in days.items() if day != usual)
    return "; ".join(filter(None, (usual, *others)))


def _said(facts: Iterable[Fact], language: Language) -> tuple[str, ...]:
    return tuple(plain_text(language.say(fact, NO_NOUNS)) for fact in facts)


def _notes(record: Record) -> Iterator[Fact]:
    run, exam = record.set.run, record.set.exam
    yield PileOrder(run.order == "seat")
    if run.duplex:
        yield BothSides()
    if exam:
        yield _dealing(record, exam)
        if exam.spare:
            yield SpareLast(exam.spare)
    if large := tuple(student.name for student in record.students if student.large):
        yield LargePrint(large)
    if needs := tuple((each.name, each.needs) for each in record.students if each.needs):
        yield NeedsTold(needs)


def _dealing(record: Record, exam: Exam) -> Fact:
    """How an exam's pile is dealt out, and what that is good for."""
    if all(student.seat for student in record.students):
        return DealtRowByRow() if record.set.run.order == "seat" else DealtByList()
    return DealtByRows(exam.row) if exam.row else DealtInOrder()
