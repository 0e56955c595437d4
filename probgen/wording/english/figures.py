"""What figures show and what is printed in them, in English."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from probgen.statics.system import Kind
from probgen.wording.block import Text
from probgen.wording.english.grammar import at, capitalized, series, the_bodies, the_taken
from probgen.wording.english.names import the_body, the_element
from probgen.wording.english.saying import say
from probgen.wording.english.ways import toward
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, listed
from probgen.working.figure import (
    Acting,
    BodyNamed,
    BodyShown,
    DiagramShown,
    ForceShown,
    NorthMarked,
    PairsNoted,
    ScaleNoted,
    SituationShown,
)


@say.register
def situation_shown(fact: SituationShown, nouns: Nouns) -> Inlines:
    return listed([say(body, nouns) for body in fact.bodies], " ", " ")


@say.register
def body_shown(fact: BodyShown, nouns: Nouns) -> Inlines:
    holds, loads = (_once(group, nouns) for group in (fact.holds, fact.loads))
    parts = [filled("is held by {these}", these=series(holds))] if holds else []
    if loads:
        acts = "carries" if holds else "is acted on by"
        parts.append(filled("{acts} {these}", acts=acts, these=series(loads)))
    body = capitalized((Text(the_body(fact.body, nouns)),))
    return filled("{told}.", told=listed([body, series(parts)] if parts else [body], " "))


def _once(acting: Sequence[Acting], nouns: Nouns) -> list[Inlines]:
    return list(dict.fromkeys(say(each, nouns) for each in acting))


@say.register
def acting(fact: Acting, nouns: Nouns) -> Inlines:
    pattern = "the weight of {by}{at}" if fact.kind == Kind.WEIGHT else "{by}{at}"
    return filled(pattern, by=the_element(fact.element, nouns), at=at(fact.at))


@say.register
def diagram_shown(fact: DiagramShown, nouns: Nouns) -> Inlines:
    forces = series([say(force, nouns) for force in fact.forces])
    bodies = the_bodies(fact.bodies, nouns)
    together = " together" if len(fact.bodies) > 1 else ""
    return filled(
        "Free-body diagram of {bodies}{together}: {forces}.",
        bodies=bodies, together=together, forces=forces,
    )  # fmt: skip


@say.register
def force_shown(fact: ForceShown, nouns: Nouns) -> Inlines:
    return filled("{F}{at} {way}", F=fact.letter, at=at(fact.at), way=toward(fact.way, nouns))


@say.register
def body_named(fact: BodyNamed, nouns: Nouns) -> Inlines:
    told = the_taken if nouns.labels.together else the_bodies
    return (Text(told(fact.bodies, nouns)),)


_SCALES: Final = {
    (True, True): "arrows to scale",
    (True, False): "arrows not to scale",
    (False, True): "lengths not to scale",
    (False, False): "not to scale",
    (False, None): "not to scale",
}
"""By lengths and arrows."""


@say.register
def scale_noted(fact: ScaleNoted, nouns: Nouns) -> Inlines:
    if fact.turned and fact.lengths and fact.arrows:
        return (Text("arrow lengths to scale, directions as assumed"),)
    return (Text(_SCALES[fact.lengths, fact.arrows]),)


@say.register
def north_marked(fact: NorthMarked, nouns: Nouns) -> Inlines:
    return (Text("N"),)


@say.register
def pairs_noted(fact: PairsNoted, nouns: Nouns) -> Inlines:
    return (Text("ticks: action and reaction"),)
