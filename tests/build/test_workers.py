"""The same work by processes of this machine and by a cluster; what is told when either fails."""

import os
import signal
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

import numpy as np
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


def kind_of(array: object) -> str:
    return type(array).__name__


def watches(_: int) -> int:
    return sum(thread.name == "_Watched" for thread in threading.enumerate())


def test_a_worker_watches_the_process_it_works_for_once() -> None:
    assert set(Crew(2).each(watches, ((number,) for number in range(8)), 8)) == {1}


def test_a_worker_looks_now_and_then_and_ends_when_the_process_it_works_for_is_gone(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    told: list[object] = []
    parents = iter([7, 7, 1])
    monkeypatch.setattr(os, "getppid", lambda: next(parents))
    monkeypatch.setattr(os, "_exit", lambda code: told.append(("ends", code)))
    monkeypatch.setattr(time, "sleep", lambda seconds: told.append(seconds > 0.05))
    workers._Watched(print, 7)._watch()
    assert told == [True, True, ("ends", 1)]


def test_large_arrays_are_no_files() -> None:
    """joblib would pickle them into a folder that others can read, and map that."""
    large = np.zeros(1_000_000)
    assert set(Crew(2).each(kind_of, [(large,)] * 2, 2)) == {"ndarray"}


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


@pytest.mark.parametrize(
    ("wanted", "tasks", "jobs"),
    [(None, 10, 4), (8, 10, 4), (3, 10, 3), (None, 2, 2), (3, 1, 1), (None, 0, 1)],
)
def test_no_more_processes_than_asked_for_than_cores_or_than_tasks(
    monkeypatch: pytest.MonkeyPatch, wanted: int | None, tasks: int, jobs: int
) -> None:
    monkeypatch.setattr(os, "cpu_count", lambda: 4)
    with Crew(wanted)._place(tasks) as found:
        assert found == jobs
    monkeypatch.setattr(os, "cpu_count", lambda: None)  # where nobody knows
    with Crew(wanted)._place(tasks) as found:
        assert found == 1


class Cluster:
    """A cluster's client, as far as it is asked what its workers print with."""

    def __init__(self, **presses: str) -> None:
        self.presses = presses

    def run(self, _: Callable[[], str]) -> dict[str, str]:
        return self.presses


def test_all_machines_of_a_cluster_print_alike() -> None:
    here = workers._press()
    workers._require_like(Cluster(one=here, two=here), "tcp://there:1")
    with pytest.raises(OutsideError, match="no workers") as caught:
        workers._require_like(Cluster(), "tcp://there:1")
    assert "dask worker tcp://there:1" in caught.value.mend
    with pytest.raises(OutsideError, match="two has another press"):
        workers._require_like(Cluster(one=here, two="another press"), "tcp://there:1")


@pytest.mark.parametrize("name", ["SIGTERM", "SIGHUP"])
def test_signals_end_the_work_as_ctrl_c_does_and_only_it(name: str) -> None:
    number = getattr(signal, name)
    usual = signal.getsignal(number)
    with pytest.raises(KeyboardInterrupt, match=name), workers.ended_like_interrupts():
        signal.raise_signal(number)
    assert signal.getsignal(number) is usual
    with workers.ended_like_interrupts():
        assert signal.getsignal(number) is not usual
    assert signal.getsignal(number) is usual


def test_ctrl_c_is_left_alone_while_workers_are_started() -> None:
    usual = signal.getsignal(signal.SIGINT)
    with workers._interrupts_ignored():
        assert signal.getsignal(signal.SIGINT) is signal.SIG_IGN
        signal.raise_signal(signal.SIGINT)
    assert signal.getsignal(signal.SIGINT) is usual


def test_signals_are_the_main_threads_business() -> None:
    """Another thread may not set what is done with them, and does its work all the same."""
    done: list[object] = []

    def work() -> None:
        with workers.ended_like_interrupts(), workers._interrupts_ignored():
            done.append(signal.getsignal(signal.SIGTERM))

    usual = signal.getsignal(signal.SIGTERM)
    thread = threading.Thread(target=work)
    thread.start()
    thread.join()
    assert done == [usual]
