"""Numbers of what acts inside a body as they are told: their units, their digits, their places."""

from __future__ import annotations

from probgen.quantities.expression import Number
from probgen.quantities.rounding import in_full, round_figures
from probgen.quantities.unit import FORCE, TORQUE, Unit
from probgen.statics.internal_forces import Inside, InternalForces
from probgen.statics.numeric_equations import coordinates
from probgen.working.digits import Digits


def unit_of(digits: Digits, of: Inside) -> Unit:
    """The unit one of the three is told in."""
    return digits.units.unit_of(TORQUE if of is Inside.MOMENT else FORCE)


def plain_value(digits: Digits, of: Inside, value: float) -> Number:
    """A value as it stands on a diagram, whose head says the unit."""
    own = digits.convention
    size = value / unit_of(digits, of).factor
    return Number(in_full(round_figures(size, own.figures, own.rounding)))


def point_at(digits: Digits, found: InternalForces, x: float) -> str:
    """The point of the template at a place on the body, "" where there is none."""
    system = digits.case.system
    outline = system.body(found.body).outline
    named = [*outline, *(e.at for e in system.elements if e.body == found.body and not e.spread)]
    places = coordinates(system, digits.case.values)
    (left, low) = (float(part) for part in places[outline[0]])
    for name in dict.fromkeys(named):
        across, up = (float(part) for part in places[name])
        if abs(across - left - x) < 1e-6 * found.length and abs(up - low) < 1e-6 * found.length:
            return name
    return ""
