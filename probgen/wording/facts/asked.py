"""Facts of what is asked, how it is answered, and what goes wrong."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from probgen.mistakes.variant import Misstep
from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Formula
from probgen.quantities.unit import Dimension
from probgen.working.convention import Turning
from probgen.working.direction import Direction
from probgen.working.fact import Fact
from probgen.working.result import ResultKind


@dataclass(frozen=True, slots=True)
class KindOfQuantity(Fact):
    """What a given is, in a statement: a mass, or a weight where it is given as a force."""

    dimension: Dimension


@dataclass(frozen=True, slots=True)
class SectionSigns(Fact):
    """Which way what a section bares is counted positive."""


@dataclass(frozen=True, slots=True)
class CutSigns(Fact):
    """Which way what acts at an author's own cut is counted positive."""


@dataclass(frozen=True, slots=True)
class SignsAsked(Fact):
    """Which way components and couples that are asked are counted positive.

    level: components along x and y; plan: components by the compass; couples: counter-clockwise.
    """

    level: bool = False
    plan: bool = False
    couples: bool = False


@dataclass(frozen=True, slots=True)
class GravityTaken(Fact):
    """The value of g, for a whole sheet."""

    value: Formula


@dataclass(frozen=True, slots=True)
class QuantityAsked(Fact):
    """body: what a force acts on that acts on another the opposite way; else ""."""

    quantity: Name
    body: str = ""


@dataclass(frozen=True, slots=True)
class ForceAsked(Fact):
    """The force from an element: its components, or its magnitude and direction.

    body: what it acts on, if it acts on another the opposite way.
    """

    element: str
    letter: Name
    components: bool
    body: str = ""


@dataclass(frozen=True, slots=True)
class UtmostAsked(Fact):
    """The largest or smallest value before one of the limits is reached."""

    quantity: Name
    largest: bool
    limits: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LimitsAsked(Fact):
    """Whether something is beyond one of the limits, and the margin."""

    limits: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class AnswerNamed(Fact):
    """What an answer is called beside its value; letter: of the quantity, if it has one.

    limit: the one that a verdict is of, "" for the only one asked about.
    """

    kind: ResultKind
    letter: Name
    limit: str = ""


@dataclass(frozen=True, slots=True)
class WaysOffered(Fact):
    """Which way the angle of a direction is taken, to choose from; reference: what it is from."""

    reference: Literal["horizontal", "vertical", "axis"]


@dataclass(frozen=True, slots=True)
class SidesOffered(Fact):
    """The side a direction lies to, to choose from."""


@dataclass(frozen=True, slots=True)
class LimitOffered(Fact):
    """One of the limits of which one is reached first; last: whether no other follows."""

    limit: str
    last: bool


@dataclass(frozen=True, slots=True)
class YesOrNo(Fact):
    """Whether a limit is kept, to choose from; limit: None for the only one asked about."""

    limit: str | None


@dataclass(frozen=True, slots=True)
class MarginNamed(Fact):
    """What the margin of a limit is called beside its value."""


@dataclass(frozen=True, slots=True)
class SlipSaid(Fact):
    """What somebody does wrong, without any number."""

    misstep: Misstep
    turning: Turning


@dataclass(frozen=True, slots=True)
class SlipNamed(Fact):
    """A wrong answer and the slip that leads to it; quantity: the answer's letter.

    second: another slip in the same working, where it takes both.
    """

    quantity: Name
    shown: Number | Direction
    misstep: Misstep
    turning: Turning
    second: Misstep | None = None
