"""The demonstration's files: good input themselves, and never written over an edit."""

import os
from dataclasses import replace
from pathlib import Path

import pytest

from probgen.build.demo import SECRET, SEED, write_demo
from probgen.course.assignment import read_assignment
from probgen.course.record_file import read_record, write_record
from probgen.course.record_schema import BOUNDS, RecordFile
from probgen.course.roster import read_roster
from probgen.input.fault import InputError
from probgen.problem.catalogue import read_catalogue
from probgen.working.convention import Convention
from tests.terms import begun, class_of


def test_the_assignment_file_says_what_is_usual(tmp_path: Path) -> None:
    problem_set = read_assignment(write_demo(tmp_path))
    assert problem_set.convention == Convention()
    assert len(problem_set.problems) == 4
    assert {p.template for p in problem_set.problems} <= {e.id for e in read_catalogue()}
    assert len(read_roster(tmp_path / problem_set.roster).students) == 12


def test_its_seed_and_secret_stand_in_a_record_that_can_be_read(tmp_path: Path) -> None:
    path = tmp_path / "record.json"
    path.write_text(write_record(replace(begun(class_of(2)), seed=SEED, secret=SECRET)))
    assert read_record(path).secret == SECRET


def test_what_is_there_stays(tmp_path: Path) -> None:
    (tmp_path / "assignment.toml").write_text("mine")
    write_demo(tmp_path)
    assert (tmp_path / "assignment.toml").read_text() == "mine"
    assert (tmp_path / "roster.csv").exists()


def test_a_folder_of_a_class_or_of_something_else_is_left_alone(tmp_path: Path) -> None:
    (folder := tmp_path / "class").mkdir()
    (folder / "record.json").write_text('{"seed": "spring term, section 2"}')
    (folder / ".made.json").write_text('{"record.json": "0"}')
    (other := tmp_path / "thesis").mkdir()
    (other / "thesis.tex").write_text("years of work")
    for place, told in ((folder, "the record of a class"), (other, r"thesis\.tex")):
        before = sorted(place.iterdir())
        with pytest.raises(InputError, match=told):
            write_demo(place)
        assert sorted(place.iterdir()) == before


def test_a_demonstration_is_begun_anew(tmp_path: Path) -> None:
    write_demo(tmp_path / "demo")
    (tmp_path / "demo" / "record.json").write_text(f'{{"seed": "{SEED}"}}')
    (tmp_path / "demo" / ".made.json").write_text('{"record.json": "0"}')
    write_demo(tmp_path / "demo")


@pytest.mark.skipif(not os.path.ismount("/dev/shm"), reason="needs a mount point")
def test_nothing_is_put_on_a_mount_point() -> None:
    before = set(os.listdir("/dev/shm"))
    with pytest.raises(InputError, match="a mount point"):
        write_demo(Path("/dev/shm"))
    assert not {"assignment.toml", "roster.csv"} & (set(os.listdir("/dev/shm")) - before)


def test_its_secret_is_one_that_a_record_may_have() -> None:
    assert BOUNDS[RecordFile]["secret"].holds(SECRET)
