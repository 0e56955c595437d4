"""What is said of a figure to those who cannot see it, and what is printed in it."""

from __future__ import annotations

import pytest

from probgen.bank.labels import Label, Labels
from probgen.quantities.expression import Name
from probgen.statics.system import Kind
from probgen.wording.english import ENGLISH
from probgen.wording.nouns import NO_NOUNS, Nouns
from probgen.wording.sentence import plain_text
from probgen.working.direction import way_of
from probgen.working.fact import Fact
from probgen.working.figure import (
    Acting,
    BodyNamed,
    BodyShown,
    DiagramShown,
    ForceShown,
    ScaleNoted,
    SituationShown,
)

LABELS = Labels(
    quantities={},
    elements={"R": Label("R", "pin"), "T": Label("T", "cable"), "W": Label("W", "lamp")},
    bodies={"shelf": "shelf", "arm": "your forearm"},
    limits={},
    reasons={},
)
NOUNS = Nouns(NO_NOUNS.system, LABELS)
PIN, CABLE = Acting("R", Kind.HINGE, "A"), Acting("T", Kind.CABLE, "C")
LAMP, LOAD = Acting("W", Kind.WEIGHT, "B"), Acting("W", Kind.WEIGHT, "")

SAID: list[tuple[Fact, str]] = [
    (BodyShown("shelf", (PIN, CABLE), (LAMP,)), "The shelf is held by the pin at A and the cable "
     "at C and carries the weight of the lamp at B."),
    (BodyShown("shelf", (), (LAMP,)), "The shelf is acted on by the weight of the lamp at B."),
    (BodyShown("arm", (PIN,), ()), "Your forearm is held by the pin at A."),
    (BodyShown("arm", (PIN, PIN), (LOAD,)),
     "Your forearm is held by the pin at A and carries the weight of the lamp."),
    (BodyShown("shelf", (), ()), "The shelf."),
    (SituationShown((BodyShown("shelf", (PIN,), ()), BodyShown("arm", (CABLE,), ()))),
     "The shelf is held by the pin at A. Your forearm is held by the cable at C."),
    (DiagramShown(("shelf",), (ForceShown(Name("T", "T"), "C", way_of(90.0)),)),
     "Free-body diagram of the shelf: T at C straight up."),
    (BodyNamed(("shelf",)), "the shelf"),
    (BodyNamed(("shelf", "arm")), "the shelf and your forearm"),
    (ScaleNoted(lengths=True, arrows=True), "arrows to scale"),
    (ScaleNoted(lengths=True, arrows=False), "arrows not to scale"),
    (ScaleNoted(lengths=False, arrows=True), "lengths not to scale"),
    (ScaleNoted(lengths=False, arrows=False), "not to scale"),
    (ScaleNoted(lengths=False), "not to scale"),
    (ScaleNoted(lengths=True, arrows=True, turned=True),
     "arrow lengths to scale, directions as assumed"),
    (ScaleNoted(lengths=True, arrows=False, turned=True), "arrows not to scale"),
    (ScaleNoted(lengths=False, arrows=True, turned=True), "lengths not to scale"),
]  # fmt: skip


@pytest.mark.parametrize(("fact", "said"), SAID)
def test_what_is_said_of_a_figure(fact: Fact, said: str) -> None:
    assert plain_text(ENGLISH.say(fact, NOUNS)) == said
