"""What a version control leaves in a file where two people changed the same lines."""

from __future__ import annotations

import re
from typing import Final

from probgen.input.fault import Fault, InputError

_SIDE: Final = re.compile(r"^(<{7} |>{7} |={7}$)", re.MULTILINE)


def require_merged(text: str, where: str) -> None:
    """Raises InputError where two sides of a merge still stand in a text, each with its line."""
    sides = list(_SIDE.finditer(text))
    if not any(side[0].startswith("<") for side in sides):
        return
    found = [text.count("\n", 0, side.start()) + 1 for side in sides if side[0].startswith("<")]
    mend = "keep what is right of the two sides, and delete the lines <<<<<<<, ======= and >>>>>>>"
    expected = "one text: here two changes of the same lines were not merged"
    raise InputError([Fault(where, f"line {line}", "<<<<<<<", expected, mend) for line in found])
