"""How answers are marked: what each verdict earns, and what a department chooses itself."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from probgen.marking.finding import Finding


def _usual() -> dict[Finding, Decimal]:
    whole, half, none = Decimal(1), Decimal("0.5"), Decimal(0)
    return {
        Finding.RIGHT: whole,
        Finding.CARRIED: whole,
        Finding.UNIT: half,
        Finding.SIGN: half,
        Finding.SLIP: half,
        Finding.WRONG: none,
        Finding.EMPTY: none,
    }


@dataclass(frozen=True, slots=True)
class Policy:
    """What part of an answer's points each finding earns: a judgement, no source.

    What nobody could read has no part yet: a person decides.
    figures: the part that is taken off where fewer significant figures are typed than asked for.
    tolerance: relative, in place of the course's; None keeps that.
    columns: a gradebook's headings, each with what stands below it; none for the usual ones.
    """

    parts: Mapping[Finding, Decimal] = field(default_factory=_usual)
    figures: Decimal = Decimal(0)
    tolerance: float | None = None
    columns: tuple[tuple[str, str], ...] = ()

    def earned(self, found: Finding, points: int, few_figures: bool = False) -> Decimal | None:
        """The points; None where a person decides, which what is worth none does not need."""
        part = self.parts.get(found) if points else Decimal(0)
        if part is None:
            return None
        off = self.figures if few_figures else Decimal(0)
        return max(part - off, Decimal(0)) * points
