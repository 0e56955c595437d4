"""What acts inside a body, in English."""

from __future__ import annotations

from typing import Final

from probgen.quantities.formula import Relation, Words
from probgen.statics.internal_forces import Inside
from probgen.wording.block import Text
from probgen.wording.english.grammar import at, capitalized, series
from probgen.wording.english.names import the_body
from probgen.wording.english.saying import say
from probgen.wording.facts.diagram import (
    AxesPrepared,
    DiagramAsked,
    DiagramHeading,
    DiagramRead,
    ExpressionsTaken,
    InsideShown,
    LargestHeading,
    LargestHeld,
    LargestInside,
    ShearBeside,
    ShearChanges,
    ShearKeepsSign,
    ShearTurnsMoment,
    SmallerMoments,
    ValuesFollow,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter, listed

_CALLED: Final = {
    Inside.AXIAL: "axial force",
    Inside.SHEAR: "shear force",
    Inside.MOMENT: "bending moment",
}


@say.register
def diagram_heading(fact: DiagramHeading, nouns: Nouns) -> Inlines:
    told = series([filled(_CALLED[each]) for each in fact.drawn])
    return capitalized(told)


@say.register
def diagram_read(fact: DiagramRead, nouns: Nouns) -> Inlines:
    axial = " N is positive in tension." if Inside.AXIAL in fact.drawn else ""
    spread = ""
    if fact.even:
        spread = ", and falls evenly under an even load"
    elif fact.spread:
        spread = ", and changes along a spread load by the area of that"
    return filled(
        "Going along {body} from its left end, {V} jumps by each force square to it, upward where "
        "the force acts up{spread}; {M} changes by the area under {V}, and jumps where a couple "
        "acts. Positive values are drawn upward: {V} where it turns a piece clockwise, {M} where "
        "it stretches the lower side.{axial}",
        body=the_body(fact.body, nouns),
        V=letter("V"),
        M=letter("M"),
        spread=spread,
        axial=axial,
    )


@say.register
def largest_inside(fact: LargestInside, nouns: Nouns) -> Inlines:
    place = (
        at(fact.at) if fact.at else filled(" {d} from {A}", d=fact.distance, A=letter(fact.start))
    )
    level = filled(", where {V} passes through zero", V=letter("V")) if fact.level else ()
    return filled(
        "The largest {of} is {value},{place}{level}.",
        of=_CALLED[fact.of],
        value=fact.value,
        place=place,
        level=level,
    )


@say.register
def inside_shown(fact: InsideShown, nouns: Nouns) -> Inlines:
    told = [
        filled("{of}: {values}", of=_CALLED[of], values=series(values))
        for of, values in fact.values
    ]
    return filled(
        "Along {body}, from left to right: {told}.",
        body=the_body(fact.body, nouns),
        told=series(told),
    )


@say.register
def expressions_taken(fact: ExpressionsTaken, nouns: Nouns) -> Inlines:
    return filled(
        "At a section at the distance {x} from {A}, {V} and {M} balance all that acts {side} it. "
        "In the numbers {x} is in {length}, {V} in {force} and {M} in {moment}.",
        x=fact.x,
        A=letter(fact.start),
        V=letter("V"),
        M=letter("M"),
        side="beyond" if fact.beyond else "before",
        length=(Words(fact.length.plain),),
        force=(Words(fact.force.plain),),
        moment=(Words(fact.moment.plain),),
    )


@say.register
def values_follow(fact: ValuesFollow, nouns: Nouns) -> Inlines:
    told = [(name, Relation("="), value) for name, value in fact.values]
    return filled("Not needed so far: {values}.", values=series(told))


@say.register
def largest_heading(fact: LargestHeading, nouns: Nouns) -> Inlines:
    return (Text("Where is the bending moment largest?"),)


@say.register
def shear_turns_moment(fact: ShearTurnsMoment, nouns: Nouns) -> Inlines:
    return filled(
        "Going along {body} from its left end, {M} grows where {V} is positive and falls where "
        "{V} is negative. So it is largest, one way or the other, where {V} changes its sign, "
        "where a couple acts or at an end that is built in.",
        body=the_body(fact.body, nouns),
        M=letter("M"),
        V=letter("V"),
    )


@say.register
def shear_beside(fact: ShearBeside, nouns: Nouns) -> Inlines:
    told = [
        filled("just {side} {P}", side="before" if before else "beyond", P=letter(at))
        for at, before in fact.at
    ]
    return (*capitalized(listed(told, " and then ")), Text(":"))


@say.register
def shear_changes(fact: ShearChanges, nouns: Nouns) -> Inlines:
    if not fact.between:
        told = "{V} changes its sign at {X}: there {M} is largest."
        return filled(told, V=letter("V"), X=letter(fact.at), M=letter("M"))
    first, last = (letter(each) for each in fact.between)
    return filled(
        "In between {V} {falls} under the spread load and passes through zero: there, at a point "
        "{X} between {A} and {B}, {x} from {O}, {M} is largest.",
        V=letter("V"),
        falls="falls" if fact.falls else "rises",
        X=letter(fact.at),
        A=first,
        B=last,
        x=fact.place,
        O=letter(fact.origin),
        M=letter("M"),
    )


@say.register
def shear_keeps_sign(fact: ShearKeepsSign, nouns: Nouns) -> Inlines:
    return filled(
        "{V} is nowhere {other} along {body}, and {M} is zero at the free end {B}. From there "
        "to {A} it only gets larger in size, so that it is largest at {A}.",
        V=letter("V"),
        other="negative" if fact.positive else "positive",
        body=the_body(fact.body, nouns),
        M=letter("M"),
        A=letter(fact.at),
        B=letter(fact.free),
    )


@say.register
def largest_held(fact: LargestHeld, nouns: Nouns) -> Inlines:
    if fact.couple:
        return filled(
            "A couple acts at {P}, and beside it {M} is largest.", P=letter(fact.at), M=letter("M")
        )
    return filled("{P} is such an end, and {M} is largest there.", P=letter(fact.at), M=letter("M"))


@say.register
def smaller_moments(fact: SmallerMoments, nouns: Nouns) -> Inlines:
    told = [
        filled(
            "{place}, where {M} is {value}",
            place=at(point) if point else filled(" {d} from {A}", d=far, A=letter(fact.start)),
            M=letter("M"),
            value=value,
        )
        for point, far, value in fact.places
    ]
    several = len(told) > 1
    return filled(
        "The other such {places}{told}: less in size, as will be seen.",
        places="places are" if several else "place is",
        told=listed(told, ", and", ","),
    )


@say.register
def axes_prepared(fact: AxesPrepared, nouns: Nouns) -> Inlines:
    return filled(
        "Below {body} there are empty axes for its {kinds}.",
        body=the_body(fact.body, nouns),
        kinds=series([filled(_CALLED[of]) for of in fact.drawn]),
    )


@say.register
def diagram_asked(fact: DiagramAsked, nouns: Nouns) -> Inlines:
    return filled(
        "the diagrams of {kinds} along {body}, drawn in the axes below it",
        body=the_body(fact.body, nouns),
        kinds=series([filled(_CALLED[of]) for of in fact.drawn]),
    )
