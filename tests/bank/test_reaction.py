"""What acts back: the same size, the opposite way, on the other body."""

from __future__ import annotations

from probgen.bank.labels import Label
from probgen.bank.reaction import Reaction
from probgen.quantities.expression import Name, evaluate, negative, number
from probgen.statics.system import Couple, Element, Force, ForcePart, Kind

T, M = Name("T", "T"), Name("M", "M")
BACK = Reaction("prop", "Q", "the post", "J")
PULL = Force("T", "post", "J", T, number(30), Kind.CABLE, "T", ForcePart.X)


def test_a_force() -> None:
    back = BACK.force(PULL)
    assert (back.id, back.element, back.pair) == ("T'", "T'", "T")
    assert (back.body, back.point, back.magnitude) == ("prop", "Q", T)
    assert float(evaluate(back.direction, {})) == 210.0
    assert (back.kind, back.part) == (Kind.CABLE, "x")


def test_a_couple() -> None:
    back = BACK.couple(Couple("M", "post", "J", M, "R"))
    assert back == Couple("M'", "prop", "Q", negative(M), "R'", "M")


def test_an_element_with_its_surface() -> None:
    touched = Element("N", Kind.CONTACT, "post", "J", ("N",), "Q", surface=number(90))
    back = BACK.element(touched, [BACK.force(PULL)])
    assert (back.id, back.body, back.at, back.toward) == ("N'", "prop", "Q", "J")
    assert back.forces == ("T'",)
    assert back.surface is not None
    assert float(evaluate(back.surface, {})) == 270.0


def test_an_element_without_a_surface_has_none() -> None:
    assert BACK.element(Element("T", Kind.CABLE, "post", "J"), []).surface is None


def test_it_has_the_letter_of_the_action_and_a_name_of_its_own() -> None:
    assert BACK.label(Label("T", "the cable")) == Label("T", "the post")
