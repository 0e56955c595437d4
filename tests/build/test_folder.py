"""The output folder: whole or not there, and nobody's files are lost."""

import json
import os
import subprocess
import sys
from collections.abc import Collection
from pathlib import Path

import pytest

from probgen.build.file_digest import file_digest
from probgen.build.folder import (
    PIECES,
    Delivery,
    Working,
    delivered,
    kept_record,
    recover,
)
from probgen.build.manifest import MANIFEST
from probgen.course.record import RECORD
from probgen.input.fault import InputError
from probgen.input.outside import OutsideError


def build(target: Path, content: str = "new") -> None:
    with delivered(target, Delivery(content)) as working:
        (working.whole / "sheets").mkdir(exist_ok=True)


def fail_midway(working: Working, printed: bool, found: Collection[str] = ()) -> None:
    assert {path.name for path in working.pieces.glob("*")} == set(found)
    (working.whole / "sheets").mkdir(exist_ok=True)
    if printed:
        working.pieces.mkdir(exist_ok=True)
        (working.pieces / "0.json").write_text("{}")
    raise OSError("disk full")


def entries(folder: Path) -> set[str]:
    return {entry.name for entry in folder.iterdir()} - {MANIFEST}


def test_a_new_folder_appears_when_it_is_whole(tmp_path: Path) -> None:
    target = tmp_path / "deep" / "class"
    with delivered(target, Delivery("{}")):
        assert not target.exists()
    assert entries(target) == {RECORD}
    assert entries(target.parent) == {"class"}


def test_a_failure_leaves_the_earlier_build_and_nothing_else(tmp_path: Path) -> None:
    target = tmp_path / "class"
    build(target, "old")
    with pytest.raises(OSError, match="full"), delivered(target, Delivery("new")) as working:
        fail_midway(working, printed=False)
    assert (target / RECORD).read_text() == "old"
    assert entries(tmp_path) == {"class"}


def test_what_is_printed_is_kept_for_the_same_record_only(tmp_path: Path) -> None:
    target = tmp_path / "class"
    for record, found in (("one", set()), ("one", {"0.json"}), ("other", set())):
        with pytest.raises(OSError, match="full"), delivered(target, Delivery(record)) as working:
            fail_midway(working, printed=True, found=found)
        assert not target.exists()
    build(target, "other")
    assert entries(target) == {RECORD, "sheets", PIECES}
    assert entries(tmp_path) == {"class"}


def test_what_somebody_puts_in_the_place_of_the_working_folder_stays(tmp_path: Path) -> None:
    place = tmp_path / ".class.part"

    def replaced(folder: Path) -> None:
        folder.rename(tmp_path / "moved")
        folder.mkdir()
        (folder / "thesis.tex").write_text("years of work")
        raise OSError("disk full")

    with pytest.raises(OSError, match="full"), delivered(tmp_path / "class", Delivery()) as working:
        replaced(working.folder)
    assert entries(place) == {"thesis.tex"}


def test_two_builds_at_once_are_one_too_many(tmp_path: Path) -> None:
    target = tmp_path / "class"
    with delivered(target, Delivery("one")):
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


def test_the_assignment_file_may_lie_in_the_target(tmp_path: Path) -> None:
    target = tmp_path / "class"
    target.mkdir()
    (target / "assignment.toml").write_text("mine")
    with delivered(target, Delivery("{}", (target / "assignment.toml",))):
        pass
    assert entries(target) == {RECORD, "assignment.toml"}


def test_what_an_earlier_build_made_and_this_one_does_not_is_gone(tmp_path: Path) -> None:
    target = tmp_path / "class"
    with delivered(target, Delivery("old")) as working:
        for name in ("missing.txt", "all-sheets-02.pdf"):
            (working.whole / name).write_text("old")
    (target / "all-my-notes.pdf").write_text("mine")
    build(target)
    assert entries(target) == {RECORD, "sheets", "all-my-notes.pdf"}


def test_a_file_is_no_folder(tmp_path: Path) -> None:
    (tmp_path / "class").write_text("")
    with pytest.raises(InputError, match="a file"):
        build(tmp_path / "class")


KILLED = """
import os, sys
from pathlib import Path
from probgen.build.folder import Delivery, delivered

rename, left = Path.rename, int(sys.argv[2])

def counted(path, to):
    global left
    if not left:
        os._exit(9)
    left -= 1
    return rename(path, to)

Path.rename = counted
with delivered(Path(sys.argv[1]), Delivery("new")) as working:
    (working.whole / "sheets").mkdir()
"""


def killed_as_it_is_delivered(target: Path, renames: int) -> None:
    """A build into the target that is killed after so many of its renames."""
    run = subprocess.run([sys.executable, "-c", KILLED, str(target), str(renames)], check=False)
    assert run.returncode == 9
    assert (target.parent / ".class.previous").is_dir()


def test_a_build_killed_between_its_renames_is_mended(tmp_path: Path) -> None:
    target = tmp_path / "class"
    build(target, "old")
    (target / "assignment.toml").write_text("mine")
    killed_as_it_is_delivered(target, renames=1)
    assert not target.exists()
    recover(target)
    assert (target / "assignment.toml").read_text() == "mine"
    assert (target / RECORD).read_text() == "old"
    build(target, "newer")
    assert entries(target) == {RECORD, "sheets", "assignment.toml"}
    assert entries(tmp_path) == {"class"}


def test_a_build_killed_after_its_renames_is_mended(tmp_path: Path) -> None:
    target = tmp_path / "class"
    build(target, "old")
    (target / "assignment.toml").write_text("mine")
    killed_as_it_is_delivered(target, renames=2)
    recover(target)
    assert entries(tmp_path) == {"class"}
    assert (target / RECORD).read_text() == "new"
    assert (target / "assignment.toml").read_text() == "mine"
    build(target, "newer")
    assert entries(target) == {RECORD, "sheets", "assignment.toml"}
    assert entries(tmp_path) == {"class"}


@pytest.mark.parametrize("there", [True, False])
def test_a_previous_folder_with_a_list_of_what_was_made_is_not_believed(
    there: bool, tmp_path: Path
) -> None:
    """It would have become the build, or its files part of what is handed out."""
    target = tmp_path / "class"
    if there:
        build(target, "old")
    previous = tmp_path / ".class.previous"
    (previous / "sheets").mkdir(parents=True)
    (previous / "sheets" / "00.pdf").write_text("not from here")
    (previous / MANIFEST).write_text('{"record.json": "0"}')
    recover(target)
    with pytest.raises(OutsideError, match="in the way"):
        build(target)
    assert target.exists() == there
    assert (previous / "sheets" / "00.pdf").exists()
    assert not list(target.glob("sheets/*"))


def class_in(folder: Path) -> Path:
    """A finished build."""
    with delivered(folder / "class", Delivery("old")) as working:
        (working.whole / "keys").mkdir()
        (working.whole / "keys" / "01.pdf").write_text("a key")
        (working.whole / "answers.csv").write_text("answers")
    return folder / "class"


def test_marked_papers_are_carried_over(tmp_path: Path) -> None:
    target = class_in(tmp_path)
    (target / "keys" / "01-marked.pdf").write_text("hours of work")
    (target / "keys" / "notes").mkdir()
    (target / "keys" / "notes" / "1.txt").write_text("mine")
    build(target)
    assert (target / "keys" / "01-marked.pdf").read_text() == "hours of work"
    assert (target / "keys" / "notes" / "1.txt").read_text() == "mine"
    assert not (target / "keys" / "01.pdf").exists()
    assert entries(tmp_path) == {"class"}


def test_what_somebody_has_edited_is_not_replaced(tmp_path: Path) -> None:
    target = class_in(tmp_path)
    (target / "answers.csv").write_text("edited")
    with (
        pytest.raises(InputError, match=r"answers\.csv.*\n.*changed since"),
        delivered(target, Delivery("new")) as working,
    ):
        (working.whole / "answers.csv").write_text("other answers")
    assert (target / "answers.csv").read_text() == "edited"
    assert (target / RECORD).read_text() == "old"


@pytest.mark.parametrize("again", ["a key", "", None], ids=["made again", "not made", "no folder"])
def test_what_somebody_has_edited_stays_and_is_named(again: str | None, tmp_path: Path) -> None:
    target = class_in(tmp_path)
    (target / "keys" / "01.pdf").write_text("with remarks")
    how = Delivery("new")
    with delivered(target, how) as working:
        if again is not None:
            (working.whole / "keys").mkdir()
        if again:
            (working.whole / "keys" / "01.pdf").write_text(again)
    assert how.left == ("keys/01.pdf",)
    assert (target / "keys" / "01.pdf").read_text() == "with remarks"
    assert (target / RECORD).read_text() == "new"
    assert entries(tmp_path) == {"class"}


def test_an_earlier_build_can_be_kept_beside_the_new_one(tmp_path: Path) -> None:
    target = class_in(tmp_path)
    (target / "keys" / "01.pdf").write_text("with remarks")
    (target / "assignment.toml").write_text("mine")
    (tmp_path / "class.replaced-2").symlink_to("nowhere")
    for number in (1, 3):
        how = Delivery("new", replace=True)
        with delivered(target, how):
            pass
        assert how.kept == tmp_path / f"class.replaced-{number}"
        assert entries(target) == {RECORD, "assignment.toml"}
    kept = tmp_path / "class.replaced-1"
    assert entries(kept) == {RECORD, "answers.csv", "keys", "assignment.toml"}
    assert (kept / RECORD).read_text() == "old"
    assert (kept / "keys" / "01.pdf").read_text() == "with remarks"


def test_what_another_user_says_was_made_is_kept(tmp_path: Path) -> None:
    """A list can be planted, with true digests of files that nobody has made."""
    target = class_in(tmp_path)
    (target / "thesis.tex").write_text("years of work")
    (target / "keys" / "01.pdf").write_text("with remarks")
    (target / "mine.txt").write_text("mine")
    listed = json.loads((target / MANIFEST).read_text()) | {
        "thesis.tex": file_digest(target / "thesis.tex"),
    }
    (target / MANIFEST).write_text(json.dumps(listed))
    how = Delivery("new")
    with delivered(target, how):
        pass
    assert entries(target) == {RECORD, "keys", "mine.txt"}
    assert (target / "keys" / "01.pdf").read_text() == "with remarks"
    assert how.kept == tmp_path / "class.replaced-1"
    assert entries(how.kept) == {RECORD, "keys", "answers.csv", "thesis.tex", "mine.txt"}
    assert (how.kept / "thesis.tex").read_text() == "years of work"
    build(target, "newer")
    assert entries(tmp_path) == {"class", "class.replaced-1"}


def test_an_own_file_with_a_name_that_is_needed_is_not_replaced(tmp_path: Path) -> None:
    target = class_in(tmp_path)
    (target / "versions.csv").write_text("mine")
    with (
        pytest.raises(OutsideError, match=r"versions\.csv"),
        delivered(target, Delivery("new")) as working,
    ):
        (working.whole / "versions.csv").write_text("made")
    assert (target / "versions.csv").read_text() == "mine"
    assert (target / RECORD).read_text() == "old"


def test_a_planted_previous_folder_is_left_alone(tmp_path: Path) -> None:
    target = class_in(tmp_path)
    (tmp_path / ".class.previous").mkdir()
    (tmp_path / ".class.previous" / "thesis.tex").write_text("years of work")
    recover(target)
    with pytest.raises(OutsideError, match="in the way"):
        build(target)
    assert (tmp_path / ".class.previous" / "thesis.tex").read_text() == "years of work"
    assert (target / RECORD).read_text() == "old"


def test_a_planted_working_folder_is_not_believed(tmp_path: Path) -> None:
    whole = tmp_path / ".class.part" / "whole"
    whole.mkdir(parents=True)
    (whole / RECORD).write_text("one")
    assert kept_record(tmp_path / "class") is None
    with pytest.raises(OutsideError, match="in the way"):
        build(tmp_path / "class", "one")
    assert (whole / RECORD).read_text() == "one"


def test_a_seal_holds_at_its_place_only(tmp_path: Path) -> None:
    how = Delivery("one")
    with pytest.raises(OSError, match="full"), delivered(tmp_path / "a", how) as working:
        fail_midway(working, printed=True)
    assert kept_record(tmp_path / "a")
    (tmp_path / ".a.part").rename(tmp_path / ".b.part")
    assert kept_record(tmp_path / "b") is None


@pytest.mark.skipif(not os.path.ismount("/dev/shm"), reason="needs a mount point")
def test_a_mount_point_is_refused_before_the_work() -> None:
    with pytest.raises(InputError, match="mount point"):
        build(Path("/dev/shm"))


def test_a_build_is_on_the_disk_itself_before_it_takes_its_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    synced: dict[int, str] = {}
    sync, rename = os.fsync, Path.rename

    def noted(opened: int) -> None:
        sync(opened)
        synced[os.fstat(opened).st_ino] = "before"

    def renamed(path: Path, to: Path) -> Path:
        found = {each.relative_to(path).as_posix(): each.stat().st_ino for each in path.rglob("*")}
        assert {name for name, number in found.items() if number not in synced} == {"keys/known"}
        assert path.stat().st_ino in synced
        synced.clear()
        return rename(path, to)

    monkeypatch.setattr(os, "fsync", noted)
    monkeypatch.setattr(Path, "rename", renamed)
    how = Delivery("new")
    with delivered(tmp_path / "class", how) as working:
        for name in ("keys/known", "keys/new", "all-keys.pdf"):
            (working.whole / name).parent.mkdir(exist_ok=True)
            (working.whole / name).write_text(name)
        how.marks = {"keys/known": "0" * 32}
    assert set(synced) == {tmp_path.stat().st_ino}


def test_a_class_and_solutions_do_not_take_each_other_s_place(tmp_path: Path) -> None:
    """A class's record would be gone, or what was released to students."""
    target, solutions = tmp_path / "class", tmp_path / "solutions"
    build(target, "old")
    for _ in range(2):
        with delivered(solutions, Delivery()) as working:
            working.record.unlink()
            (working.whole / "a.pdf").touch()
    with pytest.raises(InputError, match="a folder for solutions"), delivered(target, Delivery()):
        pass
    with pytest.raises(InputError, match="a folder for a class"):
        build(solutions)
    assert (entries(target), entries(solutions)) == ({RECORD, "sheets"}, {"a.pdf"})
