"""The torque of forces and couples about a point, and where a force that does the same acts.

Torques are newton metres, counter-clockwise positive.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from probgen.bank.bounds import sign_of
from probgen.bank.situation import Situation
from probgen.quantities.expression import ZERO, Expression, negative, times, total
from probgen.quantities.like_terms import collected
from probgen.statics.equation import Term, other_way, turning
from probgen.statics.geometry import angle_of, sine
from probgen.statics.method import Method
from probgen.statics.solve_for import isolated
from probgen.statics.system import Couple, Force, Kind


def acting(situation: Situation, names: Sequence[str]) -> tuple[list[Force], list[Couple]]:
    """The forces and couples of some ids; those without a place, after a fault, are left out.

    Of equal forces with one letter all are meant.
    """
    alike = {each.id for each in situation.elements if each.of in names}
    forces = [
        each
        for each in situation.forces
        if each.id in names or (each.kind is Kind.FORCE and not each.pair and each.id in alike)
    ]
    placed = [force for force in forces if force.point in situation.points]
    return placed, [each for each in situation.couples if each.id in names]


def torque_about(
    situation: Situation, point: str, forces: Sequence[Force], couples: Sequence[Couple]
) -> Expression:
    """What they turn with about a point (N m), each force by its lever arm."""
    written = [term for force in forces for term in _terms(situation, force, point)]
    return total(*written, *((1, couple.moment) for couple in couples))


def _terms(situation: Situation, force: Force, point: str) -> Iterator[tuple[int, Expression]]:
    for term in turning(situation.points, force, point, 1):
        read = _positive(situation, term)
        yield read.sign, read.expression(Method())


def _positive(situation: Situation, term: Term) -> Term:
    """A term with its lever arm the way round that is positive in all draws, if one is."""
    if term.length is None or sign_of(term.length, situation.scope.bounds) >= 0:
        return term
    return replace(term, sign=-term.sign, length=other_way(term.length))


def crossing(
    situation: Situation,
    origin: str,
    along: Expression,
    forces: Sequence[Force],
    couples: Sequence[Couple],
) -> Expression | None:
    """How far from a point (m), in a direction, the line of action of their resultant crosses.

    None where the resultant has no part square to that line: it never does.
    """
    line = angle_of(along)
    parts = ((1, times(f.magnitude, sine(angle_of(f.direction).minus(line)))) for f in forces)
    across = collected(total(*parts))
    if across == ZERO:
        return None
    torque = torque_about(situation, origin, forces, couples)
    return isolated(across, negative(torque))
