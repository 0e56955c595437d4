"""What the page of formulas says beside its formulas."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum, auto

from probgen.quantities.expression import Name
from probgen.working.convention import Rotation, Turning
from probgen.working.fact import Fact


class Topic(StrEnum):
    """What a group of formulas, or one of them, is about."""

    EQUILIBRIUM = auto()
    NO_NET_FORCE = auto()
    NO_NET_TORQUE = auto()
    TORQUE = auto()
    BY_ANGLE = auto()
    BY_ARM = auto()
    BY_COMPONENTS = auto()
    COMPONENTS = auto()
    FROM_X = auto()
    FORCES = auto()
    WEIGHT = auto()
    FRICTION = auto()
    SPRING = auto()
    SPREAD_LOAD = auto()
    CENTRE_OF_MASS = auto()
    TRIANGLES = auto()


@dataclass(frozen=True, slots=True)
class FormulaTopic(Fact):
    """letters: those that the words are about, in the order of the formulas.

    positive: the rotation counted positive.
    """

    topic: Topic
    turning: Turning
    positive: Rotation
    letters: tuple[Name, ...] = ()
