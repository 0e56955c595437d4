"""The same work by processes of this machine and by a cluster; what is told when either fails."""

import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

import psutil
import pytest

from probgen.build import workers
from probgen.build.workers import Crew
from probgen.input.outside import OutsideError

SLOW_WORK = """
import os, sys, time
from pathlib import Path
from probgen.build.workers import Crew

def sleep(folder):
    Path(folder, str(os.getpid())).touch()
    time.sleep(60)

list(Crew(2).each(sleep, [(sys.argv[1],)] * 4, 4))
"""


def squared(number: int) -> int:
    return number * number


def killed_at_three(number: int) -> int:
    if number == 3:
        os.kill(os.getpid(), signal.SIGKILL)
    return number


def await_(holds: Callable[[], bool], seconds: float = 20.0) -> bool:
    end = time.monotonic() + seconds
    while not holds() and time.monotonic() < end:
        time.sleep(0.05)
    return holds()


@pytest.mark.parametrize("workers", [1, 2])
def test_every_task_is_done_once(workers: int) -> None:
    done = Crew(workers).each(squared, ((number,) for number in range(20)), 20)
    assert sorted(done) == [number * number for number in range(20)]


def test_tasks_are_taken_as_needed() -> None:
    taken: list[int] = []

    def tasks() -> Iterator[tuple[int]]:
        for number in range(500):
            taken.append(number)
            yield (number,)

    with closing(Crew(1).each(squared, tasks(), 20)) as done:
        next(done)
        assert len(taken) < 100


def test_a_worker_killed_by_the_system_is_told() -> None:
    with pytest.raises(OutsideError, match="worker process was killed") as caught:
        list(Crew(2).each(killed_at_three, ((number,) for number in range(8)), 8))
    assert "fewer workers" in caught.value.mend


def test_workers_end_when_the_process_they_work_for_is_killed(tmp_path: Path) -> None:
    program = tmp_path / "slow_work.py"
    program.write_text(SLOW_WORK)
    pids = tmp_path / "pids"
    pids.mkdir()
    with subprocess.Popen([sys.executable, program, pids]) as boss:
        assert await_(lambda: len(list(pids.iterdir())) == 2)
        boss.kill()
    workers = [int(path.name) for path in pids.iterdir()]
    assert await_(lambda: not any(psutil.pid_exists(pid) for pid in workers), 10.0)


def test_no_cluster_is_told_with_the_mend(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(workers, "_ANSWER_SECONDS", 0.5)
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))  # bound, so nobody else listens there
        address = f"tcp://127.0.0.1:{taken.getsockname()[1]}"
        with pytest.raises(OutsideError, match="no scheduler answers") as caught:
            list(Crew(cluster=address).each(squared, [(1,)], 1))
    assert "dask scheduler" in caught.value.mend
