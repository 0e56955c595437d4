"""What things go by in English, with one article each."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.bank.labels import (
    BodyNamed,
    ByKind,
    Called,
    Coined,
    Label,
    Labels,
    Lettered,
    Piece,
    Reason,
    Slipping,
    Sort,
)
from probgen.quantities.expression import ZERO
from probgen.quantities.symbol import unmarked
from probgen.statics.system import Couple
from probgen.wording.english import names
from probgen.wording.nouns import NO_NOUNS, Nouns

ARTICLES = [
    ("cable", "the cable"), ("The cable", "The cable"), ("a cable", "a cable"),
    ("an oar", "an oar"), ("your hand", "your hand"), ("one foot", "one foot"), ("", ""),
    ("another", "the another"), ("each block", "each block"), ("both hands", "both hands"),
]  # fmt: skip
LABELS = Labels(
    quantities={"m": Label("m", "shelf mass"), "T": Label("T", Coined(Sort.TENSION, "stay"))},
    elements={
        "T": Label("T", "stay"),
        "C": Label("C", ByKind.COUPLE),
        "N": Label("N", "your hand"),
    },
    bodies={"shelf": "shelf", "arm": "your forearm"},
    limits={"tips": "the cabinet tips", "f.limit": Slipping("arm", BodyNamed("shelf"))},
    reasons={"1": "so it is built", "2": Reason.RATIO_STATED},
)
NOUNS = Nouns(NO_NOUNS.system, LABELS)
CALLED: list[tuple[Called, str]] = [
    ("stay", "stay"),
    (ByKind.PART_CUT_OFF, "part cut off"),
    (BodyNamed("arm"), "your forearm"),
    (Coined(Sort.PULL, ByKind.MUSCLE), "pull of the muscle"),
    (Coined(Sort.WEIGHT, BodyNamed("shelf")), "weight of the shelf"),
    (Coined(Sort.WEIGHT, BodyNamed("arm")), "weight of your forearm"),
    (Coined(Sort.X_COMPONENT, "the pin"), "x-component of the force from the pin"),
    (Coined(Sort.NORMAL_FORCE, "floor", "B"), "normal force from the floor at B"),
    (Coined(Sort.AXIAL_FORCE, at="C"), "axial force at C"),
    (Coined(Sort.APPLIED_FORCE, ByKind.FORCE), "the force"),
    (Coined(Sort.APPLIED_FORCE, "wind"), "force from the wind"),
    (Coined(Sort.APPLIED_FORCE, "push"), "push"),
    (Coined(Sort.APPLIED_FORCE, "second pull"), "second pull"),
    (Coined(Sort.COUPLE, "second couple"), "second couple"),
    (Coined(Sort.COUPLE, ByKind.COUPLE), "the couple"),
    (Coined(Sort.COUPLE, ByKind.SUPPORT), "couple from the support"),
    (Coined(Sort.FREE_FALL), "acceleration of free fall"),
    (Coined(Sort.CROSSING, "load", "A"),
     "distance from A to the line of action of the load, positive to the right"),
    (Coined(Sort.CROSSING, "load", "A", ("B", "D")),
     "distance from A to the line of action of the load, positive from B toward D"),
]  # fmt: skip


@pytest.mark.parametrize(("noun", "said"), ARTICLES)
def test_a_noun_has_one_article(noun: str, said: str) -> None:
    assert names.the(noun) == said


@pytest.mark.parametrize(("name", "said"), CALLED, ids=[said for _, said in CALLED])
def test_an_author_s_words_or_ours(name: Called, said: str) -> None:
    assert unmarked(names.called(name, NOUNS)) == said


@pytest.mark.parametrize(
    ("name", "said"),
    [
        (Coined(Sort.X_COMPONENT, "the pin"), "𝑥-component of the force from the pin"),
        (Coined(Sort.CENTRE_Y), "𝑦-coordinate of the centre of mass"),
        (Coined(Sort.NORMAL_FORCE, "floor", "B"), "normal force from the floor at 𝐵"),
        (Coined(Sort.CROSSING, "load", "A", ("B", "D")),
         "distance from 𝐴 to the line of action of the load, positive from 𝐵 toward 𝐷"),
        (Lettered(Piece.MEMBER, ("A", "B")), "member 𝐴𝐵"),
        (Lettered(Piece.JOINT, ("E",)), "joint 𝐸"),
        (Lettered(Piece.PART, ("A", "G_1")), "part 𝐴𝐺_1"),
        ("load at 𝐶", "load at 𝐶"),
    ],
)  # fmt: skip
def test_letters_of_points_and_axes_are_marked(name: Called, said: str) -> None:
    assert names.called(name, NOUNS) == said


@pytest.mark.parametrize("kind", ByKind)
def test_every_kind_has_a_noun(kind: ByKind) -> None:
    assert names.called(kind, NOUNS).islower()


@pytest.mark.parametrize("sort", Sort)
def test_every_sort_of_quantity_has_a_name(sort: Sort) -> None:
    said = names.called(Coined(sort, ByKind.HINGE, "A"), NOUNS)
    assert said
    assert "{" not in said


def test_by_their_ids() -> None:
    assert names.the_body("shelf", NOUNS) == "the shelf"
    assert names.the_body("arm", NOUNS) == "your forearm"
    assert names.the_element("T", NOUNS) == "the stay"
    assert names.the_element("N", NOUNS) == "your hand"
    assert names.quantity("m", NOUNS) == "shelf mass"
    assert names.quantity("T", NOUNS) == "tension in the stay"
    assert names.limit("tips", NOUNS) == "the cabinet tips"
    assert names.limit("f.limit", NOUNS) == "your forearm slips on the shelf"


def test_a_couple_by_what_exerts_it() -> None:
    couple = Couple("M", "shelf", "A", ZERO, "C")
    system = NO_NOUNS.system
    with_couple = Nouns(type(system)({}, (), {}, (), (), (couple,), (), (), ()), LABELS)
    assert names.the_couple("M", with_couple) == "the couple"


@pytest.mark.parametrize("reason", Reason)
def test_every_reason_has_words(reason: Reason) -> None:
    nouns = Nouns(NO_NOUNS.system, Labels(reasons={"1": reason}))
    assert len(names.reason("1", nouns).split()) > 3


def test_an_author_s_own_reason() -> None:
    assert names.reason("1", NOUNS) == "so it is built"
    assert names.reason("3", NOUNS) == ""


def test_a_distance_seen_from_above_and_the_course_s_word_for_torque() -> None:
    plan = Nouns(NO_NOUNS.system, replace(LABELS, plan=True))
    assert names.called(Coined(Sort.CROSSING, "load", "A"), plan).endswith("positive to the east")
    labels = Labels(reasons={"1": Reason.SAME_TORQUE})
    moment = Nouns(NO_NOUNS.system, labels, "moment")
    said = names.called(Coined(Sort.TORQUE, at="B"), moment)
    assert unmarked(said) == "moment about B, counter-clockwise positive"
    assert names.reason("1", moment).endswith("its own moment is theirs")
