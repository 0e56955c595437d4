"""Likely slips told: the wrong number, and what leads to it."""

from __future__ import annotations

from collections.abc import Sequence

from probgen.bank.labels import Labels
from probgen.mistakes.comparison import Slip
from probgen.mistakes.variant import Misstep
from probgen.quantities.expression import Name, Number
from probgen.statics.quantity_id import Quantity
from probgen.wording.facts.asked import SlipNamed
from probgen.wording.passage import Items
from probgen.working.digits import Digits
from probgen.working.direction import Direction, direction_of
from probgen.working.multiple import in_unit_of


def slips_told(chosen: Sequence[Slip], digits: Digits) -> Items:
    """What goes wrong here, one line for each slip."""
    return Items(tuple(tell_slip(slip, digits) for slip in chosen))


def tell_slip(slip: Slip, digits: Digits) -> SlipNamed:
    """A slip in the case whose digits these are."""
    return tell_wrong(slip.of, slip.value, (slip.misstep,), digits)


def tell_wrong(
    of: Quantity, value: float, missteps: Sequence[Misstep], digits: Digits
) -> SlipNamed:
    """A wrong value (coherent units) of an answer, and the one or two slips that lead to it."""
    quantity = _letter(digits.case.labels, of)
    second = missteps[1] if len(missteps) > 1 else None
    turning = digits.convention.turning
    shown = _shown(of, value, digits, at_limit="limit" in missteps[0].parts)
    return SlipNamed(quantity, shown, missteps[0], turning, second)


def _shown(of: Quantity, value: float, digits: Digits, at_limit: bool) -> Number | Direction:
    """The wrong value, rounded as usual; at the wrong one of several limits as the key has it.

    In the unit of the right one, which the sheet asks for.
    """
    if of.is_direction:
        return direction_of(value, digits.convention)
    unit = digits.unit_of(of.unit_id)
    shown = digits.answered(str(of), value, unit) if at_limit else digits.rounded(value, unit)
    return in_unit_of(digits.answered(str(of), digits.case.values[str(of)], unit), shown)


def _letter(labels: Labels, of: Quantity) -> Name:
    """The printed letter of an answer; of a magnitude or a direction that of the force."""
    whole = of.is_magnitude or of.is_direction
    return labels.whole(of.owner) if whole else labels.letter(str(of))
