"""A template as read: what a problem says, what is drawn, and the system it describes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from probgen.bank.depiction import Depictions
from probgen.bank.labels import Labels
from probgen.bank.origin import UNSAID, Origin
from probgen.quantities.expression import Expression
from probgen.quantities.unit import SI, Unit, UnitSystem
from probgen.statics.system import System


@dataclass(frozen=True, slots=True)
class Given:
    """A quantity that is drawn.

    choices: every value it may take, in `unit`, ascending, with the digits that are printed.
    """

    id: str
    unit: Unit
    choices: tuple[Decimal, ...]


@dataclass(frozen=True, slots=True)
class Derived:
    """A quantity computed from the givens and told to the student with them.

    round: the step it is rounded to, in `unit`, halves up; None keeps four significant figures.
    """

    id: str
    expression: Expression
    round: Decimal | None
    unit: Unit


@dataclass(frozen=True, slots=True)
class Requirement:
    """A comparison each draw must satisfy: left `relation` right, with "<", "<=", ">" or ">="."""

    left: Expression
    relation: str
    right: Expression
    because: str


@dataclass(frozen=True, slots=True)
class Template:
    """One problem.

    statement: the author's text with {{ names }}; source: the whole file's text; path: where it was
    read.
    labels: what the things of the system are called.
    cautions: what the problem touches that a teacher may want to know ("body", "ladder", ...).
    depicts: what the figure shows for bodies and elements.
    picture: the size a length or an angle is drawn at instead of its own, by its id.
    units: the system its quantities are given in.
    origin: where it comes from, and how long it takes.
    varying: quantities asked whose direction, sign or limit may be another in some draws.
    """

    id: str
    revision: int
    title: str
    family: str
    level: int
    goals: tuple[str, ...]
    statement: str
    givens: tuple[Given, ...]
    derived: tuple[Derived, ...]
    system: System
    labels: Labels
    requirements: tuple[Requirement, ...]
    cautions: tuple[str, ...]
    depicts: Depictions
    picture: Mapping[str, Expression]
    source: str
    path: str
    units: UnitSystem = SI
    origin: Origin = UNSAID
    varying: frozenset[str] = frozenset()

    def given(self, id: str) -> Given:
        """The given of an id; StopIteration when there is none."""
        return next(given for given in self.givens if given.id == id)

    @property
    def room(self) -> int:
        """How many different sets of givens there are, before any requirement."""
        count = 1
        for given in self.givens:
            count *= len(given.choices)
        return count
