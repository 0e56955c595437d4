"""What points are given for, full marks, and slips, in English."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from probgen.mistakes import variant
from probgen.quantities.expression import Number
from probgen.quantities.formula import Relation
from probgen.quantities.symbol import italic
from probgen.quantities.unit import Unit
from probgen.statics.method import TorqueForm
from probgen.statics.system import Body, Element, Limit
from probgen.wording.block import Text
from probgen.wording.english import names
from probgen.wording.english.grammar import counted, numeral, series, the_bodies
from probgen.wording.english.saying import say
from probgen.wording.english.ways import direction, ends_of_axes
from probgen.wording.facts.asked import SlipNamed, SlipSaid
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, Part, filled, letter
from probgen.working.convention import Turning
from probgen.working.criterion import (
    BalanceWritten,
    ConditionWritten,
    DiagramDrawn,
    DirectionFound,
    FirstLimitNamed,
    FoundAtFirstLimit,
    FoundFromBalance,
    FoundFromCondition,
    IdleNamed,
    InsideDrawn,
    Judged,
    LimitsCompared,
    MagnitudeFound,
    MarginFound,
    NumbersPutIn,
    OtherRoutes,
    QuantityFound,
    ResultantIntegrated,
    ResultantPlaced,
    TakenOutOfEquations,
    TorqueEquation,
    WrittenOut,
)
from probgen.working.scheme import Earned, Mark
from probgen.working.tolerance import Interval

# Marks.


@say.register
def mark(fact: Mark, nouns: Nouns) -> Inlines:
    words = series([say(criterion.what, nouns) for criterion in fact.criteria])
    part = f"({fact.part}) " if fact.part else ""
    return filled("{part}{words}{earned}", part=part, words=words, earned=_EARNED[fact.earned])


_EARNED: Final = {
    Earned.METHOD: "\u00a0–\u00a0method",
    Earned.ACCURACY: "\u00a0–\u00a0accuracy",
    Earned.BOTH: "",
}


@say.register
def other_routes(fact: OtherRoutes, nouns: Nouns) -> Inlines:
    later = "; so do later parts that are right but for an earlier error" if fact.follows else ""
    return (Text(f"Any right way earns the marks{later}."),)


@say.register
def diagram_drawn(fact: DiagramDrawn, nouns: Nouns) -> Inlines:
    whose = "" if fact.alone else _whose(fact.bodies, "of", nouns)
    couples = {0: "", 1: " and a couple"}.get(fact.couples, f" and {numeral(fact.couples)} couples")
    return (Text(f"free-body diagram{whose} with {counted(fact.forces, 'force')}{couples}"),)


@say.register
def torque_equation(fact: TorqueEquation, nouns: Nouns) -> Inlines:
    pattern = "{word} equation{whose} about {P} with signs and {parts}"
    whose, parts = _whose(fact.bodies, "for", nouns), _PARTS[fact.form]
    return filled(pattern, word=fact.turning, whose=whose, P=letter(fact.pivot), parts=parts)


_PARTS: Final[Mapping[TorqueForm, str]] = {
    "angle": "angles",
    "arm": "lever arms",
    "components": "components",
}


@say.register
def balance_written(fact: BalanceWritten, nouns: Nouns) -> Inlines:
    whose = _whose(fact.bodies, "on", nouns)
    return filled("force balance{whose} along {axis}", whose=whose, axis=letter(fact.axis))


def _whose(bodies: Sequence[str], before: str, nouns: Nouns) -> str:
    """ " on the board"; nothing where there is one body only."""
    together = " as one body" if len(bodies) > 1 else ""
    return f" {before} {the_bodies(bodies, nouns)}{together}" if bodies else ""


@say.register
def condition_written(fact: ConditionWritten, nouns: Nouns) -> Inlines:
    return filled("{condition} used", condition=fact.condition)


@say.register
def taken_out_of_equations(fact: TakenOutOfEquations, nouns: Nouns) -> Inlines:
    return filled("{quantities} eliminated", quantities=series(fact.quantities))


@say.register
def written_out(fact: WrittenOut, nouns: Nouns) -> Inlines:
    return filled("{q} written out in symbols", q=fact.quantity)


@say.register
def resultant_integrated(fact: ResultantIntegrated, nouns: Nouns) -> Inlines:
    return filled("{W} and {x} by integration", W=fact.resultant, x=fact.centroid)


@say.register
def resultant_placed(fact: ResultantPlaced, nouns: Nouns) -> Inlines:
    return filled("size and place of the resultant {W}", W=fact.resultant)


@say.register
def inside_drawn(fact: InsideDrawn, nouns: Nouns) -> Inlines:
    body = names.the_body(fact.body, nouns)
    return (Text(f"shear force and bending moment drawn along {body}"),)


@say.register
def numbers_put_in(fact: NumbersPutIn, nouns: Nouns) -> Inlines:
    return filled("numbers put in for {q}", q=fact.quantity)


_JUDGED: Final = {Judged.SIGN_AND_UNIT: " (sign and unit)", Judged.UNIT: " (unit)"}


@say.register
def quantity_found(fact: QuantityFound, nouns: Nouns) -> Inlines:
    done, judged = "found" if fact.asked else "worked out", _JUDGED.get(fact.judged, "")
    return filled("{q} {done}{judged}", q=fact.quantity, done=done, judged=judged)


@say.register
def found_from_balance(fact: FoundFromBalance, nouns: Nouns) -> Inlines:
    return filled(
        "{q} from the balance{whose} along {axis}{judged}",
        q=fact.quantity,
        whose=_whose(fact.bodies, "on", nouns),
        axis=letter(fact.axis),
        judged=_JUDGED.get(fact.judged, ""),
    )


@say.register
def idle_named(fact: IdleNamed, nouns: Nouns) -> Inlines:
    return filled(
        "{q} seen to be zero at {joint}, with the reason",
        q=fact.quantity,
        joint=names.the_body(fact.body, nouns),
    )


@say.register
def found_from_condition(fact: FoundFromCondition, nouns: Nouns) -> Inlines:
    return filled(
        "{q} from {condition}{judged}",
        q=fact.quantity,
        condition=fact.condition,
        judged=_JUDGED.get(fact.judged, ""),
    )


@say.register
def first_limit_named(fact: FirstLimitNamed, nouns: Nouns) -> Inlines:
    return (Text("limits compared, the one reached first named"),)


@say.register
def found_at_first_limit(fact: FoundAtFirstLimit, nouns: Nouns) -> Inlines:
    return filled(
        "{q} found at the limit reached first{judged}",
        q=fact.quantity,
        judged=_JUDGED.get(fact.judged, ""),
    )


@say.register
def limits_compared(fact: LimitsCompared, nouns: Nouns) -> Inlines:
    if len(fact.sides) > 1:
        return (Text("what is asked for compared with what is possible; verdicts"),)
    ((left, right),) = fact.sides
    return filled("{left} compared with {right}; verdict", left=left, right=right)


@say.register
def margin_found(fact: MarginFound, nouns: Nouns) -> Inlines:
    return filled(
        "margin between {left} and {right}{judged}",
        left=fact.left,
        right=fact.right,
        judged=_JUDGED.get(fact.judged, ""),
    )


@say.register
def magnitude_found(fact: MagnitudeFound, nouns: Nouns) -> Inlines:
    return filled("magnitude of {R} (unit)", R=nouns.labels.whole(fact.element))


@say.register
def direction_found(fact: DirectionFound, nouns: Nouns) -> Inlines:
    how = "with its side" if fact.worded else f"as an angle from the {names.X}-axis"
    return filled("direction of {R} {how}", R=nouns.labels.whole(fact.element), how=how)


@say.register
def interval(fact: Interval, nouns: Nouns) -> Inlines:
    if fact.within is not None:
        return (Text(f"± {fact.within:.2g}°"),)
    if fact.exact:
        return (Text("exactly 0"),)
    return filled("{low} to {high}", low=fact.low, high=fact.high)


# Slips.

SLIPS: Final[Mapping[tuple[str, str], str]] = {
    ("mass_as_weight", ""): "masses used as weights, without {g}",
    ("mass_as_weight", "one"): "the mass used as a weight, without {g}",
    ("mass_as_weight", "asked"): "{W} given as {m}, not divided by {g}",
    ("one_strand", ""): "{T} counted once, though it pulls twice",
    ("normal_is_weight", "slope"): "{N} taken to be {W}, as on level ground",
    ("normal_is_weight", "pull"): "{N} taken to be {W}, as if nothing else pulled up or down",
    ("normal_is_weight", "carried"): "{N} taken to be {W} alone, without what presses from above",
    ("friction_of_weight", ""): "{f} taken to be {m}, with the weight for the normal force",
    ("friction_left_out", ""): "the friction {f} left out",
    ("friction_left_out", "one"): "the friction {f} left out on {body}",
    ("friction_reversed", ""): "the friction {f} taken the wrong way",
    ("friction_reversed", "one"): "the friction {f} taken the wrong way on {body}",
    ("other_limit", ""): "worked out for the case that {limit}, though the other limit comes first",
    ("load_not_halved", ""): "{W} not halved",
    ("load_at_middle", ""): "the resultant {W} of the triangular load placed at half its length",
    ("load_at_middle", "curve"): "the resultant {W} of the load placed at half its length",
    ("load_at_end", ""): "the resultant {W} of the load placed at the end of its length",
    ("load_as_even", ""): "{W} taken as the largest load times its length",
    ("load_as_triangle", ""): "{W} and {x} taken as those of a triangular load",
    ("half_forgotten", ""): "the whole of {b} taken, not half of it",
    ("half_forgotten", "arm"): "the whole of {b} taken in the arm of {W}, not half of it",
    ("half_forgotten", "arms"): "the whole of {b} taken in the arms of {W}, not half of it",
    ("half_forgotten", "both"): "{b} taken whole, not halved",
    ("half_forgotten", "arm-both"): "{b} taken whole in the arm of {W}, not halved",
    ("half_forgotten", "arms-both"): "{b} taken whole in the arms of {W}, not halved",
    ("unweighted_mean", ""): "{q} taken as the plain mean, whatever the masses",
    ("unweighted_mean", "weights"): "{q} taken as the plain mean, whatever the weights",
    ("centroid_halfway", ""): "{W} placed at half the height of its part",
    ("shape_not_halved", "triangle"): "{W} not halved",
    ("shape_not_halved", "round"): "{W} not halved",
    ("transmitted_left_out", ""): "{F}, which also acts on {body}, left out",
    ("transmitted_left_out", "part"): "the {axis}-component of {F} on {body} left out",
    ("load_forgotten", ""): "{W} left out",
    ("hole_added", ""): "{W}, which is cut out, added instead of taken away",
    ("hole_forgotten", ""): "{W}, which is cut out, not taken away",
    ("reaction_left_out", ""): "{F} left out of the balance of {body}",
    ("member_turned", ""): "{F} taken to act the other way on {body}",
    ("load_left_out", ""): "{F} left out of the balance of {body}",
    ("couple_turned", ""): "the couple {C} taken the wrong way round",
    ("couple_left_out", ""): "the couple {C} left out",
    ("component_sign", "axis"): "the {axis}-component of {F} with the wrong sign",
    ("component_sign", "tilted"): "a component of {F} with the wrong sign",
    ("balance_sign", "out"): "{W} left out of the balance of forces",
    ("balance_sign", "turned"): "{W} with the wrong sign in the balance of forces",
    ("sizes_added", ""): "the sizes of {F} simply added",
    ("equal_sharing", ""): "{N} each taken to be half of {W}",
    ("exchanged", ""): "{a} and {b} exchanged",
    ("wrong_end", ""): "the distance of {W} measured from the other end of {body}",
    ("sin_cos_swap", "torque"): "sine and cosine exchanged in the {turning} of {F}",
    ("sin_cos_swap", "one"): "sine and cosine exchanged for {F}",
    ("sin_cos_swap", "all"): "sine and cosine exchanged throughout",
    ("wrong_reference_line", "vertical"): "{b} in the place of {a}, an angle from the wrong line",
    ("wrong_reference_line", "tilt"): "{b} in the place of {a}, an angle from the wrong line",
    ("no_angle", "one"): "{F} taken to act square to its arm (no angle in its {turning})",
    ("no_angle", "all"): "every force taken to act square to its arm (no angles)",
    ("no_angle", "one-arm"): "the distance from the pivot used as the lever arm of {F}",
    ("no_angle", "all-arms"): "distances from the pivot used as lever arms of all forces",
    ("whole_length_for_weight", ""): "{body}'s weight {W} placed at its end {end}",
    ("distance_not_perpendicular", ""): "distances from the pivot used as lever arms of {W}",
    ("distance_not_perpendicular", "one"): "the distance {A}{P} used as the lever arm of {W}",
    ("arm_from_elsewhere", ""): "{d} taken as the arm of {F} about {P}, not {arm}",
    ("own_weight_forgotten", ""): "{body}'s own weight {W} left out",
    ("torque_sign", ""): "the {turning} of {F} taken the wrong way round",
    ("unit_not_converted", ""): "{q} left in {own}, not converted to {due}",
    ("inverted_arm_ratio", ""): "the ratio of the lever arms upside down",
    ("joint_is_total_weight", ""): "{R} taken as the sum of the weights alone",
    ("joint_is_total_weight", "one"): "{R} taken as the weights on {body} alone",
    **{
        ("joint_added_not_subtracted", way + part): f"{of}{{T}} {wrong}"
        for way, wrong in (
            ("up", "added to {W} in {y}, not taken off"),
            ("down", "taken off {W} in {y}, not added"),
        )
        for part, of in (
            ("", ""),
            ("-part", "the vertical component of "),
            ("-parts", "the vertical components of "),
        )
    },
    ("pull_left_out", ""): "{F} left out of the balance of forces",
    ("hinge_vertical_only", "right"): "{R} taken to be vertical, {x} forgotten",
    ("hinge_vertical_only", "full"): "every force taken to be vertical, {R} too",
    ("hinge_along_body", ""): "{R} taken to act along {body}",
    ("component_only", "x"): "{x} alone given as {R}",
    ("component_only", "y"): "{y} alone given as {R}",
    ("component_only", "sum"): "the sizes of {x} and {y} simply added",
    ("tangent_inverted", ""): "{x} and {y} exchanged in the tangent",
    ("tangent_inverted", "angle"): "the fraction for tan {a} upside down",
    ("angle_sign", "up"): "{up} and {down} exchanged",
    ("angle_sign", "side"): "{left} and {right} exchanged",
    ("calculator_radians", ""): "calculator set to radians",
    ("tension_equals_load", "load"): "{T} taken to be the load {W}",
    ("tension_equals_load", "loads"): "{T} taken to be the loads {W} together",
    ("tension_equals_load", "total"): "{T} taken to be all the weight, {W}",
    ("friction_at_limit", ""): "{f} taken at its limit {m}, though nothing is about to slip",
    ("mu_inverted", ""): "the fraction for {mu} upside down",
    ("normal_at_wall_is_weight", "own"): "{N} taken to be {body}'s own weight {W}",
    ("normal_at_wall_is_weight", "total"): "{N} taken to be all the weight, {W}",
    ("early_rounding", ""): "results rounded as for the answer before they were used again",
}
"""What went wrong, by slip and way; letters and nouns of the problem fill the places."""


@say.register
def slip_named(fact: SlipNamed, nouns: Nouns) -> Inlines:
    words = _went_wrong(fact, nouns)
    if isinstance(fact.shown, Number):
        value = (fact.quantity, Relation("="), fact.shown)
        return filled("{value}: {words}.", value=value, words=words)
    joint = " at " if fact.shown.oblique else " "
    way = joint + direction(fact.shown, nouns)
    return filled("{q}{way}: {words}.", q=fact.quantity, way=way, words=words)


@say.register
def slip_said(fact: SlipSaid, nouns: Nouns) -> Inlines:
    return one_slip(fact.turning, fact.misstep, nouns)


def _went_wrong(fact: SlipNamed, nouns: Nouns) -> Inlines:
    first = one_slip(fact.turning, fact.misstep, nouns)
    if fact.second is None:
        return first
    second = one_slip(fact.turning, fact.second, nouns)
    return filled("{first}; and {second}", first=first, second=second)


def one_slip(turning: Turning, misstep: variant.Misstep, nouns: Nouns) -> Inlines:
    """A slip as a phrase."""
    parts: dict[str, Part] = {"turning": turning, **ends_of_axes(nouns)}
    for name, part in misstep.parts.items():
        parts[name] = _part(part, nouns)
    return filled(SLIPS[misstep.slip, misstep.way], **parts)


def _part(part: variant.Part, nouns: Nouns) -> Part:
    """A body by its noun, a support by its letter, several quantities, an axis,
    a unit."""
    match part:
        case Body(id):
            return names.the_body(id, nouns)
        case Element(id):
            return nouns.labels.whole(id)
        case Limit(id):
            return names.limit(id, nouns)
        case tuple():
            return series(part)
        case Unit():
            return part.plain
        case str():
            return italic(part)
        case _:
            return part
