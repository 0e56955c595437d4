"""The files of a department's bank: its own, its reviews, its releases, what was set from it."""

from __future__ import annotations

import atexit
import shutil
import tempfile
from datetime import date
from functools import cache, partial
from pathlib import Path

from probgen.bank.bank_folder import read_bank_folder
from probgen.bank.reviews import read_reviews
from probgen.bank.uses import Use, note_uses, read_uses
from tests.banks import make_bank, review, write_release
from tests.fuzz.target import Target

RELEASE = "statics-2027.1"
USE = Use(date(2027, 9, 3), "Mechanics", "Week 2", "homework", "forearm-load", 1, "ab", 120, 110,
          0.625, (("sign", 31), ("a + b", 2)))  # fmt: skip


@cache
def _bank() -> Path:
    """One with all files, made once for a process."""
    folder = tempfile.mkdtemp(prefix="probgen-fuzz-bank-")
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    bank = make_bank(Path(folder), ["forearm-load"])
    review(bank, "forearm-load", 1)
    write_release(bank, RELEASE, {"forearm-load": 1})
    note_uses(bank, [USE])
    return bank


def _good(name: str) -> tuple[bytes, ...]:
    return ((_bank() / name).read_bytes(),)


def _tried(name: str, content: bytes, folder: Path) -> None:
    own = folder / "bank"
    shutil.copytree(_bank(), own)
    (own / name).write_bytes(content)
    bank = read_bank_folder(own)
    read_reviews(bank)
    read_uses(own)
    for release in bank.releases:
        bank.released(release).read_all()


DEPARTMENTS = tuple(
    Target(kind, partial(_good, name), partial(_tried, name))
    for kind, name in (
        ("departments", "bank.toml"),
        ("reviews", "reviews.csv"),
        ("releases", f"releases/{RELEASE}.toml"),
        ("uses", "uses/mechanics.csv"),
    )
)
