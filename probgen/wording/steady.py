"""Bodies that slide steadily, or that one slides on: they need not be at rest."""

from __future__ import annotations

from collections.abc import Collection

from probgen.bank.labels import Reason
from probgen.working.digits import Digits


def may_move(digits: Digits, bodies: Collection[str]) -> bool:
    """Whether friction of steady sliding acts on one of the bodies."""
    system, reasons = digits.case.system, digits.case.labels.reasons
    sliding = [c.left for c in system.conditions if reasons.get(c.id) is Reason.SLIDES_STEADILY]
    return any(f.body in bodies and f.magnitude in sliding for f in system.forces)
