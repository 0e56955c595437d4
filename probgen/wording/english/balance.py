"""The steps of a working, in English."""

from __future__ import annotations

from collections.abc import Sequence

from probgen.quantities.expression import Expression, number, times
from probgen.wording.block import Text
from probgen.wording.english.grammar import (
    STILL,
    bodies_are,
    heading,
    numeral,
    series,
    the_taken,
)
from probgen.wording.english.names import quantity, reason, the_body, the_element
from probgen.wording.english.saying import say
from probgen.wording.english.ways import beside, from_level, from_plumb, toward
from probgen.wording.facts.balance import (
    AngleSquaredOut,
    AxesAndTurning,
    AxesHeading,
    AxesTaken,
    AxisTilted,
    BalancesSay,
    ConditionsHold,
    CoupleNegative,
    Divided,
    ForceHeading,
    ForceNegative,
    ForceSplit,
    ForcesZero,
    GoOnWith,
    Leaning,
    NoneAlone,
    PlaceNegative,
    PullsSeveral,
    QuantityHeading,
    SquaredAndAdded,
    Tilt,
    TogetherHeading,
    TorqueHeading,
    TorquesZero,
    WeightTurned,
    WithTheResult,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter, listed


@say.register
def axes_heading(fact: AxesHeading, nouns: Nouns) -> Inlines:
    return (Text("Axes and signs"),)


def _axes(tilted: Sequence[Tilt], nouns: Nouns) -> Inlines:
    level = "{x} to the right, {y} up"
    if nouns.labels.plan:
        level = "{x} to the east, {y} to the north"
    told = filled(level, x=letter("x"), y=letter("y"))
    for place, tilt in enumerate(tilted):
        several = "each body" if tilt.body else "the surface each body is on"
        surface = _sloping(tilt.body, tilt.element, nouns) if tilt.way else several
        told += filled(
            "{comma}{axis} {kind}{way}",
            comma=", " if place else "; ",
            axis=letter(tilt.axis),
            kind=f"along {surface}" if tilt.along else "square to it",
            way=filled(", {way}", way=toward(tilt.way, nouns)) if tilt.way else "",
        )
    own = any(tilt.way is None for tilt in tilted)
    return told + filled(", as its diagram shows") if own else told


@say.register
def axes_taken(fact: AxesTaken, nouns: Nouns) -> Inlines:
    return filled("{axes}.", axes=_axes(fact.tilted, nouns))


@say.register
def axes_and_turning(fact: AxesAndTurning, nouns: Nouns) -> Inlines:
    but = ", but {against} {count} as positive {other}" if fact.against else ""
    return filled(
        "{axes}; {positive} {word}s are positive" + but + ".",
        axes=_axes(fact.tilted, nouns),
        positive=fact.positive,
        word=fact.turning,
        against=series(fact.against),
        count="counts" if len(fact.against) == 1 else "count",
        other="counter-clockwise" if fact.positive == "clockwise" else "clockwise",
    )


@say.register
def torque_heading(fact: TorqueHeading, nouns: Nouns) -> Inlines:
    return (Text(f"{fact.turning.capitalize()} balance"),)


@say.register
def force_heading(fact: ForceHeading, nouns: Nouns) -> Inlines:
    whose = f" on {the_taken(fact.bodies, nouns)}" if fact.bodies else ""
    return (Text(f"Force balance{whose}"),)


@say.register
def together_heading(fact: TogetherHeading, nouns: Nouns) -> Inlines:
    return (Text(f"{numeral(fact.equations).capitalize()} equations together"),)


@say.register
def quantity_heading(fact: QuantityHeading, nouns: Nouns) -> Inlines:
    return (Text(heading(quantity(fact.quantity, nouns))),)


@say.register
def none_alone(fact: NoneAlone, nouns: Nouns) -> Inlines:
    return filled(
        "Each of these {count} equations holds more than one unknown; together they give {names}.",
        count=numeral(fact.equations),
        names=series(fact.unknowns),
    )


@say.register
def balances_say(fact: BalancesSay, nouns: Nouns) -> Inlines:
    return (Text("The balances say:"),)


@say.register
def divided(fact: Divided, nouns: Nouns) -> Inlines:
    return filled(
        "We divide the second of these by the first, so that {dropped} drops out:",
        dropped=fact.dropped,
    )


@say.register
def squared_and_added(fact: SquaredAndAdded, nouns: Nouns) -> Inlines:
    return filled(
        "Squared and added, the same two give {size}, because the squares of sine and cosine add "
        "up to one:",
        size=fact.size,
    )


@say.register
def angle_squared_out(fact: AngleSquaredOut, nouns: Nouns) -> Inlines:
    return filled(
        "We square both and add them: the squares of sine and cosine add up to one, so {dropped} "
        "drops out:",
        dropped=fact.dropped,
    )


@say.register
def with_the_result(fact: WithTheResult, nouns: Nouns) -> Inlines:
    return (Text("With it:"),)


@say.register
def torques_zero(fact: TorquesZero, nouns: Nouns) -> Inlines:
    return filled(
        "{Body} {are} {still}, so the {word}s about {P} add up to zero.",
        Body=_capital(the_taken(fact.bodies, nouns)),
        are=bodies_are(fact.bodies, nouns),
        still=STILL[fact.still],
        word=fact.turning,
        P=letter(fact.pivot),
    )


@say.register
def forces_zero(fact: ForcesZero, nouns: Nouns) -> Inlines:
    named = [filled("along {a}", a=letter(axis)) for axis in fact.axes]
    axes = listed(named or ["along any axis"], " and ")
    if fact.too:
        return filled("The forces {axes} add up to zero too.", axes=axes)
    pattern = (
        "The forces on {body} balance: {axes} they add up to zero."
        if fact.particle
        else "{Body} {are} {still}, so the forces {axes} add up to zero."
    )
    body = the_taken(fact.bodies, nouns)
    return filled(
        pattern,
        body=body,
        Body=_capital(body),
        are=bodies_are(fact.bodies, nouns),
        still=STILL[fact.still],
        axes=axes,
    )


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


@say.register
def pulls_several(fact: PullsSeveral, nouns: Nouns) -> Inlines:
    return filled(
        "{Element} acts {count} along {axis}, with {T} each time: {all} together.",
        Element=_capital(the_element(fact.element, nouns)),
        count="twice" if fact.count == 2 else f"{numeral(fact.count)} times",
        axis=letter(fact.axis),
        T=fact.force,
        all=times(number(fact.count), fact.force),
    )


@say.register
def weight_turned(fact: WeightTurned, nouns: Nouns) -> Inlines:
    slope = _sloping(fact.body, fact.element, nouns)
    if fact.again:
        pattern = (
            "Likewise the components of {W} are {square} square to {slope} and {along} along it."
        )
        return filled(pattern, W=fact.weight, square=fact.square, slope=slope, along=fact.along)
    return filled(
        "{Slope} slopes at {angle}, and the line square to it leans as far from the vertical. {W} "
        "points straight down, so it is at {angle} to that line: its components are {square} "
        "square to {slope} and {along} along it.",
        Slope=heading(slope),
        slope=slope,
        angle=fact.angle,
        W=fact.weight,
        square=fact.square,
        along=fact.along,
    )


@say.register
def go_on_with(fact: GoOnWith, nouns: Nouns) -> Inlines:
    return filled(
        "We go on with {carried}, not the rounded {rounded}.",
        carried=series(fact.carried),
        rounded=series(fact.rounded),
    )


@say.register
def force_split(fact: ForceSplit, nouns: Nouns) -> Inlines:
    parts = [filled("{p} along {a}", p=part, a=letter(axis)) for axis, part in fact.parts]
    which = filled(_which(fact.place, fact.count), F=fact.force)
    if fact.way.quarter is not None:  # at this slope
        way = toward(fact.way, nouns)
        return filled("{F} points {way}: {parts}.", F=which, way=way, parts=series(parts))
    where = (from_plumb if fact.upright else from_level)(fact.way, nouns)
    return filled(
        "{F} points {angle} {where}{beside}: {parts}.",
        F=which,
        angle=fact.angle,
        where=where,
        beside=beside(fact.way, nouns),
        parts=series(parts),
    )


def _which(place: int, count: int) -> str:
    """Both strands of a rope pull with one T, each its own way."""
    if count == 1:
        return "{F}"
    return "One {F}" if place == 1 else "The other {F}" if count == 2 else "Another {F}"


@say.register
def conditions_hold(fact: ConditionsHold, nouns: Nouns) -> Inlines:
    reasons = dict.fromkeys(reason(id, nouns) for id in fact.conditions)
    return (Text(" ".join(heading(each).rstrip(".") + "." for each in reasons)),)


@say.register
def leaning(fact: Leaning, nouns: Nouns) -> Inlines:
    return filled(
        "{F} is at {angle} to {line}{member}.",
        F=fact.force,
        angle=fact.angle,
        line="the line square to " if fact.square else "",
        member=_sloping("", fact.element, nouns),
    )


@say.register
def axis_tilted(fact: AxisTilted, nouns: Nouns) -> Inlines:
    return filled(
        "Along the axis {axis}, {kind} ({way} is positive){missing}:",
        axis=letter(fact.axis),
        kind=f"{'along' if fact.along else 'square to'} "
        + _sloping(fact.body, fact.element, nouns),
        way=toward(fact.way, nouns),
        missing=_left_out(fact.missing),
    )


def _sloping(body: str, element: str, nouns: Nouns) -> str:
    """What an axis is along or square to: a body, a member or one surface of several, the one."""
    if element:
        return the_element(element, nouns)
    return the_body(body, nouns) if body else "the surface"


def _left_out(forces: Sequence[Expression]) -> Inlines:
    if not forces:
        return ()
    pattern = ", {F} does not appear" if len(forces) == 1 else ", {F} do not appear"
    return filled(pattern, F=series(forces))


@say.register
def force_negative(fact: ForceNegative, nouns: Nouns) -> Inlines:
    return filled(
        "{F} is negative{expected}: {on}{it} acts {way}{against}{axial}.",
        F=fact.force,
        on=_on(fact.body, nouns),
        expected=", as expected" if fact.expected else "",
        it="this component" if fact.component else "it",
        way=toward(fact.way, nouns),
        against="" if fact.expected else ", against the way first taken",
        axial=", which is compression" if fact.axial else "",
    )


@say.register
def couple_negative(fact: CoupleNegative, nouns: Nouns) -> Inlines:
    return filled(
        "{M} is negative: {on}the couple acts {way}.",
        M=fact.couple,
        on=_on(fact.body, nouns),
        way=fact.rotation,
    )


def _on(body: str, nouns: Nouns) -> str:
    """The second of two bodies that act on each other, where that is told of."""
    return f"on {the_body(body, nouns)} " if body else ""


@say.register
def place_negative(fact: PlaceNegative, nouns: Nouns) -> Inlines:
    return filled(
        "{x} is negative: the distance lies {way}, against the way first taken.",
        x=fact.distance,
        way=toward(fact.way, nouns),
    )
