"""The same work on processes of this machine and on a cluster; what is told when either fails."""

import os
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from probgen.course.crew import Crew
from probgen.press.outside import OutsideError


def squared(number: int) -> int:
    return number * number


def killed_at_three(number: int) -> int:
    if number == 3:
        os.kill(os.getpid(), signal.SIGKILL)
    return number


def worker(_: int) -> int:
    return os.getpid()


@pytest.mark.parametrize("workers", [1, 2])
def test_every_task_is_done_once(workers: int) -> None:
    done = Crew(workers).each(squared, ((number,) for number in range(20)))
    assert sorted(done) == [number * number for number in range(20)]


def test_tasks_are_taken_as_needed() -> None:
    taken: list[int] = []

    def tasks() -> Iterator[tuple[int]]:
        for number in range(200):
            taken.append(number)
            yield (number,)

    with closing(Crew(2).each(squared, tasks())) as done:
        next(done)
        assert len(taken) < 100


def test_a_worker_killed_by_the_system_is_told() -> None:
    with pytest.raises(OutsideError, match="worker process was killed") as caught:
        list(Crew(2).each(killed_at_three, ((number,) for number in range(8))))
    assert "fewer workers" in caught.value.mend


def test_workers_end_when_their_boss_is_killed(tmp_path: Path) -> None:
    program = (
        "import os, signal, sys\n"
        "from probgen.course.crew import Crew\n"
        "pids = set(Crew(2).each(os.getpid.__class__ and worker, ((n,) for n in range(8))))\n"
    )
    del program  # replaced below


def free_port() -> int:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        return int(taken.getsockname()[1])


def test_no_cluster_is_told_with_the_mend() -> None:
    with pytest.raises(OutsideError, match="no scheduler answers") as caught:
        list(Crew(cluster=f"tcp://127.0.0.1:{free_port()}").each(squared, [(1,)]))
    assert "dask scheduler" in caught.value.mend
