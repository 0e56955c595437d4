"""The page of formulas, in English."""

from __future__ import annotations

from typing import Final

from probgen.wording.english.saying import say
from probgen.wording.facts.formulas import FormulaTopic, Topic
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled

_TOPICS: Final = {
    Topic.EQUILIBRIUM: "Equilibrium",
    Topic.NO_NET_FORCE: "no net force",
    Topic.NO_NET_TORQUE: "no net {turning}, about any point",
    Topic.TORQUE: "{Turning} of a force {_0} that acts at ({_1},{_2}) from the pivot, a distance "
    "{_3} away",
    Topic.BY_ANGLE: "{_0}: angle between {_1} and the line to the pivot",
    Topic.BY_ARM: "{_0}: lever arm, the distance from the pivot to the line of action",
    Topic.BY_COMPONENTS: "by components, {positive} positive",
    Topic.COMPONENTS: "Components, magnitude, direction",
    Topic.FROM_X: "{_0} measured from +{_1}, counter-clockwise",
    Topic.FORCES: "Forces",
    Topic.WEIGHT: "weight",
    Topic.FRICTION: "static friction",
    Topic.SPRING: "spring stretched by {_0}",
    Topic.SPREAD_LOAD: "load spread evenly over a length {_0}: at its middle",
    Topic.CENTRE_OF_MASS: "centre of mass",
    Topic.TRIANGLES: "Triangles, sides {_0}, {_1}, {_2} opposite to {_3}, {_4}, {_5}",
}
"""The letters of a topic stand in the places _0, _1, ..."""


@say.register
def formula_topic(fact: FormulaTopic, nouns: Nouns) -> Inlines:
    letters = {f"_{place}": letter for place, letter in enumerate(fact.letters)}
    return filled(
        _TOPICS[fact.topic],
        turning=fact.turning,
        Turning=fact.turning.capitalize(),
        positive=fact.positive,
        **letters,
    )
