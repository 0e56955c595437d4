"""Names of students: "Last, First" turned into "First Last", and letters that were lost."""

from __future__ import annotations

import re
from typing import Final

_SUFFIX: Final = re.compile(r"(jr|sr|jnr|snr|junior|senior|ii|iii|iv|ph\.?d)\.?", re.IGNORECASE)
"""What stands behind a comma at the end of a name without being a first name."""


def turned(name: str) -> str:
    """The name as it is printed: "Quill, Ada" is Ada Quill; "Ada Quill, Jr." stays as it is."""
    parts = [part.strip() for part in name.split(",")]
    tails = [part for part in parts[1:] if _SUFFIX.fullmatch(part)]
    own = [part for part in parts if part not in tails]
    if len(own) != 2 or not all(own):
        return name
    return ", ".join([f"{own[1]} {own[0]}", *tails])


def has_lost_letters(name: str) -> bool:
    """Whether signs stand in a name that are put where an encoding has no letter."""
    return "\ufffd" in name or "?" in name
