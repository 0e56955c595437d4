"""A torque balance's pivot and what turns about it, in English."""

from __future__ import annotations

from typing import Final

from probgen.wording.english.grammar import series, the_bodies
from probgen.wording.english.saying import say
from probgen.wording.facts.torque import (
    AngleToArm,
    ArmOfLegs,
    Hold,
    LeverArm,
    PartTurns,
    PivotBare,
    PivotHeld,
    PivotMeeting,
    SquareToArm,
    TakenAsOne,
    TurningHeading,
    TurnsBody,
    TurnsNothing,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter


@say.register
def turning_heading(fact: TurningHeading, nouns: Nouns) -> Inlines:
    body = the_bodies(fact.bodies, nouns)
    return filled("Which forces turn {body} about {P}?", body=body, P=fact.pivot)


@say.register
def taken_as_one(fact: TakenAsOne, nouns: Nouns) -> Inlines:
    return filled(
        "We take {bodies} as one body: the forces between them ({inner}) come in equal and "
        "opposite pairs and cancel.",
        bodies=the_bodies(fact.bodies, nouns),
        inner=series(fact.inner),
    )


@say.register
def pivot_bare(fact: PivotBare, nouns: Nouns) -> Inlines:
    return filled("We take {word}s about {P}.", word=fact.turning, P=letter(fact.pivot))


_PIVOTS: Final = {
    Hold.HINGE: "We take {word}s about {by} {P}.",
    Hold.BUILT_IN: "We take {word}s about {P}, where {by} holds the {body}.",
    Hold.TOUCHING: "We take {word}s about {P}, where {by} touches the {body}.",
}


@say.register
def pivot_held(fact: PivotHeld, nouns: Nouns) -> Inlines:
    return filled(
        _PIVOTS[fact.hold],
        word=fact.turning,
        P=letter(fact.pivot),
        by=nouns.element(fact.element),
        body=nouns.body(fact.body),
    )


@say.register
def pivot_meeting(fact: PivotMeeting, nouns: Nouns) -> Inlines:
    return filled(
        "We take {word}s about {P}, where the lines of action of {these} meet.",
        word=fact.turning,
        P=letter(fact.pivot),
        these=series(fact.lines),
    )


@say.register
def turns_nothing(fact: TurnsNothing, nouns: Nouns) -> Inlines:
    one = len(fact.forces) == 1
    if not fact.through:
        where = "{these} acts there" if one else "{these} act there"
    elif one:
        where = "The line of action of {these} passes through it"
    else:
        where = "The lines of action of {these} pass through it"
    arm = "its lever arm is zero: it turns" if one else "their lever arms are zero: they turn"
    pattern = f"{where}, so {arm} nothing{_LEAVING[min(fact.unknowns, 3)]}."
    return filled(pattern, these=series(fact.forces))


_LEAVING: Final = (
    "",
    ", and that unknown leaves the equation",
    ", and both of these unknowns leave the equation",
    ", and these unknowns leave the equation",
)


@say.register
def turns_body(fact: TurnsBody, nouns: Nouns) -> Inlines:
    return filled(
        "{these} {turn} {body} {rotation} ({sign}).",
        these=series(fact.forces),
        turn="turns" if len(fact.forces) == 1 else "turn",
        body=the_bodies(fact.bodies, nouns),
        rotation=fact.rotation,
        sign="positive" if fact.positive else "negative",
    )


@say.register
def square_to_arm(fact: SquareToArm, nouns: Nouns) -> Inlines:
    one = len(fact.forces) == 1
    return filled(
        "{these} {act} at right angles to {its} ({sine}).",
        these=series(fact.forces),
        act="acts" if one else "act",
        its="its arm" if one else "their arms",
        sine=fact.sine,
    )


@say.register
def angle_to_arm(fact: AngleToArm, nouns: Nouns) -> Inlines:
    single = "The angle between {F} and its arm is {angle}"
    several = "For {F} the angle between force and arm is {angle}"
    pattern = single if len(fact.forces) == 1 else several
    ending = ", and {sine}." if fact.sine else "."
    return filled(pattern + ending, F=series(fact.forces), angle=fact.angle, sine=fact.sine)


@say.register
def arm_of_legs(fact: ArmOfLegs, nouns: Nouns) -> Inlines:
    return filled(
        "The way from the pivot to {F} has two legs, {lengths}; each gives a {word} of its own.",
        F=fact.force,
        lengths=series(fact.lengths),
        word=fact.turning,
    )


@say.register
def lever_arm(fact: LeverArm, nouns: Nouns) -> Inlines:
    return filled("Lever arm of {F}: {arm}.", F=fact.force, arm=fact.arm)


@say.register
def part_turns(fact: PartTurns, nouns: Nouns) -> Inlines:
    return filled(
        "Of {F} only the part square to {l} turns: {part}.",
        F=fact.force,
        l=fact.length,
        part=fact.part,
    )
