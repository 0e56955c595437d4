"""A template's time is limited, and whoever exceeds it is named."""

import signal
import threading
import time
from collections.abc import Callable
from contextlib import suppress

import pytest

from probgen.input.fault import InputError
from probgen.input.time_limit import within


def spin(seconds: float) -> None:
    """Takes so many seconds of processor time."""
    end = time.process_time() + seconds
    while time.process_time() < end:
        pass


def test_what_is_done_in_time_is_not_disturbed() -> None:
    before = signal.getsignal(signal.SIGVTALRM)
    with within(5.0, "a.toml", "solving it"):
        spin(0.01)
    assert signal.getsignal(signal.SIGVTALRM) == before
    assert signal.getitimer(signal.ITIMER_VIRTUAL) == (0.0, 0.0)


def test_what_takes_longer_is_named() -> None:
    with pytest.raises(InputError) as caught, within(0.05, "a.toml", "solving it"):
        spin(5.0)
    (fault,) = caught.value.faults
    assert (fault.file, fault.found) == ("a.toml", "solving it takes longer")
    assert "0.05 s" in fault.expected
    assert signal.getitimer(signal.ITIMER_VIRTUAL) == (0.0, 0.0)


def test_nobody_suppresses_it() -> None:
    def work() -> None:
        with within(0.05, "a.toml", "solving it"):
            while True:
                with suppress(Exception):
                    spin(5.0)

    with pytest.raises(InputError, match="takes longer"):
        work()


def test_who_did_not_hear_it_is_told_at_the_end() -> None:
    def work() -> None:
        with within(0.05, "a.toml", "solving it"), suppress(BaseException):
            spin(5.0)

    with pytest.raises(InputError, match="takes longer"):
        work()


def test_one_limit_within_another() -> None:
    def work() -> None:
        with within(0.2, "outer.toml", "reading it"):
            for _ in range(100):
                with within(5.0, "inner.toml", "solving it"):
                    spin(0.01)
            spin(5.0)

    with pytest.raises(InputError, match="outer"):
        work()


def in_a_thread(work: Callable[[], None]) -> list[str]:
    """What is told of some work done in a thread of its own; empty where it is done."""
    told: list[str] = []

    def run() -> None:
        try:
            work()
        except InputError as error:
            told.append(error.faults[0].file)

    thread = threading.Thread(target=run)
    thread.start()
    thread.join(timeout=20)
    assert not thread.is_alive()
    return told


def test_it_holds_in_other_threads() -> None:
    def endless() -> None:
        with within(0.05, "a.toml", "solving it"):
            while True:
                with suppress(Exception):
                    spin(0.01)

    def short() -> None:
        for _ in range(20):
            with within(5.0, "a.toml", "solving it"):
                spin(0.001)

    assert in_a_thread(endless) == ["a.toml"]
    assert in_a_thread(short) == []
    assert threading.main_thread().is_alive()


def test_what_looks_at_the_clock_keeps_no_process_from_its_end() -> None:
    watches: list[bool] = []

    def work() -> None:
        before = set(threading.enumerate())
        with within(5.0, "a.toml", "solving it"):
            watches.extend(each.daemon for each in set(threading.enumerate()) - before)

    assert in_a_thread(work) == []
    assert watches == [True]


def test_one_limit_within_another_in_other_threads() -> None:
    def work() -> None:
        with within(0.1, "outer.toml", "reading it"), within(5.0, "inner.toml", "solving it"):
            while True:
                spin(0.01)

    assert in_a_thread(work) == ["outer.toml"]
