"""The bank that a path, or the name of a release, stands for."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from probgen.bank.bank import Bank, plain_folder, read_choice
from probgen.bank.bank_folder import (
    BANK_FILE,
    RELEASES,
    bank_around,
    is_bank_folder,
    read_bank_folder,
)
from probgen.bank.release import NAME
from probgen.input.fault import Fault, InputError
from probgen.input.file import require_nameable
from probgen.input.toml import read_toml

_HEIGHT: Final = 4
"""Folders above an assignment's own that are looked through for banks: course, year, department."""


def read_bank(path: Path) -> Bank:
    """The bank in a folder or a TOML file.  Raises InputError, all faults at once."""
    require_nameable(path, "bank")
    if path.is_dir():
        if is_bank_folder(path):
            return read_bank_folder(path).newest()
        return plain_folder(path.name, path.name, path)
    if around := bank_around(path):
        return around.released(path.stem)
    if path.name == BANK_FILE and "template" not in read_toml(path, "bank"):
        return read_bank_folder(path.parent).newest()
    return read_choice(path)


def released_near(name: str, folder: Path, where: str, field: str) -> Bank | None:
    """The release of a name, of the nearest bank: in a folder, beside it, or beside one above.

    None where there is none; where, field: where it was named.  Raises InputError where two are
    equally near.
    """
    start = folder.resolve()
    for above in (start, *start.parents[:_HEIGHT]) if NAME.fullmatch(name) else ():
        found = [
            bank / RELEASES / f"{name}.toml"
            for bank in (above, *_folders_in(above))
            if is_bank_folder(bank) and (bank / RELEASES / f"{name}.toml").is_file()
        ]
        if len(found) > 1:
            expected, mend = "one release of a name", "give the path of the one you mean"
            listed = " and ".join(map(str, found))
            raise InputError([Fault(where, field, f"{name}, which is {listed}", expected, mend)])
        if found:
            return read_bank(found[0])
    return None


def _folders_in(folder: Path) -> list[Path]:
    try:
        return sorted(each for each in folder.iterdir() if each.is_dir())
    except OSError:  # one that others have closed holds no bank of ours
        return []
