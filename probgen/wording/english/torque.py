"""A torque balance's pivot and what turns about it, in English."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.bank.labels import BodyNamed, ByKind, Called
from probgen.quantities.expression import ZERO, Expression, times, total
from probgen.quantities.formula import Relation
from probgen.wording.english.grammar import agreeing, numeral, series, the_taken
from probgen.wording.english.names import the_body, the_called
from probgen.wording.english.saying import say
from probgen.wording.facts.torque import (
    AngleToArm,
    ArmOfLegs,
    ByCoordinates,
    ByTheorems,
    CoordinatesFrom,
    CoupleAnywhere,
    Hold,
    LegsAcross,
    LeverArm,
    LineBeside,
    PassesThrough,
    PivotBare,
    PivotHeld,
    PivotMeeting,
    Placed,
    Side,
    SlantingLengths,
    SquareToArm,
    TurningHeading,
    TurnsBody,
    TurnsNothing,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, Part, filled, letter


@say.register
def turning_heading(fact: TurningHeading, nouns: Nouns) -> Inlines:
    body = the_taken(fact.bodies, nouns)
    return filled("Which forces turn {body} about {P}?", body=body, P=letter(fact.pivot))


@say.register
def pivot_bare(fact: PivotBare, nouns: Nouns) -> Inlines:
    return filled("We take {word}s about {P}.", word=fact.turning, P=letter(fact.pivot))


_PIVOTS: Final = {
    Hold.HINGE: "We take {word}s about {by} {P}.",
    Hold.BUILT_IN: "We take {word}s about {P}, where {by} holds {body}.",
    Hold.TOUCHING: "We take {word}s about {P}, the point of contact with {by}.",
    Hold.PUSHED: "We take {word}s about {P}, where {by} {support} {body}.",
}


@say.register
def pivot_held(fact: PivotHeld, nouns: Nouns) -> Inlines:
    name: Called = nouns.element(fact.element)
    if fact.hold is Hold.HINGE and isinstance(name, BodyNamed):
        name = ByKind.HINGE  # a point of two bodies is neither of them
    return filled(
        _PIVOTS[fact.hold],
        word=fact.turning,
        P=letter(fact.pivot),
        by=the_called(name, nouns),
        support=agreeing([the_called(name, nouns)], "supports", "support"),
        body=the_body(fact.body, nouns),
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
    these = series(fact.forces)
    if fact.again:
        return filled(_AGAIN[bool(fact.through), one], these=these, P=letter(fact.through))
    if not fact.through:
        where = "{these} acts there" if one else "{these} act there"
    elif one:
        where = "The line of action of {these} passes through {P}"
    else:
        where = "The lines of action of {these} pass through {P}"
    arm = "its lever arm is zero: it turns" if one else "their lever arms are zero: they turn"
    return filled(
        f"{where}, so {arm} nothing{{leaving}}.",
        these=these,
        P=letter(fact.through),
        leaving=_leaving(fact),
    )


_AGAIN: Final = {
    (False, True): "{these} acts there and turns nothing.",
    (False, False): "{these} act there and turn nothing.",
    (True, True): "The line of action of {these} passes through {P}: {these} turns nothing.",
    (True, False): "The lines of action of {these} pass through {P}: they turn nothing.",
}


def _leaving(fact: TurnsNothing) -> Inlines:
    """Which unknowns leave the equation; by name where other forces are beside them."""
    count = len(fact.unknowns)
    if not count:
        return ()
    if count < len(fact.forces):
        pattern = "unknown {these} leaves" if count == 1 else "unknowns {these} leave"
        return filled(f", and the {pattern} the equation", these=series(fact.unknowns))
    which = {1: "that unknown leaves", 2: "both of these unknowns leave"}
    return filled(f", and {which.get(count, 'these unknowns leave')} the equation")


@say.register
def passes_through(fact: PassesThrough, nouns: Nouns) -> Inlines:
    return filled(
        "No other force turns {body} about {P}, so {F} may not either: its line of action has to "
        "pass through {P}.",
        body=the_taken(fact.bodies, nouns),
        P=letter(fact.pivot),
        F=fact.force,
    )


def _named(forces: Sequence[Expression | Placed]) -> list[Part]:
    """ "P", or "P at C" where another force has that letter."""
    return [
        filled("{F} at {C}", F=each.force, C=letter(each.point))
        if isinstance(each, Placed)
        else each
        for each in forces
    ]


@say.register
def turns_body(fact: TurnsBody, nouns: Nouns) -> Inlines:
    return filled(
        "{drawn}{these} {turn} {body} {rotation} ({sign}).",
        drawn="As drawn, " if fact.drawn else "",
        these=series(_named(fact.forces)),
        turn="turns" if len(fact.forces) == 1 else "turn",
        body=the_taken(fact.bodies, nouns),
        rotation=fact.rotation,
        sign="positive" if fact.positive else "negative",
    )


@say.register
def square_to_arm(fact: SquareToArm, nouns: Nouns) -> Inlines:
    one = len(fact.forces) == 1
    arm = "arm" if len(fact.arms) == 1 else "arms"
    return filled(
        "{these} {act} at right angles to {its} {arm} {lines} ({sine}).",
        these=series(_named(fact.forces)),
        act="acts" if one else "act",
        its="its" if one else "their",
        arm=arm,
        lines=_lines(fact.arms),
        sine=fact.sine,
    )


def _lines(arms: Sequence[tuple[str, str]]) -> Inlines:
    """AC and AD: from the pivot to where forces act."""
    return series([filled("{A}{C}", A=letter(start), C=letter(end)) for start, end in arms])


@say.register
def slanting_lengths(fact: SlantingLengths, nouns: Nouns) -> Inlines:
    lengths = "length of the slanting line" if fact.count == 1 else "lengths of the slanting lines"
    return filled("First the {lengths}:", lengths=lengths)


@say.register
def couple_anywhere(fact: CoupleAnywhere, nouns: Nouns) -> Inlines:
    one = len(fact.moments) == 1
    return filled(
        "A couple has the same {turning} about every point, so {these} {counts} with no lever arm.",
        turning=fact.turning,
        these=series(fact.moments),
        counts="counts" if one else "count",
    )


@say.register
def angle_to_arm(fact: AngleToArm, nouns: Nouns) -> Inlines:
    single = "The angle between {F} and its arm {lines} is {angle}"
    several = "For {F} the angle between force and arm ({lines}) is {angle}"
    ending = ", and {sine}." if fact.sine else "."
    if not fact.angle:
        single = "The angle between {F} and its arm {lines} has the sine {sine}"
        several = "For {F} the angle between force and arm ({lines}) has the sine {sine}"
        ending = "."
    pattern = single if len(fact.forces) == 1 else several
    return filled(
        pattern + ending,
        F=series(_named(fact.forces)),
        lines=_lines(fact.arms),
        angle=fact.angle,
        sine=fact.sine,
    )


_SIDES: Final = {
    Side.RIGHT: "to the right of", Side.LEFT: "to the left of", Side.ABOVE: "above",
    Side.BELOW: "below", Side.OBLIQUE: "beside",
}  # fmt: skip
_COMPASS_SIDES: Final = {
    Side.RIGHT: "east of", Side.LEFT: "west of", Side.ABOVE: "north of", Side.BELOW: "south of",
    Side.OBLIQUE: "beside",
}  # fmt: skip
_NO_MATTER: Final = {
    Side.RIGHT: "the height", Side.LEFT: "the height", Side.ABOVE: "how far to the side",
    Side.BELOW: "how far to the side", Side.OBLIQUE: "where along the line",
}  # fmt: skip
_COMPASS_NO_MATTER: Final = {
    Side.RIGHT: "how far north or south", Side.LEFT: "how far north or south",
    Side.ABOVE: "how far east or west", Side.BELOW: "how far east or west",
    Side.OBLIQUE: "where along the line",
}  # fmt: skip


@say.register
def line_beside(fact: LineBeside, nouns: Nouns) -> Inlines:
    one = len(fact.forces) == 1
    plan = nouns.labels.plan
    side = (_COMPASS_SIDES if plan else _SIDES)[fact.side]
    other = (_COMPASS_NO_MATTER if plan else _NO_MATTER)[fact.side]
    ending = ", {its}." if fact.plain else f": that is {{its}}; {other} does not matter."
    lines = "The line of action of {F} passes" if one else "The lines of action of {F} pass"
    return filled(
        f"{lines} {{arm}} {side} {{P}}{ending}",
        F=series(_named(fact.forces)),
        arm=fact.arm,
        P=letter(fact.pivot),
        its="its lever arm" if one else "their lever arm",
    )


@say.register
def arm_of_legs(fact: ArmOfLegs, nouns: Nouns) -> Inlines:
    back = ", that of {those} {back}" if fact.against else ""
    return filled(
        "The way from the pivot to {F} has {count} legs, {lengths}; each gives a {word} of its own"
        + back
        + ".",
        F=series(_named([fact.force])),
        count=numeral(len(fact.lengths)),
        lengths=series(fact.lengths),
        word=fact.turning,
        those=series(fact.against),
        back=fact.back,
    )


@say.register
def lever_arm(fact: LeverArm, nouns: Nouns) -> Inlines:
    if fact.angle or fact.sine:
        return filled(
            "The angle between {F} and {line} "
            + ("is {angle}" if fact.angle else "has the sine {sine}")
            + (", and {sine}" if fact.angle and fact.sine else "")
            + ", so the lever arm of {F} is {arm}.",
            F=series(_named([fact.force])),
            line=_lines([(fact.line[0], fact.line[1])]),
            angle=fact.angle,
            sine=fact.sine,
            arm=fact.arm,
        )
    if fact.line:
        return filled(
            "{F} acts at right angles to {line}, so {line} itself is its lever arm: {arm}.",
            F=series(_named([fact.force])),
            line=_lines([(fact.line[0], fact.line[1])]),
            arm=fact.arm,
        )
    ending = "."
    if fact.sought:
        itself = fact.arm == fact.sought
        ending = ", which we look for." if itself else ", with {sought} still to be found."
    return filled(
        "Lever arm of {F}: {arm}" + ending,
        F=series(_named([fact.force])),
        arm=fact.arm,
        sought=series(fact.sought),
    )


@say.register
def legs_across(fact: LegsAcross, nouns: Nouns) -> Inlines:
    back = " and {back} back" if fact.back else ""
    return filled(
        "On the way from the pivot to {F}, along {lengths}, we go {toward} toward its line of "
        "action" + back + ": the lever arm of {F} is {arm}.",
        lengths=series(fact.lengths),
        F=series(_named([fact.force])),
        toward=series(fact.toward),
        back=series(fact.back),
        arm=fact.arm,
    )


@say.register
def coordinates_from(fact: CoordinatesFrom, nouns: Nouns) -> Inlines:
    axes = tuple(zip(fact.letters, (letter(axis) for axis in "xy"), strict=True))
    (first, along), (second, across) = axes if fact.counter_clockwise else axes[::-1]
    return filled(
        "With ({x}, {y}) counted from {P}, the {turning} of a force is {first} times its "
        "component along {across} less {second} times its component along {along}.",
        x=fact.letters[0],
        y=fact.letters[1],
        P=letter(fact.pivot),
        turning=fact.turning,
        first=first,
        second=second,
        along=along,
        across=across,
    )


@say.register
def by_theorems(fact: ByTheorems, nouns: Nouns) -> Inlines:
    sums = [(products, Relation("="), joined) for products, joined in fact.sums]
    return filled("Here {sums}.", sums=series(sums))


@say.register
def by_coordinates(fact: ByCoordinates, nouns: Nouns) -> Inlines:
    (at_x, at_y), (along_x, along_y) = fact.at, fact.parts
    x, y = fact.coordinates
    if ZERO in (along_x, along_y):  # the other coordinate turns nothing, and may be told nowhere
        across = along_x == ZERO
        (part, size), (arm, at) = (
            ((fact.letters[1], along_y), (x, at_x))
            if across
            else ((fact.letters[0], along_x), (y, at_y))
        )
        sign = 1 if across == fact.counter_clockwise else -1
        own = size == fact.force  # a component, or a force whose part is all of it
        return filled(
            "{F} acts along {axis} only, with {arm} = {at}{along}: {rule} = {torque}.",
            F=fact.force,
            axis=letter("y" if across else "x"),
            arm=arm,
            at=at,
            along="" if own else filled(" and {part} = {size}", part=part, size=size),
            rule=total((sign, times(arm, fact.force if own else part))),
            torque=fact.torque,
        )
    first, second = times(x, fact.letters[1]), times(y, fact.letters[0])
    if not fact.counter_clockwise:
        first, second = second, first
    return filled(
        "{F} acts at ({x}, {y}){square} with {F_x} = {along_x} and {F_y} = {along_y}: {rule} = "
        "{torque}{shorter}.",
        F=fact.force,
        x=at_x,
        y=at_y,
        square=_at_right_angles(fact.square),
        F_x=fact.letters[0],
        F_y=fact.letters[1],
        along_x=along_x,
        along_y=along_y,
        rule=total((1, first), (-1, second)),
        torque=fact.torque,
        shorter="" if fact.shorter is None else filled(" = {torque}", torque=fact.shorter),
    )


def _at_right_angles(line: tuple[str, ...]) -> Inlines:
    if not line:
        return ()
    return filled(", at right angles to {line},", line=_lines([(line[0], line[1])]))
