"""The folder of a new bank."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.bank.bank_folder import BANK_FILE, TEMPLATES
from probgen.bank.release import NAME
from probgen.course.file_name import file_name
from probgen.input.fault import Fault, InputError
from probgen.input.file import require_nameable, write_beside
from probgen.input.text import is_seen, unfit

_HEAD: Final = """# A bank of statics problems.  Keep this folder in your version control, whole.
id = {id}                         # what releases and uses call it
name = {name}                     # as catalogues have it
keeper = "who answers for it"

# What its templates may teach: each template's own goals are taken from this list.
goals = [
    "torque balance about a joint",
    "force balance of a particle",
    "direction of a hinge force",
]

# own_approval = true             # who wrote a template may approve it: a bank that one keeps alone
"""
_MERGES: Final = "reviews.csv merge=union\nuses/*.csv merge=union\n"
"""For git: rows that two branches have added stay both."""


@dataclass(frozen=True, slots=True)
class NewBank:
    """A bank that was begun in a folder."""

    folder: Path

    @property
    def file(self) -> Path:
        return self.folder / BANK_FILE

    @property
    def merges(self) -> Path:
        return self.folder / ".gitattributes"

    @property
    def templates(self) -> Path:
        return self.folder / TEMPLATES


def write_bank(folder: Path) -> NewBank:
    """Makes what a bank begins with.  Raises InputError where a bank or a file is there already."""
    require_nameable(folder, "folder of a bank")
    bank = NewBank(folder)
    if bank.file.exists():
        mend = "edit what is there, or name another folder"
        raise InputError([Fault(str(folder), "", "a bank", "a folder that is none yet", mend)])
    if folder.exists() and not folder.is_dir():
        expected = "the path of a folder, which may be there or not"
        raise InputError([Fault(str(folder), "", "a file", expected, "take another name")])
    own = folder.resolve().name
    name = own if is_seen(own) and not unfit(own) else "Statics problems"
    id = file_name(own, own_script=False)
    head = _HEAD.format(
        id=json.dumps(id if NAME.fullmatch(id) else "statics"),
        name=json.dumps(name, ensure_ascii=False),
    )
    bank.templates.mkdir(parents=True, exist_ok=True)
    write_beside(bank.file, head.encode())
    if not bank.merges.exists():
        write_beside(bank.merges, _MERGES.encode())
    return bank
