"""How many breaks of the code its tests notice: `make mutants`.

    ROOM=bank SEED=3 COUNT=40 JOBS=1 make mutants

Each break is made in a copy of the project; the module's own test file is run, then the tests of
its room, then those of other rooms that guard it (`trial.GUARDS`).  What nobody notices is listed.
Ends with 1 where fewer than AIM are noticed.
"""

from __future__ import annotations

import os
import sys
import tempfile
import time
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor, as_completed
from pathlib import Path
from queue import SimpleQueue
from typing import Final

from tests.mutants.sample import Site, sample, sites
from tests.mutants.trial import OUT_OF_TIME, Copy, Limits, Trial

AIM: Final = 0.95


def main() -> int:
    room, seed = os.environ.get("ROOM", ""), os.environ.get("SEED", "1")
    count = int(os.environ.get("COUNT", "160"))
    jobs = int(os.environ.get("JOBS", str(os.cpu_count() or 1)))
    found = [site for site in sites() if room in ("", site[0].room)]
    if not found:
        print(f"no room {room!r} in probgen/")
        return 2
    chosen = sample(found, count, seed)
    print(f"{len(chosen)} of {len(found)} breaks, seed {seed}, {jobs} at a time", flush=True)
    began = time.monotonic()
    with tempfile.TemporaryDirectory(prefix="probgen-mutants-") as name:
        trials = _run(chosen, [Copy(Path(name, str(job))) for job in range(jobs)])
    noticed = [trial for trial in trials if trial.noticed_by]
    for each in sorted({trial.module.room for trial in trials}):
        own = [trial for trial in trials if trial.module.room == each]
        print(f"  {each}: {sum(bool(trial.noticed_by) for trial in own)} of {len(own)}")
    by_own = sum(trial.noticed_by == str(trial.module.own_tests) for trial in trials)
    slow = sum(trial.how == OUT_OF_TIME for trial in trials)
    print(f"{by_own} by the module's own test file, {slow} because tests did not end")
    print(f"{time.monotonic() - began:.0f} s")
    print(f"mutants: {len(noticed)} of {len(trials)} noticed")
    return int(len(noticed) < AIM * len(trials))


def _run(chosen: Sequence[Site], copies: Sequence[Copy]) -> list[Trial]:
    free: SimpleQueue[Copy] = SimpleQueue()
    for copy in copies:
        free.put(copy)
    limits = Limits()

    def attempt(site: Site) -> Trial:
        copy = free.get()
        try:
            return copy.tried(*site, limits)
        finally:
            free.put(copy)

    with ThreadPoolExecutor(len(copies)) as pool:
        trials: list[Trial] = []
        for done in as_completed([pool.submit(attempt, site) for site in chosen]):
            trials.append(done.result())
            _tell(trials[-1])
    return trials


def _tell(trial: Trial) -> None:
    """A break that nobody noticed, a line as an editor finds it."""
    if not trial.noticed_by:
        old, new = (" ".join(text.split()) for text in (trial.change.old, trial.change.new))
        place = f"{trial.module.path}:{trial.change.line}"
        print(f"{place}: {trial.change.kind}: {old}  ->  {new}", flush=True)


if __name__ == "__main__":
    sys.exit(main())
