"""What may be doubted of a template before a class gets it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class DoubtKind(StrEnum):
    """What may be doubted."""

    ROOM = "few sets of numbers"
    COPYING = "answers alike"
    PASSING = "a slip earns full marks"
    CONFUSED = "two slips look alike"
    REGIME = "another regime in some draws"
    READING = "numbers that read badly"
    LEVEL = "a level that its steps do not have"


@dataclass(frozen=True, slots=True)
class Doubt:
    """share: of pairs or draws, 0 to 1; count: of sets of numbers, or of steps.

    about: the id of the quantity, or of the slip, that it concerns, "" for all; told: of a slip or
    two what went wrong, in words, of a number as it is printed; draw: values that show it.
    """

    kind: DoubtKind
    share: float = 0.0
    about: str = ""
    draw: str = ""
    told: str = ""
    count: int = 0
