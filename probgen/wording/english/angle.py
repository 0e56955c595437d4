"""Which of several angles it is, in English."""

from __future__ import annotations

from typing import Final

from probgen.quantities.expression import Call, over
from probgen.quantities.formula import Relation
from probgen.wording.english.saying import say
from probgen.wording.facts.angle import (
    AngleQuadrant,
    AnglesAdded,
    AnglesTakenApart,
    DividedByCosine,
    FoundByTrying,
    OtherAngle,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled

_SIGNS: Final = {True: "positive", False: "negative"}
_ALIKE: Final = {
    "sin": "Two angles that add up to 180° have the same sine",
    "cos": "An angle and its opposite have the same cosine",
    "tan": "Angles half a turn apart have the same tangent",
}


@say.register
def angle_quadrant(fact: AngleQuadrant, nouns: Nouns) -> Inlines:
    low, high = fact.between
    along, across = (_SIGNS[each] for each in fact.positive)
    return filled(
        "{Along} and {across}, so {x} lies between {low} and {high}, {turn} from what the "
        "arctangent gives:",
        Along=filled("{one} is {sign}" if along != across else "{one}", one=fact.along, sign=along),
        across=filled(
            "{other} {sign}" if along != across else "{other} are {sign}",
            other=fact.across,
            sign=across,
        ),
        x=fact.angle,
        low=low,
        high=high,
        turn="a whole turn" if fact.whole else "half a turn",
    )


@say.register
def angles_added(fact: AnglesAdded, nouns: Nouns) -> Inlines:
    said = "By the addition theorem {products} is {joined}:"
    return filled(said, products=fact.products, joined=fact.joined)


@say.register
def angles_taken_apart(fact: AnglesTakenApart, nouns: Nouns) -> Inlines:
    return filled(
        "We write sine and cosine of each sum with {x} by those of {x} and of the rest:",
        x=fact.angle,
    )


@say.register
def found_by_trying(fact: FoundByTrying, nouns: Nouns) -> Inlines:
    low, high = fact.between
    return filled(
        "No formula gives {q}. Trying values between {low} and {high} until the equation holds:",
        q=fact.quantity,
        low=low,
        high=high,
    )


@say.register
def other_angle(fact: OtherAngle, nouns: Nouns) -> Inlines:
    low, high = fact.between
    whole = "a whole turn changes nothing" if fact.half else "A whole turn changes nothing"
    reasons = [_ALIKE[fact.function]] if fact.half else []
    reasons += [whole] if fact.whole else []
    return filled(
        "{reasons}; {x}, which has to lie between {low} and {high}, is not the one that {arc} "
        "gives:",
        reasons=", and ".join(reasons),
        x=fact.angle,
        low=low,
        high=high,
        arc=f"arc{fact.function}",
    )


@say.register
def divided_by_cosine(fact: DividedByCosine, nouns: Nouns) -> Inlines:
    sine, cosine, tangent = (Call(each, (fact.angle,)) for each in ("sin", "cos", "tan"))
    return filled(
        "We divide by {divisor}, where {quotient}, and solve for the tangent:",
        divisor=fact.divisor,
        quotient=(over(sine, cosine), Relation("="), tangent),
    )
