"""The horizontal part of a cable's tension, in English."""

from __future__ import annotations

from probgen.wording.english.grammar import the_bodies
from probgen.wording.english.saying import say
from probgen.wording.facts.level_part import LevelPartOf, LevelPartShared
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter


@say.register
def level_part_shared(fact: LevelPartShared, nouns: Nouns) -> Inlines:
    return filled(
        "Nothing but these pulls acts sideways on {knots}, so along {x} each is pulled as hard to "
        "the left as to the right: the horizontal part of the tension is the same all along, {H}. "
        "Up or down a stretch pulls with {H} times its rise over its run.",
        knots=the_bodies(fact.knots, nouns),
        x=letter("x"),
        H=fact.level,
    )


@say.register
def level_part_of(fact: LevelPartOf, nouns: Nouns) -> Inlines:
    return filled("{H} is the horizontal part of {T}.", H=fact.level, T=fact.tension)
