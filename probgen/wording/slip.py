"""Likely slips told: the wrong number, and what leads to it."""

from __future__ import annotations

from collections.abc import Sequence

from probgen.bank.labels import Labels
from probgen.mistakes.comparison import Slip
from probgen.quantities.expression import Name, Number
from probgen.statics.quantity_id import Quantity
from probgen.wording.facts.asked import SlipNamed
from probgen.wording.passage import Items
from probgen.working.digits import Digits
from probgen.working.direction import Direction, direction_of


def slips_told(chosen: Sequence[Slip], digits: Digits) -> Items:
    """What goes wrong here, one line for each slip."""
    return Items(tuple(tell_slip(slip, digits) for slip in chosen))


def tell_slip(slip: Slip, digits: Digits) -> SlipNamed:
    """A slip in the case whose digits these are."""
    quantity = _letter(digits.case.labels, slip.of)
    return SlipNamed(quantity, _shown(slip, digits), slip.misstep, digits.convention.turning)


def _shown(slip: Slip, digits: Digits) -> Number | Direction:
    """The wrong value as it would be printed."""
    if slip.of.is_direction:
        return direction_of(slip.value, digits.convention)
    return digits.answered(str(slip.of), slip.value, digits.unit_of(slip.of.unit_id))


def _letter(labels: Labels, of: Quantity) -> Name:
    """The printed letter of an answer; of a magnitude or a direction that of the force."""
    whole = of.is_magnitude or of.is_direction
    return labels.whole(of.owner) if whole else labels.letter(str(of))
