"""The last look, in English."""

from __future__ import annotations

from typing import Final

from probgen.quantities.expression import Number
from probgen.quantities.printing import plain
from probgen.wording.block import Text
from probgen.wording.english import names
from probgen.wording.english.grammar import series, the_bodies
from probgen.wording.english.saying import say
from probgen.wording.english.ways import toward
from probgen.wording.facts.ending import (
    ArmAmong,
    BodyCheckHeading,
    CheckHeading,
    GivenBesides,
    OtherLimitKept,
    PullCompared,
    PutBackForces,
    PutBackTorques,
    RestFound,
    RoundingLeft,
    UnusedAxis,
    UnusedLine,
    UnusedPivot,
    UnusedWhole,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter


@say.register
def check_heading(fact: CheckHeading, nouns: Nouns) -> Inlines:
    return (Text("Check"),)


@say.register
def body_check_heading(fact: BodyCheckHeading, nouns: Nouns) -> Inlines:
    return (Text(f"Check: {names.the_body(fact.body, nouns)}"),)


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


@say.register
def rest_found(fact: RestFound, nouns: Nouns) -> Inlines:
    along = [letter(axis) for axis in fact.axes]
    return filled(
        "The forces along {axes}, which we have not used, give what we have not found yet:",
        axes=series(along),
    )


@say.register
def given_besides(fact: GivenBesides, nouns: Nouns) -> Inlines:
    return filled(
        "The equations that we solved together also give {forces}:", forces=series(fact.forces)
    )


@say.register
def unused_whole(fact: UnusedWhole, nouns: Nouns) -> Inlines:
    return filled(
        "We take {bodies} as one body, so that what acts between them drops out, and add the "
        "forces along {axis}:",
        axis=letter(fact.axis),
        bodies=the_bodies(fact.bodies, nouns),
    )


@say.register
def unused_line(fact: UnusedLine, nouns: Nouns) -> Inlines:
    return filled(
        "The forces along {axis}, the line of {F} ({way} is positive), which we have not used:",
        axis=letter(fact.axis),
        F=fact.force,
        way=toward(fact.way, nouns),
    )


@say.register
def put_back_forces(fact: PutBackForces, nouns: Nouns) -> Inlines:
    return filled(
        "The results put back into the sum of the forces along {axis}:", axis=letter(fact.axis)
    )


@say.register
def put_back_torques(fact: PutBackTorques, nouns: Nouns) -> Inlines:
    return filled(
        "The results put back into the sum of the {word}s about {P}:",
        word=fact.turning,
        P=letter(fact.pivot),
    )


@say.register
def other_limit_kept(fact: OtherLimitKept, nouns: Nouns) -> Inlines:
    allowed = "the {allowed} of {r}"
    if isinstance(fact.right, Number):  # it says itself how much it allows
        allowed = "{allowed}"
    than = "less than" if fact.most else "more than"
    return filled(
        f"Here {{l}} is {{needed}}, {than} {allowed}, so the other limit is kept too.",
        l=fact.left,
        needed=fact.needed,
        r=fact.right,
        allowed=fact.allowed,
    )


@say.register
def rounding_left(fact: RoundingLeft, nouns: Nouns) -> Inlines:
    return (Text("What is left comes from rounding."),)


_REASONS: Final = {
    (ArmAmong.SHORTER, False): "its lever arm is shorter than that of the weight, so it is the "
    "larger force",
    (ArmAmong.SHORTER, True): "its lever arm is shorter than that of any weight, so it is "
    "larger than all of them together",
    (ArmAmong.LONGER, False): "its lever arm is longer than that of the weight, so it is the "
    "smaller force",
    (ArmAmong.LONGER, True): "its lever arm is longer than that of any weight, so it is "
    "smaller than all of them together",
    (ArmAmong.EQUAL, False): "its lever arm is as long as that of the weight",
}


@say.register
def pull_compared(fact: PullCompared, nouns: Nouns) -> Inlines:
    return filled(
        "Is it sensible? {F} is {about} the {total} of {all}: {reason}.",
        F=fact.pull,
        about="about as large as" if fact.alike else f"{plain(fact.share)} times",
        total=fact.total,
        all="all weights together" if fact.several else "weight",
        reason=_REASONS[fact.arm, fact.several],
    )
