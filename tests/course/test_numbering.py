"""What students had in other weeks is drawn around; the lamp has 45 sets of numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from probgen.course.exam import Exam
from probgen.course.numbers_had import Had, values_had
from probgen.course.record import Record
from probgen.course.record_file import read_record, write_record
from probgen.course.roster import Student
from probgen.course.succession import asking_others, succeed
from probgen.draws.draw import Values
from probgen.input.fault import InputError
from probgen.working.convention import Convention
from tests.terms import begun, class_of, lamp, masses, new_record, on, problem_of, wanted

CLASS = class_of(15)
LAMP = problem_of(lamp(), Convention()).template
NARROW = lamp(low="2.0", high="2.0")  # 5 sets


def had_in(record: Record, owner: str | None = None) -> tuple[Had, ...]:
    """What everybody had; owner: in place of whose it was."""
    return tuple(
        Had(each.owner if owner is None else owner, draw)
        for each in record.editions
        for draw in each.draws
    )


def next_week(had: tuple[Had, ...], students: Sequence[Student] = CLASS, **changes: Any) -> Record:
    want = replace(wanted(students, title="Week 2", **changes), had=had)
    return succeed(new_record(), want)[0]


def sets(record: Record) -> dict[str, Values]:
    found = values_had(had_in(record), LAMP)
    return {owner: next(iter(values)) for owner, values in found.items()}


def test_while_there_is_room_nobody_gets_what_anybody_had() -> None:
    first = begun(CLASS)
    later = next_week(had_in(first))
    assert not set(sets(first).values()) & set(sets(later).values())
    third = next_week((*had_in(first), *had_in(later)))
    assert len({*sets(first).values(), *sets(later).values(), *sets(third).values()}) == 45


def test_without_room_one_gets_what_another_had_and_never_the_own_again() -> None:
    students = class_of(5)
    first = begun(students, source=NARROW)
    weeks = [first]
    for _ in range(4):
        had = tuple(each for week in weeks for each in had_in(week))
        weeks.append(next_week(had, students, source=NARROW))
    for student in students:
        assert len({sets(week)[student.id] for week in weeks}) == 5
    had = tuple(each for week in weeks for each in had_in(week))
    with pytest.raises(InputError) as refused:
        next_week(had, students, source=NARROW)
    assert len(refused.value.faults) == 5
    assert refused.value.faults[0].found == "Student 1 (1)"
    assert "none are left" in refused.value.faults[0].expected


def test_who_had_another_id_gets_no_numbers_of_then_again() -> None:
    students = class_of(4)
    first = begun(class_of(4), source=NARROW)
    second = next_week(had_in(first), students, source=NARROW)
    had = (*had_in(first), *had_in(second))
    renamed = [replace(students[0], id="1001", numbers_of="1"), *students[1:]]
    third = next_week(had, renamed, source=NARROW)
    assert sets(third)["1001"] not in {sets(first)["1"], sets(second)["1"]}


def test_what_anybody_may_have_had_is_given_to_nobody() -> None:
    versions = had_in(begun(class_of(4), source=NARROW), "")
    later = next_week(versions, class_of(1), source=NARROW)
    assert set(sets(later).values()).isdisjoint(values_had(versions, LAMP)[""])
    both = next_week(versions, class_of(3), source=NARROW)
    assert set(sets(both).values()) == set(sets(later).values())


def test_an_exam_has_numbers_that_nobody_of_the_class_had() -> None:
    first = begun(CLASS)
    exam = next_week(had_in(first), exam=Exam(4))
    assert len({*sets(first).values(), *sets(exam).values()}) == 19
    make_up = next_week((*had_in(first), *had_in(exam, "")), exam=Exam(4))
    assert len({*sets(first).values(), *sets(exam).values(), *sets(make_up).values()}) == 23


@pytest.mark.parametrize(("students", "free"), [(3, 2), (5, 0)])
def test_an_exam_that_has_too_few_says_how_many_are_free(students: int, free: int) -> None:
    first = begun(class_of(students), source=NARROW)
    with pytest.raises(InputError) as refused:
        next_week(had_in(first), class_of(9), exam=Exam(3), source=NARROW)
    (fault,) = refused.value.faults
    assert fault.found == f"{free} free sets of numbers of lamp"
    assert fault.expected.startswith("3 that nobody")


def test_a_draft_keeps_no_numbers_that_are_barred() -> None:
    draft = begun(CLASS, title="Week 2")
    papers = {edition.owner: edition for edition in draft.editions}
    want = replace(wanted(CLASS, title="Week 2"), drafted=papers)
    kept, _ = succeed(new_record(), want)
    assert sets(kept) == sets(draft)
    own = tuple(each for each in had_in(draft) if each.owner in "37")
    other, _ = succeed(new_record(), replace(want, had=own))
    moved = [id for id in sets(draft) if sets(draft)[id] != sets(other)[id]]
    assert moved == ["3", "7"]


def test_the_record_tells_what_was_drawn_around_and_newcomers_draw_around_it_too(
    tmp_path: Path,
) -> None:
    first = begun(CLASS)
    later = next_week(had_in(first))
    path = tmp_path / "record.json"
    path.write_text(write_record(later), encoding="utf-8")
    again = read_record(path)
    assert again == later
    assert len(again.avoided) == 15
    more, _ = succeed(again, wanted(class_of(30), title="Week 2"))
    assert len({*sets(first).values(), *sets(more).values()}) == 45
    assert more.avoided == again.avoided


def test_what_is_had_later_changes_no_record_that_draws_nothing() -> None:
    first = begun(CLASS)
    later = next_week(had_in(first))
    again, _ = succeed(first, replace(wanted(CLASS), had=had_in(later)))
    assert again == first
    more, _ = succeed(first, replace(wanted(class_of(16)), had=had_in(later)))
    assert sets(more)["16"] not in {*sets(first).values(), *sets(later).values()}
    assert len(more.avoided) == 15


# Lamps of which only those of one mass could be copied: 9 masses, 5 lengths.


def heavy(record: Record, ids: Sequence[str]) -> list[str]:
    return [masses(record)[id] for id in ids]


@pytest.mark.parametrize("seed", ["one seed", "another seed", "a third"])
def test_neighbours_in_the_list_could_not_copy(seed: str) -> None:
    record, _ = succeed(new_record(seed), wanted(class_of(40)))
    own = heavy(record, [str(n) for n in range(1, 41)])
    assert all(one != other for one, other in pairwise(own))
    assert len(set(own)) == 9


@pytest.mark.parametrize("seed", ["one seed", "another seed", "a third"])
def test_neighbours_in_the_room_could_not_copy(seed: str) -> None:
    """Six rows of six; the class list has them in no such order."""
    seats = [(down, across) for down in range(6) for across in range(6)]
    students = [
        Student(f"S {n}", str(n), seat=f"{'ABCDEF'[seats[n * 7 % 36][0]]}{seats[n * 7 % 36][1]}")
        for n in range(36)
    ]
    record, _ = succeed(new_record(seed), wanted(students))
    at = {seats[n * 7 % 36]: masses(record)[str(n)] for n in range(36)}
    near = [(0, 1), (1, -1), (1, 0), (1, 1)]
    pairs = [
        (mass, at[down + rows, across + columns])
        for (down, across), mass in at.items()
        for rows, columns in near
        if (down + rows, across + columns) in at
    ]
    assert len(pairs) == 110
    assert [pair for pair in pairs if pair[0] == pair[1]] == []


def test_who_joins_late_changes_nobody_and_sits_apart() -> None:
    """Somebody new between any two; the place in the list says who sits beside."""
    students = class_of(20)
    first = begun(students)
    for place in range(21):
        late = Student("Late", "late")
        joined = [*students[:place], late, *students[place:]]
        record, changes = on(first, joined)
        assert (changes.moved, changes.printed) == (0, 1)
        assert {id: mass for id, mass in masses(record).items() if id != "late"} == masses(first)
        near = heavy(record, [each.id for each in joined[max(0, place - 1) : place + 2]])
        assert masses(record)["late"] in near
        assert near.count(masses(record)["late"]) == 1


def test_whose_number_is_asked_anew_sits_apart_from_those_who_keep_theirs() -> None:
    students = class_of(12)
    first = begun(students)
    for student in students[1:-1]:
        want = asking_others(first, wanted(students), [student.id])
        record, changes = succeed(first, want)
        assert changes.printed == 1
        before, own, after = heavy(record, [str(int(student.id) + n) for n in (-1, 0, 1)])
        assert own not in (before, after)


def test_versions_of_an_exam_could_not_be_copied_from_one_another() -> None:
    """Each is five tolerances of 2 % from any other, and so a tenth heavier."""
    for seed in ("one seed", "another seed", "a third"):
        many = wanted(class_of(30), source=lamp(high="60.0"), exam=Exam(6))
        record, _ = succeed(new_record(seed), many)
        own = sorted(map(float, masses(record).values()))
        assert all(more >= 1.0999 * less for less, more in pairwise(own))


def test_numbers_that_a_draft_leaves_are_kept_away_from() -> None:
    students = class_of(12)
    draft = {each.owner: each for each in begun(students).current}
    for place in range(13):
        joined = [*students[:place], Student("Late", "late"), *students[place:]]
        want = replace(wanted(joined), drafted=draft)
        own = heavy(succeed(new_record(), want)[0], [each.id for each in joined])
        assert own[:place] + own[place + 1 :] == [
            str(draft[each.id].draws[0].values["m"].value) for each in students
        ]
        assert own[place] not in own[max(0, place - 1) : place] + own[place + 1 : place + 2]


def test_the_same_seed_and_list_give_the_same_numbers_and_what_is_added_below_moves_none() -> None:
    assert masses(begun(class_of(20))) == masses(begun(class_of(20)))
    longer = masses(begun(class_of(30)))
    assert {str(n): longer[str(n)] for n in range(1, 21)} == masses(begun(class_of(20)))
