"""What a proof may find wrong with a draw's solution, as facts; words are made of them last."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto


class FlawKind(Enum):
    """What is wrong."""

    UNBALANCED = auto()  # the balances do not close
    DISPUTED = auto()  # the second solver finds other values
    NO_VALUE = auto()  # a denominator is zero, or nothing in the range balances the forces
    NEGATIVE = auto()  # a quantity that cannot be negative is
    TOO_LOW = auto()  # below the bound its author states
    TOO_HIGH = auto()
    SECOND_VALUE = auto()  # another value of the quantity would do as well
    OTHER_FORMULA = auto()  # its value is another than the working's formula gives
    PASSED = auto()  # a limit is passed
    PASSED_AT_ZERO = auto()  # a limit is passed before anything is added
    TURNED_LOAD = auto()  # a load by a formula is below zero somewhere along its length
    LIFTING_WEIGHT = auto()  # a weight comes out below zero
    OFF_BODY = auto()  # something acts beyond the end of its body, or outside its outline
    HOLE_BEYOND = auto()  # something is cut out where there is nothing
    OFF_SECTION = auto()  # a section is not on the member it cuts
    LARGER_ELSEWHERE = auto()  # a bending moment asked as the largest is not that
    NO_LENGTH = auto()  # a body that is to be cut through has none
    NO_DIRECTION = auto()  # a direction is asked of a force that is zero
    NEAR_AXIS = auto()  # a direction is asked that a marker's tolerance cannot tell from an axis


@dataclass(frozen=True, slots=True)
class Flaw:
    """One thing that is wrong with one draw.

    quantity: id of the variable or the element it is about, limit: id of the limit, "" where there
    is none.
    value: coherent units: the quantity's value, its bound, its second value or its true one.
    Of a largest moment: how far from `place` it is as large, or larger (m).
    place, body: the point something acts at, and the body it is not on; of a direction near an axis
    the place is the component that is hardly there, "x" or "y".
    """

    kind: FlawKind
    quantity: str = ""
    limit: str = ""
    value: float = 0.0
    place: str = ""
    body: str = ""
