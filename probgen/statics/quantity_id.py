"""Ids of quantities: "T", or a part of what acts, such as "R.x" and "R.magnitude".

The one place where an id is put together, as it is printed in JSON and answers.csv; none is ever
taken apart.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum


class QuantityPart(StrEnum):
    """What of its owner a quantity is."""

    WHOLE = ""
    X = "x"
    Y = "y"
    MAGNITUDE = "magnitude"
    DIRECTION = "direction"
    LIMIT = "limit"  # the limit that its largest or smallest value reaches, or that it is held by


@dataclass(frozen=True, slots=True)
class Quantity:
    """A quantity by what it is of: owner, the id of a quantity or an element; str() is its id."""

    owner: str
    part: QuantityPart = QuantityPart.WHOLE

    def __str__(self) -> str:
        return f"{self.owner}.{self.part}" if self.part else self.owner

    @property
    def is_magnitude(self) -> bool:
        return self.part is QuantityPart.MAGNITUDE

    @property
    def is_direction(self) -> bool:
        return self.part is QuantityPart.DIRECTION

    # The ids of what else there is of the same owner.

    @property
    def x(self) -> str:
        return str(Quantity(self.owner, QuantityPart.X))

    @property
    def y(self) -> str:
        return str(Quantity(self.owner, QuantityPart.Y))

    @property
    def components(self) -> tuple[str, str]:
        return self.x, self.y

    @property
    def magnitude(self) -> str:
        return str(Quantity(self.owner, QuantityPart.MAGNITUDE))

    @property
    def direction(self) -> str:
        return str(Quantity(self.owner, QuantityPart.DIRECTION))

    @property
    def limit(self) -> str:
        return str(Quantity(self.owner, QuantityPart.LIMIT))

    @property
    def unit_id(self) -> str:
        """The id of the quantity in whose unit it is printed: a magnitude in its components'."""
        return self.x if self.is_magnitude else str(self)


def back_id(id: str) -> str:
    """The id of what acts back on the other of two bodies."""
    return f"{id}'"


def joint_id(point: str) -> str:
    """The id of the body that a truss's joint is by itself."""
    return f"joint-{point}"


def part_id(joints: Iterable[str]) -> str:
    """The id of the body that a section leaves of a truss, by its joints."""
    return "-".join(("part", *joints))


def whole_id(bodies: Iterable[str]) -> str:
    """The id of several bodies taken as one, by theirs."""
    return "+".join(bodies)


def pull_id(tension: str, place: int) -> str:
    """The id of one of several pulls of a rope, counted from 1, whose tension has an id."""
    return f"{tension}.{place}"
