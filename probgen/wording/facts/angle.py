"""Facts of angles, and other values, that one function alone does not give."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from probgen.quantities.expression import Expression, Name, Number
from probgen.working.fact import Fact

Function = Literal["sin", "cos", "tan"]


@dataclass(frozen=True, slots=True)
class AngleQuadrant(Fact):
    """Between which quarter turns an angle lies, from the signs of its cosine and sine.

    along, across: what has the sign of its cosine, and of its sine; positive: whether each is.
    between: those quarter turns, degrees.
    whole: whether that is a whole turn from what the arctangent gives, and not half of one.
    """

    angle: Name
    along: Expression
    across: Expression
    positive: tuple[bool, bool]
    between: tuple[Number, Number]
    whole: bool


@dataclass(frozen=True, slots=True)
class AnglesAdded(Fact):
    """Products of sines and cosines as one sine or cosine of a sum: before and after."""

    products: Expression
    joined: Expression


@dataclass(frozen=True, slots=True)
class AnglesTakenApart(Fact):
    """What follows has sine and cosine of an angle alone, by the addition theorems."""

    angle: Name


@dataclass(frozen=True, slots=True)
class FoundByTrying(Fact):
    """A quantity that no formula gives; between: where its value is looked for."""

    quantity: Name
    between: tuple[Number, Number]


@dataclass(frozen=True, slots=True)
class OtherAngle(Fact):
    """Another angle of the same sine, cosine or tangent, which lies where it has to.

    between: the ends of where it has to lie, degrees.
    half, whole: whether it is not the one that the arc function gives, and a whole turn is added.
    """

    angle: Name
    function: Function
    between: tuple[Number, Number]
    half: bool
    whole: bool


@dataclass(frozen=True, slots=True)
class DividedByCosine(Fact):
    """A balance divided until sine and cosine of an angle leave its tangent.

    divisor: the cosine, and the letters that drop out with it.
    """

    divisor: Expression
    angle: Name
