"""A program shut in opens what it was given, and nothing else."""

from __future__ import annotations

import ctypes
import socket
import subprocess
import sys
from pathlib import Path

import psutil
import pytest

from probgen.press import enclosure
from probgen.press.enclosure import Enclosure, shuts, start, there

SYSTEM = there(("/usr", "/lib", "/lib64", "/etc", "/opt", sys.prefix, sys.base_prefix))
needs_landlock = pytest.mark.skipif(not shuts(), reason="this kernel shuts nothing in")


def tried(code: str, own: Path, *readable: Path, shut: bool = True) -> bool:
    """Whether a line of Python runs to its end."""
    inside = Enclosure(own, (*SYSTEM, *readable)) if shut else None
    command = [sys.executable, "-S", "-c", code]
    running = start(inside, command, cwd=own, stderr=subprocess.DEVNULL)
    return running.wait(60) == 0


@pytest.fixture
def own(tmp_path: Path) -> Path:
    (folder := tmp_path / "own").mkdir()
    return folder


@pytest.fixture
def secret(tmp_path: Path) -> Path:
    path = tmp_path / "secret.txt"
    path.write_text("secret")
    return path


@pytest.mark.parametrize(("version", "shut"), [(-1, False), (0, False), (1, True), (7, True)])
def test_a_kernel_shuts_programs_in_that_knows_a_version_of_it(
    version: int, shut: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    """-1 is what a kernel without it says."""
    monkeypatch.setattr(enclosure, "_version", lambda: version)
    assert shuts.__wrapped__() is shut


@needs_landlock
def test_what_the_kernel_refuses_is_an_error() -> None:
    """No set of rules can be made of nothing."""
    with pytest.raises(OSError, match=r"Bad address|Invalid argument"):
        enclosure._call(enclosure._CREATE, None, ctypes.c_size_t(1), 0)


@needs_landlock
def test_its_own_folder_is_free(own: Path) -> None:
    code = "open('a.txt', 'w').write('x'); import os; os.mkdir('b'); os.rename('a.txt', 'b/c')"
    assert tried(code, own)
    assert (own / "b" / "c").read_text() == "x"


@needs_landlock
def test_what_it_was_not_given_is_closed(own: Path, secret: Path) -> None:
    read = f"open({str(secret)!r}).read()"
    assert not tried(read, own)
    assert tried(read, own, secret)
    assert tried(read, own, secret.parent)
    assert tried(read, own, shut=False)
    assert not tried(f"import os; os.listdir({str(secret.parent)!r})", own)
    assert tried(f"import os; os.listdir({str(secret.parent)!r})", own, secret.parent)


@needs_landlock
def test_what_it_may_read_it_may_not_write(own: Path, secret: Path) -> None:
    for code in (f"open({str(secret)!r}, 'a')", f"open({str(secret.parent / 'new')!r}, 'w')"):
        assert not tried(code, own, secret, secret.parent)
        assert tried(code, own, shut=False)
    assert not tried(f"import os; os.remove({str(secret)!r})", own, secret.parent)
    assert secret.exists()


@needs_landlock
def test_output_may_be_thrown_away_and_programs_be_run(own: Path) -> None:
    assert tried("open('/dev/null', 'w').write('x')", own)
    assert tried("import os, sys; os.execv(sys.executable, [sys.executable, '-S', '-c', '1'])", own)


@needs_landlock
def test_what_it_starts_is_shut_in_as_well(own: Path, secret: Path) -> None:
    inner = f"open({str(secret)!r})"
    code = f"import os, sys; os.execv(sys.executable, ['python', '-S', '-c', {inner!r}])"
    assert not tried(code, own)
    assert tried(code, own, secret)


@needs_landlock
def test_nothing_stays_open_where_it_was_started(own: Path, secret: Path) -> None:
    assert tried("1", own, secret)
    before = psutil.Process().num_fds()
    assert tried("1", own, secret)
    assert psutil.Process().num_fds() == before


@needs_landlock
def test_whoever_starts_it_stays_free(own: Path, secret: Path) -> None:
    assert not tried(f"open({str(secret)!r})", own)
    assert secret.read_text() == "secret"
    (secret.parent / "new").write_text("x")


def test_paths_that_are_not_there_grant_nothing(own: Path, tmp_path: Path) -> None:
    assert there(("", str(tmp_path / "gone"), str(own))) == (own,)
    if shuts():
        assert tried("1", own, tmp_path / "gone", tmp_path / "gone" / "further")


@needs_landlock
def test_nothing_is_sent_anywhere(own: Path) -> None:
    """Since the fourth version of the interface (Linux 6.7)."""
    if enclosure._version() < 4:
        pytest.skip("this kernel leaves the network open")
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        listening.listen()
        place = listening.getsockname()
        code = f"import socket; socket.create_connection({place!r}, 5)"
        assert tried(code, own, shut=False)
        assert not tried(code, own)
