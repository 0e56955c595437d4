"""What one answer is found to be, from what was typed and what is right alone."""

from __future__ import annotations

import math
from enum import StrEnum, auto
from fractions import Fraction
from functools import cache
from typing import Final

from probgen.marking.asked import Asked
from probgen.marking.stated import Reading, Stated
from probgen.quantities.unit import ONE, UNITS, Unit


class Finding(StrEnum):
    """A verdict on one answer."""

    RIGHT = auto()
    CARRIED = auto()
    """Right with the student's own earlier answers."""
    UNIT = auto()
    SIGN = auto()
    """Of a direction: the angle to another side."""
    SLIP = auto()
    WRONG = auto()
    UNREAD = auto()
    EMPTY = auto()


CERTAIN: Final = (Finding.RIGHT, Finding.UNIT, Finding.UNREAD, Finding.EMPTY)
"""What no earlier answer and no slip can change."""


def finding(asked: Asked, told: Stated) -> Finding:
    """The verdict without regard to other answers; WRONG where those may yet explain it."""
    if told.empty:
        return Finding.EMPTY
    only = told.only
    if only is None:
        return Finding.UNREAD
    if asked.earns(only.value) or rounds(asked, only, asked.value):
        return Finding.RIGHT
    if _unit_alone(asked, only):
        return Finding.UNIT
    return Finding.SIGN if _sign_alone(asked, only) else Finding.WRONG


FEWEST: Final = 2
"""Significant figures that a right number may be rounded to: fewer say too little."""


def rounds(asked: Asked, only: Reading, right: float) -> bool:
    """Whether what was typed is a right value rounded, to two figures or more.

    Too few figures are a matter of their own: they are told, and cost points only by choice.
    """
    if asked.is_choice or asked.is_direction or not only.figures[1] >= FEWEST:
        return False
    return abs(only.value - right) <= only.coarse * (1.0 + 1e-9)


def _sign_alone(asked: Asked, only: Reading) -> bool:
    value = only.value
    if asked.is_direction:
        return any(asked.earns(other) for other in (180.0 - value, 180.0 + value, -value))
    return asked.earns(-value)


def _unit_alone(asked: Asked, only: Reading) -> bool:
    """Whether the number is right and its unit is not: of another kind, or a power of ten off."""
    if asked.earns(only.bare):
        return True
    typed = only.unit or asked.blank.unit or ONE
    number = only.value / typed.factor
    return any(asked.earns(number * other.factor) for other in _relatives(typed))


@cache
def _relatives(typed: Unit) -> list[Unit]:
    """Units of the same kind a power of ten away, for which it may have been taken."""
    return [
        each
        for each in UNITS.values()
        if each.dimension == typed.dimension and _ten(each.size / typed.size)
    ]


def _ten(ratio: Fraction) -> bool:
    power = math.log10(ratio)
    return abs(power - round(power)) < 1e-12
