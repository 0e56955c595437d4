"""A folder in use is held by one process, and by none when that has ended."""

import subprocess
import sys
from pathlib import Path

import psutil
import pytest

from probgen.input.folder_lock import hold, holding, let_go

HOLDER = """
import sys, time
from pathlib import Path
from probgen.input.folder_lock import hold
hold(Path(sys.argv[1]))
print("held", flush=True)
time.sleep(60)
"""


def test_one_at_a_time(tmp_path: Path) -> None:
    held = hold(tmp_path)
    with pytest.raises(BlockingIOError):
        hold(tmp_path)
    let_go(held)
    with holding(tmp_path), pytest.raises(BlockingIOError):
        hold(tmp_path)
    let_go(hold(tmp_path))


def test_who_was_refused_has_opened_nothing(tmp_path: Path) -> None:
    with holding(tmp_path):
        before = psutil.Process().num_fds()
        with pytest.raises(BlockingIOError):
            hold(tmp_path)
        assert psutil.Process().num_fds() == before


def test_a_killed_process_holds_nothing(tmp_path: Path) -> None:
    command = [sys.executable, "-c", HOLDER, str(tmp_path)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "held\n"
        with pytest.raises(BlockingIOError):
            hold(tmp_path)
        holder.kill()
    let_go(hold(tmp_path))


def test_links_and_files_are_not_held(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    (tmp_path / "link").symlink_to(tmp_path)
    for name in ("file", "link", "none"):
        with pytest.raises(OSError, match=r"No such|Not a directory|Too many levels"):
            hold(tmp_path / name)
