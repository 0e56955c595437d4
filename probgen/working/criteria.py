"""What of a working points are given for: diagrams, balances, numbers put in, results."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from probgen.quantities.dimension import dimension_of
from probgen.quantities.expression import UNITY, ZERO, names_in
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.unit import FORCE, PLAIN, TORQUE
from probgen.statics.equation import Equation
from probgen.statics.plan import Branch, Plan, limits_asked
from probgen.statics.quantity_id import Quantity
from probgen.statics.state import utmost_finds
from probgen.statics.step import Step
from probgen.statics.system import (
    Body,
    Force,
    ForcePart,
    Form,
    Kind,
    Limit,
    Spread,
    System,
    Variable,
)
from probgen.statics.taken_as_one import made_of
from probgen.statics.truss import without_idle
from probgen.working.bodies_used import (
    as_told,
    bodies_used,
    ids_of,
    steps_compared,
    told_late,
)
from probgen.working.convention import Convention, Turning
from probgen.working.criterion import (
    BalanceWritten,
    ConditionWritten,
    Criterion,
    DiagramDrawn,
    DirectionFound,
    FirstLimitNamed,
    FoundAtFirstLimit,
    FoundFromBalance,
    FoundFromCondition,
    IdleNamed,
    InsideDrawn,
    Judged,
    LimitsCompared,
    MagnitudeFound,
    MarginFound,
    NumbersPutIn,
    OtherRoutes,
    QuantityFound,
    ResultantIntegrated,
    ResultantPlaced,
    TakenOutOfEquations,
    TorqueEquation,
    WrittenOut,
    halves,
    of_asked,
    solved,
)
from probgen.working.direction import way_stated
from probgen.working.needed import needed_for


def other_routes(plan: Plan) -> OtherRoutes:
    """What is said of marks for another way, and after a wrong result."""
    for branch in plan.branches:
        return other_routes(branch.plan)
    found = {each.variable for each in plan.definitions} | {step.unknown for step in plan.steps}
    lines = (
        *(each.expression for each in plan.definitions),
        *(step.expression for step in plan.steps),
        *(end.expression for end in plan.outcomes),
    )
    return OtherRoutes(follows=any(names_in(line) & found for line in lines))


def criteria(plan: Plan, convention: Convention) -> Iterator[Criterion]:
    """All there is to mark in a working of the plan, in its order.

    A balance that only shows a force to be zero that no answer comes from earns nothing.
    """
    asked = {find.quantity for find in plan.system.finds}
    asked |= {limit.id for limit in _judged_limits(plan.system)} | plan.system.asked.keys()
    asked.discard("")  # what is asked of limits has no quantity, nor has an equation
    needed = frozenset[str]().union(*(needed_for(plan, find) for find in plan.system.finds))
    for each in _in_order(plan, convention):
        if each.kind != "force" or each.quantity in needed:
            yield of_asked(each, each.quantity in asked)


def _in_order(plan: Plan, convention: Convention) -> Iterator[Criterion]:
    system = plan.system
    alone = len(system.bodies) == 1
    for body in _in_order_told(plan):
        shown = without_idle(as_told(plan).system, plan.steps)
        couples = sum(1 for couple in shown.couples if couple.body == body.id)
        drawn = DiagramDrawn(made_of(body), alone, _forces_on(shown, body.id), couples)
        yield Criterion("diagram", drawn)
    for resultant, centroid in _integrated(plan):
        yield Criterion("integral", ResultantIntegrated(resultant.as_name, centroid.as_name))
    for resultant in _uneven(plan):
        yield Criterion("resultant", ResultantPlaced(resultant.as_name))
    together: set[str] = set()
    last = _at_first_limit(plan)
    for step in steps_compared(plan):
        variable = system.variables[step.unknown]
        if step.unknown in last:
            yield from _set_up(_of_step(system, step, convention.turning))
        elif step.unknown in together:
            found = QuantityFound(variable.as_name, _judged(system, variable))
            yield Criterion("result", found, step.unknown)
        elif step.partners:
            together |= {partner.unknown for partner in step.partners}
            yield from _of_equations(system, step, convention.turning)
        else:
            yield from _of_step(system, step, convention.turning)
    for variable in _from_data(plan):
        name = variable.as_name
        found = QuantityFound(name, _judged(system, variable))
        yield Criterion("formula", WrittenOut(name))
        yield Criterion("substitution", NumbersPutIn(name))
        yield Criterion("result", found, variable.id)
    for find in utmost_finds(system):
        if len(plan.branches_to(find)) > 1:
            yield Criterion("limit", FirstLimitNamed())
            own = {s.unknown for each in plan.branches_to(find) for s in each.plan.steps}
            yield from (each for id, each in last.items() if id in own)
    for find in system.finds:
        if find.form is Form.HOLDS:
            limits = limits_asked(system, find)
            yield Criterion("limit", LimitsCompared(tuple((s.left, s.right) for s in limits)))
            yield from (_margin(system, limit) for limit in limits)
        if find.form is Form.MAGNITUDE_AND_DIRECTION:
            owner, of = find.quantity, Quantity(find.quantity)
            worded = convention.direction != "axis"
            yield Criterion("magnitude", MagnitudeFound(owner), of.magnitude)
            yield Criterion("direction", DirectionFound(owner, worded), of.direction)
    yield from _drawn(system)


def _at_first_limit(plan: Plan) -> dict[str, Criterion]:
    """What is asked and is another number where another limit is reached first, by id.

    The one that is asked earns, of which the key has the range, not one on the way to each limit.
    """
    several = [each for each in plan.branches if len(plan.branches_to(each.utmost)) > 1]
    found: dict[str, Criterion] = {}
    for id in plan.system.asked:
        if any(id in _found_at(plan, branch) for branch in several):
            variable = plan.system.variables[id]
            what = FoundAtFirstLimit(variable.as_name, _judged(plan.system, variable))
            found[id] = Criterion("result", what, id)
    return found


def _found_at(plan: Plan, branch: Branch) -> set[str]:
    """The ids of what a plan to one of several limits finds that is not so at each."""
    return {step.unknown for step in branch.plan.steps} - plan.found_anyway(branch)


def _set_up(found: Iterable[Criterion]) -> Iterator[Criterion]:
    """Of a step whose number earns elsewhere, the equation it comes from; a limit as reached."""
    for each in found:
        if each.kind not in ("substitution", "result"):
            method = (halves(each) or (each,))[0]
            reached = method.kind == "condition" and not solved(each)
            yield replace(method, kind="reached") if reached else method


def _judged_limits(system: System) -> Iterator[Limit]:
    """The limits of which it is asked whether they hold."""
    for find in system.finds:
        if find.form is Form.HOLDS:
            yield from limits_asked(system, find)


def _margin(system: System, limit: Limit) -> Criterion:
    dimensions = {each.id: each.dimension for each in system.variables.values()}
    plain = dimension_of(limit.left, dimensions) == PLAIN
    judged = Judged.NOTHING if plain else Judged.UNIT
    return Criterion("result", MarginFound(limit.left, limit.right, judged), limit.id)


def _drawn(system: System) -> Iterator[Criterion]:
    """What a student draws."""
    for body in system.to_draw:
        yield Criterion("drawing", InsideDrawn(body))


def _in_order_told(plan: Plan) -> list[Body]:
    """The bodies used as a working draws them: those told late where a step first needs each."""
    used, late, first = bodies_used(plan), told_late(plan), dict[tuple[str, ...], int]()
    for place, step in enumerate(step for step in plan.steps_told if not step.idle):
        for equation in step.equations:
            first.setdefault(equation.bodies, place)
    early = [body for body in used if body not in late]
    return [*early, *sorted(late, key=lambda body: first.get(made_of(body), len(first)))]


def _from_data(plan: Plan) -> list[Variable]:
    """The quantities asked that follow from the data with no balance, such as a centre of mass."""
    asked: set[str] = set()
    for find in plan.system.finds:
        asked |= {find.quantity, *Quantity(find.quantity).components}
    settled = [d.variable for d in plan.definitions if d.variable in asked]
    return [plan.system.variables[id] for id in settled]


def _integrated(plan: Plan) -> list[tuple[Variable, Variable]]:
    """The resultants of loads by a formula on the bodies used, with their places, each once.

    One that is asked, or whose place is, has marks of its own.
    """
    variables, asked = plan.system.variables, {find.quantity for find in plan.system.finds}
    pairs = {id: s.intensity.centroid.id for id, s in _spread_loads(plan) if s.intensity}
    return [
        (variables[resultant], variables[centroid])
        for resultant, centroid in pairs.items()
        if not asked & {resultant, centroid}
    ]


def _uneven(plan: Plan) -> list[Variable]:
    """The resultants of loads that grow or fall evenly, each once, that are not asked."""
    asked = {find.quantity for find in plan.system.finds}
    found = (id for id, s in _spread_loads(plan) if not s.intensity and s.first != s.last)
    return [plan.system.variables[id] for id in dict.fromkeys(found) if id not in asked]


def _spread_loads(plan: Plan) -> Iterator[tuple[str, Spread]]:
    """Those on the bodies used, by the id of their resultant."""
    used = ids_of(bodies_used(plan))
    for element in plan.system.elements:
        if element.body in used and element.spread is not None:
            yield element.id, element.spread


def _forces_on(system: System, body: str) -> int:
    """How many forces the diagram shows: one for a hinge, whose components are two."""
    own = [force for force in system.forces if force.body == body]
    return len({force.element if force.part.is_component else force.id for force in own})


def _of_step(system: System, step: Step, turning: Turning) -> Iterator[Criterion]:
    variable = system.variables[step.unknown]
    name, equation = variable.as_name, step.equation
    judged = Judged.NOTHING if step.expression == ZERO else _judged(system, variable)
    match equation.kind:
        case "torque":
            yield Criterion("torque", _torque(system, equation, turning))
            yield Criterion("substitution", NumbersPutIn(name))
            yield Criterion("result", QuantityFound(name, judged), step.unknown)
        case "force" if step.idle:
            yield Criterion("force", IdleNamed(name, equation.body), step.unknown)
        case "force":
            whose, some = _whose(system, equation), step.expression != ZERO
            found = FoundFromBalance(name, equation.about, judged, whose, some)
            yield Criterion("force", found, step.unknown)
        case _ if step.expression == ZERO:  # the condition says so itself
            said = ConditionWritten(_formula(equation))
            yield Criterion("condition", said, step.unknown)
        case _:
            apart = all(term.magnitude != name for term in equation.terms)
            condition = FoundFromCondition(name, _formula(equation), judged, apart)
            yield Criterion("condition", condition, step.unknown)


def _of_equations(system: System, step: Step, turning: Turning) -> Iterator[Criterion]:
    """Equations solved together: each of them, what is taken out, the first result."""
    for equation in step.equations:
        match equation.kind:
            case "torque":
                yield Criterion("torque", _torque(system, equation, turning))
            case "force":
                balance = BalanceWritten(equation.about, _whose(system, equation))
                yield Criterion("balance", balance)
            case _:
                yield Criterion("condition", ConditionWritten(_formula(equation)))
    variable = system.variables[step.unknown]
    others = tuple(system.variables[partner.unknown].as_name for partner in step.partners)
    if sum(equation.kind != "condition" for equation in step.equations) > 1:  # else it is put in
        yield Criterion("elimination", TakenOutOfEquations(others))
    found = QuantityFound(variable.as_name, _judged(system, variable))
    yield Criterion("result", found, step.unknown)


def _torque(system: System, equation: Equation, turning: Turning) -> TorqueEquation:
    slanting = any(term.ratio != UNITY for term in equation.terms)
    written = equation.method.torque
    form = written if slanting or written == "components" else "arm"
    return TorqueEquation(equation.about, turning, form, _whose(system, equation))


def _whose(system: System, equation: Equation) -> tuple[str, ...]:
    """The bodies of a balance, where there are several it could be of."""
    return equation.bodies if len(system.bodies) > 1 else ()


def _formula(equation: Equation) -> Formula:
    """A condition as it is written: left = right."""
    left, right = (term.magnitude for term in equation.terms)
    return (left, Relation("="), right)


def _judged(system: System, variable: Variable) -> Judged:
    """What is not asked with a sign has a size alone."""
    if _sign_asked(system, variable):
        return Judged.SIGN_AND_UNIT
    return Judged.UNIT if variable.unit.plain else Judged.NOTHING


def _sign_asked(system: System, variable: Variable) -> bool:
    """Whether the answer has a sign: of a component, a couple, or what pulls or pushes, but not of
    a force that acts as the problem says, of friction or a spring.

    A component also where the direction is asked, which follows from its sign.
    """
    asked = variable.id in system.asked
    if variable.component_of:
        return asked or variable.component_of in {of.owner for of in system.asked.values()}
    own = [force for force in system.forces if variable.id in names_in(force.magnitude)]
    sized = variable.nonnegative or (own and all(map(_has_size_alone, own)))
    return asked and not sized and variable.dimension in (FORCE, TORQUE)


def _has_size_alone(force: Force) -> bool:
    return way_stated(force) or force.part is ForcePart.FRICTION or force.kind is Kind.SPRING
