"""A course's class and its assignments through whatever may come, in any order, without TeX."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, Final

import pytest
from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from probgen.course.edition import Edition, content_of
from probgen.course.exam import Exam
from probgen.course.frozen import frozen_problems
from probgen.course.issue import Erratum
from probgen.course.numbers_had import Had
from probgen.course.record import Record
from probgen.course.record_file import read_record, write_record
from probgen.course.roster import Student
from probgen.course.succession import Changes, asking_others, succeed
from probgen.course.version import version_of
from probgen.course.wanted import Wanted
from probgen.input.fault import InputError
from probgen.mistakes.comparison import class_slips
from probgen.papers.page import copy_of
from probgen.papers.typesetter import Kind, typesetter_of
from probgen.problem.problem import work
from tests.terms import lamp, new_record, wanted

WEEKS: Final = 4
CHOICE: Final = st.integers(0, 10_000)
Place = tuple[str, bool]


@dataclass
class Week:
    """One assignment: its record, and what its file says."""

    title: str
    exam: Exam | None
    record: Record
    text: str = "A lamp of"
    low: str = "2.0"

    @property
    def source(self) -> str:
        return lamp(self.text, low=self.low, high="30.0")

    def wanted(self, students: list[Student], had: tuple[Had, ...] = ()) -> Wanted:
        own = wanted(students, self.source, self.exam, title=self.title)
        return replace(own, had=had)


class Others:
    """The papers of other weeks than one, by their codes."""

    def __init__(self, weeks: list[Week], own: Week) -> None:
        self.records = [week.record for week in weeks if week is not own]

    def content(self, code: str) -> str:
        for record in self.records:
            for edition in record.editions:
                if edition.code == code:
                    return content_of(record.issues[record.issue_of[code]], edition)
        return ""


class Course(RuleBasedStateMachine):
    """codes: what each code ever seen stands for; whose: a person, by each id they have had."""

    count = 0
    """Events of all courses."""

    def __init__(self) -> None:
        super().__init__()
        self.students: dict[str, Student] = {}
        self.gone: dict[str, Student] = {}
        self.weeks: list[Week] = []
        self.codes: dict[str, str] = {}
        self.whose: dict[str, str] = {}
        self.joined = 0

    # What happens to the class list; papers are not touched by it.

    def enrol(self, count: int) -> None:
        for _ in range(count):
            self.joined += 1
            id = str(self.joined)
            self.students[id] = Student(f"Student {id}", id)
            self.whose[id] = id

    @initialize(count=st.integers(1, 4))
    def first_class(self, count: int) -> None:
        self.enrol(count)

    @rule(count=st.integers(1, 2))
    def some_join(self, count: int) -> None:
        Course.count += 1
        if len(self.students) < 8:
            self.enrol(count)

    @precondition(lambda self: len(self.students) > 1)
    @rule(choice=CHOICE)
    def one_leaves(self, choice: int) -> None:
        Course.count += 1
        id = self._one(choice)
        self.gone[id] = self.students.pop(id)

    @precondition(lambda self: self.gone)
    @rule(choice=CHOICE)
    def one_comes_back(self, choice: int) -> None:
        Course.count += 1
        id = list(self.gone)[choice % len(self.gone)]
        self.students[id] = self.gone.pop(id)

    @rule(choice=CHOICE)
    def one_gets_another_id(self, choice: int) -> None:
        Course.count += 1
        old = self._one(choice)
        if self.students[old].numbers_of or self._is_shared(old):
            return
        new = f"{old}b"
        self.students[new] = replace(self.students.pop(old), id=new, numbers_of=old)
        self.whose[new] = self.whose[old]

    @rule(choice=CHOICE)
    def one_needs_large_print_or_no_more(self, choice: int) -> None:
        Course.count += 1
        id = self._one(choice)
        self.students[id] = replace(self.students[id], large=not self.students[id].large)

    @rule(choice=CHOICE)
    def one_is_spelled_otherwise(self, choice: int) -> None:
        Course.count += 1
        id = self._one(choice)
        self.students[id] = replace(self.students[id], name=f"{self.students[id].name}e")

    def _one(self, choice: int) -> str:
        return list(self.students)[choice % len(self.students)]

    def _is_shared(self, id: str) -> bool:
        return any(each.numbers_of == id for each in (*self.students.values(), *self.gone.values()))

    # What is built.

    @precondition(lambda self: len(self.weeks) < WEEKS)
    @rule(exam=st.booleans())
    def an_assignment_is_begun(self, exam: bool) -> None:
        number = len(self.weeks) + 1
        week = Week(f"Week {number}", Exam(2, row=3) if exam else None, new_record())
        self.weeks.append(week)
        self.build(week)

    @precondition(lambda self: self.weeks)
    @rule(choice=CHOICE)
    def one_is_built_again(self, choice: int) -> None:
        self.build(self._week(choice))

    @precondition(lambda self: self.weeks)
    @rule(choice=CHOICE)
    def a_text_is_corrected(self, choice: int) -> None:
        week = self._week(choice)
        week.text += "r"
        self.refused(week, "as handed out to")
        self.build(week, correct="the text")

    @precondition(lambda self: self.weeks)
    @rule(choice=CHOICE)
    def a_range_is_corrected(self, choice: int) -> None:
        week = self._week(choice)
        week.low = "8.0" if week.low == "2.0" else "2.0"
        self.refused(week, "as handed out to")
        self.build(week, correct="the range")

    @precondition(lambda self: self.weeks)
    @rule(choice=CHOICE, whose=CHOICE)
    def one_gets_other_numbers(self, choice: int, whose: int) -> None:
        week, id = self._week(choice), self._one(whose)
        if week.exam or (id, False) not in week.record.held:
            self.refused(week, "another", asked=id)
        else:
            self.build(week, asked=id)

    def _week(self, choice: int) -> Week:
        return self.weeks[choice % len(self.weeks)]

    def succeed(self, week: Week, correct: str, asked: str) -> tuple[Record, Changes]:
        want = week.wanted(list(self.students.values()), tuple(self._had(week)))
        if asked:
            want = asking_others(week.record, want, [asked])
        erratum = Erratum("2027-03-12", correct) if correct else None
        return succeed(week.record, want, erratum, Others(self.weeks, week))

    def refused(self, week: Week, told: str, asked: str = "") -> None:
        Course.count += 1
        with pytest.raises(InputError, match=told):
            self.succeed(week, "", asked)

    def build(self, week: Week, correct: str = "", asked: str = "") -> None:
        Course.count += 1
        before = week.record
        had = list(self._had(week))
        week.record, changes = self.succeed(week, correct, asked)
        self.require_kept(before, week, changes, asked)
        self.require_new_numbers(before, week, had)
        again, more = self.succeed(week, "", "")
        assert (again.printings, more.printed) == (week.record.printings, 0)

    def require_kept(self, before: Record, week: Week, changes: Changes, asked: str) -> None:
        """Nobody's paper has other numbers but for those who are named."""
        after = week.record
        assert after.editions[: len(before.editions)] == before.editions
        assert changes.moved == 0
        named = " ".join(changes.redrawn)
        for place, edition in before.held.items():
            if edition.draws != after.held.get(place, edition).draws:
                told = f"version {place[0]}" if week.exam else f"({place[0]})"
                assert place[0] == asked or told in named

    def require_new_numbers(self, before: Record, week: Week, had: list[Had]) -> None:
        """Nobody gets numbers that they had in another week, nor in this one before."""
        for edition in week.record.editions[len(before.editions) :]:
            earlier = next((e for e in before.editions if e.code == edition.follows), None)
            if earlier is None or earlier.draws != edition.draws:
                person = self.whose.get(edition.owner, "")
                own = {"", *(id for id, whose in self.whose.items() if whose == person)}
                mine = [each.draw for each in had if week.exam or each.owner in own]
                if not (edition.large and week.exam):
                    assert edition.draws[0] not in mine

    def _had(self, week: Week) -> Iterator[Had]:
        for other in self.weeks:
            if other is not week:
                for edition in other.record.editions:
                    yield Had("" if other.exam else edition.owner, edition.draws[0])

    # What always holds.

    @invariant()
    def a_code_stands_for_one_paper(self) -> None:
        for week in self.weeks:
            for edition in week.record.editions:
                issue = week.record.issues[week.record.issue_of[edition.code]]
                content = content_of(issue, edition)
                assert self.codes.setdefault(edition.code, content) == content
        assert len(set(self.codes.values())) == len(self.codes)

    @precondition(lambda self: self.weeks and Course.count % 4 == 0)
    @invariant()
    def a_record_alone_makes_the_same(self) -> None:
        week = self.weeks[Course.count % len(self.weeks)]
        with TemporaryDirectory() as folder:
            path = Path(folder) / "record.json"
            path.write_text(text := write_record(week.record), encoding="utf-8")
            again = read_record(path)
        assert again == week.record
        assert write_record(again) == text
        place = Course.count % len(again.current)
        assert documents(again, again.current[place]) == documents(
            week.record, week.record.current[place]
        )


def documents(record: Record, edition: Edition) -> list[Any]:
    """What TeX is given of a paper's sheet and key."""
    problems = frozen_problems(record.issue, [edition], "record.json")
    version = version_of(edition, record.is_exam)
    worked = tuple(work(problems[0], edition.draws))
    slips = [class_slips([worked[0].digits], problems[0].missteps)[0]]
    copy = copy_of(record.set, version, problems, worked, slips)
    typesetter = typesetter_of(record.set, record.house)
    return [typesetter.document(kind, copy) for kind in Kind]


def play(courses: int, events: int) -> None:
    run_state_machine_as_test(
        Course,
        settings=settings(
            max_examples=courses,
            stateful_step_count=events,
            deadline=None,
            derandomize=True,
            database=None,
            phases=[Phase.generate],  # a few events are read as they are
            suppress_health_check=list(HealthCheck),
        ),
    )


def test_whatever_happens_papers_in_hand_hold() -> None:
    play(courses=8, events=15)


@pytest.mark.proof
def test_whatever_happens_papers_in_hand_hold_in_thousands_of_events() -> None:
    before = Course.count
    play(courses=80, events=40)
    assert Course.count - before >= 2000
