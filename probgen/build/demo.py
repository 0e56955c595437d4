"""The demonstration class: the example, with a seed and a secret that all know."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from probgen.build.example import ROSTER, demo_assignment, invent_roster
from probgen.build.folder import require_ours
from probgen.course.assignment import ASSIGNMENT
from probgen.course.record import RECORD
from probgen.input.fault import Fault, InputError
from probgen.input.file import write_beside
from probgen.input.json import read_json
from probgen.input.remedy import OtherFolder

_FORMER: Final = "set.toml"
"""Its name in release 0.1."""
SEED: Final = "demonstration"
SECRET: Final = "de30" * 8
"""The demonstration's seed and secret are known to all, and so are its numbers and codes."""


def write_demo(folder: Path, students: int = 12) -> Path:
    """Puts an assignment file and a class list into a folder, and gives the assignment file's path.

    Files of those names that are there already stay as they are: somebody may have edited them.
    Raises InputError for a folder of something else, and for that of a real class.
    """
    assignment = folder / (_FORMER if (folder / _FORMER).exists() else ASSIGNMENT)
    roster = folder / ROSTER
    require_ours(folder, (assignment, roster))
    _require_no_class(folder / RECORD)
    for path, text in ((assignment, demo_assignment()), (roster, invent_roster(students))):
        if not path.exists():
            write_beside(path, text.encode())
    return assignment


def _require_no_class(record: Path) -> None:
    """Raises InputError where papers were built that are no demonstration's: they would be lost."""
    if not record.is_file():
        return
    content = read_json(record, "record", "name another folder")
    seed = content.get("seed") if isinstance(content, dict) else None
    if seed != SEED:
        found, expected = "the record of a class", "none, or that of a demonstration"
        raise InputError([Fault(str(record), "", found, expected, remedy=OtherFolder())])
