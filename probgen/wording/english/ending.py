"""Limits, magnitude and direction, and the last look, in English."""

from __future__ import annotations

from probgen.quantities.printing import plain
from probgen.wording.block import Text
from probgen.wording.english.grammar import capitalized, direction, heading, toward
from probgen.wording.english.saying import say
from probgen.wording.facts.ending import (
    BodyCheckHeading,
    CheckHeading,
    FarthestHeading,
    FirstHeading,
    ForceActs,
    HoldsHeading,
    LimitDecides,
    LimitJudged,
    LimitReached,
    LimitSupposed,
    OneComponent,
    PullCompared,
    ResultantHeading,
    ResultantIs,
    SupposedHeading,
    UnusedAxis,
    UnusedPivot,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter
from probgen.working.direction import Direction, Way
from probgen.working.result import LimitNamed
from probgen.working.verdict import Verdict

# Limits.


@say.register
def supposed_heading(fact: SupposedHeading, nouns: Nouns) -> Inlines:
    return (Text(heading(nouns.limit(fact.limit))),)


@say.register
def limit_supposed(fact: LimitSupposed, nouns: Nouns) -> Inlines:
    return filled(
        "Suppose that {limit}: then {left} has just reached {right}.",
        limit=nouns.limit(fact.limit),
        left=fact.left,
        right=fact.right,
    )


@say.register
def farthest_heading(fact: FarthestHeading, nouns: Nouns) -> Inlines:
    return (Text("How far it may go"),)


@say.register
def first_heading(fact: FirstHeading, nouns: Nouns) -> Inlines:
    return (Text("Which comes first?"),)


@say.register
def holds_heading(fact: HoldsHeading, nouns: Nouns) -> Inlines:
    return (Text("Does it hold?"),)


@say.register
def limit_reached(fact: LimitReached, nouns: Nouns) -> Inlines:
    reached = filled("{limit} at {value}", limit=nouns.limit(fact.limit), value=fact.value)
    return capitalized((*reached, Text("."))) if fact.only else reached


@say.register
def limit_decides(fact: LimitDecides, nouns: Nouns) -> Inlines:
    return filled(
        "The {smaller} value decides: {limit} first, so the {largest} value is {value}.",
        smaller="smaller" if fact.largest else "larger",
        limit=nouns.limit(fact.limit),
        largest="largest" if fact.largest else "smallest",
        value=fact.value,
    )


@say.register
def limit_judged(fact: LimitJudged, nouns: Nouns) -> Inlines:
    verdict = say(fact.verdict, nouns)
    return filled("{comparison}: {verdict}.", comparison=fact.comparison, verdict=verdict)


@say.register
def verdict(fact: Verdict, nouns: Nouns) -> Inlines:
    size = plain(fact.margin)
    if fact.kept:
        return (Text(f"yes, with {size} to spare"),)
    return (Text(f"no, {size} too {'much' if fact.most else 'little'}"),)


@say.register
def limit_named(fact: LimitNamed, nouns: Nouns) -> Inlines:
    return (Text(nouns.limit(fact.limit)),)


# Magnitude and direction.


@say.register
def way_told(fact: Way, nouns: Nouns) -> Inlines:
    return (Text(toward(fact)),)


@say.register
def direction_told(fact: Direction, nouns: Nouns) -> Inlines:
    return (Text(direction(fact)),)


@say.register
def resultant_heading(fact: ResultantHeading, nouns: Nouns) -> Inlines:
    return (Text(f"Magnitude and direction of {fact.force.symbol}"),)


@say.register
def one_component(fact: OneComponent, nouns: Nouns) -> Inlines:
    return filled(
        "{zero} is zero, so {R} is {way} and its magnitude is that of {other}.",
        zero=fact.zero,
        R=fact.force,
        way="horizontal" if fact.level else "vertical",
        other=fact.other,
    )


@say.register
def resultant_is(fact: ResultantIs, nouns: Nouns) -> Inlines:
    return filled(
        "The resultant {R} is {size}{joint}{way}.",
        R=fact.force,
        size=fact.size,
        joint=_joint(fact.direction),
        way=direction(fact.direction),
    )


@say.register
def force_acts(fact: ForceActs, nouns: Nouns) -> Inlines:
    by = nouns.element(fact.element)
    return filled(
        "{By} acts on the {body} with a force of {size}{joint}{way}.",
        By=by[:1].upper() + by[1:],
        body=nouns.body(fact.body),
        size=fact.size,
        joint=_joint(fact.direction),
        way=direction(fact.direction),
    )


def _joint(direction: Direction) -> str:
    """ "at 12°", but ", straight up"."""
    return " at " if direction.oblique else ", "


# The last look.


@say.register
def check_heading(fact: CheckHeading, nouns: Nouns) -> Inlines:
    return (Text("Check"),)


@say.register
def body_check_heading(fact: BodyCheckHeading, nouns: Nouns) -> Inlines:
    return (Text(f"Check: the {nouns.body(fact.body)}"),)


@say.register
def unused_axis(fact: UnusedAxis, nouns: Nouns) -> Inlines:
    return filled("The forces along {axis}, which we have not used:", axis=letter(fact.axis))


@say.register
def unused_pivot(fact: UnusedPivot, nouns: Nouns) -> Inlines:
    return filled(
        "{Word}s about {P}, a point we have not used:",
        Word=fact.turning.capitalize(),
        P=letter(fact.pivot),
    )


_LARGER = "it acts with the shorter lever arm, so it has to be the larger force"
_SMALLER = "it acts with the longer lever arm, so it can be the smaller force"


@say.register
def pull_compared(fact: PullCompared, nouns: Nouns) -> Inlines:
    return filled(
        "Is it sensible? {F} is {share} times the {total} of {all}: {reason}.",
        F=fact.pull,
        share=plain(fact.share),
        total=fact.total,
        all="all weights together" if fact.several else "weight on it",
        reason=_LARGER if fact.larger else _SMALLER,
    )
