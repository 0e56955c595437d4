"""A large bank: what is found, compared, shown and checked in it.

A hundred rows of use a template; a hundredth of the templates is changed, and a part of them shown
and checked: of two thousand 80.
"""

import os
import re
import subprocess
import sys
from datetime import date, timedelta
from pathlib import Path

from probgen.bank.bank import default_bank
from probgen.bank.uses import HEADINGS, USES
from tests.banks import make_bank, put
from tests.bench.line import at_most, seconds

ROWS = 100
FILES = 100
CHANGED = 100
SHOWN = 25
DAY = date(2017, 9, 1)


def bench(folder: Path, templates: int) -> None:
    large, part = (
        large_bank(folder / "large", templates),
        large_bank(folder / "part", templates // SHOWN),
    )
    note(large, ROWS * templates)
    first = seconds(lambda: run(folder, "find", str(large), "--goal", "friction"))
    at_most(f"find-first-in-{templates}", first / templates, 0.1, "s a template")
    wanted = ("--goal", "friction", "--not-used-since", "2024-01-01", "--easier-than", "0.3")
    at_most(
        f"find-in-{templates}",
        seconds(lambda: run(folder, "find", str(large), *wanted), 3),
        1.0,
        "s",
    )
    changed = templates // CHANGED
    other = large_bank(folder / "other", templates, changed)
    taken = seconds(lambda: run(folder, "compare", str(large), str(other)))
    at_most(f"compare-{changed}-of-{templates}", taken, 10.0, "s")
    taken = seconds(lambda: run(folder, "catalogue", str(part), "--out", str(folder)))
    at_most(f"catalogue-of-{templates // SHOWN}", taken, 60.0, "s")
    check(folder, part)


def check(folder: Path, bank: Path) -> None:
    """All of a bank checked, and again where one template is other."""
    words = ("check", str(bank), "--draws", "200")
    at_first = seconds(lambda: run(folder, *words))
    changed = min((bank / "templates").glob("*/r1.toml"))
    changed.write_text(changed.read_text("utf-8") + "# changed\n", "utf-8")
    again = seconds(lambda: run(folder, *words))
    at_most("check-one-beside-all", again / at_first, 0.5)


def run(folder: Path, command: str, *words: str) -> None:
    """A command of `probgen bank` as somebody types it, with a cache of its own."""
    own = {**os.environ, "XDG_CACHE_HOME": str(folder / "cache")}
    whole = [sys.executable, "-m", "probgen", "bank", command, *words]
    subprocess.run(whole, check=True, env=own, stdout=subprocess.DEVNULL)


def large_bank(folder: Path, templates: int, changed: int = 0) -> Path:
    """A bank of the supplied templates, each again and again under another id; of the first some
    the physics, or else the words, are others.
    """
    bank, files = make_bank(folder, ()), list(default_bank().files.items())
    for place in range(templates):
        id, path = files[place % len(files)]
        own = f"{id}-{place}"
        text = re.sub(r"(?m)^id = .*$", f'id = "{own}"', path.read_text("utf-8"), count=1)
        if place < changed:
            text = re.sub(r"(?m)^(\w+) = \"(\w*mass)\"$", r'\1 = "2*\2"', text, count=1)
            text = text.replace('title = "', 'title = "The ')
        put(bank, own, 1, re.sub(r"(?m)^revision = .*$", "revision = 1", text))
    return bank


def note(bank: Path, rows: int) -> None:
    """Uses of ten years, in files of courses."""
    ids = sorted(path.name for path in (bank / "templates").iterdir())
    (bank / USES).mkdir()
    for file in range(FILES):
        lines = [",".join(HEADINGS)]
        for row in range(file, rows, FILES):
            day = DAY + timedelta(days=row * 3650 // rows)
            id, share = ids[row * 7919 % len(ids)], (row * 31 % 900 + 50) / 1000
            said = f"{day},Course {file},Set {row},homework,{id},1,{'0' * 64}"
            lines.append(f"{said},80,75,{share:.3f},sign: 9")
        (bank / USES / f"course-{file}.csv").write_text("\n".join(lines) + "\n", "utf-8")
