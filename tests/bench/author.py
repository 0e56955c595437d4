"""An author's round trip: a template is changed, and its sheet and key are seen as PDF."""

import subprocess
import sys
from pathlib import Path

from probgen.problem.catalogue import read_catalogue
from tests.bench.line import at_most, seconds
from tests.bench.school import School, of_different_families

_TIMES = 3


def bench(school: School) -> None:
    id = of_different_families()[0]
    source = next(Path(entry.path) for entry in read_catalogue() if entry.id == id)
    own = school.folder / "own.toml"
    text = source.read_text(encoding="utf-8").replace(f'id = "{id}"', 'id = "own"')
    changes = iter(range(100))

    def round_trip() -> None:
        own.write_text(f"{text}\n# change {next(changes)}\n", encoding="utf-8")
        words = ["work", str(own), "--pdf", str(school.folder / "own.pdf")]
        command = [sys.executable, "-m", "probgen", *words]
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL)

    round_trip()  # dumps the format
    at_most("author-round-trip", seconds(round_trip, _TIMES), 1.0, "s")
