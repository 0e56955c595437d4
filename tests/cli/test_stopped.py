"""Builds killed and interrupted at any moment, finished by the same command; and on a cluster."""

import json
import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import psutil
import pytest

from probgen.course.secret import SECRET
from tests.cli.conftest import FilesIn

ROSTER = "name,id\n" + "".join(f"Student {n},{n}\n" for n in range(1, 19))


@pytest.fixture(scope="module")
def undisturbed(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, float]:
    """An undisturbed build of a class of eighteen, and the seconds it took."""
    folder = tmp_path_factory.mktemp("undisturbed")
    start = time.monotonic()
    finish(folder)
    return folder / "class", time.monotonic() - start


def begin(folder: Path, *more: str) -> "subprocess.Popen[str]":
    """Starts the build in a process group of its own, as a shell does."""
    (folder / "class.csv").write_text(ROSTER)
    (folder / SECRET).write_text("0123456789abcdef" * 2)
    (folder / SECRET).chmod(0o600)
    (folder / "assignment.toml").write_text(
        'course = "M"\ntitle = "W"\nroster = "class.csv"\nseed = "spring term, section 2"\n'
        '[[problem]]\ntemplate = "forearm-load"\npoints = 1\n'
    )
    words = ["-m", "probgen", "build", "assignment.toml", "--out", "class", "--workers", "2", *more]
    with ctrl_c_heard():
        return subprocess.Popen(
            [sys.executable, *words],
            cwd=folder, text=True, stderr=subprocess.PIPE, start_new_session=True,
        )  # fmt: skip


@contextmanager
def ctrl_c_heard() -> Iterator[None]:
    """What is started here hears Ctrl-C also where the tests run in a shell's background.

    A shell lets its background jobs ignore it, and a program passes on what it ignores.
    """
    usual = signal.signal(signal.SIGINT, signal.default_int_handler)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, usual)


def finish(folder: Path) -> None:
    with begin(folder) as build:
        _, told = build.communicate()
        assert build.returncode == 0, told


def require_same(folder: Path, whole: Path, files_in: FilesIn) -> None:
    assert files_in(folder / "class") == files_in(whole)
    left = {entry.name for entry in folder.iterdir()}
    assert left == {"class", "class.csv", "assignment.toml", SECRET}


def kill_at(folder: Path, seconds: float) -> None:
    with begin(folder) as build:
        time.sleep(seconds)
        build.kill()


@pytest.mark.proof
def test_killed_three_times_in_a_row(
    undisturbed: tuple[Path, float], files_in: FilesIn, tmp_path: Path
) -> None:
    whole, seconds = undisturbed
    moments = random.Random(5)
    for _ in range(3):
        kill_at(tmp_path, moments.uniform(0.3, 0.95) * seconds)
    finish(tmp_path)
    require_same(tmp_path, whole, files_in)


@pytest.mark.proof
@pytest.mark.parametrize("part", [random.Random(place).random() for place in range(20)])
def test_killed_at_a_random_moment(
    part: float, undisturbed: tuple[Path, float], files_in: FilesIn, tmp_path: Path
) -> None:
    whole, seconds = undisturbed
    kill_at(tmp_path, part * seconds)
    finish(tmp_path)
    require_same(tmp_path, whole, files_in)


def interrupted(folder: Path, seconds: float) -> tuple[int, str]:
    """Ctrl-C pressed at a build's first chunk: how it ends, and what it tells.

    It ends within 5 s, or, on a busy machine, within half of the seconds an undisturbed one takes.
    """
    with begin(folder) as build:
        while build.poll() is None and not list(folder.glob(".class.part/whole/.pieces/*.json")):
            time.sleep(0.01)
        os.killpg(build.pid, signal.SIGINT)
        pressed = time.monotonic()
        _, told = build.communicate()
        assert time.monotonic() - pressed < max(5.0, seconds / 2)
    return build.returncode, told


def test_ctrl_c_stops_at_once_and_says_how_to_go_on(
    undisturbed: tuple[Path, float], files_in: FilesIn, tmp_path: Path
) -> None:
    for attempt in range(5):  # on a busy machine a build may end before the key is pressed
        (folder := tmp_path / str(attempt)).mkdir()
        code, told = interrupted(folder, undisturbed[1])
        if code:
            break
    assert code == 130
    assert "of 18 students are printed and kept; the same command goes on from there" in told
    assert "Traceback" not in told
    assert not (folder / "class").exists()
    finish(folder)
    require_same(folder, undisturbed[0], files_in)


@pytest.mark.proof
@pytest.mark.parametrize("part", [0.005, 0.02, 0.1, 0.3, 0.45, 0.5, 0.55, 0.6, 0.8])
def test_ended_by_the_system_at_any_moment(
    part: float, undisturbed: tuple[Path, float], files_in: FilesIn, tmp_path: Path
) -> None:
    """SIGTERM, also before Python is up and while workers are started: no process outlives it."""
    whole, seconds = undisturbed
    with begin(tmp_path) as build:
        time.sleep(part * seconds)
        own = psutil.Process(build.pid).children(recursive=True) if build.poll() is None else []
        build.terminate()
        _, told = build.communicate(timeout=30.0)
    assert build.returncode in (0, 130, -signal.SIGTERM)
    assert "Traceback" not in told
    assert psutil.wait_procs(own, timeout=10.0)[1] == []
    finish(tmp_path)
    require_same(tmp_path, whole, files_in)


@pytest.fixture
def cluster(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The address of a scheduler on this machine that has two worker processes."""
    pytest.importorskip("distributed")
    place = tmp_path_factory.mktemp("cluster") / "scheduler.json"
    common = ["--scheduler-file", str(place), "--no-dashboard"]
    worker = ["dask_worker", *common, "--nthreads", "1", "--no-nanny", "--host", "127.0.0.1"]
    scheduler = ["dask_scheduler", *common, "--host", "127.0.0.1", "--port", "0"]
    started = [
        subprocess.Popen(
            [sys.executable, "-m", f"distributed.cli.{program}", *words],
            cwd=place.parent, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )
        for program, *words in (scheduler, worker, worker)
    ]  # fmt: skip
    try:
        yield _address(place)
    finally:
        for process in reversed(started):
            process.terminate()
            process.wait()


def _address(place: Path) -> str:
    """The scheduler's address, once both workers have come to it."""
    from distributed import Client

    end = time.monotonic() + 30.0
    while not place.is_file() or not place.read_text():
        assert time.monotonic() < end
        time.sleep(0.05)
    address = str(json.loads(place.read_text())["address"])
    with Client(address, set_as_default=False) as client:
        client.wait_for_workers(2, timeout=30.0)
    return address


def test_a_cluster_gives_the_same_bytes(
    undisturbed: tuple[Path, float], files_in: FilesIn, cluster: str, tmp_path: Path
) -> None:
    with begin(tmp_path, "--cluster", cluster) as build:
        _, told = build.communicate()
    assert build.returncode == 0, told
    require_same(tmp_path, undisturbed[0], files_in)
