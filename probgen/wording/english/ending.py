"""Limits, magnitude and direction, in English."""

from __future__ import annotations

from typing import Final

from probgen.quantities.expression import Number
from probgen.quantities.printing import plain
from probgen.wording.block import Text
from probgen.wording.english import names
from probgen.wording.english.grammar import agreeing, capitalized, heading
from probgen.wording.english.saying import say
from probgen.wording.english.ways import (
    direction,
    from_level,
    from_plumb,
    lies_along,
    side,
    toward,
    upright,
)
from probgen.wording.facts.ending import (
    FarthestHeading,
    FirstHeading,
    ForceActs,
    HoldsHeading,
    LimitDecides,
    LimitElsewhere,
    LimitJudged,
    LimitReached,
    LimitSupposed,
    OneComponent,
    QuadrantTold,
    RestAtLimit,
    ResultantHeading,
    ResultantIs,
    RoundedWithin,
    SupposedHeading,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter
from probgen.working.direction import Direction, Way
from probgen.working.result import LimitNamed
from probgen.working.verdict import Verdict

# Limits.


@say.register
def supposed_heading(fact: SupposedHeading, nouns: Nouns) -> Inlines:
    return (Text(f"Just before {names.limit(fact.limit, nouns)}"),)


@say.register
def limit_supposed(fact: LimitSupposed, nouns: Nouns) -> Inlines:
    """The heading tells the moment: nothing moves yet, else no balance would hold."""
    pattern = "When that is about to happen, "
    if fact.first:
        pattern = "Suppose that {limit} first: when that is about to happen, "
    if fact.push is not None:
        pattern += "it stands on its edge at {B} alone, so {Q}, where {N} acts, is at {B}"
        reached = "" if fact.shown else ": {left} has just reached {right}"
    elif not fact.shown:
        reached = "{left} has just reached {right}"
    elif isinstance(fact.right, Number) and fact.right.value == 0:
        reached = "{left} has just come down to zero"
    else:
        reached = "{left} has just reached its limit"
    return filled(
        pattern + reached + (":" if fact.shown else "."),
        limit=names.limit(fact.limit, nouns),
        Q=letter(fact.place),
        B=letter(fact.at),
        N=fact.push or fact.left,
        left=fact.left,
        right=fact.right,
    )


@say.register
def farthest_heading(fact: FarthestHeading, nouns: Nouns) -> Inlines:
    utmost = "largest" if fact.largest else "smallest"
    return (Text(heading(f"{utmost} {names.quantity(fact.quantity, nouns)}")),)


@say.register
def first_heading(fact: FirstHeading, nouns: Nouns) -> Inlines:
    return (Text("Which comes first?"),)


@say.register
def holds_heading(fact: HoldsHeading, nouns: Nouns) -> Inlines:
    return (Text("Does it hold?"),)


@say.register
def limit_reached(fact: LimitReached, nouns: Nouns) -> Inlines:
    reached = filled("{limit} at {value}", limit=names.limit(fact.limit, nouns), value=fact.value)
    return capitalized((*reached, Text("."))) if fact.only else reached


@say.register
def limit_elsewhere(fact: LimitElsewhere, nouns: Nouns) -> Inlines:
    return filled(
        "{Limit} only as {q} {changes}: {value} bounds it from the other side.",
        Limit=heading(names.limit(fact.limit, nouns)),
        q=fact.letter,
        changes="shrinks" if fact.largest else "grows",
        value=fact.value,
    )


@say.register
def limit_decides(fact: LimitDecides, nouns: Nouns) -> Inlines:
    return filled(
        "The {smaller} value decides: {limit} first, so the {largest} value is {value}.",
        smaller="smaller" if fact.largest else "larger",
        limit=names.limit(fact.limit, nouns),
        largest="largest" if fact.largest else "smallest",
        value=fact.value,
    )


@say.register
def rest_at_limit(fact: RestAtLimit, nouns: Nouns) -> Inlines:
    limit = names.limit(fact.limit, nouns)
    return (Text(f"What else is asked is found in this state, just before {limit}."),)


@say.register
def rounded_within(fact: RoundedWithin, nouns: Nouns) -> Inlines:
    return filled(
        "That is rounded {way}, for at {usual} {limit}.",
        way="down" if fact.largest else "up",
        usual=fact.usual,
        limit=names.limit(fact.limit, nouns),
    )


@say.register
def limit_judged(fact: LimitJudged, nouns: Nouns) -> Inlines:
    kept, most = fact.verdict.kept, fact.verdict.most
    if kept:
        pattern = "{l} is {needed}, {under} the {allowed} of {r}: {verdict}."
    else:
        pattern = (
            "{l} would have to be {needed}, but {r} allows at {most} {allowed}: {verdict}. {Limit}."
        )
    if isinstance(fact.right, Number):  # it says itself how much it allows
        short = {" of {r}": "", "{r} allows at {most} {allowed}": "at {most} {allowed} is allowed"}
        for words, instead in short.items():
            pattern = pattern.replace(words, instead)
    return filled(
        pattern,
        l=fact.left,
        needed=fact.needed,
        r=fact.right,
        allowed=fact.allowed,
        under="within" if most else "above",
        most="most" if most else "least",
        verdict=say(fact.verdict, nouns),
        Limit=heading(names.limit(fact.limit, nouns)),
    )


@say.register
def verdict(fact: Verdict, nouns: Nouns) -> Inlines:
    return (Text(", ".join(yes_or_no(fact))),)


def yes_or_no(fact: Verdict) -> tuple[str, str]:
    """ "yes" and "with 12 N to spare"; "no" and "12 N too much"."""
    size = plain(fact.margin)
    if fact.kept:
        return "yes", f"with {size} to spare"
    return "no", f"{size} too {'much' if fact.most else 'little'}"


@say.register
def limit_named(fact: LimitNamed, nouns: Nouns) -> Inlines:
    return (Text(names.limit(fact.limit, nouns)),)


# Magnitude and direction.


@say.register
def way_told(fact: Way, nouns: Nouns) -> Inlines:
    return (Text(toward(fact, nouns)),)


@say.register
def direction_told(fact: Direction, nouns: Nouns) -> Inlines:
    return (Text(direction(fact, nouns)),)


@say.register
def resultant_heading(fact: ResultantHeading, nouns: Nouns) -> Inlines:
    return filled("Magnitude and direction of {F}", F=fact.force)


@say.register
def one_component(fact: OneComponent, nouns: Nouns) -> Inlines:
    return filled(
        "{zero} is zero, so {R} is {way} and its magnitude is that of {other}.",
        zero=fact.zero,
        R=fact.force,
        way=lies_along(fact.level, nouns),
        other=fact.other,
    )


_QUADRANTS: Final = {
    (True, True): "first",
    (True, False): "second",
    (False, False): "third",
    (False, True): "fourth",
}
"""By up and right."""


@say.register
def quadrant_told(fact: QuadrantTold, nouns: Nouns) -> Inlines:
    way = fact.direction.way
    signs = filled(
        "{x} {right} 0 and {y} {up} 0",
        x=fact.x,
        y=fact.y,
        right=">" if way.right else "<",
        up=">" if way.up else "<",
    )
    if fact.turned:
        quadrant = _QUADRANTS[way.up, way.right]
        return filled(
            "{signs}, the {nth} quadrant. {angle} is the angle with the {axis} axis, so {F} points "
            "{turned} counter-clockwise from +{axis}.",
            signs=signs,
            nth=quadrant,
            angle=fact.angle,
            F=fact.force,
            turned=fact.turned,
            axis=letter("x"),
        )
    where = {"horizontal": from_level, "vertical": from_plumb}
    return filled(
        "{signs}: to the {side} and {up}, so {angle} is the angle {where}.",
        signs=signs,
        side=side(way, nouns),
        up=upright(way, nouns),
        angle=fact.angle,
        where=where[fact.direction.reference](way, nouns),
    )


@say.register
def resultant_is(fact: ResultantIs, nouns: Nouns) -> Inlines:
    return filled(
        "The resultant {R} is {size}{joint}{way}.",
        R=fact.force,
        size=fact.size,
        joint=_joint(fact.direction),
        way=direction(fact.direction, nouns),
    )


@say.register
def force_acts(fact: ForceActs, nouns: Nouns) -> Inlines:
    by = names.the_element(fact.element, nouns)
    return filled(
        "{By} {acts} on {body} with a force of {size}{joint}{way}.",
        By=by[:1].upper() + by[1:],
        acts=agreeing([by], "acts", "act"),
        body=names.the_body(fact.body, nouns),
        size=fact.size,
        joint=_joint(fact.direction),
        way=direction(fact.direction, nouns),
    )


def _joint(direction: Direction) -> str:
    """ "at 12°", but ", straight up"."""
    return " at " if direction.oblique else ", "
