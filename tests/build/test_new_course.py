"""A new course's folder: good input throughout, and nothing in it written over."""

import os
from pathlib import Path

import pytest

from probgen.build.new_course import write_course
from probgen.course.assignment import read_assignment
from probgen.course.inputs import read_inputs
from probgen.course.secret import SECRET, find_secret
from probgen.input.fault import InputError
from probgen.sheets.house import USUAL


def texts(folder: Path) -> dict[str, bytes]:
    return {
        str(path.relative_to(folder)): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_its_files_are_read_as_they_stand(tmp_path: Path) -> None:
    made = write_course(tmp_path / "terms" / "phys-101")
    problem_set = read_assignment(made.assignment)
    inputs = read_inputs(problem_set, made.assignment, None)
    assert problem_set.course == "phys-101"
    assert (len(inputs.students), len(inputs.templates), inputs.house) == (12, 4, USUAL)
    assert set(texts(made.folder)) == {
        "roster.csv", "house.toml", SECRET, os.path.join("week-1", "assignment.toml"),
    }  # fmt: skip


@pytest.mark.parametrize("name", ["\u202e", "\x1b[2J", "n" * 200])
def test_a_folder_of_any_name_has_files_that_can_be_read(name: str, tmp_path: Path) -> None:
    assert read_assignment(write_course(tmp_path / name).assignment).course


def test_its_secret_is_its_own_and_closed_to_others(tmp_path: Path) -> None:
    found = []
    for name in ("one", "two"):
        made = write_course(tmp_path / name)
        assert made.secret.stat().st_mode & 0o777 == 0o600
        found.append(find_secret(made.assignment.parent))
    assert [each and each.folder for each in found] == [tmp_path / "one", tmp_path / "two"]
    assert len({each.text for each in found if each}) == 2


@pytest.mark.parametrize("name", ["roster.csv", "house.toml", SECRET, "week-1/assignment.toml"])
def test_what_is_there_stays_and_the_rest_is_made(name: str, tmp_path: Path) -> None:
    """Also after a command that was killed between two of its files."""
    mine = "0" * 32
    (tmp_path / name).parent.mkdir(exist_ok=True)
    (tmp_path / name).write_text(mine)
    (tmp_path / name).chmod(0o600)
    (tmp_path / "syllabus.txt").write_text("mine")
    made = write_course(tmp_path)
    assert made.left == (tmp_path / name,)
    assert (tmp_path / name).read_text() == mine
    assert len(texts(tmp_path)) == 5
    before = texts(tmp_path)
    with pytest.raises(InputError, match="a course"):
        write_course(tmp_path)
    assert texts(tmp_path) == before


def test_a_link_that_leads_nowhere_is_not_written_over(tmp_path: Path) -> None:
    (tmp_path / "roster.csv").symlink_to(tmp_path / "gone.csv")
    write_course(tmp_path)
    assert (tmp_path / "roster.csv").is_symlink()
    assert not (tmp_path / "gone.csv").exists()


def test_a_name_that_is_no_text_is_told(tmp_path: Path) -> None:
    with pytest.raises(InputError) as caught:
        write_course(tmp_path / "a\0b")
    (fault,) = caught.value.faults
    assert (fault.found, fault.expected) == ("a name that is no text", "a folder of a course")


def test_no_course_is_made_within_another_nor_in_place_of_a_file(tmp_path: Path) -> None:
    course = write_course(tmp_path / "mechanics").folder
    (tmp_path / "notes").write_text("mine")
    before = texts(tmp_path)
    for place in (course / "week-2", tmp_path / "notes", tmp_path / "notes" / "deeper"):
        with pytest.raises(InputError):
            write_course(place)
    assert texts(tmp_path) == before
