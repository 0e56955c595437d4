"""Equations that had to be solved together: all of them, how they go together, the results."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from probgen.quantities.angle_sum import with_angle_sums
from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Call,
    Expression,
    Name,
    Power,
    Product,
    Quotient,
    evaluate,
    linear_parts,
    names_in,
    negative,
    positive_first,
    substituted,
    times,
    total,
)
from probgen.quantities.expression import (
    parts as inner,
)
from probgen.quantities.factors import factored, terms_of, with_powers
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.like_terms import collected, in_one_order
from probgen.quantities.multiplier import Multiplied, multiplied
from probgen.statics.angle_pair import angle_pair
from probgen.statics.equation import Equation, X, Y
from probgen.statics.step import Step
from probgen.statics.system import Kind, System
from probgen.statics.taken_as_one import made_of
from probgen.wording.block import Display, Row
from probgen.wording.components import counted_forces, split_told, splits, weights_turned
from probgen.wording.equations import balance_row, rows_of, says
from probgen.wording.facts.angle import AnglesAdded
from probgen.wording.facts.balance import (
    AngleSquaredOut,
    BalancesSay,
    ConditionsHold,
    Divided,
    ForceHeading,
    ForcesZero,
    NoneAlone,
    SquaredAndAdded,
    TogetherHeading,
    TorquesZero,
    WithTheResult,
)
from probgen.wording.facts.together import Called, PutIn, PutIntoTheRest, RestFollows, TakenOut
from probgen.wording.level_part import level_part
from probgen.wording.limit import said_of_result
from probgen.wording.other_angle import angle_part, apart_part
from probgen.wording.passage import Part, Passage, one_paragraph, sentences
from probgen.wording.steady import how_still
from probgen.working.bodies_used import bodies_used
from probgen.working.digits import Digits
from probgen.working.fact import Fact


def together_passage(
    digits: Digits, step: Step, needed: Sequence[Step], first: Sequence[Part] = ()
) -> Passage:
    """Equations that hold the same unknowns: all of them, how they go together, the results.

    needed: the steps among the partners whose quantities are wanted; first: what the equations
    hold and has to be worked out before.
    """
    group = (step, *step.partners)
    names = tuple(_name(digits, each.unknown) for each in group)
    parts: list[Part] = [
        *first,
        *_balances(digits, step),
        *one_paragraph(
            sentences(NoneAlone(len(group), _as_stated(digits, names))),
            *_combined(digits, step),
        ),
        *_worked(digits, step),
    ]
    squared = [each for each in needed if _squared(each)]
    for each in squared:
        parts.append(sentences(SquaredAndAdded(_name(digits, each.unknown))))
        parts += _worked(digits, each)
    rest = [each for each in needed if each not in squared]
    if rest:
        parts.append(sentences(WithTheResult(), bound=True))
    for each in rest:
        parts += _worked(digits, each)
    return Passage(_heading(digits, step, len(group)), tuple(parts))


def _heading(digits: Digits, step: Step, count: int) -> Fact:
    """That forces balance, where they do so on one body and nothing else is said of them."""
    first, *others = step.equations
    if first.kind == "force" and all((e.kind, e.bodies) == ("force", first.bodies) for e in others):
        return ForceHeading(() if len(digits.case.system.bodies) == 1 else first.bodies)
    return TogetherHeading(count)


def _upright(system: System) -> bool:
    """Whether it is surely seen from the side: ropes that hold no weight may all be level."""
    return any(force.kind is Kind.WEIGHT for force in system.forces)


def _balances(digits: Digits, step: Step) -> Iterator[Part]:
    """The equations: body by body why they hold and how its forces lie, then the conditions."""
    system = digits.case.system
    earlier = _steps_before(digits, step)
    told = {each.bodies for one in earlier for each in one.equations}
    in_order = _in_order(digits, step)
    groups = list(dict.fromkeys(each.bodies for each in in_order))
    for bodies in groups:
        own = [each for each in in_order if each.bodies == bodies]
        too = bodies in told and len([each for each in groups if each]) == 1  # else: of which?
        yield from one_paragraph(
            sentences(*_why_zero(digits, own, too)),
            *(splits(digits, step, own, split_told(system, earlier)) if _upright(system) else ()),
            sentences(
                *weights_turned(system, own, earlier),
                *level_part(system, own),
                *counted_forces(system, own),
            ),
            *(() if bodies else reasons(digits, step, earlier)),
        )
        yield Display(tuple(balance_row(digits, equation) for equation in own))


def _steps_before(digits: Digits, step: Step) -> Sequence[Step]:
    steps = digits.case.plan.steps
    return steps[: steps.index(step)]


def _why_zero(digits: Digits, balances: Sequence[Equation], too: bool) -> Iterator[Fact]:
    """Why some balances of the same bodies are zero; too: whether others were told before."""
    system = digits.case.system
    for each in balances:
        if each.kind == "torque":
            still = how_still(digits, each.bodies)
            yield TorquesZero(each.bodies, each.about, digits.convention.turning, still)
    along = [each for each in balances if each.kind == "force"]
    if along:
        bodies, level = along[0].bodies, all(each.axis in (X, Y) for each in along)
        axes = tuple(sorted({each.about for each in along})) if level else ()
        particle = any(system.body(body).particle for body in bodies)
        too = too or len(along) < len(balances)
        yield ForcesZero(bodies, axes, too, particle, how_still(digits, bodies))


def _name(digits: Digits, id: str) -> Name:
    return digits.case.system.variables[id].as_name


def _as_stated(digits: Digits, names: Sequence[Name]) -> tuple[Name, ...]:
    order = list(digits.case.system.variables)
    return tuple(sorted(names, key=lambda name: order.index(name.id)))


def _in_order(digits: Digits, step: Step) -> list[Equation]:
    """Balances, body by body as their forces are told, those of one as they are used; then
    conditions.
    """
    used = step.divided or step.squared or ()
    rest = [each for each in reversed(step.equations) if each not in used]
    told = [made_of(body) for body in bodies_used(digits.case.plan)]
    place = {bodies: at for at, bodies in enumerate(told)}
    return sorted((*used, *rest), key=lambda each: place.get(each.bodies, len(place)))


def reasons(digits: Digits, step: Step, earlier: Sequence[Step] = ()) -> Iterator[Part]:
    """Why the conditions among the equations hold, but for what was said of those before."""
    known = digits.case.labels.reasons
    told = {known.get(id) for each in earlier for id in _conditions(each)}
    stated = tuple(id for id in _conditions(step) if id in known and known[id] not in told)
    if stated:
        yield sentences(ConditionsHold(stated))


def _conditions(step: Step) -> list[str]:
    return [each.about for each in step.equations if each.kind == "condition"]


def _squared(step: Step) -> bool:
    return isinstance(step.expression, Call) and step.expression.function == "hypot"


def _worked(digits: Digits, step: Step) -> Iterator[Part]:
    """The value of a step without its equation."""
    name = _name(digits, step.unknown)
    yield from angle_part(digits, step)
    yield Display(tuple(rows_of(digits, name, step.expression, step.unknown)))
    yield from said_of_result(digits, step)


def _combined(digits: Digits, step: Step) -> Iterator[Part]:
    """How the equations go together until one quantity is left."""
    if step.divided:
        yield from _by_division(digits, step)
    elif step.squared:
        yield from _by_squares(digits, step)
    else:
        yield from _by_putting_in(digits, step)


def _by_squares(digits: Digits, step: Step) -> Iterator[Part]:
    """Two equations with the cosine and the sine of another angle, and what is left without it."""
    assert step.squared is not None
    cosines, sines = (equation.expression for equation in step.squared)
    (other,) = step.partners
    pair, angle = angle_pair(cosines, sines, other.unknown), _name(digits, other.unknown)
    assert pair is not None
    yield sentences(BalancesSay())
    sides = ((pair.along, "cos"), (pair.across, "sin"))
    yield Display(tuple(_side(pair.size, side, function, angle) for side, function in sides))
    yield sentences(AngleSquaredOut(angle), bound=True)
    assert step.reduced is not None
    squares = total((1, step.reduced), (1, Power(pair.size, 2)))
    yield Display((Row((Power(pair.size, 2),), "=", (collected(squares),)),))


def _by_division(digits: Digits, step: Step) -> Iterator[Part]:
    """Two equations with the cosine and the sine of one angle, and what their quotient leaves."""
    assert step.divided is not None
    cosines, sines = (equation.expression for equation in step.divided)
    pair, angle = angle_pair(cosines, sines, step.unknown), _name(digits, step.unknown)
    if pair is None:  # it is one only with something put in
        yield from _by_putting_in(digits, step)
        return
    yield sentences(BalancesSay())
    sides = ((pair.along, "cos"), (pair.across, "sin"))
    yield Display(tuple(_side(pair.size, side, function, angle) for side, function in sides))
    yield sentences(Divided(pair.size), bound=True)
    if names_in(pair.tangent) & set(step.put_in):
        yield Display((Row((Call("tan", (angle,)),), "=", (pair.tangent,)),))
        yield sentences(PutIn(_said(step), angle, _dropped(digits, step)))


def _side(size: Expression, side: Expression, function: str, angle: Name) -> Row:
    """N = W cos x, or F cos x = what is known."""
    part = times(size, Call(function, (angle,)))
    return Row((side,), "=", (part,)) if isinstance(side, Name) else Row((part,), "=", (side,))


def _by_putting_in(digits: Digits, step: Step) -> Iterator[Part]:
    """What is put into the equation or taken out of others, and what that leaves."""
    name, said = _name(digits, step.unknown), _said(step)
    out = [each for each in _put_in(step) if not says(each.equation, each.unknown)]
    if out:
        yield sentences(_taken_out(digits, step, out))
        rows = (Row((_name(digits, each.unknown),), "=", (each.expression,)) for each in out)
        yield Display(tuple(rows))
        yield from _put_into_the_rest(digits, step)
    elif said:
        rest = _called(digits, step, step.equation)
        yield sentences(PutIn(said, name, _dropped(digits, step), rest))
    if step.reduced is not None and not _plain(step.reduced, step.unknown):
        left = with_powers(collected(in_one_order(_as_it_stood(digits, step, step.reduced))))
        yield Display((Row((left,), "=", (ZERO,)),))
        yield from apart_part(digits, step, left)
    yield from _angles_added(step)


def _taken_out(digits: Digits, step: Step, out: Sequence[Step]) -> TakenOut:
    """What is solved for and in which equations, once what conditions say is put into them."""
    settled = {id: each for id in step.put_in for each in step.equations if says(each, id)}
    others = [each for each in _in_order(digits, step) if each not in settled.values()]
    into = [each for each in others if names_in(each.expression) & settled.keys()]
    return TakenOut(
        _said(step),
        tuple(_called(digits, step, each) for each in into),
        tuple(_name(digits, each.unknown) for each in out),
        tuple(_called(digits, step, each.equation) for each in out),
        into == others and len(into) > 1,
    )


def _called(digits: Digits, step: Step, equation: Equation) -> Called:
    """One of the equations of a step as it is called."""
    row = balance_row(digits, equation)
    if equation.kind == "condition":
        return Called((*row.left, Relation(row.relation), *row.right))
    alike = [e for e in step.equations if (e.kind, e.about) == (equation.kind, equation.about)]
    return Called((*row.left, Relation("="), ZERO), equation.bodies if len(alike) > 1 else ())


def _put_into_the_rest(digits: Digits, step: Step) -> Iterator[Part]:
    """What is left; before that the whole line where the next one does not show what was done."""
    name, rest = _name(digits, step.unknown), _called(digits, step, step.equation)
    before, done = _before(step), _done(step)
    if done is None or (done.factor == UNITY and done.angle is None):
        tangent = None if step.reduced is None else _tangent_in(step.reduced)
        yield sentences(PutIntoTheRest(name, rest, tangent=tangent), bound=True)
        return
    yield sentences(RestFollows(rest), bound=True)
    yield Display((Row((_flat(before),), "=", (ZERO,)),))
    times_factor = None if done.factor == UNITY else done.factor
    yield sentences(PutIntoTheRest(name, rest, times_factor, done.angle), bound=True)


def _tangent_in(expression: Expression) -> Expression | None:
    """The angle of a tangent in it: a balance has sines and cosines alone."""
    match expression:
        case Call("tan", (angle,)):
            return angle
    return next((a for part in inner(expression) if (a := _tangent_in(part)) is not None), None)


def _before(step: Step) -> Expression:
    """The equation with what is put into it, before anything else is done to it."""
    before = step.equation.expression
    for each in _put_in(step):
        before = _with_value(before, each)
    return before


def _done(step: Step) -> Multiplied | None:
    """What the equation is multiplied by, and which angle's squares are joined, once what is taken
    out of others is put into it.
    """
    out = [each for each in _put_in(step) if not says(each.equation, each.unknown)]
    bottoms = tuple(e.expression.bottom for e in out if isinstance(e.expression, Quotient))
    return multiplied(_before(step), step.reduced, bottoms) if step.reduced is not None else None


def _as_it_stood(digits: Digits, step: Step, left: Expression) -> Expression:
    """What is left, with the signs of the balance that it comes from, multiplied as is said."""
    values, done = digits.case.values, _done(step)
    elsewhere = {**values, step.unknown: 1.0 + 2.0 * values[step.unknown]}
    before = _before(step) if done is None else times(_before(step), done.factor)
    turned = float(evaluate(before, elsewhere)) * float(evaluate(left, elsewhere)) < 0.0
    return positive_first(negative(left)) if turned else left


def _flat(expression: Expression) -> Expression:
    """A sum whose terms are products of what is no product itself."""
    terms = (
        (s, times(*t.factors) if isinstance(t, Product) else t) for s, t in terms_of(expression)
    )
    return total(*terms)


def _with_value(expression: Expression, found: Step) -> Expression:
    """An expression with what a step finds in the place of its unknown."""

    def value(part: Expression) -> Expression | None:
        own = isinstance(part, Name) and part.id == found.unknown
        return found.expression if own else None

    return substituted(expression, value)


def _angles_added(step: Step) -> Iterator[Part]:
    """By which theorem what stands before the unknown is shorter."""
    parts = linear_parts(step.reduced, step.unknown) if step.reduced is not None else None
    slope = collected(in_one_order(parts[0])) if parts else ZERO
    added = with_angle_sums(slope)
    if added != slope:
        turned = all(sign < 0 for sign, _ in terms_of(added))
        sides = (negative(slope), negative(added)) if turned else (slope, added)
        yield sentences(AnglesAdded(*(factored(positive_first(side)) for side in sides)))


def _put_in(step: Step) -> Iterator[Step]:
    """The partners whose values stand in the equation, those that hold others before them."""
    yield from (each for each in step.partners[::-1] if each.unknown in step.put_in)


def _said(step: Step) -> tuple[Formula, ...]:
    """What the conditions among them say of what is put in: f = mu N."""
    found = []
    for equation in reversed(step.equations):
        if any(says(equation, id) for id in step.put_in):
            left, right = (term.magnitude for term in equation.terms)
            found.append((left, Relation("="), right))
    return tuple(found)


def _dropped(digits: Digits, step: Step) -> tuple[Name, ...]:
    return tuple(_name(digits, id) for id in step.dropped)


def _plain(reduced: Expression, unknown: str) -> bool:
    """Whether the next line, unknown = the rest, says the same."""
    parts = linear_parts(collected(in_one_order(reduced)), unknown)
    return parts is not None and collected(parts[0]) in (UNITY, negative(UNITY))
