"""Papers found again by a code, an id or a name."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from probgen.course.exam import Exam
from probgen.course.record import Record
from probgen.course.record_file import write_record
from probgen.course.roster import Student
from probgen.course.trail import follow, require_one
from probgen.input.fault import InputError
from tests.terms import begun, class_of, lamp, on

CLASS = [*class_of(6), Student("Zoë Müller", "s_7"), Student("O'Neil, Ada", "00812")]


def put(folder: Path, record: Record) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / "record.json"
    path.write_text(write_record(record), encoding="utf-8")
    return path


@pytest.fixture
def corrected() -> Record:
    return on(begun(CLASS), CLASS, "the lamp's name", source=lamp("A lantern of"))[0]


def test_every_code_there_ever_was_leads_to_its_paper(tmp_path: Path, corrected: Record) -> None:
    path = put(tmp_path, corrected)
    for edition in corrected.editions:
        (found,) = follow(edition.code, [path])
        assert found.edition == edition
        assert found.issue == corrected.issues[corrected.issue_of[edition.code]]
        assert [student.id for student in found.students] == [edition.owner]


def test_which_edition_it_is_and_what_has_taken_its_place(
    tmp_path: Path, corrected: Record
) -> None:
    path = put(tmp_path, corrected)
    old, new = corrected.printings[0].editions[0], corrected.printings[1].editions[0]
    (first,), (second,) = follow(old.code, [path]), follow(new.code, [path])
    assert (first.number, first.later) == (1, new.code)
    assert (second.number, second.later) == (2, "")


def test_a_code_may_be_typed_as_it_was_read(tmp_path: Path) -> None:
    record = begun(CLASS)
    path = put(tmp_path, record)
    for edition in record.editions:
        typed = edition.code.lower().replace("-", " ").replace("0", "o").replace("1", "l")
        assert [each.edition for each in follow(typed, [path])] == [edition]


def test_a_code_with_a_wrong_sign_is_told_as_mistyped(tmp_path: Path) -> None:
    record = begun(CLASS)
    path, code = put(tmp_path, record), record.editions[0].code
    wrong = ("7" if code[0] != "7" else "8") + code[1:]
    with pytest.raises(InputError, match=f'its last sign does not fit.*did you mean "{code}"'):
        follow(wrong, [path])


def test_an_id_of_the_form_of_a_code_is_an_id(tmp_path: Path) -> None:
    path = put(tmp_path, begun([Student("Ada", "20261234"), Student("Bob", "2026123456")]))
    assert [each.edition.name for each in follow("20261234", [path])] == ["Ada"]
    assert [each.edition.name for each in follow("2026123456", [path])] == ["Bob"]


@pytest.mark.parametrize(
    ("sought", "owner"),
    [("s_7", "s_7"), ("S_7", "s_7"), ("Zoë Müller", "s_7"), ("zoe muller", "s_7"),
     ("MÜLLER", "s_7"), ("ada o'neil", "00812"), ("O'Neil Ada", "00812"), ("00812", "00812"),
     ("Student 3", "3")],
)  # fmt: skip
def test_a_student_by_id_or_name(tmp_path: Path, sought: str, owner: str) -> None:
    path = put(tmp_path, begun(CLASS))
    assert [each.edition.owner for each in follow(sought, [path])] == [owner]


def test_a_part_of_a_name_finds_all_who_have_it(tmp_path: Path) -> None:
    path = put(tmp_path, begun(CLASS))
    assert len(follow("student", [path])) == 6
    with pytest.raises(InputError, match="one paper; this may be"):
        require_one(follow("student", [path]), "student")


def test_a_folder_of_records_is_searched(tmp_path: Path) -> None:
    first, second = begun(CLASS), begun(CLASS, title="Week 2")
    put(tmp_path / "a", first)
    put(tmp_path / "b" / "c", second)
    (found,) = follow(second.editions[2].code, [tmp_path])
    assert (found.path, found.edition) == (tmp_path / "b/c/record.json", second.editions[2])
    assert [each.issue.set.title for each in follow("s_7", [tmp_path])] == ["Week 1", "Week 2"]


def test_a_copy_of_a_record_is_told_once_and_the_one_that_knows_more(
    tmp_path: Path, corrected: Record
) -> None:
    put(tmp_path / "a", replace(corrected, issues=corrected.issues[:1],
                                printings=corrected.printings[:1]))  # fmt: skip
    put(tmp_path / "b", corrected)
    (found,) = follow(corrected.editions[0].code, [tmp_path])
    assert found.later == corrected.printings[1].editions[0].code


def test_of_copies_that_know_the_same_the_first_is_told(tmp_path: Path, corrected: Record) -> None:
    first = put(tmp_path / "a", corrected)
    put(tmp_path / "b", corrected)
    (found,) = follow(corrected.editions[0].code, [tmp_path])
    assert found.path == first


def test_a_student_of_an_exam_has_a_versions_paper(tmp_path: Path) -> None:
    record = begun(CLASS, exam=Exam(3))
    path = put(tmp_path, record)
    (found,) = follow("Zoë Müller", [path])
    assert found.edition.owner == record.letter_of["s_7"]
    (version,) = follow(found.edition.code, [path])
    assert {student.id for student in version.students} == {
        id for id, letter in record.letter_of.items() if letter == found.edition.owner
    }
    assert version.owner == f"version {found.edition.owner}"


def test_letters_of_another_size_are_the_same_paper(tmp_path: Path) -> None:
    large = [replace(CLASS[0], large=True), *CLASS[1:]]
    path = put(tmp_path, on(begun(CLASS), large)[0])
    (found,) = follow("1", [path])
    assert (found.edition.large, found.number, found.later) == (True, 1, "")


def test_an_exams_large_print_is_found_by_who_has_it_so(tmp_path: Path) -> None:
    record = begun([replace(CLASS[0], large=True), *CLASS[1:]], exam=Exam(3))
    path = put(tmp_path, record)
    (own,) = follow("1", [path])
    (usual,) = follow(own.edition.code, [path])
    assert (own.edition.large, usual.edition.large) == (True, False)
    assert usual.edition == replace(own.edition, large=False)


def test_who_has_left_is_found_and_has_it_no_more(tmp_path: Path) -> None:
    record = begun(CLASS)
    path = put(tmp_path, on(record, CLASS[1:])[0])
    (found,) = follow("1", [path])
    assert (found.edition, found.students) == (record.editions[0], ())


def test_a_changed_id_leads_from_either(tmp_path: Path) -> None:
    record = begun(CLASS)
    moved = [replace(CLASS[0], id="1001", numbers_of="1"), *CLASS[1:]]
    path = put(tmp_path, on(record, moved)[0])
    (old,), (new,) = follow("1", [path]), follow("1001", [path])
    assert (old.later, new.edition.follows) == (new.edition.code, old.edition.code)
    assert new.edition.draws == old.edition.draws
    assert (old.students, old.renamed) == ((), moved[0])
    assert (new.students, new.renamed) == ((moved[0],), None)


def test_editions_are_counted_whichever_is_asked_for(tmp_path: Path) -> None:
    record = begun(CLASS)
    for was, id in (("1", "1001"), ("1001", "1002")):
        record = on(record, [replace(CLASS[0], id=id, numbers_of=was), *CLASS[1:]])[0]
    path = put(tmp_path, record)
    codes = [e.code for e in record.editions if e.owner in ("1", "1001", "1002")]
    for number, code in enumerate(codes, start=1):
        (found,) = follow(code, [path])
        assert found.number == number
        assert found.later == ("" if number == 3 else codes[-1]), "the one in hand now"
        assert len(found.students) == (number == 3)


def test_an_edited_record_is_told(tmp_path: Path) -> None:
    record = begun(CLASS)
    path = put(tmp_path, record)
    text = path.read_text(encoding="utf-8").replace('"Student 2"', '"Someone Else"')
    path.write_text(text, encoding="utf-8")
    assert follow("1", [path])[0].edited
    assert not follow("1", [put(tmp_path / "whole", record)])[0].edited


def test_what_is_no_record_is_told_beside_what_is_missing(tmp_path: Path) -> None:
    path = put(tmp_path, begun(CLASS))
    data = json.loads(path.read_text(encoding="utf-8"))
    data["printings"][0]["editions"][0].pop("code")
    path.write_text(json.dumps(data), encoding="utf-8")
    with pytest.raises(InputError):
        follow("1", [path])
    with pytest.raises(InputError, match="a folder with records"):
        follow("1", [tmp_path / "nowhere"])
    with pytest.raises(InputError, match="a folder with records"):
        follow("1", [put(tmp_path / "whole", begun(CLASS)), tmp_path / "nowhere"])


def test_nobody_of_that_name(tmp_path: Path) -> None:
    put(tmp_path, begun(CLASS))
    with pytest.raises(InputError, match=r"id or name in \S+record.json"):
        follow("Nobody At All", [tmp_path])
    put(tmp_path / "b", begun(CLASS, title="Week 2"))
    with pytest.raises(InputError, match="in one of the 2 records in"):
        follow("Nobody At All", [tmp_path])


@pytest.mark.parametrize(("sought", "meant"), [("0812", "00812"), ("Zoë Mülller", "Zoë Müller")])
def test_the_nearest_is_offered(tmp_path: Path, sought: str, meant: str) -> None:
    put(tmp_path, begun(CLASS))
    with pytest.raises(InputError, match=f'did you mean "{meant}"'):
        follow(sought, [tmp_path])
