"""The processes that work on a class: on this machine, or on the machines of a Dask cluster."""

from __future__ import annotations

import os
import signal
import threading
import time
import warnings
from collections.abc import Callable, Generator, Iterable, Iterator
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any, Final, TypeVar

from joblib import Parallel, delayed, parallel_config

from probgen import __version__
from probgen.input.outside import OutsideError
from probgen.press.engine import engine, engine_version
from probgen.press.lualatex import fast_scripts

_WATCH_SECONDS: Final = 1.0
_ANSWER_SECONDS: Final = 10.0
_SAFE_PATH: Final = "PYTHONSAFEPATH"

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Crew:
    """workers: processes at a time, as many as there are cores (all of a cluster's) for None.

    cluster: the address of a Dask scheduler, "tcp://HOST:PORT", empty for this machine.
    """

    workers: int | None = None
    cluster: str = ""

    def each(
        self, do: Callable[..., T], tasks: Iterable[tuple[Any, ...]], count: int
    ) -> Generator[T, None, None]:
        """What `do` returns for each task's arguments, in the order in which they get done.

        count: of tasks; there are no more processes than that, nor than cores. Tasks are taken only
        as they are needed. Raises what `do` raises, and OutsideError when a worker is lost or the
        cluster does not answer; the other workers are then stopped.
        """
        with self._place(count) as jobs, _safe_path(), warnings.catch_warnings():
            # When one task fails the others are cancelled, which is as it should be.
            warnings.filterwarnings("ignore", message=".*have been cancelled")
            # max_nbytes: large arrays would else be pickled into files that other users can read.
            run: Any = Parallel(
                jobs, return_as="generator_unordered", batch_size=1, max_nbytes=None
            )
            do = do if self.cluster or jobs == 1 else _Watched(do, os.getpid())
            try:
                with _interrupts_ignored():  # the workers, begun here, leave Ctrl-C to this process
                    results = run(delayed(do)(*task) for task in tasks)
                yield from results
            except BrokenProcessPool:
                raise OutsideError(
                    "a worker process was killed, most likely because memory ran out",
                    "try again with fewer workers: each needs memory of its own",
                ) from None

    def processes(self, count: int) -> int:
        """How many of this machine there are for so many tasks."""
        cores = os.cpu_count() or 1
        return max(1, min(self.workers or cores, cores, count))

    @contextmanager
    def _place(self, count: int) -> Iterator[int]:
        """Where the tasks are run, and how many at a time."""
        if not self.cluster:
            yield self.processes(count)
            return
        configured: Any = parallel_config
        with _connected(self.cluster) as client, configured(backend="dask"):
            yield self.workers or sum(client.ncores().values())


@contextmanager
def ended_like_interrupts() -> Iterator[None]:
    """SIGTERM and SIGHUP end the block as Ctrl-C does: workers stop, and what is done is told."""
    names = ("SIGTERM", "SIGHUP")
    caught = [getattr(signal, name) for name in names if hasattr(signal, name)]
    if threading.current_thread() is not threading.main_thread():
        yield  # signals are the main thread's business
        return
    usual = {number: signal.signal(number, _interrupt) for number in caught}
    try:
        yield
    finally:
        for number, handler in usual.items():
            signal.signal(number, handler)


def _interrupt(number: int, frame: object) -> None:
    raise KeyboardInterrupt(signal.Signals(number).name)


@contextmanager
def _safe_path() -> Iterator[None]:
    """Workers begun meanwhile import nothing from the folder that the build was started in.

    They are started as `python -c`, for which that folder comes before Python's own: a random.py
    in it, beside somebody's class list, would be run.
    """
    usual = os.environ.get(_SAFE_PATH)
    os.environ[_SAFE_PATH] = "1"
    try:
        yield
    finally:
        if usual is None:
            del os.environ[_SAFE_PATH]
        else:
            os.environ[_SAFE_PATH] = usual


@contextmanager
def _interrupts_ignored() -> Iterator[None]:
    """Ctrl-C has no effect, nor on processes that are started meanwhile, as long as they live."""
    if threading.current_thread() is not threading.main_thread():
        yield  # signals are the main thread's business
        return
    usual = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, usual)


@dataclass(frozen=True, slots=True)
class _Watched:
    """A task of a worker process, which ends itself when the process it works for is gone."""

    do: Callable[..., Any]
    boss: int

    def __call__(self, *arguments: object) -> Any:
        if not any(thread.name == _Watched.__name__ for thread in threading.enumerate()):
            watch = threading.Thread(target=self._watch, name=_Watched.__name__, daemon=True)
            watch.start()
        return self.do(*arguments)

    def _watch(self) -> None:
        while os.getppid() == self.boss:
            time.sleep(_WATCH_SECONDS)
        os._exit(1)


@contextmanager
def _connected(address: str) -> Iterator[Any]:
    """A client of the cluster, whose machines all print as this one does."""
    try:
        import distributed
    except ImportError:
        mend = 'install it: pip install "probgen[cluster]"'
        raise OutsideError("a cluster needs the package distributed", mend) from None
    connect: Any = distributed.Client
    try:
        client = connect(address, timeout=_ANSWER_SECONDS)
    except (OSError, ValueError) as error:
        mend = "start one (dask scheduler), or correct the address: tcp://HOST:PORT"
        raise OutsideError(f"no scheduler answers at {address}: {error}", mend) from None
    with client:
        _require_like(client, address)
        try:
            yield client
        except distributed.KilledWorker as error:
            mend = "see the log of that worker; memory may have run out there"
            raise OutsideError(f"a worker of the cluster was lost: {error}", mend) from None


def _require_like(client: Any, address: str) -> None:
    """Raises OutsideError unless every worker has this probgen and this TeX: bytes would differ."""
    there = client.run(_press)
    if not there:
        mend = f"start one: dask worker {address}"
        raise OutsideError("the cluster has no workers", mend)
    here = _press()
    for worker, press in there.items():
        if press != here:
            mend = "install the same probgen and TeX on all machines of the cluster"
            raise OutsideError(f"{worker} has {press}, this machine {here}", mend)


def _press() -> str:
    tex = " ".join(engine_version(engine()).split()[:2])
    return f"probgen {__version__}, {tex}, fonts for {', '.join(sorted(fast_scripts()))}"
