"""What points are given for, and full marks, in English."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from probgen.statics.method import TorqueForm
from probgen.wording.block import Text
from probgen.wording.english import names
from probgen.wording.english.grammar import counted, numeral, series, the_bodies, the_whole
from probgen.wording.english.saying import say
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter
from probgen.working.criterion import (
    BalanceWritten,
    ConditionWritten,
    Criterion,
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


@say.register
def mark(fact: Mark, nouns: Nouns) -> Inlines:
    words = _at_one_limit(fact.criteria) or series([say(c.what, nouns) for c in fact.criteria])
    part = f"({fact.part}) " if fact.part else ""
    return filled("{part}{words}{earned}", part=part, words=words, earned=_EARNED[fact.earned])


def _at_one_limit(criteria: Sequence[Criterion]) -> Inlines:
    """Several quantities of one state said of together; nothing for any others."""
    found = [each.what for each in criteria if isinstance(each.what, FoundAtFirstLimit)]
    alike = len(found) == len(criteria) and len({each.judged for each in found}) == 1
    return _found_at_limit(found) if alike else ()


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
    if not bodies:
        return ""
    together = " as one body" if len(bodies) > 1 else ""
    return f" {before} {the_whole(bodies, nouns) or the_bodies(bodies, nouns) + together}"


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
    return _found_at_limit([fact])


def _found_at_limit(facts: Sequence[FoundAtFirstLimit]) -> Inlines:
    return filled(
        "{quantities} found at the limit reached first{judged}",
        quantities=series([each.quantity for each in facts]),
        judged=_JUDGED.get(facts[0].judged, ""),
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
