"""A force that several lengths place, one after the other: its torques, and its one lever arm."""

from __future__ import annotations

from collections.abc import Sequence

from probgen.quantities.expression import Expression, Lump, Number, evaluate, names_in, times, total
from probgen.quantities.formula import Relation
from probgen.quantities.rounding import exact, last_place
from probgen.statics.equation import Term
from probgen.wording.facts.torque import ArmOfLegs, LegsAcross, Placed
from probgen.working.convention import Rotation
from probgen.working.digits import Digits
from probgen.working.line import HALF, USUAL_GUARD


def legs_told(
    digits: Digits, name: Expression | Placed, terms: Sequence[Term], sense: int
) -> ArmOfLegs:
    """The legs of a force, and those by which it turns against its own sense.

    sense: +1 counter-clockwise, -1 clockwise.
    """
    legs = [(term, term.length) for term in terms if term.length is not None]
    whole = float(evaluate(total(*((t.sign, arm_along(t)) for t, _ in legs)), digits.case.values))
    against = tuple(length for term, length in legs if term.sign * whole < 0.0)
    back: Rotation = "clockwise" if sense > 0 else "counter-clockwise"
    lengths = tuple(length for _, length in legs)
    return ArmOfLegs(name, lengths, digits.convention.turning, against, back)


def arm_of_legs(
    digits: Digits, name: Expression | Placed, terms: Sequence[Term], known: frozenset[str]
) -> LegsAcross | None:
    """The lever arm of a force that two lengths place, as their sum or difference; else None."""
    signed = [(term.sign, arm_along(term)) for term in terms if term.length is not None]
    if len(signed) <= 1 or not names_in(total(*signed)) <= known:
        return None
    if float(evaluate(total(*signed), digits.case.values)) < 0.0:
        signed = [(-sign, arm) for sign, arm in signed]
    legs = total(*sorted(((sign, Lump(arm)) for sign, arm in signed), key=lambda leg: -leg[0]))
    arm = total(*sorted(signed, key=lambda leg: -leg[0]))
    shown = (arm, digits.put_in(arm), *_added(digits, legs, Lump(arm)))
    formula: list[Expression | Relation] = [shown[0]]
    for each in dict.fromkeys(shown[1:]):
        formula += [Relation("="), each]
    lengths = tuple(term.length for term in terms if term.length is not None)
    toward, back = (tuple(arm for sign, arm in signed if sign == way) for way in (1, -1))
    return LegsAcross(name, lengths, toward, back, tuple(formula))


def arm_along(term: Term) -> Expression:
    """The part of a leg that is square to the force."""
    assert term.length is not None
    return times(Lump(term.length), term.ratio)


def _added(digits: Digits, legs: Expression, whole: Expression) -> tuple[Expression, Expression]:
    """The legs in numbers and their sum, with as many digits as make the one give the other."""
    for guard in digits.guards.attempts(USUAL_GUARD):
        added, arm = digits.put_in(legs, guard), digits.put_in(whole)
        assert isinstance(arm, Number)
        last = last_place(arm.value) * (exact(arm.unit.factor) if arm.unit else 1)
        if abs(float(evaluate(total((1, added), (-1, arm)), {}))) <= HALF * float(last):
            digits.guards.end_line()
            return added, arm
    digits.guards.leave_line()
    return digits.put_in(legs), digits.put_in(whole)
