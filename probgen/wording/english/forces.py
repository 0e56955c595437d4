"""The forces on a body, in English."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.bank.labels import Carried
from probgen.quantities.expression import Expression
from probgen.statics.shape import Outline
from probgen.statics.system import ForcePart, Kind
from probgen.wording.english.grammar import (
    agreeing,
    at,
    counted,
    heading,
    series,
    the_bodies,
    the_whole,
)
from probgen.wording.english.names import (
    is_named,
    the_body,
    the_couple,
    the_element,
)
from probgen.wording.english.saying import say
from probgen.wording.english.ways import toward
from probgen.wording.facts.forces import (
    CoupleNamed,
    ForceNamed,
    ForcesCounted,
    ForcesHeading,
    HoleCounted,
    JointForce,
    JointReaction,
    PartCentred,
    PartPlaced,
    PartsHeading,
    SameTension,
    Spreading,
    SpreadLoad,
    StrutAlong,
    TakenAsOne,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter
from probgen.working.direction import Way


@say.register
def forces_heading(fact: ForcesHeading, nouns: Nouns) -> Inlines:
    together = " together" if len(fact.bodies) > 1 else ""
    body = the_whole(fact.bodies, nouns) or the_bodies(fact.bodies, nouns) + together
    return filled("Forces on {body}", body=body)


@say.register
def taken_as_one(fact: TakenAsOne, nouns: Nouns) -> Inlines:
    inner = [filled("{F}{at}", F=force, at=at(point)) for force, point in fact.inner]
    return filled(
        "We take {bodies} as one body{called}: the forces between them ({inner}) come in equal and "
        "opposite pairs and cancel.",
        bodies=the_bodies(fact.bodies, nouns),
        called=f", {whole}" if (whole := the_whole(fact.bodies, nouns)) else "",
        inner=series(inner),
    )


@say.register
def forces_counted(fact: ForcesCounted, nouns: Nouns) -> Inlines:
    act = "acts" if fact.forces == 1 else "act"
    whose = f"on {the_bodies(fact.bodies, nouns)}"
    if len(fact.bodies) > 1:
        whose = "on it from outside"
    told = f"{counted(fact.forces, 'force').capitalize()} {act} {whose}"
    couples = f", and {counted(fact.couples, 'couple')}" if fact.couples else ""
    return filled("{told}{couples}:", told=told, couples=couples)


@say.register
def joint_force(fact: JointForce, nouns: Nouns) -> Inlines:
    how = ", unknown in size and direction, so we write its components {parts}"
    if fact.stated:
        how = ", which we write as its components {parts}"
    if fact.again:
        how = " by its components {parts}" if len(fact.parts) > 1 else ", which is {parts} alone"
    return filled(
        f"the force {{R}} of {{by}}{{at}}{how}",
        R=fact.letter,
        by=the_element(fact.element, nouns),
        at=at(fact.point),
        parts=_components(fact.parts, nouns),
    )


@say.register
def joint_reaction(fact: JointReaction, nouns: Nouns) -> Inlines:
    return filled(
        "the reaction of {by}{at}, equal and opposite to the force on {other}: {parts}",
        by=the_element(fact.element, nouns),
        at=at(fact.point),
        other=the_body(fact.other, nouns),
        parts=_components(fact.parts, nouns),
    )


def _components(parts: Sequence[tuple[Expression, Way]], nouns: Nouns) -> Inlines:
    """ "R_x (to the right) and R_y (up)"."""
    return series(
        [
            filled("{F} ({way})", F=force, way=toward(way, nouns).replace("straight ", ""))
            for force, way in parts
        ]
    )


_PUSHES: Final = {
    Kind.CABLE: "the pull {F} of {by}{at}, {way}",
    Kind.MUSCLE: "the pull {F} of {by}{at}, {way}",
    Kind.MEMBER: "the pull {F} of {by}{at}, {way}",
    Kind.LINK: "the pull {F} of {by}{at}, {way}",
    Kind.WEIGHT: "the weight {F} of {by}, {way}{at}",
    Kind.HOLE: "the weight {F} that {by} takes away, counted {way}{at}",
    Kind.ROLLER: "the push {F} of {by}{at}, {way}",
    Kind.CONTACT: "the push {F} of {by}{at}, {way}{smooth}",
    Kind.ROUGH: "the normal push {F} of {by}{at}, {way}",
    Kind.FORCE: "{of}{at}, {way}",
    Kind.STRUT: "the push {F} of {by}{at}, {way}",
    Kind.SPRING: "the force {F} of {by}{at}, {way}",
    Kind.ROPE: "the pull {F} of {by}{at}, {way}",
    Kind.DISTRIBUTED: "the resultant {F} of {by}{at}, {way}",
    Kind.FIXED: "{part} {F} at the cut{at}, {way}",
}
_CARRIED: Final = {Carried.PULLS: "pull", Carried.PUSHES: "push", Carried.ACTS: "force"}
_CUT_PARTS: Final = {
    ForcePart.AXIAL: "the axial force",
    ForcePart.SHEAR: "the shear force",
}


@say.register
def force_named(fact: ForceNamed, nouns: Nouns) -> Inlines:
    pattern = _PUSHES.get(fact.kind, _PUSHES[Kind.FORCE])
    if fact.part is ForcePart.FRICTION:
        pattern = "the friction {F} of {by}{at}, taken {way}"
    by = the_element(fact.element, nouns)
    if fact.carried:
        return _load_named(fact, by)
    if fact.reaction_to:
        pattern += f", equal and opposite to that on {the_body(fact.reaction_to, nouns)}"
    return filled(
        pattern,
        F=fact.letter,
        by=by,
        of=_of(by, fact.letter),
        at=f" on {the_body(fact.on, nouns)}" if fact.on else at(fact.point, middle=fact.middle),
        way=toward(fact.way, nouns),
        part=_CUT_PARTS.get(fact.part, "the force"),
        smooth=_smooth(fact, nouns),
    )


def _smooth(fact: ForceNamed, nouns: Nouns) -> str:
    """Why a smooth contact pushes as it does, where it does not push straight up or down."""
    if fact.way.quarter in (1, 3):
        return ""
    if fact.across:
        return f", square to {the_body(fact.across, nouns)} because there is no friction there"
    return ", square to its surface because it is smooth"


def _load_named(fact: ForceNamed, by: str) -> Inlines:
    """What a load does to the body that carries it, which is as its weight: straight down."""
    assert fact.carried is not None
    does, place = _CARRIED[fact.carried], at(fact.point)
    several = agreeing([by], "", "their")
    whose = f"the {does} of {by}" if several else f"{by}'s {does}"
    if fact.again:
        return filled("{whose} {F} down{at}", whose=whose, F=fact.letter, at=place)
    pattern = "{whose} down{at}, equal to {the} weight {F}"
    return filled(pattern, whose=whose, at=place, the=several or "the", F=fact.letter)


def _of(by: str, force: Expression) -> Inlines:
    """ "the force F of the wind", but "the push F"."""
    if is_named(by):
        return filled("{by} {F}", by=by, F=force)
    return filled("the force {F} of {by}", F=force, by=by)


@say.register
def couple_named(fact: CoupleNamed, nouns: Nouns) -> Inlines:
    by = the_couple(fact.couple, nouns)
    pattern = "{by} {M}" if by.endswith("couple") else "the couple {M} of {by}"
    pattern = "the bending moment {M} at the cut" if fact.bared else pattern
    taken = "taken " if fact.taken else ""
    return filled(f"{pattern}, {taken}{fact.rotation}", M=fact.moment, by=by)


@say.register
def strut_along(fact: StrutAlong, nouns: Nouns) -> Inlines:
    by = the_element(fact.element, nouns)
    if fact.again:
        return filled("{F} runs along {by} for the same reason.", F=fact.force, by=by)
    return filled(
        "{By} {are} light, pinned at both ends and loaded nowhere between: only two forces act on "
        "{each}, so they must be equal and opposite, along the line between its ends. That is why "
        "{F} runs along {it}.",
        By=by[:1].upper() + by[1:],
        are=agreeing([by], "is", "are"),
        each=agreeing([by], "it", "each"),
        it=agreeing([by], "it", "them"),
        F=fact.force,
    )


@say.register
def same_tension(fact: SameTension, nouns: Nouns) -> Inlines:
    by = the_element(fact.element, nouns)
    return filled(
        "{By} {run} freely, so the tension {T} is the same all along.",
        By=heading(by),
        run=agreeing([by], "is light and runs", "are light and run"),
        T=fact.force,
    )


_SPREADINGS: Final = {
    Spreading.EVEN: "{F} replaces {by}, spread evenly: the load per length{largest} times the "
    "loaded length, acting at its middle.",
    Spreading.TRIANGLE: "{F} replaces {by}, spread as a triangle: half of the largest load per "
    "length{largest} times the loaded length, acting a third of that length from the heavy "
    "end{at}.",
    Spreading.UNEVEN: "{F} replaces {by}, spread unevenly: the mean load per length times the "
    "loaded length, acting nearer to the heavy end.",
}


@say.register
def spread_load(fact: SpreadLoad, nouns: Nouns) -> Inlines:
    place = filled(" {P}", P=letter(fact.heavy)) if fact.heavy else ()
    largest = filled(", {w},", w=fact.largest) if fact.largest is not None else ()
    by, pattern = the_element(fact.element, nouns), _SPREADINGS[fact.spreading]
    return filled(pattern, F=fact.force, by=by, at=place, largest=largest)


@say.register
def parts_heading(fact: PartsHeading, nouns: Nouns) -> Inlines:
    of_all = "Weights on {body}" if fact.heavy else "Forces on {body}"
    said = "Weights of the parts of {body}" if fact.made else of_all
    return filled(said, body=the_body(fact.body, nouns))


@say.register
def part_placed(fact: PartPlaced, nouns: Nouns) -> Inlines:
    return filled(
        "{part}, cut out: {W}, its centroid at ({x}, {y})"
        if fact.hole
        else "{part}: {W}, its centroid at ({x}, {y})",
        part=the_element(fact.element, nouns),
        W=fact.force,
        x=fact.x,
        y=fact.y,
    )


_CENTRED: Final = {
    Outline.TRIANGLE: "The centroid{P} of {part} lies a third of the way from each side to the "
    "opposite corner.",
    Outline.HALF_CIRCLE: "The centroid{P} of {part} is {out} from its straight side.",
    Outline.HALF_RING: "The centroid{P} of {part} is {out} from the line between its ends.",
}


@say.register
def part_centred(fact: PartCentred, nouns: Nouns) -> Inlines:
    part = the_element(fact.element, nouns)
    at = filled(" {P}", P=letter(fact.at)) if fact.at else ()
    return filled(_CENTRED[fact.outline], P=at, part=part, out=fact.out)


@say.register
def hole_counted(fact: HoleCounted, nouns: Nouns) -> Inlines:
    return filled(
        "{W} is what the part cut out would weigh; counted upward, it is taken off the whole.",
        W=fact.force,
    )
