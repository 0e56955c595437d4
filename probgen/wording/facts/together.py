"""Facts of equations that are solved together: what is put into which of them."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.expression import Expression, Name
from probgen.quantities.formula import Formula
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class Called:
    """An equation as a sentence calls it: its balance without what is in it, or a condition.

    bodies: whose, where another of the equations would be called the same; none elsewhere.
    """

    formula: Formula
    bodies: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class TakenOut(Fact):
    """Unknowns that are written by the others, once what conditions say is put in.

    into: where that is put; solved: what each of the unknowns comes from.
    everywhere: whether it is put into all of several balances.
    """

    said: tuple[Formula, ...]
    into: tuple[Called, ...]
    unknowns: tuple[Name, ...]
    solved: tuple[Called, ...]
    everywhere: bool = False


@dataclass(frozen=True, slots=True)
class PutIn(Fact):
    """What conditions say, put into the rest, which then holds one unknown.

    dropped: unknowns that then stand in every term; into: the rest, None for the line before.
    """

    said: tuple[Formula, ...]
    left: Name
    dropped: tuple[Name, ...]
    into: Called | None = None


@dataclass(frozen=True, slots=True)
class RestFollows(Fact):
    """The rest with what is taken out of others in its place follows."""

    rest: Called


@dataclass(frozen=True, slots=True)
class PutIntoTheRest(Fact):
    """What is left then holds one unknown; where something is done to it, that was shown before.

    times: what it was multiplied by, if anything; angle: that whose squared sine and cosine were
    joined, if any; tangent: the angle whose sine over cosine is written as its tangent, if any.
    """

    left: Name
    rest: Called
    times: Expression | None = None
    angle: Expression | None = None
    tangent: Expression | None = None
