"""`make fuzz`: spoilt inputs of every kind, and what the program does with them.

    python -m tests.fuzz --kinds templates,records --seconds 60 --count 10000 --seed one

Prints, for each kind, how many were tried, taken and refused; then every distinct defect, with the
number of an input that shows it.  Ends with exit code 1 when there is one.
"""

from __future__ import annotations

import argparse
import json
import os
import selectors
import subprocess
import sys
import time
from collections import Counter
from dataclasses import dataclass, field
from typing import Final

from tests.fuzz.kinds import TARGETS
from tests.fuzz.worker import SECONDS

_PATIENCE: Final = 12.0 * SECONDS
"""Seconds without a word from a worker, after which it is taken to hang where it hears no alarm.

By the wall's clock, on a machine that may be busy: the worker itself counts its processor time."""
_DEFECTS: Final = ("traceback", "inside", "hang", "memory", "died", "harness")


@dataclass
class Tally:
    """What came of one kind's inputs; shown: the numbers of those that show each defect."""

    ends: Counter[str] = field(default_factory=Counter)
    shown: dict[tuple[str, str], list[int]] = field(default_factory=dict)

    @property
    def tried(self) -> int:
        return sum(self.ends.values())

    def add(self, number: int, end: str, place: str) -> None:
        self.ends[end] += 1
        if end in _DEFECTS:
            self.shown.setdefault((end, place), []).append(number)


def fuzz(kind: str, seed: str, seconds: float, most: int, workers: int) -> Tally:
    """Tries inputs of one kind until the time or the count is over."""
    tally, until = Tally(), time.monotonic() + seconds
    with selectors.DefaultSelector() as selector:
        for place in range(workers):
            _start(selector, kind, seed, place, workers)
        while time.monotonic() < until and tally.tried < most:
            for key, _ in selector.select(timeout=1.0):
                _hear(selector, key.data, tally)
            for key in list(selector.get_map().values()):
                _watch(selector, key.data, tally)
        for key in list(selector.get_map().values()):
            key.data.process.kill()
            key.data.process.communicate()
    return tally


@dataclass
class _Worker:
    process: subprocess.Popen[str]
    kind: str
    seed: str
    number: int
    step: int
    heard: float


def _start(selector: selectors.BaseSelector, kind: str, seed: str, number: int, step: int) -> None:
    command = [sys.executable, "-m", "tests.fuzz.worker", kind, seed, str(number), str(step)]
    alone = {**os.environ, "OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1"}
    process = subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True, bufsize=1, env=alone
    )
    assert process.stdout is not None
    worker = _Worker(process, kind, seed, number, step, time.monotonic())
    selector.register(process.stdout, selectors.EVENT_READ, worker)


def _hear(selector: selectors.BaseSelector, worker: _Worker, tally: Tally) -> None:
    assert worker.process.stdout is not None
    line = worker.process.stdout.readline()
    worker.heard = time.monotonic()
    if not line:
        _again(selector, worker, tally, "died")
        return
    number, end, place = json.loads(line)
    worker.number = number
    if end != "begin":
        tally.add(number, end, place)


def _watch(selector: selectors.BaseSelector, worker: _Worker, tally: Tally) -> None:
    if time.monotonic() - worker.heard > _PATIENCE:
        _again(selector, worker, tally, "hang")


def _again(selector: selectors.BaseSelector, worker: _Worker, tally: Tally, end: str) -> None:
    """Another worker goes on behind the input that ended this one."""
    assert worker.process.stdout is not None
    selector.unregister(worker.process.stdout)
    worker.process.kill()
    worker.process.communicate()
    code = worker.process.returncode
    tally.add(worker.number, end, f"input {worker.number}, exit code {code}")
    _start(selector, worker.kind, worker.seed, worker.number + worker.step, worker.step)


def main() -> int:
    parser = argparse.ArgumentParser(prog="make fuzz")
    parser.add_argument("--kinds", default=",".join(TARGETS))
    parser.add_argument("--seconds", type=float, default=60.0, help="for each kind")
    parser.add_argument("--count", type=int, default=10**9, help="most inputs of each kind")
    parser.add_argument("--seed", default="fuzz")
    parser.add_argument("--workers", type=int, default=os.cpu_count() or 1)
    chosen = parser.parse_args()
    total, defects = Counter[str](), 0
    for kind in chosen.kinds.split(","):
        tally = fuzz(kind, chosen.seed, chosen.seconds, chosen.count, chosen.workers)
        total += tally.ends
        ends = ", ".join(f"{count} {end}" for end, count in sorted(tally.ends.items()))
        print(f"{kind:10} {tally.tried:7} inputs: {ends}", flush=True)
        for (end, place), numbers in sorted(tally.shown.items()):
            print(f"    {end} {place} ({len(numbers)} times, first input {numbers[0]})", flush=True)
        defects += len(tally.shown)
    wrong = ", ".join(f"{total[end]} {end}" for end in _DEFECTS)
    print(f"fuzz: {sum(total.values())} inputs, {wrong}; {defects} distinct")
    return 1 if defects else 0


if __name__ == "__main__":
    sys.exit(main())
