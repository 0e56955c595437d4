"""How bodies in equilibrium are: at rest, sliding steadily, or only supposed to be at rest."""

from __future__ import annotations

from collections.abc import Collection

from probgen.bank.labels import Reason
from probgen.statics.system import Form
from probgen.wording.facts.balance import Still
from probgen.working.digits import Digits


def how_still(digits: Digits, bodies: Collection[str]) -> Still:
    """Whether the bodies are at rest; that is only supposed where it is asked whether it holds."""
    if may_move(digits, bodies):
        return Still.STEADY
    supposed = any(find.form is Form.HOLDS for find in digits.case.system.finds)
    return Still.SUPPOSED if supposed else Still.AT_REST


def may_move(digits: Digits, bodies: Collection[str]) -> bool:
    """Whether friction of steady sliding acts on one of the bodies."""
    system, reasons = digits.case.system, digits.case.labels.reasons
    sliding = [c.left for c in system.conditions if reasons.get(c.id) is Reason.SLIDES_STEADILY]
    return any(f.body in bodies and f.magnitude in sliding for f in system.forces)
