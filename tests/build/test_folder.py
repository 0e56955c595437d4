"""The output folder: whole or not there, and nobody's files are lost."""

from collections.abc import Collection
from pathlib import Path

import pytest

from probgen.build.folder import Working, delivered, recover, working_on
from probgen.course.record import RECORD
from probgen.input.fault import InputError
from probgen.input.outside import OutsideError


def build(target: Path, content: str = "new") -> None:
    with delivered(target, content) as working:
        (working.whole / "sheets").mkdir(exist_ok=True)


def fail_midway(working: Working, printed: bool, found: Collection[str] = ()) -> None:
    assert entries(working.chunks) == set(found)
    (working.whole / "sheets").mkdir(exist_ok=True)
    if printed:
        (working.chunks / "0.json").write_text("{}")
    raise OSError("disk full")


def entries(folder: Path) -> set[str]:
    return {entry.name for entry in folder.iterdir()}


def test_a_new_folder_appears_when_it_is_whole(tmp_path: Path) -> None:
    target = tmp_path / "deep" / "class"
    with delivered(target, "{}"):
        assert not target.exists()
    assert entries(target) == {RECORD}
    assert entries(target.parent) == {"class"}


def test_a_failure_leaves_the_earlier_build_and_nothing_else(tmp_path: Path) -> None:
    target = tmp_path / "class"
    build(target, "old")
    with pytest.raises(OSError, match="full"), delivered(target, "new") as working:
        fail_midway(working, printed=False)
    assert (target / RECORD).read_text() == "old"
    assert entries(tmp_path) == {"class"}


def test_what_is_printed_is_kept_for_the_same_record_only(tmp_path: Path) -> None:
    target = tmp_path / "class"
    for record, found in (("one", set()), ("one", {"0.json"}), ("other", set())):
        with pytest.raises(OSError, match="full"), delivered(target, record) as working:
            fail_midway(working, printed=True, found=found)
        assert not target.exists()
    build(target, "other")
    assert entries(target) == {RECORD, "sheets"}
    assert entries(tmp_path) == {"class"}


def test_two_builds_at_once_are_one_too_many(tmp_path: Path) -> None:
    target = tmp_path / "class"
    with delivered(target, "one"):
        with pytest.raises(OutsideError, match="another build"):
            build(target, "two")
        assert not target.exists()
    assert (target / RECORD).read_text() == "one"
    build(target, "two")
    assert entries(tmp_path) == {"class"}


def test_the_instructors_own_files_are_carried_over(tmp_path: Path) -> None:
    target = tmp_path / "class"
    build(target, "old")
    (target / "grades.csv").write_text("mine")
    (target / "scans").mkdir()
    (target / "scans" / "1.txt").write_text("mine too")
    build(target)
    assert (target / "record.json").read_text() == "new"
    assert (target / "grades.csv").read_text() == "mine"
    assert (target / "scans" / "1.txt").read_text() == "mine too"
    assert entries(tmp_path) == {"class"}


def test_a_folder_of_something_else_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "thesis.tex").write_text("years of work")
    with pytest.raises(InputError, match=r"thesis\.tex"):
        build(tmp_path)
    assert entries(tmp_path) == {"thesis.tex"}


def test_the_set_file_may_lie_in_the_target(tmp_path: Path) -> None:
    target = tmp_path / "class"
    target.mkdir()
    (target / "set.toml").write_text("mine")
    with delivered(target, "{}", [target / "set.toml"]):
        pass
    assert entries(target) == {RECORD, "set.toml"}


def test_what_an_earlier_build_made_and_this_one_does_not_is_gone(tmp_path: Path) -> None:
    target = tmp_path / "class"
    build(target)
    for name in ("missing.txt", "all-sheets-02.pdf", "all-my-notes.pdf"):
        (target / name).write_text("old")
    build(target)
    assert entries(target) == {RECORD, "sheets", "all-my-notes.pdf"}


def test_a_file_is_no_folder(tmp_path: Path) -> None:
    (tmp_path / "class").write_text("")
    with pytest.raises(InputError, match="a file"):
        build(tmp_path / "class")


def test_a_build_killed_before_its_rename_is_mended(tmp_path: Path) -> None:
    target = tmp_path / "class"
    build(target, "old")
    (target / "set.toml").write_text("mine")
    target.rename(tmp_path / ".class.previous")
    recover(target)
    assert (target / "set.toml").read_text() == "mine"
    assert entries(tmp_path) == {"class"}


def test_a_build_killed_after_its_rename_is_mended(tmp_path: Path) -> None:
    target = tmp_path / "class"
    build(target, "old")
    (target / "set.toml").write_text("mine")
    target.rename(tmp_path / ".class.previous")
    working_on(target).chunks.mkdir(parents=True)
    build(tmp_path / "elsewhere", "new")
    (tmp_path / "elsewhere").rename(target)
    recover(target)
    assert (target / RECORD).read_text() == "new"
    assert (target / "set.toml").read_text() == "mine"
    build(target, "newer")
    assert entries(target) == {RECORD, "sheets", "set.toml"}
    assert entries(tmp_path) == {"class"}
