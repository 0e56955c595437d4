"""A limit to the time that one template may take, told with its name.

In processor time, so that a busy machine refuses nothing; where the system has no such clock, and
in other threads than the first, there is no limit but those of the work itself.
"""

from __future__ import annotations

import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Final

from probgen.input.fault import Fault, InputError

_AGAIN: Final = 0.2
"""Seconds until it is said again, should nobody have heard."""


class _OverTimeError(BaseException):
    """No Exception: what fails is not the step that is just under way."""


@contextmanager
def within(seconds: float, template: str, doing: str) -> Iterator[None]:
    """A block that ends within so many seconds of processor time.

    template: its path; doing: what is done to it ("solving it").  Raises InputError when the time
    is over.
    """
    if not hasattr(signal, "setitimer") or threading.current_thread() != threading.main_thread():
        yield
        return
    alarm = _Alarm()
    try:
        alarm.set(seconds)
        try:
            yield
        finally:
            alarm.clear()
    except _OverTimeError:
        expected = f"a problem with {doing} done in {seconds:g} s; others take a hundredth of that"
        mend = "split it into smaller ones, or take simpler expressions and requirements"
        found = f"{doing} takes longer"
        raise InputError([Fault(template, "", found, expected, mend)]) from None


@dataclass(slots=True)
class _Alarm:
    """Raises _OverTimeError in the first thread when its time has come."""

    usual: signal.Handlers | object = signal.SIG_DFL
    before: tuple[float, float] = (0.0, 0.0)
    on: bool = False

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
            raise _OverTimeError
