"""A template's time is limited, and whoever exceeds it is named."""

import signal
import threading
import time
from contextlib import suppress

import pytest

from probgen.input.fault import InputError
from probgen.problem.time_limit import within


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


def test_one_limit_within_another() -> None:
    def work() -> None:
        with within(0.2, "outer.toml", "reading it"):
            for _ in range(100):
                with within(5.0, "inner.toml", "solving it"):
                    spin(0.01)
            spin(5.0)

    with pytest.raises(InputError, match="outer"):
        work()


def test_other_threads_have_none() -> None:
    done = []

    def work() -> None:
        with within(0.01, "a.toml", "solving it"):
            spin(0.05)
        done.append(True)

    thread = threading.Thread(target=work)
    thread.start()
    thread.join()
    assert done == [True]
