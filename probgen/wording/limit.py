"""Limits told: how far each lets something go, which comes first, and whether all hold."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from probgen.quantities.expression import Expression, Number, evaluate
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.unit import ANGLE, LENGTH, PLAIN
from probgen.statics.plan import Branch, limits_asked
from probgen.statics.system import Find, Force, ForcePart, Form, Kind, Limit, System
from probgen.wording.block import Display, Row
from probgen.wording.equations import lone_number
from probgen.wording.facts.ending import (
    FarthestHeading,
    FirstHeading,
    HoldsHeading,
    LimitDecides,
    LimitElsewhere,
    LimitJudged,
    LimitReached,
    RoundedWithin,
)
from probgen.wording.passage import Items, Part, Passage, sentences
from probgen.working.digits import Digits
from probgen.working.fact import Fact
from probgen.working.verdict import governing, side_dimension, verdict_on


def edge_reached(system: System, limit: Limit) -> tuple[Expression | None, str, str]:
    """The normal force that a limit lets act at a point at the utmost, where it acts, that point.

    None and "" where the limit is of something else, or another contact still holds the body.
    """
    for force in system.forces:
        contact = force.kind in (Kind.ROUGH, Kind.CONTACT) and force.part is not ForcePart.FRICTION
        if not contact or not _held_by(system, force):
            continue
        links = system.points[force.point].links
        if not any(link.length == limit.left for link in links):
            continue
        moved = tuple(
            replace(link, length=limit.right) if link.length == limit.left else link
            for link in links
        )
        for point in system.points.values():
            if point.links == moved:
                return force.magnitude, force.point, point.id
    return None, "", ""


def _held_by(system: System, force: Force) -> bool:
    """Whether nothing else holds the body that a contact pushes."""
    holding = (Kind.WEIGHT, Kind.FORCE, Kind.DISTRIBUTED)
    others = (each for each in system.forces if each.body == force.body)
    return all(each.kind in holding or each.element == force.element for each in others)


def comparison_passage(digits: Digits, find: Find, reached: Sequence[Digits]) -> Passage:
    """The values at every limit of a find beside each other, and the one that decides.

    reached: the digits at each limit, in the order of the plan's branches to it.
    """
    case = digits.case
    letter = case.system.variables[find.quantity].as_name
    final, largest = digits.final(find.quantity), find.form is Form.LARGEST
    met: list[tuple[str, Formula]] = []
    others: list[tuple[str, Formula]] = []
    for branch, own in zip(case.plan.branches_to(find), reached, strict=True):
        said: Formula = (letter, Relation("="), own.final(find.quantity))
        (met if _bounds(branch, own) else others).append((branch.limit.id, said))
    only = len(met) == 1
    facts = tuple(LimitReached(limit, said, only) for limit, said in met)
    elsewhere = tuple(LimitElsewhere(limit, letter, said, largest) for limit, said in others)
    value = case.values[find.quantity]
    exact = math.isclose(float(evaluate(final, {})), value, rel_tol=1e-9)
    rounded = () if exact else (RoundedWithin(largest),)
    if only:
        reach = case.system.variables[find.quantity].dimension in (LENGTH, ANGLE)
        return Passage(FarthestHeading(reach, largest), (sentences(*elsewhere, *facts, *rounded),))
    decides = LimitDecides(governing(case, find).id, (letter, Relation("="), final), largest)
    return Passage(FirstHeading(), (Items(facts), sentences(*elsewhere, decides, *rounded)))


def _bounds(branch: Branch, own: Digits) -> bool:
    """Whether a limit that is reached is passed on going on."""
    data = {name: own.case.values[name] for name in own.case.numbers}
    return bool(branch.is_passed(own.case.values[branch.utmost.quantity], data))


def holding_passage(digits: Digits, find: Find) -> Passage:
    """Each limit compared with what it allows."""
    parts: list[Part] = []
    for limit in limits_asked(digits.case.system, find):
        parts += [
            Display(tuple(_rows(digits, limit))),
            sentences(_judged(digits, limit), bound=True),
        ]
    return Passage(HoldsHeading(), tuple(parts))


def _rows(digits: Digits, limit: Limit) -> Iterator[Row]:
    for side in (limit.left, limit.right):
        value = float(evaluate(side, digits.case.values))
        line = digits.line(side, value, side_dimension(digits.case, side))
        shown = () if lone_number(line.printed) else (line.printed, Relation("="))
        right: Formula = (*shown, line.result)
        yield Row((side,), "=", right)


def _judged(digits: Digits, limit: Limit) -> Fact:
    """The limit is kept, or not, and by how much."""
    verdict = verdict_on(digits, limit)
    needed, allowed = (_final(digits, side) for side in (limit.left, limit.right))
    return LimitJudged(limit.id, limit.left, needed, limit.right, allowed, verdict)


def _final(digits: Digits, side: Expression) -> Number:
    """A side of a limit, rounded as answers are."""
    dimension = side_dimension(digits.case, side)
    unit = digits.units.unit_of(dimension)
    found = digits.rounded(float(evaluate(side, digits.case.values)), unit)
    return Number(found.value, None if dimension == PLAIN else found.unit)
