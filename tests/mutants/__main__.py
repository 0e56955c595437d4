"""How many breaks of the code its tests notice: `make mutants`.

    ROOM=bank SEED=3 COUNT=40 JOBS=1 make mutants

Each break is made in a copy of the project; the module's own test file is run, mypy is asked as
`make test` asks it, then those tests of its room, and of other rooms that guard it
(`trial.GUARDS`), are run which run the broken function.  What nobody notices is listed.
Ends with 1 where fewer than AIM are noticed, with 2 where nothing was measured.
"""

from __future__ import annotations

import os
import sys
import tempfile
import time
from collections import defaultdict
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor, as_completed
from pathlib import Path
from queue import SimpleQueue
from threading import Lock
from typing import Final

from tests.mutants.reach import Reach, keep, kept
from tests.mutants.sample import Site, sample, sites
from tests.mutants.trial import GUARD, OUT_OF_TIME, OWN, ROOM, TYPES, Copy, Trial

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
        copies = [Copy(Path(name, str(job))) for job in range(jobs)]
        reaches = Reaches()
        trials = _run(chosen, copies, reaches)
        if not all(copy.is_sound(reaches.found) for copy in copies):
            print("tests fail on sound code by now: what was noticed may be that alone")
            return 2
    noticed = [trial for trial in trials if trial.noticed_by]
    for each in sorted({trial.module.room for trial in trials}):
        own = [trial for trial in trials if trial.module.room == each]
        print(f"  {each}: {sum(bool(trial.noticed_by) for trial in own)} of {len(own)}")
    for stage in (OWN, TYPES, ROOM, GUARD):
        print(f"{sum(trial.noticed_by == stage for trial in trials)} by {stage}")
    print(f"{sum(trial.how == OUT_OF_TIME for trial in trials)} because tests did not end")
    print(f"{time.monotonic() - began:.0f} s")
    print(f"mutants: {len(noticed)} of {len(trials)} noticed")
    return int(len(noticed) < AIM * len(trials))


def _run(chosen: Sequence[Site], copies: Sequence[Copy], reaches: Reaches) -> list[Trial]:
    """Each break tried on a copy that is free."""
    free: SimpleQueue[Copy] = SimpleQueue()
    for copy in copies:
        free.put(copy)

    def tried(site: Site) -> Trial:
        copy = free.get()
        try:
            return copy.tried(*site, lambda test: reaches.of(test, copy))
        finally:
            free.put(copy)

    trials: list[Trial] = []
    with ThreadPoolExecutor(len(copies)) as pool:
        for done in as_completed([pool.submit(tried, site) for site in chosen]):
            trials.append(done.result())
            _tell(trials[-1])
    return trials


class Reaches:
    """What test files reach, as kept from before or measured where it is first asked for."""

    def __init__(self) -> None:
        self.found: dict[Path, Reach] = {}
        self._measuring: defaultdict[Path, Lock] = defaultdict(Lock)

    def of(self, test: Path, copy: Copy) -> Reach:
        with self._measuring[test]:  # by one who asks; the others wait for it
            if test not in self.found:
                self.found[test] = self._measured(test, copy)
            return self.found[test]

    def _measured(self, test: Path, copy: Copy) -> Reach:
        found = kept(test) or copy.reach(test)
        if found.passes:
            keep(test, found)
        else:
            print(f"{test}: fails on sound code, so that it notices nothing", flush=True)
        return found


def _tell(trial: Trial) -> None:
    """A break that nobody noticed, a line as an editor finds it."""
    if not trial.noticed_by:
        old, new = (" ".join(text.split()) for text in (trial.change.old, trial.change.new))
        place = f"{trial.module.path}:{trial.change.line}"
        print(f"{place}: {trial.change.kind}: {old}  ->  {new}", flush=True)


if __name__ == "__main__":
    sys.exit(main())
