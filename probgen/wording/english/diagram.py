"""What acts inside a body, in English."""

from __future__ import annotations

from typing import Final

from probgen.statics.internal_forces import Inside
from probgen.wording.english.grammar import at, capitalized, series
from probgen.wording.english.names import the_body
from probgen.wording.english.saying import say
from probgen.wording.facts.diagram import (
    DiagramHeading,
    DiagramRead,
    InsideShown,
    LargestInside,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter

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
    return filled(
        "Going along {body} from its left end, {V} jumps by each force square to it, upward where "
        "the force acts up, and falls evenly under an even load; {M} changes by the area under "
        "{V}, and jumps where a couple acts. Positive values are drawn upward: {V} where it turns "
        "a piece clockwise, {M} where it stretches the lower side.{axial}",
        body=the_body(fact.body, nouns),
        V=letter("V"),
        M=letter("M"),
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
