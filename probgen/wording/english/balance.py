"""The steps of a working, in English."""

from __future__ import annotations

from probgen.quantities.printing import symbol_plain
from probgen.wording.block import Text
from probgen.wording.english.grammar import heading, numeral, series, the_bodies, toward
from probgen.wording.english.saying import say
from probgen.wording.facts.balance import (
    AxesAndTurning,
    AxesHeading,
    AxesTaken,
    AxisTilted,
    ComponentHeading,
    ConditionsHold,
    CoupleNegative,
    ForceHeading,
    ForceNegative,
    NoneAlone,
    PutIntoTheRest,
    QuantityHeading,
    TakenOut,
    TogetherHeading,
    TorqueHeading,
    WithTheResult,
    WithUnrounded,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter


@say.register
def axes_heading(fact: AxesHeading, nouns: Nouns) -> Inlines:
    return (Text("Axes and signs"),)


@say.register
def axes_taken(fact: AxesTaken, nouns: Nouns) -> Inlines:
    return filled("{x} to the right, {y} up.", x=letter("x"), y=letter("y"))


@say.register
def axes_and_turning(fact: AxesAndTurning, nouns: Nouns) -> Inlines:
    return filled(
        "{x} to the right, {y} up; {positive} {word}s are positive.",
        x=letter("x"),
        y=letter("y"),
        positive=fact.positive,
        word=fact.turning,
    )


@say.register
def torque_heading(fact: TorqueHeading, nouns: Nouns) -> Inlines:
    return (Text(f"{fact.turning.capitalize()} balance"),)


@say.register
def force_heading(fact: ForceHeading, nouns: Nouns) -> Inlines:
    whose = f" on {the_bodies(fact.bodies, nouns)}" if fact.bodies else ""
    return (Text(f"Force balance{whose}"),)


@say.register
def together_heading(fact: TogetherHeading, nouns: Nouns) -> Inlines:
    return (Text(f"{numeral(fact.equations).capitalize()} equations together"),)


@say.register
def quantity_heading(fact: QuantityHeading, nouns: Nouns) -> Inlines:
    return (Text(heading(nouns.quantity(fact.quantity))),)


@say.register
def component_heading(fact: ComponentHeading, nouns: Nouns) -> Inlines:
    return (Text(f"Component {symbol_plain(fact.component.symbol)}"),)


@say.register
def none_alone(fact: NoneAlone, nouns: Nouns) -> Inlines:
    return filled(
        "No equation holds only one unknown. These {count} hold {names} and no other:",
        count=numeral(fact.equations),
        names=series(fact.unknowns),
    )


@say.register
def taken_out(fact: TakenOut, nouns: Nouns) -> Inlines:
    return filled("We take {others} out,", others=series(fact.unknowns))


@say.register
def put_into_the_rest(fact: PutIntoTheRest, nouns: Nouns) -> Inlines:
    return filled("and put this into the rest, which leaves {last} alone:", last=fact.left)


@say.register
def with_the_result(fact: WithTheResult, nouns: Nouns) -> Inlines:
    return (Text("With it:"),)


@say.register
def with_unrounded(fact: WithUnrounded, nouns: Nouns) -> Inlines:
    return (Text("With the unrounded values found above:"),)


@say.register
def conditions_hold(fact: ConditionsHold, nouns: Nouns) -> Inlines:
    reasons = dict.fromkeys(nouns.reason(id) for id in fact.conditions)
    return (Text(" ".join(heading(reason).rstrip(".") + "." for reason in reasons)),)


@say.register
def axis_tilted(fact: AxisTilted, nouns: Nouns) -> Inlines:
    return filled(
        "Along the axis {axis}, {kind} ({way} is positive), one unknown drops out:",
        axis=letter(fact.axis),
        kind="along the surface" if fact.along else "square to the surface",
        way=toward(fact.way),
    )


@say.register
def force_negative(fact: ForceNegative, nouns: Nouns) -> Inlines:
    return filled(
        "{F} is negative: this part of the force acts {way}, against the way first taken."
        if fact.component
        else "{F} is negative: it acts {way}, against the way first taken.",
        F=fact.force,
        way=toward(fact.way),
    )


@say.register
def couple_negative(fact: CoupleNegative, nouns: Nouns) -> Inlines:
    return filled("{M} is negative: the couple acts clockwise.", M=fact.couple)
