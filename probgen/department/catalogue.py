"""A bank's catalogue: a card for each template, in chapters by family."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Final

from probgen.bank.bank import Bank
from probgen.bank.template import Template
from probgen.build.progress import Report
from probgen.build.workers import Crew
from probgen.department.card import UNUSED, Card, Use, card_of
from probgen.department.history import folder_of, history
from probgen.input.fault import Fault, Faults, InputError

_NO_USES: Final[Mapping[str, Use]] = MappingProxyType({})


_STAGE: Final = "problems"
_AT_ONCE: Final = 8
"""Templates that one process takes; a few are sooner worked than a second process is begun."""


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A template to be worked; revisions: its files in the bank."""

    template: Template
    revisions: Mapping[int, Path]
    use: Use


@dataclass(frozen=True, slots=True)
class Chapter:
    """The cards of one family, by level and id."""

    family: str
    cards: tuple[Card, ...]


@dataclass(frozen=True, slots=True)
class Catalogue:
    """keeper: of the bank, "" for none; release: its name where the templates are those of one."""

    title: str
    keeper: str
    release: str
    chapters: tuple[Chapter, ...]

    @property
    def cards(self) -> tuple[Card, ...]:
        return tuple(card for chapter in self.chapters for card in chapter.cards)

    @property
    def levels(self) -> tuple[int, ...]:
        return tuple(sorted({card.template.level for card in self.cards}))

    @property
    def goals(self) -> tuple[str, ...]:
        """Every goal that a template has, by the alphabet."""
        return tuple(sorted({goal for card in self.cards for goal in card.template.goals}))

    @property
    def cautions(self) -> frozenset[str]:
        """What the problems touch that a teacher may want to know."""
        return frozenset(kind for card in self.cards for kind in card.template.cautions)


def catalogue_of(
    bank: Bank, crew: Crew, report: Report, uses: Mapping[str, Use] = _NO_USES
) -> Catalogue:
    """Works every template of a bank; uses: what is known of them, by their ids.

    Raises InputError with the faults of all templates that cannot be read, worked or drawn.
    """
    templates, folder = bank.read_all(), folder_of(bank)
    revisions = folder.revisions if folder else {}
    wanted = [
        _Wanted(each, revisions.get(each.id, {}), uses.get(each.id, UNUSED)) for each in templates
    ]
    tasks = [(wanted[start : start + _AT_ONCE],) for start in range(0, len(wanted), _AT_ONCE)]
    cards: list[Card] = []
    faults = Faults(bank.id)
    report(_STAGE, 0, len(wanted))
    for made, found in crew.each(_work, tasks, len(tasks)):
        cards += made
        faults.found += found
        report(_STAGE, len(cards), len(wanted))
    faults.settle()
    cards.sort(key=lambda card: (card.template.family, card.template.level, card.id))
    released = bank.id if folder and bank.id in folder.releases else ""
    return Catalogue(bank.title, folder.keeper if folder else "", released, tuple(_chapters(cards)))


def _work(wanted: Sequence[_Wanted]) -> tuple[list[Card], list[Fault]]:
    """The cards of some templates, and what is wrong with those that have none."""
    cards: list[Card] = []
    faults = Faults("")
    for each in wanted:
        try:
            past = history(each.revisions, each.template.revision)
            cards.append(card_of(each.template, past, each.use))
        except InputError as error:
            faults.take(error)
    return cards, faults.found


def _chapters(cards: list[Card]) -> Iterator[Chapter]:
    for family in dict.fromkeys(card.template.family for card in cards):
        yield Chapter(family, tuple(card for card in cards if card.template.family == family))
