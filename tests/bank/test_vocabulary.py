"""The words of [depicts]: one drawing each, and the authoring guide prints all of them."""

from __future__ import annotations

from pathlib import Path

import pytest

from probgen.bank.depiction import (
    Anchor,
    Hinge,
    Load,
    Look,
    Manner,
    Roller,
    Source,
    Thing,
    Touch,
)
from probgen.bank.vocabulary import ALL, BODIES, LOADS, Vocabulary, guide

GUIDE = Path(__file__).parents[2] / "templates" / "README.md"


@pytest.mark.parametrize("vocabulary", ALL, ids=lambda each: each.of)
def test_no_word_asks_for_two_drawings(vocabulary: Vocabulary[object]) -> None:
    words = [word for entry in vocabulary.entries for word in entry.words]
    assert len(words) == len(set(words)) == len(vocabulary.words)
    assert all(word == word.lower().strip() for word in words)


@pytest.mark.parametrize("kind", [Look, Hinge, Roller, Touch, Source, Anchor, Thing])
def test_every_drawing_has_a_word(kind: type) -> None:
    """But a truss, which its members tell."""
    shown = {entry.shows for vocabulary in ALL for entry in vocabulary.entries}
    things = {each.thing for each in shown if isinstance(each, Load)}
    assert set(kind) - {Look.TRUSS} <= shown | things  # type: ignore[call-overload]


@pytest.mark.parametrize(
    ("word", "thing", "manner"),
    [
        ("crate", Thing.CRATE, Manner.STANDS),
        ("crate hung", Thing.CRATE, Manner.HANGS),
        ("lantern", Thing.LAMP, Manner.HANGS),
        ("lantern hung", Thing.LAMP, Manner.HANGS),
        ("bucket standing", Thing.BUCKET, Manner.STANDS),
        ("rider", Thing.RIDER, Manner.SITS),
        ("person lying", Thing.PERSON, Manner.LIES),
        ("ball", Thing.BALL, Manner.HELD),
    ],
)
def test_a_thing_is_carried_in_its_own_manner_unless_another_is_said(
    word: str, thing: Thing, manner: Manner
) -> None:
    assert LOADS.words[word] == Load(thing, manner)


@pytest.mark.parametrize("word", ["tree hung", "person held", "lamp standing", "crate lying"])
def test_manners_no_drawing_shows_are_no_words(word: str) -> None:
    assert word not in LOADS.words


def test_the_authoring_guide_prints_the_vocabulary() -> None:
    assert guide() in GUIDE.read_text(encoding="utf-8"), "print vocabulary.guide() into it"


def test_the_guide_tells_every_word_of_every_kind() -> None:
    table = guide()
    for vocabulary in ALL:
        assert vocabulary.of in table
        assert all(f"`{word}`" in table for word in vocabulary.words)
    assert table.count("\n") == 2 + sum(len(vocabulary.entries) for vocabulary in ALL)
    assert BODIES in ALL
