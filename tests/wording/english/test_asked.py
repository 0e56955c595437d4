"""What is asked and offered to choose from, word by word."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

import pytest

from probgen.bank.labels import Label, Labels
from probgen.quantities.expression import Name
from probgen.wording.english import ENGLISH
from probgen.wording.facts.asked import (
    AnswerNamed,
    ForceAsked,
    LimitOffered,
    LimitsAsked,
    SidesOffered,
    SignsAsked,
    UtmostAsked,
    WaysOffered,
    YesOrNo,
)
from probgen.wording.nouns import NO_NOUNS, Nouns
from probgen.wording.sentence import plain_text
from probgen.working.fact import Fact
from probgen.working.result import ResultKind

LABELS = Labels(
    quantities={"P": Label("P", "push")},
    elements={"R": Label("R", "pin")},
    bodies={},
    limits={"slides": "it slides", "tips": "it tips"},
    reasons={},
)
NOUNS = Nouns(NO_NOUNS.system, LABELS)
FROM_ABOVE = Nouns(NO_NOUNS.system, replace(LABELS, plan=True))
P, R = Name("P", "P"), Name("R", "R")

SAID: list[tuple[Fact, str]] = [
    (ForceAsked("R", R, components=True), "the components of the force from the pin, R"),
    (ForceAsked("R", R, components=False),
     "the magnitude and direction of the force from the pin, R"),
    (UtmostAsked(P, True, ("slides",)), "the largest push, P, before it slides"),
    (UtmostAsked(P, False, ("slides",)), "the smallest push, P, before it slides"),
    (UtmostAsked(P, True, ("slides", "tips")), "the largest push, P, that is possible, and what "
     "happens first beyond it: it slides or it tips"),
    (LimitsAsked(("slides",)), "whether it holds (if not, it slides), and by what margin"),
    (LimitsAsked(("slides", "tips")), "whether it holds (if not, it slides or it tips), and by "
     "what margin"),
    (AnswerNamed(ResultKind.LIMIT, P), "what happens first"),
    (AnswerNamed(ResultKind.VERDICT, P), "does it hold"),
    (AnswerNamed(ResultKind.VERDICT, P, "tips"), "does it hold (if not, it tips)"),
    (AnswerNamed(ResultKind.DIRECTION, R), "direction of R"),
    (AnswerNamed(ResultKind.MAGNITUDE, R), "R"),
    (LimitOffered("slides", last=False), "it slides /"),
    (LimitOffered("tips", last=True), "it tips"),
    (YesOrNo("slides"), "it holds (if not, it slides): yes / no"),
    (YesOrNo(None), "yes / no"),
    (SignsAsked(couples=True), "Couples count as positive counter-clockwise."),
    (SignsAsked(plan=True), "Components count as positive to the east and north."),
    (SignsAsked(True, True, True), "Components count as positive to the right and up, seen from "
     "above to the east and north, couples counter-clockwise."),
]  # fmt: skip


@pytest.mark.parametrize(("fact", "said"), SAID)
def test_what_is_asked_and_offered(fact: Fact, said: str) -> None:
    assert plain_text(ENGLISH.say(fact, NOUNS)) == said


Reference = Literal["horizontal", "vertical", "axis"]
WAYS: list[tuple[Reference, str, str]] = [
    ("horizontal", "above / below the horizontal,", "north / south of"),
    ("vertical", "from the upward / downward vertical,", "from north / south toward"),
    ("axis", "counter-clockwise from +x (to the right)", "counter-clockwise from +x (east)"),
]


@pytest.mark.parametrize(("reference", "said", "from_above"), WAYS)
def test_ways_are_those_of_the_compass_where_a_figure_is_seen_from_above(
    reference: Reference, said: str, from_above: str
) -> None:
    assert plain_text(ENGLISH.say(WaysOffered(reference), NOUNS)) == said
    assert plain_text(ENGLISH.say(WaysOffered(reference), FROM_ABOVE)) == from_above


def test_sides_are_those_of_the_compass_where_a_figure_is_seen_from_above() -> None:
    assert plain_text(ENGLISH.say(SidesOffered(), NOUNS)) == "to the right / left"
    assert plain_text(ENGLISH.say(SidesOffered(), FROM_ABOVE)) == "east / west"
