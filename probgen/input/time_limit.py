"""A limit to the time that one file from outside may take, told with its name.

In processor time of the thread, so that a busy machine refuses nothing; where the system has no
such clock there is no limit but those of the work itself.
"""

from __future__ import annotations

import ctypes
import signal
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Final, Protocol

from probgen.input.fault import Fault, InputError

_AGAIN: Final = 0.2
"""Seconds until it is said again, should nobody have heard."""
_MEND: Final = "split it into smaller ones, or take simpler expressions and requirements"


class _OverTimeError(BaseException):
    """No Exception: what fails is not the step that is just under way."""


@contextmanager
def within(
    seconds: float, file: str, doing: str, what: str = "problem", mend: str = _MEND
) -> Iterator[None]:
    """A block that ends within so many seconds of processor time.

    file: its path; doing: what is done to it ("solving it"); what: it describes; mend: what helps.
    Raises InputError when the time is over.
    """
    alarm = _alarm()
    try:
        alarm.set(seconds)
        try:
            yield
        finally:
            alarm.clear()
        if alarm.rung:  # where nobody heard it, as in a callback of the garbage collection
            raise _OverTimeError
    except _OverTimeError:
        alarm.clear()  # it may have rung just as it was cleared
        if not alarm.rung:
            raise
        expected = f"a {what} with {doing} done in {seconds:g} s; others take a hundredth of that"
        raise InputError([Fault(file, "", f"{doing} takes longer", expected, mend)]) from None


class _Alarm(Protocol):
    """Raises _OverTimeError in the thread that sets it when its time has come; rung: it did."""

    rung: bool

    def set(self, seconds: float) -> None: ...

    def clear(self) -> None: ...


def _alarm() -> _Alarm:
    if threading.current_thread() == threading.main_thread():
        return _Signal() if hasattr(signal, "setitimer") else _Silent()
    return _Watch() if hasattr(time, "pthread_getcpuclockid") else _Silent()


class _Silent:
    """Where there is no clock."""

    rung = False

    def set(self, seconds: float) -> None:
        pass

    def clear(self) -> None:
        pass


@dataclass(slots=True)
class _Signal:
    """For the first thread, which is the one to hear signals."""

    usual: signal.Handlers | object = signal.SIG_DFL
    before: tuple[float, float] = (0.0, 0.0)
    on: bool = False
    rung: bool = False

    def set(self, seconds: float) -> None:
        self.on = True
        self.usual = signal.signal(signal.SIGVTALRM, self._ring)
        self.before = signal.setitimer(signal.ITIMER_VIRTUAL, seconds, _AGAIN)

    def clear(self) -> None:
        self.on = False
        signal.setitimer(signal.ITIMER_VIRTUAL, *self.before)
        signal.signal(signal.SIGVTALRM, self.usual)  # type: ignore[arg-type]

    def _ring(self, *_: object) -> None:
        if self.on:
            self.rung = True
            raise _OverTimeError


@dataclass(slots=True)
class _Watch:
    """For any other thread, as of a cluster's worker: a thread beside it looks at its clock."""

    thread: int = field(default_factory=threading.get_ident)
    done: threading.Event = field(default_factory=threading.Event)
    rung: bool = False

    def set(self, seconds: float) -> None:
        clock = time.pthread_getcpuclockid(self.thread)
        until = time.clock_gettime(clock) + seconds
        threading.Thread(target=self._watch, args=(clock, until), daemon=True).start()

    def clear(self) -> None:
        self.done.set()
        self._raise(None)

    def _watch(self, clock: int, until: float) -> None:
        wait = until - time.clock_gettime(clock)
        while not self.done.wait(max(wait, 0.01)):
            wait = until - time.clock_gettime(clock)
            if wait <= 0 and not self.done.is_set():
                self.rung = True
                self._raise(_OverTimeError)
                wait = _AGAIN

    def _raise(self, error: type[BaseException] | None) -> None:
        raised = None if error is None else ctypes.py_object(error)
        ctypes.pythonapi.PyThreadState_SetAsyncExc(ctypes.c_ulong(self.thread), raised)
