"""From what was handed out to the next record: nobody's paper changes without anybody's word."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from probgen.course.edition import Edition
from probgen.course.exam import Exam
from probgen.course.record import Record
from probgen.course.roster import Student
from probgen.course.succession import asking_others, succeed
from probgen.draws.draw import values_of
from probgen.input.fault import InputError
from probgen.working.convention import Convention
from tests.terms import begun, class_of, lamp, masses, new_record, on, problem_of, wanted

CLASS = class_of(20)
LATE = Student("Late Comer", "99")


def numbers(edition: Edition) -> tuple[Any, ...]:
    return values_of(problem_of(lamp(), Convention()).template, edition.draws[0])


def test_a_new_class_gets_a_paper_each_under_a_code_of_its_own() -> None:
    record, changes = succeed(new_record(), wanted(CLASS))
    assert [edition.owner for edition in record.current] == [student.id for student in CLASS]
    assert len({edition.code for edition in record.editions}) == 20
    assert len({numbers(edition) for edition in record.editions}) == 20
    assert (len(changes.added), changes.moved, changes.left) == (20, 0, ())


def test_the_same_wish_changes_nothing() -> None:
    record = begun(CLASS)
    again, changes = on(record, CLASS)
    assert again == record
    assert (changes.added, changes.printed) == ((), 0)


@pytest.mark.parametrize("place", range(0, 21, 4))
def test_a_late_student_moves_nobody_wherever_in_the_list(place: int) -> None:
    record = begun(CLASS)
    later, changes = on(record, [*CLASS[:place], LATE, *CLASS[place:]])
    assert later.printings[0] == record.printings[0]
    (new,) = later.printings[1].editions
    assert new.owner == "99"
    assert numbers(new) not in {numbers(edition) for edition in record.editions}
    assert (changes.added, changes.moved, changes.left, changes.printed) == ((LATE,), 0, (), 1)


def test_who_leaves_stays_on_record_and_gets_the_same_paper_on_coming_back() -> None:
    record = begun(CLASS)
    smaller, changes = on(record, CLASS[1:])
    assert changes.left == (CLASS[0],)
    assert smaller.printings == record.printings
    assert "1" not in masses(smaller)
    back, changes = on(smaller, CLASS)
    assert changes.back == (CLASS[0],)
    assert back == record


def test_newcomers_draw_around_the_numbers_of_who_has_left() -> None:
    record = begun(CLASS)
    later, _ = on(record, [*CLASS[10:], *(Student(f"New {n}", f"n{n}") for n in range(20))])
    every = [numbers(edition) for edition in later.editions]
    assert len(set(every)) == len(every) == 40


def test_where_no_numbers_are_left_they_are_shared_and_that_is_said() -> None:
    record, _ = on(begun(CLASS), class_of(44))
    full, changes = on(record, class_of(47))
    assert len({numbers(edition) for edition in full.editions}) == 45
    shared, copied = changes.remarks
    assert "2 of 3 students share" in shared
    assert "47 of 47 students" in copied


CHANGED: dict[str, tuple[dict[str, Any], str, str]] = {
    "text": ({"source": lamp("A heavy lamp of")}, "problem 1 (lamp)", "its line 8 is now"),
    "revision": ({"source": lamp(revision=2)}, "problem 1 (lamp)", "revision 2"),
    "range": ({"source": lamp(low="4.0")}, "problem 1 (lamp)", "its line 10 is now"),
    "method": ({"convention": Convention(torque="arm")}, "method.torque", '"arm"'),
    "g": ({"convention": Convention(gravity="9.81")}, "method.gravity", '"9.81"'),
    "due": ({"due": "5 May"}, "due", '"5 May"'),
    "room": ({"working": 2.0}, "working", "2.0"),
    "title": ({"title": "Week 2"}, "title", '"Week 2"'),
}


@pytest.mark.parametrize(("changes", "field", "now"), CHANGED.values(), ids=CHANGED)
def test_what_would_change_papers_is_refused_with_whose(
    changes: dict[str, Any], field: str, now: str
) -> None:
    with pytest.raises(InputError) as refused:
        on(begun(CLASS), [*CLASS, LATE], **changes)
    (fault,) = refused.value.faults
    assert fault.field == field
    assert now in fault.found
    assert "Student 1 (1), Student 2 (2)" in fault.expected
    assert "and 15 more" in fault.expected


def test_a_range_that_is_narrower_tells_whose_numbers_it_has_no_more() -> None:
    record = begun(CLASS[:4])
    lost = [f"Student {id} ({id})" for id, mass in masses(record).items() if float(mass) < 5]
    assert lost
    with pytest.raises(InputError) as refused:
        on(record, CLASS[:4], source=lamp(low="5.0"))
    assert f"the numbers of {', '.join(lost)} would" in refused.value.faults[0].expected


@pytest.mark.parametrize(
    "changes",
    [{"roster": "other.csv"}, {"seed": "another seed than before"}, {"banks": ("mine.toml",)}],
    ids=str,
)
def test_what_stands_on_no_paper_may_change(changes: dict[str, Any]) -> None:
    record = begun(CLASS)
    want = wanted(CLASS)
    want = replace(want, issue=replace(want.issue, set=replace(want.issue.set, **changes)))
    later, told = succeed(record, want)
    assert later.printings == record.printings
    assert later.set == want.issue.set
    assert told.printed == 0


def test_a_correction_keeps_the_numbers_and_tells_of_itself() -> None:
    record = begun(CLASS)
    later, changes = on(record, CLASS, "the lamp's name", source=lamp("A lantern of"))
    assert masses(later) == masses(record)
    assert not {e.code for e in later.current} & {e.code for e in record.editions}
    for old, new in zip(record.current, later.current, strict=True):
        assert new.follows == old.code
        assert [erratum.what for erratum in new.errata] == ["the lamp's name"]
    assert (changes.corrected, changes.moved, changes.redrawn) == (20, 0, ())
    assert later.issues[0].templates[0].source == lamp()
    assert later.issues[1].templates[0].source == lamp("A lantern of")


@pytest.mark.parametrize("source", [lamp(low="4.0"), lamp(least="3.9")], ids=["range", "require"])
def test_a_correction_redraws_what_no_longer_does_and_says_whose(source: str) -> None:
    record = begun(CLASS)
    later, changes = on(record, CLASS, "the range", source=source)
    before, after = masses(record), masses(later)
    light = [id for id, mass in before.items() if float(mass) < 4]
    assert light
    assert changes.redrawn == tuple(f"Student {id} ({id})" for id in light)
    assert all(float(after[id]) >= 4 for id in light)
    assert {id: m for id, m in after.items() if id not in light} == {
        id: m for id, m in before.items() if id not in light
    }
    assert len({numbers(edition) for edition in later.current}) == 20


def test_two_corrections_are_both_told_and_a_newcomer_is_told_of_none() -> None:
    once, _ = on(begun(CLASS), CLASS, "the name", source=lamp("A lantern of"))
    twice, _ = on(once, [*CLASS, LATE], "the article", source=lamp("The lantern of"))
    *others, new = twice.current
    assert {tuple(each.what for each in e.errata) for e in others} == {("the name", "the article")}
    assert new.errata == ()


def test_who_comes_back_after_a_correction_gets_the_corrected_paper() -> None:
    record = begun(CLASS)
    away, _ = on(record, CLASS[1:])
    corrected, _ = on(away, CLASS[1:], "the name", source=lamp("A lantern of"))
    back, changes = on(corrected, CLASS, source=lamp("A lantern of"))
    assert masses(back) == masses(record)
    assert [each.what for each in back.current[0].errata] == ["the name"]
    assert (changes.back, changes.printed, changes.corrected) == ((CLASS[0],), 1, 1)


def test_a_correction_that_is_made_already_is_made_once() -> None:
    corrected, _ = on(begun(CLASS), CLASS, "the name", source=lamp("A lantern of"))
    again, changes = on(corrected, CLASS, "the name", source=lamp("A lantern of"))
    assert (again, changes.printed) == (corrected, 0)
    with pytest.raises(InputError, match="something that differs"):
        on(corrected, CLASS, "the article", source=lamp("A lantern of"))


def test_a_correction_of_nothing_is_refused() -> None:
    with pytest.raises(InputError, match="something that differs"):
        on(begun(CLASS), CLASS, "the name")


# One student's row.


def test_a_name_spelled_otherwise_leaves_the_paper_until_it_is_corrected() -> None:
    record = begun(CLASS)
    renamed = [replace(CLASS[0], name="Student One"), *CLASS[1:]]
    later, changes = on(record, renamed)
    assert later.printings == record.printings
    assert changes.remarks == (
        "Student One (1): the paper in hand says Student 1, and stays as it is",
    )
    corrected, changes = on(later, renamed, "a name")
    (new,) = corrected.printings[-1].editions
    assert (new.name, new.follows) == ("Student One", record.current[0].code)
    assert masses(corrected) == masses(record)


def test_a_changed_id_keeps_the_numbers_under_a_new_code() -> None:
    record = begun(CLASS)
    moved = [replace(CLASS[0], id="1001", numbers_of="1"), *CLASS[1:]]
    later, changes = on(record, moved)
    assert masses(later) == {
        **{("1001" if id == "1" else id): mass for id, mass in masses(record).items()}
    }
    assert later.current[0].follows == record.current[0].code
    assert later.current[0].code != record.current[0].code
    assert (changes.added, changes.left, changes.moved) == ((), (), 0)
    assert changes.others == ("Student 1 (1001): the paper of 1 under the new id",)
    again, changes = on(later, moved)
    assert (again, changes.remarks) == (later, ())


def test_a_name_under_another_id_is_asked_about() -> None:
    record = begun(CLASS)
    with pytest.raises(InputError, match=r'write 1 in a column "Numbers of"'):
        on(record, [replace(CLASS[0], id="1001"), *CLASS[1:]])
    other, changes = on(record, [replace(CLASS[0], id="1001", numbers_of="none"), *CLASS[1:]])
    assert numbers(other.current[0]) != numbers(record.current[0])
    assert len(changes.added) == len(changes.left) == 1


def test_two_may_share_their_numbers() -> None:
    record, _ = on(begun(CLASS), [*CLASS, replace(LATE, numbers_of="3")])
    assert numbers(record.current[-1]) == numbers(record.current[2])
    assert record.current[-1].code != record.current[2].code


def test_numbers_of_one_of_the_class_without_a_paper_are_refused() -> None:
    two = [replace(LATE, numbers_of="98"), Student("Later Still", "98")]
    with pytest.raises(InputError, match="numbers of"):
        on(begun(CLASS), [*CLASS, *two])


def test_an_id_of_before_this_assignment_is_told_and_its_owner_gets_numbers() -> None:
    """A course's one class list says of a changed id what only the earlier assignments know."""
    record, changes = on(begun(CLASS), [*CLASS, replace(LATE, numbers_of="7777")])
    assert numbers(record.current[-1]) not in {numbers(e) for e in record.editions[:-1]}
    assert "nobody has a paper here under the id 7777" in changes.remarks[0]
    record, changes = succeed(new_record(), wanted([replace(LATE, numbers_of="7777"), *CLASS]))
    assert len(record.current) == 21
    assert "nobody has a paper here under the id 7777" in changes.remarks[0]


def test_a_mistyped_former_id_is_asked_about_where_somebody_of_the_name_is_gone() -> None:
    with pytest.raises(InputError, match=r'write 1 in a column "Numbers of"'):
        on(begun(CLASS), [replace(CLASS[0], id="1001", numbers_of="7777"), *CLASS[1:]])


def test_numbers_of_another_are_not_taken_by_one_who_has_a_paper() -> None:
    record = begun(CLASS)
    later, changes = on(record, [replace(CLASS[0], numbers_of="2"), *CLASS[1:]])
    assert later.printings == record.printings
    assert "the numbers in hand stay" in changes.remarks[0]


def test_another_version_for_one_is_asked_for_once() -> None:
    record = begun(CLASS)
    again = [replace(CLASS[0], version="2"), *CLASS[1:]]
    later, changes = on(record, again)
    first, second = record.current[0], later.current[0]
    assert numbers(second) not in {numbers(edition) for edition in record.editions}
    assert (second.follows, second.version) == (first.code, 2)
    assert changes.moved == 0
    assert changes.others == ("Student 1 (1): other numbers, version 2",)
    assert on(later, again)[0] == later
    plain, _ = on(later, CLASS)
    assert masses(plain) == masses(later)


def test_other_numbers_that_there_are_not_are_refused() -> None:
    single = lamp(low="2.0", high="2.0").replace("to = 0.80", "to = 0.40")
    record = begun(CLASS[:1], source=single)
    with pytest.raises(InputError, match="other numbers"):
        on(record, [replace(CLASS[0], version="2")], source=single)


def test_large_print_is_the_same_paper() -> None:
    record = begun(CLASS)
    large = [replace(CLASS[0], large=True), *CLASS[1:]]
    later, changes = on(record, large)
    (new,) = later.printings[1].editions
    assert replace(new, large=False, follows="") == record.current[0]
    assert changes.others == ("Student 1 (1): large print",)
    back, _ = on(later, CLASS)
    assert back.current[0].large is False
    assert back.current[0].code == record.current[0].code


# Exams.

EXAM = Exam(4, row=5)


def letters(record: Record) -> dict[str, str]:
    return record.letter_of


def test_an_exam_has_its_versions_and_each_student_one_of_them() -> None:
    record = begun(CLASS, exam=EXAM)
    assert [edition.owner for edition in record.current] == list("ABCD")
    assert len({numbers(edition) for edition in record.current}) == 4
    assert set(letters(record).values()) == set("ABCD")


def test_in_an_exam_a_late_student_changes_nobodys_version() -> None:
    record = begun(CLASS, exam=EXAM)
    later, changes = on(record, [LATE, *CLASS], exam=EXAM)
    assert later.printings == record.printings
    assert {id: each for id, each in letters(later).items() if id != "99"} == letters(record)
    assert changes.added == (LATE,)


def test_in_an_exam_a_changed_id_keeps_the_version() -> None:
    record = begun(CLASS, exam=EXAM)
    for place, student in enumerate(CLASS):
        moved = [*CLASS[:place], replace(student, id="1001", numbers_of=student.id)]
        later, changes = on(record, [*moved, *CLASS[place + 1 :]], exam=EXAM)
        assert letters(later)["1001"] == letters(record)[student.id]
        assert (changes.added, changes.left, later.printings) == ((), (), record.printings)
        told = f"{student.name} (1001): the version of {student.id} under the new id"
        assert changes.others == (told,)


def test_a_version_more_and_a_large_one_are_printed_alone() -> None:
    record = begun(CLASS, exam=EXAM)
    large = [replace(CLASS[0], large=True), *CLASS[1:]]
    later, _ = on(record, large, exam=Exam(5, row=5))
    assert later.printings[0] == record.printings[0]
    new = [(e.owner, e.large) for e in later.printings[1].editions]
    assert new == [("E", False), (letters(record)["1"], True)]
    twin = later.printings[1].editions[1]
    assert twin.code in {edition.code for edition in record.editions}


def test_an_exam_is_corrected_with_its_large_print() -> None:
    large = [replace(CLASS[0], large=True), *CLASS[1:]]
    record = begun(large, exam=EXAM)
    later, changes = on(record, large, "the name", exam=EXAM, source=lamp("A lantern of"))
    assert masses(later) == masses(record)
    assert len(later.printings[1].editions) == 5
    assert changes.corrected == 4
    assert {e.code for e in later.current}.isdisjoint(e.code for e in record.editions)


def test_papers_of_each_students_own_become_no_exam() -> None:
    with pytest.raises(InputError, match="folder of its own"):
        on(begun(CLASS), CLASS, exam=EXAM)


def test_a_make_up_for_one() -> None:
    record = begun(CLASS[:1], exam=Exam(1), title="Make-up")
    assert letters(record) == {"1": "A"}
    assert [edition.owner for edition in record.current] == ["A"]


# What numbers and codes follow from.


def test_weeks_and_courses_differ_also_with_one_seed() -> None:
    first = begun(CLASS)
    other = begun(CLASS, title="Week 2")
    assert masses(first) != masses(other)
    assert masses(first) == masses(begun(CLASS))


def test_a_code_tells_nothing_of_the_seed() -> None:
    record = begun(CLASS)
    drawn_alike, _ = succeed(new_record(secret="f" * 32), wanted(CLASS))
    assert masses(drawn_alike) == masses(record)
    assert {e.code for e in record.editions}.isdisjoint(e.code for e in drawn_alike.editions)


def test_other_numbers_on_request_and_the_list_need_not_say_so() -> None:
    record = begun(CLASS)
    want = asking_others(record, wanted(CLASS), ["3"])
    later, changes = succeed(record, want)
    (new,) = later.printings[-1].editions
    assert (new.owner, new.version, new.follows) == ("3", 2, record.current[2].code)
    assert new.draws != record.current[2].draws
    assert (changes.moved, changes.printed) == (0, 1)
    assert on(later, CLASS)[0].printings == later.printings


def test_other_numbers_are_for_those_who_have_some() -> None:
    with pytest.raises(InputError, match="a student of the class who has a paper") as refused:
        asking_others(begun(CLASS), wanted([*CLASS, LATE]), ["99"])
    (fault,) = refused.value.faults
    assert (fault.field, fault.asked) == ("another", True)
    exam: dict[str, Any] = {"exam": Exam(2)}
    with pytest.raises(InputError, match="versions are nobody's own"):
        asking_others(begun(CLASS, **exam), wanted(CLASS, **exam), ["3"])
