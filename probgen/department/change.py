"""What may be other in a template than it was, gravest first."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from probgen.department.rewording import Words, rewording


class Kind(StrEnum):
    """A sort of change, in the order of what it means for whoever sets the problem."""

    PHYSICS = "other physics"
    NUMBERS = "other numbers"
    MARKS = "other marks"
    WORDS = "reworded"
    FIGURE = "other figure"
    PARTICULARS = "other particulars"  # goals, level, where it comes from: on no paper
    LAYOUT = "comments or spaces"  # of its file

    @property
    def on_paper(self) -> bool:
        """Whether a student may see it."""
        return self not in (Kind.PARTICULARS, Kind.LAYOUT)


GRAVEST_FIRST: Final = tuple(Kind)
Marks = tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True)
class Difference:
    """A field of the file that is other: "given.load_mass.to"; "" for what is not there."""

    field: str
    before: str
    after: str

    @property
    def words(self) -> tuple[Words, ...]:
        """Both as one text, with what went and what came."""
        return rewording(self.before, self.after)


@dataclass(frozen=True, slots=True)
class Trial:
    """The same numbers put into both; answers as printed, by what is asked, "" for none.

    values: of the givens, as printed.  agree: whether all answers that both have are equal.
    """

    values: str
    before: tuple[tuple[str, str], ...]
    after: tuple[tuple[str, str], ...]
    agree: bool


@dataclass(frozen=True, slots=True)
class Change:
    """A template that both states have; formerly: its id before, where that was another.

    kinds: gravest first; trials: of other physics alone; marks: of other marks alone, before and
    after, what a problem's points are given for, and how many of a hundred.
    """

    id: str
    formerly: str
    revisions: tuple[int, int]
    kinds: tuple[Kind, ...]
    differences: tuple[Difference, ...]
    trials: tuple[Trial, ...] = ()
    marks: tuple[Marks, ...] = ()

    @property
    def renamed(self) -> bool:
        return bool(self.formerly)

    @property
    def is_any(self) -> bool:
        """Whether something is other at all."""
        return self.renamed or bool(self.kinds)

    @property
    def gravity(self) -> int:
        """The place of its gravest kind among them; that of one only renamed is behind all."""
        return GRAVEST_FIRST.index(self.kinds[0]) if self.kinds else len(GRAVEST_FIRST)


@dataclass(frozen=True, slots=True)
class Changes:
    """What became of one state's templates in another; new, gone: their ids."""

    new: tuple[str, ...]
    gone: tuple[str, ...]
    changed: tuple[Change, ...]
    same: int
