"""What is asked and what answers are called, in English."""

from __future__ import annotations

from typing import Final

from probgen.bank.labels import Coined, Sort
from probgen.quantities.unit import FORCE
from probgen.wording.block import Math, Text
from probgen.wording.english import names
from probgen.wording.english.saying import say
from probgen.wording.facts.asked import (
    AnswerNamed,
    CutSigns,
    ForceAsked,
    GravityTaken,
    KindOfQuantity,
    LimitOffered,
    LimitsAsked,
    MarginNamed,
    QuantityAsked,
    SectionSigns,
    SidesOffered,
    SignsAsked,
    UtmostAsked,
    WaysOffered,
    YesOrNo,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter
from probgen.working.result import ResultKind


@say.register
def kind_of_quantity(fact: KindOfQuantity, nouns: Nouns) -> Inlines:
    return (Text("weight" if fact.dimension == FORCE else fact.dimension.noun),)


@say.register
def section_signs(fact: SectionSigns, nouns: Nouns) -> Inlines:
    return (
        Text(
            "Inside a beam an axial force is positive in tension, a shear force where it turns "
            "the piece it acts on clockwise, a bending moment where it stretches the lower side."
        ),
    )


@say.register
def cut_signs(fact: CutSigns, nouns: Nouns) -> Inlines:
    return (
        Text(
            "At a cut an axial force is positive in tension, a shear force where it turns the "
            "piece it acts on clockwise, a bending moment where it turns the piece that is looked "
            "at counter-clockwise."
        ),
    )


@say.register
def signs_asked(fact: SignsAsked, nouns: Nouns) -> Inlines:
    ways = ["to the right and up"] * fact.level
    ways += [f"{'seen from above ' * fact.level}to the east and north"] * fact.plan
    if not ways:
        return (Text("Couples count as positive counter-clockwise."),)
    ways += ["couples counter-clockwise"] * fact.couples
    return (Text(f"Components count as positive {', '.join(ways)}."),)


@say.register
def gravity_taken(fact: GravityTaken, nouns: Nouns) -> Inlines:
    return filled("Take {g} throughout.", g=fact.value)


@say.register
def quantity_asked(fact: QuantityAsked, nouns: Nouns) -> Inlines:
    named = names.the(names.quantity(fact.quantity.id, nouns))
    name = nouns.quantity(fact.quantity.id)
    member = isinstance(name, Coined) and name.sort is Sort.MEMBER_FORCE
    sign = " (positive in tension)" if member else ""
    on = f" on {names.the_body(fact.body, nouns)}" if fact.body and isinstance(name, Coined) else ""
    return filled("{named}{on}, {q}{sign}", named=named, on=on, q=fact.quantity, sign=sign)


@say.register
def force_asked(fact: ForceAsked, nouns: Nouns) -> Inlines:
    pattern = "the {asked} of the force from {by}, {F}"
    if fact.body:
        pattern = "the {asked} of the force on {body} from {by}, {F}"
    return filled(
        pattern,
        asked="components" if fact.components else "magnitude and direction",
        by=names.the_element(fact.element, nouns),
        body=names.the_body(fact.body, nouns) if fact.body else "",
        F=fact.letter,
    )


@say.register
def utmost_asked(fact: UtmostAsked, nouns: Nouns) -> Inlines:
    limits = [names.limit(limit, nouns) for limit in fact.limits]
    pattern = "the {largest} {named}, {q}, before {limits}"
    if len(limits) > 1:
        pattern = (
            "the {largest} {named}, {q}, that is possible, and what happens first beyond it: "
            "{limits}"
        )
    return filled(
        pattern,
        largest="largest" if fact.largest else "smallest",
        named=names.quantity(fact.quantity.id, nouns),
        q=fact.quantity,
        limits=" or ".join(limits),
    )


@say.register
def limits_asked(fact: LimitsAsked, nouns: Nouns) -> Inlines:
    named = " or ".join(names.limit(limit, nouns) for limit in fact.limits)
    return (Text(f"whether it holds (if not, {named}), and by what margin"),)


@say.register
def answer_named(fact: AnswerNamed, nouns: Nouns) -> Inlines:
    match fact.kind:
        case ResultKind.LIMIT:
            return (Text("what happens first"),)
        case ResultKind.VERDICT:
            beyond = f" (if not, {names.limit(fact.limit, nouns)})" if fact.limit else ""
            return (Text(f"does it hold{beyond}"),)
        case ResultKind.DIRECTION:
            return filled("direction of {R}", R=fact.letter)
        case ResultKind.QUANTITY | ResultKind.MAGNITUDE:
            return (Math((fact.letter,)),)


_WAYS: Final = {
    "horizontal": "above / below the horizontal,",
    "vertical": "from the upward / downward vertical,",
    "axis": "counter-clockwise from +{x} (to the right)",
}
_COMPASS: Final = {
    "horizontal": "north / south of",
    "vertical": "from north / south toward",
    "axis": "counter-clockwise from +{x} (east)",
}


@say.register
def ways_offered(fact: WaysOffered, nouns: Nouns) -> Inlines:
    return filled((_COMPASS if nouns.labels.plan else _WAYS)[fact.reference], x=letter("x"))


@say.register
def sides_offered(fact: SidesOffered, nouns: Nouns) -> Inlines:
    return (Text("east / west" if nouns.labels.plan else "to the right / left"),)


@say.register
def limit_offered(fact: LimitOffered, nouns: Nouns) -> Inlines:
    return (Text(names.limit(fact.limit, nouns) + ("" if fact.last else " /")),)


@say.register
def yes_or_no(fact: YesOrNo, nouns: Nouns) -> Inlines:
    beyond = f"it holds (if not, {names.limit(fact.limit, nouns)}): " if fact.limit else ""
    return (Text(f"{beyond}yes / no"),)


@say.register
def margin_named(fact: MarginNamed, nouns: Nouns) -> Inlines:
    return (Text("margin"),)
