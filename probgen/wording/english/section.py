"""Sections laid through trusses and bodies, in English."""

from __future__ import annotations

from probgen.wording.english.names import the_body, the_members
from probgen.wording.english.saying import say
from probgen.wording.facts.forces import BodyCut, SectionLaid
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter


@say.register
def section_laid(fact: SectionLaid, nouns: Nouns) -> Inlines:
    carry = "carries" if len(fact.idle) == 1 else "carry"
    idle = f", all but {{idle}}, which {carry} nothing" if fact.idle else ""
    pulling = f"; the members that we cut pull on it{idle}."
    return filled(
        "We cut through {members} and keep {part}" + pulling,
        members=the_members((*fact.members, *fact.idle), nouns),
        idle=the_members(fact.idle, nouns) if fact.idle else "",
        part=the_body(fact.part, nouns),
    )


@say.register
def body_cut(fact: BodyCut, nouns: Nouns) -> Inlines:
    shear: Inlines = ()
    if fact.shear is not None:
        told = "the shear force {V}, positive where it turns the part kept clockwise; "
        shear = filled(told, V=fact.shear)
    return filled(
        "We cut {body} at {P}{where} and keep {part}. What the part cut off does to it: the axial "
        "force {N}, positive in tension; {shear}the bending moment {M}, positive where it bends "
        "the part so that its lower side is stretched.",
        body=the_body(fact.body, nouns),
        P=letter(fact.at),
        where="" if shear else ", where no shear force acts,",
        part=the_body(fact.part, nouns),
        N=fact.axial,
        shear=shear,
        M=fact.moment,
    )
