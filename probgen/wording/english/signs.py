"""Which way forces of unknown sense have to act, in English."""

from __future__ import annotations

from typing import Final

from probgen.wording.block import Text
from probgen.wording.english.grammar import heading, numeral, series, the_taken
from probgen.wording.english.names import the_body, the_element
from probgen.wording.english.saying import say
from probgen.wording.english.ways import part, toward
from probgen.wording.facts.forces import (
    LeftOpen,
    LeverExpected,
    NothingAgainst,
    PartExpected,
    SharesExpected,
    SignsOpen,
    SlipOpposed,
    TurnExpected,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter
from probgen.working.direction import Way


@say.register
def signs_open(fact: SignsOpen, nouns: Nouns) -> Inlines:
    one = len(fact.letters) == 1
    return filled(
        "Which way {these} {act} is not plain yet: {they} drawn as named, and a negative result "
        "will mean the opposite way.",
        these=series(fact.letters),
        act="acts" if one else "act",
        they="it is" if one else "they are",
    )


@say.register
def slip_opposed(fact: SlipOpposed, nouns: Nouns) -> Inlines:
    surfaces = dict.fromkeys(the_element(each, nouns) for each in fact.elements)
    return filled(
        "{Body} {slips} {toward} along {surfaces}, so {these} {act} the other way, {way}.",
        Body=heading(the_body(fact.body, nouns)),
        slips="slides" if fact.steady else "would slip",
        toward=toward(fact.slips, nouns),
        surfaces=series(list(surfaces)),
        these=series(fact.forces),
        act="acts" if len(fact.forces) == 1 else "act",
        way=toward(fact.way, nouns),
    )


@say.register
def left_open(fact: LeftOpen, nouns: Nouns) -> Inlines:
    one = len(fact.letters) == 1
    are, they = ("is", "it is") if one else ("are", "they are")
    pattern = "Statics alone does not give {these}; {they} not needed for what is asked."
    if not fact.unsettled:
        pattern = "{these} {are} neither asked for nor needed."
    return filled(pattern, these=series(fact.letters), are=are, they=they)


_ALL_OTHERS: Final = {
    1: "The only other force, {these}, has",
    2: "The other two forces, {these}, both have",
}


@say.register
def part_expected(fact: PartExpected, nouns: Nouns) -> Inlines:
    quarter = fact.theirs.quarter
    strands = f"the {numeral(fact.strands)} pulls " if fact.strands > 1 else ""
    pattern = "Of the other forces only {strands}{these} {have}"
    if fact.every and not strands:
        pattern = _ALL_OTHERS.get(len(fact.others), "All other forces have")
    return filled(
        pattern + " a component along {axis}, {theirs}, so {F} must act {way}{how}.",
        strands=strands,
        these=series(fact.others),
        have="has" if len(fact.others) == 1 and not strands else "have",
        axis=letter(fact.axis) if fact.axis else "the surface",
        theirs=toward(fact.theirs, nouns) if quarter is None else part(quarter, nouns),
        F=fact.force,
        way=toward(fact.way, nouns),
        how="; it is drawn the other way too"
        if fact.again
        else _drawn(fact.way, fact.drawn, axial=fact.axial),
    )


def _drawn(way: Way | None, drawn: bool, *, axial: bool = False) -> str:
    """way: which way the force acts; what is drawn to the right or up is drawn along its axis.

    axial: whether it is drawn as tension, whatever it is.
    """
    if drawn:
        return ", as drawn"
    along_axis = way is not None and way.quarter in (2, 3)
    how = "in the positive direction all the same" if along_axis else "the other way"
    if axial:
        how = "as tension, which counts as positive"
    return f"; we draw it {how}, so it will come out negative"


@say.register
def lever_expected(fact: LeverExpected, nouns: Nouns) -> Inlines:
    where, size, help = "farther from", "less", "help and "
    if fact.nearer:
        where, size, help = "nearer to", "more", ""
    acts = "It acts"
    if fact.by_line:
        level = "the level of" if fact.way.quarter in (1, 3) else "the upright through"
        acts = f"Its line of action meets {level} {{P}}"
    return filled(
        f"{{U}} alone balances {{these}} about {{P}}. {acts} {where} {{P}} than {{any}}, so {{it}} "
        f"{size} than {{all}}, and {{F}} must {help}act {{way}}{{how}}.",
        any=_theirs(fact),
        U=fact.lever,
        these=series(fact.held),
        P=letter(fact.pivot),
        it=filled(
            "its component {side} is" if fact.partly else "it acts {side} with",
            side=part(fact.side.quarter or 0, nouns),
        ),
        all=_compared(fact, nouns),
        F=fact.force,
        way=toward(fact.way, nouns),
        how=_drawn(fact.way, fact.drawn),
    )


def _theirs(fact: LeverExpected) -> Inlines:
    """What the lever's force, or its line of action, is nearer than, or farther out."""
    if fact.by_line:
        own = filled("that of {W}", W=series(fact.held))
        return own if len(fact.held) == 1 else (Text("theirs"),)
    any_of = {1: series(fact.held), 2: (Text("either of them"),)}
    return any_of.get(len(fact.held), (Text("any of them"),))


def _compared(fact: LeverExpected, nouns: Nouns) -> Inlines:
    """What the lever's force is larger or smaller than."""
    if fact.oblique:
        act = "act" if len(fact.others) > 1 else "acts"
        opposite = part((fact.side.quarter or 0) + 2, nouns)
        return filled("{these} {act} {way}", these=series(fact.others), act=act, way=opposite)
    if fact.held != fact.others:
        return filled("{these} together", these=series(fact.others))
    if len(fact.others) == 1:
        return series(fact.others)
    return (Text("both together" if len(fact.others) == 2 else "all of them together"),)


@say.register
def turn_expected(fact: TurnExpected, nouns: Nouns) -> Inlines:
    one = len(fact.others) == 1
    if fact.way is None:
        back = "counter-clockwise" if fact.rotation == "clockwise" else "clockwise"
        must = f"must turn it {back}"
    else:
        must = f"must act {toward(fact.way, nouns)}"
    return filled(
        "About {P}, {these} {turn} {body} {rotation} and only {F} can hold {them}, so {F} "
        "{must}{how}.",
        P=letter(fact.pivot),
        these=series(fact.others),
        turn="turns" if one else "turn",
        body=the_taken(fact.bodies, nouns),
        rotation=fact.rotation,
        F=fact.letter,
        them="it" if one else "them",
        must=must,
        how=_drawn(fact.way, fact.drawn),
    )


@say.register
def shares_expected(fact: SharesExpected, nouns: Nouns) -> Inlines:
    one = len(fact.others) == 1
    return filled(
        "{these} {act} {theirs}, and {both} share {them} as the problem says, so both must act "
        "{way}{how}.",
        both=series(fact.forces),
        these=series(fact.others),
        act="acts" if one else "act",
        them="it" if one else "them",
        theirs=toward(fact.theirs, nouns),
        way=toward(fact.way, nouns),
        how=", as drawn" if fact.drawn else "; drawn the other way, both come out negative",
    )


@say.register
def nothing_against(fact: NothingAgainst, nouns: Nouns) -> Inlines:
    return filled(
        "No other force has a component along {axis}, so {F} must be zero.",
        axis=letter(fact.axis),
        F=fact.force,
    )
