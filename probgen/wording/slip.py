"""Likely slips told: the wrong number, and what leads to it."""

from __future__ import annotations

from collections.abc import Sequence

from probgen.mistakes.comparison import Slip
from probgen.quantities.expression import Number
from probgen.statics.system import System
from probgen.wording.facts.asked import SlipNamed
from probgen.wording.passage import Items
from probgen.wording.sentence import letter
from probgen.working.digits import Digits
from probgen.working.direction import Direction, direction_of


def slips_told(chosen: Sequence[Slip], digits: Digits) -> Items:
    """What goes wrong here, one line for each slip."""
    return Items(tuple(tell_slip(slip, digits) for slip in chosen))


def tell_slip(slip: Slip, digits: Digits) -> SlipNamed:
    """A slip in the case whose digits these are."""
    quantity = letter(_symbol(digits.case.system, slip.answer))
    return SlipNamed(quantity, _shown(slip, digits), slip.misstep, digits.convention.turning)


def _shown(slip: Slip, digits: Digits) -> Number | Direction:
    """The wrong value as it would be printed."""
    if slip.answer.endswith(".direction"):
        return direction_of(slip.value, digits.convention)
    return digits.rounded(slip.value, digits.unit_of(slip.answer.replace(".magnitude", ".x")))


def _symbol(system: System, answer: str) -> str:
    """The printed letter of an answer; of a magnitude or a direction that of the force."""
    owner, _, part = answer.partition(".")
    whole = part in ("magnitude", "direction")
    return system.element(owner).symbol if whole else system.variables[answer].symbol
