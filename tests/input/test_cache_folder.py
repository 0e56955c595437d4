"""The cache folder: the user's own and nobody else's, or one for this process."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from probgen.input.cache_folder import cache_folder, cached_bytes


@pytest.fixture(autouse=True)
def base(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path / "cache"


def test_it_is_closed_to_others(base: Path) -> None:
    (base / "probgen").mkdir(parents=True, mode=0o777)
    (base / "probgen").chmod(0o777)
    folder = cache_folder("plans")
    assert folder == base / "probgen" / "plans"
    assert [path.stat().st_mode & 0o777 for path in (folder, folder.parent)] == [0o700] * 2


def test_a_folder_of_somebody_else_is_not_used(base: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (base / "probgen").mkdir(parents=True)
    monkeypatch.setattr(os, "geteuid", lambda: 12345)
    assert base not in cache_folder("plans").parents


def test_only_own_files_are_believed(base: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = cache_folder("plans") / "a"
    assert cached_bytes(path) is None
    path.write_bytes(b"mine")
    assert cached_bytes(path) == b"mine"
    (path.parent / "link").symlink_to(path)
    assert cached_bytes(path.parent / "link") is None
    path.chmod(0o666)
    assert cached_bytes(path) is None
    path.chmod(0o600)
    monkeypatch.setattr(os, "geteuid", lambda: 12345)
    assert cached_bytes(path) is None


def test_without_a_home_there_is_a_folder_for_this_process(tmp_path: Path) -> None:
    code = "from probgen.input.cache_folder import cache_folder as f\n"
    code += "print(f('a'), f('a').is_dir())"
    unknown = "import os, pwd\ndef none(uid): raise KeyError\npwd.getpwuid = none\n"
    run = subprocess.run(
        [sys.executable, "-c", unknown + code],
        env={"PATH": os.environ["PATH"], "TMPDIR": str(tmp_path), "PYTHONPATH": os.getcwd()},
        capture_output=True,
        text=True,
        check=True,
    )
    folder, made = run.stdout.split()
    assert made == "True"
    assert Path(folder).parent == tmp_path
    assert not Path(folder).exists()  # gone with its process
