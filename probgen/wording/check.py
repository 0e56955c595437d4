"""The last look: a balance the working did not use, and what the result says of size.

Where every balance left holds a force that nobody asked for, the balances along the axes give that
first, or the equations that were solved together.  Where no balance of a body is left, all bodies
are looked at as one, or results are put back into equations that were solved together.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import product

import numpy as np

from probgen.quantities.expression import Expression, evaluate
from probgen.statics.solve_for import solved_for
from probgen.statics.system import Body
from probgen.wording.block import Display
from probgen.wording.facts.ending import (
    BodyCheckHeading,
    CheckHeading,
    RestFound,
    RoundingLeft,
)
from probgen.wording.further_look import (
    found_rows,
    look_at_whole,
    looks_along,
    looks_besides,
    looks_put_back,
    opening_of,
)
from probgen.wording.passage import Part, Passage, Sentences, sentences
from probgen.wording.sense import sense_of
from probgen.wording.summed import summed
from probgen.wording.unused import Looked, UnusedBalance, chosen
from probgen.working.bodies_used import bodies_used, is_piece
from probgen.working.digits import Digits, by_lengths


def last_look(
    digits: Digits, unused: Mapping[str, tuple[UnusedBalance, ...]], *, alone: bool
) -> tuple[Passage, ...]:
    """A look back at a whole working; where there is nothing else to look at, at the forces on
    particles along the line of one of them.

    unused, alone: as below.
    """
    if passages := check_passages(digits, unused, alone=alone):
        return passages
    drawn = [body for body in bodies_used(digits.case.plan) if body.id in unused]
    looked = looks_along(digits, drawn)
    return _rounding_told_once([_passage(digits, body, parts, alone) for body, parts in looked])


def check_passages(
    digits: Digits, unused: Mapping[str, tuple[UnusedBalance, ...]], *, alone: bool
) -> tuple[Passage, ...]:
    """A look back at each body of a working that left it a balance with every number in it.

    Where none did, at each body that forces nobody asked for, once found, let look at.  Last come
    bodies that are drawn together with others alone.
    unused: of one of the ways of a plan; alone: whether the problem has one body only.
    """
    bodies = [(digits.case.system.body(id), balances) for id, balances in unused.items()]
    drawn = bodies_used(digits.case.plan)
    shown = [each for each in bodies if each[0] in drawn]
    others = [each for each in bodies if each[0] not in drawn]
    for some, look in product((shown, others), (_look, _longer_look)):
        looked = [(body, look(digits, body, balances)) for body, balances in some]
        passages = [_passage(digits, body, parts, alone) for body, parts in looked if parts]
        if passages:
            return _rounding_told_once(passages)
    return _rounding_told_once(list(_further(digits, shown, alone)))


def _further(digits: Digits, shown: Sequence[Looked], alone: bool) -> Iterator[Passage]:
    """What is left to look at where no balance of a body is left with every number in it."""
    bodies = [body for body, _ in shown]
    looked = [*looks_besides(digits, shown)]
    if not looked and (parts := look_at_whole(digits, bodies)):
        yield Passage(CheckHeading(), parts)
        return
    for body, parts in looked or looks_put_back(digits, bodies):
        yield _passage(digits, body, parts, alone)


def _rounding_told_once(passages: Sequence[Passage]) -> tuple[Passage, ...]:
    """What leaves a rest is said where there is one first."""
    left = sentences(RoundingLeft(), bound=True)
    told = next((place for place, each in enumerate(passages) if left in each.parts), 0)
    return tuple(
        each
        if place == told
        else replace(each, parts=tuple(part for part in each.parts if part != left))
        for place, each in enumerate(passages)
    )


def _passage(digits: Digits, body: Body, looked: tuple[Part, ...], alone: bool) -> Passage:
    heading = CheckHeading() if alone else BodyCheckHeading(body.id)
    compared = tuple(sense_of(digits, body))
    return Passage(heading, (*looked, *((Sentences(compared),) if compared else ())))


def _look(digits: Digits, body: Body, unused: tuple[UnusedBalance, ...]) -> tuple[Part, ...]:
    """At a balance that was not used."""
    values = digits.case.values
    equation = chosen(digits, unused, values)
    return summed(digits, opening_of(digits, equation), equation, values) if equation else ()


def _longer_look(digits: Digits, body: Body, unused: tuple[UnusedBalance, ...]) -> tuple[Part, ...]:
    """At torques, after the forces in them that were not found."""
    if is_piece(digits.case.system, body):
        return ()
    values = digits.case.values
    fresh = tuple(b for b in unused if not any(map(by_lengths, b.terms)))
    rest = _rest(fresh, values)
    known = {**values, **{id: float(evaluate(each, values)) for id, (_, each) in rest.items()}}
    torques = tuple(b for b in fresh if b.equation.kind == "torque")
    if rest and (equation := chosen(digits, torques, known)):
        held = next(b.names for b in torques if b.equation.about == equation.about)
        left = {id: each for id, each in rest.items() if id in held}
        return (
            sentences(RestFound(tuple(dict.fromkeys(axis for axis, _ in left.values())))),
            Display(
                tuple(row for id in left for row in found_rows(digits, id, left[id][1], values))
            ),
            *summed(digits, opening_of(digits, equation), equation, known),
        )
    return ()


def _rest(
    unused: tuple[UnusedBalance, ...], values: Mapping[str, float]
) -> dict[str, tuple[str, Expression]]:
    """The forces not found yet that the balance along one axis gives: the axis, and what they are.

    By their ids.
    """
    rest: dict[str, tuple[str, Expression]] = {}
    for balance in unused:
        missing = balance.names - values.keys()
        if balance.equation.kind != "force" or len(missing) != 1:
            continue
        (id,) = missing
        expression = solved_for(balance.equation.expression, id)
        if expression is not None and _is_finite(expression, values):
            rest.setdefault(id, (balance.equation.about, expression))
    return rest


def _is_finite(expression: Expression, values: Mapping[str, float]) -> bool:
    """Whether a division by what happens to be nothing leaves a number."""
    with np.errstate(all="ignore"):
        return bool(np.isfinite(evaluate(expression, values)))
