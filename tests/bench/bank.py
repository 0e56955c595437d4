"""A large bank: what is found, compared and checked in it, and a catalogue of 80 templates."""

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

TEMPLATES = 2000
ROWS = 200_000
FILES = 100
CHANGED = 20
CARDS = 80
DAY = date(2017, 9, 1)


def bench(folder: Path) -> None:
    bank = large_bank(folder / "large", TEMPLATES)
    note(bank, ROWS)
    first = seconds(lambda: run(folder, "find", str(bank), "--goal", "friction"))
    at_most(f"find-first-in-{TEMPLATES}", first / TEMPLATES, 0.1, "s a template")
    wanted = ("--goal", "friction", "--not-used-since", "2024-01-01", "--easier-than", "0.3")
    at_most("find-again", seconds(lambda: run(folder, "find", str(bank), *wanted), 3), 1.0, "s")
    other = large_bank(folder / "other", TEMPLATES, CHANGED)
    taken = seconds(lambda: run(folder, "compare", str(bank), str(other)))
    at_most(f"compare-{CHANGED}-of-{TEMPLATES}", taken, 10.0, "s")
    some = large_bank(folder / "some", CARDS)
    taken = seconds(lambda: run(folder, "catalogue", str(some), "--out", str(folder)))
    at_most(f"catalogue-of-{CARDS}", taken, 60.0, "s")
    at_first = seconds(lambda: run(folder, "check", str(some), "--draws", "200"))
    changed = sorted((some / "templates").glob("*/r1.toml"))[0]
    changed.write_text(changed.read_text("utf-8") + "# changed\n", "utf-8")
    again = seconds(lambda: run(folder, "check", str(some), "--draws", "200"))
    at_most(f"check-1-of-{CARDS}-beside-all", again / at_first, 0.2)


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
