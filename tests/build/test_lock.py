"""The lock on an output folder: one holder at a time, and none when the holder is killed."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from probgen.build.lock import held
from probgen.input.outside import OutsideError

HOLDER = """
import sys, time
from pathlib import Path
from probgen.build.lock import held
with held(Path(sys.argv[1])):
    print("held", flush=True)
    time.sleep(60)
"""


def test_one_at_a_time(tmp_path: Path) -> None:
    path = tmp_path / "lock"
    with held(path), pytest.raises(OutsideError, match="another build"), held(path):
        pass
    assert not path.exists()
    with held(path):
        assert path.exists()


def test_a_killed_process_holds_nothing(tmp_path: Path) -> None:
    path = tmp_path / "lock"
    command = [sys.executable, "-c", HOLDER, str(path)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "held\n"
        with pytest.raises(OutsideError, match="another build"), held(path):
            pass
        holder.kill()
    with held(path):
        pass
    assert not path.exists()


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError), held(tmp_path / "gone" / "lock"):
        pass


def test_a_lock_that_is_a_link_is_refused(tmp_path: Path) -> None:
    (tmp_path / "thesis.tex").write_text("years of work")
    (tmp_path / "lock").symlink_to(tmp_path / "thesis.tex")
    with pytest.raises(OutsideError, match="a link"), held(tmp_path / "lock"):
        pass
    assert (tmp_path / "thesis.tex").read_text() == "years of work"
    assert (tmp_path / "lock").is_symlink()


@pytest.mark.parametrize("there", ["a folder", "a pipe", "somebody's file", "another name"])
def test_what_is_no_lock_is_left_where_it_is(there: str, tmp_path: Path) -> None:
    path, thesis = tmp_path / "lock", tmp_path / "thesis.tex"
    thesis.touch()
    match there:
        case "a folder":
            path.mkdir()
        case "a pipe":
            os.mkfifo(path)
        case "somebody's file":
            path.write_text("years of work")
        case _:
            os.link(thesis, path)
    with pytest.raises(OutsideError, match=there), held(path):
        pass
    assert path.exists()


def test_an_empty_file_that_a_killed_build_has_left_is_a_lock(tmp_path: Path) -> None:
    (tmp_path / "lock").touch()
    with held(tmp_path / "lock"):
        pass
    assert not (tmp_path / "lock").exists()
