"""A load by a formula, in English."""

from __future__ import annotations

from probgen.quantities.formula import Relation
from probgen.wording.english.names import the_body, the_element
from probgen.wording.english.saying import say
from probgen.wording.facts.load import LoadHeading, LoadIntegrated
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter


@say.register
def load_heading(fact: LoadHeading, nouns: Nouns) -> Inlines:
    part = f" on {the_body(fact.part, nouns)}" if fact.part else ""
    return filled("Resultant of {load}{part}", load=the_element(fact.element, nouns), part=part)


@say.register
def load_integrated(fact: LoadIntegrated, nouns: Nouns) -> Inlines:
    whole = (
        "At a distance {x} from {A} the load per length is {load}. Its resultant {W} is the area "
        "under the curve of {w}, and acts at the distance {place} from {A} at which its {turning} "
        "about {A} is that of the whole load."
    )
    stretch = (
        "Of the load {load}, with {x} measured from {A}, the stretch {ends} lies on {part}. Its "
        "resultant {W} is the area under that stretch of the curve, and acts at the distance "
        "{place} from {A} at which its {turning} about {A} is that of the stretch."
    )
    ends = fact.stretch or ()
    return filled(
        stretch if ends else whole,
        x=fact.along,
        A=letter(fact.origin),
        load=fact.load,
        w=fact.letter,
        W=fact.resultant,
        place=fact.centroid,
        turning=fact.turning,
        part=the_body(fact.part, nouns) if fact.part else "",
        ends=_between(fact) if ends else "",
    )


def _between(fact: LoadIntegrated) -> Inlines:
    """ "from x = 0 to x = L/2"."""
    assert fact.stretch is not None
    first, last = ((fact.along, Relation("="), end) for end in fact.stretch)
    return filled("from {first} to {last}", first=first, last=last)
