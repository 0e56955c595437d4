"""The table [depicts] read: what each body and element is drawn as, every word from its vocabulary.

A word of another kind of thing, or of none, is refused with the nearest one.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, TypeVar

from probgen.bank import vocabulary
from probgen.bank.depiction import (
    Anchor,
    Depiction,
    Depictions,
    Fluid,
    Hinge,
    Load,
    Look,
    Manner,
    Roller,
    Scenery,
    Source,
    Thing,
    Touch,
)
from probgen.bank.labels import Carried
from probgen.bank.situation import Situation
from probgen.bank.vocabulary import Vocabulary
from probgen.input.fault import nearest, one_of
from probgen.input.table import Table
from probgen.statics.system import Kind

T = TypeVar("T", bound=Depiction)

_BY_KIND: Final[dict[str, Vocabulary[Depiction]]] = {
    Kind.WEIGHT: vocabulary.LOADS,
    Kind.DISTRIBUTED: vocabulary.FLUIDS,
    Kind.HINGE: vocabulary.HINGES,
    Kind.ROLLER: vocabulary.ROLLERS,
    Kind.CONTACT: vocabulary.CONTACTS,
    Kind.ROUGH: vocabulary.CONTACTS,
    Kind.FORCE: vocabulary.FORCES,
    Kind.CABLE: vocabulary.LINES,
    Kind.ROPE: vocabulary.LINES,
    Kind.SPRING: vocabulary.LINES,
    Kind.STRUT: vocabulary.LINES,
}


def read_depicts(table: Table, situation: Situation) -> Depictions:
    """What a template's figure shows: what its elements are by themselves, then its own words."""
    vocabularies = dict(_vocabularies(situation))
    bodies = {body.id for body in situation.bodies}
    doubtful = {b.id for b in situation.bodies if b.particle != (len(b.outline) == 1)}
    shapes: dict[str, Depiction] = {b.id: Look.TRUSS for b in situation.bodies if b.joints}
    others = dict(situation.shown)
    letters = _letters(situation)
    for written in table.content:
        id = written if written in vocabularies else letters.get(written, written)
        if id in doubtful:  # its outline has a fault, so that its words are not known
            continue
        if id != written and id in table.content:
            table.fault(written, written, f"one word for {id}, as {written} is its letter on paper")
        found = _read_word(table, written, id, vocabularies, whole=situation.scope.whole)
        if found is Look.WEDGE and situation.scope.whole:
            _check_wedge(table, id, situation)
        if found is not None:
            (shapes if id in bodies else others)[id] = found
    return Depictions(
        _those(shapes, Look),
        _those(others, Load),
        _those(others, Hinge),
        _those(others, Roller),
        _those(others, Touch),
        _those(others, Source),
        _those(others, Anchor),
        _those(others, Scenery),
        _those(others, Fluid),
    )


def carried(depicts: Depictions) -> dict[str, Carried]:
    """What bodies carry that is no part of them, by the id of its weight."""
    parts = (Thing.CENTRE, Thing.HEAD)
    does = {Manner.HANGS: Carried.PULLS, Manner.HELD: Carried.ACTS}
    return {
        id: does.get(load.manner, Carried.PUSHES)
        for id, load in depicts.loads.items()
        if load.thing not in parts
    }


def _check_wedge(table: Table, id: str, situation: Situation) -> None:
    """A wedge is drawn between the faces of its two contacts."""
    contacts = sum(e.body == id and e.surface is not None for e in situation.elements)
    if contacts != 2:
        expected = f"a body with two contacts, whose faces it lies between; this has {contacts}"
        table.fault(id, "wedge", expected, "use another word, or add [[rough]] or [[contact]]")


def _vocabularies(situation: Situation) -> Iterator[tuple[str, Vocabulary[Depiction] | None]]:
    """The words for each thing that has an id; None for one that is always drawn the same."""
    for element in situation.elements:
        if element.id:
            yield element.id, _BY_KIND.get(element.kind)
    for body in situation.bodies:
        words = vocabulary.PARTICLES if body.particle else vocabulary.BODIES
        yield body.id, None if body.joints else words
    yield "scenery", vocabulary.SCENERY


def _letters(situation: Situation) -> dict[str, str]:
    """Ids of elements by the letters they are printed with, where those are other: W_lo of W_l."""
    found: dict[str, list[str]] = {}
    for id, label in situation.named.items():
        found.setdefault(label.symbol, []).append(id)
    return {symbol: ids[0] for symbol, ids in found.items() if len(ids) == 1}


def _read_word(
    table: Table,
    written: str,
    id: str,
    known: dict[str, Vocabulary[Depiction] | None],
    *,
    whole: bool,
) -> Depiction | None:
    """written: the id, or the letter on paper that stands for it."""
    word = table.text(written)
    if id not in known:
        if whole:
            expected = one_of(known, "a body or an element: ")
            table.fault(written, written, expected, nearest(id, known))
        return None
    allowed = known[id]
    if allowed is None:
        expected = "no word, for this is always drawn the same way"
        table.fault(written, word, expected, "leave it out")
        return None
    words = allowed.words
    if word and word not in words:
        expected = f"a word for {allowed.of}: {', '.join(allowed.first_words)}, ..."
        table.fault(written, word, expected, nearest(word, words) or "see templates/README.md")
    return words.get(word)


def _those(shown: dict[str, Depiction], kind: type[T]) -> dict[str, T]:
    return {id: each for id, each in shown.items() if isinstance(each, kind)}
