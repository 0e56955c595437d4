"""What can act on a body: the kinds of entry a template may hold, such as [[hinge]]."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from probgen.bank.line_elements import cable, muscle, rope, spring, strut
from probgen.bank.load import couple, distributed, force, weight
from probgen.bank.section import section
from probgen.bank.situation import Situation
from probgen.bank.support import contact, cut, fixed, fulcrum, hinge, roller, rough
from probgen.input.table import Table

READERS: Final[dict[str, Callable[[Table, Situation], None]]] = {
    "hinge": hinge,
    "fixed": fixed,
    "cut": cut,
    "roller": roller,
    "contact": contact,
    "fulcrum": fulcrum,
    "rough": rough,
    "cable": cable,
    "rope": rope,
    "muscle": muscle,
    "spring": spring,
    "strut": strut,
    "weight": weight,
    "force": force,
    "distributed": distributed,
    "couple": couple,
    "section": section,  # last, as it takes apart what all others have put on a body
}
"""How each kind of entry is read; they are read in this order."""
