"""The forces on a body, in English."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.quantities.expression import Expression
from probgen.statics.system import Kind
from probgen.wording.english.grammar import at, counted, series, toward
from probgen.wording.english.saying import say
from probgen.wording.facts.forces import (
    CoupleNamed,
    ForceNamed,
    ForcesCounted,
    ForcesHeading,
    JointForce,
    JointReaction,
    SignsOpen,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled
from probgen.working.direction import Way


@say.register
def forces_heading(fact: ForcesHeading, nouns: Nouns) -> Inlines:
    return filled("Forces on the {body}", body=nouns.body(fact.body))


@say.register
def forces_counted(fact: ForcesCounted, nouns: Nouns) -> Inlines:
    act = "acts" if fact.forces == 1 else "act"
    told = f"{counted(fact.forces, 'force').capitalize()} {act} on the {nouns.body(fact.body)}"
    couples = f", and {counted(fact.couples, 'couple')}" if fact.couples else ""
    return filled("{told}{couples}:", told=told, couples=couples)


@say.register
def joint_force(fact: JointForce, nouns: Nouns) -> Inlines:
    return filled(
        "the force {R} of {by}{at}, unknown in size and direction, so we write its components "
        "{parts}",
        R=fact.letter,
        by=nouns.element(fact.element),
        at=at(fact.point),
        parts=_components(fact.parts),
    )


@say.register
def joint_reaction(fact: JointReaction, nouns: Nouns) -> Inlines:
    return filled(
        "the reaction of {by}{at}, equal and opposite to the force on the {other}: {parts}",
        by=nouns.element(fact.element),
        at=at(fact.point),
        other=nouns.body(fact.other),
        parts=_components(fact.parts),
    )


def _components(parts: Sequence[tuple[Expression, Way]]) -> Inlines:
    """ "R_x (to the right) and R_y (up)"."""
    return series(
        [
            filled("{F} ({way})", F=force, way=toward(way).replace("straight ", ""))
            for force, way in parts
        ]
    )


_PUSHES: Final = {
    Kind.CABLE: "the pull {F} of {by}{at}, {way}",
    Kind.MUSCLE: "the pull {F} of {by}{at}, {way}",
    Kind.WEIGHT: "the weight {F} of {by}, {way}{at}",
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
_CUT_PARTS: Final = {"axial": "the axial force", "shear": "the shear force"}
_FORCE_NOUNS: Final = ("force", "push", "pull", "thrust", "load")


@say.register
def force_named(fact: ForceNamed, nouns: Nouns) -> Inlines:
    pattern = _PUSHES.get(fact.kind, _PUSHES[Kind.FORCE])
    if fact.part == "friction":
        pattern = "the friction {F} of {by}{at}, taken {way}"
    straight = fact.way.quarter in (1, 3)
    by = nouns.element(fact.element)
    return filled(
        pattern,
        F=fact.letter,
        by=by,
        of=_of(by, fact.letter),
        at=at(fact.point),
        way=toward(fact.way),
        part=_CUT_PARTS.get(fact.part, "the force"),
        smooth="" if straight else ", square to its surface because it is smooth",
    )


def _of(by: str, force: Expression) -> Inlines:
    """ "the force F of the wind", but "the push F"."""
    if by.rsplit(" ", 1)[-1] in _FORCE_NOUNS:
        return filled("{by} {F}", by=by, F=force)
    return filled("the force {F} of {by}", F=force, by=by)


@say.register
def couple_named(fact: CoupleNamed, nouns: Nouns) -> Inlines:
    by = nouns.couple(fact.couple)
    pattern = "{by} {M}" if by.endswith("couple") else "the couple {M} of {by}"
    return filled(pattern, M=fact.moment, by=by)


@say.register
def signs_open(fact: SignsOpen, nouns: Nouns) -> Inlines:
    return filled(
        "{these} {are} taken positive the way named; a negative result means the opposite way.",
        these=series(fact.letters),
        are="is" if len(fact.letters) == 1 else "are",
    )
