"""What is put into which of several equations, in English."""

from __future__ import annotations

from probgen.quantities.expression import UNITY, Call, Expression, Power, over, total
from probgen.quantities.formula import Relation
from probgen.wording.english.grammar import numeral, series, the_bodies
from probgen.wording.english.saying import say
from probgen.wording.facts.together import Called, PutIn, PutIntoTheRest, RestFollows, TakenOut
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled


def called(equation: Called, nouns: Nouns) -> Inlines:
    whose = f" of {the_bodies(equation.bodies, nouns)}" if equation.bodies else ""
    return filled("{equation}{whose}", equation=equation.formula, whose=whose)


@say.register
def taken_out(fact: TakenOut, nouns: Nouns) -> Inlines:
    same = len(fact.solved) == 1 and fact.into == fact.solved
    first: Inlines = ()
    if fact.said:
        into = series([called(each, nouns) for each in fact.into])
        if fact.everywhere:
            count = len(fact.into)
            into = filled("both balances" if count == 2 else f"all {numeral(count)} balances")
        first = filled("put {said} into {into} and ", said=series(fact.said), into=into)
    found = [
        filled("{equation} for {q}", equation="that" if same else called(each, nouns), q=unknown)
        for each, unknown in zip(fact.solved, fact.unknowns, strict=True)
    ]
    return filled("We {first}solve {found},", first=first, found=series(found))


@say.register
def put_in(fact: PutIn, nouns: Nouns) -> Inlines:
    gone = "; {dropped} drops out" if len(fact.dropped) == 1 else "; {dropped} drop out"
    return filled(
        "We put {said} into {rest}{gone}, which leaves {left} as the only unknown:",
        said=series(fact.said),
        rest=called(fact.into, nouns) if fact.into else "this",
        gone=filled(gone, dropped=series(fact.dropped)) if fact.dropped else "",
        left=fact.left,
    )


@say.register
def put_into_the_rest(fact: PutIntoTheRest, nouns: Nouns) -> Inlines:
    if fact.times is None and fact.angle is None:
        rest, written = called(fact.rest, nouns), _as_tangent(fact.tangent)
        pattern = "and put this into {rest}, which leaves {last} as the only unknown{written}:"
        return filled(pattern, rest=rest, last=fact.left, written=written)
    done = []
    if fact.times is not None:
        done.append(filled("multiplied by {factor}", factor=fact.times))
    if fact.angle is not None:
        squares = ((1, Power(Call(f, (fact.angle,)), 2)) for f in ("sin", "cos"))
        one = (total(*squares), Relation("="), UNITY)
        done.append(filled("with {theorem}", theorem=one))
    pattern = "Then, {done}, this leaves {last} as the only unknown:"
    return filled(pattern, done=series(done), last=fact.left)


def _as_tangent(angle: Expression | None) -> Inlines:
    """ ", with sin a/cos a = tan a"."""
    if angle is None:
        return ()
    sine, cosine, tangent = (Call(function, (angle,)) for function in ("sin", "cos", "tan"))
    return filled(", with {theorem}", theorem=(over(sine, cosine), Relation("="), tangent))


@say.register
def rest_follows(fact: RestFollows, nouns: Nouns) -> Inlines:
    return filled("and put this into {rest}:", rest=called(fact.rest, nouns))
