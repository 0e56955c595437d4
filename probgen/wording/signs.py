"""Which way a force of unknown sense has to act, reasoned before anything is solved."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from probgen.bank.labels import Reason
from probgen.quantities.expression import Expression, Name, evaluate, names_in
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Body, Force, ForcePart, Kind, Role, System
from probgen.statics.taken_as_one import Whole, made_of, told_before
from probgen.wording.facts.forces import (
    LeftOpen,
    LeverExpected,
    NothingAgainst,
    PartExpected,
    SharesExpected,
    SignsOpen,
    SlipOpposed,
    TurnExpected,
)
from probgen.wording.lever import both_parts_turn, lever_against
from probgen.wording.passage import Part, sentences
from probgen.wording.sense import signed_arms
from probgen.working.bodies_used import bodies_used, is_piece
from probgen.working.case import Case
from probgen.working.convention import Rotation
from probgen.working.digits import Digits
from probgen.working.direction import quarter_of, way_of, way_stated
from probgen.working.fact import Fact

_STRAIGHT: Final = 1e-9  # of a force, the part along an axis that counts as none


@dataclass(frozen=True, slots=True)
class Expectation:
    """What the other forces of a body leave to one along an axis.

    sign: +1 as drawn, -1 against it, 0 none at all; against: the forces it holds in balance.
    lever: one force that holds all others about the joint, where the sense follows from that; else
    None.  held: of these others, those with a lever arm.  pivot: the point about which it alone
    holds the others, where that tells its sense; else "".  sharing: the force that takes a stated
    share of the same load; else None.
    """

    force: Force
    sign: int
    against: tuple[Force, ...]
    lever: Force | None = None
    pivot: str = ""
    sharing: Force | None = None
    held: tuple[Force, ...] = ()


def signs_part(digits: Digits, body: Body) -> Iterator[Part]:
    """What is to be expected of the forces and couples whose sense is not known.

    Of a truss's pieces nothing is: members are taken in tension, and the rest is told of the whole;
    of what a section lays bare, whether it must be zero where nothing works it out.
    """
    system = digits.case.system
    if is_piece(system, body):
        yield from _none_inside(digits, body)
        return
    expected = _used(digits, expectations(digits, body))
    settled, earlier = _settled(digits), told_before(system, body)
    places = {each.id for each in earlier}
    before = {force.magnitude for force in system.forces if force.body in places}
    known = before & (_reasoned_on(digits, earlier) | settled.keys())
    facts: list[Fact] = []
    with_another: set[str] = set()
    for id, each in expected.items():
        if id not in with_another and each.force.magnitude not in known:
            # else told with the one it shares with, or where bodies are taken as one
            facts.append(_expected(digits, each))
        with_another |= {each.sharing.id} if each.sharing else set()
    sizes = [f.magnitude for f in _unreasoned(system, body)]
    sizes += [couple.moment for couple in system.couples if couple.body == body.id]
    bodies = bodies_used(digits.case.plan)  # what an earlier one shares with it is told by now
    reasoned = _reasoned_on(digits, bodies[: bodies.index(body) + 1] if body in bodies else [body])
    turned = list(_couples_expected(digits, body))
    facts += turned
    reasoned |= {each.letter for each in turned}
    free = [size for size in dict.fromkeys(sizes) if sign_unknown(system, size)]
    facts += _slips(digits, body, settled, reasoned | before)
    left = [size for size in free if size not in reasoned | settled.keys() | before]
    shared = tuple(size for size in left if names_in(size) & digits.case.plan.left_open)
    found = digits.case.plan.worked_with
    unused = tuple(size for size in left if size not in shared and not names_in(size) & found)
    if told := tuple(size for size in left if size not in (*shared, *unused)):
        facts.append(SignsOpen(told))
    facts += [LeftOpen(unused)] if unused else []
    facts += [LeftOpen(shared, unsettled=True)] if shared else []
    if facts:
        yield sentences(*facts)


def _none_inside(digits: Digits, part: Body) -> Iterator[Part]:
    """Forces at a section that must be zero, and that no step of the working finds."""
    found = digits.case.plan.worked_with
    none = [
        _expected(digits, each)
        for each in expectations(digits, part).values()
        if not each.against and not names_in(each.force.magnitude) & found
    ]
    if none:
        yield sentences(*none)


def _used(digits: Digits, expected: Mapping[str, Expectation]) -> Mapping[str, Expectation]:
    """Those of forces that are worked out, that tell the way of another, or that must be zero."""
    found = digits.case.plan.worked_with
    telling = {each.id for other in expected.values() for each in other.against}
    return {
        id: each
        for id, each in expected.items()
        if not each.against or id in telling or names_in(each.force.magnitude) & found
    }


def _reasoned_on(digits: Digits, bodies: Sequence[Body]) -> set[Expression]:
    """The sizes of the forces whose sense is told where one of the bodies is."""
    told = [each for body in bodies for each in _used(digits, expectations(digits, body)).values()]
    return {f.magnitude for each in told for f in (each.force, each.sharing) if f}


def _settled(digits: Digits) -> dict[Expression, str]:
    """Friction and its condition, but where a balance gives it and the condition a coefficient."""
    balanced = {s.unknown for s in digits.case.plan.steps if s.equation.kind != "condition"}
    conditions = digits.case.system.conditions
    return {each.left: each.id for each in conditions if not names_in(each.left) & balanced}


def _slips(
    digits: Digits, body: Body, settled: Mapping[Expression, str], reasoned: Collection[Expression]
) -> Iterator[Fact]:
    """Why friction at its largest acts as drawn; of a pair, on the first of the bodies."""
    system, reasons = digits.case.system, digits.case.labels.reasons
    ids = [force.id for force in system.forces]
    found: dict[tuple[float, bool, str], list[Force]] = {}
    for force in system.forces:
        again = force.pair and ids.index(force.pair) < ids.index(force.id)
        limit = Quantity(force.id).limit
        if again or force.body != body.id or settled.get(force.magnitude) != limit:
            continue
        if force.magnitude not in reasoned:
            drawn = float(evaluate(force.direction, digits.case.values))
            steady = reasons.get(limit) is Reason.SLIDES_STEADILY
            own = system.force(force.id).body if isinstance(body, Whole) else body.id
            found.setdefault((drawn, steady, own), []).append(force)
    for (drawn, steady, own), alike in found.items():
        letters, elements = (tuple(f.magnitude for f in alike), tuple(f.element for f in alike))
        yield SlipOpposed(letters, own, elements, way_of(drawn + 180.0), way_of(drawn), steady)


def sign_unknown(system: System, size: Expression) -> bool:
    """Whether a size is looked for and may come out negative."""
    held = [system.variables[name] for name in names_in(size)]
    return any(variable.role is Role.UNKNOWN and not variable.nonnegative for variable in held)


def _open(system: System, force: Force) -> bool:
    """Whether nothing tells which way a force acts."""
    return not way_stated(force) and sign_unknown(system, force.magnitude)


def _unreasoned(system: System, body: Body) -> list[Force]:
    """The open forces on a body; how links are taken is told of them all."""
    on = (force for force in system.forces if force.body == body.id)
    return [force for force in on if force.kind is not Kind.LINK and _open(system, force)]


def expectations(digits: Digits, body: Body) -> Mapping[str, Expectation]:
    """By the id of each force whose way follows from the ways of the others alone."""
    system = digits.case.system
    on = [force for force in system.forces if force.body == body.id]
    free = [force for force in _unreasoned(system, body) if isinstance(force.magnitude, Name)]
    found: dict[str, Expectation] = {}
    while True:
        fresh = [force for force in free if force.id not in found]
        expected = (
            _expectation(digits, force, [each for each in on if each is not force], found)
            or _by_turning(digits, force)
            for force in fresh
        )
        first = next(filter(None, expected), None)
        if first is None:
            return found
        found[first.force.id] = first


def _expectation(
    digits: Digits, force: Force, others: list[Force], found: Mapping[str, Expectation]
) -> Expectation | None:
    """None where others act both ways along the line of the force, or themselves are open.

    found: what was reasoned of others before.
    """
    values = digits.case.values
    along = float(evaluate(force.direction, values))
    oblique = quarter_of(along) is None
    if oblique and force.part is not ForcePart.FRICTION:
        return None
    parts: dict[str, float] = {}
    against: list[Force] = []
    sharing = None
    for other in others:
        known = names_in(other.direction) <= values.keys()
        turned = float(evaluate(other.direction, values)) - along if known else 45.0
        part = math.cos(math.radians(turned))
        if abs(part) < _STRAIGHT:
            continue
        if _shares(digits.case, force, other) and part > 0.0:
            sharing = other
            continue
        sign = _sign_of(digits, other, found)
        if sign is None:
            return None
        if sign:
            against.append(other)
            parts[other.id] = sign * part
    signs = {1 if part > 0 else -1 for part in parts.values()}
    if oblique and (len(signs) != 1 or sharing):
        return None
    if len(signs) > 1:
        return None if sharing else _by_lever(digits, force, against, parts)
    return Expectation(force, -signs.pop() if signs else 0, tuple(against), sharing=sharing)


def _sign_of(digits: Digits, force: Force, found: Mapping[str, Expectation]) -> int | None:
    """+1 for a force that acts as drawn, -1 against it, 0 for none; None where nothing tells."""
    if force.id in found:
        return found[force.id].sign
    values = digits.case.values
    valued = names_in(force.magnitude) <= values.keys()
    negative = valued and float(evaluate(force.magnitude, values)) < 0.0
    return None if negative or _open(digits.case.system, force) else 1


def _shares(case: Case, force: Force, other: Force) -> bool:
    """Whether a condition states the ratio of two forces, which is above zero."""
    for condition in case.system.conditions:
        held = names_in(condition.left), names_in(condition.right)
        if not {force.id, other.id} <= held[0] | held[1] or force.id in held[0] & held[1]:
            continue
        bare = {force.magnitude, other.magnitude} & {condition.left, condition.right}
        unknown = (held[0] | held[1]) & set(case.system.unknowns)
        if bare and unknown == {force.id, other.id}:
            settled = unknown <= case.values.keys()
            return settled and case.values[force.id] * case.values[other.id] > 0.0
    return False


def _by_turning(digits: Digits, force: Force) -> Expectation | None:
    """A force that alone holds all others about a pivot has to turn the body the other way."""
    bodies = made_of(digits.case.system.body(force.body))
    against = _turned_against(digits, bodies, force.id)
    if against is None:
        return None
    pivot, sense, others = against
    return Expectation(force, sense, others, pivot=pivot)


def _turned_against(
    digits: Digits, bodies: tuple[str, ...], unknown: str
) -> tuple[str, int, tuple[Force, ...]] | None:
    """The pivot about which one unknown holds forces that all turn one way.

    Gives the pivot, +1 where the unknown turns the other way as drawn and -1 where against it, and
    the forces.
    """
    system, values = digits.case.system, digits.case.values
    for step in digits.case.plan.steps:
        equation = step.equation
        if (equation.kind, equation.bodies, step.unknown, step.partners) != (
            "torque", bodies, unknown, ()
        ):  # fmt: skip
            continue
        turning = signed_arms(equation, values)
        turning |= {t.source: float(t.sign) for t in equation.terms if t.length is None}
        own = turning.pop(unknown, 0.0)
        ids = {force.id for force in system.forces}
        if not own or not turning or not turning.keys() <= ids:
            return None
        others = tuple(system.force(id) for id in turning)
        senses = {turning[each.id] > 0.0 for each in others if abs(turning[each.id]) > _STRAIGHT}
        if len(senses) != 1 or any(_sign_of(digits, each, {}) is None for each in others):
            return None
        return equation.about, 1 if (own > 0.0) != senses.pop() else -1, others
    return None


def _couples_expected(digits: Digits, body: Body) -> Iterator[TurnExpected]:
    """Couples that alone hold the forces on a body about some point."""
    for couple in digits.case.system.couples:
        if couple.body != body.id or not isinstance(couple.moment, Name):
            continue
        against = _turned_against(digits, made_of(body), couple.id)
        if against is not None and sign_unknown(digits.case.system, couple.moment):
            pivot, sign, others = against
            letters = tuple(dict.fromkeys(each.magnitude for each in others))
            rotation: Rotation = "clockwise" if sign > 0 else "counter-clockwise"
            yield TurnExpected(
                couple.moment, made_of(body), pivot, letters, rotation, None, sign > 0
            )


def _by_lever(
    digits: Digits, joint: Force, others: list[Force], parts: Mapping[str, float]
) -> Expectation | None:
    """One force against all the rest, whose torques about the joint it holds."""
    found = lever_against(digits.case, joint, others, parts)
    if found is None:
        return None
    rest = tuple(other for other in others if other is not found.force)
    return Expectation(joint, found.sign, rest, found.force, held=found.held)


def _expected(digits: Digits, expectation: Expectation) -> Fact:
    force = expectation.force
    drawn = float(evaluate(force.direction, digits.case.values))
    quarter = way_of(drawn).quarter
    axis = "" if quarter is None else "xy"[quarter % 2]
    if not expectation.against:
        return NothingAgainst(force.magnitude, axis)
    way = way_of(drawn if expectation.sign > 0 else drawn + 180.0)
    against = tuple(dict.fromkeys(each.magnitude for each in expectation.against))
    if expectation.sharing is not None:
        both = (force.magnitude, expectation.sharing.magnitude)
        theirs = way_of(drawn + 180.0 if expectation.sign > 0 else drawn)
        return SharesExpected(both, way, against, theirs, expectation.sign > 0)
    if expectation.pivot:
        rotation = _rotation(digits, expectation)
        return TurnExpected(
            force.magnitude, made_of(digits.case.system.body(force.body)), expectation.pivot,
            against, rotation, way, expectation.sign > 0,
        )  # fmt: skip
    if expectation.lever is not None:
        pull = float(evaluate(expectation.lever.direction, digits.case.values))
        level = way_of(90.0 if way_of(pull).up else 270.0) if axis == "y" else None
        side = level or way_of(0.0 if way_of(pull).right else 180.0)
        nearer = side.quarter != way.quarter
        lever = expectation.lever.magnitude
        drawn_so = expectation.sign > 0
        values = digits.case.values
        oblique = any(
            quarter_of(float(evaluate(each.direction, values))) is None
            for each in expectation.against
        )
        held = tuple(dict.fromkeys(each.magnitude for each in expectation.held))
        partly = quarter_of(pull) is None
        turning = both_parts_turn(digits.case, force, expectation.lever)
        return LeverExpected(
            force.magnitude, way, lever, against, held, side, force.point, nearer, drawn_so,
            oblique, partly, by_line=partly and turning and quarter is not None,
        )  # fmt: skip
    theirs = way_of(drawn + 180.0 if expectation.sign > 0 else drawn)
    strands = len(expectation.against) if len(against) == 1 else 1
    besides = [f for f in digits.case.system.forces if f.body == force.body and f is not force]
    own = [f for f in besides if f.element == force.element and f.part.is_component]
    every = all(f in expectation.against for f in besides if f not in own)
    return PartExpected(
        force.magnitude, way, against, theirs, axis, expectation.sign > 0, strands, every=every,
        axial=force.part is ForcePart.AXIAL,
    )  # fmt: skip


def _rotation(digits: Digits, expectation: Expectation) -> Rotation:
    """Which way the forces turn the body that one of them holds about a pivot."""
    for step in digits.case.plan.steps:
        if step.unknown == expectation.force.id:
            arms = signed_arms(step.equation, digits.case.values)
            turned = next(arms[each.id] for each in expectation.against if arms[each.id])
            positive = step.equation.method.positive == "counter-clockwise"
            return "counter-clockwise" if (turned > 0.0) == positive else "clockwise"
    raise AssertionError(expectation.force.id)
