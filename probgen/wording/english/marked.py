"""An answer that was marked, in English."""

from __future__ import annotations

from probgen.wording.block import Text
from probgen.wording.english.grammar import counted
from probgen.wording.english.saying import say
from probgen.wording.english.slips import one_slip
from probgen.wording.facts.marked import (
    FewFigures,
    FollowsFromOwn,
    KeyPartsAt,
    NothingFollows,
    PointsChanged,
    ReadingsCounted,
    SlipsFound,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, listed


@say.register
def slips_found(fact: SlipsFound, nouns: Nouns) -> Inlines:
    ways = [
        listed([one_slip(fact.turning, each, nouns) for each in way], "; and with it ")
        for way in fact.ways
    ]
    if len(ways) == 1:
        return filled("This number comes out with: {way}.", way=ways[0])
    ways_told = listed(ways, "; or: ", "; or: ")
    return filled("This number comes out with one of these: {ways}.", ways=ways_told)


@say.register
def key_parts_at(fact: KeyPartsAt, nouns: Nouns) -> Inlines:
    return filled("Compare with the key from here on: {step}.", step=say(fact.step, nouns))


@say.register
def follows_from_own(fact: FollowsFromOwn, nouns: Nouns) -> Inlines:
    return (Text("It follows from your own earlier answers."),)


@say.register
def nothing_follows(fact: NothingFollows, nouns: Nouns) -> Inlines:
    return (Text("Nothing follows from the earlier answers as they stand."),)


@say.register
def readings_counted(fact: ReadingsCounted, nouns: Nouns) -> Inlines:
    if not fact.count:
        return (Text("It could not be read."),)
    missing = ": the side is missing" if fact.is_direction else ""
    return (Text(f"It can be read in {fact.count} ways{missing}."),)


@say.register
def few_figures(fact: FewFigures, nouns: Nouns) -> Inlines:
    typed = counted(fact.typed, "significant figure")
    return (Text(f"It has {typed}; {fact.asked} are asked for."),)


@say.register
def points_changed(fact: PointsChanged, nouns: Nouns) -> Inlines:
    return (Text("A person has looked at this, and given the points."),)
