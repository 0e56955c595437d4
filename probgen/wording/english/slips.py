"""Slips, in English."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from probgen.mistakes import variant
from probgen.quantities.expression import Number
from probgen.quantities.formula import Relation
from probgen.quantities.symbol import italic
from probgen.quantities.unit import Unit
from probgen.statics.system import Body, Element, Limit
from probgen.wording.english import names
from probgen.wording.english.grammar import series
from probgen.wording.english.saying import say
from probgen.wording.english.ways import direction, ends_of_axes
from probgen.wording.facts.asked import SlipNamed, SlipSaid
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, Part, filled
from probgen.working.convention import Turning

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
    ("sin_cos_swap", "torques"): "sine and cosine exchanged in the {turning}s of {F}",
    ("sin_cos_swap", "one"): "sine and cosine exchanged for {F}",
    ("sin_cos_swap", "all"): "sine and cosine exchanged throughout",
    ("wrong_reference_line", "vertical"): "{b} in the place of {a}",
    ("wrong_reference_line", "tilt"): "{b} in the place of {a}",
    ("no_angle", "one"): "{F} taken to act square to its arm (no angle in its {turning})",
    ("no_angle", "all"): "every force taken to act square to its arm (no angles)",
    ("no_angle", "one-arm"): "the distance from the pivot used as the lever arm of {F}",
    ("no_angle", "one-read"): "{d} taken as the lever arm of {F}, without {r}",
    ("no_angle", "one-parts"): "{r} left out in the {turning} of {F}",
    ("no_angle", "all-read"): "every sine and cosine left out in the {turning}s",
    ("no_angle", "all-arms"): "distances from the pivot used as lever arms of all forces",
    ("whole_length_for_weight", ""): "{body}'s weight {W} placed at its end {end}",
    ("distance_not_perpendicular", ""): "distances from {A} used as lever arms of {W}",
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
