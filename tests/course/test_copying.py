"""Who could copy: of lamps from 2 to 6 kg by half kilograms only those of equal masses could.

Each cord carries half of a lamp's weight, and answers may be off by 2 %.
"""

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations
from typing import Any

import pytest

from probgen.course.assignment import Assigned
from probgen.course.copying import copying_in, remarks_on_copying
from probgen.course.exam import Exam
from probgen.course.record import Record
from probgen.course.record_file import write_record
from probgen.course.roster import Student
from probgen.course.succession import succeed
from probgen.draws.nearness import Copying
from probgen.working.convention import Convention
from tests.terms import begun, class_of, lamp, masses, new_record, on, problem_of, wanted

LAMPS = (problem_of(lamp(), Convention()),)
ONE_MASS = lamp(low="2.0", high="2.0")


def counted(found: Sequence[str]) -> Copying:
    """Of so many masses, pair by pair."""
    pairs = list(combinations(range(len(found)), 2))
    alike = [pair for pair in pairs if found[pair[0]] == found[pair[1]]]
    return Copying(len(found), len(alike) / len(pairs), len({each for p in alike for each in p}))


@pytest.mark.parametrize("students", [2, 5, 15, 30])
def test_a_record_says_who_of_the_class_could_copy(students: int) -> None:
    record = begun(class_of(students))
    assert record.copying == (counted(list(masses(record).values())),)
    assert record.copying == copying_in(record, LAMPS)


def test_those_who_have_a_problem_are_looked_at_alone() -> None:
    students = [replace(each, section="AB"[int(each.id) % 2]) for each in class_of(12)]
    want = wanted(students)
    for_b = replace(want.issue.set, problems=(Assigned("lamp", 8, sections=("B",)),))
    record, _ = succeed(new_record(), replace(want, issue=replace(want.issue, set=for_b)))
    own = [masses(record)[each.id] for each in students if each.section == "B"]
    assert record.copying == (counted(own),)
    nobody = replace(record.set, problems=(Assigned("lamp", 8, sections=("C",)),))
    (none,) = copying_in(replace(record, issues=(replace(record.issue, set=nobody),)), LAMPS)
    assert none == Copying(0, 0.0, 0)


def test_of_an_exam_versions_are_looked_at_each_once() -> None:
    students = [replace(each, large=each.id == "2") for each in class_of(20)]
    (found,) = begun(students, exam=Exam(4)).copying
    assert found == Copying(4, 0.0, 0)
    assert begun(students, source=ONE_MASS, exam=Exam(4)).copying == (Copying(4, 1.0, 4),)


def test_what_is_said_holds_for_the_class_as_it_is() -> None:
    record = begun(class_of(12), source=ONE_MASS.replace("0.80, step", "3.80, step"))
    assert record.copying[0].papers == 12
    fewer, changes = on(record, class_of(9), source=ONE_MASS.replace("0.80, step", "3.80, step"))
    assert fewer.copying == (Copying(9, 1.0, 9),)
    assert changes.remarks == ()  # was told when papers were made


def test_a_record_without_a_word_on_it_stays_as_it_is_until_something_changes() -> None:
    """As releases before wrote it."""
    old = replace(begun(class_of(12)), copying=())
    same, changes = on(old, class_of(12))
    assert write_record(same) == write_record(old)
    assert changes.remarks == ()
    more, _ = on(old, class_of(13))
    assert more.copying[0].papers == 13


def remarks(students: Sequence[Student], **changes: Any) -> list[str]:
    record, told = succeed(new_record(), wanted(students, **changes))
    found = list(remarks_on_copying(record))
    assert found == [each for each in told.remarks if "copied" in each]
    return found


def test_where_too_many_could_copy_one_remark_says_what_to_do() -> None:
    (told,) = remarks(class_of(5), source=ONE_MASS)
    assert "lamp (100 % of the pairs, 5 of 5 students)" in told
    assert "widen a range" in told
    (told,) = remarks(class_of(5), source=ONE_MASS, exam=Exam(2))
    assert "lamp (100 % of the pairs, 2 of 2 versions)" in told
    assert remarks(class_of(5)) == []


def test_a_few_pairs_of_many_are_no_matter() -> None:
    record = begun(class_of(5))
    for share, told in ((0.001, False), (0.0011, True)):
        own: Record = replace(record, copying=(Copying(300, share, 9),))
        assert bool(list(remarks_on_copying(own))) is told
