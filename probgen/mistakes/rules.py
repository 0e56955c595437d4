"""Slips: the ways a student's working of a plan is known to go wrong.

Each rule looks for what it needs in a plan and gives the workings it leads to.  Which slips there
are, and what speaks for each, is told in `probgen.mistakes.comparison`.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Final

from probgen.mistakes import angles, arms, distances, halves, joints, particles, trusses
from probgen.mistakes.variant import (
    Misstep,
    Part,
    TermChange,
    dropped,
    flipped,
    moved,
    on_terms,
    own_weights,
    renamed,
    replaced,
    rewritten,
    sum_of,
    weights_on,
    workable,
)
from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Expression,
    Name,
    Product,
    Quotient,
    names_in,
    negative,
    number,
    total,
)
from probgen.quantities.unit import (
    ACCELERATION,
    ANGLE,
    FORCE,
    LENGTH,
    MASS,
    PLAIN,
    SI,
    Unit,
    UnitSystem,
)
from probgen.statics.definition import names_behind
from probgen.statics.equation import Equation, Term
from probgen.statics.geometry import way
from probgen.statics.plan import Plan, Probe, find_plan
from probgen.statics.refusal import Refusal
from probgen.statics.step import Step
from probgen.statics.system import Body, Force, Kind, Role, System, Variable

Rule = Callable[[Plan, UnitSystem], Iterator[Misstep]]
_SUPPORTS: Final = (Kind.HINGE, Kind.ROUGH)
_USUAL_FIGURES: Final = 3
"""Until the course's own take their place."""
_NO_METRES: Final = (MASS, FORCE, ANGLE, PLAIN)


def missteps(
    plan: Plan,
    probe: Probe,
    units: UnitSystem = SI,
    figures: int = 3,
    slips: Collection[str] | None = None,
) -> tuple[Misstep, ...]:
    """Every slip that has a meaning for a plan; found once, good for every draw.

    probe: coherent values of givens, derived quantities and g, arrays of one or more draws.
    units: the coherent units of the course; what is given in them needs no converting.
    figures: significant ones of the course's answers.
    slips: the ids of those that are looked for; None: all.
    """
    rules = [rule for slip, rule in RULES.items() if slips is None or slip in slips]
    every = (each for way in workings(plan, probe) for each in _made_in(way, units, rules))
    return tuple(replace(each, figures=figures) if each.figures else each for each in every)


def _made_in(working: Plan, units: UnitSystem, rules: Sequence[Rule]) -> tuple[Misstep, ...]:
    found = (made for rule in rules for made in rule(working, units))
    return tuple(misstep for misstep in found if workable(misstep.plan))


def workings(plan: Plan, probe: Probe) -> tuple[Plan, ...]:
    """The workings slips are looked for in: the plan's own, which a key shows, and one that takes
    torques about the support, as most students do, where the plan does otherwise.
    """
    system = plan.system
    support = next((e.at for e in system.elements if e.kind in _SUPPORTS), "")
    if not support or system.pivot or len(system.bodies) > 1 or support in plan.pivots:
        return (plan,)
    try:
        usual = find_plan(replace(system, pivot=support), probe, plan.method)
    except Refusal:
        return (plan,)
    return (plan, usual)


# Weights, masses and units.


def _mass_as_weight(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """m g -> m, where masses are in the unit that goes with the unit of force.

    Where no mass is given but one is asked, its weight is written down as that mass.
    """
    used = frozenset().union(*(names_in(d.expression) for d in plan.definitions))
    masses = [v for v in plan.system.variables.values() if v.id in used and v.dimension == MASS]
    coherent = units.unit_of(MASS).factor
    changed = renamed(plan, {"g": number(1, units.unit_of(ACCELERATION))})
    if changed and all(mass.unit.factor == coherent for mass in masses):
        told: dict[str, Part] = {"g": Name("g", "g")}
        sought = () if masses else _sought_masses(plan)
        for weight, mass in sought:
            yield Misstep("mass_as_weight", changed, "asked", told | {"W": weight, "m": mass})
        if not sought:
            yield Misstep("mass_as_weight", changed, "one" if len(masses) == 1 else "", told)


def _sought_masses(plan: Plan) -> list[tuple[Expression, Expression]]:
    """Each weight whose mass a step finds from it, W = m g, with that mass."""
    variables, found = plan.system.variables, list[tuple[Expression, Expression]]()
    for step in plan.steps:
        if step.equation.kind == "condition" and variables[step.unknown].dimension == MASS:
            mass = variables[step.unknown].as_name
            sides = [term.magnitude for term in step.equation.terms]
            found += [(w, mass) for w in sides if isinstance(w, Name) and w != mass]
    return found


def _own_weight_forgotten(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for weight in own_weights(plan.system):
        changed = rewritten(plan, on_terms(dropped, sources={weight.id}))
        if changed:
            body = plan.system.body(weight.body)
            told: dict[str, Part] = {"W": weight.magnitude, "body": body}
            # a rod is easily thought light; of what counts as a point only the lighter part is
            others = total((1, _other_weights(plan.system, weight)), (-1, weight.magnitude))
            only_if = others if body.particle else None
            yield Misstep("own_weight_forgotten", changed, parts=told, only_if=only_if)


def _load_forgotten(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """What lies in or on a particle left out, where it is lighter than the particle itself."""
    own = own_weights(plan.system)
    for carrier in (weight for weight in own if plan.system.body(weight.body).particle):
        for load in weights_on(plan.system, carrier.body):
            changed = rewritten(plan, on_terms(dropped, sources={load.id}))
            if changed and load not in own:
                heavier = total((1, carrier.magnitude), (-1, load.magnitude))
                told: dict[str, Part] = {"W": load.magnitude}
                yield Misstep("load_forgotten", changed, parts=told, only_if=heavier)


def _hole_added(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """What is cut out counted as one more part."""
    for hole, size in _holes(plan):
        changed = replaced(plan, hole.id, negative(size))
        yield Misstep("hole_added", changed, parts={"W": hole.magnitude})


def _hole_forgotten(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for hole, _ in _holes(plan):
        changed = replaced(plan, hole.id, ZERO)
        yield Misstep("hole_forgotten", changed, parts={"W": hole.magnitude})


def _holes(plan: Plan) -> Iterator[tuple[Force, Expression]]:
    sizes = {each.variable: each.expression for each in plan.definitions}
    for force in plan.system.forces:
        if force.kind is Kind.HOLE:
            yield force, sizes[force.id]


def _other_weights(system: System, weight: Force) -> Expression:
    """All weights but one."""
    others = (f for f in system.forces if f.kind is Kind.WEIGHT and f.id != weight.id)
    return sum_of(others)


def _whole_length_for_weight(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The body's own weight moved to its end far from the support; not to a pivot, where it would
    be the same as left out.

    Unlikely where the weight's distance is printed, and not half of the body's length.
    """
    for weight in own_weights(plan.system):
        body = plan.system.body(weight.body)
        outline = body.outline
        ends = [end for end in (outline[0], outline[-1]) if end not in _held(plan.system)]
        if len(ends) != 1 or len(outline) > 2 or ends[0] in (weight.point, *plan.pivots):
            continue
        changed = rewritten(plan, moved(plan.system, weight, plan.system.points[ends[0]]))
        if changed:
            end = Name(ends[0], ends[0])
            told: dict[str, Part] = {"W": weight.magnitude, "body": body, "end": end}
            printed = _printed_distance(plan.system, body, weight)
            yield Misstep("whole_length_for_weight", changed, parts=told, unlikely=printed)


def _printed_distance(system: System, body: Body, force: Force) -> bool:
    """Whether a force's place on a body has a letter of its own."""
    start, end = body.outline[0], body.outline[-1]
    places = (names_in(link.length) for link in way(system.points, start, force.point))
    whole = (names_in(link.length) for link in way(system.points, start, end))
    return not frozenset().union(*places) <= frozenset().union(*whole)


def _unit_not_converted(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Lengths or masses put in with their own digits, as if they were coherent: all of one unit.

    Nobody converts one of them and leaves the next as it is.  Lengths that all share a unit may
    stay in it where no other dimension has metres in it: they are only compared.
    """
    variables = plan.system.variables.values()
    given = [each for each in variables if each.role in (Role.GIVEN, Role.DERIVED)]
    alike: dict[Unit, list[Variable]] = {}
    for variable in given:
        if variable.dimension in (LENGTH, MASS):
            alike.setdefault(variable.unit, []).append(variable)
    for unit, own in alike.items():
        coherent = units.unit_of(unit.dimension)
        compared = all(each in own or each.dimension in _NO_METRES for each in given)
        if unit.factor == coherent.factor or (unit.dimension == LENGTH and compared):
            continue
        ratio = number(repr(coherent.factor / unit.factor))
        changed = renamed(plan, {each.id: Product((ratio, each.as_name)) for each in own})
        if changed:
            names = tuple(each.as_name for each in own)
            told: dict[str, Part] = {"q": names, "own": unit, "due": coherent}
            yield Misstep("unit_not_converted", changed, parts=told)


# Torques.


def _torque_sign(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """The torque of one known force the wrong way round.

    Unlikely where all that is known turns one way, or another force that points the same way does:
    nobody sees one weight of several on one side turn back.
    """
    turning = [step for step in plan.steps if step.equation.kind == "torque"]
    for force in {each.id: each for each in plan.system.forces}.values():
        flip = on_terms(flipped, "torque", {force.id})
        holding = [s for s in turning if any(t.source == force.id for t in s.equation.terms)]
        if not holding or any(s.unknown in names_in(force.magnitude) for s in holding):
            continue
        changed = rewritten(plan, flip)
        if changed:
            alike = any(_beside_others(plan.system, step, force) for step in holding) or all(
                _all_one_way(step, force) for step in holding
            )
            told: dict[str, Part] = {"F": force.magnitude}
            yield Misstep("torque_sign", changed, parts=told, unlikely=alike)


def _couple_turned(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for couple, changed in _couples_changed(plan, flipped):
        yield Misstep("couple_turned", changed, parts={"C": couple})


def _couple_left_out(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    for couple, changed in _couples_changed(plan, dropped):
        yield Misstep("couple_left_out", changed, parts={"C": couple})


def _couples_changed(plan: Plan, change: TermChange) -> Iterator[tuple[Expression, Plan]]:
    """The size of each couple that is known, and the plan with its term changed.

    What acts back on another body has no size of its own, and is minus the same.
    """
    system = plan.system
    for couple in system.couples:
        size = couple.moment
        behind = names_behind(names_in(size), system.definitions)
        if isinstance(size, Name) and behind.isdisjoint(system.unknowns):
            changed = rewritten(plan, on_terms(change, "torque", {couple.id}))
            if changed:
                yield size, changed


def _all_one_way(step: Step, force: Force) -> bool:
    """Whether all that a torque balance knows turns as this force does."""
    known = [t for t in step.equation.terms if step.unknown not in names_in(t.magnitude)]
    return {t.sign for t in known if t.source != force.id} <= {
        t.sign for t in known if t.source == force.id
    }


def _beside_others(system: System, step: Step, force: Force) -> bool:
    """Whether a torque balance knows another force that points as this one does and turns as it
    does.
    """
    pointing = {each.id for each in system.forces if each.direction == force.direction}
    known = [t for t in step.equation.terms if step.unknown not in names_in(t.magnitude)]
    signs = {t.sign for t in known if t.source == force.id}
    return any(t.source in pointing - {force.id} and t.sign in signs for t in known)


def _inverted_arm_ratio(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Two torques only: F l_1 = W l_2 written F l_2 = W l_1, arms (or forces) upside down."""

    def arms(term: Term) -> Term:
        return replace(term, length=term.length and Quotient(UNITY, term.length))

    def forces(term: Term) -> Term:
        return replace(term, magnitude=Quotient(UNITY, term.magnitude))

    turning = [step.equation for step in plan.steps if step.equation.kind == "torque"]
    if not turning or not all(_is_lever(equation) for equation in turning):
        return
    lengths = (names_in(t.length) for e in turning for t in e.terms if t.length)
    place_sought = frozenset().union(*lengths) & frozenset(plan.system.unknowns)
    changed = rewritten(plan, on_terms(forces if place_sought else arms, "torque"))
    if changed:
        yield Misstep("inverted_arm_ratio", changed)


def _is_lever(equation: Equation) -> bool:
    """Whether exactly two torques hold each other, both square to their arms."""
    level = all(term.ratio == UNITY and term.length for term in equation.terms)
    return level and len(equation.terms) == 2


def _early_rounding(plan: Plan, units: UnitSystem) -> Iterator[Misstep]:
    """Each result rounded as answers are before it is used again, where one is."""
    found: set[str] = set()
    for line in plan.lines:
        if names_in(line.expression) & found:
            yield Misstep("early_rounding", plan, figures=_USUAL_FIGURES)
            return
        found.add(line.id)


RULES: Final[Mapping[str, Rule]] = {
    "mass_as_weight": _mass_as_weight,
    "own_weight_forgotten": _own_weight_forgotten,
    "load_forgotten": _load_forgotten,
    "hole_added": _hole_added,
    "hole_forgotten": _hole_forgotten,
    "whole_length_for_weight": _whole_length_for_weight,
    "unit_not_converted": _unit_not_converted,
    "torque_sign": _torque_sign,
    "couple_turned": _couple_turned,
    "couple_left_out": _couple_left_out,
    "inverted_arm_ratio": _inverted_arm_ratio,
    "early_rounding": _early_rounding,
    **angles.RULES,
    **arms.RULES,
    **distances.RULES,
    **halves.RULES,
    **particles.RULES,
    **joints.RULES,
    **trusses.RULES,
}
"""Each rule makes one slip, which it stands under."""


def _held(system: System) -> frozenset[str]:
    """The points where supports act."""
    return frozenset(e.at for e in system.elements if e.kind in _SUPPORTS)
